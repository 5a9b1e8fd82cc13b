//! The two one-dimensional searches this crate needs.

/// Steps that shrink any bracket to its last digits.
const STEPS: usize = 200;
/// An extremum shows only in half of the digits of its function.
const FLAT: f64 = 1e-9;

/// Where `f` crosses zero between `low` and `high`, given that its sign differs there: the
/// Illinois form of regula falsi (M. Dowell, P. Jarratt, BIT 11 (1971) 168-174), which keeps the
/// bracket.
pub(crate) fn crossing(mut low: f64, mut high: f64, f: impl Fn(f64) -> f64) -> f64 {
    let (mut at_low, mut at_high) = (f(low), f(high));
    for step in 0..STEPS {
        if (high - low).abs() <= 4.0 * f64::EPSILON * high.abs() || at_low == 0.0 {
            return low;
        }
        if at_high == 0.0 {
            return high;
        }
        // Every third step halves, so that a steep end cannot stall it.
        let share = if step % 3 == 2 { 0.5 } else { (at_low / (at_low - at_high)).clamp(1e-3, 1.0 - 1e-3) };
        let middle = low + share * (high - low);
        let at_middle = f(middle);
        if (at_middle > 0.0) == (at_low > 0.0) {
            (low, at_low) = (middle, at_middle);
            at_high *= 0.5;
        } else {
            (high, at_high) = (middle, at_middle);
            at_low *= 0.5;
        }
    }
    0.5 * (low + high)
}

/// The largest value of `f` at `count` + 1 even places over `low..=high`, then followed to its
/// peak by golden section (J. Kiefer, Proc. Am. Math. Soc. 4 (1953) 502-506). Returns place and
/// value. A peak narrower than a step can be missed.
pub(crate) fn peak(low: f64, high: f64, count: usize, f: impl Fn(f64) -> f64) -> (f64, f64) {
    let step = (high - low) / count as f64;
    let mut best = (low, f(low));
    for i in 1..=count {
        let x = low + step * i as f64;
        let value = f(x);
        if value > best.1 {
            best = (x, value);
        }
    }
    let golden = 0.5 * (5.0_f64.sqrt() - 1.0);
    let (mut a, mut b) = ((best.0 - step).max(low), (best.0 + step).min(high));
    let mut left = b - golden * (b - a);
    let mut right = a + golden * (b - a);
    let (mut at_left, mut at_right) = (f(left), f(right));
    while b - a > FLAT * (high - low) {
        if at_left > at_right {
            (b, right, at_right) = (right, left, at_left);
            left = b - golden * (b - a);
            at_left = f(left);
        } else {
            (a, left, at_left) = (left, right, at_right);
            right = a + golden * (b - a);
            at_right = f(right);
        }
        for found in [(left, at_left), (right, at_right)] {
            if found.1 > best.1 {
                best = found;
            }
        }
    }
    best
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_crossing_is_found_to_the_last_digits() {
        let x = crossing(0.0, 5.0, |x| x * x * x - 2.0);
        assert!((x - 2.0_f64.cbrt()).abs() < 1e-15, "{x}");
    }

    #[test]
    fn a_crossing_with_a_steep_end_does_not_stall() {
        let x = crossing(1e-3, 1e6, |x| 1.0 / x - 1.0);
        assert!((x - 1.0).abs() < 1e-14, "{x}");
    }

    #[test]
    fn a_peak_inside_and_one_at_the_end() {
        let (x, y) = peak(0.0, 3.0, 10, |x| x.sin());
        assert!((x - std::f64::consts::FRAC_PI_2).abs() < 1e-7 && (y - 1.0).abs() < 1e-15);
        assert_eq!(peak(0.0, 1.0, 10, |x| x), (1.0, 1.0));
    }
}
