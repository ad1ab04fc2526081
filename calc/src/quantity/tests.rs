//! Checks of the reader and the writer.
