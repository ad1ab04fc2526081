//! The inverse of a basis of the cut planner's linear programs.

/// Gauss-Jordan with row pivoting; gives the steps it took, too.
pub(super) fn invert(mut matrix: Vec<f64>, size: usize) -> Option<(Vec<f64>, usize)> {
    let mut work = size * size;
    let mut inverse = vec![0.0; size * size];
    for row in 0..size {
        inverse[row * size + row] = 1.0;
    }
    for at in 0..size {
        let mut pivot_row = at;
        for row in at + 1..size {
            if matrix[row * size + at].abs() > matrix[pivot_row * size + at].abs() {
                pivot_row = row;
            }
        }
        let pivot = matrix[pivot_row * size + at];
        if pivot.abs() < 1e-10 {
            return None;
        }
        if pivot_row != at {
            for column in 0..size {
                matrix.swap(pivot_row * size + column, at * size + column);
                inverse.swap(pivot_row * size + column, at * size + column);
            }
        }
        for entry in &mut matrix[at * size..(at + 1) * size] {
            *entry /= pivot;
        }
        for entry in &mut inverse[at * size..(at + 1) * size] {
            *entry /= pivot;
        }
        let matrix_row = matrix[at * size..(at + 1) * size].to_vec();
        let inverse_row = inverse[at * size..(at + 1) * size].to_vec();
        for row in 0..size {
            let factor = matrix[row * size + at];
            if row == at || factor == 0.0 {
                continue;
            }
            work += 2 * size;
            let target = &mut matrix[row * size..(row + 1) * size];
            for (entry, &p) in target.iter_mut().zip(&matrix_row) {
                *entry -= factor * p;
            }
            let target = &mut inverse[row * size..(row + 1) * size];
            for (entry, &p) in target.iter_mut().zip(&inverse_row) {
                *entry -= factor * p;
            }
        }
    }
    Some((inverse, work))
}
