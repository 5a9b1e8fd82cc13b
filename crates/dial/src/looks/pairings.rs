//! Every cover stock with every wheel stock: whether this dial could be read in it, whether its wheels would turn and keep, what it
//! would cost; best first.

use super::seen::{SeenStop, stop_through};
use super::{Engraving, alike, level, price};
use crate::Looked;
use crate::assembled::{Dial, Wheel};
use crate::findings::FLOOR;
use crate::magnets::{Build, Likely, Verdict, hardest};
use measure::Interval;
use outline::Shape;
use process::{Cutting, Side, Stock, Workshop};
use sight::Level;
use std::cell::RefCell;

/// Sheets thinner than this are for caps, washers and inlays, in mm (our own proposal).
const PLATE: f64 = 1.5;
/// More contrast than this many times what is needed reads no better (WCAG 2.2: 7 and 4.5 are its highest levels).
const PLENTY: f64 = 7.0 / 4.5;
/// Least share of a mark that must be seen, see the rule on what is hidden.
const HALF: f64 = 0.5;

/// One cover stock with one wheel stock.
#[derive(Clone, Debug)]
pub struct Pairing {
    /// The cover's stock.
    pub cover: Stock,
    /// The wheels' stock.
    pub wheel: Stock,
    /// How the marks stand out on the wheels; `None` where they go through.
    pub marks: Option<Engraving>,
    /// How the art stands out on the cover; `None` where there is none, or it goes through.
    pub art: Option<Engraving>,
    /// The least share of a mark's height that a reader sees over this cover's edge.
    pub seen: f64,
    /// How the wheel that is hardest to hold would turn and keep; `None` where that is not known.
    pub likely: Option<Likely>,
    /// Price of the stock and magnets of one dial, where all are known.
    pub price: Option<f64>,
    /// Whether the face is as good to touch as the back: a wheel's back is under the fingers.
    pub finished_back: bool,
    /// Why it will not do; empty when it does.
    pub reasons: Vec<Reason>,
    /// The least contrast over what is needed, of marks and art.
    pub margin: f64,
}

/// Why a pairing will not do.
#[derive(Clone, Debug, PartialEq)]
pub enum Reason {
    /// The wheels' marks do not stand out: ratio and what is needed.
    Marks(f64, f64),
    /// The cover's art does not stand out: ratio and what is needed.
    Art(f64, f64),
    /// An engraving goes through.
    Through,
    /// The cover is so thick that it hides too much of a mark: share seen by whom.
    Hidden(f64, String),
    /// A pocket goes through, or shows: what is left under it when the stock comes thin, and of which part.
    Pocket(f64, &'static str),
    /// The wheels do not turn easily or do not keep.
    Turning(Verdict),
    /// A material that is never cut, or unknown.
    NeverCut(String),
}

impl Reason {
    /// One letter for the board.
    pub fn letter(&self) -> char {
        match self {
            Reason::Marks(..) => 'C',
            Reason::Art(..) => 'A',
            Reason::Through => 'E',
            Reason::Hidden(..) => 'H',
            Reason::Pocket(..) => 'P',
            Reason::Turning(_) => 'T',
            Reason::NeverCut(_) => 'N',
        }
    }

    /// In words.
    pub fn words(&self) -> String {
        let cut = |ratio: f64| (ratio * 100.0 + 1e-6).floor() / 100.0;
        match self {
            Reason::Marks(ratio, least) => format!("marks {:.2}:1, {least}:1 needed", cut(*ratio)),
            Reason::Art(ratio, least) => format!("text on the cover {:.2}:1, {least}:1 needed", cut(*ratio)),
            Reason::Through => "the engraving goes through".into(),
            Reason::Hidden(share, who) => {
                format!("cover so thick that {who} sees {:.0} % of a mark's height", (share.max(0.0) * 100.0).floor())
            }
            Reason::Pocket(left, part) if *left <= 0.0 => format!("a pocket goes through the {part}"),
            Reason::Pocket(left, part) => {
                format!("a pocket leaves {left:.2} mm of the {part} when it comes thin, {FLOOR} mm needed")
            }
            Reason::Turning(verdict) => format!("its wheels: {}", verdict.words()),
            Reason::NeverCut(name) => format!("{name} is never cut, or not known"),
        }
    }
}

impl Pairing {
    /// What it is called in votes and on boards.
    pub fn name(&self) -> String {
        name_of(&self.cover.name, &self.wheel.name)
    }

