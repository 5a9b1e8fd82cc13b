//! Small linear least squares.

/// The unknowns that make the weighted sum of squares of `row · unknowns - value` least, by the normal equations and
/// elimination with pivots. For a handful of unknowns of like size; nothing when the rows do not determine them.
pub(crate) fn least_squares<const N: usize>(rows: impl IntoIterator<Item = ([f64; N], f64)>) -> Option<[f64; N]> {
    let mut normal = [[0.0; N]; N];
    let mut right = [0.0; N];
    for (row, value) in rows {
        for i in 0..N {
            right[i] += row[i] * value;
            for j in 0..N {
                normal[i][j] += row[i] * row[j];
            }
        }
    }
    let size = normal.iter().flatten().fold(0.0_f64, |size, x| size.max(x.abs()));
    for i in 0..N {
        let pivot = (i..N).max_by(|&a, &b| normal[a][i].abs().total_cmp(&normal[b][i].abs()))?;
        let pivot_size = normal[pivot][i].abs();
        if pivot_size.is_nan() || pivot_size <= 1e-13 * size {
            return None;
        }
        normal.swap(i, pivot);
        right.swap(i, pivot);
        for j in i + 1..N {
            let factor = normal[j][i] / normal[i][i];
            let above = normal[i];
            normal[j].iter_mut().zip(above).skip(i).for_each(|(x, above)| *x -= factor * above);
            right[j] -= factor * right[i];
        }
    }
    for i in (0..N).rev() {
        let known: f64 = (i + 1..N).map(|j| normal[i][j] * right[j]).sum();
        right[i] = (right[i] - known) / normal[i][i];
    }
    right.iter().all(|x| x.is_finite()).then_some(right)
}

#[cfg(test)]
mod tests {
    use super::least_squares;

    /// The line through (0, 6), (1, 0), (2, 0) is 5 - 3x (Strang, Introduction to Linear Algebra, section 4.3, from memory).
    #[test]
    fn the_textbook_line() {
        let [a, b] = least_squares([([1.0, 0.0], 6.0), ([1.0, 1.0], 0.0), ([1.0, 2.0], 0.0)]).expect("a line");
        assert!((a - 5.0).abs() < 1e-12 && (b + 3.0).abs() < 1e-12, "{a} {b}");
    }

    #[test]
    fn what_is_not_determined_is_nothing() {
        assert_eq!(least_squares([([1.0, 2.0], 3.0), ([2.0, 4.0], 6.0)]), None);
        assert_eq!(least_squares::<2>([]), None);
        assert_eq!(least_squares([([f64::NAN], 1.0)]), None);
    }
}
