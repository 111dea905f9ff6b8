//! Few equations, each with many unknowns: Gauss's elimination with rows exchanged.

/// A square matrix, factored.
#[derive(Debug, Clone)]
pub struct Factored {
    size: usize,
    /// Row by row; below the diagonal what each row took of the one above it.
    entries: Vec<f64>,
    /// The row that came to each place.
    rows: Vec<usize>,
}

/// Factors a matrix given row by row; none where it has no single answer.
pub fn factor(mut entries: Vec<f64>, size: usize) -> Option<Factored> {
    let mut rows: Vec<usize> = (0..size).collect();
    for pivot in 0..size {
        let at = |row: usize| row * size + pivot;
        let largest =
            (pivot..size).max_by(|&a, &b| entries[at(a)].abs().total_cmp(&entries[at(b)].abs()))?;
        let value = entries[at(largest)];
        if !(value.abs() > 1e-300 && value.is_finite()) {
            return None;
        }
        if largest != pivot {
            rows.swap(pivot, largest);
            for column in 0..size {
                entries.swap(pivot * size + column, largest * size + column);
            }
        }
        let (above, below) = entries.split_at_mut((pivot + 1) * size);
        let above = &above[pivot * size..];
        for row in below.chunks_exact_mut(size) {
            if row[pivot] == 0.0 {
                continue;
            }
            let factor = row[pivot] / above[pivot];
            row[pivot] = factor;
            for (entry, over) in row[pivot + 1..].iter_mut().zip(&above[pivot + 1..]) {
                *entry -= factor * over;
            }
        }
    }
    Some(Factored { size, entries, rows })
}

impl Factored {
    /// The logarithm of the determinant's size.
    pub fn ln_determinant(&self) -> f64 {
        let diagonal = self.entries.iter().step_by(self.size + 1);
        diagonal.map(|entry| super::ln(entry.abs())).sum()
    }

    /// The unknowns for this right side.
    pub fn solve(&self, right: &[f64]) -> Vec<f64> {
        let mut out: Vec<f64> = self.rows.iter().map(|&row| right[row]).collect();
        for (row, entries) in self.entries.chunks_exact(self.size.max(1)).enumerate() {
            let taken: f64 = entries.iter().zip(&out[..row]).map(|(a, b)| a * b).sum();
            out[row] -= taken;
        }
        for (row, entries) in self.entries.chunks_exact(self.size.max(1)).enumerate().rev() {
            let after = entries[row + 1..].iter().zip(&out[row + 1..]);
            let taken: f64 = after.map(|(a, b)| a * b).sum();
            out[row] = (out[row] - taken) / entries[row];
        }
        out
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The answer is known beforehand, and multiplied out gives the right side; the first pivot is zero,
    /// so that rows must be exchanged.
    #[test]
    fn the_solution_satisfies_the_equations() {
        let matrix = vec![0.0, 2.0, -1.0, 3.0, 0.5, 4.0, -2.0, 1.0, 0.0];
        let answer = [1.5, -2.0, 0.25];
        let row = |at: usize| (0..3).map(|i| matrix[3 * at + i] * answer[i]).sum::<f64>();
        let right: Vec<f64> = (0..3).map(row).collect();
        let found = factor(matrix.clone(), 3).expect("one answer").solve(&right);
        for (found, expected) in found.iter().zip(answer) {
            assert!((found - expected).abs() < 1e-13, "{found} for {expected}");
        }
        assert!(factor(vec![1.0, 2.0, 0.0, 0.0], 2).is_none());
    }
}
