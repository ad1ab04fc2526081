//! One run to one load: drop, loss, the longest run, and the conductors beside each other.

use crate::sorting::sort_by;
use std::fmt;

use super::ampacity::{Conditions, Rated, Unrated, carries};
use super::conductor::Conductor;
use super::fuse::{self, Fuse, FuseError};
use super::least_size::may_be_chosen;
use super::range::{self, OutOfRange};
use super::run_formulas::{
    BothConductors, Drop, LoadVoltage, LongestRun, Loss, MostBeforeCurrent, MostBeforePower,
    PowerCurrent,
};
use crate::formula::Formula as _;
use crate::quantity::electric;
use crate::words::{Arg, Msg, electrical as words};

/// How a load draws.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Load {
    /// Always the same power, in W: it draws more as the voltage falls (regulated lamps, chargers,
    /// inverters, most electronics).
    Power(f64),
    /// Always the same current, in A.
    Current(f64),
    /// A resistance, in ohm: it draws less as the voltage falls (heaters, filaments).
    Resistance(f64),
}

/// One run to one load, whatever it is wired with.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Run {
    /// Voltage of the source, 0.1 to 1000 V.
    pub source_v: f64,
    /// The lowest that the source falls to, where that is known: a constant power draws most
    /// there. In V, no more than `source_v`.
    pub low_v: Option<f64>,
    /// The load at its end.
    pub load: Load,
    /// Length one way, 0 to 10,000 m; both conductors are counted.
    pub length_m: f64,
    /// Temperature of the copper, -50 to 200 C.
    pub temperature_c: f64,
    /// Drop that is allowed, 0.01 to 99 % of the source voltage.
    pub drop_limit_percent: f64,
    /// Whether the load is expected to last three hours or more.
    pub continuous: bool,
    /// How the wire lies.
    pub conditions: Conditions,
}

/// A run with its conductor, worked out.
#[derive(Clone, Debug, PartialEq)]
pub struct Wired {
    /// What it is wired with.
    pub conductor: Conductor,
    /// Resistance of both conductors, in ohm.
    pub resistance_ohm: f64,
    /// Current at the source voltage, in A.
    pub current_a: f64,
    /// The highest current between the lowest voltage and the source's, in A: what conductor and
    /// fuse are held against.
    pub highest_a: f64,
    /// Voltage at the load, in V.
    pub load_v: f64,
    /// Voltage lost on the way, in V.
    pub drop_v: f64,
    /// The same as a share of the source voltage.
    pub drop_percent: f64,
    /// Power lost in the wire, in W.
    pub loss_w: f64,
    /// Whether the drop is within the limit.
    pub within_limit: bool,
    /// Longest run one way at the limit, in m; `None` when it is beyond a thousand kilometres.
    pub longest_run_m: Option<f64>,
    /// What the conductor may carry as it lies, in A, where a table has it.
    pub ampacity_a: Option<f64>,
    /// The same with the greatest fuse before it and where both come from, or what is to be entered.
    pub rated: Result<Rated, Unrated>,
    /// The fuse at the source, or why none fits.
    pub fuse: Result<Fuse, FuseError>,
}

/// Where a load behind a resistance comes to rest.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Operating {
    /// Current, in A.
    pub current_a: f64,
    /// Voltage at the load, in V.
    pub load_v: f64,
}

/// Why a run has no answer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum DropError {
    /// A quantity is out of range.
    Range(OutOfRange),
    /// No steady voltage exists: the wire cannot deliver the power at any current.
    Collapse {
        /// Power that is asked for, in W.
        power_w: f64,
        /// Most power that this source and wire could ever deliver, in W, with half the voltage
        /// lost on the way.
        most_w: f64,
        /// Voltage of the source, in V.
        source_v: f64,
        /// Resistance of both conductors, in ohm.
        resistance_ohm: f64,
    },
    /// A constant current would need more than the whole source voltage for the wire alone.
    Overdrawn {
        /// The current, in A.
        current_a: f64,
        /// Most current that the wire passes with nothing left for the load, in A.
        most_a: f64,
    },
}

