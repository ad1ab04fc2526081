//! Where lamps go: even rows and columns, and the nearest spot clear of supports and openings.

use std::fmt;

use uom::si::f64::Length;
use uom::si::length::millimeter;

use super::nearest::{Free, Rectangle};
use crate::source::Source;

/// Even rows and columns: half a pitch from the walls.
pub const EVEN_ROWS: Source =
    Source::common_practice("lamps a full pitch apart and half a pitch from the walls");

/// A spot on the ceiling: x along the length, y across the width, from one corner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spot {
    /// Along the length.
    pub x: Length,
    /// Across the width.
    pub y: Length,
}

/// A ceiling with a corner at the origin; each side 0.1 to 50 m.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ceiling {
    /// Along x.
    pub length: Length,
    /// Along y.
    pub width: Length,
}

/// A rib or strip that runs across the whole width.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Support {
    /// Its centre line along x.
    pub centre: Length,
    /// Its width along x.
    pub width: Length,
}

/// A hatch or vent, its trim flange included.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Opening {
    /// Corner nearest to the origin.
    pub corner: Spot,
    /// Along x.
    pub length: Length,
    /// Along y.
    pub width: Length,
}

/// What lamps must keep clear of, and where they may sit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Obstacles<'a> {
    /// Ribs and strips.
    pub supports: &'a [Support],
    /// Hatches and vents.
    pub openings: &'a [Opening],
    /// Centre lines of the boards along y, where lamps are to be centred on boards.
    pub board_centres: Option<&'a [Length]>,
}

/// The lamp's face.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fitting {
    /// Diameter of the rim, 5 mm to 1 m.
    pub rim: Length,
    /// Clearance from the rim to whatever is in the way, and to the walls, 0 to 1 m.
    pub clearance: Length,
}

/// What symmetry the moved lamps are to keep.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Symmetry {
    /// Left and right of the centre line along the length mirror each other.
    pub across: bool,
    /// Front and rear half mirror each other.
    pub along: bool,
}

/// A lamp's place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Placed {
    /// Where it was to go.
    pub wanted: Spot,
    /// Where it goes: the nearest clear spot, or where there is none, the wanted one.
    pub at: Spot,
    /// How far it was moved.
    pub moved: Length,
    /// What is wrong with the spot, if anything.
    pub problem: Option<Problem>,
    /// The symmetry that was asked for is kept by this lamp and its mirror images.
    pub symmetric: bool,
}

/// What is wrong with a lamp's place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Problem {
    /// There is no clear spot on the whole ceiling.
    NoClearSpot,
    /// It comes too close to another lamp, counted from 0.
    TooCloseTo(usize),
}

/// Why no lamps were placed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PlacementError {
    /// The ceiling's sides are out of range.
    Ceiling,
    /// No rows or columns, or too many lamps.
    Count,
    /// The rim is out of range.
    Rim,
    /// The clearance is out of range.
    Clearance,
    /// A support is out of range; supports count from 0.
    Support(usize),
    /// An opening is out of range; openings count from 0.
    Opening(usize),
    /// A board's centre line is out of range; boards count from 0.
    Board(usize),
    /// A wanted spot is off the ceiling; spots count from 0.
    Spot(usize),
}

impl fmt::Display for PlacementError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Ceiling => f.write_str("the ceiling's sides must be from 0.1 to 50 m"),
            Self::Count => f.write_str("there must be at least one lamp and at most 400"),
            Self::Rim => f.write_str("the rim's diameter must be from 5 mm to 1 m"),
            Self::Clearance => f.write_str("the clearance must be from 0 to 1 m"),
            Self::Support(at) => write!(
                f,
                "support {}: its centre must lie within 100 m and its width from 0 to 1 m",
                at + 1
            ),
            Self::Opening(at) => write!(
                f,
                "opening {}: its corner must lie within 100 m and its sides from 0 to 50 m",
                at + 1
            ),
            Self::Board(at) => write!(f, "board {}: its centre line must lie within 100 m", at + 1),
            Self::Spot(at) => write!(f, "lamp {}: its place must lie on the ceiling", at + 1),
        }
    }
}

impl std::error::Error for PlacementError {}

