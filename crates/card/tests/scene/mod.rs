//! Photographs of the card made by calculation, with known truth: a test tool that shares no code with the reader, neither
//! its perspective (here a pinhole camera in space) nor its colours.

mod camera;
mod chance;
mod develop;
mod ground;
mod sheet;

pub use camera::Camera;
pub use chance::Chance;
pub use develop::{Development, Picture};
use ground::Ground;
pub use sheet::{Print, Sheet};

use card::CardPlan;

/// A straight edge of shadow.
#[derive(Clone, Copy, Debug)]
pub struct Shadow {
    /// A place it passes, on the card in mm.
    pub at: [f64; 2],
    /// Direction into the shadow, in radians.
    pub towards: f64,
    /// What is left of the light.
    pub left: f64,
    /// Width of the half-shadow in mm.
    pub soft: f64,
}

/// A round spot of light with a soft edge.
#[derive(Clone, Copy, Debug)]
pub struct Spot {
    /// Its middle, on the card in mm.
    pub at: [f64; 2],
    /// Standard deviation in mm.
    pub size: f64,
    /// Its strength: a lamp's as a share of the light, a reflection's as a share of white.
    pub strength: f64,
}

/// Light on the card.
#[derive(Clone, Debug)]
pub struct Light {
    /// Relative strength of red, green and blue.
    pub tint: [f64; 3],
    /// How much darker the darkest side of the card is than the brightest, as a share.
    pub fall: f64,
    /// Direction in which it falls, in radians.
    pub towards: f64,
    /// A lamp besides, whose light multiplies with what it falls on.
    pub lamp: Option<Spot>,
    /// An edge of shadow.
    pub shadow: Option<Shadow>,
    /// A reflection, which adds to black as to white.
    pub glare: Option<Spot>,
    /// Stray light in the lens, as a share of white.
    pub veil: f64,
}

/// What lies in the opening: truths to be found.
#[derive(Clone, Debug)]
pub struct Sample {
    /// Reflectance of the plain face in red, green and blue.
    pub face: [f64; 3],
    /// The same of every step's engraving.
    pub engraved: Vec<[f64; 3]>,
    /// Share by which the grain swings.
    pub grain: f64,
    /// How high its face lies above the card, in mm.
    pub height: f64,
    /// How far it lies aside, in mm.
    pub aside: [f64; 2],
    /// Turned by a clumsy hand, in radians.
    pub turned: f64,
    /// Whether numerals are engraved beside the patches.
    pub marks: bool,
}

/// All of a photograph.
#[derive(Clone, Debug)]
pub struct Scene {
    pub print: Print,
    pub light: Light,
    pub sample: Sample,
    pub camera: Camera,
    pub development: Development,
    /// Reflectance of the table.
    pub table: f64,
    /// Whether the card was left on its page.
    pub uncut: bool,
    /// Drives grain, clutter and noise.
    pub seed: u64,
}

/// Luminance of linear red, green and blue (ITU-R BT.709).
pub fn luma(c: [f64; 3]) -> f64 {
    c[0] * 0.2126 + c[1] * 0.7152 + c[2] * 0.0722
}

