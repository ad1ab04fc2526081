//! Answers, remarks, tables and working of the gap-filling sheet.

use crate::sorting::sort_by;
use crate::text::text;
use uom::si::f64::{Length, ThermodynamicTemperature, Time};
use uom::si::mass::gram;
use uom::si::ratio::percent;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::minute;

use super::{Inputs, Worked, bought, called};
use crate::coating::mixing::{self, By, MOST_IN_CUP_G, MOST_IN_CUP_ML, Parts};
use crate::coating::{film, gap, purchase};
use crate::quantity::{Pour, Style, amount, money, percent as write_percent, plain, significant};
use crate::report::{Answer, Remark, Step, Table, TableRow, texts};

/// A row's name: its label, else what it is and its number.
pub fn named(label: &str, noun: &str, index: usize) -> String {
    if label.is_empty() { text!("{} {}", &noun, index + 1) } else { label.to_owned() }
}

/// A name that has room on a drawing.
pub fn shortened(name: &str) -> String {
    let mut letters = name.chars();
    let start: String = letters.by_ref().take(28).collect();
    if letters.next().is_some() { text!("{}…", start.trim_end()) } else { start }
}

/// `25 min`, `1.5 h`.
fn time(time: Time) -> String {
    let minutes = time.get::<minute>();
    if minutes < 120.0 {
        text!("{} min", significant(minutes, 2))
    } else {
        amount(minutes / 60.0, 1, "h")
    }
}

/// Both parts as they are measured: on the scale where the ratio is by mass, else in the cup.
fn measured(inputs: &Inputs, parts: &Parts, style: Style) -> Pour {
    match (inputs.mix.by, parts.a_mass.zip(parts.b_mass)) {
        (By::Mass, Some((a, b))) => style.weighed_into_one(a, b),
        _ => style.poured_into_one(parts.a, parts.b),
    }
}

/// `a 120 ml + b 60 ml`, `a 129 g + b 60.7 g by weight`.
fn both(inputs: &Inputs, parts: &Parts, style: Style) -> String {
    let by = match inputs.mix.by {
        By::Mass => " by weight",
        By::Volume => "",
    };
    let pour = measured(inputs, parts, style);
    text!("a {} + b {}{}", &pour.first, &pour.second, &by)
}

pub fn answers(inputs: &Inputs, worked: &Worked, style: Style) -> Vec<Answer> {
    let batches = &worked.batches;
    let split = match (batches.passes, batches.per_pass) {
        (1, _) => String::new(),
        (passes, per_pass) => text!("{} passes of {}; ", &passes, &per_pass),
    };
    let life = match worked.pot_life {
        Some(life) => text!("each workable for about {}", time(life)),
        None => "mind the pot life on the label".to_owned(),
    };
    let mut answers =
        vec![Answer::new("Mix in all", style.volume_needed_both(worked.whole)).note(both(
            inputs,
            &worked.parts,
            style,
        ))];
    let all_cups = batches.count.saturating_mul(worked.cups);
    let label = match (worked.cups, batches.count) {
        (1, 1) => "Batch",
        (1, _) => "Batches",
        _ => "Cups, one after the other",
    };
    let cups = match worked.cups {
        1 => String::new(),
        cups => text!(
            "{} batches of {} cups; no label's limit is entered, so none holds more than {}; ",
            &batches.count,
            &cups,
            most_in_cup(worked)
        ),
    };
    answers.push(
        Answer::new(label, text!("{} × ({})", &all_cups, both(inputs, &worked.in_cup, style)))
            .note(text!("{}{}{}", &split, &cups, &life)),
    );
    if let Some(purchase) = &worked.purchase {
        let left = text!(
            "left over: a {}, b {}",
            style.volume(purchase.left_over_a),
            style.volume(purchase.left_over_b)
        );
        answers.push(Answer::new("Buy", shopping(inputs, worked, style)).note(
            match purchase.cost {
                Some(cost) => text!("{} in all; {}", money(cost), &left),
                None => left,
            },
        ));
    }
    answers
}

/// What a cup holds at most where no label's limit is entered: by mass, else by volume.
fn most_in_cup(worked: &Worked) -> String {
    match worked.batch.a_mass.zip(worked.batch.b_mass) {
        Some(_) => amount(MOST_IN_CUP_G, 0, "g"),
        None => amount(MOST_IN_CUP_ML, 0, "ml"),
    }
}

