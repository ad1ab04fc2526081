//! What may be joined where: each course as a graph of its possible pieces, and the lengths that come up.

use super::{JointError, JointTask, SLACK_MM, nanometres};
use crate::carpentry::cut_stock::model::Bin;
use crate::sorting::{sort, sort_by};

/// An end of a piece.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Node {
    /// From the run's left end. [mm]
    pub at: f64,
    /// Whether two boards meet there.
    pub joint: bool,
}

/// A possible piece, or the way over an opening.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Arc {
    pub to: usize,
    /// The kind of its length; none over an opening.
    pub kind: Option<usize>,
}

/// All layouts of courses that are alike: paths from the first node to the last.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Way {
    pub nodes: Vec<Node>,
    pub arcs: Vec<Vec<Arc>>,
}

/// Joints of one course.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Layout {
    pub way: usize,
    pub joints_mm: Vec<f64>,
    /// Its pieces: kinds and counts, by rising kind.
    pub pieces: Vec<(usize, u32)>,
    path: Vec<usize>,
}

/// Nodes, and the arcs of each with the weight of its piece.
type Graph = (Vec<Node>, Vec<Vec<(usize, i64)>>);

/// All courses.
#[derive(Clone, Debug)]
pub(super) struct Field {
    pub ways: Vec<Way>,
    /// The way of each course.
    pub courses: Vec<usize>,
    /// Length of each kind of piece with its kerf, longest first. [nm]
    pub weights: Vec<i64>,
    pub stagger_mm: f64,
}

impl Field {
    pub(super) fn new(task: &JointTask, bins: &[Bin]) -> Result<Self, JointError> {
        let widest = bins.iter().filter(|bin| bin.limit != Some(0)).map(|bin| bin.capacity).max();
        let reach = Reach {
            kerf: nanometres(task.kerf_mm),
            widest: widest.unwrap_or(0),
            least_mm: task.least_piece_mm,
        };
        let mut different: Vec<&Vec<super::Span>> = Vec::new();
        let mut field = Self {
            ways: Vec::new(),
            courses: Vec::with_capacity(task.courses.len()),
            weights: Vec::new(),
            stagger_mm: task.stagger_mm,
        };
        let mut found: Vec<Graph> = Vec::new();
        for course in &task.courses {
            let known = different.iter().position(|other| *other == course);
            field.courses.push(match known {
                Some(way) => way,
                None => {
                    different.push(course);
                    found.push(reach.graph(course, task)?);
                    found.len() - 1
                }
            });
        }
        let arcs = found.iter().flat_map(|(_, arcs)| arcs.iter().flatten());
        let mut weights: Vec<i64> = arcs.map(|(_, weight)| *weight).filter(|w| *w > 0).collect();
        sort(&mut weights);
        weights.dedup();
        weights.reverse();
        for (nodes, arcs) in found {
            let kind = |weight: i64| weights.iter().position(|known| *known == weight);
            let arcs = arcs.into_iter().map(|from| {
                from.into_iter().map(|(to, weight)| Arc { to, kind: kind(weight) }).collect()
            });
            field.ways.push(Way { nodes, arcs: arcs.collect() });
        }
        field.weights = weights;
        Ok(field)
    }

    /// The layout of a path.
    pub(super) fn layout(&self, way: usize, path: Vec<usize>) -> Layout {
        let graph = &self.ways[way];
        let mut pieces: Vec<(usize, u32)> = Vec::new();
        for pair in path.windows(2) {
            let arc = graph.arcs[pair[0]].iter().find(|arc| arc.to == pair[1]);
            if let Some(kind) = arc.and_then(|arc| arc.kind) {
                match pieces.iter_mut().find(|(known, _)| *known == kind) {
                    Some((_, count)) => *count += 1,
                    None => pieces.push((kind, 1)),
                }
            }
        }
        sort(&mut pieces);
        let joints = path.iter().map(|node| graph.nodes[*node]).filter(|node| node.joint);
        Layout { way, joints_mm: joints.map(|node| node.at).collect(), pieces, path }
    }

    /// Whether two layouts may lie side by side.
    pub(super) fn are_apart(&self, a: &Layout, b: &Layout) -> bool {
        let mut pairs = a.joints_mm.iter().flat_map(|x| b.joints_mm.iter().map(move |y| x - y));
        pairs.all(|distance| self.is_apart(distance))
    }

    /// Whether joints at this distance keep the stagger. [mm]
    pub(super) fn is_apart(&self, distance_mm: f64) -> bool {
        distance_mm.abs() >= self.stagger_mm - SLACK_MM
    }

    /// Layouts of a way with so many joints, added to `found` up to `most` in all; false where there are more.
    pub(super) fn each(
        &self,
        way: usize,
        joints: usize,
        most: usize,
        found: &mut Vec<Layout>,
    ) -> bool {
        let graph = &self.ways[way];
        if graph.nodes.is_empty() {
            if joints == 0 {
                found.push(self.layout(way, Vec::new()));
            }
            return true;
        }
        let after = graph.joints_after();
        self.walk(way, joints, most, &after, &mut vec![0], found)
    }

