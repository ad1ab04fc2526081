//! What joints save: a row for each number of joints worth having, and what is proved of the chosen one.

use super::{Worked, mm};
use crate::carpentry::joints::{JointPlan, LayoutChoice};
use crate::quantity::{Style, money, plain};
use crate::report::{Remark, Table, TableRow, texts};
use crate::text::text;

/// Money, or a length of stock.
fn amount(priced: bool, value: f64, style: Style) -> String {
    if priced { money(value) } else { style.length(mm(value)) }
}

fn joints(count: u32) -> String {
    match count {
        0 => "no joint".to_owned(),
        1 => "1 joint".to_owned(),
        _ => text!("{} joints", &count),
    }
}

/// `The 12 joints lie`.
pub(super) fn joints_words(count: usize) -> String {
    match count {
        1 => "The joint lies".to_owned(),
        _ => text!("The {} joints lie", &count),
    }
}

/// What each number of joints costs at least; none where there is nothing to choose.
pub(super) fn table(worked: &Worked, style: Style) -> Option<Table> {
    let joining = &worked.layout.joining;
    let priced = joining.cut_plan.priced;
    let amount = |value: f64| amount(priced, value, style);
    let first = joining.choices.first().filter(|_| joining.choices.len() > 1)?;
    let rows = joining.choices.iter().enumerate().map(|(at, choice)| TableRow {
        cells: vec![
            choice.joints.to_string(),
            amount(choice.cost),
            if at == 0 { String::new() } else { amount(first.cost - choice.cost) },
            if choice.proved {
                "proved".to_owned()
            } else {
                text!("not less than {}", amount(choice.bound))
            },
        ],
        chosen: at == joining.chosen,
    });
    Some(Table {
        title: "What joints save".into(),
        heads: texts(&[
            "Joints",
            if priced { "Stock" } else { "Stock length" },
            "Saves",
            "Least for so many",
        ]),
        rows: rows.collect(),
    })
}

/// Whether the choice is the best there is, and what to enter for another one.
pub(super) fn remarks(worked: &Worked, joint_price: f64, style: Style) -> Vec<Remark> {
    let joining = &worked.layout.joining;
    let Some(chosen) = joining.choices.get(joining.chosen) else { return Vec::new() };
    let priced = joining.cut_plan.priced;
    let amount = |value: f64| amount(priced, value, style);
    let counted = if joint_price > 0.0 {
        text!(", each joint counted at {}", amount(joint_price))
    } else {
        String::new()
    };
    let what = if priced { "costs less" } else { "takes less stock" };
    let total = chosen.cost + joint_price * f64::from(chosen.joints);
    let mut remarks = vec![if joining.proved {
        Remark::good(text!("Proved: no layout that keeps these rules {}{}.", &what, &counted))
    } else {
        Remark::note(text!(
            "The best layout found takes {}{}; none that keeps these rules can take less than {}. A better one may exist in between.",
            amount(total),
            &counted,
            amount(joining.bound)
        ))
    }];
    remarks.extend(fewer(joining, chosen, &amount));
    remarks.extend(more(joining, chosen, joint_price, &amount));
    remarks
}

/// What fewer joints cost, and from which worth of a joint on they are chosen.
fn fewer(
    joining: &JointPlan,
    chosen: &LayoutChoice,
    amount: &dyn Fn(f64) -> String,
) -> Option<Remark> {
    let each = |other: &LayoutChoice| {
        (other.cost - chosen.cost) / f64::from(chosen.joints.saturating_sub(other.joints).max(1))
    };
    let before = joining.choices.get(..joining.chosen)?;
    let next = before.iter().min_by(|a, b| each(a).total_cmp(&each(b)))?;
    Some(Remark::note(text!(
        "{} take {} more of stock than {}. To have the fewer, enter {} as the worth of one joint less.",
        joints(next.joints),
        amount(next.cost - chosen.cost),
        joints(chosen.joints),
        entered(joining, each(next))
    )))
}

/// What more joints would save, where a joint has its price.
fn more(
    joining: &JointPlan,
    chosen: &LayoutChoice,
    joint_price: f64,
    amount: &dyn Fn(f64) -> String,
) -> Option<Remark> {
    let each = |other: &LayoutChoice| {
        (chosen.cost - other.cost) / f64::from(other.joints.saturating_sub(chosen.joints).max(1))
    };
    let after = joining.choices.get(joining.chosen + 1..)?;
    let next = after.iter().max_by(|a, b| each(a).total_cmp(&each(b)))?;
    let least = each(next);
    (joint_price > 0.0).then(|| {
        Remark::note(text!(
            "{} would save {} of stock, {} for each joint more: worth it where a joint less is worth less than that.",
            joints(next.joints),
            amount(chosen.cost - next.cost),
            amount(least)
        ))
    })
}

/// A little more than what makes two choices equal, as it is typed.
fn entered(joining: &JointPlan, each: f64) -> String {
    // Money is typed in hundredths, a length in whole millimetres.
    let parts = if joining.cut_plan.priced { 100.0 } else { 1.0 };
    plain(((each * parts).floor() + 1.0) / parts, 2)
}
