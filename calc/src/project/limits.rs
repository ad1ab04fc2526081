//! How much a project and a file may hold: one place for what is typed, opened from a file or a link, and saved.
//!
//! Sizes are those of the text as it is kept (`Project::to_text`), wherever it comes from: what can be saved can be opened again.
//! Within one sheet no list of rows or values has more than `ask::MOST_ROWS`.

/// The largest project: far more than one of hundreds of sheets. [bytes of its text as kept]
pub const MAX_BYTES: usize = 2_000_000;

/// The most sheets in one project.
pub const MOST_SHEETS: usize = 500;

/// The most projects in one file: more than fit into the room that a browser gives (5.2 million characters, some 300 for the
/// smallest project with its keys).
pub const MOST_PROJECTS: usize = 20_000;

/// The largest file that is read: all projects that a browser can keep, three bytes a character. [bytes]
pub const MAX_FILE_BYTES: usize = 16_000_000;

/// The most rows of pieces that several sheets may have to be planned together: as many as one sheet.
pub const MOST_TOGETHER: usize = crate::ask::MOST_ROWS;
