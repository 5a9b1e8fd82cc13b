//! What lies before the camera: the sheet, the sample on it, the table with what lies about.

use card::CardPlan;

use super::{Chance, Scene, Sheet};

/// What a ray of the camera meets.
enum Met {
    /// The printed sheet, with its reflectance.
    Paper(f64),
    /// The sample's face, with its reflectance and the place on it.
    Sample([f64; 3], [f64; 2]),
    /// The side of the sample's plate.
    Side([f64; 3]),
    Table,
}

/// What lies before the camera.
pub struct Ground<'a> {
    scene: &'a Scene,
    plan: &'a CardPlan,
    sheet: &'a Sheet,
    /// Square things on the table: middle, half their side, reflectance.
    clutter: [([f64; 2], f64, f64); 6],
    /// Sine and cosine of the sample's turn.
    turned: [f64; 2],
}

impl<'a> Ground<'a> {
    /// Before a scene's camera, with clutter by chance.
    pub fn new(scene: &'a Scene, plan: &'a CardPlan, sheet: &'a Sheet) -> Ground<'a> {
        let mut chance = Chance::new(scene.seed ^ 0x7ab1e);
        let clutter = [(); 6].map(|()| {
            let (far, turn) = (chance.between(100.0, 170.0), chance.between(0.0, std::f64::consts::TAU));
            ([70.0 + far * turn.cos(), 50.0 + far * turn.sin()], chance.between(5.0, 16.0), chance.between(0.02, 0.8))
        });
        let turn = scene.sample.turned;
        Ground { scene, plan, sheet, clutter, turned: [turn.sin(), turn.cos()] }
    }

    /// Light that comes to a pixel: the mean over four rays.
    pub fn pixel(&self, u: f64, v: f64) -> [f64; 3] {
        let scene = self.scene;
        let middle = scene.camera.meets(u + 0.5, v + 0.5, 0.0);
        // Grain and table change slowly from ray to ray: once for all four.
        let (mut grain, mut table) = (None, None);
        let mut sum = [0.0; 3];
        for (du, dv) in [(0.25, 0.25), (0.75, 0.25), (0.25, 0.75), (0.75, 0.75)] {
            let colour = match self.met(u + du, v + dv) {
                Met::Paper(y) => [y; 3],
                Met::Table => *table.get_or_insert_with(|| self.table(middle)),
                Met::Sample(colour, place) => {
                    let grain = *grain.get_or_insert_with(|| self.grain(place));
                    colour.map(|c| c * grain)
                }
                Met::Side(colour) => colour,
            };
            sum = [sum[0] + colour[0], sum[1] + colour[1], sum[2] + colour[2]];
        }
        let (strength, glare) = scene.light_at(middle);
        let white = scene.print.paper;
        [0, 1, 2].map(|c| scene.light.tint[c] * (sum[c] / 4.0 * strength + white * (glare + scene.light.veil)))
    }

    /// What a ray meets.
    fn met(&self, u: f64, v: f64) -> Met {
        let scene = self.scene;
        let height = scene.sample.height;
        if let Some((colour, place)) = self.of_sample(scene.camera.meets(u, v, height)) {
            return Met::Sample(colour, place);
        }
        let at = scene.camera.meets(u, v, 0.0);
        if height > 0.0 && self.of_sample(at).is_some() {
            return Met::Side(scene.sample.face.map(|c| 0.4 * c));
        }
        self.sheet.at(at).map_or(Met::Table, Met::Paper)
    }

    /// How the grain changes the reflectance at a place of the sample: fine wavy stripes whose mean is 1.
    fn grain(&self, [x, y]: [f64; 2]) -> f64 {
        let stripes = (x * 7.3 + (y * 0.4).sin()).sin() + (x * 11.9 - (y * 0.23).cos() * 2.0).sin();
        1.0 + 0.5 * self.scene.sample.grain * stripes
    }

    /// Reflectance of the sample at a place without its grain, if it lies there, and the place on it.
    fn of_sample(&self, at: [f64; 2]) -> Option<([f64; 3], [f64; 2])> {
        let sample = &self.scene.sample;
        // Back from where the hand has put it.
        let (x, y) = (at[0] - 70.0 - sample.aside[0], at[1] - 50.0 - sample.aside[1]);
        let [sin, cos] = self.turned;
        let (x, y) = (70.0 + x * cos + y * sin, 50.0 - x * sin + y * cos);
        let ring = &self.plan.sample.outline;
        if !(24.0..=116.0).contains(&x) || !(30.0..=70.0).contains(&y) {
            return None;
        }
        let inside = (0..ring.len()).all(|i| {
            let (a, b) = (ring[i], ring[(i + 1) % ring.len()]);
            (b.x - a.x) * (y - a.y) - (b.y - a.y) * (x - a.x) >= 0.0
        });
        if !inside {
            return None;
        }
        let within = |r: &card::Rect| x >= r.x0 && x <= r.x1 && y >= r.y0 && y <= r.y1;
        let engraved = self.plan.sample.steps.iter().enumerate().find_map(|(i, step)| {
            // A numeral made of three strokes stands for the dial's own.
            let (mx, my) = ((x - step.mark.x0) / step.mark.width(), (y - step.mark.y0) / step.mark.height());
            let stroke = sample.marks && within(&step.mark) && ((mx * 3.0).fract() < 0.4 || (my - 0.5).abs() < 0.08);
            (within(&step.engraved) || stroke).then_some(i)
        });
        Some((engraved.map_or(sample.face, |i| sample.engraved[i]), [x, y]))
    }

    /// A table with stripes, and things that lie about on it, some as square and black as a tag.
    fn table(&self, [x, y]: [f64; 2]) -> [f64; 3] {
        for ([cx, cy], half, shade) in self.clutter {
            if (x - cx).abs() < half && (y - cy).abs() < half {
                return [shade; 3];
            }
        }
        let stripe = 1.0 + 0.15 * (y * 0.35 + (x * 0.02).sin() * 3.0).sin();
        let t = self.scene.table * stripe;
        [t, 0.85 * t, 0.65 * t]
    }
}
