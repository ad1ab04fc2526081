# Paper: the booklet, and templates in true size.

## The booklet.
booklet = Booklet
date = Date on the cover, as you write it (optional)
paper = Paper
print = Print
estimates = Estimates from measurements. Local code, the maker's instructions and licensed trades come first.
contents = Contents
take-care = Take care
care-numbers = Take care: numbers { $numbers } at the end.
not-worked-out = not worked out yet
given = Measured and chosen
of-the-body = { $value } (from the body)
to-buy = To buy
side-view = The rig from its left side, front to the left
    .words = The body from its left side: its length, height, ribs and roof openings.
same-table = { $title }: as in section { $section }.
sources = Sources

## The sheet for the wallet.
today = Today
today-sheet = Today's sheet, for the wallet
today-help = What is not ticked off yet, on one page that folds to wallet size. Print it again as the work goes on.
print-today = Print today's sheet
left-today =
    To go: { $marks ->
        [one] 1 mark
       *[other] { $marks } marks
    }, { $pieces ->
        [one] 1 cut
       *[other] { $pieces } cuts
    }, { $checks ->
        [one] 1 splice or check
       *[other] { $checks } splices and checks
    }.
piece-from = { $piece }, from { $stock }
marks-next = Marks next
cuts-next = Cuts next
checks-left = Splices and checks left
left-to-buy = Left to buy
figures = Each sheet's figure
nothing-left = Nothing left.
and-more = and { $count } more
fold = Fold on the dashed lines, print outward: in half top to bottom, again, then left to right.

## Templates.
templates = Full-size templates
no-templates = This sheet has no templates yet: fill in what it still needs first.
how-to-print = Print at 100 % (“actual size”, not “fit to page”), measure the square, then cut.
square = control square of 100 mm and 4 in
square-each-way = 100 mm each way
square-measure = Measure before you cut:
square-is = the square is 100 mm,
square-lines = the lines beside it 4 in.
square-if-not = If not, print again at 100 %.
too-large = Too large for paper: mark it on the work with a tape.
piece = Piece { $number } of { $count }. Lay cross on cross: { $joints }.
joint-left = { $piece } on its left
joint-right = { $piece } on its right
joint-above = { $piece } above
joint-below = { $piece } below
