//! Two-part filler for gaps and holes: how much, in which batches, and what to buy.

mod asks;
mod drawing;
mod order;
mod wood;
mod words;

use crate::text::text;
use crate::words::Phrase;
use uom::si::f64::{
    Length, Mass, MassDensity, Ratio, ThermodynamicTemperature, Time, Volume, VolumeRate,
};
use uom::si::length::{meter, millimeter};
use uom::si::mass::kilogram;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::minute;
use uom::si::volume::liter;

use self::asks::{ASKS, CONTAINERS, GAPS, HOLES};
use self::wood::Wood;
pub(super) use self::words::shortened;
use super::schedule::label::{self, Times};
use super::{Sheet, solve};
use crate::carpentry::moisture;
use crate::coating::cautions::FOR_FILLING;
use crate::coating::film;
use crate::coating::gap::{self, Hole};
use crate::coating::mixing::{self, Batches, CupMarks, Mix, Parts};
use crate::coating::purchase::{self, Part, PartOffer, Purchase};
use crate::coating::range::{OutOfRange, within};
use crate::coating::verdict::Limits;
use crate::fault::Fault;
use crate::lists::{BuyLine, LineId, Mark, MarkStrip};
use crate::outcome::Record;
use crate::quantity::Style;
use crate::report::{Caution, Report};

/// The sheet.
pub static SHEET: Sheet = Sheet {
    kind: "gap_fill",
    title: Phrase::Written("Gap and hole filling"),
    trade: Phrase::Written("Floor"),
    purpose: Phrase::Written(
        "How much two-part filler to mix, batch by batch within its pot life, and what to buy.",
    ),
    asks: ASKS,
    sources: &[
        &gap::VOLUMES,
        &gap::SHRINKAGE,
        &film::USUAL_LOSS,
        &mixing::SHARES,
        &mixing::POT_LIFE,
        &mixing::BATCHES,
        &mixing::CUP_HEAT,
        &purchase::METHOD,
        &moisture::CHANGE,
    ],
    example: r#"{ "product": "clear epoxy",
        "gaps": [{ "label": "splits within boards", "count": 6, "length": "2400 mm", "width": "3 mm", "depth": "18 mm" }],
        "holes": [
            { "label": "old screw holes", "count": 40, "diameter": "10 mm", "depth": "18 mm" },
            { "label": "countersinks", "count": 60, "diameter": "9 mm", "depth": "4 mm", "shape": "countersunk", "bottom": "4 mm" },
            { "label": "plugged holes", "count": 12, "diameter": "20 mm", "depth": "18 mm", "shape": "plugged",
                "plug_diameter": "19 mm", "plug_length": "12 mm" } ],
        "passes": 2, "shrink_percent": 3, "loss_percent": 15,
        "mix": { "by": "mass", "a": 100, "b": 53, "density_a": "1.14 kg/l", "density_b": "1.02 kg/l" },
        "pot_life": { "time": "25 min", "at": "25 C" }, "temperature": "18 C", "pour_rate": "20 ml/min", "batch_limit": "85 ml",
        "cup_diameter": "80 mm",
        "limits": { "temperature_least": "10 C", "temperature_most": "30 C", "humidity_most_percent": 80, "moisture_most_percent": 12 },
        "containers": [
            { "part": "kit", "size": "0.75 l", "price": 48 }, { "part": "kit", "size": "1.5 l", "price": 84 },
            { "part": "a", "size": "0.5 l", "price": 33 }, { "part": "b", "size": "0.25 l", "price": 22 } ] }"#,
    solve: |reader| solve(reader, asks::read, report),
};

/// A row of gaps.
struct Gap {
    label: String,
    count: u32,
    length: Length,
    width: Length,
    depth: Length,
    open_below: bool,
}

/// A row of holes.
struct Holes {
    label: String,
    count: u32,
    hole: Hole,
    open_below: bool,
}

/// The pot life on the label.
struct Label {
    time: Time,
    at: ThermodynamicTemperature,
}

/// What was typed, read.
struct Inputs {
    product: String,
    gaps: Vec<Gap>,
    holes: Vec<Holes>,
    passes: u32,
    shrink: Ratio,
    /// Whether the shrinkage was typed.
    shrink_given: bool,
    loss: Ratio,
    /// Whether the loss was typed.
    loss_given: bool,
    mix: Mix,
    pot_life: Option<Label>,
    temperature: Option<ThermodynamicTemperature>,
    pour_rate: Option<VolumeRate>,
    batch_limit: Option<Volume>,
    cup: Option<Length>,
    times: Option<Times>,
    limits: Limits,
    wood: Option<Wood>,
    offers: Vec<PartOffer>,
}