/// Spots in even rows and columns, half a pitch from the walls: rows run along the length and count across the width.
/// The first row comes first, each from the origin on.
///
/// # Errors
/// The ceiling or the number of lamps out of range.
pub fn grid(ceiling: Ceiling, rows: usize, columns: usize) -> Result<Vec<Spot>, PlacementError> {
    let (length, width) = sides_mm(ceiling)?;
    let lamps = rows.saturating_mul(columns);
    if !(1..=MOST_LAMPS).contains(&lamps) {
        return Err(PlacementError::Count);
    }
    let middle = |index: usize, of: usize, side: f64| (index as f64 + 0.5) * side / of as f64;
    Ok((0..lamps)
        .map(|lamp| {
            spot(middle(lamp % columns, columns, length), middle(lamp / columns, rows, width))
        })
        .collect())
}

/// Each wanted spot, or the nearest clear one by rim radius and clearance.
///
/// Every lamp moves as little as it can, for itself: two that come too close are told, not moved again.
///
/// # Errors
/// A figure out of range, or a wanted spot off the ceiling.
pub fn place(
    ceiling: Ceiling,
    obstacles: Obstacles,
    fitting: Fitting,
    wanted: &[Spot],
) -> Result<Vec<Placed>, PlacementError> {
    let (length, width) = sides_mm(ceiling)?;
    let room = room(ceiling, obstacles, fitting)?;
    if !(1..=MOST_LAMPS).contains(&wanted.len()) {
        return Err(PlacementError::Count);
    }
    let mut placed = Vec::with_capacity(wanted.len());
    for (at, wanted) in wanted.iter().enumerate() {
        let (x, y) = millimetres(*wanted);
        if !(0.0..=length).contains(&x) || !(0.0..=width).contains(&y) {
            return Err(PlacementError::Spot(at));
        }
        placed.push(put(*wanted, room.nearest(x, y), true));
    }
    tell_neighbours(&mut placed, fitting);
    Ok(placed)
}

/// An even grid whose moved lamps keep their symmetry: a lamp and its mirror images move together to the nearest spot
/// that is clear for all of them. Where there is none, each goes to its own nearest spot and says so.
///
/// # Errors
/// A figure out of range.
pub fn place_grid(
    ceiling: Ceiling,
    obstacles: Obstacles,
    fitting: Fitting,
    rows: usize,
    columns: usize,
    symmetry: Symmetry,
) -> Result<Vec<Placed>, PlacementError> {
    let wanted = grid(ceiling, rows, columns)?;
    let (length, width) = sides_mm(ceiling)?;
    let room = room(ceiling, obstacles, fitting)?;
    let mirrored =
        room.mirrored(symmetry.along.then_some(length), symmetry.across.then_some(width));
    let mut placed = Vec::with_capacity(wanted.len());
    for (lamp, wanted) in wanted.iter().enumerate() {
        let (row, column) = (lamp / columns, lamp % columns);
        // The image in the first half stands for all; the others are mirrored from it.
        let flip_y = symmetry.across && row >= rows.div_ceil(2);
        let flip_x = symmetry.along && column >= columns.div_ceil(2);
        let (x, y) = millimetres(*wanted);
        let mirror = |x: f64, y: f64| {
            (if flip_x { length - x } else { x }, if flip_y { width - y } else { y })
        };
        let (x0, y0) = mirror(x, y);
        // A lamp that is its own image stays on its centre line.
        let on_line_x = symmetry.along && 2 * column + 1 == columns;
        let on_line_y = symmetry.across && 2 * row + 1 == rows;
        let off_line_x = symmetry.along && !on_line_x;
        let off_line_y = symmetry.across && !on_line_y;
        let (middle_x, middle_y) = (length / 2.0, width / 2.0);
        let together = mirrored
            .held(on_line_x.then_some(middle_x), on_line_y.then_some(middle_y))
            .off_line(
                off_line_x.then_some(middle_x),
                off_line_y.then_some(middle_y),
                apart_mm(fitting),
            )
            .nearest(x0, y0)
            .map(|(x, y)| mirror(x, y));
        placed.push(match together {
            Some(at) => put(*wanted, Some(at), true),
            None => put(*wanted, room.nearest(x, y), !symmetry.across && !symmetry.along),
        });
    }
    tell_neighbours(&mut placed, fitting);
    Ok(placed)
}

impl Placed {
    /// The lamp sits clear of everything.
    pub fn clear(&self) -> bool {
        self.problem.is_none()
    }
}

const MOST_LAMPS: usize = 400;

