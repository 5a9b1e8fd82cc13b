//! A stock or a magnet of the starter workshop, as changes that write it into the maker's own file whole: what is there under a
//! name takes the starter's place, so a change of one value must bring all the others along.

use crate::store::{Change, count_at, value_at};
use dial::design::parameters::{LAYER, SHELF_MAGNET, STOCK};
use dial::design::table::{Groups, Kind, all};
use serde_json::{Map, Value};
use toml_edit::DocumentMut;

/// The starter workshop's file.
pub(crate) fn starter() -> DocumentMut {
    workshop::STARTER.parse().unwrap_or_default()
}

/// What is described under a name, as `stocks["oak 3 mm"]`: its parameters, those of its layers left out.
pub(crate) fn groups(of: &str) -> Option<Groups> {
    let kind = of.split_once('[').filter(|(_, name)| name.ends_with("\"]"))?.0;
    match kind {
        "stocks" => Some(STOCK),
        "magnets" => Some(SHELF_MAGNET),
        _ => None,
    }
}

/// Whether a file describes it.
pub(crate) fn has(document: &DocumentMut, of: &str) -> bool {
    let Some((kind, name)) = of.strip_suffix("\"]").and_then(|of| of.split_once("[\"")) else { return false };
    document.get(kind).and_then(|kind| kind.get(name)).is_some()
}

/// The changes, and before them those that write what they belong to and only the starter workshop has.
pub(crate) fn with_whole(text: &str, changes: &[Change]) -> Vec<Change> {
    let Ok(document) = text.parse::<DocumentMut>() else { return changes.to_vec() };
    let starter = starter();
    let mut brought: Vec<String> = Vec::new();
    for change in changes {
        // A change of the whole of it, which takes it out, needs nothing of it.
        let Some((of, _)) = change.place().split_once("\"].") else { continue };
        let of = format!("{of}\"]");
        if !has(&document, &of) && has(&starter, &of) && !brought.contains(&of) {
            brought.push(of);
        }
    }
    brought.iter().flat_map(|of| whole(&starter, of)).chain(changes.iter().cloned()).collect()
}

fn whole(starter: &DocumentMut, of: &str) -> Vec<Change> {
    let written = |base: &str, groups: Groups| -> Map<String, Value> {
        let plain = all(groups).filter(|param| !matches!(param.kind, Kind::List(_)));
        plain
            .filter_map(|param| Some((param.path.into(), value_at(starter, &format!("{base}.{}", param.path))?)))
            .collect()
    };
    let layers = format!("{of}.layers");
    let layer = |k| Change::Add { path: layers.clone(), value: written(&format!("{layers}[{k}]"), LAYER) };
    let set = |(key, value)| Change::Set { path: format!("{of}.{key}"), value };
    let values = groups(of).map(|groups| written(of, groups)).unwrap_or_default();
    (0..count_at(starter, &layers)).map(layer).chain(values.into_iter().map(set)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::store::apply_to;
    use dial::design::parameters::WORKSHOP_FILE;

    /// Whatever stands in the starter workshop is the same once it is written into a file whole, but for what was changed.
    #[test]
    fn nothing_of_the_starter_is_lost_on_the_way() {
        let starter = workshop::starter();
        let set = |path: String| [Change::Set { path, value: "0.05 mm".into() }];
        for stock in &starter.stocks {
            let changes = with_whole("# mine\n", &set(format!("stocks[\"{}\"].kerf", stock.name)));
            let text = apply_to(WORKSHOP_FILE, "# mine\n", &changes)
                .unwrap_or_else(|unfit| panic!("{}: {unfit:?}", stock.name));
            let read = workshop::read(&text).unwrap_or_else(|mistakes| panic!("{text}{mistakes:?}"));
            let mut mine = read.stocks.into_iter().find(|one| one.name == stock.name).expect("there");
            assert_eq!((mine.kerf.x, mine.kerf.y), (0.05, 0.05), "{text}");
            mine.kerf = stock.kerf;
            assert_eq!(&mine, stock, "{text}");
            assert!(text.starts_with("# mine\n"), "{text}");
        }
        for magnet in &starter.magnets {
            let price = [Change::Set { path: format!("magnets[\"{}\"].price", magnet.name), value: 9.0.into() }];
            let text = apply_to(WORKSHOP_FILE, "", &with_whole("", &price)).expect("fits");
            let read = workshop::read(&text).unwrap_or_else(|mistakes| panic!("{text}{mistakes:?}"));
            let mut mine = read.magnets.into_iter().find(|one| one.name == magnet.name).expect("there");
            assert_eq!(mine.price, Some(9.0), "{text}");
            mine.price = magnet.price;
            assert_eq!(&mine, magnet, "{text}");
        }
    }

    #[test]
    fn what_the_file_has_itself_is_left_as_it_is() {
        let text = "[stocks.\"maple 3 mm\"]\nlayers = [{ material = \"maple\", thickness = \"2.8 mm\" }]\n";
        let change = [Change::Set { path: "stocks[\"maple 3 mm\"].kerf".into(), value: "0.1 mm".into() }];
        assert_eq!(with_whole(text, &change), change);
        let unknown = [Change::Set { path: "stocks[\"moon rock\"].kerf".into(), value: "0.1 mm".into() }];
        assert_eq!(with_whole(text, &unknown), unknown);
    }
}
