# What the frame around every page says: header, menu, language, notices above the page.

## The frame.
skip = Skip to content
undo = Undo
redo = Redo
all-projects = All projects
buy-list = Buy list
mark-list = Mark list
cut-list = Cut list
the-body = The body
versions = Versions
projects = Projects
received = Received
opening = Opening
## What the browser's tab and the history call a page.
titled = { $page } · Battenbook

## The menu.
menu = Menu
project-name = Project name
results-in = Results in
inches = inches
millimeters = millimeters
nearest = Mark to the nearest
print-page = Print this page
save-to-file = Save to file
light = Appearance
light-auto = Same as device
light-day = Day: pencil on paper
light-night = Night: chalk on slate

## The language. Offers are in the language that is offered, whichever is shown.
language = Language
language-missing = { $language } could not be loaded. Check your signal and try again.
language-stay = Keep { $language }
offer-en = Battenbook is also available in English.
    .take = Use English
offer-gb = Battenbook is also available in British English.
    .take = Use English (UK)
offer-es = Battenbook también está en español.
    .take = Usar español

## A project that cannot be opened.
cannot-open = Can't open this project
missing-here =
    There is no such project on this device. It may have been deleted, or the address is from another device.
saved-by-newer =
    This project was saved by a newer version of Battenbook. It is kept as is; reload to get the newer version, or save it to a file.
unreadable = This project can't be read: { $error }. Its text is kept as is.
save-its-text = Save its text to a file
restored =
    The last save of this project was damaged or is missing, so this is the one before it.
restored-damaged =
    The last save of this project was damaged or is missing, so this is the one before it. The damaged text is kept; you can download it on the start page.

## While a large project is worked out.
working-out = Working out “{ $name }”…
working-out-help = This is a big project. Stopping changes nothing.
done = done
done-percent = { $percent } % done
stop = Stop and go back to all projects

## A part of the program that is fetched the first time it is needed.
part-coming = The pages of a project are on their way to this device.
part-missing = The pages of a project have not come: there is no signal, or the server is away. Nothing is lost.

## Answers to notices.
ok = OK
try-again = Try again
empty-trash = Empty the trash
open-it = Open it
unnamed = Untitled

## Notices.
no-second-copy =
    This browser won't keep a backup of what you type. If it crashes or the battery dies, you can lose the last minute.
brought-back = The browser closed before everything was saved. Restored as last typed: { $names }.
quoted = “{ $name }”
only-in-tab = “{ $name }” is only in this tab. { $error }
keeps-nothing =
    This browser saves nothing for this page (private mode, or storage is off). Save your project to a file before you close it.
second-store =
    This browser blocks its usual storage; what you type goes to its backup storage. Save your project to a file before you close it.
second-store-one-window =
    This browser blocks its usual storage; what you type goes to its backup storage. Use only one window, and save your project to a file before you close it.
apart =
    Another window changed the same field at the same time ({ $field }). Both are kept: this window continues in a copy, “{ $name }”, next to the other one.
short-of-room = Storage on this device is running low.
see-largest = See what's largest
take-theirs = Use the other window's version
keep-both = Keep both: save this one as a copy
may-be-cleared =
    This browser has not promised to keep your projects if the device runs low on space. Save everything to a file now and then.
ask-again = Ask the browser again
