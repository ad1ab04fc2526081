//! The screw of a furring strip: how long, through how much steel, which holes, and what it holds.

use calc_derive::{Choice, Inputs, Outcome};
use uom::si::f64::{Mass, Pressure};
use uom::si::length::{inch, meter, millimeter};
use uom::si::pressure::megapascal;

use super::Inputs as Sheet;
use crate::ask::Figure;
use crate::fastening::acceleration::RoadLoad;
use crate::fastening::drill_point::{CAPACITY, DrillPoint, for_steel};
use crate::fastening::hold::{ShareUsed, least_screws, used};
use crate::fastening::length::{Need, least_length};
use crate::fastening::screw::{self, HOLES, by_gauge};
use crate::fastening::sheet_steel::{PullOut, allowable, gauge_thickness};
use crate::fastening::steel_pilot::{STEEL_PILOTS, steel_pilot};
use crate::fastening::window::{Longest, Unfit, Window};
use crate::formula::{Formula as _, step};
use crate::quantity::{LENGTH, Length, Measure, Style};
use crate::reader::{Notation, Reader};
use crate::report::{Remark, Step};
use crate::text::text;
use crate::words::{Arg, Msg, fastening, furring as words};

/// What is asked of the screw.
#[derive(Inputs)]
#[words(furring)]
pub(super) struct Screw {
    #[ask(rows(1))]
    stack: Vec<Layer>,
    #[ask(notation("16 ga", "18 ga", "20 ga", "1.2 mm"), usual("16 ga", "1.5 mm"))]
    steel: Steel,
    #[ask(units("in", "mm"), range(0.0, 1.0), usual("1 in", "25 mm"), figure(Figure::Gap))]
    behind: Option<Length>,
    #[ask(list(1), no_help, units("in", "mm"), range(0.003, 0.3), usual("1 1/4 in", "32 mm"))]
    #[ask(figure(Figure::Along))]
    lengths: Vec<Length>,
    #[ask(choice, no_help)]
    gauge: Gauge,
    #[ask(usually(false))]
    pub(super) self_drilling: bool,
    #[ask(units("lb", "kg"), range(0.0, 50_000.0), usual("130 lb", "60 kg"))]
    hangs: Option<Mass>,
}

/// What the screw goes through before the steel.
#[derive(Inputs)]
#[words(furring)]
struct Layer {
    #[expect(dead_code, reason = "tells a person which layer it is; nothing hangs on it")]
    #[ask(usual("strip", "strip"), no_help)]
    name: String,
    #[ask(units("in", "mm"), range(0.0, 0.3), usual("3/4 in", "19 mm"), no_help)]
    #[ask(figure(Figure::Thickness))]
    thickness: Length,
}

#[derive(Choice, Clone, Copy)]
#[words(furring)]
enum Gauge {
    #[key("8")]
    Eight = 8,
    #[key("6")]
    Six = 6,
    #[key("10")]
    Ten = 10,
    #[key("12")]
    Twelve = 12,
    #[key("14")]
    Fourteen = 14,
}

/// `16 ga`, `16 gauge`, or a measured thickness.
#[derive(Clone, Copy)]
struct Steel(Length);

impl Notation for Steel {
    fn stand_in() -> Self {
        Self(Length::new::<millimeter>(1.0))
    }

    fn read(text: &str) -> Result<Self, Msg> {
        let small = text.trim().to_ascii_lowercase();
        let gauge = ["gauge", "ga.", "ga"].iter().find_map(|end| small.strip_suffix(end));
        if let Some(number) = gauge {
            let thickness = number.trim().parse().ok().and_then(gauge_thickness);
            let typed: String = text.chars().take(40).collect();
            return thickness.map(Self).ok_or(words::GaugeUnknown { typed }.into());
        }
        let measure = Measure::read(text, &LENGTH, None).map_err(|error| error.message())?;
        let steel = Length::new::<meter>(measure.si());
        let drilled = steel.get::<millimeter>() > 0.0 && steel.get::<millimeter>() <= 12.7;
        if drilled { Ok(Self(steel)) } else { Err(words::STEEL_OUT_OF_RANGE.into()) }
    }
}

/// The weakest steel that the pull-out formula holds for: 33 ksi. [MPa]
const LEAST_STRENGTH_MPA: f64 = 230.0;

/// The screw that was chosen.
#[derive(Outcome)]
pub(super) struct Choice {
    least_length: Need,
    pub(super) length: Length,
    /// What lies behind the steel allows no more; none where that is not known.
    longest: Option<Longest>,
    drill_through: Length,
    /// The hole in the steel, where the table has one.
    steel_pilot: Option<Length>,
    pub(super) gauge: u32,
    drill_point: Option<u32>,
    pilot_drill: Length,
    clearance_drill: Length,
    pull_out_share: Option<ShareUsed>,
    pull_out: Option<PullOut>,
    #[outcome(skip)]
    point: Option<DrillPoint>,
    /// What a self-drilling one would need, where none is asked for.
    #[outcome(skip)]
    with_point: Option<Length>,
    #[outcome(skip)]
    load: Option<RoadLoad>,
}

