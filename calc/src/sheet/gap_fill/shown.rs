//! A filling in words: answers, remarks and tables.

use uom::si::f64::{ThermodynamicTemperature, Volume};
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::minute;

use super::found::{Found, bought};
use super::inputs::{Inputs, Job, PotLife as Label};
use super::list::called;
use crate::coating::mixing::{self, By, MOST_IN_CUP_G, MOST_IN_CUP_ML, Parts, PotLife};
use crate::formula::Formula as _;
use crate::quantity::{Mass, Pour, Style};
use crate::report::{Answer, Remark, Table, TableRow};
use crate::sorting::sort_by;
use crate::words::{Arg, Id, Msg, gap_fill as words};
use uom::si::mass::gram;
use uom::si::volume::milliliter;

/// The rows' names, of gaps and then of holes: the label, else what it is and its number.
pub(super) fn names(inputs: &Inputs, style: Style) -> Vec<String> {
    let named = |label: &str, other: Msg| match label {
        "" => style.say(other),
        label => label.to_owned(),
    };
    let gaps = inputs.gaps.iter().enumerate();
    let gaps = gaps.map(|(at, gap)| named(&gap.label, words::GapNumber { number: at + 1 }.into()));
    let holes = inputs.holes.iter().enumerate();
    let holes =
        holes.map(|(at, holes)| named(&holes.label, words::HoleNumber { number: at + 1 }.into()));
    gaps.chain(holes).collect()
}

/// One behind the other, as the language parts them: `2 passes of 3; mind the pot life`.
pub(super) fn clauses(all: impl IntoIterator<Item = Msg>) -> Option<Msg> {
    all.into_iter().reduce(|first, next| words::Clauses { first, next }.into())
}

/// Both parts as they are measured: on the scale where the ratio is by mass, else in the cup.
pub(super) fn measured(by: By, parts: &Parts, style: Style) -> Pour {
    match (by, parts.a_mass.zip(parts.b_mass)) {
        (By::Mass, Some((a, b))) => style.weighed_into_one(a, b),
        _ => style.poured_into_one(parts.a, parts.b),
    }
}

/// `A 120 ml + B 60 ml`, `A 129 g + B 60.7 g by weight`.
fn both(by: By, parts: &Parts, style: Style) -> Msg {
    let pour = measured(by, parts, style);
    let (a, b) = (pour.first, pour.second);
    match by {
        By::Volume => words::ByVolume { a, b }.into(),
        By::Mass => words::ByWeight { a, b }.into(),
    }
}

pub(super) fn answers(job: &Job, found: &Found, style: Style) -> Vec<Answer> {
    let by = job.inputs.mix.by();
    let whole = found.volume.value();
    let mut answers = vec![
        Answer::new(style.say(words::MIX_IN_ALL), style.volume_needed_both(whole))
            .note(style.say(both(by, &found.parts, style))),
        batches(found, by, style),
    ];
    if let Some(purchase) = &found.purchase {
        let left = words::BuyLeftOver {
            a: Arg::volume(purchase.left_over_a),
            b: Arg::volume(purchase.left_over_b),
        };
        let cost = purchase.cost.map(|cost| words::BuyCost { cost: Arg::price(cost) }.into());
        let note = clauses(cost.into_iter().chain([left.into()]));
        let answer = Answer::new(style.say(words::BUY), shopping(job, found, style));
        answers.push(answer.note(note.map_or_else(String::new, |note| style.say(note))));
    }
    answers
}

fn batches(found: &Found, by: By, style: Style) -> Answer {
    let batches = &found.batches;
    let mut notes: Vec<Msg> = Vec::new();
    if batches.passes > 1 {
        let (passes, each) = (batches.passes, Arg::count(batches.per_pass));
        notes.push(words::BatchesOfPasses { passes, each }.into());
    }
    let label: Msg = match found.cups {
        1 => words::Batches { count: batches.count }.into(),
        cups => {
            let cups = Arg::count(cups);
            notes.push(words::CupsOfBatches { batches: batches.count, cups }.into());
            notes.push(words::CupsLimit { most: most_in_cup(found) }.into());
            words::CUPS.into()
        }
    };
    notes.push(match found.pot_life {
        Some(life) => words::Workable { time: Arg::pot_life(life.value()) }.into(),
        None => words::WORKABLE_UNKNOWN.into(),
    });
    let one = style.say(both(by, &found.in_cup, style));
    let text = found.all_cups.to_string() + " × (" + &one + ")";
    let note = clauses(notes).map_or_else(String::new, |note| style.say(note));
    Answer::new(style.say(label), text).note(note)
}