    /// Whether it does.
    pub fn does(&self) -> bool {
        self.reasons.is_empty()
    }
}

/// Name of a pairing.
pub fn name_of(cover: &str, wheel: &str) -> String {
    format!("{cover} / {wheel}")
}

/// Every cover stock of the shelf with every wheel stock, and the dial's own; best first: those that do before those that do not, more
/// contrast before less as long as it tells, a finished back before a raw one, then the cheaper.
///
/// The layout is that of the dial as it is: stocks change colours, thickness, friction and mass, and not where things are.
pub fn pairings(looked: &Looked, workshop: &Workshop) -> Vec<Pairing> {
    let dial = &looked.laid.dial;
    let mut shelf: Vec<&Stock> = workshop.stocks.iter().filter(|stock| stock.thinnest() >= PLATE).collect();
    for own in [Some(&dial.cover.stock), dial.wheels.first().map(|wheel| &wheel.stock)].into_iter().flatten() {
        if !shelf.contains(&own) {
            shelf.push(own);
        }
    }
    let bench = Bench { looked, workshop, hardest: hardest(&looked.held), held: RefCell::default() };
    let wheels: Vec<Half> = shelf.iter().map(|stock| bench.as_wheel(stock)).collect();
    let mut all: Vec<Pairing> = Vec::new();
    for cover in &shelf {
        let half = bench.as_cover(cover);
        all.extend(shelf.iter().zip(&wheels).map(|(wheel, other)| bench.pair(cover, &half, wheel, other)));
    }
    all.sort_by(best_first);
    all
}

fn best_first(a: &Pairing, b: &Pairing) -> std::cmp::Ordering {
    let told = |one: &Pairing| one.margin.min(PLENTY);
    (a.reasons.len().cmp(&b.reasons.len()))
        .then(told(b).total_cmp(&told(a)))
        .then(b.finished_back.cmp(&a.finished_back))
        .then(a.price.unwrap_or(f64::INFINITY).total_cmp(&b.price.unwrap_or(f64::INFINITY)))
        .then_with(|| a.name().cmp(&b.name()))
}

struct Bench<'a> {
    looked: &'a Looked,
    workshop: &'a Workshop,
    hardest: Option<usize>,
    /// What is likely by the friction and the mass that two stocks give, which many share.
    held: RefCell<Vec<(Interval, f64, Option<Likely>)>>,
}

/// What is the matter with one part cut from one stock, whatever the other is cut from.
struct Half {
    engraving: Option<Engraving>,
    seen: f64,
    reasons: Vec<Reason>,
    margin: f64,
}

