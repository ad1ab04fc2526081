//! Five networks as solved by a general-purpose circuit simulator (ngspice-39, operating point,
//! relative tolerance 1e-10), to the six decimals it was read with. Test data only.

use super::drop::Load::{self, Current, Power, Resistance};
use super::network::PlacedLoad;
use super::tree::{Link, Tree};

/// A network as data: runs as (from, to, metres one way, ohm/m of one conductor).
pub struct Network {
    pub name: &'static str,
    pub source_v: f64,
    pub source_ohm: f64,
    pub runs: &'static [(&'static str, &'static str, f64, f64)],
    pub loads: &'static [(&'static str, Load)],
    pub volts: &'static [(&'static str, f64)],
    pub source_a: f64,
}

impl Network {
    pub fn tree(&self) -> Tree {
        let ids: Vec<String> = (0..self.runs.len()).map(|i| format!("r{i}")).collect();
        let links: Vec<Link> = self
            .runs
            .iter()
            .zip(&ids)
            .map(|((from, to, ..), id)| Link { id, from: at(from), to })
            .collect();
        Tree::build(&links).expect(self.name)
    }

    pub fn run_ohm(&self) -> Vec<f64> {
        self.runs.iter().map(|(_, _, metres, ohm_per_m)| 2.0 * metres * ohm_per_m).collect()
    }

    pub fn placed(&self, tree: &Tree) -> Vec<PlacedLoad> {
        let placed = self.loads.iter().map(|(node, load)| PlacedLoad {
            node: tree.node(at(node)).expect(node),
            load: *load,
            count: 1,
        });
        placed.collect()
    }
}

/// The simulator's terminal S is the root.
pub fn at(node: &'static str) -> &'static str {
    if node == "S" { "source" } else { node }
}

pub static NETWORKS: [Network; 5] = [
    Network {
        name: "one constant power",
        source_v: 12.8,
        source_ohm: 0.0,
        runs: &[("S", "A", 4.0, 0.00798)],
        loads: &[("A", Power(60.0))],
        volts: &[("A", 12.493406)],
        source_a: 4.802533,
    },
    Network {
        name: "chain of a current and a resistor",
        source_v: 12.0,
        source_ohm: 0.0,
        runs: &[("S", "A", 3.0, 0.00495), ("A", "B", 5.0, 0.0133)],
        loads: &[("A", Current(5.0)), ("B", Resistance(6.0))],
        volts: &[("A", 11.794384), ("B", 11.538611)],
        source_a: 6.923102,
    },
    Network {
        name: "feeder with four loads",
        source_v: 12.6,
        source_ohm: 0.0,
        runs: &[
            ("S", "D", 1.5, 0.00121),
            ("D", "F", 6.0, 0.00495),
            ("D", "L1", 5.0, 0.0133),
            ("L1", "L2", 3.0, 0.0133),
            ("D", "W", 7.0, 0.00798),
        ],
        loads: &[
            ("F", Power(45.0)),
            ("L1", Current(1.5)),
            ("L2", Current(1.0)),
            ("W", Resistance(2.0)),
        ],
        volts: &[
            ("D", 12.556103),
            ("F", 12.339482),
            ("L1", 12.223603),
            ("L2", 12.143803),
            ("W", 11.891826),
        ],
        source_a: 12.092744,
    },
    Network {
        name: "near collapse",
        source_v: 12.0,
        source_ohm: 0.0,
        runs: &[("S", "A", 10.0, 0.00495), ("A", "B", 5.0, 0.00495), ("B", "C", 5.0, 0.00798)],
        loads: &[("A", Power(110.0)), ("B", Power(110.0)), ("C", Power(55.0))],
        volts: &[("A", 8.323334), ("B", 7.139185), ("C", 6.459747)],
        source_a: 37.138044,
    },
    Network {
        name: "tree of twelve loads behind a source resistance",
        source_v: 13.2,
        source_ohm: 0.004,
        runs: &[
            ("S", "M", 0.5, 0.000386),
            ("M", "D", 2.0, 0.00121),
            ("M", "V", 1.0, 0.000386),
            ("D", "H1", 4.0, 0.00330),
            ("H1", "H2", 2.0, 0.00495),
            ("D", "K1", 3.0, 0.00798),
            ("K1", "K2", 2.0, 0.0133),
            ("K2", "K3", 1.5, 0.0195),
            ("D", "R1", 5.0, 0.00495),
            ("R1", "R2", 3.0, 0.00798),
            ("R2", "R3", 2.5, 0.0133),
            ("R1", "R4", 1.5, 0.0133),
            ("D", "P1", 6.0, 0.00798),
            ("P1", "P2", 1.0, 0.0195),
        ],
        loads: &[
            ("V", Power(600.0)),
            ("H1", Power(48.0)),
            ("H2", Current(3.0)),
            ("K1", Current(0.8)),
            ("K2", Current(0.8)),
            ("K3", Power(10.0)),
            ("R1", Power(60.0)),
            ("R2", Resistance(8.0)),
            ("R3", Current(1.2)),
            ("R4", Power(18.0)),
            ("P1", Resistance(2.4)),
            ("P2", Current(0.25)),
        ],
        volts: &[
            ("S", 12.918805),
            ("M", 12.891669),
            ("D", 12.777316),
            ("V", 12.855639),
            ("H1", 12.597525),
            ("H2", 12.538125),
            ("K1", 12.662498),
            ("K2", 12.577483),
            ("K3", 12.530798),
            ("R1", 12.328928),
            ("R2", 12.198464),
            ("R3", 12.118664),
            ("R4", 12.270397),
            ("P1", 12.264041),
            ("P2", 12.254291),
        ],
        source_a: 70.298807,
    },
];
