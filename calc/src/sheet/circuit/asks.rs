//! What the circuit sheet asks.

use super::common::{
    AIR_TEMPERATURE, BUNDLED, CHARGING_VOLTAGE, CONDUCTOR_TEMPERATURE, CONTINUOUS, DROP_LIMIT,
    FAR_SOURCE, IN_INSULATION, IN_JACKET, INSULATION, LOW_VOLTAGE, SOURCE_VOLTAGE,
};
use crate::ask::{Ask, Figure};
use crate::electrical::wanted::SUGGESTIONS;
use crate::quantity::{CURRENT, LENGTH, POWER};

pub(super) static ASKS: &[&Ask] = &[
    &SOURCE_VOLTAGE,
    &DROP_LIMIT,
    &RUNS,
    &LOADS,
    &ROWS,
    &INSULATION,
    &CONTINUOUS,
    &LOW_VOLTAGE,
    &CHARGING_VOLTAGE,
    &SLACK,
    &BUNDLED,
    &IN_JACKET,
    &IN_INSULATION,
    &CONDUCTOR_CHOICES,
    &POSITIVE_WIRE,
    &NEGATIVE_WIRE,
    &CONDUCTOR_TEMPERATURE,
    &AIR_TEMPERATURE,
];

pub(super) static ID: Ask = Ask::words("id", "Name of the run")
    .required()
    .usual("r1", "r1")
    .help("Write it on both ends of the wire.");
pub(super) static FROM: Ask = Ask::words("from", "From")
    .required()
    .usual("source", "source")
    .help("The splice nearer to the battery; the one at the fuse is called source.");
pub(super) static TO: Ask = Ask::words("to", "To")
    .required()
    .usual("lamp 1", "lamp 1")
    .help("The splice or outlet that this run feeds; each is fed by one run only.");
pub(super) static LENGTH_ONE_WAY: Ask =
    Ask::measure("length", "Length, one way", &LENGTH, ["ft", "m"], (0.0, 10_000.0))
        .usual("6 ft", "1.8 m")
        .help("Along the way the wire will lie, up and over; the way back is added here.")
        .figure(Figure::OneWay);
pub(super) static CONDUCTOR: Ask =
    Ask::notation("conductor", "Conductor", "conductor", &SUGGESTIONS)
        .usual("auto", "auto")
        .help("Printed on the jacket: 16 AWG, 1.5 mm2; or ohm/m of one conductor; auto takes the least copper that is enough.");
pub(super) static DEVICE_RATING: Ask = Ask::measure(
    "device_rating",
    "Dimmer or switch in this run carries",
    &CURRENT,
    ["A", "A"],
    (0.01, 10_000.0),
)
.optional()
.usual("8 A", "8 A")
.help("Printed on the dimmer or switch, at DC; leave empty where there is none.");
pub(super) static DEVICE_WATTS: Ask = Ask::measure(
    "device_watts",
    "Or in watts",
    &POWER,
    ["W", "W"],
    (0.01, 100_000.0),
)
.optional()
.usual("96 W", "96 W")
.help("Printed on the dimmer or switch, at the voltage of this circuit; both are held against it.");
pub(super) static SELF_PROTECTING: Ask =
    Ask::flag("protects_itself", "Dimmer or switch protects itself", false)
        .help("It has a fuse of its own or limits its current, says its maker: then the fuse before it may be larger than its rating.");
pub(super) static FUSE_BLOCK: Ask = Ask::flag("fuse_block", "Ends at a fuse block", false)
    .help("Each run that leaves it then has a fuse of its own, which protects its own wire alone.");
pub(super) static X: Ask =
    Ask::measure("x", "From the front wall", &LENGTH, ["in", "mm"], (0.0, 100.0))
        .usual("12 in", "300 mm");
pub(super) static Y: Ask =
    Ask::measure("y", "From the left wall", &LENGTH, ["in", "mm"], (0.0, 100.0))
        .usual("0 in", "0 mm");
pub(super) static ROUTE_FROM: Ask = Ask::group("from", "It begins", &[&X, &Y]);
pub(super) static ROUTE_TO: Ask = Ask::group("to", "It ends", &[&X, &Y]);
pub(super) static RISE: Ask =
    Ask::measure("rise", "Up and over", &LENGTH, ["ft", "m"], (0.0, 1000.0))
        .default("0 m")
        .usual("6 ft", "1.8 m")
        .help("All that goes up, down and round things.");
pub(super) static ROUTE: Ask =
    Ask::group("route", "Length from where it lies", &[&ROUTE_FROM, &ROUTE_TO, &RISE])
        .optional()
        .help("In place of the length: along the body, across it, and up and over. A length that is typed comes first.");
pub(super) static RUNS: Ask = Ask::rows(
    "runs",
    "Runs",
    "run",
    1,
    &[
        &ID,
        &FROM,
        &TO,
        &LENGTH_ONE_WAY,
        &ROUTE,
        &CONDUCTOR,
        &FUSE_BLOCK,
        &DEVICE_RATING,
        &DEVICE_WATTS,
        &SELF_PROTECTING,
        &FAR_SOURCE,
    ],
)
.help("Each stretch of wire from one splice to the next, starting at the source.");

