//! A roof-opening trim cut to ceiling depth, corner by corner.
//!
//! The trim is pushed up from the room. It has a flat flange, which ends against the ceiling, and
//! an upright neck of height H, whose roof-side edge ends against the roof frame. Where the ceiling is
//! nearer to the roof frame than H, the edge meets the roof frame first and the flange stands off
//! the ceiling. With, at one corner,
//!
//! - H: the uncut height, from the flange's face that will touch the ceiling to the roof-side edge,
//! - s: the standoff, from the flange to the ceiling, with the uncut trim seated against the roof
//!   frame,
//! - d: the depth, from the roof frame to the finished ceiling,
//! - c: the clearance, by which the edge is to stay off the roof frame so that the flange surely
//!   meets the ceiling,
//!
//! the seated neck reaches down H from the roof frame, and that is d plus the gap: H = d + s. So
//!
//! - what stays is the depth less the clearance: keep = d - c, measured from the flange,
//! - what comes off is the rest: cut = H - keep = s + c, measured from the roof-side edge.
//!
//! A line traced on the neck along the ceiling, with the uncut trim seated, lies s from the
//! flange, and it is not the line to cut: of the two strips that it parts, the one from the line to
//! the roof-side edge is d high, just what must stay. As much as shows below the ceiling must go,
//! but from the other end: measure s from the roof-side edge and cut there. Whoever saws along
//! the traced line parts the flange from the neck, or, laying the traced line to the edge, keeps
//! only s.
//!
//! The flange is flat and so is each side of the neck. A flat ceiling and a flat roof frame cut each in
//! straight lines, so the line to cut runs straight from corner to corner. Heights along a tilted
//! side are taken as if it stood upright: at 1 in 22 that is 0.1 % off.

mod fault;

use calc_derive::Outcome;
use uom::si::f64::Length;
use uom::si::length::millimeter;

pub use self::fault::Fault;
use crate::coating::range::{OutOfRange, within};
use crate::formula::formula;
use crate::source::Source;
use crate::words::{Id, range as names, trim as words};

/// H = d + s; keep = d - c; cut = s + c.
pub static GEOMETRY: Source = Source::identity_of(words::SOURCE_GEOMETRY);

/// Four points of a rectangle are in one plane where the sums across its diagonals agree.
pub static TWIST: Source = Source::identity_of(words::SOURCE_TWIST);

/// The most that two readings of one corner may differ: 1/16 in.
pub const READINGS_AGREE_MM: f64 = 25.4 / 16.0;

/// How far a flange can be expected to be pulled to a ceiling that is not flat: 1/8 in at a corner.
pub const RIM_FOLLOWS_MM: f64 = 25.4 / 8.0;

/// Where [`RIM_FOLLOWS_MM`] comes from.
pub static RIM_FOLLOWS: Source = Source::practice_of(words::SOURCE_RIM_FOLLOWS);

formula! {
    /// What comes off at a corner whose standoff was read.
    CutOff: "cut = s + c", &GEOMETRY;
    |of| of.standoff + of.clearance => Length as fine;
    /// From the flange to the ceiling, with the uncut trim seated.
    "s" as fine: standoff: Length,
    /// By which the edge is to stay off the roof frame.
    "c" as fine: clearance: Length,
}

formula! {
    /// What stays where it is known what comes off.
    KeepRest: "keep = H − cut", &GEOMETRY;
    |of| of.height - of.cut => Length as fine;
    /// Of the uncut neck.
    "H" as fine: height: Length,
    /// What comes off.
    "cut" as fine: cut: Length,
}

formula! {
    /// What stays at a corner of which only the depth was read.
    Keep: "keep = d − c", &GEOMETRY;
    |of| of.depth - of.clearance => Length as fine;
    /// From the roof frame to the finished ceiling.
    "d" as fine: depth: Length,
    /// By which the edge is to stay off the roof frame.
    "c" as fine: clearance: Length,
}

formula! {
    /// What comes off where it is known what stays.
    CutRest: "cut = H − keep", &GEOMETRY;
    |of| of.height - of.keep => Length as fine;
    /// Of the uncut neck.
    "H" as fine: height: Length,
    /// What stays.
    "keep" as fine: keep: Length,
}

formula! {
    /// How far a flange that stays flat stands off at two corners when it is pressed to the other two.
    RocksBy: "r = |cut₂ + cut₄ − cut₁ − cut₃| / 2", &TWIST;
    |of| (of.second + of.fourth - of.first - of.third).abs() / 2.0 => Length as fine;
    /// What comes off at the first corner.
    "cut₁" as fine: first: Length,
    /// What comes off at the second corner.
    "cut₂" as fine: second: Length,
    /// What comes off at the third corner.
    "cut₃" as fine: third: Length,
    /// What comes off at the fourth corner.
    "cut₄" as fine: fourth: Length,
}