/// Why no conductor will do for a run.
#[derive(Clone, Debug, PartialEq)]
pub enum NoConductor {
    /// There is nothing to choose from.
    NoChoices,
    /// The quantities of the run are wrong.
    Run(DropError),
    /// Even the thickest loses too much, or has no steady voltage.
    DropTooGreat {
        /// The thickest.
        conductor: Conductor,
        /// Its drop, where it has one.
        drop_percent: Option<f64>,
        /// What is allowed.
        limit_percent: f64,
        /// The longest run it could make within the limit, in m.
        longest_run_m: Option<f64>,
    },
    /// Even the thickest may not carry the current, or the fuse that it needs.
    AmpacityTooSmall {
        /// The thickest.
        conductor: Conductor,
        /// The current, in A.
        current_a: f64,
        /// What it may carry as it lies, in A, where a table has it.
        ampacity_a: Option<f64>,
    },
}

/// Current and voltage of a load behind `resistance_ohm`, solved in closed form.
///
/// A constant power P takes V = (Vs + sqrt(Vs² - 4 R P)) / 2, the upper of two roots: the lower one
/// is unstable. At 4 R P = Vs² both meet at Vs / 2, and beyond no steady voltage exists.
///
/// # Errors
/// [`DropError`] when a quantity is out of range or no steady voltage exists.
///
/// # Source
/// [`super::sources::CONSTANT_POWER`], [`super::sources::OHMS_LAW`].
pub fn operating_point(
    source_v: f64,
    load: Load,
    resistance_ohm: f64,
) -> Result<Operating, DropError> {
    let source_v = range::SOURCE_VOLTAGE_V.check(source_v)?;
    let resistance_ohm = range::RUN_RESISTANCE_OHM.check(resistance_ohm)?;
    match load.checked()? {
        Load::Power(power_w) => {
            let square = source_v * source_v;
            let left = square - 4.0 * resistance_ohm * power_w;
            // At the very limit the difference is rounding; a real shortage is more.
            if left < -1e-12 * square {
                let most_w = square / (4.0 * resistance_ohm);
                return Err(DropError::Collapse { power_w, most_w, source_v, resistance_ohm });
            }
            let load_v = LoadVoltage { source_v, resistance_ohm, power_w }.value();
            Ok(Operating { current_a: PowerCurrent { power_w, load_v }.value(), load_v })
        }
        Load::Current(current_a) => {
            let load_v = source_v - current_a * resistance_ohm;
            if load_v <= 0.0 {
                return Err(DropError::Overdrawn { current_a, most_a: source_v / resistance_ohm });
            }
            Ok(Operating { current_a, load_v })
        }
        Load::Resistance(load_ohm) => {
            let current_a = source_v / (load_ohm + resistance_ohm);
            Ok(Operating { current_a, load_v: current_a * load_ohm })
        }
    }
}

/// Greatest resistance, both conductors, that keeps the drop within `limit_percent`; `None` when a
/// load that draws nothing allows any.
///
/// A constant power allows R = Vs² p (1 - p) / P with p the share lost; it never keeps a steady
/// voltage with more than half lost, so p above one half counts as one half.
///
/// # Errors
/// [`OutOfRange`] for a quantity out of range.
pub fn greatest_resistance_ohm(
    source_v: f64,
    load: Load,
    limit_percent: f64,
) -> Result<Option<f64>, OutOfRange> {
    let source_v = range::SOURCE_VOLTAGE_V.check(source_v)?;
    let share = range::DROP_LIMIT_PERCENT.check(limit_percent)? / 100.0;
    let ohm = match load.checked()? {
        Load::Power(power_w) => {
            MostBeforePower { source_v, share: share.min(0.5), power_w }.value()
        }
        Load::Current(current_a) => MostBeforeCurrent { share, source_v, current_a }.value(),
        Load::Resistance(load_ohm) => load_ohm * share / (1.0 - share),
    };
    Ok(Some(ohm).filter(|ohm| ohm.is_finite()))
}

