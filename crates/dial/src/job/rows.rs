//! Simple rows: parts side by side from the lower left corner, a new row when one is full, a new sheet
//! when the bed is full.

use outline::{Point, Rect, Vec2};

/// Free border round a sheet: what clamps and a crooked edge need (common practice).
pub(super) const BORDER: f64 = 5.0;

/// Where one part goes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Seat {
    /// Index of the sheet.
    pub(super) sheet: usize,
    /// Shift from the part's own coordinates to the sheet's.
    pub(super) shift: Vec2,
}

/// Seats for boxes on beds of a size, in their order; `Err` with the index of a box that fits on no bed.
pub(super) fn seats(boxes: &[Rect], gap: f64, bed: (f64, f64)) -> Result<Vec<Seat>, usize> {
    let mut seats = Vec::with_capacity(boxes.len());
    let (mut sheet, mut x, mut y, mut tallest) = (0, BORDER, BORDER, 0.0f64);
    for (i, one) in boxes.iter().enumerate() {
        let (width, height) = (one.width(), one.height());
        if width + 2.0 * BORDER > bed.0 || height + 2.0 * BORDER > bed.1 {
            return Err(i);
        }
        if x + width + BORDER > bed.0 {
            (x, y, tallest) = (BORDER, y + tallest + gap, 0.0);
        }
        if y + height + BORDER > bed.1 {
            (sheet, x, y, tallest) = (sheet + 1, BORDER, BORDER, 0.0);
        }
        seats.push(Seat { sheet, shift: Point::new(x, y) - Point::new(one.x0, one.y0) });
        x += width + gap;
        tallest = tallest.max(height);
    }
    Ok(seats)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rows_fill_then_sheets() {
        let boxes = vec![Rect::new(-20.0, -20.0, 20.0, 20.0); 5];
        let seats = seats(&boxes, 3.0, (100.0, 100.0)).expect("each fits");
        let lower_left: Vec<_> = seats.iter().map(|s| (s.sheet, s.shift.x - 20.0, s.shift.y - 20.0)).collect();
        assert_eq!(lower_left, [(0, 5.0, 5.0), (0, 48.0, 5.0), (0, 5.0, 48.0), (0, 48.0, 48.0), (1, 5.0, 5.0)]);
    }

    #[test]
    fn a_box_larger_than_the_bed_is_told() {
        let boxes = [Rect::new(0.0, 0.0, 10.0, 10.0), Rect::new(0.0, 0.0, 95.0, 10.0)];
        assert_eq!(seats(&boxes, 3.0, (100.0, 100.0)), Err(1));
    }
}
