//! Which lengths of screw are safe: long enough to hold, short enough for what lies behind.

use uom::si::f64::Length;
use uom::si::length::millimeter;

use super::length::{next_length, standard_lengths};
use crate::formula::{Formula as _, formula};
use crate::source::Source;
use crate::words::fastening as words;

/// The upper end of a screw's length.
pub static NO_FARTHER: Source = Source::identity_of(words::SOURCE_LONGEST);
/// Where the free depth is not known.
pub static AS_SHORT_AS_HOLDS: Source = Source::practice_of(words::SOURCE_SHORTEST);
/// What holds a board.
pub static LEAST_THREAD: Source = Source::practice_of(words::SOURCE_THREAD);
/// The thread of [`LEAST_THREAD`]. [mm]
pub const LEAST_THREAD_MM: f64 = 12.7;

formula! {
    /// The longest screw through layers and steel that reaches nothing behind them.
    Longest: "L = g + t + f", &NO_FARTHER;
    |of| of.grip + of.steel + of.free => Length as small;
    /// Layers under the head.
    "g" as small: grip: Length,
    /// All the steel.
    "t" as small: steel: Length,
    /// Free behind it.
    "f" as small: free: Length,
}

formula! {
    /// The shortest screw for a board on a strip: its thread holds in the strip, with its head flush with the face.
    LeastLining: "L = b + t", &LEAST_THREAD;
    |of| of.board + of.thread => Length as small;
    /// The board.
    "b" as small: board: Length,
    /// The least thread in the strip.
    "t" as small: thread: Length,
}

formula! {
    /// The longest screw for a board on a strip: sunk, its tip stays short of what lies behind.
    LongestLining: "L = b + s + f − k", &NO_FARTHER;
    |of| of.board + of.strip + of.free - of.sunk => Length as small;
    /// The board.
    "b" as small: board: Length,
    /// The strip.
    "s" as small: strip: Length,
    /// Free behind the strip.
    "f" as small: free: Length,
    /// How deep its head is sunk.
    "k" as small: sunk: Length,
}

/// Floats of a length. [mm]
const SLACK_MM: f64 = 1e-6;

/// The lengths that a screw may have, head to tip.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Window {
    /// It holds from here on.
    pub least: Length,
    /// What lies behind allows no more; none where that is not known. Source: [`NO_FARTHER`].
    pub longest: Option<Length>,
}

/// Why no length of those offered is safe.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Unfit {
    /// All are too short to hold.
    TooShort,
    /// The shortest that holds is longer than is safe.
    TooLong {
        /// The shortest that holds.
        shortest: Length,
    },
    /// The least length is longer than the longest: no screw holds there.
    NoRoom,
}

impl Window {
    /// The longest that may be chosen: as far as there is room, else the shortest length in common stock that holds. Source:
    /// [`AS_SHORT_AS_HOLDS`].
    pub fn most(&self) -> Length {
        let stock: Vec<Length> = standard_lengths().collect();
        self.longest.or_else(|| next_length(self.least, &stock)).unwrap_or(self.least)
    }

    /// The shortest of the lengths offered that holds, where it is safe.
    ///
    /// # Errors
    /// Where none is.
    pub fn choose(&self, offered: &[Length]) -> Result<Length, Unfit> {
        let mm = |length: Length| length.get::<millimeter>();
        if self.longest.is_some_and(|longest| mm(longest) < mm(self.least) - 0.01) {
            return Err(Unfit::NoRoom);
        }
        let shortest = next_length(self.least, offered).ok_or(Unfit::TooShort)?;
        if mm(shortest) > mm(self.most()) + SLACK_MM {
            return Err(Unfit::TooLong { shortest });
        }
        Ok(shortest)
    }

    /// The shortest length in common stock that is safe.
    pub fn in_stock(&self) -> Option<Length> {
        self.choose(&standard_lengths().collect::<Vec<_>>()).ok()
    }
}

/// The lengths for a board on a strip: its thread holds in the strip where its head is flush with the face, and its tip stays within
/// board, strip and what is `free` behind the strip where it is `sunk`. Source: [`LEAST_THREAD`].
pub fn lining(board: Length, strip: Length, free: Length, sunk: Length) -> Window {
    let thread = Length::new::<millimeter>(LEAST_THREAD_MM);
    Window {
        least: LeastLining { board, thread }.value(),
        longest: Some(LongestLining { board, strip, free, sunk }.value()),
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;
    use uom::si::length::inch;

    use super::*;

    fn inches(value: f64) -> Length {
        Length::new::<inch>(value)
    }

    /// Worked by hand: board and strip of 3/4 in and a tape of 1 mm are 39.1 mm; sunk by 3 mm, 1 5/8 in reaches 44.3 mm, 1 1/4 in
    /// 34.75 mm, with 12.7 mm of it in the strip where it is flush.
    #[test]
    fn a_lining_screw_stops_short_of_the_steel() {
        let mm = Length::new::<millimeter>;
        let window = lining(inches(0.75), inches(0.75), mm(1.0), mm(3.0));
        assert_eq!(
            window.choose(&[inches(1.625)]),
            Err(Unfit::TooLong { shortest: inches(1.625) })
        );
        assert_eq!(window.choose(&[inches(1.625), inches(1.25)]), Ok(inches(1.25)));
        assert_eq!(window.choose(&[inches(1.0)]), Err(Unfit::TooShort));
        assert_eq!(window.in_stock(), Some(inches(1.25)));
        let thin = lining(inches(0.75), inches(0.25), mm(0.0), mm(3.0));
        assert_eq!(thin.choose(&[inches(1.25)]), Err(Unfit::NoRoom));
    }

    /// Worked by hand: 0.98 in hold; where nobody knows what lies behind, 1 in will do and 3 in will not.
    #[test]
    fn without_a_free_depth_no_longer_one_than_needed() {
        let window = Window { least: inches(0.98), longest: None };
        assert_eq!(window.choose(&[inches(3.0)]), Err(Unfit::TooLong { shortest: inches(3.0) }));
        assert_eq!(window.choose(&[inches(3.0), inches(1.0)]), Ok(inches(1.0)));
        let known = Window { longest: Some(inches(1.2)), ..window };
        assert_eq!(known.choose(&[inches(1.25)]), Err(Unfit::TooLong { shortest: inches(1.25) }));
    }

    proptest! {
        #[test]
        fn what_is_chosen_holds_and_has_room(least in 1.0..80.0_f64, room in prop::option::of(-5.0..60.0_f64), offered in prop::collection::vec(3.0..120.0_f64, 1..6)) {
            let mm = Length::new::<millimeter>;
            let window = Window { least: mm(least), longest: room.map(|room| mm(least + room)) };
            let offered: Vec<Length> = offered.into_iter().map(mm).collect();
            if let Ok(chosen) = window.choose(&offered) {
                let chosen = chosen.get::<millimeter>();
                prop_assert!(chosen >= least - 0.011);
                prop_assert!(window.longest.is_none_or(|longest| chosen <= longest.get::<millimeter>() + 1e-5));
            }
        }
    }
}
