//! A pair of magnets from the shelf, as changes of the dial file.

use crate::store::Change;
use measure::Interval;
use process::ShelfMagnet;

/// The changes that take a pair from the shelf into the dial file; pockets that were given for others go.
pub(crate) fn takes(cover: &ShelfMagnet, wheel: &ShelfMagnet) -> Vec<Change> {
    let set = |key: &str, value: String| Change::Set { path: format!("magnet.{key}"), value: value.into() };
    let leave = |key: &str| Change::Leave { path: format!("magnet.{key}") };
    let mm = |length: f64| measure::show(length, measure::Units::Millimetres);
    let mut all = vec![
        set("diameter", mm(cover.diameter)),
        set("thickness", mm(cover.thickness)),
        set("grade", grade(cover.remanence)),
        leave("cover_pocket"),
        leave("wheel_pocket"),
    ];
    let other = |key: &str, differs: bool, value: String| if differs { set(key, value) } else { leave(key) };
    all.push(other("wheel_diameter", wheel.diameter != cover.diameter, mm(wheel.diameter)));
    all.push(other("wheel_thickness", wheel.thickness != cover.thickness, mm(wheel.thickness)));
    all.push(other("wheel_grade", wheel.remanence != cover.remanence, grade(wheel.remanence)));
    all
}

/// A remanence as a dial file writes it: by its grade if one promises just this.
pub(crate) fn grade(remanence: Interval) -> String {
    let known = ::magnet::Grade::ALL.into_iter().find(|grade| grade.remanence() == [remanence.low, remanence.high]);
    known.map_or_else(|| format!("{} to {} T", remanence.low, remanence.high), |grade| grade.name().to_owned())
}