/// What a cup holds at most where no label's limit is entered: by mass, else by volume.
fn most_in_cup(found: &Found) -> Arg {
    match found.batch.mass() {
        Some(_) => Arg::grams(Mass::new::<gram>(MOST_IN_CUP_G)),
        None => Arg::milliliters(Volume::new::<milliliter>(MOST_IN_CUP_ML)),
    }
}

/// `1 × kit 1.5 l + 2 × part B 250 ml`.
pub(super) fn shopping(job: &Job, found: &Found, style: Style) -> String {
    let cans = found.purchase.iter().flat_map(|purchase| bought(&job.offers, purchase));
    let cans: Vec<String> = cans
        .map(|(offer, count)| {
            style.say(words::BuyPart {
                count: Arg::count(count),
                part: called(offer.part),
                size: Arg::container(offer.offer.size),
            })
        })
        .collect();
    cans.join(" + ")
}

pub(super) fn remarks(job: &Job, found: &Found, style: Style) -> Vec<Remark> {
    let inputs = &job.inputs;
    let mut notes: Vec<Msg> = Vec::new();
    if found.cups > 1 {
        let cups = Arg::count(found.cups);
        notes.push(words::CupsOfMost { cups, most: most_in_cup(found) }.into());
    }
    if inputs.batch_limit.is_some() && mixing::cups(&found.in_cup) > 1 {
        notes.push(words::LargeCups { most: most_in_cup(found) }.into());
    }
    if !job.loss_given {
        notes.push(words::UsualLoss { loss: Arg::percent(inputs.loss_percent) }.into());
    }
    if !job.shrink_given {
        notes.push(words::NO_SHRINKAGE.into());
    }
    let note = |message: Msg| Remark::note(style.say(message));
    let warning = |message: Msg| Remark::warning(style.say(message));
    let mut remarks: Vec<Remark> = notes.into_iter().map(note).collect();
    if let (Some(wood), Some(narrowest)) = (&inputs.wood, job.narrowest()) {
        remarks.push(warning(wood.moving(narrowest)));
    }
    match (inputs.pot_life.is_some(), inputs.pour_rate.is_some()) {
        (true, false) => remarks.push(note(words::TIME_A_CUP.into())),
        (false, true) => remarks.push(warning(words::NO_POT_LIFE.into())),
        _ => {}
    }
    remarks.extend(pot_life_now(job, found).map(note));
    if inputs.mix.by() == By::Mass {
        let b = found.parts.b.value / found.parts.a.value * 100.0;
        remarks.push(note(words::Weigh { b: Arg::tenths(b) }.into()));
    }
    if inputs.passes > 1 {
        remarks.push(note(words::EACH_PASS.into()));
    }
    let Some(purchase) = &found.purchase else {
        remarks.push(note(words::ADD_CONTAINERS.into()));
        return remarks;
    };
    if job.offers.iter().any(|offer| offer.offer.price.is_none()) {
        remarks.push(note(words::NOT_PRICED.into()));
    }
    if !purchase.proved {
        remarks.push(note(words::NOT_PROVED.into()));
    }
    remarks
}

/// How long a batch stays workable, where that is not what the label says.
fn pot_life_now(job: &Job, found: &Found) -> Option<Msg> {
    let (temperature, life) = (job.inputs.temperature?, found.pot_life?);
    let now = life.value();
    let ratio = now.get::<minute>() / life.label.get::<minute>();
    let same = (0.95..=1.05).contains(&ratio);
    let (now, label) = (Arg::pot_life(now), Arg::label_life(life.label));
    let temperature = Arg::typed_temperature(temperature);
    (!same).then(|| words::PotLifeNow { temperature, now, label }.into())
}

pub(super) fn tables(job: &Job, found: &Found, style: Style) -> Vec<Table> {
    let mut tables = vec![cup_table(job, found, style), volumes_table(job, found, style)];
    if let Some(label) = &job.inputs.pot_life {
        tables.extend(pot_life_table(job, label, style));
    }
    tables
}

