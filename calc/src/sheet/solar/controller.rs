//! The array against its controller: current in and out, hot voltage, and the fuse of each string.

use uom::si::electric_potential::volt;
use uom::si::power::watt;

use super::gap::Store;
use super::{Figures, words};
use crate::ask::Ask;
use crate::electrical::charging::GREATEST_NOMINAL_V;
use crate::energy::battery_voltage::{Chemistry, LOW_VOLTAGE_V, highest_v};
use crate::energy::string::{hot_string_v, string_fuse_a, string_wire_a};
use crate::lists::{BuyLine, LineId};
use crate::outcome::Record;
use crate::quantity::{CURRENT, TEMPERATURE, VOLTAGE, amount, plain};
use crate::reader::Reader;
use crate::report::Remark;
use crate::sheet::wiring::{amperes, volts};
use crate::text::text;

pub(super) static OUTPUT: Ask = Ask::measure(
    "controller_amps",
    "Controller\u{2019}s charging current",
    &CURRENT,
    ["A", "A"],
    (0.1, 1000.0),
)
.optional()
.usual("30 A", "30 A")
.help("What it gives the battery at most, on its label.");
pub(super) static INPUT: Ask = Ask::measure(
    "controller_input_amps",
    "Most panel current it takes",
    &CURRENT,
    ["A", "A"],
    (0.1, 1000.0),
)
.optional()
.usual("35 A", "35 A")
.help("The highest short-circuit current at its panel terminals, in its data sheet.");
pub(super) static BATTERY: Ask = Ask::measure(
    "battery_voltage",
    "Battery\u{2019}s nominal voltage",
    &VOLTAGE,
    ["V", "V"],
    (1.0, GREATEST_NOMINAL_V),
)
.optional()
.usual("12.8 V", "12.8 V")
.help("Left blank it is taken from the energy sheet, where the need comes from one.");
pub(super) static HOT: Ask = Ask::measure(
    "hot_cells",
    "Panels at their hottest",
    &TEMPERATURE,
    ["F", "C"],
    (273.15, 393.15),
)
.default("70 C")
.usual("158 F", "70 C")
.help("Flat on a roof in full sun about 70 °C (158 °F), a rule of thumb.");

/// What was typed of the controller, read.
pub(super) struct Inputs {
    output_a: Option<f64>,
    input_a: Option<f64>,
    /// The battery: nominal, and at the end of a charge. [V]
    battery_v: Option<(f64, f64)>,
    hot_c: f64,
}

pub(super) fn read(reader: &Reader<'_>, store: Option<&Store>) -> Inputs {
    let typed = reader.maybe_si(&BATTERY).map(|nominal| {
        // Nobody says here what it is made of: the higher of both kinds.
        (nominal, highest_v(nominal, Chemistry::Unknown).0)
    });
    Inputs {
        output_a: reader.maybe_si(&OUTPUT),
        input_a: reader.maybe_si(&INPUT),
        battery_v: typed.or_else(|| store.and_then(|store| store.battery_v)),
        hot_c: reader.si(&HOT) - 273.15,
    }
}

