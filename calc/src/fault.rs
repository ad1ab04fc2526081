//! What is wrong with an input, and what would be right.

/// A problem with one input of a sheet or of the body.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fault {
    /// Path of the input, from the sheet's inputs (or the body) down: `areas.0.length`.
    /// Empty where the whole is meant.
    pub field: String,
    /// What is wrong, and what would be right.
    pub message: String,
}

impl Fault {
    /// A fault of the input at `field`.
    pub fn new(field: impl Into<String>, message: impl Into<String>) -> Self {
        Self { field: field.into(), message: message.into() }
    }
}
