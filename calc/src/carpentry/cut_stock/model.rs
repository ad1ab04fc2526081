//! The cut planner's own picture of the task: whole numbers only, kerf folded into pieces and stock.

/// Work left to spend, in steps of about one floating-point operation each: a limit without a clock.
#[derive(Debug)]
pub(in crate::carpentry) struct Effort {
    left: u64,
}

impl Effort {
    pub(in crate::carpentry) fn new(steps: u64) -> Self {
        Self { left: steps }
    }

    /// Takes `steps` off; false once nothing is left.
    pub(in crate::carpentry) fn spend(&mut self, steps: usize) -> bool {
        self.left = self.left.saturating_sub(steps as u64);
        self.left > 0
    }

    pub(in crate::carpentry) fn left(&self) -> usize {
        self.left as usize
    }

    pub(in crate::carpentry) fn is_spent(&self) -> bool {
        self.left == 0
    }

    /// A part of what is left, to be handed to one stage; what it leaves is given back by `give_back`.
    pub(in crate::carpentry) fn part(&mut self, share: f64) -> Effort {
        let steps = ((self.left as f64) * share) as u64;
        self.left -= steps.min(self.left);
        Effort { left: steps }
    }

    /// So many steps of what is left.
    pub(in crate::carpentry) fn steps(&mut self, steps: u64) -> Effort {
        let steps = steps.min(self.left);
        self.left -= steps;
        Effort { left: steps }
    }

    pub(in crate::carpentry) fn give_back(&mut self, part: Effort) {
        self.left += part.left;
    }
}

/// One kind of stock as the planner sees it: bought and on-hand lengths are two bins.
#[derive(Clone, Debug, PartialEq)]
pub(in crate::carpentry) struct Bin {
    /// Room for pieces that each bring one kerf along. [nm]
    pub capacity: i64,
    /// Whole stock length. [nm]
    pub length: i64,
    /// Price of one, in whole steps of the price grid.
    pub cost: i64,
    /// The most that can be used.
    pub limit: Option<u32>,
}

/// What is to be cut from what.
#[derive(Clone, Debug)]
pub(in crate::carpentry) struct Model {
    /// Length of each kind of piece with its kerf, longest first. [nm]
    pub weights: Vec<i64>,
    /// How many of each kind.
    pub demand: Vec<u32>,
    pub bins: Vec<Bin>,
}

/// One way to cut one bin: kinds of piece with their counts, by rising kind.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(in crate::carpentry) struct Cut {
    pub bin: usize,
    pub counts: Vec<(usize, u32)>,
}

/// Cuts with how often each is made.
pub(in crate::carpentry) type Packing = Vec<(Cut, u32)>;

impl Model {
    /// Cost of a packing in steps of the price grid.
    pub(in crate::carpentry) fn cost(&self, packing: &Packing) -> i64 {
        packing.iter().map(|(cut, times)| self.bins[cut.bin].cost * i64::from(*times)).sum()
    }

    /// Stock length used by a packing. [nm]
    pub(in crate::carpentry) fn length(&self, packing: &Packing) -> i64 {
        packing.iter().map(|(cut, times)| self.bins[cut.bin].length * i64::from(*times)).sum()
    }

    /// The most of bin `bin` that any sensible plan uses: never more than one for each piece.
    pub(in crate::carpentry) fn most(&self, bin: usize) -> u32 {
        let pieces = self.demand.iter().fold(0u32, |sum, &count| sum.saturating_add(count));
        self.bins[bin].limit.map_or(pieces, |limit| limit.min(pieces))
    }

    /// What is left to do after `done`, and the kinds of piece that the rest's kinds stand for.
    pub(in crate::carpentry) fn residual(
        &self,
        demand: &[u32],
        limits: &[Option<u32>],
    ) -> (Model, Vec<usize>) {
        let kinds: Vec<usize> = (0..demand.len()).filter(|&kind| demand[kind] > 0).collect();
        let bins = self.bins.iter().zip(limits);
        let model = Model {
            weights: kinds.iter().map(|&kind| self.weights[kind]).collect(),
            demand: kinds.iter().map(|&kind| demand[kind]).collect(),
            bins: bins.map(|(bin, &limit)| Bin { limit, ..bin.clone() }).collect(),
        };
        (model, kinds)
    }
}

/// Takes a cut off the demand as far as it is still wanted; gives what was really cut.
pub(in crate::carpentry) fn take(demand: &mut [u32], cut: &Cut) -> Cut {
    let mut counts = Vec::with_capacity(cut.counts.len());
    for &(kind, count) in &cut.counts {
        let taken = count.min(demand[kind]);
        if taken > 0 {
            demand[kind] -= taken;
            counts.push((kind, taken));
        }
    }
    Cut { bin: cut.bin, counts }
}

/// Takes one of a bin off its limit.
pub(in crate::carpentry) fn use_one(limits: &mut [Option<u32>], bin: usize) {
    if let Some(limit) = limits[bin].as_mut() {
        *limit = limit.saturating_sub(1);
    }
}

/// Adds a cut to a packing, joined with an equal one.
pub(in crate::carpentry) fn add(packing: &mut Packing, cut: Cut, times: u32) {
    match packing.iter_mut().find(|(known, _)| *known == cut) {
        Some((_, count)) => *count += times,
        None => packing.push((cut, times)),
    }
}
