//! Why a coat may not go on, and what is not known of it, in words; for the coating sheet and the
//! schedule.

use uom::si::ratio::percent as percent_unit;

use crate::coating::air::{HUMIDITY_LIMIT_PERCENT, LEAST_MARGIN_K};
use crate::coating::verdict::{Bar, Limits, Missing, Verdict, When};
use crate::quantity::{Style, percent};
use crate::text::text;

/// What forbids it: `the air is more humid than the label's 80 %`.
pub fn bar(bar: Bar, limits: &Limits, style: Style) -> String {
    let degrees = |limit: Option<crate::quantity::ThermodynamicTemperature>| {
        limit.map_or_else(String::new, |limit| style.temperature(limit))
    };
    let share = |limit: Option<uom::si::f64::Ratio>| {
        limit.map_or_else(String::new, |limit| percent(limit.get::<percent_unit>()))
    };
    match bar {
        Bar::DewPoint => text!(
            "the surface is less than {} above the dew point",
            style.temperature_difference(LEAST_MARGIN_K)
        ),
        Bar::Humid => text!("the air is at {} humidity or more", percent(HUMIDITY_LIMIT_PERCENT)),
        Bar::LabelHumidity => {
            text!("the air is more humid than the label's {}", share(limits.humidity_most))
        }
        Bar::Cold => text!("it is colder than the label's least, {}", degrees(limits.least)),
        Bar::Warm => text!("it is warmer than the label's greatest, {}", degrees(limits.most)),
        Bar::WetWood => {
            text!("the wood is wetter than the label's {}", share(limits.moisture_most))
        }
    }
}

/// All that forbids it at one time, with commas between; empty where nothing does.
pub fn bars(verdict: &Verdict, when: When, limits: &Limits, style: Style) -> String {
    let of_then = verdict.bars.iter().filter(|(then, _)| *then == when);
    let words: Vec<String> = of_then.map(|(_, what)| bar(*what, limits, style)).collect();
    words.join(", ")
}

/// What is to be entered for a yes, with commas between; empty where all is known.
pub fn missing(verdict: &Verdict) -> String {
    let words: Vec<&str> = verdict
        .missing
        .iter()
        .map(|what| match what {
            Missing::Least => "the label's least temperature",
            Missing::Most => "the label's greatest temperature",
            Missing::Humidity => "the label's humidity limit",
            Missing::Night => "the coming night",
            Missing::Moisture => "the wood's moisture",
        })
        .collect();
    words.join(", ")
}
