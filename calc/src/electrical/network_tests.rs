//! Checks of the network solver.

use super::super::published_networks::{NETWORKS, Network, at};
use super::super::tree::Link;
use super::*;
use proptest::prelude::*;

fn solved(network: &Network, scale: f64) -> Result<(Tree, Solution), NetworkError> {
    let tree = network.tree();
    let run_ohm = network.run_ohm();
    let mut loads = network.placed(&tree);
    for placed in &mut loads {
        placed.load = match placed.load {
            Load::Power(w) => Load::Power(w * scale),
            Load::Current(a) => Load::Current(a * scale),
            Load::Resistance(ohm) => Load::Resistance(ohm / scale),
        };
    }
    let circuit = Circuit {
        tree: &tree,
        source_v: network.source_v,
        source_ohm: network.source_ohm,
        run_ohm: &run_ohm,
        loads: &loads,
    };
    let solution = solve(&circuit)?;
    Ok((tree, solution))
}

/// ngspice-39 operating points, six decimals.
#[test]
fn networks_as_a_circuit_simulator_solves_them() {
    for network in &NETWORKS {
        let (tree, solution) = solved(network, 1.0).expect(network.name);
        for (node, volts) in network.volts {
            let v = solution.node_v[tree.node(at(node)).unwrap()];
            assert!((v - volts).abs() < 1e-6, "{}: {node} {v}", network.name);
        }
        assert!((solution.source_a - network.source_a).abs() < 1e-6, "{}", network.name);
        assert!(solution.residual_v < 1e-9, "{}: {}", network.name, solution.residual_v);
        let balance = solution.source_w - solution.load_w - solution.loss_w;
        assert!(balance.abs() < 1e-9 * solution.source_w, "{}: {balance}", network.name);
    }
}

/// ngspice-39: power of the source and loss of the wires.
#[test]
fn powers_and_losses_as_the_simulator_has_them() {
    for (network, source_w, loss_w) in
        [(2, 152.368570, 6.181599), (3, 445.656528, 170.656527), (4, 927.944253, 35.262148)]
    {
        let (_, solution) = solved(&NETWORKS[network], 1.0).unwrap();
        assert!((solution.source_w - source_w).abs() < 2e-5, "{}", solution.source_w);
        assert!((solution.loss_w - loss_w).abs() < 2e-5, "{}", solution.loss_w);
    }
}

/// The chain of three constant powers carries 1.9050018 times (60, 60, 30) W and no more (root of
/// the singular Jacobian by scipy); this network is 110/60 times that.
#[test]
fn collapse_is_told_with_what_is_bearable() {
    let most = 1.905_001_8 / (110.0 / 60.0);
    let network = &NETWORKS[3];
    for (share, a, b, c) in
        [(0.9, 8.856592, 7.859834, 7.297369), (0.99, 7.924468, 6.593535, 5.817424)]
    {
        let (tree, solution) = solved(network, share * most).unwrap();
        for (node, volts) in [("A", a), ("B", b), ("C", c)] {
            // The published factor has eight digits, which near the limit is 1e-5 V.
            let v = solution.node_v[tree.node(node).unwrap()];
            assert!((v - volts).abs() < 1e-5, "{share}: {node} {v}");
        }
    }
    assert!(solved(network, most * (1.0 - 1e-7)).is_ok());
    let Err(NetworkError::Collapse { node, bearable }) = solved(network, 115.0 / 110.0) else {
        panic!("(115, 115, 57.5) W has no steady voltage");
    };
    assert_eq!(node, "C");
    assert!((bearable - most / (115.0 / 110.0)).abs() < 1e-7, "{bearable}");
}

#[test]
fn a_single_power_agrees_with_the_closed_form_up_to_its_limit() {
    let tree = Tree::build(&[Link { id: "r", from: "source", to: "a" }]).unwrap();
    for (watts, limit) in [(100.0, 1e-12), (119.9, 1e-9), (119.999_999, 1e-6), (120.0, 1e-5)] {
        let loads = [PlacedLoad { node: 1, load: Load::Power(watts), count: 1 }];
        let circuit = Circuit {
            tree: &tree,
            source_v: 12.0,
            source_ohm: 0.0,
            run_ohm: &[0.3],
            loads: &loads,
        };
        let exact = super::super::drop::operating_point(12.0, Load::Power(watts), 0.3).unwrap();
        let v = solve(&circuit).unwrap().node_v[1];
        assert!((v - exact.load_v).abs() < limit, "{watts}: {v}");
    }
    let loads = [PlacedLoad { node: 1, load: Load::Power(120.0001), count: 1 }];
    let circuit =
        Circuit { tree: &tree, source_v: 12.0, source_ohm: 0.0, run_ohm: &[0.3], loads: &loads };
    let error = solve(&circuit).unwrap_err();
    assert!(error.to_string().contains("99 % of these loads"), "{error}");
    let loads = [PlacedLoad { node: 1, load: Load::Current(41.0), count: 1 }];
    assert!(matches!(
        solve(&Circuit { loads: &loads, ..circuit }),
        Err(NetworkError::Collapse { .. })
    ));
}

