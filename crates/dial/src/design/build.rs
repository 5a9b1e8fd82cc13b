//! From what a file says to a design: fixed defaults filled in, a counter's own values before the dial's, stocks looked up.

use super::counting::MOST;
use super::nearest::nearest;
use super::parameters::{ART, COUNTER, DIAL_FILE, STOCK};
use super::reader::{Reading, Value};
use super::table::{default_angle, default_length, fixed};
use super::{
    ArtDesign, CounterDesign, CoverDesign, Design, Half, MarkDesign, Motif, NotchDesign, OutlineKind, RimKind, Running,
    Shows, TurnOver, Twins, WheelDesign, WindowDesign, WindowKind, magnets, reading,
};
use crate::spans::{Label, Mistake};
use lettering::{Symbol, TwinMark, Weight};
use measure::{Interval, Units};
use outline::Point;
use process::{Finish, Grain, Kerf, Layer, Material, Panel, Price, Stock, Surfaces, Workshop};
use sight::Srgb;

/// More wheels than this do not fit under one hand.
const MOST_COUNTERS: usize = 6;

/// Values of one table, with the dial-wide ones behind a counter's own.
pub(crate) struct Scope<'a> {
    pub(crate) reading: &'a Reading,
    /// Prefix of the paths, most particular first.
    pub(crate) bases: Vec<String>,
}

impl Scope<'_> {
    pub(super) fn value(&self, path: &str) -> Option<&Value> {
        self.bases.iter().find_map(|base| self.reading.values.get(&format!("{base}{path}")))
    }

    pub(crate) fn number(&self, path: &str) -> Option<f64> {
        match self.value(path) {
            Some(Value::Number(number)) => Some(*number),
            _ => None,
        }
    }

    pub(crate) fn text(&self, path: &str) -> Option<&str> {
        match self.value(path) {
            Some(Value::Text(text)) => Some(text),
            _ => None,
        }
    }

    pub(super) fn length_or_default(&self, path: &str) -> f64 {
        self.number(path).unwrap_or_else(|| default_length(DIAL_FILE, path))
    }

    pub(super) fn text_or_default(&self, path: &str) -> &str {
        self.text(path).or_else(|| fixed(DIAL_FILE, path)).or_else(|| fixed(COUNTER, path)).unwrap_or_default()
    }

    fn flag_or_default(&self, path: &str) -> bool {
        match self.value(path) {
            Some(Value::Flag(flag)) => *flag,
            _ => fixed(DIAL_FILE, path) == Some("true"),
        }
    }

    pub(super) fn count(&self, path: &str) -> Option<usize> {
        self.number(path).map(|count| count as usize)
    }

    fn point(&self, path: &str) -> Option<Point> {
        match self.value(path) {
            Some(Value::Point(point)) => Some(*point),
            _ => None,
        }
    }

    fn symbol(&self, path: &str) -> Option<Symbol> {
        match self.value(path) {
            Some(Value::Symbol(symbol)) => Some(*symbol),
            _ => None,
        }
    }

    pub(super) fn tables(&self, path: &str) -> usize {
        match self.value(path) {
            Some(Value::Tables(count)) => *count,
            _ => 0,
        }
    }
}