    fn walk(
        &self,
        way: usize,
        left: usize,
        most: usize,
        after: &[(usize, usize)],
        path: &mut Vec<usize>,
        found: &mut Vec<Layout>,
    ) -> bool {
        let graph = &self.ways[way];
        let at = path.last().copied().unwrap_or(0);
        if at + 1 == graph.nodes.len() {
            if left > 0 {
                return true;
            }
            if found.len() >= most {
                return false;
            }
            found.push(self.layout(way, path.clone()));
            return true;
        }
        for arc in &graph.arcs[at] {
            let joint = usize::from(graph.nodes[arc.to].joint);
            let (fewest, most_joints) = after[arc.to];
            if left < joint + fewest || left > joint + most_joints {
                continue;
            }
            path.push(arc.to);
            let all = self.walk(way, left - joint, most, after, path, found);
            path.pop();
            if !all {
                return false;
            }
        }
        true
    }
}

impl Way {
    /// The fewest and the most joints still to come after each node.
    pub(super) fn joints_after(&self) -> Vec<(usize, usize)> {
        let mut after = vec![(0, 0); self.nodes.len()];
        for at in (0..self.nodes.len().saturating_sub(1)).rev() {
            let ways = self.arcs[at].iter().map(|arc| {
                let joint = usize::from(self.nodes[arc.to].joint);
                (after[arc.to].0 + joint, after[arc.to].1 + joint)
            });
            let both = ways.reduce(|a, b| (a.0.min(b.0), a.1.max(b.1)));
            after[at] = both.unwrap_or((0, 0));
        }
        after
    }

    /// The fewest joints and the most.
    pub(super) fn joints(&self) -> (usize, usize) {
        self.joints_after().first().copied().unwrap_or((0, 0))
    }
}

/// How long a piece may be.
struct Reach {
    kerf: i64,
    widest: i64,
    least_mm: f64,
}

impl Reach {
    /// Nodes and arcs of a course; each arc with the weight of its piece, zero over an opening.
    fn graph(&self, spans: &[super::Span], task: &JointTask) -> Result<Graph, JointError> {
        self.some(spans, self.least_mm).ok_or_else(|| {
            if self.some(spans, 0.0).is_some() {
                JointError::ShortPiece { least_mm: task.least_piece_mm }
            } else {
                JointError::Unreachable { longest_mm: (self.widest - self.kerf) as f64 / 1e6 }
            }
        })
    }

    fn some(&self, spans: &[super::Span], least_mm: f64) -> Option<Graph> {
        let mut nodes: Vec<Node> = Vec::new();
        let mut arcs: Vec<Vec<(usize, i64)>> = Vec::new();
        for span in spans {
            if let Some(last) = arcs.last_mut() {
                last.push((nodes.len(), 0));
            }
            let first = nodes.len();
            nodes.push(Node { at: span.from_mm, joint: false });
            let mut joints: Vec<f64> = span
                .joints_mm
                .iter()
                .copied()
                .filter(|at| *at > span.from_mm + SLACK_MM && *at < span.to_mm - SLACK_MM)
                .collect();
            sort_by(&mut joints, f64::total_cmp);
            joints.dedup_by(|a, b| (*a - *b).abs() < SLACK_MM);
            nodes.extend(joints.into_iter().map(|at| Node { at, joint: true }));
            nodes.push(Node { at: span.to_mm, joint: false });
            for from in first..nodes.len() {
                let mut all = Vec::new();
                for to in from + 1..nodes.len() {
                    let length = nodes[to].at - nodes[from].at;
                    let weight = nanometres(length) + self.kerf;
                    let short =
                        (nodes[from].joint || nodes[to].joint) && length < least_mm - SLACK_MM;
                    if weight <= self.widest && !short {
                        all.push((to, weight));
                    }
                }
                arcs.push(all);
            }
        }
        prune(&mut arcs);
        let whole = arcs.len() < 2 || !arcs[0].is_empty();
        whole.then_some((nodes, arcs))
    }
}

/// Leaves only what lies on a path from the first node to the last.
fn prune(arcs: &mut [Vec<(usize, i64)>]) {
    let Some(last) = arcs.len().checked_sub(1) else { return };
    let mut leads = vec![false; arcs.len()];
    leads[last] = true;
    for at in (0..last).rev() {
        arcs[at].retain(|(to, _)| leads[*to]);
        leads[at] = !arcs[at].is_empty();
    }
    let mut reached = vec![false; arcs.len()];
    reached[0] = true;
    for at in 0..arcs.len() {
        if !reached[at] {
            arcs[at].clear();
        }
        for (to, _) in &arcs[at] {
            reached[*to] = true;
        }
    }
}