impl Scene {
    /// A photograph as anybody would take it who has read the card: tilt to 35 degrees, any turn, light uneven by up to 40 %.
    pub fn clean(chance: &mut Chance, plan: &CardPlan, width: usize) -> Scene {
        let steps = plan.sample.steps.len();
        let camera = Camera::towards_card(chance, width, 35.0);
        let lamp = chance.yes(0.3).then(|| Spot {
            at: [chance.between(0.0, 140.0), chance.between(0.0, 100.0)],
            size: chance.between(60.0, 120.0),
            strength: chance.between(0.05, 0.2),
        });
        Scene {
            print: Print::by_chance(chance),
            light: Light {
                tint: [chance.between(0.85, 1.0), chance.between(0.9, 1.0), chance.between(0.6, 1.0)],
                fall: chance.between(0.0, 0.4),
                towards: chance.between(0.0, std::f64::consts::TAU),
                lamp,
                shadow: None,
                glare: None,
                veil: chance.between(0.0, 0.04),
            },
            sample: Sample::by_chance(chance, steps),
            development: Development {
                // Sharp to soft: standard deviation in pixels of a picture of 1600.
                blur: chance.between(0.4, 1.3) * width as f64 / 1600.0,
                white: chance.between(0.72, 0.93),
                noise: chance.between(0.5e-4, 5e-4),
                vignette: chance.between(0.0, 0.3),
                tone: 0.0,
                quality: chance.between(60.0, 95.99) as u8,
            },
            camera,
            table: chance.between(0.04, 0.7),
            uncut: chance.yes(0.25),
            seed: chance.next(),
        }
    }

    /// The same with an edge of shadow across the card.
    pub fn shadowed(mut self, chance: &mut Chance) -> Scene {
        self.light.shadow = Some(Shadow {
            at: [chance.between(30.0, 110.0), chance.between(22.0, 78.0)],
            towards: chance.between(0.0, std::f64::consts::TAU),
            left: chance.between(0.3, 0.85),
            soft: chance.between(0.3, 10.0),
        });
        self
    }

    /// The same with a shadow so faint that it may pass for even light.
    pub fn faintly_shadowed(mut self, chance: &mut Chance) -> Scene {
        self = self.shadowed(chance);
        if let Some(shadow) = &mut self.light.shadow {
            shadow.left = chance.between(0.88, 0.98);
        }
        self
    }

    /// The same under a lamp whose spot is hardly larger than the card.
    pub fn under_a_lamp(mut self, chance: &mut Chance) -> Scene {
        self.light.lamp = Some(Spot {
            at: [chance.between(20.0, 120.0), chance.between(10.0, 90.0)],
            size: chance.between(25.0, 60.0),
            strength: chance.between(0.2, 1.0),
        });
        self
    }

    /// The same with so much light that paper runs out of the camera's scale over at least a part of the card.
    pub fn overexposed(mut self, chance: &mut Chance) -> Scene {
        self.development.white = chance.between(1.04, 1.8);
        self
    }

    /// The same with a lamp or window reflected on the card.
    pub fn glaring(mut self, chance: &mut Chance) -> Scene {
        self.light.glare = Some(Spot {
            at: [chance.between(15.0, 125.0), chance.between(10.0, 90.0)],
            size: chance.between(6.0, 16.0),
            strength: chance.between(0.2, 0.7),
        });
        self.development.white = 0.6;
        self
    }

    /// The same out of focus: edges wider by far than a patch leaves room for.
    pub fn blurred(mut self, chance: &mut Chance) -> Scene {
        // In pixels, from what a mm takes.
        self.development.blur = chance.between(0.9, 1.8) * self.camera.pixels_to_mm();
        self
    }

    /// The same as a phone renders it that bends the tones into an S.
    pub fn toned(mut self, chance: &mut Chance) -> Scene {
        self.development.tone = chance.between(0.0, 0.03);
        self
    }

    /// Light on a place of the card relative to white in full light, and what is reflected besides.
    pub fn light_at(&self, [x, y]: [f64; 2]) -> (f64, f64) {
        let light = &self.light;
        // From 0 to 1 over the card's half diagonal on both sides.
        let along = ((x - 70.0) * light.towards.cos() + (y - 50.0) * light.towards.sin()) / 172.0 + 0.5;
        let spot = |spot: &Spot| {
            let d2 = (x - spot.at[0]).powi(2) + (y - spot.at[1]).powi(2);
            spot.strength * (-d2 / (2.0 * spot.size * spot.size)).exp()
        };
        let mut strength = 1.0 - light.fall * along.clamp(-0.5, 1.5);
        strength *= 1.0 + light.lamp.as_ref().map_or(0.0, spot);
        if let Some(shadow) = &light.shadow {
            let into = (x - shadow.at[0]) * shadow.towards.cos() + (y - shadow.at[1]) * shadow.towards.sin();
            let dark = (into / shadow.soft + 0.5).clamp(0.0, 1.0);
            strength *= 1.0 - (1.0 - shadow.left) * dark * dark * (3.0 - 2.0 * dark);
        }
        (strength, light.glare.as_ref().map_or(0.0, spot))
    }

