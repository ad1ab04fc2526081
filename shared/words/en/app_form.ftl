# What the form of any page says around its fields.

## Rows and lists.
row-title = { $row } { $number }
copy-row = Copy this { $row }
remove = Remove
remove-item = remove { $item } { $number }
add-first = Add { $row }
add-another = Add another { $row }

## Keys for a length that a phone's number pad lacks.
length-keys = keys for lengths
key-feet = feet
key-inches = inches
key-fraction = fraction stroke
key-space = space
key-plus = plus
key-minus = minus
key-times = times
key-back = delete
key-keyboard = the phone's keyboard
key-next = Next

## What could stand in a field.
for-example = e.g. { $value }
from-the-table = { $ask } from the table
choose-from = Choose a { $noun }…
uses = Uses { $part }: { $value }
use = Use { $part }: { $value }
uses-ribs =
    { $count ->
        [one] Uses the body's one rib
       *[other] Uses the body's { $count } ribs
    }
left-blank = Left blank: { $value }
usual = usual: { $value }
optional = optional

## Two ways to fill in a sheet.
ways = How to fill it in
way-form = Plain form
way-tree = Tree