impl Screw {
    /// What the body's depth behind a rib's face leaves behind the steel, where nothing else was typed.
    pub(super) fn take_from_body(&mut self, reader: &Reader<'_>) {
        if self.behind.is_none()
            && let Some(depth) = reader.body().wall_depth
        {
            let free = (depth - self.steel.0).max(Length::default());
            self.behind = Some(free);
            let free = reader.style().short(free);
            reader.maybe_group(Sheet::SCREW, |group| group.took(Self::BEHIND, free.clone()));
        }
    }

    /// The shortest screw on the shelf that is long enough, and what `screws` of them hold.
    pub(super) fn choose(&self, screws: u32) -> Result<Choice, (&'static str, Msg)> {
        let (gauge, steel) = (self.gauge as u8, self.steel.0);
        let number = u32::from(gauge);
        let point = for_steel(gauge, steel);
        let no_point = words::NoDrillPoint { gauge: number, steel: Arg::small(steel) };
        let Some(screw) = by_gauge(gauge).filter(|_| !self.self_drilling || point.is_some()) else {
            return Err(("screw.steel", no_point.into()));
        };
        let stack: Vec<Length> = self.stack.iter().map(|layer| layer.thickness).collect();
        let need = |point| {
            least_length(&stack, steel, screw, point)
                .map_err(|_| ("screw.stack", Msg::from(words::STACK_OUT_OF_RANGE)))
        };
        let (plain, with_point) = (need(None)?, need(point)?);
        let needed = if self.self_drilling { with_point } else { plain };
        let longest =
            self.behind.map(|free| Longest { grip: needed.grip, steel: needed.steel, free });
        let window =
            Window { least: needed.value(), longest: longest.map(|longest| longest.value()) };
        let length = window.choose(&self.lengths).map_err(|unfit| refused(unfit, &window))?;
        let hold = self.hangs.and_then(|mass| self.hold(screw, mass, screws));
        if let Some((_, share)) = hold.filter(|(_, share)| share.value() > 1.0) {
            let enough = least_screws(share.load, share.each).unwrap_or(u32::MAX);
            return Err(("screw.hangs", words::Overloaded { screws, enough }.into()));
        }
        Ok(Choice {
            least_length: needed,
            length,
            longest,
            drill_through: needed.steel,
            steel_pilot: steel_pilot(gauge, steel),
            gauge: number,
            drill_point: point.map(|point| point.number().into()),
            pilot_drill: screw.pilot_drill(false),
            clearance_drill: screw.clearance_drill(),
            pull_out_share: hold.map(|(_, share)| share),
            pull_out: hold.map(|_| self.pull_out(screw)),
            point,
            with_point: (!self.self_drilling && point.is_some()).then_some(with_point.value()),
            load: hold.map(|(load, _)| load),
        })
    }

    fn pull_out(&self, screw: &screw::Screw) -> PullOut {
        let strength = Pressure::new::<megapascal>(LEAST_STRENGTH_MPA);
        PullOut { sheet: self.steel.0, screw: screw.diameter(), strength }
    }

    /// The load on the road, and what the screws use of what they may hold; none outside what the formulas are for.
    fn hold(&self, screw: &screw::Screw, mass: Mass, screws: u32) -> Option<(RoadLoad, ShareUsed)> {
        let pull_out = self.pull_out(screw);
        let head = Length::new::<inch>(screw.head_in);
        let each =
            allowable(pull_out.sheet, pull_out.screw, head, pull_out.strength).ok()?.pull_out;
        let road = RoadLoad { mass };
        let load = road.value();
        used(load, screws, each).ok()?;
        Some((road, ShareUsed { load, screws, each }))
    }

    fn has_layer(&self, thickness: Length) -> bool {
        let off = |layer: &Layer| (layer.thickness - thickness).get::<millimeter>().abs();
        self.stack.iter().any(|layer| off(layer) < 0.05)
    }

