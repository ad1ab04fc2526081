# The tree of a circuit: splices from the source down.

title = The tree
help = Tap a line to open it. Each line is a splice or an outlet, with the run that feeds it.
load = Load
remove-load = Remove this load
refused = that name is empty or taken; type another
splice-name = Name of this splice
row-name = Name of this row
fed-from = Fed from
add-run = Add a run from here
add-load = Add a load here
add-lamps = Add a row of lights from here
copy-branch = Copy this branch
remove-branch =
    { $count ->
        [one] Remove it and the one behind it
       *[other] Remove it and the { $count } behind it
    }
no-name = no name
not-fed = not fed from the source
needs-attention = needs attention
from-node = from { $node }

## What is added is called so until it is named.
new-splice = splice 1
new-load = load 1
new-lights = lights