/// What was measured at one corner. With both readings, the standoff is cut to and the depth
/// checks it: the standoff is itself what must come off, the depth leaves it to a difference of
/// two readings.
#[derive(Clone, Debug, PartialEq)]
pub struct Corner {
    /// What the corner is called.
    pub name: String,
    /// From the flange to the ceiling, with the uncut trim seated against the roof frame.
    pub standoff: Option<Length>,
    /// From the roof frame to the finished ceiling.
    pub depth: Option<Length>,
}

/// The trim and what was measured round the opening.
#[derive(Clone, Debug, PartialEq)]
pub struct Flange {
    /// From the flange's face to the roof-side edge, uncut.
    pub height: Length,
    /// The corners in order round the opening, either way; four for the sides between them.
    pub corners: Vec<Corner>,
    /// How far the cut edge is to stay off the roof frame; 0 for none.
    pub clearance: Length,
    /// The least height that must stay, for the trim to be held by.
    pub least_grip: Length,
    /// Length of the sides from the first to the second and from the third to the fourth corner,
    /// and of the two others; not looked at with other than four corners.
    pub sides: Option<(Length, Length)>,
}

/// Where to cut at one corner.
#[derive(Clone, Debug, Outcome, PartialEq)]
pub struct CornerCut {
    /// What the corner is called.
    pub name: String,
    /// What comes off: measured from the roof-side edge.
    pub cut: Length,
    /// What stays: measured from the flange.
    pub keep: Length,
}

/// The line to cut on one side of the unrolled trim: straight from corner to corner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SideCut {
    /// The corner it starts at, counted from 0.
    pub from: usize,
    /// The corner it ends at.
    pub to: usize,
    /// How long the side is, where that was given.
    pub length: Option<Length>,
    /// How far below the roof-side edge the line starts.
    pub cut_from: Length,
    /// How far below the roof-side edge it ends.
    pub cut_to: Length,
    /// How far above the flange it starts.
    pub keep_from: Length,
    /// How far above the flange it ends.
    pub keep_to: Length,
}

/// Where to cut the trim.
#[derive(Clone, Debug, Outcome, PartialEq)]
pub struct Cut {
    /// The corners, in the order given.
    pub corners: Vec<CornerCut>,
    /// The four sides unrolled, from the first corner round to it again; none with other than four
    /// corners.
    #[outcome(skip)]
    pub sides: Vec<SideCut>,
    /// The most that comes off less the least.
    pub uneven: Length,
    /// How far from flat the four corners are; none with other than four.
    #[outcome(skip)]
    pub twist: Option<Twist>,
}

/// How far ceiling and roof frame are from flat.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Twist {
    /// First + third - second - fourth corner's depth: 0 where ceiling and roof frame are both
    /// flat. Source: [`TWIST`].
    pub of_corners: Length,
    /// How far a flange that stays flat stands off the ceiling at two corners when pressed to the
    /// other two: half the twist.
    pub rocks_by: Length,
    /// Whether the flange can be drawn to the ceiling all the same. Source: [`RIM_FOLLOWS`].
    pub rim_follows: bool,
}

/// Where to cut a trim so that its flange meets the ceiling. Source: [`GEOMETRY`].
///
/// # Errors
/// Every fault there is, in the order of the corners. Height from 1 to 1000 mm, clearance from 0
/// to 25 mm, least grip from 0 mm to the height, sides from 10 to 5000 mm, readings from -1000 to
/// 1000 mm (negative standoffs are told as a trim that is too low).
pub fn cut(flange: &Flange) -> Result<Cut, Vec<Fault>> {
    let of_flange = |range| vec![Fault::Range { corner: None, range }];
    let mm = |length: Length| length.get::<millimeter>();
    let height =
        within(names::NECK_HEIGHT, mm(flange.height), 1.0, 1000.0, "mm").map_err(of_flange)?;
    let clearance =
        within(names::CLEARANCE, mm(flange.clearance), 0.0, 25.0, "mm").map_err(of_flange)?;
    let least =
        within(names::LEAST_GRIP, mm(flange.least_grip), 0.0, height, "mm").map_err(of_flange)?;
    for side in flange.sides.iter().flat_map(|(length, width)| [*length, *width]) {
        within(names::SIDE_OF_THE_OPENING, mm(side), 10.0, 5000.0, "mm").map_err(of_flange)?;
    }
    let count = flange.corners.len();
    if count == 0 {
        return Err(vec![Fault::NoCorners]);
    }

    let mut faults = Vec::new();
    let mut standoffs = Vec::with_capacity(count);
    for (corner, readings) in flange.corners.iter().enumerate() {
        match standoff(readings, height) {
            Ok(standoff) => standoffs.push(standoff),
            Err(fault) => faults.push(fault.at(corner)),
        }
    }
    let nothing =
        standoffs.len() == count && standoffs.iter().all(|standoff| standoff.abs() <= EVEN_MM);
    if faults.is_empty() && nothing {
        return Err(vec![Fault::NothingToCut]);
    }
    let mut cuts = Vec::with_capacity(count);
    for (corner, standoff) in standoffs.iter().enumerate().filter(|_| standoffs.len() == count) {
        let cut = standoff + clearance;
        let keep = height - cut;
        if *standoff < -EVEN_MM {
            faults.push(Fault::TallerFlangeNeeded { corner, short_by: millimeters(-standoff) });
        } else if keep < least - EVEN_MM || keep <= EVEN_MM {
            let (keep, least) = (millimeters(keep.max(0.0)), millimeters(least));
            faults.push(Fault::TooLittleLeft { corner, keep, least });
        }
        cuts.push(cut.max(0.0));
    }
    if faults.is_empty() { Ok(drawn(flange, height, &cuts)) } else { Err(faults) }
}

