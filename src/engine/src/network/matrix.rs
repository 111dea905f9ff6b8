//! Symmetric equations, solved by `L D L^T`.

/// A symmetric positive definite matrix: of each row what lies left of the diagonal from the first
/// entry on, with the diagonal (the envelope, which elimination does not leave).
#[derive(Debug)]
pub(super) struct Matrix {
    /// The column of each row's first entry.
    first: Vec<usize>,
    /// Where each row ends in `entries`; its last entry is the diagonal's.
    end: Vec<usize>,
    entries: Vec<f64>,
}

impl Matrix {
    /// With room for an entry at each of these pairs of rows.
    pub(super) fn new(rows: usize, pairs: impl Iterator<Item = (usize, usize)>) -> Matrix {
        let mut first: Vec<usize> = (0..rows).collect();
        for (a, b) in pairs {
            let row = a.max(b);
            first[row] = first[row].min(a.min(b));
        }
        let mut total = 0;
        let mut end = Vec::with_capacity(rows);
        for (row, first) in first.iter().enumerate() {
            total += row - first + 1;
            end.push(total);
        }
        Matrix { first, end, entries: vec![0.0; total] }
    }

    pub(super) fn clear(&mut self) {
        self.entries.fill(0.0);
    }

    /// Adds to an entry left of the diagonal or on it, in either order of the pair.
    pub(super) fn add(&mut self, a: usize, b: usize, value: f64) {
        let (row, column) = (a.max(b), a.min(b));
        self.entries[self.end[row] - 1 - (row - column)] += value;
    }

    /// Replaces `right` by the solution, and the matrix by its factors.
    pub(super) fn solve(&mut self, right: &mut [f64]) {
        for row in 0..self.first.len() {
            let first = self.first[row];
            let (done, rest) = self.entries.split_at_mut(self.end[row] - 1 - (row - first));
            let (left, rest) = rest.split_at_mut(row - first);
            let whole = rest[0];
            for column in first..row {
                let start = self.first[column].max(first);
                let end = self.end[column] - 1;
                let above = &done[end - (column - start)..end];
                let mut value = left[column - first];
                for (a, b) in above.iter().zip(&left[start - first..]) {
                    value -= a * b;
                }
                left[column - first] = value;
            }
            // So far the row of `L D`; divided by `D` it is that of `L`.
            let mut pivot = whole;
            let mut answer = right[row];
            for (column, entry) in (first..row).zip(left) {
                let scaled = *entry * done[self.end[column] - 1];
                pivot -= *entry * scaled;
                answer -= scaled * right[column];
                *entry = scaled;
            }
            right[row] = answer;
            // Above zero but for rounding, which must not turn a step round. The diagonal keeps
            // one over the pivot.
            rest[0] = 1.0 / pivot.max(whole * 1e-15);
        }
        for (answer, end) in right.iter_mut().zip(&self.end) {
            *answer *= self.entries[end - 1];
        }
        for row in (0..self.first.len()).rev() {
            let (first, diagonal) = (self.first[row], self.end[row] - 1);
            let (above, rest) = right.split_at_mut(row);
            let entries = &self.entries[diagonal - (row - first)..diagonal];
            for (entry, above) in entries.iter().zip(&mut above[first..]) {
                *above -= entry * rest[0];
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A lattice of springs to the ground and to one another: the answer is known beforehand, and
    /// multiplied out gives the right side.
    #[test]
    fn the_solution_satisfies_the_equations() {
        let size = 12;
        let pairs: Vec<(usize, usize)> = (0..size)
            .flat_map(|a| [(a, (a + 1) % size), (a, (a * 5 + 3) % size)])
            .filter(|(a, b)| a != b)
            .collect();
        let mut matrix = Matrix::new(size, pairs.iter().copied());
        let answer: Vec<f64> = (0..size).map(|i| 1.5 - 0.3 * i as f64).collect();
        let mut right = vec![0.0; size];
        for (i, &(a, b)) in pairs.iter().enumerate() {
            let stiffness = 1.0 + i as f64;
            for (x, y) in [(a, b), (b, a)] {
                matrix.add(x, x, stiffness);
                right[x] += stiffness * (answer[x] - answer[y]);
            }
            matrix.add(a, b, -stiffness);
        }
        matrix.add(4, 4, 0.1);
        right[4] += 0.1 * answer[4];
        matrix.solve(&mut right);
        for (found, expected) in right.iter().zip(&answer) {
            assert!((found - expected).abs() < 1e-10, "{found} for {expected}");
        }
    }
}
