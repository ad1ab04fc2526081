//! A linear program of the cut planner: rows and sparse columns.

/// What a row asks of the sum of its entries.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(in crate::carpentry) enum Row {
    /// At least so much.
    AtLeast(f64),
    /// At most so much.
    AtMost(f64),
}

/// Columns and rows: least cost, all unknowns at least zero, right-hand sides at least zero.
#[derive(Clone, Debug, Default)]
pub(in crate::carpentry) struct Program {
    pub rows: Vec<Row>,
    costs: Vec<f64>,
    starts: Vec<usize>,
    entries: Vec<(u32, f64)>,
}

impl Program {
    pub(in crate::carpentry) fn new(rows: Vec<Row>) -> Self {
        Self { rows, costs: Vec::new(), starts: vec![0], entries: Vec::new() }
    }

    pub(in crate::carpentry) fn push(
        &mut self,
        cost: f64,
        entries: impl IntoIterator<Item = (usize, f64)>,
    ) {
        self.entries.extend(entries.into_iter().map(|(row, value)| (row as u32, value)));
        self.costs.push(cost);
        self.starts.push(self.entries.len());
    }

    pub(in crate::carpentry) fn columns(&self) -> usize {
        self.costs.len()
    }

    /// Entries of a column: row, value.
    pub(in crate::carpentry) fn column(&self, index: usize) -> &[(u32, f64)] {
        &self.entries[self.starts[index]..self.starts[index + 1]]
    }

    pub(in crate::carpentry) fn cost(&self, column: usize) -> f64 {
        self.costs[column]
    }

    /// Number of entries of all columns.
    pub(in crate::carpentry) fn entries(&self) -> usize {
        self.entries.len()
    }
}
