title = Cut plan
purpose = What to buy for a list of pieces, and how to cut it at the least cost.

pieces = Pieces
    .help = All that are cut from the same section.
    .row = piece
label = Name
length = Length
    .help = Finished, as it goes up.
count = How many
section = Section
    .help = Sheets that cut the same material in the same section are planned together on the cut list.
thickness = Thickness
width = Width

## What a piece without a name is called.
piece = piece { $number }

buy = Buy
    .nothing = nothing
    .here = plus { $lengths } on hand
cost = Cost
    .proved = no plan costs less
    .bound = no plan can cost less than { $bound }
left-over = Left over
    .share = { $percent } of the stock

proved-cost = Proved: no plan costs less.
proved-stock = Proved: no plan takes less stock.
best-found =
    The best plan found takes { $found }; none can take less than { $bound }. There may be a better one in between.
no-margin =
    { $bars ->
        [one]
            No margin on { $bars } bar: less than { $margin } is left beyond pieces and saw cuts. Measure it before you
            cut; a split end or a short length means one more.
       *[other]
            No margin on { $bars } bars: less than { $margin } is left beyond pieces and saw cuts. Measure them before
            you cut; a split end or a short length means one more.
    }

stores = If the store has
    .lengths = Lengths
    .buy = Buy
    .cost = Cost
    .stock = Stock
    .left-over = Left over
    .all = all of them
    .only = { $length } only
    .not-enough = not enough

drawing = Cut patterns
    .words =
        { $patterns ->
            [one] { $lengths } to cut in { $patterns } pattern, drawn as a bar with its pieces and what is left over.
           *[other] { $lengths } to cut in { $patterns } patterns, each drawn as a bar with its pieces and what is left over.
        }
    .none = Nothing to cut.

step-pieces = All pieces
step-pattern = Cut pattern { $number }
    .result = { $used } of { $room }
step-cost = Cost
step-left-over = Left over
    .formula = Σ L − Σ l − kerfs
    .numbers = { $stock } − { $pieces } − kerfs
step-bound = Bound
    .formula = least Σ n · p over all patterns, in whole and part
    .numbers =
        { $patterns ->
            [one] { $patterns } pattern used
           *[other] { $patterns } patterns used
        }

source-cost = cost = sum of lengths bought x price
source-waste = waste = stock - pieces - kerfs between pieces and before an offcut