#[test]
fn alike_loads_count_and_the_worst_node_has_a_load() {
    let links = [("r1", "source", "a"), ("r2", "a", "b"), ("r3", "b", "end")];
    let tree = Tree::build(&links.map(|(id, from, to)| Link { id, from, to })).unwrap();
    let one = [PlacedLoad { node: 2, load: Load::Current(0.5), count: 6 }];
    let circuit = Circuit {
        tree: &tree,
        source_v: 12.0,
        source_ohm: 0.0,
        run_ohm: &[0.1, 0.1, 0.1],
        loads: &one,
    };
    let solution = solve(&circuit).unwrap();
    assert!((solution.source_a - 3.0).abs() < 1e-12);
    assert_eq!(solution.load_a.len(), 1);
    assert_eq!(solution.worst_node(&one), 2);
    assert!((solution.drop_percent(2, 12.0) - 5.0).abs() < 1e-9);
    assert_eq!(solution.run_a[2], 0.0);
    assert_eq!(solve(&Circuit { run_ohm: &[0.1], ..circuit }), Err(NetworkError::Mismatch));
    let wrong = [PlacedLoad { node: 2, load: Load::Power(f64::NAN), count: 6 }];
    let error = solve(&Circuit { loads: &wrong, ..circuit }).unwrap_err();
    assert!(matches!(error, NetworkError::Range { part: Part::Load(0), .. }));
}

/// One run: the factor is what the closed form allows.
#[test]
fn all_runs_may_be_longer_by_the_headroom() {
    let tree = Tree::build(&[Link { id: "r", from: "source", to: "a" }]).unwrap();
    for load in [Load::Power(60.0), Load::Current(5.0), Load::Resistance(2.4)] {
        let loads = [PlacedLoad { node: 1, load, count: 1 }];
        let circuit = Circuit {
            tree: &tree,
            source_v: 12.8,
            source_ohm: 0.0,
            run_ohm: &[0.02],
            loads: &loads,
        };
        let ohm = super::super::drop::greatest_resistance_ohm(12.8, load, 3.0).unwrap().unwrap();
        let factor = length_headroom(&circuit, 3.0).unwrap().unwrap();
        assert!((factor - ohm / 0.02).abs() < 1e-6 * factor, "{load:?}: {factor}");
        assert!(length_headroom(&circuit, f64::NAN).is_err());
        assert_eq!(length_headroom(&Circuit { loads: &[], ..circuit }, 3.0), Ok(None));
    }
}

/// A random tree of up to eight runs: each run starts from an earlier node.
fn any_tree() -> impl Strategy<Value = (Tree, Vec<f64>)> {
    prop::collection::vec((any::<prop::sample::Index>(), 0.0..0.2f64), 1..9).prop_map(|runs| {
        let names: Vec<String> = (0..=runs.len())
            .map(|i| if i == 0 { "source".into() } else { format!("n{i}") })
            .collect();
        let links: Vec<Link> = runs
            .iter()
            .enumerate()
            .map(|(i, (from, _))| Link {
                id: &names[i + 1],
                from: &names[from.index(i + 1)],
                to: &names[i + 1],
            })
            .collect();
        (Tree::build(&links).unwrap(), runs.iter().map(|(_, ohm)| *ohm).collect())
    })
}

fn loads_of(
    tree: &Tree,
    picks: &[(prop::sample::Index, f64, u8)],
    linear: bool,
) -> Vec<PlacedLoad> {
    picks
        .iter()
        .map(|(node, size, kind)| PlacedLoad {
            node: node.index(tree.nodes()),
            load: match kind % if linear { 1 } else { 3 } {
                0 => Load::Current(*size),
                1 => Load::Power(12.0 * size),
                _ => Load::Resistance(12.0 / size),
            },
            count: 1,
        })
        .collect()
}

