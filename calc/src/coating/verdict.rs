//! Whether a coat may go on: what the label, the dew point and the coming night forbid, and what is not
//! known of them. A yes needs all of it.

use uom::si::f64::{Ratio, ThermodynamicTemperature};

use super::air::{self, Margin};
use super::climate::Weather;
use super::range::OutOfRange;
use crate::source::Source;
use crate::words::{Arg, Id, Msg, wet as words};

/// What a label's limits are held against.
pub static LABEL_LIMITS: Source = Source::practice_of(words::SOURCE_LABEL_LIMITS);

/// The coming night counts, too.
pub static NIGHT: Source = Source::transcribed(
    "US Department of Defense, MIL-HDBK-1110, Paints and Protective Coatings for Facilities",
    "section 7.4.1: no painting where it will grow colder than the paint bears before it has dried; \
     read in tpub.com's copy",
);

/// What a label allows; none where it does not say, or where it was not entered.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Limits {
    /// The least temperature of air and surface.
    pub least: Option<ThermodynamicTemperature>,
    /// The greatest temperature of air and surface.
    pub most: Option<ThermodynamicTemperature>,
    /// The greatest humidity of the air.
    pub humidity_most: Option<Ratio>,
    /// The wettest that the wood may be.
    pub moisture_most: Option<Ratio>,
}

/// What forbids a coat.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bar {
    /// The surface is too near the dew point, by [`air::LEAST_MARGIN_K`].
    DewPoint,
    /// The air is at [`air::HUMIDITY_LIMIT_PERCENT`] or above.
    Humid,
    /// The air is more humid than the label allows.
    LabelHumidity,
    /// Air or surface is colder than the label allows.
    Cold,
    /// Air or surface is warmer than the label allows.
    Warm,
    /// The wood is wetter than the label allows.
    WetWood,
}

/// When it forbids it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum When {
    /// While it is put on.
    Now,
    /// In the coming night, or while it dries.
    Later,
}

/// What must be known for a yes, and is not.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Missing {
    /// The label's least temperature.
    Least,
    /// The label's greatest temperature.
    Most,
    /// The label's humidity limit.
    Humidity,
    /// What the coming night brings.
    Night,
    /// The wood's moisture, for which the label has a limit.
    Moisture,
}

/// What is to be said about a coat.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Verdict {
    /// What forbids it, each once.
    pub bars: Vec<(When, Bar)>,
    /// What is not known.
    pub missing: Vec<Missing>,
}

impl Limits {
    /// These, and where they say nothing the others.
    #[must_use]
    pub fn or(self, other: Self) -> Self {
        Self {
            least: self.least.or(other.least),
            most: self.most.or(other.most),
            humidity_most: self.humidity_most.or(other.humidity_most),
            moisture_most: self.moisture_most.or(other.moisture_most),
        }
    }
}

impl Verdict {
    /// Of a coat that goes on in one weather and dries through another; `wood` is the wood's moisture.
    /// Sources: [`LABEL_LIMITS`], [`NIGHT`], [`air::MARGIN_RULE`].
    ///
    /// # Errors
    /// As [`air::margin`].
    pub fn of(
        limits: &Limits,
        now: &Weather,
        night: Option<&Weather>,
        wood: Option<Ratio>,
    ) -> Result<Self, OutOfRange> {
        let mut verdict = Self::default();
        verdict.bar(When::Now, &bars(limits, now, &margin(now)?));
        match night {
            Some(night) => verdict.bar(When::Later, &bars(limits, night, &margin(night)?)),
            None => verdict.missing.push(Missing::Night),
        }
        match (limits.moisture_most, wood) {
            (Some(most), Some(wood)) if wood.value > most.value + SLACK => {
                verdict.bar(When::Now, &[Bar::WetWood]);
            }
            (Some(_), None) => verdict.missing.push(Missing::Moisture),
            _ => {}
        }
        verdict.needs(limits);
        Ok(verdict)
    }

    /// Adds what forbids it.
    pub fn bar(&mut self, when: When, bars: &[Bar]) {
        for bar in bars {
            if !self.bars.contains(&(when, *bar)) {
                self.bars.push((when, *bar));
            }
        }
    }

