//! The light on the card: how bright bare paper is everywhere, and how much stray light lies over it.

use kurbo::{Point, Size};

use crate::patch::Patch;
use crate::solve::least_squares;

/// Light of bare paper and stray light, for every place of the card and channel.
#[derive(Clone, Debug)]
pub(crate) struct Field {
    size: Size,
    /// Coefficients of the logarithm of white.
    white: [[f64; 6]; 3],
    /// Coefficients of stray light as a share of white.
    stray: [[f64; 3]; 3],
    /// How far each white lies off the fit, as a share of it (mean of the channels).
    pub(crate) white_off: Vec<f64>,
    /// How far each black lies off its fit, as a share of white.
    pub(crate) black_off: Vec<f64>,
}

impl Field {
    /// From whites and blacks with their places in mm. The logarithm of white is a quadratic of the place, by least
    /// squares: light and vignetting multiply. Stray light is what blacks show beyond the share of white that their ink
    /// reflects, and a plane of the place, as a share of white. Nothing when there are too few places.
    pub(crate) fn fit(
        size: Size,
        whites: &[(Point, Patch)],
        blacks: &[(Point, Patch)],
        ink_to_paper: f64,
    ) -> Option<Field> {
        let mut field = Field {
            size,
            white: [[0.0; 6]; 3],
            stray: [[0.0; 3]; 3],
            white_off: vec![0.0; whites.len()],
            black_off: vec![0.0; blacks.len()],
        };
        for channel in 0..3 {
            let seen = whites.iter().map(|(p, patch)| (field.quadratic(*p), patch.light[channel].max(1e-6).ln()));
            field.white[channel] = least_squares(seen)?;
            for (off, (p, patch)) in field.white_off.iter_mut().zip(whites) {
                let fitted = dot(quadratic(size, *p), field.white[channel]);
                *off += (patch.light[channel].max(1e-6).ln() - fitted) / 3.0;
            }
            let strays: Vec<f64> = blacks
                .iter()
                .map(|(p, patch)| {
                    (patch.light[channel] / field.white(*p)[channel] - ink_to_paper) / (1.0 - ink_to_paper)
                })
                .collect();
            let seen = blacks.iter().zip(&strays).map(|((p, _), stray)| (plane(size, *p), *stray));
            field.stray[channel] = least_squares(seen)?;
            for ((off, (p, _)), stray) in field.black_off.iter_mut().zip(blacks).zip(strays) {
                *off += (stray - dot(plane(size, *p), field.stray[channel])) / 3.0;
            }
        }
        Some(field)
    }

    fn quadratic(&self, p: Point) -> [f64; 6] {
        quadratic(self.size, p)
    }

    /// Linear light of bare paper at a place, stray light included.
    pub(crate) fn white(&self, p: Point) -> [f64; 3] {
        self.white.map(|coefficients| dot(self.quadratic(p), coefficients).exp())
    }

    /// Stray light at a place as a share of white, for each channel.
    pub(crate) fn stray(&self, p: Point) -> [f64; 3] {
        self.stray.map(|coefficients| dot(plane(self.size, p), coefficients))
    }
}

/// Place on the card from -1 to 1 along both sides.
fn unit(size: Size, p: Point) -> (f64, f64) {
    (2.0 * p.x / size.width - 1.0, 2.0 * p.y / size.height - 1.0)
}

fn quadratic(size: Size, p: Point) -> [f64; 6] {
    let (x, y) = unit(size, p);
    [1.0, x, y, x * x, x * y, y * y]
}

fn plane(size: Size, p: Point) -> [f64; 3] {
    let (x, y) = unit(size, p);
    [1.0, x, y]
}

fn dot<const N: usize>(a: [f64; N], b: [f64; N]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}

/// Root mean square.
pub(crate) fn rms(values: &[f64]) -> f64 {
    (values.iter().map(|v| v * v).sum::<f64>() / values.len().max(1) as f64).sqrt()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A field of the very form that is fitted comes back: white falls to a third along x with a bow along y, 2 % stray
    /// light, ink of 5 % of the paper.
    #[test]
    fn a_smooth_light_comes_back() {
        let size = Size::new(140.0, 100.0);
        let truth = |p: Point| 0.6 * (-p.x / 127.0 - (p.y / 100.0 - 0.4).powi(2) * 0.3).exp();
        let light = |value: f64| Patch { light: [value, 0.9 * value, 0.7 * value], ..Patch::default() };
        let places: Vec<Point> = (0..20).map(|i| Point::new((i * 37 % 140) as f64, (i * 23 % 100) as f64)).collect();
        let whites: Vec<_> = places.iter().map(|p| (*p, light(truth(*p)))).collect();
        let blacks: Vec<_> = places.iter().map(|p| (*p, light(truth(*p) * (0.05 * 0.98 + 0.02)))).collect();
        let field = Field::fit(size, &whites, &blacks, 0.05).expect("enough places");
        for p in [Point::new(70.0, 50.0), Point::new(30.0, 65.0)] {
            assert!((field.white(p)[1] / (0.9 * truth(p)) - 1.0).abs() < 1e-9);
            assert!((field.stray(p)[2] - 0.02).abs() < 1e-9, "{:?}", field.stray(p));
        }
        assert!(rms(&field.white_off) < 1e-9 && rms(&field.black_off) < 1e-9);
    }
}
