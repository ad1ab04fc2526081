//! Battenbook's pure half: from what was measured in the rig to what to mark, cut, mix, wire and buy.
//!
//! measurements, as typed -> [`project::Project`] -> [`evaluate`] -> for each sheet a
//! [`report::Report`] (answers, working, cautions, drawing, list lines, outcome) or its faults;
//! over all sheets the buy list and the cut list.
//!
//! What this crate does not know: a browser, a clock, files, the network. It never panics on any
//! text, never gives NaN or infinity, and gives the same digits natively and in the browser.
//!
//! The trades (`carpentry`, `electrical`, …) hold formulas, tables and solvers, each with its
//! source; `sheet` holds one file a sheet, which says what is asked, calls the trades, and reports.

pub mod ask;
pub mod body;
pub mod carpentry;
pub mod coating;
pub mod cutting;
pub mod drawing;
pub mod electrical;
pub mod energy;
pub mod fastening;
pub mod fault;
pub mod formula;
pub mod handoff;
pub mod light;
pub mod lists;
pub mod mass;
pub mod node;
pub mod opening;
pub mod outcome;
pub mod part;
pub mod project;
pub mod quantity;
pub mod reader;
pub mod report;
pub mod sheet;
pub mod sorting;
pub mod source;
#[cfg(test)]
mod testing;
mod text;
pub mod thermal;
pub mod words;

pub use cutting::forget_plans;
pub use project::evaluate;
