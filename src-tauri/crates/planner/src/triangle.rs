//! A sum of squares of linear terms in triangular form.

use crate::objective::WishRow;

/// Wishes are eight at most; the planner's own problems have fewer rows.
const ROWS: usize = 8;

/// `|G s + b|² = constant + Σ_k (Σ_{j≥k} rate[k][j] s_j - aim[k])²` with the collars in the order of `collars`.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Triangle {
    /// The collar of each level; what is fixed first stands last.
    pub collars: [usize; 4],
    pub rate: [[f64; 4]; 4],
    pub aim: [f64; 4],
    pub constant: f64,
    /// `|b|²`: the scale of rounding.
    pub size: f64,
}

impl Triangle {
    /// Takes the columns of these collars one by one, the one with the least that is new first (modified Gram-Schmidt
    /// with each column made orthogonal twice). So the collars that decide most stand last, where the search begins.
    pub(crate) fn of(wishes: &[WishRow], collars: &[usize]) -> Triangle {
        let mut columns = [[0.0; ROWS]; 4];
        let mut b = [0.0; ROWS];
        for (i, row) in wishes.iter().filter(|w| w.wish.weight > 0.0).enumerate() {
            let scale = row.wish.weight.sqrt() / row.wish.window;
            b[i] = row.error_now * scale;
            for (column, collar) in columns.iter_mut().zip(collars) {
                column[i] = row.per_step[*collar] * scale;
            }
        }
        let whole = columns.map(|column| dot(&column, &column));
        let mut t = Triangle { collars: [0; 4], rate: [[0.0; 4]; 4], aim: [0.0; 4], constant: 0.0, size: dot(&b, &b) };
        let mut rates_of = [[0.0; 4]; 4];
        let mut left: [usize; 4] = [0, 1, 2, 3];
        let mut axes = [[0.0; ROWS]; 4];
        for level in 0..collars.len() {
            let mut next = level;
            for other in level..collars.len() {
                if dot(&columns[left[other]], &columns[left[other]]) < dot(&columns[left[next]], &columns[left[next]]) {
                    next = other;
                }
            }
            left.swap(level, next);
            let taken = left[level];
            t.collars[level] = collars[taken];
            let length = dot(&columns[taken], &columns[taken]).sqrt();
            // What is left of a column that depends on those before it is rounding.
            if length * length > 1e-24 * whole[taken] {
                axes[level] = columns[taken].map(|v| v / length);
                rates_of[taken][level] = length;
            }
            for &other in &left[level + 1..collars.len()] {
                for _ in 0..2 {
                    let along = dot(&axes[level], &columns[other]);
                    rates_of[other][level] += along;
                    take(&mut columns[other], along, &axes[level]);
                }
            }
        }
        for (level, &column) in left[..collars.len()].iter().enumerate() {
            for (row, along) in t.rate.iter_mut().zip(rates_of[column]) {
                row[level] = along;
            }
        }
        let mut rest = b;
        for (aim, axis) in t.aim.iter_mut().zip(&axes) {
            let along = dot(axis, &rest);
            *aim = -along;
            take(&mut rest, along, axis);
        }
        t.constant = dot(&rest, &rest);
        t
    }
}

fn dot(a: &[f64; ROWS], b: &[f64; ROWS]) -> f64 {
    a.iter().zip(b).map(|(x, y)| x * y).sum()
}

fn take(from: &mut [f64; ROWS], times: f64, axis: &[f64; ROWS]) {
    for (v, a) in from.iter_mut().zip(axis) {
        *v -= times * a;
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::problem::Wish;

    /// The triangular form is the sum of squares that it was made of, also where columns depend on each other.
    #[test]
    fn the_triangle_is_the_sum_of_squares() {
        let row = |error_now: f64, per_step: [f64; 4], window: f64| WishRow {
            name: None,
            wish: Wish { target: 0.0, window, weight: 0.7 },
            error_now,
            per_step,
        };
        let wishes = [
            row(17.3, [1.0, -0.7, 0.31, 0.113], 0.3),
            row(-9.1, [0.2, 0.9, -0.53, 1.7], 1.0),
            row(3.0, [1.0, -0.7, 0.31, 0.113], 2.0),
        ];
        for collars in [&[0, 1, 2, 3][..], &[2, 0], &[3], &[]] {
            let t = Triangle::of(&wishes, collars);
            for steps in [[0, 0, 0, 0], [1, -4, 7, 2], [30, 29, -30, 11]] {
                let turned = |collar: usize| if collars.contains(&collar) { f64::from(steps[collar]) } else { 0.0 };
                let wanted: f64 = wishes
                    .iter()
                    .map(|w| {
                        let error = w.error_now + (0..4).map(|c| w.per_step[c] * turned(c)).sum::<f64>();
                        w.wish.weight * (error / w.wish.window).powi(2)
                    })
                    .sum();
                let terms: f64 = (0..collars.len())
                    .map(|k| {
                        let sum: f64 = (k..collars.len()).map(|j| t.rate[k][j] * turned(t.collars[j])).sum();
                        (sum - t.aim[k]).powi(2)
                    })
                    .sum();
                let off = (t.constant + terms - wanted).abs();
                assert!(off < 1e-10 * (1.0 + wanted), "{collars:?}, {steps:?}: {off} of {wanted}");
            }
        }
    }
}
