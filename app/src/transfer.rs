//! Takes projects out of the browser and into it: files, clipboard, and the browser's word to keep them.

mod code;
mod export;
mod import;
mod link;
mod names;
mod pack;
mod pass;
mod platform;
mod share;

pub use code::drawn;
pub use export::{Collection, export_all, export_one, file_name};
pub use import::{Import, ImportError, Imported, Reading, Refused, keep, read, read_file};
pub use link::{
    BadLink, Carried, LONGEST_CODE, MAX_LINK_CHARS, MOST_CODES, code_links, compact, from_letters,
    join, read_link, to_letters, whole_link,
};
pub use pack::{pack, unpack};
pub use pass::{Arrived, Offer, Taken, data_of, leave, look_at, project_of, take_in};
pub use platform::{Stay, ask_to_stay, copy, download};
pub use share::{can_share, share};