pub(super) static AT: Ask = Ask::words("at", "At")
    .required()
    .usual("lamp 1", "lamp 1")
    .help("The end of the run that it hangs on.");
pub(super) static LABEL: Ask = Ask::words("label", "Name").usual("lamp 1", "lamp 1");
pub(super) static MODEL: Ask = Ask::choice(
    "model",
    "How it draws",
    &[
        ("power", "constant power (W): LED lamps with a driver, chargers, electronics"),
        ("current", "constant current (A): LED strips, measured loads"),
        ("resistance", "resistance (ohm): heaters, filament lamps"),
    ],
)
.required();
pub(super) static VALUE: Ask =
    Ask::notation("value", "How much", "load", &["3 W", "0.25 A", "48 ohm"])
        .usual("3 W", "3 W")
        .help("One of them, from its label: in W, A or ohm, as it draws.");
pub(super) static COUNT: Ask =
    Ask::count("count", "How many", (1, 1000)).default("1").help("Alike, at the same place.");
pub(super) static POSITIVE_LEAD: Ask =
    Ask::notation("positive_lead", "Positive lead", "colour", &COLOURS)
        .optional()
        .usual("red", "red")
        .help(
            "Its colour as found on the device, with its stripe: black/white. Check with a meter.",
        );
pub(super) static NEGATIVE_LEAD: Ask =
    Ask::notation("negative_lead", "Negative lead", "colour", &COLOURS)
        .optional()
        .usual("black", "black")
        .help("Its colour as found on the device.");
pub(super) static LOADS: Ask = Ask::rows(
    "loads",
    "Loads",
    "load",
    1,
    &[&AT, &LABEL, &MODEL, &VALUE, &COUNT, &POSITIVE_LEAD, &NEGATIVE_LEAD],
)
.optional()
.help("Lamps, fans, pumps, outlets: whatever draws current and is not in a row below.");

pub(super) static ROW_LABEL: Ask = Ask::words("label", "Name of the row")
    .required()
    .usual("left", "left")
    .help("Its splices are called left 1, left 2 and so on, its runs run left 1 and so on.");
pub(super) static ROW_COUNT: Ask =
    Ask::count("count", "How many", (1, 100)).usual("4", "4").help("All alike, one after another.");
pub(super) static FIRST: Ask =
    Ask::measure("first", "Wire to the first", &LENGTH, ["ft", "m"], (0.0, 10_000.0))
        .usual("7 ft", "2.1 m")
        .help("From where the row is fed, up and over, one way.")
        .figure(Figure::OneWay);
pub(super) static SPACING: Ask =
    Ask::measure("spacing", "Spacing", &LENGTH, ["in", "mm"], (0.0, 1000.0))
        .usual("50 in", "1270 mm")
        .help("From each to the next, along the wire.")
        .figure(Figure::Spacing);
pub(super) static ROW_CONDUCTOR: Ask =
    Ask::notation("conductor", "Conductor", "conductor", &SUGGESTIONS)
        .default("auto")
        .help("For all runs of the row.");
pub(super) static ROWS: Ask = Ask::rows(
    "rows",
    "Rows of lights",
    "row",
    0,
    &[
        &ROW_LABEL,
        &FROM,
        &ROW_COUNT,
        &FIRST,
        &SPACING,
        &MODEL,
        &VALUE,
        &ROW_CONDUCTOR,
        &DEVICE_RATING,
        &DEVICE_WATTS,
        &SELF_PROTECTING,
        &POSITIVE_LEAD,
        &NEGATIVE_LEAD,
    ],
)
.optional()
.help("Like lights in a row, each fed from the one before: their runs and splices are made here.");

pub(super) static SLACK: Ask =
    Ask::measure("slack", "Slack at each end", &LENGTH, ["in", "mm"], (0.0, 10.0))
        .optional()
        .usual("6 in", "150 mm")
        .help("Added to each piece of wire at both ends, for stripping and for a second try.")
        .figure(Figure::FromEnd);
static CHOICE: Ask = Ask::notation("", "Size", "conductor", &SUGGESTIONS);
pub(super) static CONDUCTOR_CHOICES: Ask =
    Ask::list("conductor_choices", "Sizes for auto to choose from", 1, &CHOICE)
        .optional()
        .help("What you have or can buy; all AWG sizes from 16 to 4/0 where nothing is named, from 18 inside a jacket.");
pub(super) static POSITIVE_WIRE: Ask =
    Ask::notation("positive_wire", "Positive wire of the runs", "colour", &COLOURS)
        .default("red")
        .help("The colour of the wire you bought.");
pub(super) static NEGATIVE_WIRE: Ask =
    Ask::notation("negative_wire", "Negative wire of the runs", "colour", &COLOURS)
        .default("black")
        .help("Yellow is told more easily from a mains black (ABYC E-11).");
static COLOURS: [&str; 14] = [
    "red",
    "black",
    "yellow",
    "white",
    "blue",
    "brown",
    "grey",
    "orange",
    "violet",
    "pink",
    "green",
    "black/white",
    "black/yellow",
    "red/black",
];
