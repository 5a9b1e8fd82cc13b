//! How large a flat mark looks from a seat.

use super::{Acuity, Seat, SeatError, critical_stroke};

/// One reader's view of one mark. See the module for the frame.
///
/// ```
/// use std::f64::consts::FRAC_PI_2;
/// use sight::{ARCMIN, Seat, View, arcmin};
///
/// let across = View::upright(Seat::ACROSS);
/// let height = across.height_for(20.0 * ARCMIN);
/// assert!((height - 13.9).abs() < 0.1);                        // mm: 20' across the table take a tall numeral
/// assert!((arcmin(across.angular_height(height)) - 20.0).abs() < 1e-9);
///
/// let from_aside = View::new(Seat::NEIGHBOUR, FRAC_PI_2);
/// assert!(from_aside.angular_height(5.0) > View::upright(Seat::NEIGHBOUR).angular_height(5.0));
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct View {
    seat: Seat,
    azimuth: f64,
}

/// How large a mark looks, in radians.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Apparent {
    /// Visual angle from one side to the other.
    pub width: f64,
    /// Visual angle from foot to top.
    pub height: f64,
}

impl View {
    /// The view from a seat under an azimuth in radians: the angle, counter-clockwise, from the mark's up to the
    /// direction in which the reader looks over the table.
    #[must_use]
    pub fn new(seat: Seat, azimuth: f64) -> View {
        View { seat, azimuth }
    }

    /// The view of the one before whom the mark stands upright.
    #[must_use]
    pub fn upright(seat: Seat) -> View {
        View::new(seat, 0.0)
    }

    /// The view from an eye at (x, y, height) of an upright mark at (x, y), in one frame whose y is the mark's up, mm.
    ///
    /// # Errors
    /// [`SeatError`] where the eye is too far off or too low, see [`Seat::new`].
    pub fn between(eye: [f64; 3], mark: [f64; 2]) -> Result<View, SeatError> {
        let over = [mark[0] - eye[0], mark[1] - eye[1]];
        let seat = Seat::new(over[0].hypot(over[1]), eye[2])?;
        // From straight above every side is the near one: take the mark's foot. (0 - x and not -x, for -0 would turn
        // a half turn about.)
        let azimuth = if over == [0.0; 2] { 0.0 } else { (0.0 - over[0]).atan2(over[1]) };
        Ok(View::new(seat, azimuth))
    }

    /// The seat.
    #[must_use]
    pub fn seat(self) -> Seat {
        self.seat
    }

    /// The azimuth in radians.
    #[must_use]
    pub fn azimuth(self) -> f64 {
        self.azimuth
    }

    /// Unit vector over the table from the reader to the mark.
    #[must_use]
    pub fn direction(self) -> [f64; 2] {
        [-self.azimuth.sin(), self.azimuth.cos()]
    }

    /// Visual angle, in radians, between two points of the table.
    #[must_use]
    pub fn angle_between(self, one: [f64; 2], other: [f64; 2]) -> f64 {
        let [a, b] = [one, other].map(|[x, y]| {
            let [vx, vy] = self.direction();
            [x + vx * self.seat.away(), y + vy * self.seat.away(), -self.seat.eye()]
        });
        let cross = [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
        let dot: f64 = a.iter().zip(b).map(|(a, b)| a * b).sum();
        cross.iter().map(|part| part * part).sum::<f64>().sqrt().atan2(dot)
    }

    /// Visual angle, in radians, of a mark of this height in mm, from its foot to its top.
    #[must_use]
    pub fn angular_height(self, height: f64) -> f64 {
        self.angular_size(height, self.off_up())
    }

    /// Visual angle, in radians, of a mark of this width in mm.
    #[must_use]
    pub fn angular_width(self, width: f64) -> f64 {
        self.angular_size(width, self.off_across())
    }

    /// How large a mark of this width and height in mm looks.
    ///
    /// Under an azimuth of an eighth of a turn a mark looks as high as wide but leans: foreshortening acts along the
    /// view only. What then counts for reading is [`View::squeeze`].
    #[must_use]
    pub fn apparent(self, width: f64, height: f64) -> Apparent {
        Apparent { width: self.angular_width(width), height: self.angular_height(height) }
    }

    /// The height in mm that fills this visual angle, in radians and below a quarter turn: the inverse of
    /// [`View::angular_height`].
    #[must_use]
    pub fn height_for(self, angle: f64) -> f64 {
        self.size_for(angle, self.off_up())
    }

    /// The width in mm that fills this visual angle, in radians and below a quarter turn.
    #[must_use]
    pub fn width_for(self, angle: f64) -> f64 {
        self.size_for(angle, self.off_across())
    }

    /// How much shorter whatever runs along the view looks, 0 to 1: the sine of the elevation. Across the view
    /// nothing is shortened.
    #[must_use]
    pub fn squeeze(self) -> f64 {
        self.seat.elevation().sin()
    }

    /// The thinnest stroke in mm that this reader can make out, flat on the table. A stroke across the view is
    /// squeezed, so it must be thicker than one that runs along it, by [`View::squeeze`]; a numeral has both kinds,
    /// so this is for the former.
    #[must_use]
    pub fn critical_stroke(self, acuity: Acuity) -> f64 {
        critical_stroke(self.seat.distance(), acuity) / self.squeeze()
    }

    /// Exact for a segment about the origin: with its middle at distance d and its line at distance q from the eye, the
    /// rays to its ends enclose atan2(q s, d² - s²/4).
    fn angular_size(self, size: f64, off: f64) -> f64 {
        (off * size).atan2(self.seat.distance().powi(2) - size * size / 4.0)
    }

    /// The positive root of the same equation, in the form that loses no digits for small angles.
    fn size_for(self, angle: f64, off: f64) -> f64 {
        let reach = angle.tan() * self.seat.distance();
        2.0 * reach * self.seat.distance() / (off + off.hypot(reach))
    }

    /// Distance from the eye to the line through the mark's foot and top.
    fn off_up(self) -> f64 {
        self.seat.eye().hypot(self.seat.away() * self.azimuth.sin())
    }

    /// Distance from the eye to the line through the mark's sides.
    fn off_across(self) -> f64 {
        self.seat.eye().hypot(self.seat.away() * self.azimuth.cos())
    }
}
