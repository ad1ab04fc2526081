//! Splices: what meets at each node of a circuit, and the connectors for it.

use super::ampacity::listed_below;
use super::conductor::Conductor;
use super::network::PlacedLoad;
use super::tree::Tree;

/// What meets at a node, for one polarity; the other polarity is the same once more.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Splice {
    /// Number of the node.
    pub node: usize,
    /// Conductors of one polarity that meet: the feed, the runs going on, the leads of the loads.
    pub ways: usize,
    /// The run that feeds it.
    pub feed: usize,
    /// The runs that go on from it.
    pub onward: Vec<usize>,
    /// Places of the loads that hang on it; a load that counts several takes as many ways.
    pub loads: Vec<usize>,
    /// Connectors for one polarity by their ways. More than one are linked, each link taking a way
    /// of both.
    pub connectors: Vec<usize>,
}

/// Ways of the connectors that are sold, least first.
///
/// # Source
/// [`super::sources::CONNECTOR_WAYS`].
pub const CONNECTOR_WAYS: [usize; 3] = [2, 3, 5];

/// The splices of a circuit in the order of its nodes: every node but the source where two or more
/// conductors of a polarity meet.
///
/// At the source the runs end at the fuse or a bus; [`Tree::ends`] tells which.
pub fn splices(tree: &Tree, loads: &[PlacedLoad]) -> Vec<Splice> {
    let mut at: Vec<Splice> = (0..tree.nodes())
        .map(|node| Splice {
            node,
            ways: 0,
            feed: 0,
            onward: Vec::new(),
            loads: Vec::new(),
            connectors: Vec::new(),
        })
        .collect();
    for run in 0..tree.runs() {
        let (from, to) = tree.ends(run);
        at[from].onward.push(run);
        at[from].ways += 1;
        at[to].feed = run;
        at[to].ways += 1;
    }
    for (place, load) in loads.iter().enumerate().filter(|(_, load)| load.count > 0) {
        if let Some(splice) = at.get_mut(load.node) {
            splice.loads.push(place);
            splice.ways = splice.ways.saturating_add(load.count as usize);
        }
    }
    at.retain(|splice| splice.node != 0 && splice.ways >= 2);
    for splice in &mut at {
        splice.connectors = connectors(splice.ways);
    }
    at
}

/// Connectors that join `ways` conductors: the next size up, or several of the largest linked.
///
/// Nothing for fewer than two conductors. More than ten thousand are taken as ten thousand.
///
/// # Source
/// [`super::sources::CONNECTOR_WAYS`].
pub fn connectors(ways: usize) -> Vec<usize> {
    const LARGEST: usize = CONNECTOR_WAYS[CONNECTOR_WAYS.len() - 1];
    if ways < 2 {
        return Vec::new();
    }
    // Each link costs two ways: of the largest, all but two are gained.
    let mut left = ways.min(10_000);
    let mut linked = Vec::new();
    while left > LARGEST {
        linked.push(LARGEST);
        left -= LARGEST - 2;
    }
    linked.extend(CONNECTOR_WAYS.iter().find(|size| **size >= left));
    linked
}

/// Whether a wire is too thick for splicing connectors, which end at 10 AWG or 6 mm²: it gets ring
/// lugs on a stud or a bus bar.
///
/// # Source
/// [`super::sources::CONNECTOR_SIZES`].
pub fn is_for_lugs(conductor: Conductor) -> bool {
    match conductor {
        Conductor::SquareMillimetre(size) => size.area_mm2 > 6.0,
        _ => listed_below(conductor)
            .is_some_and(|listed| !["18", "16", "14", "12", "10"].contains(&listed)),
    }
}

/// The stud for the lug of a wire.
///
/// # Source
/// [`super::sources::STUD_SIZES`].
pub fn stud(conductor: Conductor) -> &'static str {
    let is_thin = match conductor {
        Conductor::SquareMillimetre(size) => size.area_mm2 <= 16.0,
        _ => listed_below(conductor)
            .is_some_and(|l| ["18", "16", "14", "12", "10", "8", "6"].contains(&l)),
    };
    if is_thin { "M6 (1/4 in)" } else { "M8 (5/16 in)" }
}

#[cfg(test)]
mod tests {
    use super::super::drop::Load;
    use super::super::tree::Link;
    use super::*;

    #[test]
    fn connectors_end_where_lugs_begin() {
        for (text, lugs, size) in [
            ("10 AWG", false, "M6 (1/4 in)"),
            ("8 AWG", true, "M6 (1/4 in)"),
            ("4 AWG", true, "M8 (5/16 in)"),
            ("6 mm2", false, "M6 (1/4 in)"),
            ("10 mm2", true, "M6 (1/4 in)"),
            ("25 mm2", true, "M8 (5/16 in)"),
            ("0.0005 ohm/m", true, "M8 (5/16 in)"),
        ] {
            let conductor = text.parse().unwrap();
            assert_eq!((is_for_lugs(conductor), stud(conductor)), (lugs, size), "{text}");
        }
    }

    #[test]
    fn what_meets_at_each_node() {
        let links = [("r1", "source", "a"), ("r2", "a", "b"), ("r3", "a", "c"), ("r4", "c", "end")];
        let tree = Tree::build(&links.map(|(id, from, to)| Link { id, from, to })).unwrap();
        let lamp = |node, count| PlacedLoad { node, load: Load::Power(3.0), count };
        let loads = [lamp(1, 1), lamp(2, 1), lamp(3, 3)];
        let splices = splices(&tree, &loads);
        let ways: Vec<_> = splices.iter().map(|s| (tree.name(s.node), s.ways)).collect();
        // “end” has a feed and nothing else: no splice.
        assert_eq!(ways, [("a", 4), ("b", 2), ("c", 5)]);
        assert_eq!(
            (splices[0].feed, &splices[0].onward[..], &splices[0].loads[..]),
            (0, &[1, 2][..], &[0][..])
        );
        assert_eq!(splices[0].connectors, [5]);
    }

    #[test]
    fn next_size_up_and_linked_connectors() {
        assert!(connectors(0).is_empty() && connectors(1).is_empty());
        assert_eq!(connectors(2), [2]);
        assert_eq!(connectors(3), [3]);
        assert_eq!(connectors(4), [5]);
        assert_eq!(connectors(6), [5, 3]);
        assert_eq!(connectors(8), [5, 5]);
        for ways in 2..200 {
            let linked = connectors(ways);
            let places: usize = linked.iter().sum();
            let free = places - 2 * (linked.len() - 1);
            assert!(free >= ways && free <= ways + 1, "{ways}: {linked:?}");
        }
        assert!(connectors(usize::MAX).len() < 4000);
    }
}
