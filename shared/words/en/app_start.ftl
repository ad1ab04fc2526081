# The start page: projects, files in and out, the trash, first steps.

purpose = What to mark, cut, mix, wire and buy, figured from what you measured in the rig.
search = Search projects
files = Files
open-file = Open a project file
stays-here = Everything stays on this device. Once loaded, it works without a signal.
estimates =
    Results are estimates from your measurements. Local code, the maker's instructions and licensed trades come first.
begin = Get started
new-imperial = New project in inches
new-metric = New project in millimeters
demo-imperial = Open the demo in inches
demo-metric = Open the demo in millimeters
save-all = Save everything to a file
none-yet = No projects on this device yet. The demo shows the whole thing in one tap.
none-found = No project has that in its name.

## What is said of a project in the list.
state-unsaved = not saved; only in this tab
state-damaged-save = a damaged save of it is kept too
state-received = received; yours is kept too
state-damaged = can't be read; its text is kept
state-newer = saved by a newer version
very-large = very large; split it into two projects

## What can be done with one.
more-for = More for { $name }
name = Name
rename = Rename
see-differences = See what's different
copy = Copy
share = Share
save-damaged = Save the damaged text to a file
discard-damaged = Discard the damaged text
save-before = Save the text from before the last update
delete = Delete
trash = Trash
restore = Restore
forget = Delete forever

## What a new project is called, and what stands behind the name of a copy or a file.
my-rig = My rig
new-name = Name of your rig
why-copy = copy
why-window = other window
why-received = received
named-for = { $name } ({ $why })
file-before = { $name } before
file-damaged = { $name } damaged

## What is said when something was done.
left-out = Left out because they can't be read: { $names }. Save each one to its own file.
older-used =
    The last save of these was damaged or is missing, so the file has the one before it: { $names }.
older-used-one =
    The last save of this project was damaged or is missing, so the one before it was used.
deleted = “{ $name }” is in the trash. You can restore it below.
opened = Opened “{ $name }”.
opened-beside = Opened “{ $name }” as a copy next to your own.
refused = Number { $number }: { $reason }.

## Storage running low.
room =
    Storage is running low: { $percent } % of what the browser gives this page is used. Save what matters to a file; then delete old versions and empty the trash.
largest = Largest: { $names }.
named-size = “{ $name }” { $size }
size = { $size } KB

## First steps.
try = Try it: one minute, three steps
try-board = The demo opens to a ceiling board, marked for the ribs of an old bus.
try-change = Change one measurement.
try-watch = Watch the marks follow.
try-imperial = Try it in inches
try-metric = Try it in millimeters
try-not = I know how this works; don't show this again
first-steps = First steps
name-look = Look
name-change = Change
name-own = Your own
step-look = A board from the ceiling of an old bus. Mark { $what } is at { $mark }.
step-type = Type { $number } for “First stud on the board”. Watch mark { $what } at { $mark }.
step-moved = Mark { $what } moved from { $was } to { $now }. That's all: measure, type, mark.
show-me = Show me
change-it = Change a measurement
begin-own = Start your own rig
end-steps = Close first steps

## A file being opened, project by project.
reading = Reading the file…
opening = Opening project { $done } of { $count }…
done = done
stop = Stop
stopped = Stopped. { $kept } of { $count } projects were opened and are kept.
stopped-at-once = Stopped. Nothing was opened.
