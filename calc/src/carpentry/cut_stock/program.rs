//! A linear program of the cut planner: rows and sparse columns.

/// What a row asks of the sum of its entries.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Row {
    /// At least so much.
    AtLeast(f64),
    /// At most so much.
    AtMost(f64),
}

/// Columns and rows: least cost, all unknowns at least zero, right-hand sides at least zero.
#[derive(Debug, Default)]
pub(super) struct Program {
    pub rows: Vec<Row>,
    costs: Vec<f64>,
    starts: Vec<usize>,
    entries: Vec<(u32, f64)>,
}

impl Program {
    pub(super) fn new(rows: Vec<Row>) -> Self {
        Self { rows, costs: Vec::new(), starts: vec![0], entries: Vec::new() }
    }

    pub(super) fn push(&mut self, cost: f64, entries: impl IntoIterator<Item = (usize, f64)>) {
        self.entries.extend(entries.into_iter().map(|(row, value)| (row as u32, value)));
        self.costs.push(cost);
        self.starts.push(self.entries.len());
    }

    pub(super) fn columns(&self) -> usize {
        self.costs.len()
    }

    /// Entries of a column: row, value.
    pub(super) fn column(&self, index: usize) -> &[(u32, f64)] {
        &self.entries[self.starts[index]..self.starts[index + 1]]
    }

    pub(super) fn cost(&self, column: usize) -> f64 {
        self.costs[column]
    }

    /// Number of entries of all columns.
    pub(super) fn entries(&self) -> usize {
        self.entries.len()
    }
}
