//! Values that are well written but cannot both hold; both places are shown.

use super::build::Scope;
use super::reader::Reading;
use super::{Design, Motif, RimKind, Shows, WindowKind};
use crate::spans::{Label, Mistake};
use measure::show;

/// A notch cannot bare much more rim than it is wide: the rim's arc over a chord of that width.
const BARES_AT_MOST: f64 = 1.1;

/// Looks for values that exclude each other, whether or not a design could be built.
pub(crate) fn exclusive(reading: &Reading, counters: usize) -> Vec<Mistake> {
    let mut clashes = Clashes { reading, found: Vec::new() };
    clashes.both("stock", "cover.stock and wheel.stock", &["cover.stock", "wheel.stock"]);
    for i in 0..counters {
        let own = format!("counter[{i}].");
        clashes.either(
            &format!("{own}values"),
            &format!("{own}symbols"),
            "a counter has values or symbols, not both",
            "leave one out, or put words and symbols on two wheels",
        );
    }
    for path in reading.spans.under("stocks.") {
        if let Some(base) = path.strip_suffix("kerf") {
            for axis in ["kerf_x", "kerf_y"] {
                clashes.either(
                    &path,
                    &format!("{base}{axis}"),
                    "the kerf is given twice",
                    "give `kerf` for both axes, or `kerf_x` and `kerf_y`",
                );
            }
        }
    }
    for path in reading.spans.under("stocks.") {
        let Some(base) = path.strip_suffix(".thinner") else {
            continue;
        };
        let layer = Scope { reading, bases: vec![format!("{base}.")] };
        if let (Some(thinner), Some(thickness)) = (layer.number("thinner"), layer.number("thickness"))
            && thinner >= thickness
        {
            clashes.pair(
                &path,
                "may come thinner by this",
                &format!("{base}.thickness"),
                "than this",
                "nothing would be left of this layer",
                "`thinner` is how much is missing at worst, not the least thickness",
            );
        }
    }
    for path in reading.spans.under("cover.art[") {
        if let Some(base) = path.strip_suffix(".text") {
            clashes.either(
                &path,
                &format!("{base}.symbol"),
                "one piece of art is text or a symbol, not both",
                "make two of it",
            );
        }
    }
    let cover = Scope { reading, bases: vec!["cover.".into()] };
    let outline = cover.text("outline");
    let wrong = |key: &str, fits: &[&str]| {
        outline.is_some_and(|kind| !fits.contains(&kind)) && reading.spans.get(&format!("cover.{key}")).is_some()
    };
    for (key, fits, help) in [
        ("height", &["rounded rectangle", "stadium"][..], "leave `height` out; `width` alone gives the size"),
        (
            "width",
            &["rounded rectangle", "stadium", "circle", "regular polygon"][..],
            "leave `width` out; the points give the size",
        ),
        ("sides", &["regular polygon"][..], "leave `sides` out, or write `outline = \"regular polygon\"`"),
        ("points", &["polygon"][..], "leave `points` out, or write `outline = \"polygon\"`"),
    ] {
        if wrong(key, fits) {
            let what = format!("`cover.{key}` has no meaning for this outline");
            clashes.pair(&format!("cover.{key}"), "given here", "cover.outline", "for this outline", &what, help);
        }
    }
    if outline == Some("polygon") && reading.spans.get("cover.points").is_none() {
        clashes.one(
            "cover.outline",
            "a polygon needs its corners",
            "this outline",
            "write `points = [[\"-30 mm\", \"-20 mm\"], ...]`, in order round the cover",
        );
    }
    if outline.is_none() && reading.spans.get("cover.points").is_some() {
        clashes.one(
            "cover.points",
            "corners are given, but not that the outline is a polygon",
            "these corners",
            "write `outline = \"polygon\"`",
        );
    }
    clashes.found
}

