//! What the browser does for the app when asked: downloads, the clipboard, keeping data for good.

/// Whether the browser promises to keep the page's data when space runs short.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stay {
    /// It does.
    Promised,
    /// It does not: an export is the only backup.
    NotPromised,
    /// It cannot be asked, or has not answered in time.
    NotKnown,
}

/// Offers a text as a file; false where the browser could not be asked. Call it from a click.
pub fn download(file_name: &str, text: &str) -> bool {
    todo!()
}

/// Puts a text on the clipboard and calls back with whether that worked. Call it from a click, and
/// show the text in a selectable field too.
pub fn copy(text: &str, done: impl FnOnce(bool) + 'static) {
    todo!()
}

/// Asks the browser to keep the page's data when space runs short. Call it after something that the
/// person did, such as the first save: some browsers ask in turn.
pub fn ask_to_stay(done: impl FnOnce(Stay) + 'static) {
    todo!()
}