fn any_picks() -> impl Strategy<Value = Vec<(prop::sample::Index, f64, u8)>> {
    prop::collection::vec((any::<prop::sample::Index>(), 0.01..1.5f64, any::<u8>()), 1..6)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(128))]

    /// Kirchhoff's laws and the balance of energy, and no root below the stable one: Newton's
    /// answer is never under the sweep's.
    #[test]
    fn laws_hold((tree, run_ohm) in any_tree(), picks in any_picks(), source_ohm in 0.0..0.05f64) {
        let loads = loads_of(&tree, &picks, false);
        let circuit = Circuit { tree: &tree, source_v: 12.8, source_ohm, run_ohm: &run_ohm, loads: &loads };
        if let Ok(solution) = solve(&circuit) {
            prop_assert!(solution.residual_v < 1e-9);
            let balance = solution.source_w - solution.load_w - solution.loss_w;
            prop_assert!(balance.abs() < 1e-9 * solution.source_w.max(1.0));
            let total: f64 = solution.load_a.iter().sum();
            prop_assert!((total - solution.source_a).abs() < 1e-9);
            // Backward and forward sweep (Shirmohammadi et al. 1988), written on its own.
            let mut v = vec![12.8; tree.nodes()];
            for _ in 0..2000 {
                let mut a = vec![0.0; tree.nodes()];
                for load in &loads {
                    a[load.node] += match load.load {
                        Load::Power(w) => w / v[load.node],
                        Load::Current(i) => i,
                        Load::Resistance(ohm) => v[load.node] / ohm,
                    };
                }
                for &run in tree.outward().iter().rev() {
                    let (from, to) = tree.ends(run);
                    a[from] += a[to];
                }
                v[0] = 12.8 - source_ohm * a[0];
                for &run in tree.outward() {
                    let (from, to) = tree.ends(run);
                    v[to] = v[from] - run_ohm[run] * a[to];
                }
            }
            for (ours, sweep) in solution.node_v.iter().zip(&v) {
                prop_assert!((ours - sweep).abs() < 1e-6, "{} {}", ours, sweep);
            }
        }
    }

    /// Currents alone are linear: two sets of loads together drop what they drop apart.
    #[test]
    fn superposition((tree, run_ohm) in any_tree(), one in any_picks(), two in any_picks()) {
        let (one, two) = (loads_of(&tree, &one, true), loads_of(&tree, &two, true));
        let both: Vec<PlacedLoad> = one.iter().chain(&two).copied().collect();
        let drops = |loads: &[PlacedLoad]| {
            let circuit = Circuit { tree: &tree, source_v: 100.0, source_ohm: 0.0, run_ohm: &run_ohm, loads };
            solve(&circuit).map(|s| s.node_v.iter().map(|v| 100.0 - v).collect::<Vec<f64>>())
        };
        let (one, two, both) = (drops(&one).unwrap(), drops(&two).unwrap(), drops(&both).unwrap());
        for node in 0..tree.nodes() {
            prop_assert!((one[node] + two[node] - both[node]).abs() < 1e-9);
        }
    }

    /// A longer run lowers no voltage less than a shorter one, for loads that never shrink with
    /// voltage.
    #[test]
    fn monotone_in_length(
        (tree, run_ohm) in any_tree(), picks in any_picks(), which in any::<prop::sample::Index>(),
    ) {
        let loads: Vec<PlacedLoad> = loads_of(&tree, &picks, false)
            .into_iter()
            .filter(|load| !matches!(load.load, Load::Resistance(_)))
            .collect();
        let mut longer = run_ohm.clone();
        longer[which.index(run_ohm.len())] *= 1.2;
        let circuit = Circuit { tree: &tree, source_v: 12.8, source_ohm: 0.0, run_ohm: &run_ohm, loads: &loads };
        if let Ok(far) = solve(&Circuit { run_ohm: &longer, ..circuit }) {
            let near = solve(&circuit);
            prop_assert!(near.is_ok());
            for (near, far) in near.unwrap().node_v.iter().zip(&far.node_v) {
                prop_assert!(far <= &(near + 1e-9));
            }
        }
    }

    #[test]
    fn any_numbers_are_answered_or_refused(
        source_v in any::<f64>(), source_ohm in any::<f64>(), ohm in any::<f64>(),
        value in any::<f64>(), kind in 0u8..3, count in any::<u32>(),
    ) {
        let tree = Tree::build(&[Link { id: "r", from: "source", to: "a" }]).unwrap();
        let load = match kind {
            0 => Load::Power(value),
            1 => Load::Current(value),
            _ => Load::Resistance(value),
        };
        for (source_v, source_ohm) in [(source_v, source_ohm), (12.0, 0.0)] {
            for run_ohm in [[ohm], [0.1]] {
                let loads = [PlacedLoad { node: 1, load, count }];
                let circuit = Circuit { tree: &tree, source_v, source_ohm, run_ohm: &run_ohm, loads: &loads };
                if let Ok(s) = solve(&circuit) {
                    let numbers = [s.node_v[1], s.run_a[0], s.source_w, s.load_w, s.loss_w];
                    prop_assert!(numbers.iter().all(|n| n.is_finite()), "{:?}", s);
                }
            }
        }
    }
}