/// What was worked out.
struct Worked {
    /// Volume of each row of gaps, then of each row of holes.
    rows: Vec<Volume>,
    net: Volume,
    /// Shrinkage and loss included.
    whole: Volume,
    parts: Parts,
    /// At the working temperature.
    pot_life: Option<Time>,
    batches: Batches,
    /// Of one batch.
    batch: Parts,
    /// How many cups a batch is mixed in, one after the other.
    cups: u32,
    /// Of one cup.
    in_cup: Parts,
    cup: CupMarks,
    /// How high the two marks stand in the cup, where its width is known.
    cup_heights: Option<[Length; 2]>,
    purchase: Option<Purchase>,
}

impl Worked {
    /// Density of what a container holds, where those of both parts are known.
    fn density(&self, part: Part) -> Option<MassDensity> {
        let Parts { a, b, a_mass, b_mass } = self.parts;
        let density = match part {
            Part::A => a_mass? / a,
            Part::B => b_mass? / b,
            Part::Kit => (a_mass? + b_mass?) / (a + b),
        };
        density.is_finite().then_some(density)
    }
}

fn work(inputs: &Inputs) -> Result<Worked, Vec<Fault>> {
    let mut rows = Vec::new();
    for (index, gap) in inputs.gaps.iter().enumerate() {
        let each = gap::joint(gap.length, gap.width, gap.depth);
        rows.push(each.map_err(at(text!("gaps.{}", &index)))? * f64::from(gap.count));
    }
    for (index, holes) in inputs.holes.iter().enumerate() {
        let each = gap::hole(holes.hole).map_err(at(text!("holes.{}", &index)))?;
        rows.push(each * f64::from(holes.count));
    }
    let net: Volume = rows.iter().copied().sum();
    let field = if inputs.gaps.is_empty() { HOLES.key } else { GAPS.key };
    if net.get::<liter>() <= 1e-9 {
        return Err(vec![Fault::new(
            field,
            "there is nothing to fill; give sizes that leave room beside the plugs",
        )]);
    }
    let whole = gap::with_shrinkage_and_loss(net, inputs.shrink, inputs.loss).map_err(at(field))?;
    within("volume to mix", whole.get::<liter>(), 0.0, 1e6, "l").map_err(at(field))?;
    let parts = mixing::parts(&inputs.mix, whole).map_err(of_mix)?;

    let working = inputs.temperature;
    let pot_life = inputs.pot_life.as_ref();
    let pot_life = pot_life
        .map(|label| mixing::pot_life(label.time, label.at, working.unwrap_or(label.at)))
        .transpose()
        .map_err(at("pot_life.time"))?;
    let largest = mixing::largest_batch(inputs.batch_limit, inputs.pour_rate.zip(pot_life))
        .map_err(at("pour_rate"))?;
    let batches = mixing::batches(whole, inputs.passes, largest).map_err(|fault| {
        let field = if inputs.batch_limit == largest { "batch_limit" } else { "pour_rate" };
        vec![Fault::new(field, fault.to_string())]
    })?;
    let batch = mixing::parts(&inputs.mix, batches.each).map_err(of_mix)?;
    let purchase = (!inputs.offers.is_empty())
        .then(|| purchase::choose(&inputs.mix, whole, &inputs.offers))
        .transpose()
        .map_err(|fault| vec![Fault::new(CONTAINERS.key, fault.to_string())])?;
    // The label's limit is the person's word; without it no cup holds more than is known for its heat.
    let cups = if inputs.batch_limit.is_some() { 1 } else { mixing::cups(&batch) };
    let in_cup = batch.share(cups);
    let cup = mixing::cup_marks(&in_cup);
    let height =
        |volume| inputs.cup.map(|across| mixing::height_in_cup(volume, across)).transpose();
    let first = height(cup.first).map_err(at("cup_diameter"))?;
    let second = height(cup.second).map_err(at("cup_diameter"))?;
    let cup_heights = first.zip(second).map(|(first, second)| [first, second]);
    Ok(Worked {
        rows,
        net,
        whole,
        parts,
        pot_life,
        batches,
        batch,
        cups,
        in_cup,
        cup,
        cup_heights,
        purchase,
    })
}

fn at(field: impl Into<String>) -> impl FnOnce(OutOfRange) -> Vec<Fault> {
    move |range| vec![Fault::new(field, range.to_string())]
}

fn of_mix(fault: mixing::Fault) -> Vec<Fault> {
    let field = match fault {
        mixing::Fault::NoDensity { of_a: true } => "mix.density_a",
        mixing::Fault::NoDensity { of_a: false } => "mix.density_b",
        mixing::Fault::TooManyBatches { .. } => "batch_limit",
        mixing::Fault::Range(_) => "mix",
    };
    vec![Fault::new(field, fault.to_string())]
}

