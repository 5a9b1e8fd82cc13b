//! The marks of each counter as outlines, upright, about the place where they will stand in their window.

use crate::design::{CounterDesign, Design, Motif, Twins};
use crate::spans::{Label, Mistake};
use lettering::{Lettering, TwinMark};
use outline::{Motion, Rect, Shape, Vec2};

/// One mark, upright, origin where the window's middle will be.
#[derive(Clone, Debug)]
pub(super) struct Inscribed {
    pub(super) motif: Motif,
    pub(super) words: String,
    pub(super) shape: Shape,
    pub(super) told_apart: bool,
}

/// The marks of all counters, or what cannot be drawn.
pub(super) fn inscribe_all(design: &Design) -> Result<Vec<Vec<Inscribed>>, Vec<Mistake>> {
    let mut mistakes = Vec::new();
    let mut all = Vec::new();
    for (index, counter) in design.counters.iter().enumerate() {
        match inscribe(counter, counter.mark.height) {
            Ok(marks) => all.push(marks),
            Err((what, help)) => {
                let span =
                    ["values", "symbols"].iter().find_map(|key| design.spans.get(&format!("counter[{index}].{key}")));
                let at = span.map(|span| Label { span, words: "asked for here".into() });
                mistakes.push(Mistake { what, at, also: Vec::new(), help });
            }
        }
    }
    if mistakes.is_empty() { Ok(all) } else { Err(mistakes) }
}

/// The marks of one counter at a height, centred together: one base line for all of them, the middle
/// of the box around all at the origin.
pub(super) fn inscribe(counter: &CounterDesign, height: f64) -> Result<Vec<Inscribed>, (String, String)> {
    let draw = |motif: &Motif, twin| motif_outline(motif, height, counter.mark.weight, twin);
    let plain: Vec<Shape> = counter.marks.iter().map(|motif| draw(motif, TwinMark::None)).collect::<Result<_, _>>()?;
    let told = told_apart(counter, &plain);
    let mut marks = Vec::with_capacity(plain.len());
    for ((motif, shape), twin) in counter.marks.iter().zip(plain).zip(told) {
        let shape = if twin == TwinMark::None { shape } else { draw(motif, twin)? };
        let words = motif.words();
        marks.push(Inscribed { motif: motif.clone(), words, shape, told_apart: twin != TwinMark::None });
    }
    let middle = around(&marks).center().to_vec2();
    for mark in &mut marks {
        mark.shape = mark.shape.moved(&Motion::shift(-middle));
    }
    Ok(marks)
}

/// The box around all marks when each stands in the window.
pub(super) fn around(marks: &[Inscribed]) -> Rect {
    let mut boxes = marks.iter().map(|mark| mark.shape.bounds());
    let first = boxes.next().unwrap_or_default();
    boxes.fold(first, |all, one| all.union(one))
}

/// Which mark each motif gets against being read upside down.
fn told_apart(counter: &CounterDesign, plain: &[Shape]) -> Vec<TwinMark> {
    let mut told = vec![TwinMark::None; plain.len()];
    match counter.mark.twins {
        Twins::WhereNeeded => {
            let shapes: Vec<&Shape> = plain.iter().collect();
            for twin in lettering::upside_down_twins(&shapes) {
                told[twin.first] = TwinMark::Bar;
                told[twin.second] = TwinMark::Bar;
            }
        }
        Twins::Always(mark) => {
            for (i, motif) in counter.marks.iter().enumerate() {
                if has_twin(motif, &counter.marks) {
                    told[i] = mark;
                }
            }
        }
    }
    told
}

/// Whether the figures of a mark, read upside down, are another mark of the same counter.
fn has_twin(motif: &Motif, all: &[Motif]) -> bool {
    let Motif::Text(text) = motif else {
        return false;
    };
    let Some(turned) = lettering::reads_upside_down(text) else {
        return false;
    };
    turned != *text && all.iter().any(|other| matches!(other, Motif::Text(other) if *other == turned))
}

/// The outline of text or a symbol, about its own middle.
pub(super) fn motif_outline(
    motif: &Motif,
    height: f64,
    weight: lettering::Weight,
    twin: TwinMark,
) -> Result<Shape, (String, String)> {
    match motif {
        Motif::Text(text) => Lettering::shipped(weight).inscription(text, height, twin).map_err(|error| {
            (
                format!("“{text}” cannot be engraved: {error}"),
                "use other characters, or one of the built-in symbols".into(),
            )
        }),
        Motif::Symbol(symbol) => {
            let shape = symbol.outline(height);
            let middle = shape.bounds().center().to_vec2();
            Ok(shape.moved(&Motion::shift(Vec2::ZERO - middle)))
        }
    }
}

impl Motif {
    /// The text itself, or the symbol's name.
    pub fn words(&self) -> String {
        match self {
            Motif::Text(text) => text.clone(),
            Motif::Symbol(symbol) => symbol.name().to_owned(),
        }
    }
}