fn row<const N: usize>(cells: [String; N], chosen: bool) -> TableRow {
    TableRow { cells: cells.to_vec(), chosen }
}

/// The heads of a table behind the one of its rows' names, which has none.
fn heads(of: &[Id], style: Style) -> Vec<String> {
    let said = of.iter().map(|head| style.say(*head));
    std::iter::once(String::new()).chain(said).collect()
}

/// What to pour now and the level after it, for a cup and for parts of one; on the scale where the ratio
/// is by mass, where the cup's own marks would be another ratio.
fn cup_table(job: &Job, found: &Found, style: Style) -> Table {
    let by = job.inputs.mix.by();
    let whole = if found.cups == 1 { words::SHARE_BATCH } else { words::SHARE_CUP };
    let shares = [(whole, 1), (words::SHARE_HALF, 2), (words::SHARE_QUARTER, 4)];
    let rows = shares.map(|(name, of)| {
        let Pour { first, second, level } = measured(by, &found.in_cup.share(of), style);
        row([style.say(name), first.clone(), first, second, level], of == 1)
    });
    let (title, of) = match by {
        By::Volume => (
            words::CUP_BY_VOLUME,
            [
                words::CUP_BY_VOLUME_FIRST,
                words::CUP_BY_VOLUME_FIRST_LEVEL,
                words::CUP_BY_VOLUME_SECOND,
                words::CUP_BY_VOLUME_SECOND_LEVEL,
            ],
        ),
        By::Mass => (
            words::CUP_BY_WEIGHT,
            [
                words::CUP_BY_WEIGHT_FIRST,
                words::CUP_BY_WEIGHT_FIRST_LEVEL,
                words::CUP_BY_WEIGHT_SECOND,
                words::CUP_BY_WEIGHT_SECOND_LEVEL,
            ],
        ),
    };
    Table { title: style.say(title), heads: heads(&of, style), rows: rows.to_vec() }
}

fn volumes_table(job: &Job, found: &Found, style: Style) -> Table {
    let inputs = &job.inputs;
    let gaps = inputs.gaps.iter().map(|gap| gap.count);
    let counts = gaps.chain(inputs.holes.iter().map(|holes| holes.count));
    let rows = names(inputs, style).into_iter().zip(counts).zip(&found.rows);
    let rows = rows.map(|((name, count), all)| {
        let each = *all / f64::from(count);
        row([name, count.to_string(), style.volume_needed(each), style.volume_needed(*all)], false)
    });
    let together = style.say(words::FILLED_TOGETHER);
    let all = style.volume_needed(found.net_volume);
    let sum = row([together, String::new(), String::new(), all], false);
    Table {
        title: style.say(words::FILLED),
        heads: heads(&[words::FILLED_COUNT, words::FILLED_EACH, words::FILLED_ALL], style),
        rows: rows.chain([sum]).collect(),
    }
}

/// Pot life at other temperatures, so that one sees what warming or cooling brings.
fn pot_life_table(job: &Job, label: &Label, style: Style) -> Option<Table> {
    let now = job.inputs.temperature.unwrap_or(label.at);
    let mut temperatures: Vec<(ThermodynamicTemperature, bool)> = [10.0, 15.0, 20.0, 25.0, 30.0]
        .into_iter()
        .map(ThermodynamicTemperature::new::<degree_celsius>)
        .filter(|other| (other.value - now.value).abs() > 0.5)
        .map(|other| (other, false))
        .chain([(now, true)])
        .collect();
    sort_by(&mut temperatures, |(one, _), (other, _)| one.value.total_cmp(&other.value));
    let rows = temperatures.into_iter().map(|(other, chosen)| {
        let life = PotLife::new(label.time, label.at, other).ok()?;
        let life = style.write(&Arg::pot_life(life.value()));
        Some(row([style.write(&Arg::typed_temperature(other)), life], chosen))
    });
    Some(Table {
        title: style.say(words::POT_LIVES),
        heads: [words::POT_LIVES_AT, words::POT_LIVES_WORKABLE].map(|head| style.say(head)).into(),
        rows: rows.collect::<Option<_>>()?,
    })
}
