//! What a cut plan leaves no margin for.

use super::cut_stock::{CutPlan, Stock};
use crate::source::Source;
use crate::words::carpentry as words;

/// Bars that are used to their end.
pub static MARGIN: Source = Source::practice_of(words::SOURCE_MARGIN);
/// What [`MARGIN`] asks for. [mm]
pub const MARGIN_MM: f64 = 6.35;

/// How many bars of a plan leave less than [`MARGIN_MM`] beyond their pieces, the kerfs between them and what was trimmed off.
pub fn tight_bars(plan: &CutPlan, stock: &[Stock], kerf_mm: f64, end_trim_mm: f64) -> u32 {
    let mut tight = 0u32;
    for pattern in &plan.patterns {
        let Some(stock) = stock.get(pattern.stock) else { continue };
        let pieces: f64 = pattern.pieces.iter().map(|piece| piece.length_mm).sum();
        let kerfs = pattern.pieces.len().saturating_sub(1) as f64 * kerf_mm;
        if stock.length_mm - end_trim_mm - pieces - kerfs < MARGIN_MM - 1e-6 {
            tight = tight.saturating_add(pattern.count);
        }
    }
    tight
}

/// Boards that may have to be left out when the stock is gone through.
pub static CULL: Source = Source::practice_of(words::SOURCE_CULL);
/// The share of [`CULL`]. [%]
pub const USUAL_CULL_PERCENT: f64 = 10.0;

/// Spare boards beside so many that are cut: rounded up. Source: [`CULL`].
pub fn spare_boards(boards: u32, cull_percent: f64) -> u32 {
    let spare = (f64::from(boards) * cull_percent / 100.0 - 1e-9).ceil();
    if spare > 0.0 { spare as u32 } else { 0 }
}

#[cfg(test)]
mod tests {
    use super::super::cut_stock::{CutTask, Piece, plan};
    use super::*;

    /// Worked by hand: two pieces of 1195 mm and a kerf of 3 mm leave 7 mm of 2400 mm, of 1196 mm 5 mm.
    #[test]
    fn a_bar_that_is_used_to_its_end_is_counted() {
        let stock = vec![Stock { length_mm: 2400.0, price: None, on_hand: 0, available: None }];
        let tight = |length_mm: f64, count: u32| {
            let task = CutTask {
                pieces: vec![Piece { label: 0, length_mm, count }],
                stock: stock.clone(),
                kerf_mm: 3.0,
                end_trim_mm: 0.0,
                effort: 1_000_000,
            };
            tight_bars(&plan(&task).unwrap(), &stock, 3.0, 0.0)
        };
        assert_eq!((tight(1195.0, 6), tight(1196.0, 6), tight(1196.0, 5)), (0, 3, 2));
    }

    #[test]
    fn spares_are_rounded_up() {
        let spare = |boards| spare_boards(boards, 10.0);
        assert_eq!([0, 1, 10, 11, 30].map(spare), [0, 1, 1, 2, 3]);
        assert_eq!(spare_boards(7, 0.0), 0);
    }
}