/// `1 × kit 1.5 l + 2 × part b 250 ml`.
fn shopping(inputs: &Inputs, worked: &Worked, style: Style) -> String {
    let cans: Vec<String> = worked
        .purchase
        .iter()
        .flat_map(|purchase| bought(inputs, purchase))
        .map(|(offer, count)| {
            text!("{} × {} {}", &count, called(offer.part), style.container(offer.offer.size))
        })
        .collect();
    cans.join(" + ")
}

pub fn remarks(inputs: &Inputs, worked: &Worked, style: Style) -> Vec<Remark> {
    let mut remarks = Vec::new();
    if worked.cups > 1 {
        remarks.push(Remark::note(text!(
            "No largest batch is given, so each is mixed in {} cups of at most {}, each poured out \
             before the next is mixed: pot lives on labels are mostly measured on a cup of about 100 g, \
             a larger one heats up and sets sooner. Enter what the label allows at once, if it says so.",
            &worked.cups,
            most_in_cup(worked)
        )));
    }
    if inputs.batch_limit.is_some() && mixing::cups(&worked.in_cup) > 1 {
        remarks.push(Remark::note(text!(
            "A cup holds more than {}, which the batch limit allows: pour it out wide and shallow as soon \
             as it is mixed. Left in the cup, 100 g can reach 400 °F (204 °C).",
            most_in_cup(worked)
        )));
    }
    if !inputs.loss_given {
        remarks.push(Remark::note(text!(
            "No loss is entered: {} is taken for what stays in cups and on sticks. Type 0 for none.",
            write_percent(inputs.loss.get::<percent>())
        )));
    }
    if !inputs.shrink_given {
        remarks.push(Remark::note(
            "No shrinkage is entered: none is taken, which holds for little but epoxy without solvent. \
             Filler with water or solvent shrinks far more; its data sheet says how much.",
        ));
    }
    if let (Some(wood), Some(narrowest)) = (&inputs.wood, narrowest(inputs)) {
        remarks.push(wood.remark(narrowest, style));
    }
    match (inputs.pot_life.is_some(), inputs.pour_rate.is_some()) {
        (true, false) => remarks.push(Remark::note(
            "Time how fast you pour one cup and enter it, and the batches are kept to what is used \
             within the pot life. Until then it is not shown that a batch is used up in time.",
        )),
        (false, true) => remarks.push(Remark::warning(
            "The pour rate says nothing without the pot life on the label: enter both.",
        )),
        _ => {}
    }
    if let (Some(label), Some(now), Some(life)) =
        (&inputs.pot_life, inputs.temperature, worked.pot_life)
    {
        let ratio = life.get::<minute>() / label.time.get::<minute>();
        if !(0.95..=1.05).contains(&ratio) {
            remarks.push(Remark::note(text!(
                "At {} a batch stays workable for about {}, not {}: a rule of thumb, try a small \
                 batch first.",
                style.temperature(now),
                time(life),
                time(label.time)
            )));
        }
    }
    if inputs.mix.by == By::Mass {
        let by_volume = worked.parts.b.value / worked.parts.a.value * 100.0;
        remarks.push(Remark::note(text!(
            "Weigh both parts. By volume the same mix is 100 : {}; never use one for the other.",
            plain(by_volume, 1)
        )));
    }
    if inputs.passes > 1 {
        remarks.push(Remark::note(
            "Mix each pass only when the one below has set as far as the label says.",
        ));
    }
    let Some(purchase) = &worked.purchase else {
        remarks.push(Remark::note(
            "Add the bottles and kits on the shelf, with their prices, to see which to buy.",
        ));
        return remarks;
    };
    if inputs.offers.iter().any(|offer| offer.offer.price.is_none()) {
        remarks.push(Remark::note(
            "Not every container has a price, so these leave the least over; with all prices the \
             cheapest are chosen.",
        ));
    }
    if !purchase.proved {
        remarks.push(Remark::note(
            "There are too many ways to try them all: another choice might be a little better.",
        ));
    }
    remarks
}

/// The narrowest gap; none where there are holes alone.
fn narrowest(inputs: &Inputs) -> Option<Length> {
    let widths = inputs.gaps.iter().map(|gap| gap.width);
    widths.fold(None, |least: Option<Length>, width| {
        Some(least.map_or(width, |least| least.min(width)))
    })
}

pub fn tables(inputs: &Inputs, worked: &Worked, style: Style) -> Vec<Table> {
    let mut tables = vec![cup_table(inputs, worked, style), volumes_table(inputs, worked, style)];
    if let Some(label) = &inputs.pot_life {
        tables.extend(pot_life_table(inputs, label.time, label.at, style));
    }
    tables
}

fn row<const N: usize>(cells: [String; N], chosen: bool) -> TableRow {
    TableRow { cells: cells.to_vec(), chosen }
}

