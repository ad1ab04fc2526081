//! The screw of a furring strip: how long, through how much steel, which holes, and what it holds.

use crate::text::text;
use uom::si::f64::{Force, Mass, Pressure};
use uom::si::force::newton;
use uom::si::length::millimeter;
use uom::si::pressure::megapascal;
use uom::si::ratio::ratio;

use crate::ask::{Ask, Figure};
use crate::fastening::acceleration::{EN_12195, forces};
use crate::fastening::drill_point::{DrillPoint, for_steel};
use crate::fastening::hold::{least_screws, used};
use crate::fastening::length::{Need, least_length};
use crate::fastening::screw::{Screw, by_gauge};
use crate::fastening::sheet_steel::{allowable, gauge_thickness};
use crate::fastening::steel_pilot::steel_pilot;
use crate::fastening::window::{Unfit, Window};
use crate::fault::Fault;
use crate::outcome::Record;
use crate::quantity::{LENGTH, Length, MASS, Measure, Style};
use crate::reader::Reader;

static NAME: Ask = Ask::words("name", "Layer").usual("strip", "strip");
static THICKNESS: Ask = Ask::measure("thickness", "Thickness", &LENGTH, ["in", "mm"], (0.0, 0.3))
    .usual("3/4 in", "19 mm")
    .figure(Figure::Thickness);
static STACK: Ask = Ask::rows("stack", "Layers under the head", "layer", 1, &[&NAME, &THICKNESS])
    .help("Everything from the screw's head to the steel, the strip among it.");
static STEEL: Ask =
    Ask::notation("steel", "Steel", "steel thickness", &["16 ga", "18 ga", "20 ga", "1.2 mm"])
        .usual("16 ga", "1.5 mm")
        .help("All the steel that is screwed through: measured at a hole's edge, or its gauge.");
static BEHIND: Ask =
    Ask::measure("behind", "Free depth behind the steel", &LENGTH, ["in", "mm"], (0.0, 1.0))
        .optional()
        .usual("1 in", "25 mm")
        .help("From the steel's far side to the skin, a wire or a pipe, whatever comes first. Left out: the body's depth behind a rib's face, less the steel.")
        .figure(Figure::Gap);
static LENGTH_ONE: Ask = Ask::measure("", "Screw length", &LENGTH, ["in", "mm"], (0.003, 0.3))
    .usual("1 1/4 in", "32 mm");
static LENGTHS: Ask =
    Ask::list("lengths", "Screw lengths in the shop", 1, &LENGTH_ONE).figure(Figure::Along);
static GAUGE: Ask = Ask::choice(
    "gauge",
    "Screw gauge",
    &[
        ("8", "#8 (4.2 mm)"),
        ("6", "#6 (3.5 mm)"),
        ("10", "#10 (4.8 mm)"),
        ("12", "#12 (5.5 mm)"),
        ("14", "#14 (6.3 mm)"),
    ],
);
static SELF_DRILLING: Ask = Ask::flag("self_drilling", "Self-drilling", false)
    .help("Its drill point has no thread, and adds to the length that is needed.");
static HANGS: Ask =
    Ask::measure("hangs", "Mass that hangs on the strips", &MASS, ["lb", "kg"], (0.0, 50_000.0))
        .optional()
        .usual("130 lb", "60 kg")
        .help("Strips, boards, lamps, and whatever will be fixed to them.");
/// The screw.
pub(super) static SCREW: Ask = Ask::group(
    "screw",
    "Screw",
    &[&STACK, &STEEL, &BEHIND, &LENGTHS, &GAUGE, &SELF_DRILLING, &HANGS],
)
.optional();

/// The weakest steel that the pull-out formula holds for: 33 ksi. [MPa]
const LEAST_STRENGTH_MPA: f64 = 230.0;

/// What was typed of the screw.
pub(super) struct Screwing {
    pub(super) layers: Vec<(String, Length)>,
    pub(super) steel: Length,
    behind: Option<Length>,
    lengths: Vec<Length>,
    gauge: u8,
    pub(super) self_drilling: bool,
    hangs: Option<Mass>,
}

