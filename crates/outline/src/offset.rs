//! Shapes grown and shrunk by a distance, with round joins.

use crate::booleans::{SAME, SLIVER};
use crate::{Curve, OutlineError, Shape};
use cavalier_contours::polyline::{PlineOffsetOptions, PlineSource};

/// Slices of a raw offset closer to the original than the offset less this are thrown away, in mm.
const OFFSET_SAME: f64 = 1e-6;

impl Shape {
    /// Every point within `d` of the shape: outer curves grow, holes shrink; `d` not negative.
    ///
    /// # Errors
    /// An offset that does not close.
    pub fn grown(&self, d: f64) -> Result<Shape, OutlineError> {
        let mut all = Shape::empty();
        for piece in self.pieces() {
            let mut grown = Shape::empty();
            for (i, one) in outwards(&piece.loops[0], d)?.into_iter().enumerate() {
                // The first is the outside; others are bays that closed behind it.
                grown = if i == 0 { Shape::from(one) } else { grown.minus(&Shape::from(one)) };
            }
            for hole in &piece.loops[1..] {
                for smaller in inwards(&hole.clone().anticlockwise(), d)? {
                    grown.loops.push(smaller.reversed());
                }
            }
            all = all.united(&grown);
        }
        Ok(all)
    }

    /// Every point of the shape farther than `d` from its edge: outer curves shrink, holes grow; `d` not negative.
    ///
    /// # Errors
    /// An offset that does not close.
    pub fn shrunk(&self, d: f64) -> Result<Shape, OutlineError> {
        let mut all = Vec::new();
        for piece in self.pieces() {
            let mut rest = Shape { loops: inwards(&piece.loops[0], d)? };
            for hole in &piece.loops[1..] {
                let mut wider = outwards(&hole.clone().anticlockwise(), d)?.into_iter();
                if let Some(outside) = wider.next() {
                    let hole = wider.fold(Shape::from(outside), |all, bay| all.minus(&Shape::from(bay)));
                    rest = rest.minus(&hole);
                }
            }
            all.push(rest);
        }
        Ok(Shape::joined(&all))
    }
}

/// The outside of a counter-clockwise curve grown by `d`, then the bays that closed behind it, all counter-clockwise.
fn outwards(curve: &Curve, d: f64) -> Result<Vec<Curve>, OutlineError> {
    if d == 0.0 {
        return Ok(vec![curve.clone()]);
    }
    let mut all: Vec<Curve> = raw(curve, -d)?.into_iter().map(Curve::anticlockwise).collect();
    all.sort_by(|a, b| b.area().total_cmp(&a.area()));
    Ok(all)
}

/// What is left of the inside of a counter-clockwise curve shrunk by `d`; loops that flipped are ghosts.
fn inwards(curve: &Curve, d: f64) -> Result<Vec<Curve>, OutlineError> {
    if d == 0.0 {
        return Ok(vec![curve.clone()]);
    }
    Ok(raw(curve, d)?.into_iter().filter(|one| !one.is_clockwise()).collect())
}

/// The kernel's offset, to the left, so inwards for a counter-clockwise curve when positive.
fn raw(curve: &Curve, d: f64) -> Result<Vec<Curve>, OutlineError> {
    let options = PlineOffsetOptions { pos_equal_eps: SAME, offset_dist_eps: OFFSET_SAME, ..PlineOffsetOptions::new() };
    let clean = curve.pline.remove_repeat_pos(SAME);
    let plines = clean.as_ref().unwrap_or(&curve.pline).parallel_offset_opt(d, &options);
    let mut all = Vec::with_capacity(plines.len());
    for pline in plines {
        if !pline.is_closed() {
            return Err(OutlineError::OpenOffset);
        }
        let one = Curve { pline };
        if one.area().abs() > SLIVER {
            all.push(one);
        }
    }
    Ok(all)
}
