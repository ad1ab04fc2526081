# A mark read aloud, in the words of the tape.

## Lists, parted by a comma: the numbers from zero that have a word of their own, the tens up to ninety, the hundreds.
small =
    zero, one, two, three, four, five, six, seven, eight, nine, ten, eleven, twelve, thirteen, fourteen, fifteen, sixteen,
    seventeen, eighteen, nineteen
tens = twenty, thirty, forty, fifty, sixty, seventy, eighty, ninety
hundreds =
    one hundred, two hundred, three hundred, four hundred, five hundred, six hundred, seven hundred, eight hundred, nine
    hundred

after-tens = { $tens }-{ $ones }
hundred = one hundred
after-hundreds = { $hundreds } { $rest }
thousands =
    { $count ->
        [one] one thousand
       *[other] { $words } thousand
    }
after-thousands = { $thousands } { $rest }
and = { $whole } and { $fraction }
half = a half
quarters =
    { $count ->
        [one] a quarter
       *[other] { $parts } quarters
    }
eighths =
    { $count ->
        [one] an eighth
       *[other] { $parts } eighths
    }
sixteenths =
    { $count ->
        [one] a sixteenth
       *[other] { $parts } sixteenths
    }
thirty-seconds =
    { $count ->
        [one] a thirty-second
       *[other] { $parts } thirty-seconds
    }
