//! Unknown and never-cut materials: the beam makes poison or fire of some of them.

use super::{Bench, Finding, Part, Severity};
use crate::design::nearest::nearest;
use process::{Cutting, Layer, MATERIALS, Stock};

pub(super) fn check(bench: &Bench) -> Vec<Finding> {
    let cover = (&bench.dial.cover.stock, Part::Cover);
    let wheel = bench.dial.wheels.first().map(|wheel| (&wheel.stock, Part::Wheel(0)));
    let mut seen: Vec<&Stock> = Vec::new();
    let mut findings = Vec::new();
    for (stock, part) in std::iter::once(cover).chain(wheel) {
        if seen.contains(&stock) {
            continue;
        }
        seen.push(stock);
        findings.extend(stock.layers.iter().filter_map(|layer| of_layer(stock, layer, part)));
    }
    findings
}

fn of_layer(stock: &Stock, layer: &Layer, part: Part) -> Option<Finding> {
    let in_stock = format!("“{}” in the stock “{}”", layer.named, stock.name);
    let (severity, what, source, mend) = match layer.material {
        None => (
            Severity::Refuse,
            format!("{in_stock} is not a material the house knows, so nobody has said that it is safe under the beam"),
            "common practice of laser workshops: nothing of unknown make goes into the machine",
            format!(
                "name the material it really is, after its safety data sheet; what has none is not cut{}",
                likely(&layer.named)
            ),
        ),
        Some(material) => match material.cutting {
            Cutting::Usual => return None,
            Cutting::WithDataSheet(must) => (
                Severity::Note,
                format!("{in_stock}: cut it only with its data sheet at hand: {must}"),
                material.source,
                String::new(),
            ),
            Cutting::Never(why) => (
                Severity::Refuse,
                format!("{in_stock} is never cut: {why}"),
                material.source,
                "choose another stock".to_owned(),
            ),
        },
    };
    Some(Finding {
        rule: "materials",
        severity,
        what,
        measured: None,
        limit: None,
        part,
        place: None,
        source,
        mend,
        // What a material is, the maker says: nothing is offered that would say it for him.
        remedies: Vec::new(),
        keys: vec!["stock".into(), "cover.stock".into(), "wheel.stock".into(), format!("stocks.{}", stock.name)],
    })
}

/// The known material whose name is nearest to one that is not known: a slip of the pen, perhaps.
fn likely(name: &str) -> String {
    nearest(name, MATERIALS.iter().map(|material| material.name))
        .map(|known| format!("; if it is “{known}”, write so"))
        .unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::likely;

    /// A slip of the pen is put right; another material is never guessed.
    #[test]
    fn only_slips_of_the_pen_are_guessed() {
        assert_eq!(likely("birch plywod"), "; if it is “birch plywood”, write so");
        assert_eq!(likely("carbon fiber"), "; if it is “carbon fibre”, write so");
        assert_eq!(likely("unobtainium"), "");
    }
}
