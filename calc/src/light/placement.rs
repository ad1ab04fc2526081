//! Where lamps go: even rows and columns, and the nearest spot clear of supports and openings.

use uom::si::f64::Length;
use uom::si::length::millimeter;

use super::arrange::{Arrangement, Group, Mirror, Task};
use super::most::fewer_than;
use super::nearest::{Free, Rectangle};
use crate::formula::formula;
use crate::source::Source;
use crate::words::{Msg, lights as words};

/// Even rows and columns: half a pitch from the walls.
pub const EVEN_ROWS: Source = Source::practice_of(words::SOURCE_EVEN_ROWS);

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
    /// There is no clear spot on the whole ceiling, not for one lamp.
    NoClearSpot,
    /// It comes too close to another lamp: no arrangement of so many lamps was found.
    TooClose {
        /// The other lamp, counted from 0.
        to: usize,
        /// No more lamps than this can be clear of everything and each other, so that no arrangement exists; none
        /// where that is not proved.
        at_most: Option<usize>,
    },
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

impl From<PlacementError> for Msg {
    fn from(error: PlacementError) -> Self {
        match error {
            PlacementError::Ceiling => words::WRONG_CEILING.into(),
            PlacementError::Count => words::WrongCount { most: MOST_LAMPS }.into(),
            PlacementError::Rim => words::WRONG_RIM.into(),
            PlacementError::Clearance => words::WRONG_CLEARANCE.into(),
            PlacementError::Support(at) => words::WrongRib { number: at + 1 }.into(),
            PlacementError::Opening(at) => words::WrongOpening { number: at + 1 }.into(),
            PlacementError::Board(at) => words::WrongBoard { number: at + 1 }.into(),
            PlacementError::Spot(at) => words::WrongPlace { number: at + 1 }.into(),
        }
    }
}

formula! {
    /// From one to the next of those that stand evenly on a side, half of it from each wall.
    Pitch: "p = s / n", &EVEN_ROWS;
    |of| of.side / f64::from(of.count) => Length as length;
    /// From wall to wall.
    "s" as length: side: Length,
    /// How many.
    "n" as count: count: u32,
}

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
/// Every lamp moves as little as it can, for itself. Where two would come too close there, they are placed one after
/// another in several orders, and the arrangement kept that moves them least of those that were found; that no
/// arrangement exists is said only where it is proved.
///
/// # Errors
/// A figure out of range, or a wanted spot off the ceiling.
///
/// # Source
/// Geometry; for the proof [`super::most::CELLS`].
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
    let spots: Vec<(f64, f64)> = wanted.iter().map(|spot| millimetres(*spot)).collect();
    let on_it =
        |spot: &(f64, f64)| (0.0..=length).contains(&spot.0) && (0.0..=width).contains(&spot.1);
    if let Some(at) = spots.iter().position(|spot| !on_it(spot)) {
        return Err(PlacementError::Spot(at));
    }
    let groups = spots
        .iter()
        .enumerate()
        .map(|(lamp, &wanted)| Group {
            free: room.clone(),
            wanted,
            lamps: vec![(lamp, Mirror::default())],
        })
        .collect();
    let task = Task { room, groups, wanted: spots, mirror: Mirror::default(), any_symmetry: true };
    Ok(told(&task, wanted, &task.arranged()))
}

