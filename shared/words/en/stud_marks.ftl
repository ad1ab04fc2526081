title = Stud marks
purpose = Mark one board so that every screw hits a stud or rib.

board = Board length
    .help = End to end, as it goes up.
first-stud = First stud on the board
    .help = Hold the board in place, trace the center of the first stud on it, and measure from the board's left end.
place = Studs
studs = Stud positions
    .each = Stud
    .help = Hook the tape once on the same wall and read every center line.
spacings = Spacings between studs
    .each = Spacing
    .help = On center, from each stud to the next.
edge-distance = Least distance from an end
    .help = Closer to the end than this, a screw splits the board.
reading-error = Error of one reading
    .help = How far off one reading or mark may be: half the smallest division you trust.

out-of-order = this stud is not past the one before it; enter the positions in order, all measured from the same end
off-the-board = the traced stud must be on the board: measure it from the board's left end

marks = Marks on the board
first-mark = First mark, stud { $stud }
last-mark = Last mark, stud { $stud }
stud = stud { $stud }
too-close-mark = too close to the end
too-close =
    Stud { $stud } is less than { $edge } from the end of the board: shift the board, or fasten it there
    another way.
beyond =
    { $count ->
        [one] Past the end of this board: stud { $studs }.
       *[other] Past the end of this board: studs { $studs }.
    }
one-datum =
    Hook the tape on the left end once and lay out every mark from there: each is then within { $each }.
    Stepped off from mark to mark, the last one could be off by { $worst } (most likely within { $likely }).

copies = Boards marked from one master, and each from the one before
    .board = Board
    .master = From the master
    .worst = From the one before: worst
    .likely = most likely

drawing = Board with its marks
    .words =
        { $marks ->
            [one] A board { $length } long with { $marks } mark.
           *[other] A board { $length } long with { $marks } marks.
        }

step-stud = Stud { $stud }
step-worst = Stepped off, worst case
step-likely = Stepped off, most likely

source-offset = Offsets from one datum
source-chain = n steps of ±t in a chain: n t at worst, √n t where they are independent (root sum of squares)
