//! The smallest place where something grows through nothing.

/// The smallest `x` in (0, reach] where `f` turns from negative to positive, to about a ten-thousandth of a mm; `None` if it stays
/// negative, or falls after it rose. `f` is looked at in steps, then closed in on by false position with the stale end halved (the Illinois rule: Dowell
/// & Jarratt, BIT 11, 1971).
pub(super) fn first_positive(step: f64, reach: f64, f: impl Fn(f64) -> f64) -> Option<f64> {
    let (mut low, mut at_low, mut risen) = (0.0, f(0.0), false);
    if at_low >= 0.0 {
        return Some(0.0);
    }
    loop {
        let high = low + step;
        let at_high = f(high);
        if at_high >= 0.0 {
            return Some(close_in((low, at_low), (high, at_high), f));
        }
        // What pulls back rises once and falls once: past its peak there is nothing more to find.
        if high >= reach || at_high.is_nan() || risen && at_high < at_low {
            return None;
        }
        (low, at_low, risen) = (high, at_high, risen || at_high > at_low);
    }
}

fn close_in(mut low: (f64, f64), mut high: (f64, f64), f: impl Fn(f64) -> f64) -> f64 {
    for _ in 0..40 {
        if high.0 - low.0 < 1e-4 {
            break;
        }
        let x = (low.0 * high.1 - high.0 * low.1) / (high.1 - low.1);
        let y = f(x);
        if y.abs() < 1e-9 {
            return x;
        }
        if y < 0.0 {
            low = (x, y);
            high.1 *= 0.5;
        } else {
            high = (x, y);
            low.1 *= 0.5;
        }
    }
    // The upper end: from the safe side.
    high.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_first_crossing_is_found() {
        let wave = |x: f64| (x - 0.3) * (2.0 - x);
        assert!((first_positive(0.1, 5.0, wave).expect("crosses") - 0.3).abs() < 2e-4);
        assert_eq!(first_positive(0.1, 5.0, |_| -1.0), None);
        assert_eq!(first_positive(0.1, 5.0, |x| x), Some(0.0));
        assert_eq!(first_positive(0.1, 5.0, |_| f64::NAN), None);
    }
}
