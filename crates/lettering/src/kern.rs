//! What the font takes out of the gap between two characters (GPOS "kern", OpenType 1.9, lookup type 2).

use skrifa::raw::tables::gpos::{PairPos, PositionLookupList, PositionSubtables};
use skrifa::raw::{ReadError, TableProvider, types::Tag};
use skrifa::{FontRef, GlyphId};

/// By how much the second glyph moves along the line, in font units; 0 if the font says nothing.
pub(crate) fn between(font: &FontRef, first: GlyphId, second: GlyphId) -> f64 {
    sum(font, first, second).map_or(0.0, f64::from)
}

fn sum(font: &FontRef, first: GlyphId, second: GlyphId) -> Result<i32, ReadError> {
    let table = font.gpos()?;
    let features = table.feature_list()?;
    let mut lookups = Vec::new();
    for record in features.feature_records() {
        if record.feature_tag() == Tag::new(b"kern") {
            let feature = record.feature(features.offset_data())?;
            lookups.extend(feature.lookup_list_indices().iter().map(|i| i.get()));
        }
    }
    // Each lookup is applied once, however many scripts name it.
    lookups.sort_unstable();
    lookups.dedup();
    let list = table.lookup_list()?;
    let mut all = 0;
    for index in lookups {
        all += by_lookup(&list, usize::from(index), first, second)?;
    }
    Ok(all)
}

/// What the first subtable that holds the pair says.
fn by_lookup(list: &PositionLookupList, index: usize, first: GlyphId, second: GlyphId) -> Result<i32, ReadError> {
    let PositionSubtables::Pair(subtables) = list.lookups().get(index)?.subtables()? else {
        return Ok(0);
    };
    for subtable in subtables.iter() {
        if let Some(moved) = by_subtable(&subtable?, first, second)? {
            return Ok(moved);
        }
    }
    Ok(0)
}

fn by_subtable(subtable: &PairPos, first: GlyphId, second: GlyphId) -> Result<Option<i32>, ReadError> {
    match subtable {
        PairPos::Format1(pairs) => {
            let Some(covered) = pairs.coverage()?.get(first) else {
                return Ok(None);
            };
            for pair in pairs.pair_sets().get(usize::from(covered))?.pair_value_records().iter() {
                let pair = pair?;
                if GlyphId::from(pair.second_glyph()) == second {
                    return Ok(Some(pair.value_record1().x_advance().unwrap_or(0).into()));
                }
            }
            Ok(None)
        }
        PairPos::Format2(classes) => {
            if classes.coverage()?.get(first).is_none() {
                return Ok(None);
            }
            let (one, two) = (classes.class_def1()?.get(first), classes.class_def2()?.get(second));
            let row = classes.class1_records().get(usize::from(one))?;
            let cell = row.class2_records().get(usize::from(two))?;
            Ok(Some(cell.value_record1().x_advance().unwrap_or(0).into()))
        }
    }
}
