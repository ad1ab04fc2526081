//! The shape of a circuit: runs that fan out from the source, checked to be a tree.

use std::fmt;

use crate::words::{Arg, Msg, electrical as words};

/// Name of the root node.
pub const SOURCE: &str = "source";

/// One run as it was typed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Link<'a> {
    /// Name of the run, unique.
    pub id: &'a str,
    /// Node nearer to the source.
    pub from: &'a str,
    /// Node that the run feeds.
    pub to: &'a str,
}

impl Link<'_> {
    fn lacks_a_name(&self) -> bool {
        [self.id, self.from, self.to].contains(&"")
    }

    /// Whether this run, with all its names, has the name of another.
    fn is_same(&self, other: &Self) -> bool {
        self.id == other.id && !self.lacks_a_name()
    }
}

/// Runs that fan out from the source. Runs keep the places they were typed in; node 0 is the
/// source, the others are numbered as they first appear.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Tree {
    names: Vec<String>,
    ends: Vec<(usize, usize)>,
    outward: Vec<usize>,
}

/// What keeps runs and loads from being a tree. Runs and loads are named by their place, from 0.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum TreeFault {
    /// There is no run at all.
    NoRuns,
    /// No run starts at the node named `source`.
    NoSource,
    /// A run without a name, or with an end that has none.
    NameMissing {
        /// The run.
        run: usize,
    },
    /// Two runs of one name.
    SameName {
        /// The later run.
        run: usize,
        /// The earlier run.
        first: usize,
        /// Their name.
        id: String,
    },
    /// A run from a node to itself.
    ToItself {
        /// The run.
        run: usize,
        /// The node.
        node: String,
    },
    /// A run that leads back to the source.
    IntoSource {
        /// The run.
        run: usize,
    },
    /// A node with two feeds.
    TwoFeeds {
        /// The later run.
        run: usize,
        /// The earlier run.
        first: usize,
        /// The node.
        node: String,
    },
    /// A run that starts from a node that nothing feeds.
    Unfed {
        /// The run.
        run: usize,
        /// The node.
        node: String,
    },
    /// A run that is part of a ring, cut off from the source.
    Ring {
        /// The run.
        run: usize,
        /// The nodes of the ring, in the direction of the runs.
        nodes: Vec<String>,
    },
    /// A load at a node that no run reaches.
    LoadOnNoNode {
        /// The load.
        load: usize,
        /// The node it names.
        node: String,
        /// The nodes there are, at most eight.
        known: Vec<String>,
    },
}

