//! The box that a text takes up on the page, and what it meets there.

use super::paper::{ROW, TEXT, text_width};

/// A place or a way on the page. [px]
pub(super) type Px = (f64, f64);

/// Boxes may touch by this much: the estimated width of a text is rather too great. [px]
const TOUCH: f64 = 0.5;

/// The box of a text.
#[derive(Clone, Copy, Debug)]
pub(super) struct Lettering {
    /// Its middle.
    pub middle: Px,
    /// The way in which it is read.
    pub read: Px,
    /// Half its length and half its height.
    pub half: Px,
}

impl Lettering {
    /// A text of these rows around this middle, read this way.
    pub fn new(rows: &[&str], middle: Px, read: Px) -> Self {
        let length = rows.iter().map(|row| text_width(row)).fold(0.0, f64::max);
        let more = rows.len().saturating_sub(1) as f64 * ROW;
        Self { middle, read, half: (length / 2.0, (TEXT + more) / 2.0) }
    }

    /// The same somewhere else.
    pub fn moved(self, by: Px) -> Self {
        Self { middle: (self.middle.0 + by.0, self.middle.1 + by.1), ..self }
    }

    /// The same with air around it.
    pub fn wider(self, air: Px) -> Self {
        Self { half: (self.half.0 + air.0, self.half.1 + air.1), ..self }
    }

    /// Whether two texts lie on each other.
    pub fn meets(&self, other: &Self) -> bool {
        let way = (other.middle.0 - self.middle.0, other.middle.1 - self.middle.1);
        let apart = |axis: Px| dot(way, axis).abs() > self.reach(axis) + other.reach(axis) - TOUCH;
        ![self.read, across(self.read), other.read, across(other.read)].into_iter().any(apart)
    }

    /// How far it reaches from its middle along a way.
    pub fn reach(&self, axis: Px) -> f64 {
        self.half.0 * dot(self.read, axis).abs() + self.half.1 * dot(across(self.read), axis).abs()
    }

    /// The part of the way from `a` to `b` that lies under it, as shares of that way; none where it passes by.
    pub fn covers(&self, a: Px, b: Px) -> Option<(f64, f64)> {
        Self { half: (self.half.0 - TOUCH, self.half.1 - TOUCH), ..*self }.holds(a, b)
    }

    /// As `covers`, to the very edge.
    pub fn holds(&self, a: Px, b: Px) -> Option<(f64, f64)> {
        let own = |point: Px| {
            let way = (point.0 - self.middle.0, point.1 - self.middle.1);
            [dot(way, self.read), dot(way, across(self.read))]
        };
        let (mut from, mut to) = (0.0_f64, 1.0_f64);
        for ((start, end), half) in own(a).into_iter().zip(own(b)).zip([self.half.0, self.half.1]) {
            let by = end - start;
            if by.abs() < 1e-9 {
                if start.abs() >= half {
                    return None;
                }
                continue;
            }
            let (one, other) = ((-half - start) / by, (half - start) / by);
            from = from.max(one.min(other));
            to = to.min(one.max(other));
        }
        (from < to).then_some((from, to))
    }
}

/// What is left of the way from `a` to `b` beside all of these texts.
pub(super) fn beside(texts: &[Lettering], a: Px, b: Px) -> Vec<(Px, Px)> {
    without(texts.iter().filter_map(|text| text.covers(a, b)), a, b)
}

/// What is left of the way from `a` to `b` without these shares of it.
pub(super) fn without(parts: impl IntoIterator<Item = (f64, f64)>, a: Px, b: Px) -> Vec<(Px, Px)> {
    let mut left = vec![(0.0, 1.0)];
    for (from, to) in parts {
        left = left
            .into_iter()
            .flat_map(|(start, end): (f64, f64)| [(start, end.min(from)), (start.max(to), end)])
            .filter(|(start, end)| end > start)
            .collect();
    }
    let at = |share: f64| (a.0 + (b.0 - a.0) * share, a.1 + (b.1 - a.1) * share);
    left.into_iter().map(|(start, end)| (at(start), at(end))).collect()
}

/// Breaks a text at its spaces into rows of at most this length; a longer word stands alone. [px]
pub(super) fn rows(text: &str, most: f64) -> Vec<&str> {
    let mut rows = Vec::new();
    let (mut start, mut end) = (0, 0);
    for (at, _) in text.match_indices(' ').chain([(text.len(), "")]) {
        let row = text.get(start..at).unwrap_or_default();
        if end > start && text_width(row) > most {
            rows.push(text.get(start..end).unwrap_or_default());
            start = end + 1;
        }
        end = at;
    }
    rows.push(text.get(start..).unwrap_or_default());
    rows
}

fn dot(a: Px, b: Px) -> f64 {
    a.0 * b.0 + a.1 * b.1
}

fn across(read: Px) -> Px {
    (-read.1, read.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn texts_meet_where_their_boxes_do() {
        let level = Lettering::new(&["12345678"], (0.0, 0.0), (1.0, 0.0));
        assert!(level.meets(&level.moved((20.0, 5.0))));
        assert!(!level.meets(&level.moved((0.0, TEXT))));
        assert!(!level.meets(&level.moved((level.half.0 * 2.0, 0.0))));
        let upright = Lettering { read: (0.0, -1.0), ..level };
        assert!(upright.meets(&level.moved((30.0, 0.0))));
        assert!(!upright.meets(&level.moved((level.half.0 + TEXT, 0.0))));
        // A slanted one passes by a corner that an upright box around it would hold.
        let slanted = Lettering { read: (0.8, 0.6), ..level };
        assert!(!slanted.meets(&Lettering { half: (2.0, 2.0), ..level }.moved((20.0, -12.0))));
    }

    #[test]
    fn a_line_is_broken_around_a_text() {
        let text = Lettering { middle: (50.0, 0.0), read: (1.0, 0.0), half: (10.5, 5.5) };
        assert_eq!(text.covers((0.0, 0.0), (100.0, 0.0)), Some((0.4, 0.6)));
        assert_eq!(text.covers((0.0, 6.0), (100.0, 6.0)), None);
        assert_eq!(text.covers((50.0, 30.0), (50.0, 10.0)), None);
        let left = beside(&[text, text.moved((200.0, 0.0))], (0.0, 0.0), (100.0, 0.0));
        assert_eq!(left, [((0.0, 0.0), (40.0, 0.0)), ((60.0, 0.0), (100.0, 0.0))]);
        assert_eq!(beside(&[], (0.0, 0.0), (1.0, 0.0)).len(), 1);
    }

    #[test]
    fn a_long_text_is_broken_at_its_spaces() {
        assert_eq!(rows("one two three", 1000.0), ["one two three"]);
        assert_eq!(rows("one two three", text_width("one two")), ["one two", "three"]);
        assert_eq!(rows("one two three", 1.0), ["one", "two", "three"]);
        assert_eq!(rows("", 1.0), [""]);
    }
}