    /// Adds the limits that are not known.
    pub fn needs(&mut self, limits: &Limits) {
        let known = [
            (limits.least.is_some(), Missing::Least),
            (limits.most.is_some(), Missing::Most),
            (limits.humidity_most.is_some(), Missing::Humidity),
        ];
        self.missing.extend(known.into_iter().filter(|(known, _)| !known).map(|(_, what)| what));
    }

    /// Yes, no, or not shown.
    pub fn may_coat(&self) -> Option<bool> {
        match (self.bars.is_empty(), self.missing.is_empty()) {
            (false, _) => Some(false),
            (true, true) => Some(true),
            (true, false) => None,
        }
    }
}

/// Forgives the last bits of sums, in kelvins and shares.
impl Bar {
    /// What forbids it: `the air is more humid than the label's 80 %`.
    pub fn said(self, limits: &Limits) -> Msg {
        let share = |limit: Option<_>| limit.map_or_else(|| Arg::from(""), Arg::ratio);
        let or_none = |limit: Option<Arg>| limit.unwrap_or_else(|| Arg::from(""));
        match self {
            Self::DewPoint => {
                words::BarDewPoint { margin: Arg::kelvin(air::LEAST_MARGIN_K) }.into()
            }
            Self::Humid => {
                words::BarHumid { humidity: Arg::percent(air::HUMIDITY_LIMIT_PERCENT) }.into()
            }
            Self::LabelHumidity => {
                words::BarLabelHumidity { humidity: share(limits.humidity_most) }.into()
            }
            Self::Cold => {
                words::BarCold { temperature: or_none(limits.least.map(Arg::coldest)) }.into()
            }
            Self::Warm => {
                words::BarWarm { temperature: or_none(limits.most.map(Arg::warmest)) }.into()
            }
            Self::WetWood => words::BarWetWood { moisture: share(limits.moisture_most) }.into(),
        }
    }
}

impl Missing {
    /// What is to be entered.
    pub fn said(self) -> Id {
        match self {
            Self::Least => words::MISSING_LEAST,
            Self::Most => words::MISSING_MOST,
            Self::Humidity => words::MISSING_HUMIDITY,
            Self::Night => words::MISSING_NIGHT,
            Self::Moisture => words::MISSING_MOISTURE,
        }
    }
}

impl Verdict {
    /// All that forbids it at one time; none where nothing does.
    pub fn why(&self, when: When, limits: &Limits) -> Option<Arg> {
        let of_then = self.bars.iter().filter(|(then, _)| *then == when);
        let bars: Vec<Msg> = of_then.map(|(_, bar)| bar.said(limits)).collect();
        (!bars.is_empty()).then(|| Arg::each(bars))
    }

    /// What is to be entered for a yes; nothing where all is known.
    pub fn unknown(&self) -> Arg {
        Arg::each(self.missing.iter().map(|what| what.said()))
    }
}

const SLACK: f64 = 1e-9;

fn margin(weather: &Weather) -> Result<Margin, OutOfRange> {
    air::margin(weather.temperature, weather.humidity, weather.surface)
}

