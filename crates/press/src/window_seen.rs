//! The worst stop's window as each reader sees it: foreshortened, partly hidden by the cover's own edge, and blurred to their eyes.

use crate::picture::{Picture, dashes, pen, tone};
use dial::Looked;
use dial::assembled::Wheel;
use dial::findings::Quantity;
use dial::looks::Reader;
use outline::{Curve, Motion, Point, Rect, Segment, Shape, Vec2};
use process::Side;
use sight::{ARCMIN, Acuity, Homography, Seat, blur};

const MARGIN: f64 = 6.0;
const WORDS: f64 = 2.4;
/// Room of the cover that is drawn round a window, in mm of the dial.
const ROUND: f64 = 3.0;
/// Widest panel, in mm of the picture.
const WIDEST: f64 = 56.0;
/// Steps in which curves are followed, in mm of the dial.
const STEP: f64 = 0.3;

/// The window of the stop of which least is seen, for every reader with a normal eye, an older one and a weak one. All panels show the
/// same visual angle at the same size. `None` where nobody must read it.
pub fn window_seen(looked: &Looked) -> Option<String> {
    let dial = &looked.laid.dial;
    let readers = &dial.reading.readers;
    let (wheel, stop) = worst(looked)?;
    let one = &dial.wheels[wheel];
    let around = one.window.edge.bounds().inflate(ROUND, ROUND);
    // The nearest reader sees the widest picture.
    let nearest = readers.iter().map(|reader| reader.view.seat().distance()).fold(f64::INFINITY, f64::min);
    let diagonal = around.width().hypot(around.height());
    let per_arcmin = WIDEST / (diagonal / nearest / ARCMIN);
    let title = format!("{}: “{}” of {} as it is seen", dial.name, one.marks[stop].words, one.name);
    let eyes =
        [(Acuity::NORMAL, "a normal eye"), (Acuity::NORMAL.older(), "an older reader"), (Acuity::WEAK, "weak eyes")];
    let width = eyes.len() as f64 * (WIDEST + MARGIN) + MARGIN;
    let mut picture = Picture::new(&title, Rect::new(0.0, 0.0, width, MARGIN));
    let mut top = 0.0;
    for (r, reader) in readers.iter().enumerate() {
        top -= heading(&mut picture, looked, wheel, stop, r, top);
        let scale = per_arcmin / (reader.view.seat().distance() * ARCMIN);
        let high = panel_height(one, reader, scale)?;
        for (k, (acuity, words)) in eyes.iter().enumerate() {
            let middle = Point::new(MARGIN + WIDEST / 2.0 + k as f64 * (WIDEST + MARGIN), top - high / 2.0);
            picture.begin_blur(blur(*acuity) / ARCMIN * per_arcmin);
            view(&mut picture, looked, wheel, stop, reader, middle, scale)?;
            picture.end_blur();
            let below = Point::new(middle.x - WIDEST / 2.0, top - high - WORDS);
            picture.text(below, WORDS, &format!("{acuity}, {words}"), tone::QUIET);
        }
        top -= high + 3.0 * WORDS + MARGIN;
    }
    let from = Point::new(MARGIN, top);
    picture.straight(from, from + Vec2::new(20.0 * per_arcmin, 0.0), pen(tone::INK, 0.4, dashes::NONE));
    picture.text(from + Vec2::new(20.0 * per_arcmin + 2.0, 0.0), WORDS, "20', what a numeral should fill", tone::INK);
    let note = "Drawn in the stocks' colours, as the edge of the cover cuts it off. The blur of a normal eye is Levi and Klein's (1990); that it grows with weaker eyes in proportion is our own proposal: for looking, not for verdicts.";
    let used = picture.paragraph(from - Vec2::new(0.0, 2.5 * WORDS), WORDS, note, tone::QUIET, MARGIN);
    picture.end_at(top - 2.5 * WORDS - used);
    Some(picture.finish())
}

/// One stop's window as the first reader sees it with such eyes, alone; the bar below it is 20' long. From the owner's seat and from
/// farther off, pictures show the same visual angle at the same size. `None` where nobody must read it, or there is no such stop.
pub fn window_from(looked: &Looked, wheel: usize, stop: usize, acuity: Acuity) -> Option<String> {
    let dial = &looked.laid.dial;
    let (one, reader) = (dial.wheels.get(wheel)?, dial.reading.readers.first()?);
    let around = one.window.edge.bounds().inflate(ROUND, ROUND);
    let wide = |distance: f64| around.width().hypot(around.height()) / distance / ARCMIN;
    let distance = reader.view.seat().distance();
    let per_arcmin = WIDEST / wide(distance.min(Seat::OWNER.distance()));
    let scale = per_arcmin / (distance * ARCMIN);
    let title = format!("“{}” of {} as {} sees it", one.marks.get(stop)?.words, one.name, reader.words());
    let mut picture = Picture::new(&title, Rect::new(0.0, -WIDEST - 6.0, WIDEST, 0.0));
    picture.begin_blur(blur(acuity) / ARCMIN * per_arcmin);
    view(&mut picture, looked, wheel, stop, reader, Point::new(WIDEST / 2.0, -WIDEST / 2.0), scale)?;
    picture.end_blur();
    let from = Point::new(2.0, -WIDEST - 3.0);
    picture.straight(from, from + Vec2::new(20.0 * per_arcmin, 0.0), pen(tone::INK, 0.4, dashes::NONE));
    picture.text(from + Vec2::new(20.0 * per_arcmin + 2.0, 0.0), WORDS, "20'", tone::INK);
    Some(picture.finish())
}

