//! Checks of the choice of conductors, by trying every mix.

use super::super::ampacity::BOAT_CABLE;
use super::super::drop::Load;
use super::super::tree::Link;
use super::*;
use proptest::prelude::*;
use proptest::sample::Index;

/// So that 18 AWG may be taken.
const IN_JACKET: Conditions = Conditions { in_jacket: true, ..BOAT_CABLE };

fn sizes(texts: &[&str]) -> Vec<Conductor> {
    texts.iter().map(|text| text.parse().unwrap()).collect()
}

fn tree(parents: &[usize]) -> Tree {
    let name = |node: usize| if node == 0 { "source".to_string() } else { format!("n{node}") };
    let names: Vec<String> = (0..=parents.len()).map(name).collect();
    let links: Vec<Link> = parents
        .iter()
        .enumerate()
        .map(|(i, from)| Link { id: &names[i + 1], from: &names[*from], to: &names[i + 1] })
        .collect();
    Tree::build(&links).unwrap()
}

/// Every mix, each solved: the least copper, or nothing.
fn exhaustive(open: &OpenCircuit<'_>) -> Option<f64> {
    let problem = Problem::new(open).unwrap();
    let mut pick = vec![0; open.tree.runs()];
    let mut least: Option<f64> = None;
    loop {
        if problem.fits(&pick) {
            let copper = problem.copper_cm3(&pick);
            least = Some(least.map_or(copper, |l: f64| l.min(copper)));
        }
        let mut run = 0;
        loop {
            if run == pick.len() {
                return least;
            }
            pick[run] += 1;
            if pick[run] < problem.choices[run].len() {
                break;
            }
            pick[run] = 0;
            run += 1;
        }
    }
}

fn open<'a>(
    tree: &'a Tree,
    length_m: &'a [f64],
    conductor: &'a [Option<Conductor>],
    loads: &'a [PlacedLoad],
    choices: &'a [Conductor],
) -> OpenCircuit<'a> {
    OpenCircuit {
        tree,
        source_v: 12.0,
        low_v: None,
        temperature_c: 30.0,
        drop_limit_percent: 3.0,
        length_m,
        conductor,
        loads,
        choices,
        conditions: IN_JACKET,
        continuous: true,
        fused: &[],
    }
}

/// A row of six lamps of 3 W, by hand: what each size loses with one spool, and the mix.
#[test]
fn a_row_of_lamps() {
    let tree = tree(&[0, 1, 2, 3, 4, 5]);
    let length_m = [3.0, 1.0, 1.0, 1.0, 1.0, 1.0];
    let loads: Vec<PlacedLoad> =
        (1..=6).map(|node| PlacedLoad { node, load: Load::Power(9.0), count: 1 }).collect();
    let choices = sizes(&["18 AWG", "16 AWG", "14 AWG", "12 AWG", "10 AWG"]);
    let conductor = [None; 6];
    let open = open(&tree, &length_m, &conductor, &loads, &choices);
    let found = choose(&open, USUAL_EFFORT).unwrap();
    assert!(found.proved);
    assert_eq!(found.bound_cm3, found.mix.copper_cm3);
    let single = found.single.as_ref().unwrap();
    assert_eq!(Some(found.mix.copper_cm3), exhaustive(&open));
    assert!(found.mix.copper_cm3 < single.copper_cm3);
    for wiring in [single, &found.mix] {
        let worst = wiring.solution.worst_node(&loads);
        assert!(wiring.solution.drop_percent(worst, 12.0) <= 3.0 + 1e-9);
    }
    // One size thinner on the single spool loses too much.
    let thinner = choices.iter().position(|c| *c == single.conductor[0]).unwrap() - 1;
    let problem = Problem::new(&open).unwrap();
    assert!(!problem.fits(&problem.all(thinner)));
}