/// Whether a drop is within a limit, rounding of the last digits forgiven.
pub fn is_within(drop_percent: f64, limit_percent: f64) -> bool {
    drop_percent <= limit_percent * (1.0 + 1e-9)
}

impl Load {
    /// The load itself when its value is in range: 0 to 1 MW, 0 to 10 kA, 1 mohm to 1 Gohm.
    ///
    /// # Errors
    /// [`OutOfRange`] otherwise.
    pub fn checked(self) -> Result<Self, OutOfRange> {
        match self {
            Self::Power(w) => range::LOAD_POWER_W.check(w)?,
            Self::Current(a) => range::LOAD_CURRENT_A.check(a)?,
            Self::Resistance(ohm) => range::LOAD_RESISTANCE_OHM.check(ohm)?,
        };
        Ok(self)
    }
}

impl Run {
    /// The run wired with `conductor`.
    ///
    /// # Errors
    /// [`DropError`] when a quantity is out of range or no steady voltage exists.
    pub fn wired(&self, conductor: Conductor) -> Result<Wired, DropError> {
        let length_m = range::RUN_LENGTH_M.check(self.length_m)?;
        let ohm_per_m = conductor.ohm_per_m(self.temperature_c)?;
        let resistance_ohm = BothConductors { length_m, ohm_per_m }.value();
        let limit_ohm = greatest_resistance_ohm(self.source_v, self.load, self.drop_limit_percent)?;
        let Operating { current_a, load_v } =
            operating_point(self.source_v, self.load, resistance_ohm)?;
        let drop_v = Drop { current_a, resistance_ohm }.value();
        let drop_percent = 100.0 * drop_v / self.source_v;
        // Falling with the voltage or rising with it, the current is highest at one of the ends.
        let highest_a = match self.low_v {
            Some(low_v) => {
                operating_point(low_v, self.load, resistance_ohm)?.current_a.max(current_a)
            }
            None => current_a,
        };
        let (continuous_a, other_a) =
            if self.continuous { (highest_a, 0.0) } else { (0.0, highest_a) };
        let rated = Rated::new(conductor, &self.conditions);
        Ok(Wired {
            conductor,
            resistance_ohm,
            current_a,
            highest_a,
            load_v,
            drop_v,
            drop_percent,
            loss_w: Loss { current_a, drop_v }.value(),
            within_limit: is_within(drop_percent, self.drop_limit_percent),
            longest_run_m: limit_ohm
                .map(|most_ohm| LongestRun { most_ohm, ohm_per_m }.value())
                .filter(|length_m| *length_m <= 1e6),
            ampacity_a: rated.ok().map(|rated| rated.ampacity_a()),
            rated,
            fuse: rated
                .map_err(FuseError::Unrated)
                .and_then(|rated| fuse::select(continuous_a, other_a, &[rated], &self.conditions)),
        })
    }

    /// The run wired with each of the conductors, in their order.
    pub fn choices(
        &self,
        conductors: impl IntoIterator<Item = Conductor>,
    ) -> Vec<(Conductor, Result<Wired, DropError>)> {
        conductors.into_iter().map(|c| (c, self.wired(c))).collect()
    }

    /// The run wired with the least copper that is enough: drop within the limit, current and fuse
    /// no more than the conductor may carry. Conductors without a known area or ampacity are never
    /// taken, nor those too thin for the way the wire lies ([`may_be_chosen`]).
    ///
    /// # Errors
    /// [`NoConductor`] when none of them is enough, with what the thickest falls short by.
    pub fn least(
        &self,
        conductors: impl IntoIterator<Item = Conductor>,
    ) -> Result<Wired, NoConductor> {
        let mut sizes: Vec<(f64, Conductor)> = conductors
            .into_iter()
            .filter(|c| may_be_chosen(*c, &self.conditions))
            .filter_map(|c| Some((c.area_mm2()?, c)))
            .collect();
        sort_by(&mut sizes, |a, b| a.0.total_cmp(&b.0));
        let mut last = NoConductor::NoChoices;
        for (_, conductor) in sizes {
            last = match self.wired(conductor) {
                Err(DropError::Range(range)) => {
                    return Err(NoConductor::Run(DropError::Range(range)));
                }
                Err(_) => self.too_great(conductor, None),
                Ok(wired) if !wired.within_limit => {
                    self.too_great(conductor, Some(wired.drop_percent))
                }
                Ok(wired) if !wired.is_protected() => NoConductor::AmpacityTooSmall {
                    conductor,
                    current_a: wired.highest_a,
                    ampacity_a: wired.ampacity_a,
                },
                Ok(wired) => return Ok(wired),
            };
        }
        Err(last)
    }