/// The screw that was chosen.
pub(super) struct Choice {
    pub(super) screw: &'static Screw,
    pub(super) need: Need,
    /// What a self-drilling one would need, where none is asked for.
    pub(super) with_point: Option<Length>,
    pub(super) length: Length,
    /// What lies behind the steel allows no more; none where that is not known.
    pub(super) longest: Option<Length>,
    /// The hole in the steel, where the table has one.
    pub(super) steel_pilot: Option<Length>,
    pub(super) point: Option<DrillPoint>,
    pub(super) hold: Option<Hold>,
}

/// Whether the screws hold the ceiling.
pub(super) struct Hold {
    pub(super) load: Force,
    pub(super) each: Force,
    pub(super) share: f64,
}

pub(super) fn read(group: &Reader<'_>) -> Screwing {
    let steel = group.notation(&STEEL, Length::new::<millimeter>(1.0), read_steel);
    Screwing {
        layers: group.rows(&STACK, |row| (row.words(&NAME), row.measure(&THICKNESS))),
        steel,
        behind: group.maybe(&BEHIND).or_else(|| behind_ribs(group, steel)),
        lengths: group.measures(&LENGTHS),
        gauge: group.choice(&GAUGE).parse().unwrap_or(8),
        self_drilling: group.flag(&SELF_DRILLING),
        hangs: group.maybe(&HANGS),
    }
}

/// What the body's depth behind a rib's face leaves behind the steel.
fn behind_ribs(group: &Reader<'_>, steel: Length) -> Option<Length> {
    let free = (group.body().wall_depth? - steel).max(Length::default());
    group.took(&BEHIND, group.style().short(free));
    Some(free)
}

/// `16 ga`, `16 gauge`, or a measured thickness.
fn read_steel(text: &str) -> Result<Length, String> {
    let small = text.trim().to_ascii_lowercase();
    let gauge = ["gauge", "ga.", "ga"].iter().find_map(|end| small.strip_suffix(end));
    if let Some(number) = gauge {
        return number.trim().parse().ok().and_then(gauge_thickness).ok_or_else(|| {
            text!("no thickness is known for \"{}\"; give an even gauge from 10 to 26, or the measured thickness, as in 1.5 mm", text.chars().take(40).collect::<String>())
        });
    }
    let measure = Measure::read(text, &LENGTH, None).map_err(|error| error.to_string())?;
    let steel = Length::new::<uom::si::length::meter>(measure.si());
    if steel.get::<millimeter>() > 0.0 && steel.get::<millimeter>() <= 12.7 {
        Ok(steel)
    } else {
        Err("the steel must be thicker than nothing, up to 1/2 in (12.7 mm)".to_owned())
    }
}

impl Screwing {
    /// The shortest screw on the shelf that is long enough, and what `screws` of them hold.
    pub(super) fn choose(&self, screws: u32, style: Style) -> Result<Choice, Vec<Fault>> {
        let fault = |field: &str, message: String| vec![Fault::new(field, message)];
        let Some(screw) = by_gauge(self.gauge) else {
            return Err(fault("screw.gauge", "choose a gauge of the list".into()));
        };
        let stack: Vec<Length> = self.layers.iter().map(|(_, thickness)| *thickness).collect();
        let point = for_steel(self.gauge, self.steel);
        if self.self_drilling && point.is_none() {
            return Err(fault(
                "screw.steel",
                text!(
                    "no drill point of a #{} screw gets through {}; drill a pilot hole, or take a thicker screw",
                    &self.gauge,
                    style.small(self.steel)
                ),
            ));
        }
        let need = |point| {
            least_length(&stack, self.steel, screw, point)
                .map_err(|error| fault("screw.stack", error.to_string()))
        };
        let plain = need(None)?;
        let with_point = need(point)?;
        let needed = if self.self_drilling { with_point } else { plain };
        let longest = self.behind.map(|behind| needed.grip + needed.steel + behind);
        let window = Window { least: needed.least, longest };
        let length =
            window.choose(&self.lengths).map_err(|unfit| vec![refused(unfit, &window, style)])?;
        let hold = self.hangs.and_then(|mass| self.hold(screw, mass, screws));
        if let Some(hold) = hold.as_ref().filter(|hold| hold.share > 1.0) {
            let enough = least_screws(hold.load, hold.each).unwrap_or(u32::MAX);
            return Err(fault(
                "screw.hangs",
                text!(
                    "on the road {} screws may hold less than this, at twice its weight; {} are needed at least: take a smaller spacing, or thicker screws",
                    &screws,
                    &enough
                ),
            ));
        }
        Ok(Choice {
            screw,
            need: needed,
            with_point: (!self.self_drilling && point.is_some()).then_some(with_point.least),
            length,
            longest,
            steel_pilot: steel_pilot(self.gauge, self.steel),
            point,
            hold,
        })
    }

