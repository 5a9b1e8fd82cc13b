//! The order: every value of the dial file, whether it is written or not, from the one parameter table.

use crate::house::Shop;
use crate::look::Seen;
use crate::store::{count_at, value_at};
use dial::design::parameters::{ART, COUNTER, DIAL_FILE, LAYER, OVERRIDES, STOCK};
use dial::design::table::{Default, Groups, Kind, Param, all, find};
use dial::design::{Design, Motif};
use dial::magnets;
use lettering::Symbol;
use measure::{Units, parse_angle, parse_length, show};
use outline::Point;
use serde_json::{Map, Value, json};

/// The parameter table for the page: what each is, its unit and range, its default and where that comes from.
pub(crate) fn parameters() -> Value {
    let table = |groups: Groups| {
        let each = all(groups).map(|param| (param.path.to_owned(), of(param)));
        Value::Object(each.collect())
    };
    json!({
        "dial": table(DIAL_FILE),
        "counter": table(COUNTER),
        "art": table(ART),
        "stock": table(STOCK),
        "layer": table(LAYER),
        "workshop": super::shop::parameters(),
        "symbols": Symbol::all().map(|symbol| symbol.name()).collect::<Vec<_>>(),
    })
}

pub(super) fn of(param: &Param) -> Value {
    let (kind, more) = match param.kind {
        Kind::Text => ("text", json!({})),
        Kind::Length(low, high) => ("length", json!({ "low": low, "high": high })),
        Kind::Angle => ("angle", json!({})),
        Kind::Share(low, high) => ("share", json!({ "low": low, "high": high })),
        Kind::Number(low, high) => ("number", json!({ "low": low, "high": high })),
        Kind::Unit(unit, low, high) => ("unit", json!({ "unit": unit, "low": low, "high": high })),
        Kind::Grade => ("grade", json!({})),
        Kind::Friction => ("friction", json!({})),
        Kind::Count(low, high) => ("count", json!({ "low": low, "high": high })),
        Kind::Flag => ("flag", json!({})),
        Kind::Choice(words) => ("choice", json!({ "choices": words })),
        Kind::Words(words) => ("words", json!({ "words_known": words })),
        Kind::Point => ("point", json!({})),
        Kind::Points => ("points", json!({})),
        Kind::Values => ("values", json!({})),
        Kind::Symbols => ("symbols", json!({})),
        Kind::Symbol => ("symbol", json!({})),
        Kind::Stock => ("stock", json!({})),
        Kind::Colour => ("colour", json!({})),
        Kind::List(_) => ("list", json!({})),
        Kind::Named(_) => ("named", json!({})),
    };
    let mut value = json!({
        "kind": kind,
        "words": param.words,
        "range": param.kind.words(),
        "source": param.source,
        "usual": match param.default { Default::Fixed(text) => Some(text), _ => None },
        "derived": match param.default { Default::Derived(words) => Some(words), _ => None },
        "required": param.default == Default::Required,
    });
    if let (Some(into), Value::Object(more)) = (value.as_object_mut(), more) {
        into.extend(more);
    }
    value
}

/// The stocks that may be named: the workshop's, and the file's own.
pub(super) fn stocks(design: &Design, text: &str, shop: &Shop) -> Value {
    let mut names: Vec<String> = shop.workshop.stocks.iter().map(|stock| stock.name.clone()).collect();
    let written: Option<toml_edit::DocumentMut> = text.parse().ok();
    names.extend(written.iter().flat_map(own_stocks));
    names.extend([design.cover.stock.name.clone(), design.wheel_stock.name.clone()]);
    names.sort();
    names.dedup();
    json!(names)
}

/// Every value: what is written, what holds, and where that comes from.
pub(super) fn order(seen: &Seen, text: &str) -> Value {
    let Ok(document) = text.parse::<toml_edit::DocumentMut>() else { return json!({}) };
    let units = seen.laid.dial.show;
    let mut values = Map::new();
    let plain = |param: &&Param| !matches!(param.kind, Kind::List(_) | Kind::Named(_));
    for param in all(DIAL_FILE).filter(plain) {
        let own = value_at(&document, param.path);
        values.insert(param.path.to_owned(), value(param, own, None, derived(seen, param.path), units));
    }
    for i in 0..seen.design.counters.len() {
        for param in all(COUNTER).filter(plain) {
            let path = format!("counter[{i}].{}", param.path);
            let own = value_at(&document, &path);
            let above = find(OVERRIDES, param.path).and_then(|_| value_at(&document, param.path));
            values.insert(path, value(param, own, above, derived_of_counter(seen, i, param.path), units));
        }
    }
    for k in 0..seen.design.cover.art.len() {
        for param in all(ART) {
            let path = format!("cover.art[{k}].{}", param.path);
            let own = value_at(&document, &path);
            values.insert(path, value(param, own, None, None, units));
        }
    }
    for name in own_stocks(&document) {
        let base = format!("stocks[\"{name}\"]");
        let layers =
            (0..count_at(&document, &format!("{base}.layers"))).map(|k| (format!("{base}.layers[{k}]"), LAYER));
        for (base, groups) in std::iter::once((base.clone(), STOCK)).chain(layers) {
            for param in all(groups).filter(plain) {
                let path = format!("{base}.{}", param.path);
                let own = value_at(&document, &path);
                values.insert(path, value(param, own, None, param_words(param), units));
            }
        }
    }
    Value::Object(values)
}

