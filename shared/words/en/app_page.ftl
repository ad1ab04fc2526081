# The page of a sheet, and the form of any page.

## The form: what was told as lines to tap, the rest behind two more.
needed = needed
also-told = Also given ({ $count })
usual-values = Usual values ({ $count })
more-inputs = More ({ $count })
rows = { $count } × { $row }
values-given =
    { $count ->
        [one] one value
       *[other] { $count } values
    }
body-ribs =
    { $count ->
        [one] the body's one rib
       *[other] the body's { $count } ribs
    }
yes = yes
no = no
not-given = not given

## What the answer stands on.
still-needed = Needed for an answer
measurements = Measurements
answers = Answers
more-warnings =
    { $count ->
        [one] One more warning
       *[other] { $count } more warnings
    }
notes =
    { $count ->
        [one] One note
       *[other] { $count } notes
    }
more-drawings =
    { $count ->
        [one] One more drawing
       *[other] { $count } more drawings
    }
drawings-whole = Drawings at full width ({ $count })
marks-of =
    { $count ->
        [one] The marks
       *[other] Marks of { $count } pieces
    }
to-buy = To buy ({ $count })
all-tables = Tables ({ $count })
to-cut = To cut ({ $count })
to-do = { $title }: { $done } of { $count } done
what-if = What if the store lacks something?
take-care = Take care ({ $count })
working = How it is worked out
sources = Sources
rename = Rename this sheet

## The four places of the work.
places = Places
place-rig = The rig
place-sheets = Sheets
place-marking = Marking
place-buying = Buying

## At the bench: one figure at a time.
at-the-bench = To the bench, one piece at a time
bench-of = { $sheet }, { $length } long
bench-hooked = tape hooked on the left end
bench-mark = mark { $mark } of { $of }
bench-copy = mark { $mark } of { $of }, piece { $copy } of { $alike } alike
bench-step = step { $step } of { $of }
bench-left =
    { $count ->
        [one] one piece left
       *[other] { $count } pieces left
    }
bench-done = done already
bench-marked = Marked, next
bench-task-done = Done, next
bench-over = All done ✓
bench-back = mark before
bench-piece-back = piece before
bench-piece-on = piece after
bench-undo = undo
bench-aloud = Read the figures aloud
bench-leave = Leave the bench
no-marks = No marks yet
all-marked = All marked ✓

## The project's page.
other-sheets = Other sheets
inputs-missing =
    { $count ->
        [one] needs one input
       *[other] needs { $count } inputs
    }
add-sheet = Add a sheet
pass-it-on = Pass it on
booklet = Booklet to print
needs-attention = needs attention
not-measured = not measured yet
ribs =
    { $count ->
        [one] one rib
       *[other] { $count } ribs
    }
size-and-ribs = { $size }, { $ribs }

## What a sheet's page says where there is no answer yet, or no sheet.
no-such-sheet = No such sheet
no-such-sheet-help = It was removed, or the address is wrong.
other-version = A sheet made by another version
other-version-help = This version does not know this kind of sheet. It is kept as it is, and saved with the project.
inputs-to-fill =
    { $count ->
        [one] one input needed
       *[other] { $count } inputs needed
    }
empty = Nothing is filled in yet.
see-example = See it with the example
fill-example = Fill in the example (undo restores it)
remove-sheet = Remove this sheet (undo brings it back)
templates = Full-size templates to print
plan = Plan
results = Results
body-help = Measure it once. x runs from the front wall to the rear, y from the left wall to the right, facing forward.

## Marks and cuts as they are read.
marks-on = Marks on the { $piece }
tape-hooked = All from the left end of { $length }, tape hooked once.
long = { $length } long.
long-hooked = { $length } long. All from its left end, tape hooked once.
exact-spot = exact spot { $left-over }
before-start = { $length } before the start
no-mark-lists = No sheet has marks yet.
left-over = Left over: { $length }
here-already = { $item }: { $count } on hand, none to buy
buy-line = { $quantity } × { $item }
buy-amount = { $quantity } { $unit } of { $item }
not-to-scale = Not to scale across: drawn wider.
scrolls = { $title }, scrolls sideways

## A sheet made from another one that has changed since.
has-changed =
    { $count ->
        [one] { $sheet } has changed: one value here is out of date.
       *[other] { $sheet } has changed: { $count } values here are out of date.
    }
catch-up = Take the new values

## Marking, one piece after another.
board-done = { $board } done
board-of-done = { $board } { $copy } of { $alike } done
next-mark = Next: { $board }, { $mark }
next-board = Next: { $board }
is-done = done?
mark-at = mark at { $mark }
go-to = Go to { $sheet }
full = This project holds as many sheets as it can. Remove some, or start another project.
mark-count =
    { $count ->
        [one] one mark
       *[other] { $count } marks
    }
