//! Takes projects out of the browser and into it: files, clipboard, and the browser's word to keep them.

mod export;
mod import;
mod names;
mod platform;

pub use export::{Collection, export_all, export_one, file_name};
pub use import::{
    Import, ImportError, Imported, MAX_IMPORT_BYTES, MOST_PROJECTS, MOST_SHEETS, Refusal, Refused,
    keep, read, read_file,
};
pub use platform::{Stay, ask_to_stay, copy, download};
