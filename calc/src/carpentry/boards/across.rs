//! Where the screws of a mark stand across the board.

use super::SupportMark;
use crate::source::Source;
use crate::words::carpentry as words;

/// Two screws side by side.
pub static ACROSS: Source = Source::practice_of(words::SOURCE_ACROSS);
/// Nearer to an edge than this no screw of two stands. [mm]
pub const LEAST_ACROSS_MM: f64 = 15.875;

/// Where the screws of a mark stand, from the board's right edge: one in the middle of what stays of the board there, or two.
/// Source: [`ACROSS`]. [mm]
pub fn heights_mm(mark: &SupportMark, screws_across: u32) -> Vec<f64> {
    let (low, high) = mark.strip_mm;
    // Beside a cut-out two have to keep off its edge as well.
    let near = mark.beside && (high - low) / 4.0 < mark.edge_mm;
    across_mm(mark.strip_mm, if near { 1 } else { screws_across })
}

/// As [`heights_mm`], for a strip between two heights. Source: [`ACROSS`]. [mm]
pub fn across_mm((low, high): (f64, f64), screws_across: u32) -> Vec<f64> {
    let quarter = (high - low) / 4.0;
    if screws_across > 1 && quarter >= LEAST_ACROSS_MM {
        vec![low + quarter, high - quarter]
    } else {
        vec![f64::midpoint(low, high)]
    }
}