fn report(inputs: &Inputs, style: Style) -> Result<Report, Vec<Fault>> {
    let worked = work(inputs)?;
    let mut drawings = vec![drawing::cup(inputs, &worked, style)];
    drawings.extend(drawing::sections(inputs, style));
    Ok(Report {
        answers: words::answers(inputs, &worked, style),
        remarks: words::remarks(inputs, &worked, style),
        tables: words::tables(inputs, &worked, style),
        checks: vec![order::of_work(inputs)],
        drawings,
        marks: cup_strip(inputs, &worked, style).into_iter().collect(),
        working: words::working(inputs, &worked, style),
        cautions: Caution::all(&FOR_FILLING),
        buy: buy(inputs, &worked, style),
        outcome: outcome(inputs, &worked),
        ..Report::default()
    })
}

/// The two marks on a straight-walled cup, as heights above its bottom: what to pour, and the level
/// after it.
fn cup_strip(inputs: &Inputs, worked: &Worked, style: Style) -> Option<MarkStrip> {
    let [first, second] = worked.cup_heights?;
    let pour = style.poured_into_one(worked.in_cup.a, worked.in_cup.b);
    let mark = |id: &str, label: String, at: Length, level: &str| Mark {
        id: id.to_owned(),
        label,
        at,
        note: text!("level {}", level),
    };
    Some(MarkStrip {
        id: "cup".into(),
        label: text!("cup {} across", style.short(inputs.cup?)),
        note: "from its bottom".into(),
        alike: 1,
        length: second,
        marks: vec![
            mark("a", text!("pour {} part a", &pour.first), first, &pour.first),
            mark("b", text!("then {} part b", &pour.second), second, &pour.level),
        ],
    })
}

fn outcome(inputs: &Inputs, worked: &Worked) -> Record {
    let kg = |mass: Option<Mass>| mass.map(|mass| mass.get::<kilogram>());
    let purchase = worked.purchase.as_ref();
    let of_a_pass = Record::new()
        .with("count", worked.batches.per_pass)
        .with("part_a_l", worked.batch.a.get::<liter>())
        .with("part_b_l", worked.batch.b.get::<liter>())
        .maybe("part_a_kg", kg(worked.batch.a_mass))
        .maybe("part_b_kg", kg(worked.batch.b_mass));
    // Mixing and walking are in the pour rate.
    let of_pass = inputs.pour_rate.map(|rate| {
        let volume = worked.whole / f64::from(worked.batches.passes);
        (volume / rate).get::<minute>()
    });
    let tape = order::needs(inputs);
    let named = Record::new().with("product", inputs.product.as_str());
    label::put_limits(&inputs.limits, named)
        .maybe("pass_min", of_pass)
        .maybe("times", inputs.times.map(|times| times.put(Record::new())))
        .with("cups", worked.batches.count.saturating_mul(worked.cups))
        .with("cup_part_a_l", worked.in_cup.a.get::<liter>())
        .with("cup_part_b_l", worked.in_cup.b.get::<liter>())
        .with("tape_below_m", tape.below.get::<meter>())
        .with("masking_tape_m", tape.edges.get::<meter>())
        .maybe("joint_swing_mm", inputs.wood.as_ref().map(|wood| wood.swing().get::<millimeter>()))
        .with("net_volume_l", worked.net.get::<liter>())
        .with("volume_l", worked.whole.get::<liter>())
        .with("part_a_l", worked.parts.a.get::<liter>())
        .with("part_b_l", worked.parts.b.get::<liter>())
        .maybe("part_a_kg", kg(worked.parts.a_mass))
        .maybe("part_b_kg", kg(worked.parts.b_mass))
        .maybe("pot_life_min", worked.pot_life.map(|life| life.get::<minute>()))
        .maybe(
            "label_pot_life_min",
            inputs.pot_life.as_ref().map(|label| label.time.get::<minute>()),
        )
        .maybe(
            "label_temperature_c",
            inputs.pot_life.as_ref().map(|label| label.at.get::<degree_celsius>()),
        )
        .maybe("largest_batch_l", worked.batches.largest.map(|largest| largest.get::<liter>()))
        .with("batches", vec![of_a_pass; worked.batches.passes as usize])
        .maybe("containers", purchase.map(|purchase| cans(inputs, purchase)))
        .maybe("cost", purchase.and_then(|purchase| purchase.cost))
        .maybe("left_over_a_l", purchase.map(|purchase| purchase.left_over_a.get::<liter>()))
        .maybe("left_over_b_l", purchase.map(|purchase| purchase.left_over_b.get::<liter>()))
        .maybe("proved", purchase.map(|purchase| purchase.proved))
}

