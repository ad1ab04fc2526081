//! The array against its controller: current in and out, hot voltage, and the fuse of each string.

use uom::si::electric_potential::volt;
use uom::si::f64::ThermodynamicTemperature;
use uom::si::power::watt;
use uom::si::thermodynamic_temperature::degree_celsius;

use super::Figures;
use super::gap::Store;
use crate::energy::battery_voltage::{Chemistry, LOW_VOLTAGE_V, highest_v};
use crate::energy::string::{hot_string_v, string_fuse_a, string_wire_a};
use crate::formula::Formula as _;
use crate::lists::{BuyLine, LineId};
use crate::outcome::Record;
use crate::quantity::{Style, amount, down, plain};
use crate::report::Remark;
use crate::sheet::wiring::{amperes, volts};
use crate::words::{Arg, Id, Msg, solar as words};

/// What was typed of the controller, read.
pub(super) struct Inputs {
    output_a: Option<f64>,
    input_a: Option<f64>,
    /// The battery: nominal, and at the end of a charge. [V]
    battery_v: Option<(f64, f64)>,
    hot_c: f64,
}

impl Inputs {
    /// Of what was typed; the battery's voltage else from the sheet that knows of it.
    pub fn of(
        output_a: Option<f64>,
        input_a: Option<f64>,
        battery_v: Option<f64>,
        hot: ThermodynamicTemperature,
        store: Option<&Store>,
    ) -> Self {
        let typed = battery_v.map(|nominal| {
            // Nobody says here what it is made of: the higher of both kinds.
            (nominal, highest_v(nominal, Chemistry::Unknown).0)
        });
        Self {
            output_a,
            input_a,
            battery_v: typed.or_else(|| store.and_then(|store| store.battery_v)),
            hot_c: hot.get::<degree_celsius>(),
        }
    }
}

/// The fuse of each string: its rating and what it must break; none where fewer than three lie side by side; the
/// error says what is missing. [A, V]
fn fuse(inputs: &super::Inputs, figures: &Figures) -> Option<Result<(f64, f64), Msg>> {
    if inputs.strings() < 3 {
        return None;
    }
    let Some(cold) = figures.cold else { return Some(Err(words::WHY_COLD.into())) };
    let cold_v = cold.string.get::<volt>();
    if cold_v >= LOW_VOLTAGE_V {
        return Some(Err(words::WHY_LICENSED.into()));
    }
    let (Some(short), Some(most)) = (inputs.short_circuit_a, inputs.max_series_fuse_a) else {
        return Some(Err(words::WHY_PANELS.into()));
    };
    Some(string_fuse_a(short, most).map(|rating| (rating, cold_v)).ok_or_else(|| {
        words::WhyRating { least: amperes(string_wire_a(short)), most: amperes(most) }.into()
    }))
}

/// Short-circuit current of all strings in bright sun, and what the controller would give the battery. [A]
fn currents(inputs: &super::Inputs) -> (Option<f64>, Option<f64>) {
    let strings = f64::from(inputs.strings());
    let array = inputs.short_circuit_a.map(|short| 1.25 * short * strings);
    let output =
        inputs.current.battery_v.map(|(nominal, _)| inputs.rated().get::<watt>() / nominal);
    (array, output)
}

fn hot_v(inputs: &super::Inputs) -> Option<f64> {
    Some(hot_string_v(inputs.most_power_v?, inputs.in_series, inputs.current.hot_c))
}

