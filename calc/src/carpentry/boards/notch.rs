//! What an opening cuts out of a board.

use crate::sorting::sort_by;

/// Less than this is no cut. [mm]
const SLACK_MM: f64 = 1e-3;

/// An opening in the field, between its own edges.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Opening {
    /// Its nearest edge to the front wall. [mm]
    pub x_mm: f64,
    /// Its nearest edge to the left wall. [mm]
    pub y_mm: f64,
    /// Along the boards. [mm]
    pub length_mm: f64,
    /// Across the boards. [mm]
    pub width_mm: f64,
}

/// The edge that a notch is cut into, seen facing +x.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Edge {
    /// The edge of greater y.
    Left,
    /// The edge of smaller y.
    Right,
    /// The whole width is cut away.
    Through,
}

impl Edge {
    /// Its name: `left`, `right`, `through`.
    pub fn name(self) -> &'static str {
        match self {
            Self::Left => "left",
            Self::Right => "right",
            Self::Through => "through",
        }
    }
}

/// A notch, a cut-out or a gap in a board.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Notch {
    /// Index of the opening.
    pub opening: usize,
    /// Where it begins, from the piece's left end. [mm]
    pub from_mm: f64,
    /// Where it ends, from the piece's left end. [mm]
    pub to_mm: f64,
    /// The edge it is cut into; for a cut-out inside the board the nearer one, from which it is measured.
    pub edge: Edge,
    /// How deep it reaches from that edge; the board's width where it cuts it through. [mm]
    pub depth_mm: f64,
    /// What stays between that edge and a cut-out inside the board; zero for a notch. [mm]
    pub inset_mm: f64,
}

impl Notch {
    /// Where it lies across a board, from the right edge. [mm]
    pub fn across_mm(&self, width_mm: f64) -> (f64, f64) {
        match self.edge {
            Edge::Right => (self.inset_mm, self.depth_mm),
            Edge::Left => (width_mm - self.depth_mm, width_mm - self.inset_mm),
            Edge::Through => (0.0, width_mm),
        }
    }
}

/// The widest strip of a board's width that cuts leave; `None` where they leave none. [mm]
pub(super) fn widest_strip(width_mm: f64, mut cuts: Vec<(f64, f64)>) -> Option<(f64, f64)> {
    sort_by(&mut cuts, |a, b| a.0.total_cmp(&b.0));
    let mut at = 0.0;
    let mut widest: Option<(f64, f64)> = None;
    for (low, high) in cuts.into_iter().chain([(width_mm, width_mm)]) {
        let wider = widest.is_none_or(|(from, to)| low - at > to - from);
        if low - at > SLACK_MM && wider {
            widest = Some((at, low));
        }
        at = f64::max(at, high);
    }
    widest
}

/// What an opening, `clearance_mm` wider on all sides, cuts out of the piece over `along_mm` and `across_mm`.
pub(super) fn notch(
    index: usize,
    opening: &Opening,
    clearance_mm: f64,
    along_mm: (f64, f64),
    across_mm: (f64, f64),
) -> Option<Notch> {
    let from = (opening.x_mm - clearance_mm).max(along_mm.0);
    let to = (opening.x_mm + opening.length_mm + clearance_mm).min(along_mm.1);
    let low = (opening.y_mm - clearance_mm).max(across_mm.0);
    let high = (opening.y_mm + opening.width_mm + clearance_mm).min(across_mm.1);
    if to - from <= SLACK_MM || high - low <= SLACK_MM {
        return None;
    }
    let (below, above) = (low - across_mm.0, across_mm.1 - high);
    let (edge, depth_mm, inset_mm) = match (below <= SLACK_MM, above <= SLACK_MM) {
        (true, true) => (Edge::Through, across_mm.1 - across_mm.0, 0.0),
        (true, false) => (Edge::Right, high - across_mm.0, 0.0),
        (false, true) => (Edge::Left, across_mm.1 - low, 0.0),
        (false, false) if below <= above => (Edge::Right, high - across_mm.0, below),
        (false, false) => (Edge::Left, across_mm.1 - low, above),
    };
    Some(Notch {
        opening: index,
        from_mm: from - along_mm.0,
        to_mm: to - along_mm.0,
        edge,
        depth_mm,
        inset_mm,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    const HATCH: Opening = Opening { x_mm: 1000.0, y_mm: 300.0, length_mm: 400.0, width_mm: 250.0 };

    fn cut(across_mm: (f64, f64)) -> Option<Notch> {
        notch(0, &HATCH, 5.0, (200.0, 1300.0), across_mm)
    }

    /// Worked by hand: the cut runs from 995 to 1405 along and from 295 to 555 across.
    #[test]
    fn the_edge_is_the_one_that_is_cut() {
        let left = cut((200.0, 320.0)).unwrap();
        assert_eq!((left.edge, left.depth_mm, left.inset_mm), (Edge::Left, 25.0, 0.0));
        // The piece ends at 1300, inside the opening.
        assert_eq!((left.from_mm, left.to_mm), (795.0, 1100.0));
        let through = cut((320.0, 440.0)).unwrap();
        assert_eq!((through.edge, through.depth_mm), (Edge::Through, 120.0));
        let right = cut((440.0, 560.0)).unwrap();
        assert_eq!((right.edge, right.depth_mm), (Edge::Right, 115.0));
        assert_eq!(cut((555.0, 675.0)), None);
        assert_eq!(notch(0, &HATCH, 5.0, (1405.0, 2000.0), (320.0, 440.0)), None);
    }

    #[test]
    fn the_widest_strip_that_cuts_leave() {
        assert_eq!(widest_strip(130.0, vec![]), Some((0.0, 130.0)));
        assert_eq!(widest_strip(130.0, vec![(40.0, 60.0)]), Some((60.0, 130.0)));
        assert_eq!(widest_strip(130.0, vec![(100.0, 130.0), (0.0, 60.0)]), Some((60.0, 100.0)));
        assert_eq!(widest_strip(130.0, vec![(50.0, 130.0), (0.0, 60.0)]), None);
    }

    #[test]
    fn a_cut_out_inside_the_board_is_measured_from_the_nearer_edge() {
        let inside = cut((275.0, 605.0)).unwrap();
        assert_eq!((inside.edge, inside.depth_mm, inside.inset_mm), (Edge::Right, 280.0, 20.0));
        let inside = cut((200.0, 565.0)).unwrap();
        assert_eq!((inside.edge, inside.depth_mm, inside.inset_mm), (Edge::Left, 270.0, 10.0));
    }
}