/// What to pour now and the level after it, for a cup and for parts of one; on the scale where the ratio
/// is by mass, where the cup's own marks would be another ratio.
fn cup_table(inputs: &Inputs, worked: &Worked, style: Style) -> Table {
    let whole = if worked.cups == 1 { "one batch" } else { "one cup" };
    let shares = [(whole, 1), ("half of it", 2), ("a quarter", 4)];
    let rows = shares.map(|(name, of)| {
        let Pour { first, second, level } = measured(inputs, &worked.in_cup.share(of), style);
        row([name.to_owned(), first.clone(), first, second, level], of == 1)
    });
    let (title, heads) = match inputs.mix.by {
        By::Volume => (
            "Both parts into one cup: part a first, then part b on top",
            ["", "pour a", "level then", "then pour b", "level then"],
        ),
        By::Mass => (
            "Both parts into one cup on the scale, set to zero with the empty cup",
            ["", "weigh in a", "scale then", "then weigh in b", "scale then"],
        ),
    };
    Table { title: title.into(), heads: texts(&heads), rows: rows.to_vec() }
}

fn volumes_table(inputs: &Inputs, worked: &Worked, style: Style) -> Table {
    let gaps = inputs.gaps.iter().enumerate();
    let gaps = gaps.map(|(index, gap)| (named(&gap.label, "gap", index), gap.count));
    let holes = inputs.holes.iter().enumerate();
    let holes = holes.map(|(index, holes)| (named(&holes.label, "hole", index), holes.count));
    let rows = gaps.chain(holes).zip(&worked.rows).map(|((name, count), all)| {
        let each = *all / f64::from(count);
        row([name, count.to_string(), style.volume_needed(each), style.volume_needed(*all)], false)
    });
    let sum = row(
        ["together".into(), String::new(), String::new(), style.volume_needed(worked.net)],
        false,
    );
    Table {
        title: "What is filled, before shrinkage and loss".into(),
        heads: texts(&["", "how many", "each", "all"]),
        rows: rows.chain([sum]).collect(),
    }
}

/// Pot life at other temperatures, so that one sees what warming or cooling brings.
fn pot_life_table(
    inputs: &Inputs,
    label: Time,
    at: ThermodynamicTemperature,
    style: Style,
) -> Option<Table> {
    let now = inputs.temperature.unwrap_or(at);
    let mut temperatures: Vec<(ThermodynamicTemperature, bool)> = [10.0, 15.0, 20.0, 25.0, 30.0]
        .into_iter()
        .map(ThermodynamicTemperature::new::<degree_celsius>)
        .filter(|other| (other.value - now.value).abs() > 0.5)
        .map(|other| (other, false))
        .chain([(now, true)])
        .collect();
    sort_by(&mut temperatures, |(one, _), (other, _)| one.value.total_cmp(&other.value));
    let rows: Result<Vec<TableRow>, _> = temperatures
        .into_iter()
        .map(|(other, chosen)| {
            let life = mixing::pot_life(label, at, other)?;
            Ok::<_, crate::coating::range::OutOfRange>(row(
                [style.temperature(other), time(life)],
                chosen,
            ))
        })
        .collect();
    Some(Table {
        title: "Pot life by temperature, a rule of thumb".into(),
        heads: texts(&["at", "workable for about"]),
        rows: rows.ok()?,
    })
}

