# A mark read aloud: the British say an and behind the hundreds.

after-hundreds = { $hundreds } and { $rest }