/// The stocks that the file describes itself.
fn own_stocks(document: &toml_edit::DocumentMut) -> Vec<String> {
    let table = document.get("stocks").and_then(|own| own.as_table_like());
    table.iter().flat_map(|table| table.iter()).map(|(name, _)| name.to_owned()).collect()
}

/// Where nothing is computed, what the table says of a derived value.
fn param_words(param: &Param) -> Option<String> {
    match param.default {
        Default::Derived(words) => Some(words.to_owned()),
        _ => None,
    }
}

pub(super) fn value(
    param: &Param,
    own: Option<Value>,
    above: Option<Value>,
    derived: Option<String>,
    units: Units,
) -> Value {
    let (from, shown) = if let Some(own) = &own {
        ("written", in_words(own))
    } else if let Some(above) = &above {
        ("dial", in_words(above))
    } else {
        match param.default {
            Default::Fixed(text) => ("usual", usual(param, text, units)),
            _ => ("derived", derived.unwrap_or_default()),
        }
    };
    json!({ "written": own, "shown": shown, "from": from })
}

/// A default in the maker's own units.
pub(super) fn usual(param: &Param, text: &str, units: Units) -> String {
    match param.kind {
        Kind::Length(..) => parse_length(text).map_or_else(|_| text.to_owned(), |mm| show(mm, units)),
        Kind::Angle => parse_angle(text).map_or_else(|_| text.to_owned(), angle),
        _ => text.to_owned(),
    }
}

fn in_words(value: &Value) -> String {
    match value {
        Value::String(text) => text.clone(),
        Value::Array(list) => list.iter().map(in_words).collect::<Vec<_>>().join(", "),
        other => other.to_string(),
    }
}

fn angle(radians: f64) -> String {
    let degrees = (radians.to_degrees().rem_euclid(360.0) * 10.0).round() / 10.0;
    format!("{} deg", if degrees == 360.0 { 0.0 } else { degrees })
}

fn point(p: Point, units: Units) -> String {
    format!("{}, {}", show(p.x, units), show(p.y, units))
}

/// What the layout derived for a value of the whole dial.
fn derived(seen: &Seen, path: &str) -> Option<String> {
    let (design, dial) = (&seen.design, &seen.laid.dial);
    let mm = |length: f64| show(length, dial.show);
    let outline = dial.cover.outline.bounds();
    let first = dial.wheels.first()?;
    Some(match path {
        "stock" | "cover.stock" => dial.cover.stock.name.clone(),
        "wheel.stock" => design.wheel_stock.name.clone(),
        "symmetry" | "cover.points" => "none".into(),
        "cover.outline" if dial.wheels.len() == 1 => "circle".into(),
        "cover.outline" => "rounded rectangle".into(),
        "cover.width" => mm(outline.width()),
        "cover.height" => mm(outline.height()),
        "standard" | "magnet.ring" | "magnet.ring_stock" | "click.diameter" => "none".into(),
        "magnet.wheel_diameter" => mm(first.seat.wheel.diameter),
        "magnet.wheel_thickness" => mm(first.seat.wheel.thickness),
        "magnet.wheel_grade" => remanence(first.seat.wheel.remanence),
        "magnet.recess" => mm(design.magnet.recess),
        "magnet.stand" => mm(design.magnet.stand),
        "magnet.friction" => format!("{} to {}", first.seat.friction.low, first.seat.friction.high),
        "magnet.spares" => magnets::count(dial).first()?.1.spares.to_string(),
        "click.ring" => mm(first.clicks.as_ref()?.radius),
        "magnet.cover_pocket" => mm(first.cover_pocket.depth),
        "magnet.wheel_pocket" => mm(first.pocket.depth),
        _ => "each by itself".into(),
    })
}

/// A remanence as a dial file writes it.
fn remanence(of: measure::Interval) -> String {
    format!("{} to {} T", of.low, of.high)
}

/// What the layout derived for a value of one counter.
fn derived_of_counter(seen: &Seen, i: usize, path: &str) -> Option<String> {
    let wheel = seen.laid.dial.wheels.get(i)?;
    let counter = seen.design.counters.get(i)?;
    let units = seen.laid.dial.show;
    let mm = |length: f64| show(length, units);
    Some(match path {
        "label" => counter.label.clone(),
        "symbol" => "none".into(),
        "values" | "symbols" => counter.marks.iter().map(Motif::words).collect::<Vec<_>>().join(", "),
        "at" => point(wheel.centre, units),
        "label_height" => {
            let label = seen.laid.dial.cover.art.iter().find(|art| art.weight.is_some() && art.what == counter.label);
            mm(label?.height)
        }
        "wheel.radius" => mm(wheel.radius),
        "wheel.scallops" => "one for each 4 mm of rim".into(),
        "window.angle" => angle(wheel.window.angle),
        "window.distance" => mm(wheel.window.distance),
        "window.width" => mm(wheel.window.width),
        "window.height" => mm(wheel.window.height),
        "window.corner" => mm(wheel.window.corner),
        "notch.angle" => angle(wheel.notch.angle),
        "notch.depth" => mm(wheel.notch.depth),
        _ => return None,
    })
}