#[test]
fn ampacity_and_fuse_decide_on_short_runs() {
    let tree = tree(&[0, 1]);
    let loads = [
        PlacedLoad { node: 1, load: Load::Current(30.0), count: 1 },
        PlacedLoad { node: 2, load: Load::Current(1.0), count: 1 },
    ];
    let choices: Vec<Conductor> = Conductor::awg().collect();
    let open = open(&tree, &[0.1, 0.1], &[None; 2], &loads, &choices);
    let found = choose(&open, USUAL_EFFORT).unwrap();
    // 31 A continuous: a 40 A fuse, and 8 AWG is the least that may stand behind it, since 10 AWG
    // stands no more than 30 A; the branch of 1 A too.
    assert_eq!(found.mix.fuse_a, 40.0);
    assert_eq!(found.mix.conductor, sizes(&["8 AWG", "8 AWG"]));
    assert!(found.proved);
    // With a fuse of its own the branch is as thin as it likes.
    let branched = OpenCircuit { fused: &[false, true], ..open };
    let found = choose(&branched, USUAL_EFFORT).unwrap();
    assert_eq!(found.mix.conductor, sizes(&["8 AWG", "18 AWG"]));
    assert!(found.proved);
    let bundled = OpenCircuit { conditions: Conditions { bundled: 8, ..IN_JACKET }, ..open };
    let found = choose(&bundled, USUAL_EFFORT).unwrap();
    assert_eq!(found.mix.conductor, sizes(&["8 AWG", "8 AWG"]));
    // 360 W are 30 A at 12 V, 45 A and a fuse of 60 A at 8 V.
    let loads = [PlacedLoad { node: 2, load: Load::Power(360.0), count: 1 }];
    let low = OpenCircuit { low_v: Some(8.0), loads: &loads, ..open };
    let found = choose(&low, USUAL_EFFORT).unwrap();
    assert_eq!((found.mix.fuse_a, found.proved), (60.0, true));
    assert_eq!(found.mix.conductor, sizes(&["8 AWG", "8 AWG"]));
}

#[test]
fn given_runs_are_kept() {
    let tree = tree(&[0, 1]);
    let loads = [PlacedLoad { node: 2, load: Load::Power(36.0), count: 1 }];
    let given = sizes(&["10 AWG"])[0];
    let choices: Vec<Conductor> = Conductor::metric().collect();
    let conductor = [Some(given), None];
    let open = open(&tree, &[4.0, 2.0], &conductor, &loads, &choices);
    let found = choose(&open, USUAL_EFFORT).unwrap();
    assert_eq!(found.mix.conductor[0], given);
    assert_eq!(Some(found.mix.copper_cm3), exhaustive(&open));
    assert_eq!(found.single.unwrap().conductor, found.mix.conductor);
}

#[test]
fn what_cannot_be_is_told() {
    let tree = tree(&[0, 1]);
    let loads = [PlacedLoad { node: 2, load: Load::Power(300.0), count: 1 }];
    let few = sizes(&["18 AWG", "16 AWG"]);
    let far = open(&tree, &[30.0, 2.0], &[None; 2], &loads, &few);
    let error = choose(&far, USUAL_EFFORT).unwrap_err();
    assert!(matches!(error, OpenError::DropTooGreat { worst: None, .. }), "{error}");
    let near = open(&tree, &[1.0, 1.0], &[None; 2], &loads, &few);
    let error = choose(&near, USUAL_EFFORT).unwrap_err();
    assert!(error.to_string().contains("“n2” loses"), "{error}");
    let short = open(&tree, &[0.01, 0.01], &[None; 2], &loads, &few);
    let error = choose(&short, USUAL_EFFORT).unwrap_err();
    assert!(matches!(error, OpenError::AmpacityTooSmall { .. }), "{error}");
    let none = sizes(&["0.0135 ohm/m"]);
    let of = |choices, conductor| choose(&open(&tree, &[1.0, 1.0], conductor, &loads, choices), 99);
    assert_eq!(of(&none, &[None; 2]), Err(OpenError::NoChoices));
    assert_eq!(of(&few, &[Some(few[0]); 2]), Err(OpenError::NothingOpen));
}

type Parts = (Vec<(Index, f64)>, Vec<(Index, f64, u8)>, f64, bool);

fn any_parts(runs: std::ops::Range<usize>) -> impl Strategy<Value = Parts> {
    let tree = prop::collection::vec((any::<Index>(), 0.05..4.0f64), runs);
    let loads = prop::collection::vec((any::<Index>(), 0.1..6.0f64, any::<u8>()), 1..7);
    (tree, loads, 1.0..10.0f64, any::<bool>())
}

