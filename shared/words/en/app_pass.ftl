# Sharing a project, taking one in, comparing, versions.

## Share.
share = Share
share-system = Share…
share-help =
    This shares the whole project: the body, every sheet, the lists. It goes straight from this device to the other; no server keeps it. The other person gets a copy, and nothing of theirs is overwritten.
as-file = As a file
packing = Packing…
cannot-pack = This browser cannot pack a project into a link or a code. Save it to a file and send that.
as-link = As a link
link-too-large = This project is too large for a link. Send the file.
characters = { $count } characters.
characters-many =
    { $count } characters. Some apps cut off links this long; a file or the codes always work.
link-help =
    The project is inside the link itself, after the # sign. That part stays between the two of you; no server sees it.
link = Link
copied = Copied.
cannot-copy = This browser does not let the page copy. Tap the link above and copy what is selected.
copy-link = Copy link
as-codes = As QR codes
codes-too-large = This project is too large for codes. Send the file or the link.
code = Code
code-of = Code { $number } of { $count }
code-help = Point the other phone's camera at the code and open the link it shows.
codes-help =
    Point the other phone's camera at each code and open the link it shows. Any order works, and scanning one twice does no harm; the project opens once all are in.
code-before = ‹ Previous code
code-next = Next code ›
code-auto = Play all

## Taking one in.
keep-this = Keep “{ $name }”?
nameless = Untitled project
code-keep = Code { $number } of { $count }: keep it?
code-here = Code { $number } of { $count } is here
known = You already have this project
cannot-take = This link can't be read
codes-forgotten = Codes discarded
reading = Reading…
first-part-help =
    This is part of a project that comes in several codes. This device can hold them until all are in; then you are asked about the project itself. Nothing is kept yet.
keep-codes = Hold the codes until all are in
keep-not = Don't keep it
known-help = Nothing is different, so nothing was added.
scan-all = Scan all the codes to add the project.
offered =
    { $sheets ->
        [one] Sent to you by link or code: { $sheets } sheet, { $size }.
       *[other] Sent to you by link or code: { $sheets } sheets, { $size }.
    }
offered-room = It would use { $would } of the room the browser gives this page; { $used } is used now.
less-than-one = less than 1 %
percent = { $percent } %
no-room = That is more than is left. Free up space first, or save it to a file.
offered-beside =
    You already have a version of this project. It stays as is: this one goes next to it, and you can see what's different.
nothing-kept = Nothing is kept yet.
keep = Keep it
still-to-come = Still missing: { $numbers }.
scan-rest =
    Scan them with the camera and open each link, in any order. This device holds what has come in until all are here.
other-set = Another set is waiting too: { $here } of its { $count } codes are here. It stays separate from this one.
forget-codes = Discard the waiting codes

## Compare.
nothing-to-compare = Nothing to compare
nothing-to-compare-help = There is no other version of this project on this device.
received-name = Received: { $name }
received-help =
    You already have a version of this project, “{ $name }”. It has not changed; the one you received is a copy next to it.
which-stays = Which to keep
keep-mine = Keep mine
    .note = the received one goes to the trash
take-theirs = Keep theirs
    .note = mine is kept as a version you can go back to
keep-both = Keep both
    .note = as two projects
differs-received = What's different: yours → received
yours = yours
received = received
then = then
now = now
received-kept = Received, and kept on this device.
received-copy = Received: a copy next to your own version of this project.
no-difference = No input and no result is different.
only-in = only in { $name }
and-more = and { $count } more
side = { $name }:
before-theirs = Before the received one replaced it

## Versions.
version-deleted = Version deleted.
undo-delete = Undo
version-kept = Saved as “{ $name }”.
versions-help =
    A version is the project as it is at one moment: before the store, before the ceiling goes up. You can compare it with the current project any time, and go back to it.
version-name = Name of this version
version-example = before the store
keep-version = Save as a version
no-version = No such version
before-going-back = Before going back to { $name }
go-back = Go back to this version
go-back-help = The current project is saved as a version first, and undo (↶) takes you back to it.
differs-then = What's different: then → now
none-kept = No versions saved yet.
version-damaged = It can't be read; its text is kept.
version-newer = It was saved by a newer version of Battenbook. Reload to get that one.
delete-version = Delete { $name }
delete = Delete
versions-size = { $size } in all.
