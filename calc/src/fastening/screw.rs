//! Screws by gauge number: diameters, threads, and the holes drilled for them.

use uom::si::f64::Length;
use uom::si::length::inch;

use crate::source::Source;

/// Shank diameters: 0.060 + 0.013 N inches.
pub static DIAMETERS: Source = Source::transcribed(
    "AISI design sheet; ASME B18.6.1 (from memory)",
    "screw sizes by gauge number",
);

/// Pilot and clearance drills; the pilot is about 70 % of the root diameter in soft wood, 90 % in
/// hard wood.
pub static HOLES: Source = Source::transcribed(
    "Pilot-hole chart after the American Wood Council (NDS lead-hole rule)",
    "70 % of the root for specific gravity 0.5 to 0.6, 90 % from 0.6 on",
);

/// Greatest diameters of flat heads: what a countersink must be.
pub static HEADS: Source = Source::transcribed(
    "ASME B18.6.1",
    "greatest diameter of flat heads, as fastener charts print it",
);

/// Threads of self-drilling and tapping screws.
pub static TAPPING_THREADS: Source =
    Source::transcribed("SAE J78, thread type BSD (as ASME B18.6.4 type AB)", "threads per inch");

/// Threads of wood screws.
pub static WOOD_THREADS: Source = Source::from_memory("ASME B18.6.1", "threads per inch");

/// One gauge number; all sizes in inches.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Screw {
    /// The gauge number.
    pub gauge: u8,
    /// Shank, which is also the thread's outside diameter. Source: [`DIAMETERS`].
    pub shank_in: f64,
    /// Root of a tapered wood screw, at its middle. Source: [`HOLES`].
    pub root_in: f64,
    /// Drill for the threaded part in soft wood, in 64ths of an inch. Source: [`HOLES`].
    pub pilot_soft_64ths: u8,
    /// Drill for the threaded part in hard wood, in 64ths of an inch. Source: [`HOLES`].
    pub pilot_hard_64ths: u8,
    /// Drill for the shank, in 64ths of an inch. Source: [`HOLES`].
    pub clearance_64ths: u8,
    /// Countersink: the greatest diameter of a flat head. Source: [`HEADS`].
    pub head_in: f64,
    /// Threads per inch of a self-drilling or tapping screw. Source: [`TAPPING_THREADS`]; from
    /// memory for #4.
    pub tapping_threads_per_in: f64,
    /// Threads per inch of a wood screw. Source: [`WOOD_THREADS`].
    pub wood_threads_per_in: f64,
}

/// The gauge numbers in use for linings and furring.
pub static SCREWS: [Screw; 6] = [
    screw(4, 0.112, 0.075, [3, 4, 7], 0.225, 24.0, 22.0),
    screw(6, 0.138, 0.094, [4, 5, 9], 0.279, 20.0, 18.0),
    screw(8, 0.164, 0.112, [5, 6, 11], 0.332, 18.0, 15.0),
    screw(10, 0.190, 0.130, [6, 7, 12], 0.385, 16.0, 13.0),
    screw(12, 0.216, 0.148, [7, 8, 14], 0.438, 14.0, 11.0),
    screw(14, 0.242, 0.165, [7, 9, 16], 0.507, 14.0, 10.0),
];

/// The screw of a gauge number: 4, 6, 8, 10, 12 or 14.
pub fn by_gauge(gauge: u8) -> Option<&'static Screw> {
    SCREWS.iter().find(|screw| screw.gauge == gauge)
}

/// The thread that a screw cuts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Thread {
    /// Self-drilling and tapping screws, for steel.
    Tapping,
    /// Wood screws.
    Wood,
}

impl Screw {
    /// Outside diameter.
    pub fn diameter(&self) -> Length {
        Length::new::<inch>(self.shank_in)
    }

    /// From one thread to the next.
    pub fn pitch(&self, thread: Thread) -> Length {
        Length::new::<inch>(match thread {
            Thread::Tapping => 1.0 / self.tapping_threads_per_in,
            Thread::Wood => 1.0 / self.wood_threads_per_in,
        })
    }

    /// Drill for the threaded part; the denser wood, of specific gravity 0.6 and more, takes the
    /// larger one.
    pub fn pilot_drill(&self, hard_wood: bool) -> Length {
        let drill = if hard_wood { self.pilot_hard_64ths } else { self.pilot_soft_64ths };
        Length::new::<inch>(f64::from(drill) / 64.0)
    }

    /// Drill for the shank, through what is to be drawn tight.
    pub fn clearance_drill(&self) -> Length {
        Length::new::<inch>(f64::from(self.clearance_64ths) / 64.0)
    }
}

const fn screw(
    gauge: u8,
    shank_in: f64,
    root_in: f64,
    [pilot_soft_64ths, pilot_hard_64ths, clearance_64ths]: [u8; 3],
    head_in: f64,
    tapping_threads_per_in: f64,
    wood_threads_per_in: f64,
) -> Screw {
    Screw {
        gauge,
        shank_in,
        root_in,
        pilot_soft_64ths,
        pilot_hard_64ths,
        clearance_64ths,
        head_in,
        tapping_threads_per_in,
        wood_threads_per_in,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// ASME B18.6.1 (from memory): shank = 0.060 + 0.013 N; the AISI sheet lists the same.
    #[test]
    fn shanks_follow_the_rule() {
        for screw in &SCREWS {
            let rule = 0.060 + 0.013 * f64::from(screw.gauge);
            assert!((screw.shank_in - rule).abs() < 5e-4, "#{}", screw.gauge);
        }
    }

    /// The NDS lead-hole rule: 70 % of the root in soft wood, 90 % in hard; the chart gives the
    /// nearest 64ths.
    #[test]
    fn pilots_follow_the_lead_hole_rule() {
        for screw in &SCREWS {
            for (hard_wood, share) in [(false, 0.7), (true, 0.9)] {
                let drill = screw.pilot_drill(hard_wood).get::<inch>();
                let off = (drill - share * screw.root_in).abs();
                assert!(
                    off <= 1.0 / 64.0,
                    "#{} {drill} against {}",
                    screw.gauge,
                    share * screw.root_in
                );
            }
            let clearance = screw.clearance_drill().get::<inch>();
            assert!(
                clearance >= screw.shank_in - 0.003 && clearance <= screw.shank_in + 1.0 / 64.0
            );
        }
    }

    #[test]
    fn larger_gauges_are_larger_in_everything() {
        for pair in SCREWS.windows(2) {
            let (less, more) = (&pair[0], &pair[1]);
            assert!(
                less.gauge < more.gauge
                    && less.shank_in < more.shank_in
                    && less.root_in < more.root_in
            );
            assert!(
                less.head_in < more.head_in && less.pitch(Thread::Wood) < more.pitch(Thread::Wood)
            );
            assert!(less.pitch(Thread::Tapping) <= more.pitch(Thread::Tapping));
        }
        assert_eq!(by_gauge(8).map(|screw| screw.shank_in), Some(0.164));
        assert_eq!(by_gauge(9), None);
    }
}