impl Bench<'_> {
    fn dial(&self) -> &Dial {
        &self.looked.laid.dial
    }

    fn as_wheel(&self, stock: &Stock) -> Half {
        let mut reasons = never_cut(stock);
        let mut worst: Option<(Engraving, Level)> = None;
        let mut through = false;
        for (wheel, look) in self.dial().wheels.iter().zip(&self.looked.looks.wheels) {
            let least = look.seen.iter().map(|seen| level(look.weight, seen.angle));
            let least = least.max_by(|a, b| a.least().total_cmp(&b.least())).unwrap_or(Level::Graphics);
            match Engraving::of(stock, wheel.mark_depth) {
                None => through = true,
                Some(one) => {
                    let margin = |of: &(Engraving, Level)| of.0.contrast.ratio() / of.1.least();
                    let one = (one, least);
                    if worst.as_ref().is_none_or(|worst| margin(&one) < margin(worst)) {
                        worst = Some(one);
                    }
                }
            }
        }
        let deepest = self.dial().wheels.iter().map(|wheel| wheel.pocket.depth).fold(0.0, f64::max);
        reasons.extend(pocket(stock, deepest, "wheel"));
        finish(worst, through, reasons, 1.0, Reason::Marks)
    }

    fn as_cover(&self, stock: &Stock) -> Half {
        let mut reasons = never_cut(stock);
        let art = self.dial().cover.art.iter().zip(&self.looked.looks.art);
        let least = art.filter_map(|(art, look)| Some(level(art.weight, look.first_angle?)));
        let least = least.max_by(|a, b| a.least().total_cmp(&b.least()));
        let engraving = Engraving::of(stock, self.dial().cover.engrave_depth);
        let through = least.is_some() && engraving.is_none();
        let deepest = self.dial().wheels.iter().map(|wheel| wheel.cover_pocket.depth).fold(0.0, f64::max);
        reasons.extend(pocket(stock, deepest, "cover"));
        let mut seen: f64 = 1.0;
        for (r, reader) in self.dial().reading.readers.iter().enumerate() {
            let Some((wheel, stop)) = self.least_seen(r, stock.thickness()) else { continue };
            let share = stop.height_share();
            seen = seen.min(share);
            if share < HALF || !alike(wheel, reader.view, stop.hidden).is_empty() {
                reasons.push(Reason::Hidden(share, reader.words()));
            }
        }
        finish(engraving.zip(least), through, reasons, seen, Reason::Art)
    }

    /// The stop of which a reader sees least through a cover of this thickness, of each wheel the one that is worst as it is.
    fn least_seen(&self, reader: usize, thickness: f64) -> Option<(&Wheel, SeenStop)> {
        let view = self.dial().reading.readers[reader].view;
        let wheels = self.dial().wheels.iter().zip(&self.looked.looks.wheels);
        let stops = wheels.filter_map(|(wheel, look)| {
            let seen = look.seen.get(reader)?;
            Some((wheel, stop_through(wheel, seen.worst, thickness, view)))
        });
        stops.min_by(|a, b| a.1.height_share().total_cmp(&b.1.height_share()))
    }

    fn pair(&self, cover: &Stock, half: &Half, wheel: &Stock, other: &Half) -> Pairing {
        let mut reasons = [other.reasons.as_slice(), &half.reasons].concat();
        let likely = self.likely(cover, wheel);
        if let Some(likely) = likely.filter(|likely| likely.verdict != Verdict::EasyAndKeeps) {
            reasons.push(Reason::Turning(likely.verdict));
        }
        Pairing {
            marks: other.engraving.clone(),
            art: half.engraving.clone(),
            seen: half.seen,
            likely,
            price: price::of(self.dial(), cover, wheel, self.workshop),
            finished_back: wheel.finish(Side::Back).is_finished(),
            margin: half.margin.min(other.margin),
            cover: cover.clone(),
            wheel: wheel.clone(),
            reasons,
        }
    }

    /// The wheel that is hardest to hold, with the friction and mass that these stocks have.
    fn likely(&self, cover: &Stock, stock: &Stock) -> Option<Likely> {
        let i = self.hardest?;
        let (dial, held) = (self.dial(), self.looked.held[i].as_ref()?);
        let wheel = &dial.wheels[i];
        let washer = wheel.seat.ring.as_ref().and_then(|ring| ring.washer.as_ref());
        let of_faces = |cover: &Stock, wheel: &Stock| {
            let (a, b) = (washer.unwrap_or(wheel).friction(Side::Face), cover.friction(Side::Back));
            Interval { low: a.low.min(b.low), high: a.high.max(b.high) }
        };
        // A friction that the maker measured and wrote down holds for whatever he measured: it stays.
        let derived = of_faces(&dial.cover.stock, &wheel.stock) == wheel.seat.friction;
        let friction = if derived { of_faces(cover, stock) } else { wheel.seat.friction };
        let area = Shape::from(wheel.rim.clone()).area();
        let mass = held.build.mass + area * (stock.mass_per_area() - wheel.stock.mass_per_area());
        let mut known = self.held.borrow_mut();
        if let Some(one) = known.iter().find(|one| one.0 == friction && one.1 == mass) {
            return one.2;
        }
        let build = Build { friction, mass, ..held.build.clone() };
        let likely = build.likely(&self.workshop.feel, held.forgives);
        known.push((friction, mass, likely));
        likely
    }
}

fn finish(
    engraved: Option<(Engraving, Level)>,
    through: bool,
    mut reasons: Vec<Reason>,
    seen: f64,
    reason: fn(f64, f64) -> Reason,
) -> Half {
    if through {
        reasons.push(Reason::Through);
    }
    let margin = engraved.as_ref().map_or(f64::INFINITY, |(one, least)| one.contrast.ratio() / least.least());
    if let Some((one, least)) = engraved.as_ref().filter(|(one, least)| !one.contrast.passes(*least)) {
        reasons.push(reason(one.contrast.ratio(), least.least()));
    }
    Half { engraving: engraved.map(|one| one.0), seen, reasons, margin: if through { 0.0 } else { margin } }
}

fn pocket(stock: &Stock, depth: f64, part: &'static str) -> Option<Reason> {
    let left = stock.thinnest() - depth;
    (left < FLOOR).then_some(Reason::Pocket(left, part))
}

fn never_cut(stock: &Stock) -> Vec<Reason> {
    let bad = stock
        .layers
        .iter()
        .find(|layer| layer.material.is_none_or(|material| matches!(material.cutting, Cutting::Never(_))));
    bad.map(|layer| Reason::NeverCut(layer.named.clone())).into_iter().collect()
}