    fn hold(&self, screw: &Screw, mass: Mass, screws: u32) -> Option<Hold> {
        let load = forces(mass, &EN_12195).ok()?.downward;
        let strength = Pressure::new::<megapascal>(LEAST_STRENGTH_MPA);
        let head = Length::new::<uom::si::length::inch>(screw.head_in);
        let each = allowable(self.steel, screw.diameter(), head, strength).ok()?.pull_out;
        let share = used(load, screws, each).ok()?.get::<ratio>();
        Some(Hold { load, each, share })
    }
}

/// A length that may not be exceeded, as it is shown: never rounded up.
pub(in crate::sheet) fn at_most(length: Length, style: Style) -> String {
    let step = style.rounding.step();
    let lines = (length / step).get::<ratio>();
    style.mark(step * (lines + 1e-6).floor()).text
}

/// Why none of the lengths will do, and which would.
fn refused(unfit: Unfit, window: &Window, style: Style) -> Fault {
    let least = style.small(window.least);
    let stock = window.in_stock().map_or(String::new(), |length| {
        text!("; {} in common stock would do", style.mark(length).text)
    });
    match (unfit, window.longest) {
        (Unfit::TooShort, _) => Fault::new(
            "screw.lengths",
            text!("all of these are too short; at least {} is needed{}", least, stock),
        ),
        (Unfit::TooLong { shortest }, Some(longest)) => Fault::new(
            "screw.lengths",
            text!(
                "{} would reach what lies behind the steel: the longest safe length is {}, the least that holds {}{}",
                style.mark(shortest).text,
                at_most(longest, style),
                least,
                stock
            ),
        ),
        (Unfit::TooLong { shortest }, None) => Fault::new(
            "screw.lengths",
            text!(
                "{} is longer than needed ({}), and nothing says what lies behind the steel: enter the free depth there, or a shorter length{}",
                style.mark(shortest).text,
                least,
                stock
            ),
        ),
        (Unfit::NoRoom, longest) => Fault::new(
            "screw.behind",
            text!(
                "no screw fits: three threads behind the steel take at least {} in all, and there is room for {} at most; use blind rivets or rivet nuts, or fix the strip another way",
                least,
                longest.map_or(String::new(), |longest| at_most(longest, style))
            ),
        ),
    }
}

impl Choice {
    /// `#8 x 1 1/4 in`.
    pub(super) fn name(&self, style: Style) -> String {
        text!("#{} x {}", &self.screw.gauge, style.mark(self.length).text)
    }

    pub(super) fn record(&self) -> Record {
        let mm = |length: Length| length.get::<millimeter>();
        Record::new()
            .with("least_length_mm", mm(self.need.least))
            .with("length_mm", mm(self.length))
            .maybe("longest_mm", self.longest.map(mm))
            .with("drill_through_mm", mm(self.need.steel))
            .maybe("steel_pilot_mm", self.steel_pilot.map(mm))
            .with("gauge", u32::from(self.screw.gauge))
            .maybe("drill_point", self.point.map(|point| u32::from(point.number())))
            .with("pilot_drill_mm", mm(self.screw.pilot_drill(false)))
            .with("clearance_drill_mm", mm(self.screw.clearance_drill()))
            .maybe("pull_out_share", self.hold.as_ref().map(|hold| hold.share))
            .maybe("pull_out_n", self.hold.as_ref().map(|hold| hold.each.get::<newton>()))
    }
}
