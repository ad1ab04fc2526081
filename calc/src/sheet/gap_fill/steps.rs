//! How a filling is worked out, step by step.

use uom::si::f64::{Mass, Volume};
use uom::si::mass::gram;
use uom::si::volume::milliliter;

use super::found::Found;
use super::inputs::Job;
use super::shown::shopping;
use crate::coating::mixing::{
    self, BatchesPerPass, By, CupsByMass, CupsByVolume, MOST_IN_CUP_G, MOST_IN_CUP_ML, Mix,
    PartByMass, PartByVolume,
};
use crate::coating::{film, gap, purchase};
use crate::formula::{Formula as _, step};
use crate::quantity::Style;
use crate::report::Step;
use crate::text::text;
use crate::words::{Arg, gap_fill as words};

/// More rows than this are counted in place of being added up.
const MOST_LISTED: usize = 6;

pub(super) fn working(job: &Job, found: &Found, style: Style) -> Vec<Step> {
    let mut steps = vec![fill_step(found, style)];
    let mixed = step(words::MIX_IN_ALL, &found.volume, style);
    steps.push(match job.loss_given {
        true => mixed,
        false => Step { source: &film::USUAL_LOSS, ..mixed },
    });
    steps.push(parts_step(job, found, style));
    steps.extend(found.pot_life.map(|life| step(words::STEP_POT_LIFE, &life, style)));
    steps.extend(batch_steps(job, found, style));
    if found.cups > 1 {
        steps.push(cups_step(found, style));
    }
    steps.extend(found.joint_swing.map(|swing| step(words::STEP_SWING, &swing, style)));
    steps.extend(containers_step(job, found, style));
    steps
}

fn fill_step(found: &Found, style: Style) -> Step {
    let rows = &found.rows;
    let numbers = match rows.len() <= MOST_LISTED {
        true => {
            let each: Vec<String> = rows.iter().map(|row| style.volume_needed(*row)).collect();
            each.join(" + ")
        }
        false => style.say(words::StepFillRows { count: rows.len() }),
    };
    Step::new(
        style.say(words::STEP_FILL),
        style.say(words::STEP_FILL_FORMULA),
        numbers,
        style.volume_needed_both(found.net_volume),
        &gap::VOLUMES,
    )
}

fn parts_step(job: &Job, found: &Found, style: Style) -> Step {
    let Mix { by, a, b, density_a, density_b } = job.inputs.mix.ratio();
    let whole = found.volume.value();
    let part = match (by, density_a.zip(density_b)) {
        (By::Mass, Some((density_a, density_b))) => {
            let of = PartByMass { whole, a, b, density_a, density_b };
            step(words::STEP_PARTS, &of, style)
        }
        _ => step(words::STEP_PARTS, &PartByVolume { whole, a, b }, style),
    };
    let (a, b) = (Arg::volume_needed(found.parts.a), Arg::volume_needed(found.parts.b));
    Step { result: style.say(words::StepPartsResult { a, b }), ..part }
}

fn batch_steps(job: &Job, found: &Found, style: Style) -> Vec<Step> {
    let batches = &found.batches;
    let (whole, passes) = (found.volume.value(), batches.passes);
    let volume = Arg::volume_needed(batches.each);
    let Some(largest) = batches.largest else {
        return vec![Step::new(
            style.say(words::STEP_BATCHES),
            style.say(words::STEP_BATCHES_FORMULA),
            text!("{} / {}", style.volume_needed(whole), &passes),
            style.say(words::StepBatchesEach { volume }),
            &mixing::BATCHES,
        )];
    };
    let limit = job.inputs.batch_limit.map(|limit| style.volume(limit));
    let poured = job.inputs.pour_rate.zip(found.pot_life).map(|(rate, life)| {
        let life = style.write(&Arg::pot_life(life.value()));
        text!("{} · {}", style.pouring(rate), &life)
    });
    let numbers: Vec<String> = limit.into_iter().chain(poured).collect();
    let count = Arg::count(batches.per_pass);
    let per_pass = BatchesPerPass { whole, passes, largest };
    vec![
        Step::new(
            style.say(words::STEP_LARGEST),
            style.say(words::STEP_LARGEST_FORMULA),
            numbers.join("; "),
            style.volume(largest),
            &mixing::BATCHES,
        ),
        Step {
            result: style.say(words::StepPerPassResult { count, volume }),
            ..step(words::STEP_PER_PASS, &per_pass, style)
        },
    ]
}

fn cups_step(found: &Found, style: Style) -> Step {
    let batch = &found.batch;
    match batch.mass() {
        Some(batch) => {
            let of = CupsByMass { batch, most: Mass::new::<gram>(MOST_IN_CUP_G) };
            step(words::STEP_CUPS, &of, style)
        }
        None => {
            let most = Volume::new::<milliliter>(MOST_IN_CUP_ML);
            step(words::STEP_CUPS, &CupsByVolume { batch: batch.a + batch.b, most }, style)
        }
    }
}

fn containers_step(job: &Job, found: &Found, style: Style) -> Option<Step> {
    let purchase = found.purchase.as_ref()?;
    let priced = job.offers.iter().all(|offer| offer.offer.price.is_some());
    let name = if priced { words::STEP_CONTAINERS_PRICED } else { words::STEP_CONTAINERS };
    let left_over = purchase.left_over_a + purchase.left_over_b;
    Some(Step::new(
        style.say(name),
        style.say(words::STEP_CONTAINERS_FORMULA),
        shopping(job, found, style),
        match purchase.cost {
            Some(cost) => style.write(&Arg::price(cost)),
            None => style.say(words::StepContainersLeftOver { volume: Arg::volume(left_over) }),
        },
        &purchase::METHOD,
    ))
}