    fn too_great(&self, conductor: Conductor, drop_percent: Option<f64>) -> NoConductor {
        let ohm = greatest_resistance_ohm(self.source_v, self.load, self.drop_limit_percent);
        let ohm_per_m = conductor.ohm_per_m(self.temperature_c);
        NoConductor::DropTooGreat {
            conductor,
            drop_percent,
            limit_percent: self.drop_limit_percent,
            longest_run_m: match (ohm, ohm_per_m) {
                (Ok(Some(most_ohm)), Ok(ohm_per_m)) => {
                    Some(LongestRun { most_ohm, ohm_per_m }.value())
                }
                _ => None,
            },
        }
    }
}

impl Wired {
    /// Whether the conductor may carry the highest current and a standard fuse protects it.
    pub fn is_protected(&self) -> bool {
        self.carries() && self.fuse.is_ok()
    }

    /// Whether the conductor may carry the highest current.
    pub fn carries(&self) -> bool {
        self.ampacity_a.is_some_and(|a| carries(a, self.highest_a))
    }
}

impl From<OutOfRange> for DropError {
    fn from(range: OutOfRange) -> Self {
        Self::Range(range)
    }
}

impl From<&DropError> for Msg {
    fn from(error: &DropError) -> Self {
        match error {
            DropError::Range(range) => (*range).into(),
            DropError::Collapse { power_w, most_w, source_v, resistance_ohm } => words::Collapse {
                source: source_v.to_string(),
                resistance: format!("{resistance_ohm:.4}"),
                most: format!("{most_w:.1}"),
                power: power_w.to_string(),
            }
            .into(),
            DropError::Overdrawn { current_a, most_a } => {
                words::Overdrawn { current: current_a.to_string(), most: format!("{most_a:.2}") }
                    .into()
            }
        }
    }
}

/// In English, for tests.
impl fmt::Display for DropError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        Msg::from(self).fmt(f)
    }
}

impl std::error::Error for DropError {}

impl From<&NoConductor> for Msg {
    fn from(error: &NoConductor) -> Self {
        match error {
            NoConductor::NoChoices => words::NO_CHOICES.into(),
            NoConductor::Run(error) => error.into(),
            NoConductor::DropTooGreat { conductor, drop_percent, limit_percent, longest_run_m } => {
                let falls = match drop_percent {
                    Some(drop) => {
                        words::FallsBy { drop: electric::drop_beside(*drop, *limit_percent) }.into()
                    }
                    None => Self::from(words::FALLS_AWAY),
                };
                let (conductor, limit) = (conductor.to_string(), electric::limit(*limit_percent));
                match longest_run_m {
                    Some(metres) => {
                        let length = Arg::run_at_most(*metres);
                        words::DropTooGreatUntil { conductor, falls, limit, length }.into()
                    }
                    None => words::DropTooGreat { conductor, falls, limit }.into(),
                }
            }
            NoConductor::AmpacityTooSmall { conductor, current_a, ampacity_a } => {
                let (conductor, current) = (conductor.to_string(), format!("{current_a:.1}"));
                match ampacity_a {
                    Some(a) => {
                        let ampacity = format!("{a:.1}");
                        words::AmpacityTooSmall { current, conductor, ampacity }.into()
                    }
                    None => words::AmpacityUnknown { current, conductor }.into(),
                }
            }
        }
    }
}

/// In English, for tests.
impl fmt::Display for NoConductor {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        Msg::from(self).fmt(f)
    }
}

impl std::error::Error for NoConductor {}

#[cfg(test)]
#[path = "drop_tests.rs"]
mod tests;