/// An even grid whose moved lamps keep their symmetry: a lamp and its mirror images move together to the nearest spot
/// that is clear for all of them. Where there is none, each goes to its own nearest spot and says so. Lamps that would
/// come too close are treated as in [`place`], the symmetry kept where an arrangement that keeps it is found.
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
    let mirror =
        Mirror { x: symmetry.along.then_some(length), y: symmetry.across.then_some(width) };
    let mirrored = room.mirrored(mirror.x, mirror.y);
    // The image in the first half stands for all; the others are mirrored from it.
    let first_rows = if symmetry.across { rows.div_ceil(2) } else { rows };
    let first_columns = if symmetry.along { columns.div_ceil(2) } else { columns };
    let mut groups = Vec::with_capacity(first_rows * first_columns);
    for row in 0..first_rows {
        for column in 0..first_columns {
            // A lamp that is its own image stays on its centre line; the others keep off it.
            let own_x = 2 * column + 1 == columns;
            let own_y = 2 * row + 1 == rows;
            let middle_x = mirror.x.map(|length| length / 2.0);
            let middle_y = mirror.y.map(|width| width / 2.0);
            let free =
                mirrored.held(middle_x.filter(|_| own_x), middle_y.filter(|_| own_y)).off_line(
                    middle_x.filter(|_| !own_x),
                    middle_y.filter(|_| !own_y),
                    apart_mm(fitting),
                );
            let mut lamps = Vec::with_capacity(4);
            for flip_y in [false, true] {
                for flip_x in [false, true] {
                    if (flip_x && (own_x || !symmetry.along))
                        || (flip_y && (own_y || !symmetry.across))
                    {
                        continue;
                    }
                    let row = if flip_y { rows - 1 - row } else { row };
                    let column = if flip_x { columns - 1 - column } else { column };
                    let image =
                        Mirror { x: mirror.x.filter(|_| flip_x), y: mirror.y.filter(|_| flip_y) };
                    lamps.push((row * columns + column, image));
                }
            }
            let first = wanted.get(row * columns + column).copied();
            let wanted = first.map_or((0.0, 0.0), millimetres);
            groups.push(Group { free, wanted, lamps });
        }
    }
    let spots = wanted.iter().map(|spot| millimetres(*spot)).collect();
    let any_symmetry = !symmetry.across && !symmetry.along;
    let task = Task { room, groups, wanted: spots, mirror, any_symmetry };
    Ok(told(&task, &wanted, &task.arranged()))
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
        lamps: Vec::new(),
        apart: apart_mm(fitting),
    })
}

/// An arrangement as it is told: each lamp at its spot, or where none was found for it, at the nearest one that is
/// clear of all but the other lamps.
fn told(task: &Task, wanted: &[Spot], found: &Arrangement) -> Vec<Placed> {
    let mut placed: Vec<Placed> = wanted
        .iter()
        .zip(&found.at)
        .zip(&found.symmetric)
        .map(|((&wanted, at), symmetric)| {
            let (x, y) = millimetres(wanted);
            let at = at.or_else(|| task.room.nearest(x, y));
            let (to_x, to_y) = at.unwrap_or((x, y));
            Placed {
                wanted,
                at: spot(to_x, to_y),
                moved: Length::new::<millimeter>(libm::hypot(to_x - x, to_y - y)),
                problem: if at.is_some() { None } else { Some(Problem::NoClearSpot) },
                symmetric: *symmetric || task.any_symmetry,
            }
        })
        .collect();
    tell_neighbours(&mut placed, &task.room);
    placed
}

/// Least distance between two lamps' centres, mm: the clearance between their rims.
fn apart_mm(fitting: Fitting) -> f64 {
    fitting.rim.get::<millimeter>() + fitting.clearance.get::<millimeter>()
}

/// Marks lamps whose rims come closer than the clearance.
fn tell_neighbours(placed: &mut [Placed], room: &Free) {
    let apart = room.apart - 2e-6;
    let spots: Vec<(f64, f64)> = placed.iter().map(|p| millimetres(p.at)).collect();
    let mut at_most = None;
    for (lamp, placed) in placed.iter_mut().enumerate() {
        let near = spots.iter().enumerate().position(|(other, at)| {
            other != lamp && libm::hypot(at.0 - spots[lamp].0, at.1 - spots[lamp].1) < apart
        });
        if let (Some(to), None) = (near, placed.problem) {
            // Looked into once, where the first lamp is too close.
            let at_most = *at_most.get_or_insert_with(|| fewer_than(room, spots.len()));
            placed.problem = Some(Problem::TooClose { to, at_most });
        }
    }
}

#[cfg(test)]
mod tests;
