//! Where the months fall short of a day's use, by how much, and what closes the gap.

use uom::si::angle::degree;
use uom::si::electric_potential::volt;
use uom::si::energy::watt_hour;
use uom::si::f64::{Angle, Energy};
use uom::si::power::watt;

use super::months::MONTHS;
use super::{Figures, Inputs, Wrong, solar_fault};
use crate::energy::solar::{Plane, day_yield, months};
use crate::formula::Formula as _;
use crate::outcome::Record;
use crate::quantity::{Style, amount, plain};
use crate::report::{Table, TableRow};
use crate::sheet::handoffs::DailyUse;
use crate::words::{Arg, Msg, solar as words};

/// What the energy sheet knows of the battery and of what else charges it.
pub(super) struct Store {
    /// From full to the lowest charge, as it reaches the loads. [Wh]
    usable_wh: Option<f64>,
    /// The strongest charger beside the panels: its name, and what it leaves in the battery. [W]
    charger: Option<(String, f64)>,
    /// The battery: nominal, and at the end of a charge. [V]
    pub battery_v: Option<(f64, f64)>,
}

impl Store {
    pub fn of(daily: DailyUse) -> Self {
        Self {
            usable_wh: daily.usable.map(|energy| energy.get::<watt_hour>()),
            charger: daily.charger.map(|(name, power)| (name, power.get::<watt>())),
            battery_v: Some((daily.nominal.get::<volt>(), daily.charging.get::<volt>())),
        }
    }
}

/// A month that falls short.
pub(super) struct Short {
    pub month: usize,
    pub lacks: Energy,
    /// Panels in all that would cover it; none where the sun hardly shines.
    pub panels: Option<u32>,
    /// The tilt towards the equator, of some, that brings most, and what it brings.
    pub tilt: (Angle, Energy),
    /// Days that a full battery makes up what lacks.
    pub bridge_days: Option<f64>,
    /// Hours of the strongest other charger that make up a day.
    pub charge_h: Option<f64>,
}

/// The tilts that are tried. [deg]
const TILTS: [f64; 5] = [15.0, 30.0, 45.0, 60.0, 75.0];

pub(super) fn short(inputs: &Inputs, figures: &Figures) -> Result<Vec<Short>, Wrong> {
    let Some(need) = inputs.need else { return Ok(Vec::new()) };
    let lacking: Vec<usize> = (0..12)
        .filter(|month| figures.yields[*month].get::<watt_hour>() + 1e-9 < need.get::<watt_hour>())
        .collect();
    if lacking.is_empty() {
        return Ok(Vec::new());
    }
    let mut tilted = Vec::with_capacity(TILTS.len());
    for degrees in TILTS {
        let tilt = Angle::new::<degree>(degrees);
        let plane = Plane { tilt, azimuth: Angle::default() };
        tilted.push((tilt, months(&inputs.site, plane).map_err(solar_fault)?));
    }
    let mut all = Vec::new();
    for month in lacking {
        let brings = figures.yields[month];
        let mut best = (inputs.plane.tilt, brings);
        for (tilt, months) in &tilted {
            let energy = day_yield(&months[month], inputs.rated(), inputs.loss)
                .map_err(solar_fault)?
                .value();
            // A hair more is no reason to tilt.
            if energy > best.1 * (1.0 + 1e-9) {
                best = (*tilt, energy);
            }
        }
        let each = brings.get::<watt_hour>() / f64::from(inputs.count);
        let panels = (need.get::<watt_hour>() / each - 1e-9).ceil();
        let lacks = need - brings;
        let lacks_wh = lacks.get::<watt_hour>();
        let over = |wh: Option<f64>| wh.map(|wh| wh / lacks_wh).filter(|n| n.is_finite());
        let store = inputs.store.as_ref();
        all.push(Short {
            month,
            lacks,
            panels: (panels.is_finite() && panels < 1000.0).then_some(panels as u32),
            tilt: best,
            bridge_days: over(store.and_then(|store| store.usable_wh)),
            charge_h: store
                .and_then(|store| store.charger.as_ref())
                .map(|(_, watts)| lacks_wh / watts)
                .filter(|hours| hours.is_finite()),
        });
    }
    Ok(all)
}

pub(super) fn table(inputs: &Inputs, figures: &Figures, style: Style) -> Option<Table> {
    let (need, short) = (inputs.need?, &figures.short);
    let fits = figures.layout.as_ref().map(|layout| layout.places.len());
    if short.is_empty() {
        return None;
    }
    let mut heads: Vec<Msg> = [
        words::CLOSES_MONTH,
        words::CLOSES_LACKS,
        words::CLOSES_PANELS,
        words::CLOSES_TILTED,
        words::CLOSES_ONLY,
    ]
    .map(Msg::from)
    .into();
    let wh = |energy: Energy| style.write(&Arg::watt_hours(energy));
    let bridges = short.iter().any(|one| one.bridge_days.is_some());
    if bridges {
        heads.push(words::CLOSES_BRIDGES.into());
    }
    let charger = inputs.store.as_ref().and_then(|store| store.charger.as_ref());
    if let Some((label, _)) = charger {
        heads.push(match label.as_str() {
            "" => words::CLOSES_CHARGE.into(),
            charger => words::ClosesCharger { charger }.into(),
        });
    }
    let rows = short.iter().map(|one| {
        let (tilt, tilted) = one.tilt;
        let panels: Msg = match (one.panels, fits) {
            (None, _) => words::TOO_DARK.into(),
            (Some(panels), Some(fits)) if fits < panels as usize => {
                words::PanelsNeededOver { panels: panels.to_string(), fits: fits.to_string() }
                    .into()
            }
            (Some(panels), _) => words::PanelsNeeded { panels: panels.to_string() }.into(),
        };
        let mut cells = vec![
            style.say(MONTHS[one.month]),
            wh(one.lacks),
            style.say(panels),
            style.say(words::Tilted {
                enough: if tilted >= need { "yes" } else { "no" },
                tilt: Arg::degrees(tilt),
                energy: Arg::watt_hours(tilted),
            }),
            wh(need - one.lacks),
        ];
        if bridges {
            let days = |days| style.say(words::Days { days: plain(days, 1) });
            cells.push(one.bridge_days.map_or_else(String::new, days));
        }
        if charger.is_some() {
            cells.push(one.charge_h.map_or_else(String::new, |hours| amount(hours, 1, "h")));
        }
        TableRow { cells, chosen: false }
    });
    let rows = rows.collect();
    let heads = heads.into_iter().map(|head| style.say(head)).collect();
    Some(Table { title: style.say(words::CLOSES), heads, rows })
}

pub(super) fn records(short: &[Short]) -> Vec<Record> {
    short
        .iter()
        .map(|one| {
            Record::new()
                .with("month", one.month + 1)
                .with("lacks_wh_day", one.lacks.get::<watt_hour>())
                .maybe("panels", one.panels)
                .with("tilt_deg", (one.tilt.0.get::<degree>() * 1e6).round() / 1e6)
                .with("tilted_wh_day", one.tilt.1.get::<watt_hour>())
                .maybe("bridge_days", one.bridge_days)
                .maybe("charge_h_day", one.charge_h)
        })
        .collect()
}