impl Tree {
    /// Reads runs into a tree.
    ///
    /// # Errors
    /// All [`TreeFault`]s that were found, in the order of the runs.
    pub fn build(links: &[Link<'_>]) -> Result<Self, Vec<TreeFault>> {
        if links.is_empty() {
            return Err(vec![TreeFault::NoRuns]);
        }
        let mut faults = Vec::new();
        let mut names = vec![SOURCE.to_string()];
        let mut ends = Vec::new();
        let mut feeds: Vec<Option<usize>> = vec![None];
        for (run, link) in links.iter().enumerate() {
            let mut number = |name: &str| {
                place(&names, name).unwrap_or_else(|| {
                    names.push(name.to_string());
                    feeds.push(None);
                    names.len() - 1
                })
            };
            let (from, to) = (number(link.from), number(link.to));
            ends.push((from, to));
            if link.lacks_a_name() {
                faults.push(TreeFault::NameMissing { run });
            } else if let Some(first) = links[..run].iter().rposition(|other| other.is_same(link)) {
                faults.push(TreeFault::SameName { run, first, id: link.id.to_string() });
            }
            if from == to {
                faults.push(TreeFault::ToItself { run, node: link.to.to_string() });
            } else if to == 0 {
                faults.push(TreeFault::IntoSource { run });
            } else if let Some(first) = feeds[to] {
                faults.push(TreeFault::TwoFeeds { run, first, node: link.to.to_string() });
            } else {
                feeds[to] = Some(run);
            }
        }
        if !ends.iter().any(|(from, to)| *from == 0 && *to != 0) {
            faults.push(TreeFault::NoSource);
        }
        let tree = Self { outward: outward(&ends, &feeds), names, ends };
        if faults.is_empty() {
            faults = tree.cut_off(&feeds);
        }
        if faults.is_empty() { Ok(tree) } else { Err(faults) }
    }

    /// Number of nodes, the source among them.
    pub fn nodes(&self) -> usize {
        self.names.len()
    }

    /// Number of runs; one less than nodes.
    pub fn runs(&self) -> usize {
        self.ends.len()
    }

    /// Name of a node.
    pub fn name(&self, node: usize) -> &str {
        self.names.get(node).map_or("", String::as_str)
    }

    /// The two ends of a run: the node it starts from and the node it feeds.
    pub fn ends(&self, run: usize) -> (usize, usize) {
        self.ends.get(run).copied().unwrap_or((0, 0))
    }

    /// The runs from the source outwards: each after the run that feeds it.
    pub fn outward(&self) -> &[usize] {
        &self.outward
    }

    /// The run whose fuse protects each run: the nearest of those towards the source, itself among
    /// them, that is `fused` where it begins; none where that is the main fuse at the source.
    pub fn zones(&self, fused: &[bool]) -> Vec<Option<usize>> {
        let mut zones = vec![None; self.runs()];
        let mut behind = vec![None; self.nodes()];
        for &run in &self.outward {
            let (from, to) = self.ends[run];
            let is_fused = fused.get(run).copied().unwrap_or(false);
            zones[run] = if is_fused { Some(run) } else { behind[from] };
            behind[to] = zones[run];
        }
        zones
    }

    /// The node of that name.
    pub fn node(&self, name: &str) -> Option<usize> {
        place(&self.names, name)
    }

    /// The nodes of loads, in their order.
    ///
    /// # Errors
    /// [`TreeFault::LoadOnNoNode`] for each load whose node no run reaches.
    pub fn places(&self, at: &[&str]) -> Result<Vec<usize>, Vec<TreeFault>> {
        let mut places = Vec::new();
        let mut faults = Vec::new();
        for (load, name) in at.iter().enumerate() {
            match self.node(name) {
                Some(node) => places.push(node),
                None => faults.push(TreeFault::LoadOnNoNode {
                    load,
                    node: name.to_string(),
                    known: self.names.iter().take(8).cloned().collect(),
                }),
            }
        }
        if faults.is_empty() { Ok(places) } else { Err(faults) }
    }

    /// One fault for each part that the source does not reach: every node there has one feed or
    /// none, so going against the runs ends at an unfed node or goes round.
    fn cut_off(&self, feeds: &[Option<usize>]) -> Vec<TreeFault> {
        let mut reached = vec![false; self.nodes()];
        reached[0] = true;
        for &run in &self.outward {
            reached[self.ends[run].1] = true;
        }
        let mut faults = Vec::new();
        for start in 0..self.runs() {
            let mut node = self.ends[start].0;
            let mut way = Vec::new();
            while !reached[node] {
                reached[node] = true;
                way.push(node);
                match feeds[node] {
                    None => faults
                        .push(TreeFault::Unfed { run: start, node: self.name(node).to_string() }),
                    Some(feed) => {
                        node = self.ends[feed].0;
                        if let Some(ring) = way.iter().position(|n| *n == node) {
                            let nodes = way[ring..].iter().rev();
                            faults.push(TreeFault::Ring {
                                run: feed,
                                nodes: nodes.map(|n| self.name(*n).to_string()).collect(),
                            });
                        }
                    }
                }
            }
        }
        faults
    }
}

/// A node by its name. A circuit has some hundred nodes at most: looking through them is quick.
fn place(names: &[String], name: &str) -> Option<usize> {
    names.iter().position(|known| known == name)
}

/// The runs that the source reaches, each after its feed.
fn outward(ends: &[(usize, usize)], feeds: &[Option<usize>]) -> Vec<usize> {
    let mut leaving = vec![Vec::new(); feeds.len()];
    for (run, (from, to)) in ends.iter().enumerate() {
        if feeds[*to] == Some(run) {
            leaving[*from].push(run);
        }
    }
    let mut order = leaving[0].clone();
    let mut next = 0;
    while let Some(&run) = order.get(next) {
        order.extend_from_slice(&leaving[ends[run].1]);
        next += 1;
    }
    order
}

impl From<&TreeFault> for Msg {
    fn from(fault: &TreeFault) -> Self {
        let counted_from_1 = |run: &usize| run.saturating_add(1);
        match fault {
            TreeFault::NoRuns => words::NoRuns { source: SOURCE }.into(),
            TreeFault::NoSource => words::NoSource { source: SOURCE }.into(),
            TreeFault::NameMissing { .. } => words::NAME_MISSING.into(),
            TreeFault::SameName { id, first, .. } => {
                words::SameName { number: counted_from_1(first), name: id.as_str() }.into()
            }
            TreeFault::ToItself { node, .. } => words::ToItself { node: node.as_str() }.into(),
            TreeFault::IntoSource { .. } => words::INTO_SOURCE.into(),
            TreeFault::TwoFeeds { node, first, .. } => {
                words::TwoFeeds { node: node.as_str(), number: counted_from_1(first) }.into()
            }
            TreeFault::Unfed { node, .. } => words::Unfed { node: node.as_str() }.into(),
            TreeFault::Ring { nodes, .. } => words::Ring { nodes: nodes.join(" → ") }.into(),
            TreeFault::LoadOnNoNode { node, known, .. } => words::NoSuchNode {
                node: node.as_str(),
                nodes: Arg::each(known.iter().map(String::as_str)),
            }
            .into(),
        }
    }
}

/// In English, for tests.
impl fmt::Display for TreeFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        Msg::from(self).fmt(f)
    }
}

