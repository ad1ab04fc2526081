# What is wrong with what was entered, on any sheet.

## What is missing.
missing = enter { $what }
missing-like = enter { $what }, for example { $usual }
missing-of-body = enter { $what } here, or measure { $part } on the body page
name-missing = enter a name ({ $what })
one-of-several = enter { $names }
not-both = enter { $first } or { $second }, not both

## Lists and rows.
list-wanted = enter a list here, with at least one { $noun } in it
too-few =
    { $least ->
        [1] add at least one { $noun }
       *[other] at least { $least } are needed ({ $noun }); so far: { $count }
    }
too-many = there are { $count } here; a sheet takes at most { $most }

## Values.
out-of-range = { $what } must be between { $least } and { $most }, not { $given }
not-whole = { $what } must be a whole number
no-unit = { $number } has no unit; write it as text, such as { $like }
number-wanted = enter a number or a text here, such as { $like }
no-number-wanted = no number is needed here
choose-one = choose one: { $names }
yes-or-no = enter { $yes } or { $no }
text-wanted = enter text here

## How the file is built.
inputs-not-named = the inputs are not a set of named values, as in { $like }
values-not-named = enter named values here, as in { $like }

## What is taken from elsewhere.
ribs-of-body =
    { $count ->
        [one] { $count } { -rib } of the body
       *[other] { $count } ribs of the body
    }
no-such-sheet = there is no sheet "{ $id }" in this project
other-kind = "{ $id }" is another kind of sheet; choose one of this kind: { $kinds }
sheet-at-fault = "{ $id }" has inputs that are wrong or missing; correct them first
same-id = two sheets have the id "{ $id }"; give each its own
kind-not-text = the sheet's kind is not given as text
unknown-kind = there is no kind of sheet called "{ $kind }"; there are { $kinds }
beyond-measure = these inputs lead to a value too large to make sense ({ $name }); check their units

## How choices are joined: "1, 2 or 3".
or-end = { $before } or { $last }
