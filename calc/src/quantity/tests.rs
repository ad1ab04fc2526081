//! Checks of the reader and the writer.

mod factors;
mod properties;
mod reading;
mod refusals;
mod writing;