/// The containers of which some are bought, with their number.
fn bought<'a>(
    inputs: &'a Inputs,
    purchase: &'a Purchase,
) -> impl Iterator<Item = (&'a PartOffer, u32)> + 'a {
    inputs.offers.iter().zip(purchase.counts.iter().copied()).filter(|(_, count)| *count > 0)
}

fn cans(inputs: &Inputs, purchase: &Purchase) -> Vec<Record> {
    bought(inputs, purchase)
        .map(|(offer, count)| {
            Record::new()
                .with("part", key(offer.part))
                .with("size_l", offer.offer.size.get::<liter>())
                .with("count", count)
        })
        .collect()
}

/// A part as it is named in the file.
fn key(part: Part) -> &'static str {
    match part {
        Part::A => "a",
        Part::B => "b",
        Part::Kit => "kit",
    }
}

/// A part as it is called: `part a`, `kit`.
fn called(part: Part) -> &'static str {
    match part {
        Part::A => "part a",
        Part::B => "part b",
        Part::Kit => "kit",
    }
}

fn buy(inputs: &Inputs, worked: &Worked, style: Style) -> Vec<BuyLine> {
    let item = |part| text!("{}, {}", &inputs.product, called(part));
    let id = |part| text!("filler/{}/{}", LineId::name(&inputs.product), key(part));
    let mut lines: Vec<BuyLine> = match &worked.purchase {
        Some(purchase) => bought(inputs, purchase)
            .map(|(PartOffer { part, offer }, count)| {
                let count = f64::from(count);
                let id = LineId::shared(text!("{}/{}", id(*part), LineId::volume(offer.size)));
                BuyLine {
                    needed: count * used(worked, purchase, *part),
                    ..BuyLine::pieces(id, item(*part), style.container(offer.size), count)
                        .cost(offer.price.map(|price| price * count))
                        .mass(worked.density(*part).map(|density| density * offer.size * count))
                }
            })
            .collect(),
        None => [
            (Part::A, worked.parts.a, worked.parts.a_mass),
            (Part::B, worked.parts.b, worked.parts.b_mass),
        ]
        .into_iter()
        .map(|(part, volume, mass)| {
            let (needed, unit) = style.poured(volume);
            BuyLine::amount(LineId::shared(id(part)), item(part), "", needed, unit).mass(mass)
        })
        .collect(),
    };
    lines.append(&mut beside(inputs, worked, style));
    lines
}

/// The share of what was bought of a part that is used; of kits, of the part that runs out first.
fn used(worked: &Worked, purchase: &Purchase, part: Part) -> f64 {
    let share = |need: Volume, left_over: Volume| match need + left_over {
        all if all > Volume::default() => (need / all).value,
        _ => 1.0,
    };
    let a = share(worked.parts.a, purchase.left_over_a);
    let b = share(worked.parts.b, purchase.left_over_b);
    match part {
        Part::A => a,
        Part::B => b,
        Part::Kit => a.max(b),
    }
}

/// What it takes beside the filler: plugs, tape, cups and sticks.
fn beside(inputs: &Inputs, worked: &Worked, style: Style) -> Vec<BuyLine> {
    let mut lines = Vec::new();
    for holes in &inputs.holes {
        if let Hole::Plugged { plug_diameter, plug_length, .. } = holes.hole {
            let spec = text!("Ø {} × {}", style.short(plug_diameter), style.short(plug_length));
            let [across, long] = [plug_diameter, plug_length].map(LineId::length);
            let id = LineId::shared(text!("plug/{}/{}", &across, &long));
            lines.push(BuyLine::pieces(id, "wood plug", spec, f64::from(holes.count)));
        }
    }
    let tape = order::needs(inputs);
    for (id, item, length) in [
        ("tape/below", "tape to close gaps from below", tape.below),
        ("tape/masking", "masking tape", tape.edges),
    ] {
        if length > Length::default() {
            let (needed, unit) = style.by_the_roll(length);
            lines.push(BuyLine::amount(LineId::shared(id), item, "", needed, unit));
        }
    }
    let cups = f64::from(worked.batches.count.saturating_mul(worked.cups));
    for (id, item) in
        [("cup/mixing", "mixing cup, unwaxed paper or plastic"), ("stick/mixing", "mixing stick")]
    {
        lines.push(BuyLine::pieces(LineId::shared(id), item, "", cups));
    }
    lines
}