/// The fuse of each string: none where fewer than three lie side by side; the error says what is missing.
fn fuse(inputs: &super::Inputs, figures: &Figures) -> Option<Result<(f64, f64), String>> {
    if inputs.strings() < 3 {
        return None;
    }
    let Some(cold) = figures.cold else {
        return Some(Err(
            "enter the open-circuit voltage and the coldest morning, for the voltage that it must break".to_owned(),
        ));
    };
    let cold_v = cold.string.get::<volt>();
    if cold_v >= LOW_VOLTAGE_V {
        return Some(
            Err("from 50 V on it is a licensed electrician\u{2019}s to choose".to_owned()),
        );
    }
    let (Some(short), Some(most)) = (inputs.short_circuit_a, inputs.max_series_fuse_a) else {
        return Some(Err(
            "enter the panels\u{2019} short-circuit current and maximum series fuse".to_owned()
        ));
    };
    Some(match string_fuse_a(short, most) {
        Some(rating) => Ok((rating, cold_v)),
        None => Err(text!(
            "it would be {} or more, and the panel allows {}: no such fuse is made; fewer strings, or each on a controller of its own",
            amperes(string_wire_a(short)),
            amperes(most)
        )),
    })
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

pub(super) fn remarks(inputs: &super::Inputs, figures: &Figures, remarks: &mut Vec<Remark>) {
    let mut missing: Vec<&str> = Vec::new();
    let (array_a, output_a) = currents(inputs);
    match (array_a, inputs.current.input_a) {
        (Some(array), Some(limit)) if array > limit * (1.0 + 1e-9) => {
            remarks.push(Remark::warning(text!(
                "In bright sun the strings can bring {}, and the controller\u{2019}s panel terminals take {}: fewer strings side by side, or another controller.",
                amperes(array), amperes(limit)
            )));
        }
        (Some(_), Some(_)) => {}
        _ => missing.push(
            "whether the controller takes the panels\u{2019} current (enter Isc and the most panel current it takes)",
        ),
    }
    match (output_a, inputs.current.output_a) {
        (Some(output), Some(limit)) if output > limit * (1.0 + 1e-9) => {
            remarks.push(Remark::warning(text!(
                "The panels can bring {} at the battery, and the controller gives {}: a tracking one throttles to that, a simple one is overloaded. Take a larger one, or fewer panels.",
                amperes(output), amperes(limit)
            )));
        }
        (Some(_), Some(_)) => {}
        _ => missing.push(
            "whether the controller\u{2019}s charging current is enough (enter it and the battery\u{2019}s voltage)",
        ),
    }
    match (hot_v(inputs), inputs.current.battery_v) {
        (Some(hot), Some((_, charging))) if hot < charging + 5.0 - 1e-9 => {
            remarks.push(Remark::warning(text!(
                "Hot panels bring {}, and a tracking controller wants 5 V above the battery, {} at the end of a charge: it may not start, or not fill the battery in summer. More in series where the cold string stays below 50 V, or panels of a higher voltage; a simple controller does without.",
                volts(hot), volts(charging + 5.0)
            )));
        }
        (Some(_), Some(_)) => {}
        _ => missing
            .push("whether hot panels still charge (enter Vmp and the battery\u{2019}s voltage)"),
    }
    if figures.within_controller.is_none() {
        missing.push("whether the cold string stays below the controller\u{2019}s limit (enter Voc, the coldest morning and the controller\u{2019}s highest voltage)");
    }
    if let Some(cold) = figures.cold.filter(|cold| cold.string.get::<volt>() >= LOW_VOLTAGE_V) {
        remarks.push(Remark::warning(text!(
            "In the cold a string stands at {}: from 50 V on it can kill, and other rules hold. Fewer in series, or leave its wiring to a licensed electrician.",
            words::volts(cold.string)
        )));
    } else if let Some(short) = inputs.short_circuit_a {
        let least = string_wire_a(short);
        let carries = match fuse(inputs, figures) {
            Some(Ok((rating, _))) => rating.max(least),
            _ => least,
        };
        remarks.push(Remark::note(text!(
            "Wire of each string: one that may carry {} or more.",
            amount(carries, 1, "A")
        )));
    }
    match fuse(inputs, figures) {
        Some(Ok((rating, cold_v))) => remarks.push(Remark::note(text!(
            "{} strings side by side: a fuse of {} for panels (gPV) in each, fuse and holder for {} DC or more.",
            &inputs.strings(),
            amount(rating, 1, "A"),
            whole_volts(cold_v)
        ))),
        Some(Err(message)) => remarks.push(Remark::warning(text!(
            "{} strings side by side need a fuse each. Not shown: {}.",
            &inputs.strings(),
            &message
        ))),
        None => {}
    }
    if !missing.is_empty() {
        remarks.push(Remark::note(text!("Not shown: {}.", missing.join("; "))));
    }
}

fn whole_volts(v: f64) -> String {
    text!("{} V", plain((v - 1e-6).ceil(), 0))
}

pub(super) fn buy(inputs: &super::Inputs, figures: &Figures) -> Option<BuyLine> {
    let Some(Ok((rating, cold_v))) = fuse(inputs, figures) else { return None };
    let (amperes, volts) = (plain(rating, 1), plain((cold_v - 1e-6).ceil(), 0));
    let id = LineId::shared(text!("string-fuse/{}a/{}v", &amperes, &volts));
    let spec = text!("{} A gPV, {} V DC or more", &amperes, &volts);
    Some(BuyLine::pieces(id, "string fuse with holder", spec, f64::from(inputs.strings())))
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