/// Looks for measures that contradict each other.
pub(crate) fn measures(reading: &Reading, design: &Design) -> Vec<Mistake> {
    let mut clashes = Clashes { reading, found: Vec::new() };
    let mm = |length: f64| show(length, design.show);
    for (i, counter) in design.counters.iter().enumerate() {
        let place = |key: &str| own_or_shared(reading, i, key);
        let (mark, margin) = (place("mark.height"), place("mark.margin"));
        let tallest = counter.mark.height + 2.0 * counter.mark.margin;
        let drawn = counter.marks.iter().any(|motif| matches!(motif, Motif::Text(_)));
        let asked = if counter.window.kind == WindowKind::Round { counter.window.width } else { counter.window.height };
        let key = place(if counter.window.kind == WindowKind::Round { "window.width" } else { "window.height" });
        if let Some(height) =
            asked.filter(|height| drawn && counter.window.kind != WindowKind::RingSector && *height < tallest - 1e-6)
        {
            let what = format!(
                "marks of {} with {} above and below need a window of {}, {} is asked",
                mm(counter.mark.height),
                mm(counter.mark.margin),
                mm(tallest),
                mm(height)
            );
            clashes.places(
                &key,
                "this window",
                &[(&mark, "for marks of this height"), (&margin, "with this margin")],
                &what,
                &format!("make the window {} high, the marks smaller, or leave its size to the layout", mm(tallest)),
            );
        }
        let (bares, width) = (place("notch.bares"), place("notch.width"));
        if counter.notch.bares > BARES_AT_MOST * counter.notch.width {
            let what =
                format!("a notch {} wide cannot bare {} of rim", mm(counter.notch.width), mm(counter.notch.bares));
            clashes.places(
                &bares,
                "to be bared",
                &[(&width, "through a notch of this width")],
                &what,
                "make the notch wider, or bare less",
            );
        }
        if counter.wheel.rim == RimKind::Plain {
            for key in ["wheel.scallops", "wheel.scallop_depth"] {
                let (key, rim) = (own_or_shared(reading, i, key), own_or_shared(reading, i, "wheel.rim"));
                if reading.spans.get(&key).is_some() {
                    clashes.places(
                        &key,
                        "given here",
                        &[(&rim, "for a plain rim")],
                        "a plain rim has no scoops",
                        "write `rim = \"scalloped\"`, or leave this out",
                    );
                }
            }
        }
        let share = own_or_shared(reading, i, "window.neighbour_share");
        if counter.window.shows == Shows::OneMark && reading.spans.get(&share).is_some() {
            let shows = own_or_shared(reading, i, "window.shows");
            clashes.places(
                &share,
                "given here",
                &[(&shows, "for a window that shows one mark")],
                "a window that shows one mark shows nothing of the neighbours",
                "write `shows = \"neighbours too\"`, or leave this out",
            );
        }
        if let (Some(radius), Some(distance)) = (counter.wheel.radius, counter.window.distance)
            && distance >= radius
        {
            let (distance_at, radius_at) =
                (own_or_shared(reading, i, "window.distance"), own_or_shared(reading, i, "wheel.radius"));
            let what =
                format!("a window {} from the wheel's middle looks past a wheel of {}", mm(distance), mm(radius));
            clashes.places(
                &distance_at,
                "this far out",
                &[(&radius_at, "on a wheel of this radius")],
                &what,
                "make the wheel larger, or leave the distance to the layout",
            );
        }
    }
    pockets(&mut clashes, design);
    clashes.found
}

/// A pocket that goes through its plate even where the plate comes as thick as it may is a slip of the pen.
fn pockets(clashes: &mut Clashes, design: &Design) {
    let mm = |length: f64| show(length, design.show);
    let (cover, wheel) = design.magnet.depths();
    for (key, asked, depth, stock, part) in [
        ("magnet.cover_pocket", design.magnet.cover_pocket, cover, &design.cover.stock, "cover"),
        ("magnet.wheel_pocket", design.magnet.wheel_pocket, wheel, &design.wheel_stock, "wheel"),
    ] {
        // A layer without a thickness is told already, and says nothing of the whole.
        if stock.layers.is_empty() || stock.layers.iter().any(|layer| layer.thickness <= 0.0) {
            continue;
        }
        if depth < stock.thickest() {
            continue;
        }
        let what =
            format!("a pocket of {} goes through the {part}, which is {} thick", mm(depth), mm(stock.thickness()));
        let at = if asked.is_some() { key } else { "magnet.thickness" };
        let own = format!("{part}.stock");
        let stock_at = if clashes.reading.spans.get(&own).is_some() { own } else { "stock".into() };
        clashes.places(
            at,
            "this deep",
            &[(&stock_at, "in this stock")],
            &what,
            "choose a thinner magnet, a shallower pocket, or a thicker stock",
        );
    }
}

/// The path of a counter's own value if it is written, else of the dial's.
fn own_or_shared(reading: &Reading, i: usize, key: &str) -> String {
    let own = format!("counter[{i}].{key}");
    if reading.spans.get(&own).is_some() { own } else { key.into() }
}

struct Clashes<'a> {
    reading: &'a Reading,
    found: Vec<Mistake>,
}

impl Clashes<'_> {
    fn label(&self, path: &str, words: &str) -> Option<Label> {
        self.reading.spans.get(path).map(|span| Label { span, words: words.into() })
    }

    fn places(&mut self, at: &str, words: &str, also: &[(&str, &str)], what: &str, help: &str) {
        let also = also.iter().filter_map(|(path, words)| self.label(path, words)).collect();
        let mistake = Mistake { what: what.into(), at: self.label(at, words), also, help: help.into() };
        // Counters that share a dial-wide value share its clash.
        if !self.found.contains(&mistake) {
            self.found.push(mistake);
        }
    }

    fn pair(&mut self, a: &str, a_words: &str, b: &str, b_words: &str, what: &str, help: &str) {
        self.places(a, a_words, &[(b, b_words)], what, help);
    }

    fn one(&mut self, at: &str, what: &str, words: &str, help: &str) {
        self.places(at, words, &[], what, help);
    }

    fn either(&mut self, a: &str, b: &str, what: &str, help: &str) {
        if self.reading.spans.get(a).is_some() && self.reading.spans.get(b).is_some() {
            self.pair(b, "and again here", a, "given here", what, help);
        }
    }

    /// A value that nothing uses since others take its place everywhere.
    fn both(&mut self, general: &str, names: &str, particular: &[&str]) {
        let all = particular.iter().all(|path| self.reading.spans.get(path).is_some());
        if all && self.reading.spans.get(general).is_some() {
            let also: Vec<(&str, &str)> =
                particular.iter().map(|path| (*path, "given here for its own part")).collect();
            self.places(
                general,
                "used by no part",
                &also,
                &format!("`{general}` has no use beside {names}"),
                &format!("leave `{general}` out"),
            );
        }
    }
}
