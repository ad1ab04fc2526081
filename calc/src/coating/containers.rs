//! Which containers to buy: the cheapest that cover a need, and of those what leaves least over.

mod search;

use uom::si::f64::Volume;
use uom::si::volume::liter;

use self::search::{Search, Size};
use super::range::{OutOfRange, within};
use crate::source::Source;
use crate::words::{Msg, range as names, wet as words};

/// The problem and why the search is exact.
pub static METHOD: Source = Source::identity_of(words::SOURCE_CONTAINERS);

/// How many partial choices are looked at before a choice is given as unproved.
pub const STEP_LIMIT: u32 = 400_000;

/// One size on the shelf.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Offer {
    /// What it holds.
    pub size: Volume,
    /// What it costs, in the person's currency.
    pub price: Option<f64>,
}

/// What to buy.
#[derive(Clone, Debug, PartialEq)]
pub struct Choice {
    /// How many of each offer, in the order of the offers.
    pub counts: Vec<u32>,
    /// What they hold together.
    pub total: Volume,
    /// What is left of that beyond the need.
    pub left_over: Volume,
    /// What they cost together; none where one of them has no price.
    pub cost: Option<f64>,
    /// Whether no other choice can be better.
    pub proved: bool,
}

/// Why nothing can be chosen.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Fault {
    /// Nothing is offered.
    NoOffers,
    /// The need, a size or a price is outside its range.
    Range(OutOfRange),
}

/// The cheapest containers that cover `need`; among equally cheap ones those that leave least
/// over, among those the fewest. Where one offer has no price, costs cannot be compared: then the
/// ones that leave least over, and of those the fewest.
///
/// A total within 1e-9 of the need covers it. Costs that differ by 1e-9 of themselves, and
/// left-overs that differ by 1e-6 of the need, count as equal.
///
/// # Errors
/// Need from 0 to 1e6 l, sizes from 0.001 to 100 000 l, prices from 0 to 1e9; from 1 to 64 offers.
pub fn choose(need: Volume, offers: &[Offer]) -> Result<Choice, Fault> {
    choose_within(need, offers, STEP_LIMIT)
}

/// As [`choose`], with a step limit of its own: for those who choose many times.
pub(super) fn choose_within(
    need: Volume,
    offers: &[Offer],
    step_limit: u32,
) -> Result<Choice, Fault> {
    let need_l = within(names::VOLUME_NEEDED, need.get::<liter>(), 0.0, 1e6, "l")?;
    check(offers)?;
    let priced = offers.iter().all(|offer| offer.price.is_some());
    let size = |(index, offer): (usize, &Offer)| {
        let size = offer.size.get::<liter>();
        // Without prices the volume itself is the cost: least cost is then least left over.
        Size { index, size, price: offer.price.filter(|_| priced).unwrap_or(size) }
    };
    let sizes = offers.iter().enumerate().map(size).collect();
    let (counts, proved) = Search::run(need_l, sizes, offers.len(), step_limit);
    let bought = || counts.iter().zip(offers).filter(|(count, _)| **count > 0);
    let total_l: f64 =
        bought().map(|(count, offer)| f64::from(*count) * offer.size.get::<liter>()).sum();
    let cost = bought().map(|(count, offer)| Some(f64::from(*count) * offer.price?)).sum();
    Ok(Choice {
        total: Volume::new::<liter>(total_l),
        left_over: Volume::new::<liter>((total_l - need_l).max(0.0)),
        cost,
        proved,
        counts,
    })
}

/// Checks sizes and prices.
///
/// # Errors
/// As [`choose`].
pub(super) fn check(offers: &[Offer]) -> Result<(), Fault> {
    if offers.is_empty() {
        return Err(Fault::NoOffers);
    }
    within(names::NUMBER_OF_CONTAINER_SIZES, offers.len() as f64, 1.0, 64.0, "")?;
    for offer in offers {
        within(names::CONTAINER_SIZE, offer.size.get::<liter>(), 0.001, 1e5, "l")?;
        within(names::CONTAINER_PRICE, offer.price.unwrap_or(0.0), 0.0, 1e9, "")?;
    }
    Ok(())
}

impl From<OutOfRange> for Fault {
    fn from(range: OutOfRange) -> Self {
        Self::Range(range)
    }
}

impl From<Fault> for Msg {
    fn from(fault: Fault) -> Self {
        match fault {
            Fault::NoOffers => words::NO_CONTAINER.into(),
            Fault::Range(range) => range.into(),
        }
    }
}

#[cfg(test)]
mod tests;