/// Builds as much of the design as can be built, and tells what cannot: a stock that is not there is stood in for by another, a
/// counter without marks left out, so that the rest can still be looked at. `None` when there is no stock at all.
pub(crate) fn design(reading: &Reading, workshop: &Workshop) -> (Option<Design>, Vec<Mistake>) {
    let mut mistakes = Vec::new();
    let own = stocks(reading);
    let dial = Scope { reading, bases: vec![String::new()] };
    let cover_stock = stock(&dial, "cover.stock", &own, workshop, &mut mistakes);
    let wheel_stock = stock(&dial, "wheel.stock", &own, workshop, &mut mistakes);
    let counters = dial.tables("counter");
    if counters > MOST_COUNTERS {
        let at = reading
            .spans
            .get(&format!("counter[{MOST_COUNTERS}]"))
            .map(|span| Label { span, words: "one too many".into() });
        let what = format!("{counters} counters, a dial takes {MOST_COUNTERS}");
        mistakes.push(Mistake { what, at, also: Vec::new(), help: "share them between two dials".into() });
    }
    let all: Vec<CounterDesign> =
        (0..counters.min(MOST_COUNTERS)).filter_map(|i| counter(reading, i, &mut mistakes)).collect();
    let art: Vec<ArtDesign> = (0..dial.tables("cover.art")).filter_map(|i| art(reading, i, &mut mistakes)).collect();
    let magnet = magnets::build(&dial, |path| named_stock(&dial, path, &own, workshop, &mut mistakes));
    let stand_in = || own.first().or(workshop.stocks.first()).cloned();
    let (Some(cover_stock), Some(wheel_stock)) = (cover_stock.or_else(stand_in), wheel_stock.or_else(stand_in)) else {
        return (None, mistakes);
    };
    let choice = |path: &str| dial.text_or_default(path);
    let design = Design {
        name: dial.text("name").unwrap_or_default().to_owned(),
        show: if choice("show") == "inch" { Units::Inches } else { Units::Millimetres },
        symmetry: dial.text("symmetry").map(|half| match half {
            "left" => Half::Left,
            "right" => Half::Right,
            "top" => Half::Top,
            _ => Half::Bottom,
        }),
        turn_over: if choice("turn_over") == "endways" { TurnOver::Endways } else { TurnOver::Sideways },
        cover: CoverDesign {
            stock: cover_stock,
            outline: dial.text("cover.outline").map(|kind| match kind {
                "circle" => OutlineKind::Circle,
                "stadium" => OutlineKind::Stadium,
                "regular polygon" => OutlineKind::RegularPolygon,
                "polygon" => OutlineKind::Polygon,
                _ => OutlineKind::RoundedRectangle,
            }),
            corner: dial.length_or_default("cover.corner"),
            width: dial.number("cover.width"),
            height: dial.number("cover.height"),
            sides: dial.count("cover.sides").unwrap_or(6),
            points: match reading.values.get("cover.points") {
                Some(Value::Points(points)) => points.clone(),
                _ => Vec::new(),
            },
            edge: dial.length_or_default("cover.edge"),
            engrave_depth: dial.length_or_default("cover.engrave_depth"),
            art,
        },
        wheel_stock,
        wheel_gap: dial.length_or_default("wheel.gap"),
        same_size: dial.flag_or_default("wheel.same_size"),
        magnet,
        gauges: dial.flag_or_default("gauges"),
        reading: reading::build(&dial),
        standard: dial.text("standard").map(str::to_owned),
        counters: all,
        spans: reading.spans.clone(),
    };
    (Some(design), mistakes)
}

fn counter(reading: &Reading, i: usize, mistakes: &mut Vec<Mistake>) -> Option<CounterDesign> {
    // What is no table at all is told already.
    reading.spans.get(&format!("counter[{i}]"))?;
    let own = format!("counter[{i}].");
    let here = Scope { reading, bases: vec![own.clone()] };
    let both = Scope { reading, bases: vec![own.clone(), String::new()] };
    let name = here.text("name").unwrap_or_default().to_owned();
    let motifs = |key: &str| match reading.values.get(&format!("{own}{key}")) {
        Some(Value::Motifs(motifs)) => Some(motifs.clone()),
        _ => None,
    };
    let Some(marks) = motifs("values").or_else(|| motifs("symbols")) else {
        // A wrong one is told already.
        if !["values", "symbols"].iter().any(|key| reading.spans.get(&format!("{own}{key}")).is_some()) {
            let at =
                reading.spans.get(&format!("counter[{i}]")).map(|span| Label { span, words: "this counter".into() });
            let what = format!("the counter “{name}” does not say what it counts");
            let help = format!("write `values = \"0..24\"`, up to {MOST} stops, or `symbols = [\"flame\", \"drop\"]`");
            mistakes.push(Mistake { what, at, also: Vec::new(), help });
        }
        return None;
    };
    Some(CounterDesign {
        label: here.text("label").unwrap_or(&name).to_owned(),
        name,
        marks,
        symbol: here.symbol("symbol"),
        label_height: here.number("label_height"),
        running: match here.text_or_default("running") {
            "alike reversed" => Running::AlikeReversed,
            "numbers clockwise" => Running::NumbersClockwise,
            "turn clockwise" => Running::TurnClockwise,
            _ => Running::Alike,
        },
        at: here.point("at"),
        mark: mark(&both),
        window: window(&both),
        notch: NotchDesign {
            angle: both.number("notch.angle"),
            width: both.length_or_default("notch.width"),
            depth: both.number("notch.depth"),
            bares: both.length_or_default("notch.bares"),
            corner: both.length_or_default("notch.corner"),
            signs: both.flag_or_default("notch.signs"),
        },
        wheel: WheelDesign {
            radius: both.number("wheel.radius"),
            land: both.length_or_default("wheel.land"),
            rim: if both.text_or_default("wheel.rim") == "scalloped" {
                RimKind::Scalloped {
                    count: both.count("wheel.scallops"),
                    depth: both.length_or_default("wheel.scallop_depth"),
                }
            } else {
                RimKind::Plain
            },
        },
    })
}

