//! What has to be said of every run and circuit.

use super::{Supply, amperes, degrees, rating, volts};
use crate::electrical::ampacity::{Conditions, Insulation, Rated};
use crate::electrical::charging::fuse_voltage;
use crate::electrical::conductor::Conductor;
use crate::electrical::least_size::{is_thin, small_fuse};
use crate::electrical::sources;
use crate::quantity::{Style, amount};
use crate::report::Remark;
use crate::words::{Msg, wiring as words};

/// What has to be said of the voltage of fuses, of small wire and of the insulation.
pub fn general_remarks(
    supply: &Supply,
    used: &[Conductor],
    fuses_a: &[f64],
    conditions: &Conditions,
    style: Style,
    remarks: &mut Vec<Remark>,
) {
    let mut note = |message: Msg| remarks.push(Remark::note(style.say(message)));
    if let Some(most_a) = fuses_a.iter().copied().reduce(f64::max) {
        let (rated_v, source) = fuse_voltage(supply.highest_v, most_a);
        let (rated, highest) = (amount(rated_v, 1, "V"), volts(supply.highest_v));
        note(words::FuseVolts { rated, source, highest, who: supply.highest_source }.into());
    }
    if let Some(wire) = used.iter().find(|wire| is_thin(**wire) && !conditions.in_jacket) {
        note(
            words::TooThin {
                wire: wire.to_string(),
                awg: &sources::CFR_LEAST_SIZE,
                metric: &sources::ISO_10133_LEAST_SIZE,
                trailers: &sources::NEC_552_FUSE,
            }
            .into(),
        );
    }
    let rated = || used.iter().filter_map(|wire| Rated::new(*wire, conditions).ok());
    let weakest = rated().min_by(|a, b| a.fuse_limit_a().total_cmp(&b.fuse_limit_a()));
    if let Some((wire, small)) =
        weakest.and_then(|wire| Some((wire, small_fuse(wire.conductor())?)))
    {
        note(
            words::SmallWire {
                wire: wire.conductor().to_string(),
                limit: amperes(wire.fuse_limit_a()),
                most: rating(small.most_a),
                source: small.source,
                other: rating(small.other_a),
                who: small.other,
                boats: amperes(1.5 * wire.ampacity_a()),
                boat_rule: &sources::CFR_BOAT_FUSE,
            }
            .into(),
        );
    }
    for wire in rated() {
        if let (Some(listed), Conductor::PerLength { .. }) = (wire.stands_in(), wire.conductor()) {
            note(words::StandsIn { wire: wire.conductor().to_string(), listed }.into());
        }
    }
    let rating = degrees(conditions.insulation.rating_c());
    let bundle: Msg = match conditions.bundled {
        0..=2 => words::BUNDLE_TWO.into(),
        count => words::BundleMore { count }.into(),
    };
    let look: Msg = match conditions.insulation {
        Insulation::C60 => words::LOOK_UNMARKED.into(),
        _ => words::LookJacket { rating: rating.as_str() }.into(),
    };
    let air = amount(conditions.ambient_c, 1, "°C");
    note(words::Carries { rating, bundle, air, look }.into());
}