fn spot(x_mm: f64, y_mm: f64) -> Spot {
    Spot { x: Length::new::<millimeter>(x_mm), y: Length::new::<millimeter>(y_mm) }
}

fn millimetres(spot: Spot) -> (f64, f64) {
    (spot.x.get::<millimeter>(), spot.y.get::<millimeter>())
}

fn sides_mm(ceiling: Ceiling) -> Result<(f64, f64), PlacementError> {
    let (length, width) = (ceiling.length.get::<millimeter>(), ceiling.width.get::<millimeter>());
    let side = 100.0..=50_000.0;
    if side.contains(&length) && side.contains(&width) {
        Ok((length, width))
    } else {
        Err(PlacementError::Ceiling)
    }
}

/// The ceiling as it is free for a lamp's centre.
fn room(ceiling: Ceiling, obstacles: Obstacles, fitting: Fitting) -> Result<Free, PlacementError> {
    let (length, width) = sides_mm(ceiling)?;
    let (rim, clearance) = (fitting.rim.get::<millimeter>(), fitting.clearance.get::<millimeter>());
    if !(5.0..=1000.0).contains(&rim) {
        return Err(PlacementError::Rim);
    }
    if !(0.0..=1000.0).contains(&clearance) {
        return Err(PlacementError::Clearance);
    }
    let somewhere = -100_000.0..=100_000.0;
    let mut supports = Vec::with_capacity(obstacles.supports.len());
    for (at, support) in obstacles.supports.iter().enumerate() {
        let (centre, across) =
            (support.centre.get::<millimeter>(), support.width.get::<millimeter>());
        if !somewhere.contains(&centre) || !(0.0..=1000.0).contains(&across) {
            return Err(PlacementError::Support(at));
        }
        supports.push((centre - across / 2.0, centre + across / 2.0));
    }
    let mut openings = Vec::with_capacity(obstacles.openings.len());
    for (at, opening) in obstacles.openings.iter().enumerate() {
        let (x, y) = millimetres(opening.corner);
        let (long, wide) = (opening.length.get::<millimeter>(), opening.width.get::<millimeter>());
        let side = 0.0..=50_000.0;
        if !somewhere.contains(&x)
            || !somewhere.contains(&y)
            || !side.contains(&long)
            || !side.contains(&wide)
        {
            return Err(PlacementError::Opening(at));
        }
        openings.push(Rectangle { x: (x, x + long), y: (y, y + wide) });
    }
    let mut lines = None;
    if let Some(centres) = obstacles.board_centres {
        let centres: Vec<f64> = centres.iter().map(|c| c.get::<millimeter>()).collect();
        if let Some(at) = centres.iter().position(|c| !somewhere.contains(c)) {
            return Err(PlacementError::Board(at));
        }
        lines = Some(centres);
    }
    Ok(Free {
        area: Rectangle { x: (0.0, length), y: (0.0, width) },
        reach: rim / 2.0 + clearance,
        supports,
        openings,
        allowed_x: None,
        allowed_y: lines,
    })
}

fn put(wanted: Spot, at: Option<(f64, f64)>, symmetric: bool) -> Placed {
    let (x, y) = millimetres(wanted);
    let (to_x, to_y) = at.unwrap_or((x, y));
    Placed {
        wanted,
        at: spot(to_x, to_y),
        moved: Length::new::<millimeter>(libm::hypot(to_x - x, to_y - y)),
        problem: if at.is_some() { None } else { Some(Problem::NoClearSpot) },
        symmetric,
    }
}

/// Least distance between two lamps' centres, mm: the clearance between their rims.
fn apart_mm(fitting: Fitting) -> f64 {
    fitting.rim.get::<millimeter>() + fitting.clearance.get::<millimeter>()
}

/// Marks lamps whose rims come closer than the clearance.
fn tell_neighbours(placed: &mut [Placed], fitting: Fitting) {
    let apart = apart_mm(fitting) - 1e-6;
    let spots: Vec<(f64, f64)> = placed.iter().map(|p| millimetres(p.at)).collect();
    for (lamp, placed) in placed.iter_mut().enumerate() {
        let near = spots.iter().enumerate().position(|(other, at)| {
            other != lamp && libm::hypot(at.0 - spots[lamp].0, at.1 - spots[lamp].1) < apart
        });
        if placed.problem.is_none() {
            placed.problem = near.map(Problem::TooCloseTo);
        }
    }
}

#[cfg(test)]
mod tests;