/// What forbids a coat in one weather. Sources: [`LABEL_LIMITS`], [`air::MARGIN_RULE`].
pub fn bars(limits: &Limits, weather: &Weather, margin: &Margin) -> Vec<Bar> {
    let (air, surface) = (weather.temperature.value, weather.surface.value);
    let colder = |least: ThermodynamicTemperature| air.min(surface) < least.value - SLACK;
    let warmer = |most: ThermodynamicTemperature| air.max(surface) > most.value + SLACK;
    let wetter = |most: Ratio| weather.humidity.value > most.value + SLACK;
    let found = [
        (!margin.far_enough, Bar::DewPoint),
        (margin.too_humid, Bar::Humid),
        (limits.humidity_most.is_some_and(wetter), Bar::LabelHumidity),
        (limits.least.is_some_and(colder), Bar::Cold),
        (limits.most.is_some_and(warmer), Bar::Warm),
    ];
    found.into_iter().filter(|(forbids, _)| *forbids).map(|(_, bar)| bar).collect()
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;
    use uom::si::ratio::percent;
    use uom::si::thermodynamic_temperature::degree_celsius;

    use super::*;

    fn celsius(value: f64) -> ThermodynamicTemperature {
        ThermodynamicTemperature::new::<degree_celsius>(value)
    }

    fn weather(air: f64, humidity: f64, surface: f64) -> Weather {
        Weather {
            temperature: celsius(air),
            humidity: Ratio::new::<percent>(humidity),
            surface: celsius(surface),
        }
    }

    fn label() -> Limits {
        Limits {
            least: Some(celsius(10.0)),
            most: Some(celsius(30.0)),
            humidity_most: Some(Ratio::new::<percent>(80.0)),
            moisture_most: None,
        }
    }

    fn of(limits: &Limits, now: Weather, night: Option<Weather>) -> Option<bool> {
        Verdict::of(limits, &now, night.as_ref(), None).unwrap().may_coat()
    }

    #[test]
    fn yes_only_where_all_is_known_and_allows_it() {
        let (day, night) = (weather(20.0, 55.0, 18.0), weather(14.0, 60.0, 12.0));
        assert_eq!(of(&label(), day, Some(night)), Some(true));
        assert_eq!(of(&label(), day, None), None);
        assert_eq!(of(&Limits::default(), day, Some(night)), None);
        // A night that is too cold forbids it, whatever is not known besides.
        let cold = weather(9.0, 60.0, 9.0);
        assert_eq!(of(&label(), day, Some(cold)), Some(false));
        let least = Limits { least: Some(celsius(10.0)), ..Limits::default() };
        assert_eq!(of(&least, day, Some(cold)), Some(false));
        // A surface as cold as humid air before dawn: dew.
        assert_eq!(of(&label(), day, Some(weather(12.0, 84.0, 11.0))), Some(false));
        // At the limits themselves it may.
        assert_eq!(
            of(&label(), weather(30.0, 50.0, 30.0), Some(weather(10.0, 50.0, 10.0))),
            Some(true)
        );
    }

    #[test]
    fn the_woods_moisture_where_the_label_asks_for_it() {
        let (day, night) = (weather(20.0, 55.0, 18.0), weather(14.0, 60.0, 12.0));
        let share = Ratio::new::<percent>;
        let limits = Limits { moisture_most: Some(share(12.0)), ..label() };
        let may = |wood| Verdict::of(&limits, &day, Some(&night), wood).unwrap().may_coat();
        assert_eq!(
            [may(None), may(Some(share(12.0))), may(Some(share(12.1)))],
            [None, Some(true), Some(false)]
        );
    }

    proptest! {
        /// Held against the rules written out once more.
        #[test]
        fn never_yes_against_a_limit(
            now in (0.0..40.0, 20.0..100.0, 0.0..45.0),
            night in prop::option::of((0.0..40.0, 20.0..100.0, 0.0..45.0)),
            least in prop::option::of(0.0..15.0),
            most in prop::option::of(20.0..40.0),
            humidity in prop::option::of(40.0..95.0),
        ) {
            let limits = Limits {
                least: least.map(celsius),
                most: most.map(celsius),
                humidity_most: humidity.map(Ratio::new::<percent>),
                moisture_most: None,
            };
            let (now, night) = (now, night);
            let got = of(&limits, weather(now.0, now.1, now.2), night.map(|n| weather(n.0, n.1, n.2)));
            let dew = |(t, h, s): (f64, f64, f64)| {
                let g = libm::log(h / 100.0) + 17.62 * t / (243.12 + t);
                s - 243.12 * g / (17.62 - g)
            };
            let known = least.is_some() && most.is_some() && humidity.is_some() && night.is_some();
            let allows = |at: (f64, f64, f64)| {
                dew(at) >= 3.0 - 1e-6
                    && at.1 < 85.0
                    && least.is_none_or(|least| at.0 >= least - 1e-6 && at.2 >= least - 1e-6)
                    && most.is_none_or(|most| at.0 <= most + 1e-6 && at.2 <= most + 1e-6)
                    && humidity.is_none_or(|most| at.1 <= most + 1e-6)
            };
            if got == Some(true) {
                prop_assert!(known && allows(now) && night.is_some_and(allows));
            }
            if got.is_none() {
                prop_assert!(!known);
            }
        }
    }
}