fn mark(both: &Scope) -> MarkDesign {
    MarkDesign {
        height: both.length_or_default("mark.height"),
        margin: both.length_or_default("mark.margin"),
        clear: both.length_or_default("mark.clear"),
        weight: Weight::named(both.text_or_default("mark.weight")).unwrap_or(Weight::Medium),
        twins: match both.text_or_default("mark.twins") {
            "bar" => Twins::Always(TwinMark::Bar),
            "dot" => Twins::Always(TwinMark::Dot),
            "none" => Twins::Always(TwinMark::None),
            _ => Twins::WhereNeeded,
        },
        depth: both.length_or_default("mark.depth"),
    }
}

fn window(both: &Scope) -> WindowDesign {
    WindowDesign {
        kind: match both.text_or_default("window.shape") {
            "round" => WindowKind::Round,
            "ring sector" => WindowKind::RingSector,
            _ => WindowKind::RoundedRectangle,
        },
        shows: if both.text_or_default("window.shows") == "neighbours too" {
            let usual = fixed(DIAL_FILE, "window.neighbour_share").and_then(|share| share.parse().ok()).unwrap_or(0.4);
            Shows::Neighbours(both.number("window.neighbour_share").unwrap_or(usual))
        } else {
            Shows::OneMark
        },
        angle: both.number("window.angle"),
        distance: both.number("window.distance"),
        width: both.number("window.width"),
        height: both.number("window.height"),
        corner: both.number("window.corner"),
    }
}

fn art(reading: &Reading, i: usize, mistakes: &mut Vec<Mistake>) -> Option<ArtDesign> {
    reading.spans.get(&format!("cover.art[{i}]"))?;
    let base = format!("cover.art[{i}].");
    let here = Scope { reading, bases: vec![base] };
    let motif = match (here.text("text"), here.symbol("symbol")) {
        (Some(text), _) => Motif::Text(text.to_owned()),
        (None, Some(symbol)) => Motif::Symbol(symbol),
        // One that is written, but cannot be read, is told already.
        (None, None)
            if ["text", "symbol"].iter().any(|key| reading.spans.get(&format!("cover.art[{i}].{key}")).is_some()) =>
        {
            return None;
        }
        (None, None) => {
            let at = reading
                .spans
                .get(&format!("cover.art[{i}]"))
                .map(|span| Label { span, words: "neither is given here".into() });
            let help = "write `text = \"...\"` or `symbol = \"anchor\"`".into();
            mistakes.push(Mistake { what: "this art is neither text nor a symbol".into(), at, also: Vec::new(), help });
            return None;
        }
    };
    Some(ArtDesign {
        motif,
        at: here.point("at").unwrap_or_default(),
        height: here.number("height").unwrap_or_else(|| default_length(ART, "height")),
        angle: here.number("angle").unwrap_or_else(|| default_angle(ART, "angle")),
    })
}

/// The stocks that a file describes.
pub(crate) fn stocks(reading: &Reading) -> Vec<Stock> {
    let Some(Value::Names(names)) = reading.values.get("stocks") else {
        return Vec::new();
    };
    names
        .iter()
        .map(|name| {
            let here = Scope { reading, bases: vec![format!("stocks.{name}.")] };
            let kerf = here.number("kerf").unwrap_or_else(|| default_length(STOCK, "kerf"));
            let (layers, standards): (Vec<Layer>, Vec<Option<&str>>) =
                (0..here.tables("layers")).map(|k| layer(reading, name, k)).unzip();
            let mut standards: Vec<&str> = standards.into_iter().flatten().collect();
            standards.dedup();
            let figures = here.text("source").unwrap_or("as written in the file");
            Stock {
                name: name.clone(),
                surfaces: surfaces(&here),
                laser: here.text("laser").unwrap_or_default().to_owned(),
                price: price(&here),
                layers,
                friction: here.interval("friction"),
                kerf: Kerf { x: here.number("kerf_x").unwrap_or(kerf), y: here.number("kerf_y").unwrap_or(kerf) },
                source: if standards.is_empty() {
                    figures.to_owned()
                } else {
                    format!("{figures}; limits of thickness: {}", standards.join(", "))
                },
            }
        })
        .collect()
}

