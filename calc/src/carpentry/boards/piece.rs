//! A piece of a course: where it lies, what is marked on it and cut out of it.

use super::{Edge, Notch, SLACK_MM, SupportMark};
use crate::carpentry::stations::{Station, between, range_mm, width_at_mm};

/// A piece of a course.
#[derive(Clone, Debug, PartialEq)]
pub struct BoardPiece {
    /// Its course, counted from 1 at y = 0.
    pub course: u32,
    /// Its place in the course, counted from 1 at the front.
    pub piece: u32,
    /// Its left end, from the front wall. [mm]
    pub from_mm: f64,
    /// Its right end, from the front wall. [mm]
    pub to_mm: f64,
    /// Its length. [mm]
    pub length_mm: f64,
    /// Covered strip of the field, from the left wall: lower and higher edge, where it is widest. [mm]
    pub across_mm: (f64, f64),
    /// Widths from its left end to its right one, where the last course follows a field that is not equally wide; else none.
    pub widths_mm: Vec<Station>,
    /// Its marks from left to right.
    pub marks: Vec<SupportMark>,
    /// What is cut out of it.
    pub notches: Vec<Notch>,
    /// Which kind of piece it is: an index into [`super::BoardLayout::kinds`].
    pub kind: usize,
}

impl BoardPiece {
    /// Width that it covers, at its widest. [mm]
    pub fn width_mm(&self) -> f64 {
        self.across_mm.1 - self.across_mm.0
    }

    /// Width that it covers at a place from its left end. [mm]
    pub fn width_at_mm(&self, offset_mm: f64) -> f64 {
        width_at_mm(&self.widths_mm, offset_mm).unwrap_or(self.width_mm())
    }

    /// The narrowest that it is between two places from its left end. [mm]
    pub(super) fn narrowest_mm(&self, from_mm: f64, to_mm: f64) -> f64 {
        let there = between(&self.widths_mm, from_mm, to_mm);
        range_mm(&there).map_or(self.width_mm(), |(low, _)| low)
    }

    /// A part of a course, between two places from the front wall.
    pub(super) fn part(&self, piece: u32, (from_mm, to_mm): (f64, f64)) -> Self {
        let mut one = Self { piece, from_mm, to_mm, length_mm: to_mm - from_mm, ..self.clone() };
        let (from, to) = (from_mm - self.from_mm, to_mm - self.from_mm);
        one.widths_mm = between(&self.widths_mm, from, to);
        for station in &mut one.widths_mm {
            station.x_mm -= from;
        }
        if let Some((low, high)) = range_mm(&one.widths_mm) {
            one.across_mm.1 = one.across_mm.0 + high;
            if high - low <= SLACK_MM {
                one.widths_mm.clear();
            }
        }
        one
    }

    /// Makes its left edge follow a field that is not equally wide. What no board covers it does not reach.
    pub(super) fn taper(&mut self, stations: &[Station], coverage_mm: f64) {
        let Some(front) = stations.first() else { return };
        let width_mm = self.width_mm();
        let mut widths_mm = between(stations, self.from_mm, self.to_mm);
        for station in &mut widths_mm {
            let wide = width_mm + station.width_mm - front.width_mm;
            station.width_mm = wide.clamp(0.0, coverage_mm.max(width_mm));
            station.x_mm -= self.from_mm;
        }
        let Some((low, high)) = range_mm(&widths_mm) else { return };
        self.across_mm.1 = self.across_mm.0 + high;
        if high - low > SLACK_MM {
            self.widths_mm = widths_mm;
        }
    }

    /// The narrowest strip that stays beside a notch; `None` where there is no notch, or where it cuts the piece through. For a
    /// cut-out inside the board the wider of its two strips counts. [mm]
    pub fn stays_mm(&self) -> Option<f64> {
        let beside = self.notches.iter().filter(|notch| notch.edge != Edge::Through);
        beside.map(|notch| self.width_mm() - notch.depth_mm).min_by(f64::total_cmp)
    }

    /// Whether both are cut, ripped, marked and notched alike.
    pub(super) fn is_like(&self, other: &Self) -> bool {
        let near = |a: f64, b: f64| (a - b).abs() < SLACK_MM;
        near(self.length_mm, other.length_mm)
            && near(self.width_mm(), other.width_mm())
            && self.marks.len() == other.marks.len()
            && self.widths_mm.len() == other.widths_mm.len()
            && self
                .widths_mm
                .iter()
                .zip(&other.widths_mm)
                .all(|(a, b)| near(a.x_mm, b.x_mm) && near(a.width_mm, b.width_mm))
            && self.notches.len() == other.notches.len()
            && self.marks.iter().zip(&other.marks).all(|(a, b)| {
                a.support == b.support && a.joint == b.joint && near(a.offset_mm, b.offset_mm)
            })
            && self.notches.iter().zip(&other.notches).all(|(a, b)| {
                a.opening == b.opening
                    && a.edge == b.edge
                    && near(a.from_mm, b.from_mm)
                    && near(a.to_mm, b.to_mm)
                    && near(a.depth_mm, b.depth_mm)
                    && near(a.inset_mm, b.inset_mm)
            })
    }
}