/// Wheel and stop of which any reader sees least.
fn worst(looked: &Looked) -> Option<(usize, usize)> {
    let wheels = looked.looks.wheels.iter().enumerate();
    let all = wheels.flat_map(|(i, look)| look.seen.iter().map(move |seen| (i, seen.worst, seen.at_worst())));
    let least =
        all.min_by(|a, b| a.2.height_share().total_cmp(&b.2.height_share()).then(a.2.share.total_cmp(&b.2.share)));
    least.map(|(wheel, stop, _)| (wheel, stop))
}

fn heading(picture: &mut Picture, looked: &Looked, wheel: usize, stop: usize, r: usize, top: f64) -> f64 {
    let dial = &looked.laid.dial;
    let (reader, seen) = (&dial.reading.readers[r], &looked.looks.wheels[wheel].seen[r]);
    let here = seen.stops[stop];
    let contrast = looked.looks.wheels[wheel].engraving.as_ref();
    let words = format!(
        "“{}” of {} to {}, {} away, looking down at {:.0}°: {} high, {:.0} % of its height seen, contrast {}",
        dial.wheels[wheel].marks[stop].words,
        dial.wheels[wheel].name,
        reader.words(),
        measure::show(reader.view.seat().distance(), dial.show),
        reader.view.seat().elevation().to_degrees(),
        Quantity::Sight(seen.angle).show(dial.show),
        (here.height_share().max(0.0) * 100.0).floor(),
        contrast.map_or("none: it goes through".to_owned(), |one| format!("{}:1", one.contrast.shown())),
    );
    let at = Point::new(MARGIN, top - WORDS);
    picture.paragraph(at, WORDS, &words, tone::INK, MARGIN) + 1.5 * WORDS
}

/// The card of cover that is drawn round the window.
fn card(wheel: &Wheel) -> Curve {
    let around = wheel.window.edge.bounds().inflate(ROUND, ROUND);
    Curve::rounded_rectangle(around.center(), around.width(), around.height(), 1.0)
}

/// The map of one plane of the dial into the reader's picture, about the window's middle.
fn plane(reader: &Reader, depth: f64) -> Option<Homography> {
    reader.view.seen(depth).ok()
}

fn panel_height(wheel: &Wheel, reader: &Reader, scale: f64) -> Option<f64> {
    let map = plane(reader, 0.0)?;
    let card = seen_as(&Shape::from(card(wheel)), wheel.window.centre, &map, Point::ZERO, scale);
    Some(card.bounds().height())
}

fn view(
    picture: &mut Picture,
    looked: &Looked,
    wheel: usize,
    stop: usize,
    reader: &Reader,
    middle: Point,
    scale: f64,
) -> Option<()> {
    let dial = &looked.laid.dial;
    let look = &looked.looks.wheels[wheel];
    let one = &dial.wheels[wheel];
    let (cover, centre) = (&dial.cover.stock, one.window.centre);
    let depth = look.seen.first()?.depth;
    let upper = plane(reader, 0.0)?;
    let place = |shape: &Shape, map: &Homography| seen_as(shape, centre, map, middle, scale);
    // The card about the middle of its own picture, whatever the view makes of it.
    let window = Shape::from(one.window.edge.clone());
    let opening = place(&window, &upper);
    let floor = opening.common(&place(&window, &plane(reader, cover.thickness())?));
    let card = place(&Shape::from(card(one)), &upper);
    picture.fill(&card, &cover.colour(Side::Face).to_string());
    picture.fill(&opening, &cover.edge().to_string());
    picture.fill(&floor, &one.stock.colour(Side::Face).to_string());
    let colour =
        look.engraving.as_ref().map_or_else(|| tone::INK.to_owned(), |engraving| engraving.worst.colour.to_string());
    let wheel_plane = plane(reader, depth)?;
    let turned = Motion::turn(one.centre, one.turned_to(stop));
    let reach = one.window.edge.bounds();
    for mark in &one.marks {
        let there = mark.shape.moved(&turned);
        if reach.overlaps(there.bounds()) {
            picture.fill(&place(&there, &wheel_plane).common(&floor), &colour);
        }
    }
    Some(())
}

/// A shape of the dial as it is seen, about `middle` of the picture.
fn seen_as(shape: &Shape, centre: Point, map: &Homography, middle: Point, scale: f64) -> Shape {
    let loops = shape.loops().iter().map(|one| {
        let points = followed(one).into_iter().filter_map(|p| {
            let at = p - centre;
            map.apply([at.x, at.y]).map(|[x, y]| middle + Vec2::new(x, y) * scale)
        });
        polygon(&points.collect::<Vec<_>>())
    });
    Shape::from_loops(loops.flatten().collect())
}

fn polygon(points: &[Point]) -> Option<Curve> {
    let next = points.iter().cycle().skip(1);
    let sides: Vec<Segment> =
        points.iter().zip(next).map(|(from, to)| Segment::Line { from: *from, to: *to }).collect();
    Curve::from_segments(&sides).ok()
}

/// Points along a curve, close enough to be joined by lines.
fn followed(curve: &Curve) -> Vec<Point> {
    let along = |piece: Segment| {
        let steps = match piece {
            Segment::Line { from, to } => ((to - from).hypot() / 2.0).ceil(),
            Segment::Arc { radius, sweep, .. } => (radius * sweep.abs() / STEP).ceil(),
        };
        let steps = steps.clamp(1.0, 400.0) as usize;
        (0..steps).map(move |k| piece.point_at(k as f64 / steps as f64))
    };
    crate::light::light(curve).into_iter().flat_map(along).collect()
}
