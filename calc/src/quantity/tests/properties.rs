//! Properties that hold for any text and any length.

use proptest::prelude::*;

use crate::quantity::soundness::{PIECES, check_any_text, check_length_text};
use crate::quantity::*;

/// Text put together from the pieces of measures.
fn near_measure() -> impl Strategy<Value = String> {
    prop::collection::vec(prop::sample::select(PIECES), 0..12).prop_map(|pieces| pieces.concat())
}

/// A sum or product as text, with its value worked out beside it.
#[derive(Clone, Debug)]
struct Worked {
    text: String,
    value: f64,
}

fn worked() -> impl Strategy<Value = Worked> {
    let leaf = prop_oneof![
        (0u32..4000).prop_map(|n| Worked { text: n.to_string(), value: f64::from(n) }),
        (0u32..400, 1u32..32).prop_map(|(whole, top)| Worked {
            text: format!("{whole} {top}/32"),
            value: f64::from(whole) + f64::from(top) / 32.0,
        }),
        (0u32..400, 0u32..1000).prop_map(|(whole, part)| Worked {
            text: format!("{whole}.{part:03}"),
            value: format!("{whole}.{part:03}").parse().unwrap(),
        }),
    ];
    leaf.prop_recursive(4, 16, 2, |inner| {
        (inner.clone(), inner, prop::sample::select(vec!['+', '-', '*', '/'])).prop_map(
            |(a, b, operator)| {
                let value = match operator {
                    '+' => a.value + b.value,
                    '-' => a.value - b.value,
                    '*' => a.value * b.value,
                    _ => a.value / b.value,
                };
                Worked { text: format!("({}) {operator} ({})", a.text, b.text), value }
            },
        )
    })
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_text_is_read_or_refused_in_words(text in any::<String>()) {
        prop_assert_eq!(check_any_text(&text), Ok(()));
    }

    #[test]
    fn text_close_to_a_measure_is_read_or_refused_in_words(text in near_measure()) {
        prop_assert_eq!(check_any_text(&text), Ok(()));
    }

    #[test]
    fn numbers_with_marks_are_read_or_refused_in_words(text in "[0-9 .,/'\"+*()-]{0,14}(in|ft|mm)?") {
        prop_assert_eq!(check_length_text(&text), Ok(()));
    }

    #[test]
    fn sums_and_products_are_worked_out(worked in worked()) {
        let read = read_number(&worked.text);
        if !worked.value.is_finite() {
            prop_assert!(read.is_err(), "{}", worked.text);
        } else if worked.value.abs() <= 1e12 && worked.text.len() <= MAX_TYPED {
            let read = read.map_err(|error| TestCaseError::fail(error.to_string()))?;
            let slack = 1e-12 * worked.value.abs();
            prop_assert!((read - worked.value).abs() <= slack, "{} is {read}", worked.text);
        }
    }

    #[test]
    fn feet_inches_and_fractions_are_exact(feet in 0u32..60, inches in 0u32..12, top in 1u32..64) {
        let exact = (f64::from(feet) * 12.0 + f64::from(inches) + f64::from(top) / 64.0) * 0.0254;
        for typed in [
            format!("{feet}' {inches} {top}/64\""),
            format!("{feet}'-{inches} {top}/64\""),
            format!("{feet}'{inches}-{top}/64\""),
            format!("{feet} ft {inches} {top}/64 in"),
            format!("{feet} ft + {inches} {top}/64 in"),
        ] {
            let read = Measure::read(&typed, &LENGTH, None).map(|measure| measure.si());
            prop_assert_eq!(read.map_err(|error| error.to_string()), Ok(exact), "{}", typed);
        }
    }

    #[test]
    fn a_mark_reads_as_the_rounded_length(
        length in -200.0f64..200.0,
        rounding in prop::sample::select(Rounding::ALL.to_vec()),
    ) {
        let style = Style::rounded(rounding);
        let exact = Length::new::<uom::si::length::meter>(length);
        let marked = style.mark(exact);
        let step = rounding.step().value;
        prop_assert!(marked.left_over.value.abs() <= step / 2.0 * (1.0 + 1e-6));
        prop_assert!((marked.rounded.value + marked.left_over.value - length).abs() < 1e-12);
        let near = |text: &str| {
            let read = Measure::read(text, &LENGTH, None).map(|measure| measure.si());
            read.is_ok_and(|read| (read - marked.rounded.value).abs() < 1e-12)
        };
        prop_assert!(near(&marked.text), "{}", marked.text);
        // A mark is its own mark.
        prop_assert_eq!(&style.mark(marked.rounded).text, &marked.text);
        prop_assert_eq!(style.mark(marked.rounded).left_over(), None);
        if style.system == UnitSystem::Imperial || length.abs() < 10.0 {
            prop_assert!(near(&style.length(exact)), "{}", style.length(exact));
        }
    }

    /// Whole micrometres, rounded in whole numbers: another way to the same line.
    #[test]
    fn marks_are_the_nearest_line(um in 0u64..20_000_000, index in 0usize..5) {
        let rounding = Rounding::ALL[index];
        let (parts, unit_um) = [(8, 25_400), (16, 25_400), (32, 25_400), (1, 1000), (2, 1000)][index];
        let lines = (2 * um * parts + unit_um) / (2 * unit_um);
        let style = Style::rounded(rounding);
        let marked = style.mark(Length::new::<uom::si::length::micrometer>(um as f64));
        let expected_um = (lines * unit_um) as f64 / parts as f64;
        prop_assert!((marked.rounded.value * 1e6 - expected_um).abs() < 1e-6);
    }

    #[test]
    fn whatever_is_written_is_finite_text(value in any::<f64>()) {
        let length = Length::new::<uom::si::length::meter>(value);
        for system in [UnitSystem::Imperial, UnitSystem::Metric] {
            let style = Style::new(system);
            let marked = style.mark(length);
            prop_assert!(marked.rounded.value.is_finite() && marked.left_over.value.is_finite());
            for text in [
                marked.text,
                style.length(length),
                style.run(length),
                style.small(length),
                style.film(length),
                style.area(Area::new::<uom::si::area::square_meter>(value)),
                style.volume(Volume::new::<uom::si::volume::cubic_meter>(value)),
                style.mass(Mass::new::<uom::si::mass::kilogram>(value)),
                style.spread_rate(value),
                significant(value, 3),
            ] {
                prop_assert!(!text.contains("NaN") && !text.contains("inf"), "{}", text);
                prop_assert!(!text.starts_with("-0 ") && text != "-0", "{}", text);
            }
        }
    }

    #[test]
    fn plain_numbers_keep_their_value(value in -1e9f64..1e9, digits in 0usize..6) {
        let text = plain(value, digits);
        let back: f64 = text.parse().map_err(|_| TestCaseError::fail(text.clone()))?;
        let half = 0.5 / libm::pow(10.0, digits as f64);
        let slack = half * 1e-6 + 1e-15 * value.abs();
        prop_assert!((back - value).abs() <= half + slack, "{} {}", value, text);
    }

    #[test]
    fn significant_digits_keep_their_value(value in 1e-6f64..1e9, digits in 1usize..9) {
        let text = significant(value, digits);
        let back: f64 = text.parse().map_err(|_| TestCaseError::fail(text.clone()))?;
        let half = 0.5 / libm::pow(10.0, digits as f64 - 1.0);
        prop_assert!((back / value - 1.0).abs() <= half * (1.0 + 1e-6), "{} {}", value, text);
    }
}
