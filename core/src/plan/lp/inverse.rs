//! The inverse of the columns in the basis: as many rows as columns, each a row of figures.

#[derive(Clone)]
pub(super) struct Inverse(Vec<Vec<f64>>);

impl Inverse {
    pub(super) fn diagonal(signs: impl ExactSizeIterator<Item = f64>) -> Inverse {
        let size = signs.len();
        let row = |(nth, sign)| (0..size).map(|at| if at == nth { sign } else { 0.0 }).collect();
        Inverse(signs.enumerate().map(row).collect())
    }

    /// The inverse of these columns by Gauss and Jordan; `None` where they hang together.
    pub(super) fn of<'a>(columns: impl ExactSizeIterator<Item = &'a [(usize, f64)]>) -> Option<Inverse> {
        let mut all = Inverse::diagonal((0..columns.len()).map(|_| 1.0));
        let mut free: Vec<bool> = vec![true; columns.len()];
        let mut places = vec![];
        for column in columns {
            let change = all.times(column);
            let rows = change.iter().enumerate().zip(&free).filter(|(_, free)| **free).map(|(row, _)| row);
            let (row, pivot) = rows.max_by(|(_, a), (_, b)| a.abs().total_cmp(&b.abs()))?;
            if pivot.abs() < 1e-10 {
                return None;
            }
            all.pivot(row, &change);
            *free.get_mut(row)? = false;
            places.push(row);
        }
        let own = |row: &usize| all.0.get(*row).cloned();
        Some(Inverse(places.iter().map(own).collect::<Option<_>>()?))
    }

    /// The inverse times a column.
    pub(super) fn times(&self, cells: &[(usize, f64)]) -> Vec<f64> {
        let one = |row: &Vec<f64>| cells.iter().map(|(at, cell)| row.get(*at).unwrap_or(&0.0) * cell).sum();
        self.0.iter().map(one).collect()
    }

    pub(super) fn row(&self, row: usize) -> Option<&[f64]> {
        self.0.get(row).map(|row| &**row)
    }

    pub(super) fn right_of(&self, right: &[f64]) -> Vec<f64> {
        self.0.iter().map(|row| row.iter().zip(right).map(|(a, b)| a * b).sum()).collect()
    }

    /// A row of figures times the inverse.
    pub(super) fn left_of(&self, left: impl Iterator<Item = f64>) -> Vec<f64> {
        let mut sums = vec![0.0; self.0.len()];
        for (by, row) in left.zip(&self.0) {
            if by != 0.0 {
                sums.iter_mut().zip(row).for_each(|(sum, v)| *sum += by * v);
            }
        }
        sums
    }

    /// The column whose change is `change` takes the place `row` in the basis.
    pub(super) fn pivot(&mut self, row: usize, change: &[f64]) {
        let (Some(by), Some(own)) = (change.get(row), self.0.get_mut(row)) else { return };
        own.iter_mut().for_each(|v| *v /= by);
        let own = std::mem::take(own);
        for (other, by) in self.0.iter_mut().zip(change) {
            if *by != 0.0 {
                other.iter_mut().zip(&own).for_each(|(v, p)| *v -= by * p);
            }
        }
        if let Some(place) = self.0.get_mut(row) {
            *place = own;
        }
    }
}