impl std::error::Error for TreeFault {}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn build(runs: &[(&'static str, &'static str)]) -> Result<Tree, Vec<TreeFault>> {
        const IDS: [&str; 6] = ["r1", "r2", "r3", "r4", "r5", "r6"];
        let links: Vec<Link> =
            runs.iter().zip(IDS).map(|((from, to), id)| Link { id, from, to }).collect();
        Tree::build(&links)
    }

    #[test]
    fn runs_in_any_order_become_a_tree() {
        let tree = build(&[("b", "c"), ("source", "a"), ("a", "b"), ("a", "d")]).unwrap();
        assert_eq!(tree.outward(), [1, 2, 3, 0]);
        assert_eq!((tree.nodes(), tree.runs()), (5, 4));
        let (from, to) = tree.ends(0);
        assert_eq!((tree.name(from), tree.name(to)), ("b", "c"));
        assert_eq!(tree.places(&["c", "source"]).unwrap(), [tree.node("c").unwrap(), 0]);
    }

    #[test]
    fn what_is_no_tree_is_named() {
        let faults = |runs| build(runs).unwrap_err();
        assert_eq!(faults(&[]), [TreeFault::NoRuns]);
        assert!(faults(&[("a", "b")]).contains(&TreeFault::NoSource));
        assert!(matches!(faults(&[("source", "")])[0], TreeFault::NameMissing { run: 0 }));
        assert!(matches!(
            faults(&[("source", "a"), ("a", "a")])[0],
            TreeFault::ToItself { run: 1, .. }
        ));
        assert!(matches!(
            faults(&[("source", "a"), ("a", "source")])[0],
            TreeFault::IntoSource { run: 1 }
        ));
        assert!(matches!(
            faults(&[("source", "a"), ("source", "b"), ("a", "b")])[0],
            TreeFault::TwoFeeds { run: 2, first: 1, .. }
        ));
        let unfed = faults(&[("source", "a"), ("x", "y"), ("y", "z")]);
        assert_eq!(unfed, [TreeFault::Unfed { run: 1, node: "x".into() }]);
        let ring = faults(&[("source", "a"), ("x", "y"), ("y", "z"), ("z", "x"), ("z", "w")]);
        assert!(
            matches!(&ring[..], [TreeFault::Ring { nodes, .. }] if nodes.len() == 3),
            "{ring:?}"
        );
        let same = Tree::build(&[
            Link { id: "r", from: "source", to: "a" },
            Link { id: "r", from: "a", to: "b" },
        ]);
        assert!(matches!(same.unwrap_err()[0], TreeFault::SameName { run: 1, first: 0, .. }));
        let tree = build(&[("source", "a")]).unwrap();
        let fault = &tree.places(&["a", "lamp"]).unwrap_err()[0];
        assert_eq!(fault.to_string(), "no run reaches “lamp”; the nodes are source and a");
    }

    proptest! {
        /// Any list of runs is a tree that reaches all its nodes, or has faults with words.
        #[test]
        fn any_runs(pairs in prop::collection::vec((0usize..6, 0usize..6), 0..8)) {
            const NODES: [&str; 6] = ["source", "a", "b", "c", "d", ""];
            let ids: Vec<String> = (0..pairs.len()).map(|i| format!("r{i}")).collect();
            let links: Vec<Link> = pairs.iter().zip(&ids)
                .map(|((from, to), id)| Link { id, from: NODES[*from], to: NODES[*to] })
                .collect();
            match Tree::build(&links) {
                Ok(tree) => {
                    prop_assert_eq!(tree.outward().len(), tree.runs());
                    prop_assert_eq!(tree.runs() + 1, tree.nodes());
                }
                Err(faults) => {
                    prop_assert!(!faults.is_empty());
                    prop_assert!(faults.iter().all(|fault| !fault.to_string().is_empty()));
                }
            }
        }
    }
}