/// Lengths closer than this are equal: far below what a tape shows, far above what floats lose.
const EVEN_MM: f64 = 1e-6;

fn millimeters(value: f64) -> Length {
    Length::new::<millimeter>(value)
}

enum CornerFault {
    NoReading,
    Disagree { standoff: f64, from_depth: f64 },
    Range(OutOfRange),
}

impl CornerFault {
    fn at(self, corner: usize) -> Fault {
        match self {
            Self::NoReading => Fault::NoReading { corner },
            Self::Disagree { standoff, from_depth } => Fault::ReadingsDisagree {
                corner,
                standoff: millimeters(standoff),
                from_depth: millimeters(from_depth),
            },
            Self::Range(range) => Fault::Range { corner: Some(corner), range },
        }
    }
}

fn standoff(readings: &Corner, height: f64) -> Result<f64, CornerFault> {
    let reading = |what: Id, length: Option<Length>| {
        let value = length.map(|length| length.get::<millimeter>());
        value.map(|value| within(what, value, -1000.0, 1000.0, "mm")).transpose()
    };
    let standoff = reading(names::STANDOFF, readings.standoff).map_err(CornerFault::Range)?;
    let depth = match readings.depth {
        Some(depth) => {
            let depth = depth.get::<millimeter>();
            Some(within(names::DEPTH, depth, 0.0, 1000.0, "mm").map_err(CornerFault::Range)?)
        }
        None => None,
    };
    match (standoff, depth) {
        (None, None) => Err(CornerFault::NoReading),
        (Some(standoff), None) => Ok(standoff),
        (None, Some(depth)) => Ok(height - depth),
        (Some(standoff), Some(depth)) => {
            let from_depth = height - depth;
            if (standoff - from_depth).abs() > READINGS_AGREE_MM + EVEN_MM {
                Err(CornerFault::Disagree { standoff, from_depth })
            } else {
                Ok(standoff)
            }
        }
    }
}

fn drawn(flange: &Flange, height: f64, cuts: &[f64]) -> Cut {
    let keep = |cut: f64| millimeters(height - cut);
    let corners = flange.corners.iter().zip(cuts).map(|(corner, cut)| CornerCut {
        name: corner.name.clone(),
        cut: millimeters(*cut),
        keep: keep(*cut),
    });
    let side = |from: usize, cut_from: f64, cut_to: f64| SideCut {
        from,
        to: (from + 1) % 4,
        length: flange
            .sides
            .map(|(first, other)| if from.is_multiple_of(2) { first } else { other }),
        cut_from: millimeters(cut_from),
        cut_to: millimeters(cut_to),
        keep_from: keep(cut_from),
        keep_to: keep(cut_to),
    };
    let (sides, twist) = match *cuts {
        [first, second, third, fourth] => {
            let round = [(first, second), (second, third), (third, fourth), (fourth, first)];
            let sides = round.iter().enumerate().map(|(at, (from, to))| side(at, *from, *to));
            // Depth is height less standoff, so the signs turn round.
            (sides.collect(), Some(twist(second + fourth - first - third)))
        }
        _ => (Vec::new(), None),
    };
    let most = cuts.iter().copied().fold(0.0, f64::max);
    let least = cuts.iter().copied().fold(f64::INFINITY, f64::min);
    Cut { corners: corners.collect(), sides, uneven: millimeters(most - least), twist }
}

fn twist(sum: f64) -> Twist {
    let of_corners = if sum.abs() <= EVEN_MM { 0.0 } else { sum };
    let rocks_by = of_corners.abs() / 2.0;
    Twist {
        of_corners: millimeters(of_corners),
        rocks_by: millimeters(rocks_by),
        rim_follows: rocks_by <= RIM_FOLLOWS_MM + EVEN_MM,
    }
}

#[cfg(test)]
mod tests;
