//! A day's use, battery and losses against arithmetic and published losses.

use super::*;
use crate::testing::any_number;
use proptest::prelude::*;

fn load(watts: f64, hours: f64, duty: f64) -> Load {
    Load { power: Power::new::<watt>(watts), time: Time::new::<hour>(hours), duty }
}

fn demand() -> Demand {
    Demand {
        voltage: ElectricPotential::new::<volt>(12.8),
        days: 2.0,
        usable: 0.8,
        efficiency: 0.95,
    }
}

fn day() -> [Load; 5] {
    [
        load(45.0, 24.0, 0.4),
        load(20.0, 4.0, 1.0),
        load(15.0, 8.0, 1.0),
        load(60.0, 2.0, 1.0),
        load(60.0, 0.25, 1.0),
    ]
}

fn wh(value: f64) -> Energy {
    Energy::new::<watt_hour>(value)
}

// Plain arithmetic outside this program: fridge, lights, fan, computer, pump.
#[test]
fn a_day_and_its_battery_by_arithmetic() {
    let found = budget(&day(), demand()).unwrap();
    assert!((found.day.get::<watt_hour>() - 767.0).abs() < 1e-9);
    assert!((found.day_charge.value().get::<ampere_hour>() - 59.921875).abs() < 1e-9);
    assert!((found.needed.value().get::<watt_hour>() - 2018.421).abs() < 1e-3);
    assert!((found.needed_charge.value().get::<ampere_hour>() - 157.689).abs() < 1e-3);
    let hours = runtime(wh(1280.0), 0.8, 1.0, found.day).unwrap().unwrap().value();
    assert!((hours.get::<hour>() - 32.0417).abs() < 1e-4);
}

// NREL/TP-6A20-62641's usual losses; 14.0757 % also by pvlib 0.16.1.
#[test]
fn usual_losses_of_a_panel_installation() {
    let losses: Vec<f64> = USUAL_LOSSES.iter().map(|(_, loss)| *loss).collect();
    let loss = combined_loss(&losses).unwrap();
    assert!((loss - 0.140757).abs() < 1e-6, "{loss}");
}

// Plain arithmetic: 767 Wh in 4 sun hours with 14.08 % lost take 223.173 W; 200 W then yield 687.36 Wh.
#[test]
fn panels_for_a_day_by_arithmetic() {
    let found = panels_for(wh(767.0), Time::new::<hour>(4.0), 0.1408).unwrap();
    assert!((found.get::<watt>() - 223.173).abs() < 1e-3, "{found:?}");
    let back = panels_for(wh(687.36), Time::new::<hour>(4.0), 0.1408).unwrap();
    assert!((back.get::<watt>() - 200.0).abs() < 1e-9, "{back:?}");
}

#[test]
fn an_idle_day_has_no_runtime() {
    assert_eq!(runtime(wh(1000.0), 0.8, 0.9, wh(0.0)), Ok(None));
    assert_eq!(runtime(wh(0.0), 0.8, 0.9, wh(1.0)), Err(BudgetError::Capacity));
    assert_eq!(budget(&[load(1.0, 25.0, 1.0)], demand()), Err(BudgetError::Time(0)));
}

proptest! {
    #[test]
    fn any_numbers_give_finite_figures_or_an_error(
        p in any_number(), t in any_number(), duty in any_number(), days in any_number(), usable in any_number(),
    ) {
        let demand = Demand { days, usable, ..demand() };
        if let Ok(found) = budget(&[load(p, t, duty)], demand) {
            prop_assert!(found.needed_charge.value().value.is_finite());
        }
        if let Ok(Some(time)) = runtime(wh(p), usable, duty, wh(t)) {
            prop_assert!(time.value().value.is_finite());
        }
        if let Ok(power) = panels_for(wh(p), Time::new::<hour>(t), duty) {
            prop_assert!(power.value.is_finite());
        }
        if let Ok(loss) = combined_loss(&[p, duty]) {
            prop_assert!((0.0..=1.0).contains(&loss));
        }
    }
}
