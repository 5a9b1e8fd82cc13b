//! Scenes of one kind, read, and what came out against the truth.

use std::fmt;
use std::ops::Range;

use card::{CardPlan, Paper, Print, Reading, Refused};

use super::scene::{Chance, Scene, l_star, luma};

/// The reading of a photo that must be read.
pub fn read(bytes: &[u8], plan: &CardPlan) -> Reading {
    card::read(bytes, plan, &Print::default()).unwrap_or_else(|refused| panic!("refused: {refused}"))
}

/// What is wrong with a photo, or not.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// Nothing; the maker has measured paper and print.
    Clean,
    /// Nothing; paper and print are taken to be typical.
    Typical,
    /// Nothing but a phone's tone curve.
    Toned,
    /// An edge of shadow across the card.
    Shadow,
    /// A faint edge of shadow across the card.
    Faint,
    /// A lamp's spot hardly larger than the card.
    Lamp,
    /// Overexposed.
    Clipped,
    /// A reflection.
    Glare,
    /// Out of focus.
    Blurred,
}

/// All kinds.
pub const KINDS: [Kind; 9] = [
    Kind::Clean,
    Kind::Typical,
    Kind::Toned,
    Kind::Shadow,
    Kind::Faint,
    Kind::Lamp,
    Kind::Clipped,
    Kind::Glare,
    Kind::Blurred,
];

impl Kind {
    pub fn name(self) -> &'static str {
        match self {
            Kind::Clean => "clean",
            Kind::Typical => "typical",
            Kind::Toned => "toned",
            Kind::Shadow => "shadow",
            Kind::Faint => "faint",
            Kind::Lamp => "lamp",
            Kind::Clipped => "clipped",
            Kind::Glare => "glare",
            Kind::Blurred => "blurred",
        }
    }
}

/// One scene to be read.
#[derive(Clone, Copy, Debug)]
pub struct Trial {
    pub kind: Kind,
    pub seed: u64,
    pub width: usize,
}

impl Trial {
    /// Steps of the sample: all allowed numbers in turn.
    pub fn steps(&self) -> usize {
        5 + (self.seed % 4) as usize
    }

    pub fn scene(&self, plan: &CardPlan) -> Scene {
        let mut chance = Chance::new(self.seed.wrapping_mul(0x1_0001) ^ 0xd1a1);
        let scene = Scene::clean(&mut chance, plan, self.width);
        match self.kind {
            Kind::Clean | Kind::Typical => scene,
            Kind::Toned => scene.toned(&mut chance),
            Kind::Shadow => scene.shadowed(&mut chance),
            Kind::Faint => scene.faintly_shadowed(&mut chance),
            Kind::Lamp => scene.under_a_lamp(&mut chance),
            Kind::Clipped => scene.overexposed(&mut chance),
            Kind::Glare => scene.glaring(&mut chance),
            Kind::Blurred => scene.blurred(&mut chance),
        }
    }

    pub fn read(&self, scene: &Scene, plan: &CardPlan) -> Result<Reading, Refused> {
        let print = match self.kind {
            Kind::Typical => Print::default(),
            _ => Print::measured(scene.print.paper, scene.print.ink),
        };
        card::read(&scene.jpeg(plan), plan, &print)
    }

    /// How far the reading is from the truth.
    fn outcome(&self) -> Outcome {
        let paper = if self.seed.is_multiple_of(2) { Paper::A4 } else { Paper::Letter };
        let plan = CardPlan::new(paper, self.steps()).expect("an allowed number of steps");
        let scene = self.scene(&plan);
        match self.read(&scene, &plan) {
            Ok(reading) => Outcome::Read(Errors::of(&reading, &scene)),
            Err(refused) => Outcome::Refused(refused.to_string()),
        }
    }
}

enum Outcome {
    Read(Errors),
    Refused(String),
}

/// Errors of one reading.
#[derive(Clone, Copy, Debug)]
pub struct Errors {
    /// Largest error of L* over all faces and engraved patches.
    pub lightness: f64,
    /// Largest error of the contrast ratio, as a share of the true one.
    pub contrast: f64,
    /// Share of the figures whose interval holds the truth.
    pub held: f64,
    /// Mean half-width of the intervals of L*.
    pub doubt: f64,
    /// Mean half-width of the intervals of contrast, as a share.
    pub contrast_doubt: f64,
    /// How much less contrast the step called best has than the truly best, as a share.
    pub best_short: f64,
}

impl Errors {
    fn of(reading: &Reading, scene: &Scene) -> Errors {
        let mut errors =
            Errors { lightness: 0.0, contrast: 0.0, held: 0.0, doubt: 0.0, contrast_doubt: 0.0, best_short: 0.0 };
        let count = reading.steps.len();
        for (i, step) in reading.steps.iter().enumerate() {
            let truths = [
                (step.face.lightness, l_star(luma(scene.sample.face))),
                (step.engraved.lightness, l_star(luma(scene.sample.engraved[i]))),
            ];
            for (measured, truth) in truths {
                errors.lightness = errors.lightness.max((measured.value - truth).abs());
                errors.held += f64::from(u8::from(measured.within.contains(truth))) / (3 * count) as f64;
                errors.doubt += (measured.within.high - measured.within.low) / (4 * count) as f64;
            }
            let truth = scene.contrast(i);
            errors.contrast = errors.contrast.max((step.contrast.value / truth - 1.0).abs());
            errors.held += f64::from(u8::from(step.contrast.within.contains(truth))) / (3 * count) as f64;
            errors.contrast_doubt +=
                (step.contrast.within.high - step.contrast.within.low) / truth / (2 * count) as f64;
        }
        let best = (0..count).map(|i| scene.contrast(i)).fold(0.0, f64::max);
        errors.best_short = 1.0 - scene.contrast(reading.best) / best;
        errors
    }