fn loads_of(tree: &Tree, picks: &[(Index, f64, u8)]) -> Vec<PlacedLoad> {
    picks
        .iter()
        .map(|(node, amperes, kind)| PlacedLoad {
            node: node.index(tree.runs()) + 1,
            load: match kind % 3 {
                0 => Load::Current(*amperes),
                1 => Load::Power(12.0 * amperes),
                _ => Load::Resistance(12.0 / amperes),
            },
            count: 1,
        })
        .collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(100))]

    /// The mix against every mix of four sizes on up to five runs, loads of all kinds, currents
    /// from well below the ampacity of the thinnest size (20 A) to above it.
    #[test]
    fn mix_is_the_best_of_all(
        (runs, picks, limit, continuous) in any_parts(1..6), blocks in 0u8..32,
        low_v in prop::option::of(6.0..12.0f64),
    ) {
        let parents: Vec<usize> =
            runs.iter().enumerate().map(|(i, (from, _))| from.index(i + 1)).collect();
        let length_m: Vec<f64> = runs.iter().map(|(_, m)| *m).collect();
        let tree = tree(&parents);
        let loads = loads_of(&tree, &picks);
        let choices = sizes(&["18 AWG", "14 AWG", "10 AWG", "6 AWG"]);
        let conductor = vec![None; tree.runs()];
        let fused: Vec<bool> = (0..tree.runs()).map(|run| blocks >> run & 1 == 1).collect();
        let open = OpenCircuit {
            drop_limit_percent: limit,
            continuous,
            low_v: low_v.filter(|low_v| *low_v <= 12.0),
            fused: &fused,
            ..open(&tree, &length_m, &conductor, &loads, &choices)
        };
        let best = exhaustive(&open);
        match choose(&open, 1_000_000) {
            Ok(found) => {
                prop_assert!(found.proved);
                let best = best.unwrap();
                prop_assert!((found.mix.copper_cm3 - best).abs() < 1e-9 * best, "{} {}", found.mix.copper_cm3, best);
            }
            Err(error) => prop_assert!(best.is_none(), "{} though {:?}", error, best),
        }
        // With hardly any effort, what is said is still true.
        if let Ok(found) = choose(&open, 3) {
            let best = best.unwrap();
            prop_assert!(found.bound_cm3 <= best * (1.0 + 1e-9));
            prop_assert!(found.mix.copper_cm3 >= best * (1.0 - 1e-9));
            prop_assert!(!found.proved || found.mix.copper_cm3 <= best * (1.0 + 1e-9));
        }
    }
}

/// Forty runs with ten sizes, in two and four rows, are answered and proved within the usual
/// effort; for constant currents and for constant powers.
#[test]
fn forty_runs_are_proved() {
    let choices: Vec<Conductor> = Conductor::awg().take(10).collect();
    for (rows, load) in [(2, Load::Current(0.3)), (2, Load::Power(3.6)), (4, Load::Power(3.6))] {
        let parents: Vec<usize> =
            (0..40).map(|run: usize| (run + 1).saturating_sub(rows)).collect();
        let length_m: Vec<f64> = (0..40).map(|run| 0.5 + 0.1 * f64::from(run % 7)).collect();
        let tree = tree(&parents);
        let loads: Vec<PlacedLoad> =
            (1..=40).map(|node| PlacedLoad { node, load, count: 1 }).collect();
        let conductor = [None; 40];
        let open = OpenCircuit {
            drop_limit_percent: 5.0,
            ..open(&tree, &length_m, &conductor, &loads, &choices)
        };
        let found = choose(&open, USUAL_EFFORT).unwrap();
        assert!(found.proved, "{load:?} in {rows} rows");
        let single = found.single.unwrap();
        assert!(found.mix.copper_cm3 <= single.copper_cm3);
        // No run can be one size thinner: the mix is at least a local optimum.
        let problem = Problem::new(&open).unwrap();
        let size = |c: &Conductor| problem.sizes.iter().position(|(s, _)| s == c).unwrap();
        let pick: Vec<usize> = found.mix.conductor.iter().map(size).collect();
        assert!(problem.fits(&pick));
        for run in 0..40 {
            let mut thinner = pick.clone();
            if pick[run] > 0 {
                thinner[run] -= 1;
                assert!(!problem.fits(&thinner), "run {run}");
            }
        }
    }
}
