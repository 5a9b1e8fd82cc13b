//! The drawings themselves: whole, valid, and thick enough to cut.

use lettering::Symbol;
use outline::{BezPath, Shape, narrowest_gap, narrowest_stroke};
use std::path::Path;

/// Least stroke and gap of a drawing, in hundredths of its side: 0.3 mm in a symbol 5 mm high, which common practice
/// calls the least that engraves well in wood.
const LEAST: f64 = 6.0;

/// The file of a symbol.
fn svg(symbol: Symbol) -> String {
    let file = format!("symbols/{}.svg", symbol.name());
    std::fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join(file)).expect("its file")
}

/// A symbol in the units of its file.
fn drawing(symbol: Symbol) -> Shape {
    let file = svg(symbol);
    let data = file.split(" d=\"").nth(1).and_then(|rest| rest.split('"').next());
    let path = BezPath::from_svg(data.expect("a path")).expect("path data");
    Shape::from_path(&path, 0.01)
}

#[test]
fn names_are_sorted_and_words_say_what_is_shown() {
    let names: Vec<&str> = Symbol::all().map(|symbol| symbol.name()).collect();
    assert!(names.len() >= 16, "{names:?}");
    assert!(names.windows(2).all(|pair| pair[0] < pair[1]), "{names:?}");
    for symbol in Symbol::all() {
        assert_eq!(Symbol::named(symbol.name()), Some(symbol));
        assert!(symbol.words().len() > symbol.name().len(), "{}", symbol.name());
        assert!(svg(symbol).contains(&format!("<title>{}</title>", symbol.words())), "{}", symbol.name());
    }
    let files = std::fs::read_dir(Path::new(env!("CARGO_MANIFEST_DIR")).join("symbols")).expect("the folder");
    assert_eq!(files.count(), names.len(), "files without a name");
}

#[test]
fn unknown_names_find_their_nearest() {
    let nearest = |name: &str| -> Vec<&str> { Symbol::nearest(name).iter().map(Symbol::name).collect() };
    assert_eq!(nearest("ancor")[0], "anchor");
    assert_eq!(nearest("Crowns")[0], "crown");
    assert_eq!(nearest("lightning")[0], "bolt");
    assert_eq!(nearest("boat")[0], "sail");
    assert!(nearest("qqq").is_empty());
    assert!(Symbol::all().all(|symbol| nearest(symbol.name())[0] == symbol.name()));
    assert_eq!(Symbol::named("ancor"), None);
}

#[test]
fn drawings_lie_in_their_frame_and_no_line_is_too_thin() {
    for symbol in Symbol::all() {
        let (name, shape) = (symbol.name(), drawing(symbol));
        let frame = shape.bounds();
        assert!(frame.x0 >= 0.0 && frame.y0 >= 0.0 && frame.x1 <= 100.0 && frame.y1 <= 100.0, "{name}: {frame:?}");
        assert!(frame.width().max(frame.height()) > 80.0, "{name} leaves its frame empty: {frame:?}");
        for (what, narrowest) in [("stroke", narrowest_stroke(&shape)), ("gap", narrowest_gap(&shape))] {
            if let Some(neck) = narrowest {
                assert!(neck.width >= LEAST, "{name}: a {what} of {:.2} at {:?}", neck.width, neck.at);
            }
        }
        // The file's own rule of filling, by another reader of SVG.
        let (area, rastered) = (shape.area(), raster_area(&svg(symbol)));
        assert!((area - rastered).abs() < 0.002 * area + 2.0, "{name}: {area}, rastered {rastered}");
    }
}

/// Area of a drawing as resvg fills it, in its own units.
fn raster_area(svg: &str) -> f64 {
    const SCALE: f32 = 8.0;
    let tree = usvg::Tree::from_str(svg, &usvg::Options::default()).expect("a valid SVG file");
    let side = 100 * SCALE as u32;
    let mut pixels = resvg::tiny_skia::Pixmap::new(side, side).expect("pixels");
    resvg::render(&tree, resvg::tiny_skia::Transform::from_scale(SCALE, SCALE), &mut pixels.as_mut());
    let inked: u64 = pixels.pixels().iter().map(|pixel| u64::from(pixel.alpha())).sum();
    inked as f64 / 255.0 / f64::from(SCALE * SCALE)
}

#[test]
fn outlines_are_centred_and_as_high_or_wide_as_asked() {
    for symbol in Symbol::all() {
        for height in [0.8, 7.0, 42.0] {
            let around = symbol.outline(height).bounds();
            let larger = around.width().max(around.height());
            assert!((larger - height).abs() < 1e-3, "{}: {larger}", symbol.name());
            assert!(around.center().to_vec2().hypot() < 1e-9, "{}", symbol.name());
        }
        let scaled = symbol.outline(10.0).area() / 100.0;
        let drawn = drawing(symbol);
        let side = drawn.bounds().width().max(drawn.bounds().height());
        assert!((scaled - drawn.area() / side.powi(2)).abs() < 1e-3, "{}", symbol.name());
    }
}