    /// Within 2 L* and 10 % of the ratio, for every step.
    pub fn good(&self) -> bool {
        self.lightness <= 2.0 && self.contrast <= 0.10
    }
}

/// What came of the scenes of one kind.
pub struct Tally {
    pub kind: Kind,
    pub read: Vec<(u64, Errors)>,
    pub refused: Vec<(u64, String)>,
}

impl Tally {
    pub const HEADING: &'static str = "kind     read  refused  good of read  L* error median  95 %   worst  \
        ratio error median  95 %   worst  interval holds  +-L*  +-ratio";

    /// Reads scenes of a kind, on two threads.
    pub fn over(kind: Kind, seeds: Range<u64>, width: usize) -> Tally {
        let outcomes = |part: u64| {
            let seeds = seeds.clone().filter(move |seed| seed % 2 == part);
            seeds.map(|seed| (seed, Trial { kind, seed, width }.outcome())).collect::<Vec<_>>()
        };
        let mut all = std::thread::scope(|scope| {
            let other = scope.spawn(|| outcomes(1));
            let mut all = outcomes(0);
            all.extend(other.join().expect("no scene may panic"));
            all
        });
        all.sort_by_key(|(seed, _)| *seed);
        let mut tally = Tally { kind, read: Vec::new(), refused: Vec::new() };
        for (seed, outcome) in all {
            match outcome {
                Outcome::Read(errors) => tally.read.push((seed, errors)),
                Outcome::Refused(why) => tally.refused.push((seed, why)),
            }
        }
        tally
    }

    /// Share of all scenes that was read.
    pub fn acceptance(&self) -> f64 {
        self.read.len() as f64 / (self.read.len() + self.refused.len()).max(1) as f64
    }

    /// Share of the read scenes with every step within the limits.
    pub fn good(&self) -> f64 {
        let good = self.read.iter().filter(|(_, errors)| errors.good()).count();
        good as f64 / self.read.len().max(1) as f64
    }

    /// Share of all figures whose interval holds the truth.
    pub fn held(&self) -> f64 {
        self.mean(|errors| errors.held)
    }

    fn mean(&self, of: impl Fn(&Errors) -> f64) -> f64 {
        self.read.iter().map(|(_, errors)| of(errors)).sum::<f64>() / self.read.len().max(1) as f64
    }

    fn ranked(&self, of: impl Fn(&Errors) -> f64) -> [f64; 3] {
        let mut all: Vec<f64> = self.read.iter().map(|(_, errors)| of(errors)).collect();
        all.sort_by(f64::total_cmp);
        let at = |share: f64| all.get((share * all.len() as f64) as usize).or(all.last()).copied().unwrap_or(0.0);
        [at(0.5), at(0.95), at(1.0)]
    }

    /// Every reading out of limits with its seed, and how often each reason was given.
    pub fn remarks(&self) -> Vec<String> {
        let mut remarks: Vec<String> = self
            .read
            .iter()
            .filter(|(_, errors)| !errors.good())
            .map(|(seed, errors)| {
                format!("seed {seed}: {:.1} L*, {:.1} % of the ratio", errors.lightness, 100.0 * errors.contrast)
            })
            .collect();
        let short = |why: &str| why.chars().filter(|c| !c.is_ascii_digit()).take(70).collect::<String>();
        let mut reasons: Vec<(String, Vec<u64>)> = Vec::new();
        for (seed, why) in &self.refused {
            match reasons.iter_mut().find(|(reason, _)| *reason == short(why)) {
                Some((_, seeds)) => seeds.push(*seed),
                None => reasons.push((short(why), vec![*seed])),
            }
        }
        remarks.extend(reasons.into_iter().map(|(why, seeds)| {
            let some: Vec<String> = seeds.iter().take(12).map(u64::to_string).collect();
            format!("{} refused ({}): {why}...", seeds.len(), some.join(" "))
        }));
        remarks
    }
}

impl fmt::Display for Tally {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let [l, l95, l_most] = self.ranked(|errors| errors.lightness);
        let [c, c95, c_most] = self.ranked(|errors| 100.0 * errors.contrast);
        write!(
            f,
            "{:8} {:4}  {:7}  {:10.1} %  {l:15.2}  {l95:4.2}  {l_most:6.2}  {c:16.1} %  {c95:4.1}  {c_most:6.1}  {:12.1} %  {:4.1}  {:5.1} %",
            self.kind.name(),
            self.read.len(),
            self.refused.len(),
            100.0 * self.good(),
            100.0 * self.held(),
            self.mean(|errors| errors.doubt),
            100.0 * self.mean(|errors| errors.contrast_doubt),
        )
    }
}
