//! CIE 1976 L*a*b*, in which equal distances look about equally different.

use crate::Srgb;

/// Chromaticities x, y of the sRGB primaries and of its white, D65 (IEC 61966-2-1).
const PRIMARIES: [[f64; 2]; 3] = [[0.64, 0.33], [0.30, 0.60], [0.15, 0.06]];
const D65: [f64; 2] = [0.3127, 0.3290];

/// XYZ of the white, with Y = 1.
const WHITE: [f64; 3] = xyz(D65);
/// Linear light to XYZ, each row over that of the white. The standard's rounded matrix would give white a hue of its
/// own (a* = 0.008); derived from the primaries, its rows sum to 1.
const RELATIVE: [[f64; 3]; 3] = derive();

/// A colour in CIE 1976 L*a*b* under D65, 2° observer (CIE 15, ISO 11664-4, from memory; checked against
/// colour-science).
///
/// ```
/// use sight::{Lab, Srgb};
///
/// let red = Lab::from("#ff0000".parse::<Srgb>()?);
/// assert!((red.lightness - 53.24).abs() < 0.01);
/// assert!((red.a - 80.09).abs() < 0.01 && (red.b - 67.20).abs() < 0.01);
/// # Ok::<(), sight::SrgbError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lab {
    /// L*, 0 for black to 100 for white.
    pub lightness: f64,
    /// a*, from green (negative) to red (positive).
    pub a: f64,
    /// b*, from blue (negative) to yellow (positive).
    pub b: f64,
}

impl Lab {
    /// The colour of linear light in red, green and blue, each relative to white; 0 to 1 for a surface.
    ///
    /// L* comes from the luminance with unrounded weights (0.21264, 0.71517, 0.07219), so it may differ by up to
    /// 0.005 (measured over all codes) from [`lightness`](crate::lightness) of [`Srgb::luminance`], which has those
    /// of WCAG.
    #[must_use]
    pub fn from_light(light: [f64; 3]) -> Lab {
        let [x, y, z] = RELATIVE.map(|row| f(row[0] * light[0] + row[1] * light[1] + row[2] * light[2]));
        Lab { lightness: 116.0 * y - 16.0, a: 500.0 * (x - y), b: 200.0 * (y - z) }
    }

    /// Chroma C*: how far from grey.
    #[must_use]
    pub fn chroma(self) -> f64 {
        self.a.hypot(self.b)
    }
}

impl From<Srgb> for Lab {
    fn from(colour: Srgb) -> Lab {
        Lab::from_light(colour.light())
    }
}

/// The cube root of CIE 1976, straight near black.
fn f(t: f64) -> f64 {
    if t > 216.0 / 24389.0 { t.cbrt() } else { (24389.0 / 27.0 * t + 16.0) / 116.0 }
}

/// XYZ of a chromaticity, with Y = 1.
const fn xyz([x, y]: [f64; 2]) -> [f64; 3] {
    [x / y, 1.0, (1.0 - x - y) / y]
}

/// The matrix from the primaries: each scaled so that together they make the white (Cramer's rule).
const fn derive() -> [[f64; 3]; 3] {
    let [red, green, blue] = [xyz(PRIMARIES[0]), xyz(PRIMARIES[1]), xyz(PRIMARIES[2])];
    let whole = determinant(red, green, blue);
    let shares = [
        determinant(WHITE, green, blue) / whole,
        determinant(red, WHITE, blue) / whole,
        determinant(red, green, WHITE) / whole,
    ];
    let mut matrix = [[0.0; 3]; 3];
    let mut row = 0;
    while row < 3 {
        matrix[row] = [
            shares[0] * red[row] / WHITE[row],
            shares[1] * green[row] / WHITE[row],
            shares[2] * blue[row] / WHITE[row],
        ];
        row += 1;
    }
    matrix
}

const fn determinant(a: [f64; 3], b: [f64; 3], c: [f64; 3]) -> f64 {
    a[0] * (b[1] * c[2] - b[2] * c[1]) - a[1] * (b[0] * c[2] - b[2] * c[0]) + a[2] * (b[0] * c[1] - b[1] * c[0])
}