    /// The photograph before it is coded.
    pub fn photograph(&self, plan: &CardPlan) -> Picture {
        let sheet = Sheet::printed(plan, &self.print, self.uncut, self.seed);
        let ground = Ground::new(self, plan, &sheet);
        let (width, height) = (self.camera.width, self.camera.height);
        let mut linear = Vec::with_capacity(width * height);
        for v in 0..height {
            for u in 0..width {
                linear.push(ground.pixel(u as f64, v as f64).map(|c| c as f32));
            }
        }
        // The brightest paper of the card sets the exposure, as a camera's metering would.
        let mut brightest = 0.0_f64;
        for i in 0..=14 {
            for k in 0..=10 {
                let at = [10.0 * i as f64, 10.0 * k as f64];
                let (strength, _) = self.light_at(at);
                let vignette = self.development.vignette_at(&self.camera, self.camera.project(at[0], at[1], 0.0));
                let tint = self.light.tint.iter().fold(0.0_f64, |a, b| a.max(*b));
                brightest = brightest.max(self.print.paper * tint * (strength + self.light.veil) * vignette);
            }
        }
        self.development.develop(&self.camera, linear, 1.0 / brightest, self.seed)
    }

    /// The photograph as a file.
    pub fn jpeg(&self, plan: &CardPlan) -> Vec<u8> {
        self.photograph(plan).jpeg(self.development.quality)
    }

    /// True contrast ratio of a step: luminances with WCAG's flare of 0.05.
    pub fn contrast(&self, step: usize) -> f64 {
        let (a, b) = (luma(self.sample.face) + 0.05, luma(self.sample.engraved[step]) + 0.05);
        (a / b).max(b / a)
    }
}

/// L* of CIE 1976, written down anew for the truth.
pub fn l_star(y: f64) -> f64 {
    if y > 0.008_856 { 116.0 * y.powf(1.0 / 3.0) - 16.0 } else { 903.3 * y }
}

impl Sample {
    /// A light wood that chars, a dark one, or a laminate with a core of another lightness.
    pub fn by_chance(chance: &mut Chance, steps: usize) -> Sample {
        let kind = chance.between(0.0, 3.0) as usize;
        let (face, last) = match kind {
            0 => (chance.between(0.35, 0.68), chance.between(0.04, 0.12)),
            1 => (chance.between(0.09, 0.2), chance.between(0.04, 0.08)),
            _ => (chance.between(0.04, 0.25), chance.between(0.3, 0.75)),
        };
        let tint = |y: f64, warm: f64| {
            let raw = [1.0 + 0.3 * warm, 1.0, 1.0 - 0.5 * warm];
            raw.map(|c| y * c / luma(raw))
        };
        let warm = chance.between(0.0, 0.8);
        let engraved = (0..steps)
            .map(|i| {
                let share = ((i + 1) as f64 / steps as f64).powf(0.7);
                tint(face * (last / face).powf(share), warm * (1.0 - 0.6 * share))
            })
            .collect();
        Sample {
            face: tint(face, warm),
            engraved,
            grain: chance.between(0.0, 0.05),
            height: if chance.yes(0.5) { 0.0 } else { chance.between(0.5, 3.0) },
            aside: [chance.between(-0.25, 0.25), chance.between(-0.25, 0.25)],
            turned: chance.between(-0.006, 0.006),
            marks: true,
        }
    }
}