pub(super) fn remarks(
    inputs: &super::Inputs,
    figures: &Figures,
    style: Style,
    remarks: &mut Vec<Remark>,
) {
    let mut unknown: Vec<Id> = Vec::new();
    let (array_a, output_a) = currents(inputs);
    match (array_a, inputs.current.input_a) {
        (Some(array), Some(limit)) if array > limit * (1.0 + 1e-9) => {
            let (array, limit) = (amperes(array), amperes(limit));
            remarks.push(Remark::warning(style.say(words::InputOver { array, limit })));
        }
        (Some(_), Some(_)) => {}
        _ => unknown.push(words::INPUT_UNKNOWN),
    }
    match (output_a, inputs.current.output_a) {
        (Some(output), Some(limit)) if output > limit * (1.0 + 1e-9) => {
            let (output, limit) = (amperes(output), amperes(limit));
            remarks.push(Remark::warning(style.say(words::OutputOver { output, limit })));
        }
        (Some(_), Some(_)) => {}
        _ => unknown.push(words::OUTPUT_UNKNOWN),
    }
    match (hot_v(inputs), inputs.current.battery_v) {
        (Some(hot), Some((_, charging))) if hot < charging + 5.0 - 1e-9 => {
            let (hot, needed) = (volts(down(hot, 2)), volts(charging + 5.0));
            remarks.push(Remark::warning(style.say(words::HotLow { hot, needed })));
        }
        (Some(_), Some(_)) => {}
        _ => unknown.push(words::HOT_UNKNOWN),
    }
    if figures.within_controller.is_none() {
        unknown.push(words::COLD_UNKNOWN);
    }
    let fuse = fuse(inputs, figures);
    if let Some(cold) = figures.cold.filter(|cold| cold.string.get::<volt>() >= LOW_VOLTAGE_V) {
        let volts = Arg::volts_borne(cold.string);
        remarks.push(Remark::warning(style.say(words::FiftyVolts { volts })));
    } else if let Some(wire) = Figures::wire(inputs) {
        let carries = match &fuse {
            Some(Ok((rating, _))) => rating.max(wire.value()),
            _ => wire.value(),
        };
        let current = amount(carries, 1, "A");
        remarks.push(Remark::note(style.say(words::StringWire { current })));
    }
    let strings = inputs.strings();
    match fuse {
        Some(Ok((rating, cold_v))) => {
            let (rating, volts) = (amount(rating, 1, "A"), amount(whole(cold_v), 0, "V"));
            remarks.push(Remark::note(style.say(words::StringFuse { strings, rating, volts })));
        }
        Some(Err(why)) => {
            remarks.push(Remark::warning(style.say(words::FuseNotShown { strings, why })));
        }
        None => {}
    }
    remarks.extend(unknown.into_iter().map(|what| Remark::note(style.say(what))));
}

/// Whole volts, none less. [V]
fn whole(v: f64) -> f64 {
    (v - 1e-6).ceil()
}

pub(super) fn buy(inputs: &super::Inputs, figures: &Figures, style: Style) -> Option<BuyLine> {
    let Some(Ok((rating, cold_v))) = fuse(inputs, figures) else { return None };
    let id = format!("string-fuse/{}a/{}v", plain(rating, 1), plain(whole(cold_v), 0));
    let spec = style.say(words::BuyFuseSpec {
        rating: amount(rating, 1, "A"),
        volts: amount(whole(cold_v), 0, "V"),
    });
    let strings = f64::from(inputs.strings());
    Some(BuyLine::pieces(LineId::shared(id), style.say(words::BUY_FUSE), spec, strings))
}

pub(super) fn record(inputs: &super::Inputs, figures: &Figures, record: Record) -> Record {
    let (array_a, output_a) = currents(inputs);
    let fuse = fuse(inputs, figures).and_then(Result::ok);
    let within = |found: Option<f64>, limit: Option<f64>| {
        found.zip(limit).map(|(found, limit)| found <= limit * (1.0 + 1e-9))
    };
    record
        .with("strings", inputs.strings() as usize)
        .maybe("string_fuse_a", fuse.map(|fuse| fuse.0))
        .maybe("string_fuse_volts_least", fuse.map(|fuse| fuse.1))
        .maybe("array_current_a", array_a)
        .maybe("within_controller_input", within(array_a, inputs.current.input_a))
        .maybe("controller_current_a", output_a)
        .maybe("within_controller_output", within(output_a, inputs.current.output_a))
        .maybe("hot_string_v", hot_v(inputs))
}