pub fn working(inputs: &Inputs, worked: &Worked, style: Style) -> Vec<Step> {
    let share = |ratio: uom::si::f64::Ratio| write_percent(ratio.get::<percent>());
    let listed = worked.rows.len() <= 6;
    let sum: Vec<String> = worked.rows.iter().map(|volume| style.volume_needed(*volume)).collect();
    let sum = if listed { sum.join(" + ") } else { text!("{} rows", sum.len()) };
    let mut steps = vec![
        Step::new(
            "To fill",
            "gap: n · l · w · d; hole: n · π/4 · Ø² · d; cone: n · π/12 · d · (Ø² + Ø·ø + ø²)",
            sum,
            style.volume_needed_both(worked.net),
            &gap::VOLUMES,
        ),
        Step::new(
            "Mix in all",
            "V = N / (1 − shrinkage) / (1 − loss)",
            text!(
                "{} / (1 − {}) / (1 − {})",
                style.volume_needed(worked.net),
                share(inputs.shrink),
                share(inputs.loss)
            ),
            style.volume_needed_both(worked.whole),
            if inputs.loss_given { &gap::SHRINKAGE } else { &film::USUAL_LOSS },
        ),
        parts_step(inputs, worked, style),
    ];
    if let (Some(label), Some(life)) = (&inputs.pot_life, worked.pot_life) {
        let now = inputs.temperature.unwrap_or(label.at);
        steps.push(Step::new(
            "Pot life now",
            "t = t₀ · 2^((T₀ − T) / 10 °C)",
            text!(
                "{} · 2^(({} − {}) / {})",
                time(label.time),
                style.temperature(label.at),
                style.temperature(now),
                style.temperature_difference(10.0)
            ),
            time(life),
            &mixing::POT_LIFE,
        ));
    }
    steps.extend(batch_steps(inputs, worked, style));
    if worked.cups > 1 {
        let batch = &worked.batch;
        steps.push(Step::new(
            "Cups of a batch",
            "k = ⌈batch / most in a cup⌉",
            match batch.a_mass.zip(batch.b_mass) {
                Some((a, b)) => {
                    text!("⌈{} / {}⌉", amount((a + b).get::<gram>(), 1, "g"), most_in_cup(worked))
                }
                None => {
                    let all = style.volume_needed(batch.a + batch.b);
                    text!("⌈{} / {}⌉", &all, most_in_cup(worked))
                }
            },
            worked.cups.to_string(),
            &mixing::CUP_HEAT,
        ));
    }
    steps.extend(inputs.wood.as_ref().map(|wood| wood.step(style)));
    if let Some(purchase) = &worked.purchase {
        let priced = inputs.offers.iter().all(|offer| offer.offer.price.is_some());
        steps.push(Step::new(
            if priced { "Cheapest containers" } else { "Containers that leave least over" },
            "held of a ≥ A, held of b ≥ B",
            shopping(inputs, worked, style),
            purchase.cost.map_or_else(
                || text!("{} left over", style.volume(purchase.left_over_a + purchase.left_over_b)),
                money,
            ),
            &purchase::METHOD,
        ));
    }
    steps
}

fn parts_step(inputs: &Inputs, worked: &Worked, style: Style) -> Step {
    let (a, b) = (plain(inputs.mix.a, 3), plain(inputs.mix.b, 3));
    let whole = style.volume_needed(worked.whole);
    let (formula, numbers) = match inputs.mix.by {
        By::Volume => {
            ("A = V · a / (a + b), B = V − A", text!("{} · {} / ({} + {})", &whole, &a, &a, &b))
        }
        By::Mass => {
            let density = |density: Option<uom::si::f64::MassDensity>| {
                density.map_or_else(String::new, |density| amount(density.value / 1e3, 3, "kg/l"))
            };
            let (of_a, of_b) = (density(inputs.mix.density_a), density(inputs.mix.density_b));
            (
                "A = V · (a/ρa) / (a/ρa + b/ρb), B = V − A",
                text!(
                    "{} · ({} / {}) / ({} / {} + {} / {})",
                    &whole,
                    &a,
                    &of_a,
                    &a,
                    &of_a,
                    &b,
                    &of_b
                ),
            )
        }
    };
    let parts = &worked.parts;
    let result = text!("a {}, b {}", style.volume_needed(parts.a), style.volume_needed(parts.b));
    Step::new("Both parts", formula, numbers, result, &mixing::SHARES)
}

fn batch_steps(inputs: &Inputs, worked: &Worked, style: Style) -> Vec<Step> {
    let batches = &worked.batches;
    let whole = style.volume_needed(worked.whole);
    let each = text!("{} each", style.volume_needed(batches.each));
    let Some(largest) = batches.largest else {
        return vec![Step::new(
            "Batches",
            "one for each pass: V / passes",
            text!("{} / {}", &whole, &batches.passes),
            each,
            &mixing::BATCHES,
        )];
    };
    let limit = inputs.batch_limit.map(|limit| style.volume(limit));
    let poured = inputs
        .pour_rate
        .zip(worked.pot_life)
        .map(|(rate, life)| text!("{} · {}", style.pouring(rate), time(life)));
    let numbers: Vec<String> = limit.into_iter().chain(poured).collect();
    vec![
        Step::new(
            "Largest batch",
            "the lesser of limit and pour rate · pot life",
            numbers.join("; "),
            style.volume(largest),
            &mixing::BATCHES,
        ),
        Step::new(
            "Batches of a pass",
            "n = ⌈V / passes / largest⌉",
            text!("⌈{} / {} / {}⌉", &whole, &batches.passes, style.volume(largest)),
            text!("{}, {}", &batches.per_pass, &each),
            &mixing::BATCHES,
        ),
    ]
}