/// A layer, and where its limits of thickness come from if the file does not give both.
fn layer(reading: &Reading, stock: &str, k: usize) -> (Layer, Option<&'static str>) {
    let here = Scope { reading, bases: vec![format!("stocks.{stock}.layers[{k}].")] };
    let named = here.text("material").unwrap_or_default().to_owned();
    let material = Material::named(&named);
    let thickness = here.number("thickness").unwrap_or_default();
    let panel = material.map_or(Panel::Other, |material| material.panel);
    let usual = panel.tolerance(thickness);
    let (thinner, thicker) = (here.number("thinner"), here.number("thicker"));
    let standard = (thinner.is_none() || thicker.is_none()).then(|| panel.source());
    let layer = Layer {
        named,
        material,
        thickness,
        thinner: thinner.unwrap_or(usual.0),
        thicker: thicker.unwrap_or(usual.1),
        colour: colour(&here, "colour"),
        engraved: colour(&here, "engraved"),
    };
    (layer, standard)
}

/// A colour that was read already.
fn colour(here: &Scope, path: &str) -> Option<Srgb> {
    here.text(path)?.parse().ok()
}

fn surfaces(here: &Scope) -> Surfaces {
    let finish = |path| here.text(path).and_then(|word| Finish::ALL.iter().find(|one| one.0 == word)).map(|one| one.1);
    Surfaces {
        face: colour(here, "face"),
        back: colour(here, "back"),
        engraved: colour(here, "engraved"),
        engraved_at: here.number("engraved_at").unwrap_or_else(|| default_length(STOCK, "engraved_at")),
        edge: colour(here, "edge"),
        finish: finish("finish"),
        back_finish: finish("back_finish"),
        grain: here.text("grain").map(|word| if word == "none" { Grain::None } else { Grain::AlongTheSheet }),
        source: here.text("looks").unwrap_or(Surfaces::TYPICAL).to_owned(),
        photo: here.text("photo").map(str::to_owned),
        contrast: here
            .number("contrast_least")
            .zip(here.number("contrast_most"))
            .map(|(least, most)| Interval::between(least.min(most), least.max(most))),
    }
}

fn price(here: &Scope) -> Option<Price> {
    let side = |path| here.number(path).unwrap_or_else(|| default_length(STOCK, path));
    here.number("price").map(|sheet| Price { sheet, width: side("sheet_width"), height: side("sheet_height") })
}

/// The stock of a part: the file's own, or the workshop's.
fn stock(dial: &Scope, path: &str, own: &[Stock], workshop: &Workshop, mistakes: &mut Vec<Mistake>) -> Option<Stock> {
    let written = |path: &str| dial.reading.spans.get(path).is_some();
    let at = if written(path) { path } else { "stock" };
    let Some(name) = dial.text(at) else {
        let none = !["stock", "cover.stock", "wheel.stock"].into_iter().any(written);
        let missing = Mistake {
            what: if none {
                "no stock is given".into()
            } else {
                format!("`{path}` is not given, nor `stock` for both parts")
            },
            at: None,
            also: Vec::new(),
            help: "write `stock = \"birch plywood 3 mm\"`; `dialwright list stocks` shows what there is".into(),
        };
        // One that is written, but not as text, is told already; and once is enough for both parts.
        if !written(at) && !mistakes.contains(&missing) {
            mistakes.push(missing);
        }
        return None;
    };
    lookup(dial, at, name, own, workshop, mistakes)
}

/// A stock that only one key names: what is written there, or its usual one.
fn named_stock(
    dial: &Scope,
    path: &str,
    own: &[Stock],
    workshop: &Workshop,
    mistakes: &mut Vec<Mistake>,
) -> Option<Stock> {
    lookup(dial, path, dial.text_or_default(path), own, workshop, mistakes)
}

/// The stock of that name: the file's own, or the workshop's.
fn lookup(
    dial: &Scope,
    at: &str,
    name: &str,
    own: &[Stock],
    workshop: &Workshop,
    mistakes: &mut Vec<Mistake>,
) -> Option<Stock> {
    let found = own.iter().chain(&workshop.stocks).find(|stock| stock.name == name);
    if found.is_none() {
        let known = || own.iter().chain(&workshop.stocks).map(|stock| stock.name.as_str());
        let near = nearest(name, known()).map(|near| format!("did you mean \"{near}\"? ")).unwrap_or_default();
        let mistake = Mistake {
            what: format!("there is no stock “{name}”"),
            at: dial.reading.spans.get(at).map(|span| Label { span, words: "asked for here".into() }),
            also: Vec::new(),
            help: format!(
                "{near}a stock may be described in the file itself, as [stocks.\"{name}\"]; known: {}",
                known().collect::<Vec<_>>().join(", ")
            ),
        };
        // `stock` stands for both parts: say it once.
        if !mistakes.contains(&mistake) {
            mistakes.push(mistake);
        }
    }
    found.cloned()
}
