# What the store and files answer: why something was not opened, saved or imported.

missing = There is no such project on this device. If you saved it elsewhere, open the file.
damaged = This project can't be read: { $error }. It is kept as is; download it before you delete it.
newer =
    This project was saved by a newer version of Battenbook (format { $format }). It is kept as is. Reload to get the newer version, or download the project.

not-saved-full =
    Not saved: the browser's space for this page is full. The last saved version is kept. Save this project to a file now, then empty the trash or delete old versions and projects you no longer need.
not-saved-blocked =
    Not saved: this browser refuses to store data for this page. Save the project to a file, then allow site data for this page or leave private browsing.
not-saved-lost =
    Not saved: the browser did not store what was written. The last saved version is kept. Save this project to a file, then reload.
not-saved-moved =
    Not saved: this project was changed in another window. Save this one as a copy to keep both, or open the other version.
not-saved-deleted =
    Not saved: this project was deleted in another window. Restore it from the trash, or save this one as a copy.
not-saved-newer =
    Not saved: a newer version of Battenbook has saved this project (format { $format }). Reload to get the newer version; to keep what you see here, save it to a file first.
not-saved-large =
    Not saved: the project is { $bytes } bytes; the limit is { $most }. Save it to a file and split it into two projects.
no-room-version =
    There is no room for another version. The project itself is kept. Delete old versions, or empty the trash on the start page.

not-imported = Nothing was imported: { $why }
file-large =
    the file is { $bytes } bytes; the limit is { $most }. A project file is far smaller; is it the right file?
file-unreadable = the browser could not read the file. Choose it again.
file-refused = { $why }.
file-newer =
    the file was written by a newer version of Battenbook. Reload to get that version, then open it again.
file-many = the file has { $count } projects; the limit is { $most }. Open them from several files.

link-refused = Nothing was added: { $why }
link-long = the link holds more than a project can have. Ask for the project as a file.
link-damaged = the link was cut short or changed on the way. Ask for it again, or for the project as a file.
link-apart = the codes do not belong together. They are discarded; scan all of them again.
link-cannot = this browser cannot unpack links. Update it, or ask for the project as a file.
code-no-room = There is no room on this device to keep the code until the others come.