    pub(super) fn remarks(&self, choice: &Choice, strip: Length, style: Style) -> Vec<Remark> {
        let note = |message: Msg| Remark::note(style.say(message));
        let warning = |message: Msg| Remark::warning(style.say(message));
        let gauge = choice.gauge;
        let mut remarks = vec![match choice.pull_out_share {
            Some(used) => Remark::good(style.say(words::Holds {
                share: Arg::share(used.value()),
                screws: used.screws,
                each: Arg::force(used.each),
            })),
            None => note(words::HANGS_MISSING.into()),
        }];
        if !self.has_layer(strip) {
            remarks.push(warning(words::NoSuchLayer { thickness: Arg::mark(strip) }.into()));
        }
        if let Some((least, point)) = choice.with_point.zip(choice.drill_point) {
            remarks.push(note(words::WithPoint { point, least: Arg::small(least) }.into()));
        } else if choice.point.is_none() {
            remarks.push(note(words::NoPoint { gauge, steel: Arg::small(self.steel.0) }.into()));
        }
        if choice.longest.is_none() {
            let reach = choice.length - choice.least_length.grip - choice.least_length.steel;
            remarks.push(warning(words::BehindUnknown { reach: Arg::small(reach) }.into()));
        }
        let steel_hole: Msg = match choice.steel_pilot {
            _ if self.self_drilling => words::HOLES_POINT.into(),
            Some(hole) => words::HolesTapping { hole: Arg::drill(hole) }.into(),
            None => words::HOLES_UNKNOWN.into(),
        };
        remarks.push(note(
            words::Holes { hole: Arg::drill(choice.clearance_drill), steel_hole }.into(),
        ));
        remarks
    }
}

/// Why none of the lengths will do, and which would.
fn refused(unfit: Unfit, window: &Window) -> (&'static str, Msg) {
    let least = Arg::small(window.least);
    let in_stock = match window.in_stock() {
        Some(length) => Msg::from(words::InStock { length: Arg::mark(length) }).into(),
        None => Arg::from(""),
    };
    let message: Msg = match (unfit, window.longest) {
        (Unfit::TooShort, _) => words::TooShort { least, in_stock }.into(),
        (Unfit::TooLong { shortest }, Some(longest)) => {
            let (shortest, longest) = (Arg::mark(shortest), Arg::at_most(longest));
            words::TooLong { shortest, longest, least, in_stock }.into()
        }
        (Unfit::TooLong { shortest }, None) => {
            let shortest = Arg::mark(shortest);
            words::TooLongUnknown { shortest, least, in_stock }.into()
        }
        (Unfit::NoRoom, longest) => {
            let longest = longest.map_or(Arg::from(""), Arg::at_most);
            return ("screw.behind", words::NoRoom { least, longest }.into());
        }
    };
    ("screw.lengths", message)
}

impl Choice {
    /// `#8 x 1 1/4 in`.
    pub(super) fn size(&self) -> Msg {
        fastening::Size { gauge: self.gauge, length: Arg::mark(self.length) }.into()
    }

    /// The point and the most that it drills.
    fn drills(&self) -> Option<(DrillPoint, Length)> {
        let point = self.point?;
        Some((point, point.capacity(self.gauge as u8)?))
    }

    /// From how long to how long it may be.
    pub(super) fn range(&self, self_drilling: bool) -> Msg {
        let least = Arg::small(self.least_length.value());
        let range: Msg = match self.longest {
            Some(longest) => {
                words::ScrewRange { least, longest: Arg::at_most(longest.value()) }.into()
            }
            None => words::ScrewRangeUnknown { least }.into(),
        };
        match self.drills().filter(|_| self_drilling) {
            Some((point, most)) => {
                let (point, most) = (u32::from(point.number()), Arg::small(most));
                words::ScrewRangePoint { point, most, range }.into()
            }
            None => range,
        }
    }

    pub(super) fn working(&self, style: Style) -> Vec<Step> {
        let gauge = text!("#{}", &self.gauge);
        let looked_up = |name, formula, numbers: String, result: String, source| {
            Step::new(style.say(name), style.say(formula), numbers, result, source)
        };
        let mut steps = vec![step(words::STEP_LEAST, &self.least_length, style)];
        steps.extend(self.longest.map(|longest| step(words::STEP_LONGEST, &longest, style)));
        let steel = style.small(self.drill_through);
        steps.push(looked_up(
            words::STEP_HOLE,
            words::STEP_HOLE_FORMULA,
            gauge.clone(),
            style.drill(self.clearance_drill),
            &HOLES,
        ));
        steps.extend(self.steel_pilot.map(|hole| {
            looked_up(
                words::STEP_STEEL_HOLE,
                words::STEP_STEEL_HOLE_FORMULA,
                text!("{}, {}", &gauge, &steel),
                style.drill(hole),
                &STEEL_PILOTS,
            )
        }));
        steps.extend(self.drills().map(|(point, most)| {
            looked_up(
                words::STEP_POINT,
                words::STEP_POINT_FORMULA,
                text!("{} ≤ {}", &steel, style.small(most)),
                style.say(words::StepPointResult { point: u32::from(point.number()) }),
                &CAPACITY,
            )
        }));
        steps.extend(self.pull_out.map(|of| step(words::STEP_PULL_OUT, &of, style)));
        steps.extend(self.load.map(|of| step(words::STEP_LOAD, &of, style)));
        steps.extend(self.pull_out_share.map(|of| step(words::STEP_SHARE, &of, style)));
        steps
    }
}
