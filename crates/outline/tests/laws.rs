//! Closed forms, and laws that hold for every outline.

use outline::{
    Axis, BezPath, Curve, Edges, KerfSide, Motion, Point, Shape, Side, Turn, Vec2, compensated, enclosing_radius,
    inscribed_circle, mirror_mismatch, narrowest_gap, narrowest_stroke, overlap, overlap_reaches,
};
use proptest::prelude::*;
use std::f64::consts::{FRAC_PI_2, PI, TAU};

fn near(a: f64, b: f64, off: f64) {
    assert!((a - b).abs() <= off, "{a} against {b}, more than {off} apart");
}

#[test]
fn makers_have_the_areas_and_lengths_of_their_closed_forms() {
    let c = Point::new(3.0, -2.0);
    let circle = Curve::circle(c, 7.0);
    near(circle.area(), 49.0 * PI, 1e-9);
    near(circle.perimeter(), 14.0 * PI, 1e-9);
    let rounded = Curve::rounded_rectangle(c, 80.0, 60.0, 8.0);
    near(rounded.area(), 4800.0 - (4.0 - PI) * 64.0, 1e-9);
    near(rounded.perimeter(), 2.0 * (64.0 + 44.0) + 16.0 * PI, 1e-9);
    let stadium = Curve::stadium(c, 50.0, 20.0);
    near(stadium.area(), 600.0 + 100.0 * PI, 1e-9);
    let hexagon = Curve::regular_polygon(c, 6, 10.0, 0.0);
    near(hexagon.area(), 200.0 * 3f64.sqrt(), 1e-9);
    near(hexagon.bounds().y0, -12.0, 1e-9);
    // A polygon with rounded corners: the sharp one less (tan(t/2) - t/2) r^2 for each corner that turns by t.
    let soft = Curve::regular_polygon(c, 6, 10.0, 2.0);
    near(hexagon.area() - soft.area(), 6.0 * 4.0 * ((PI / 6.0).tan() - PI / 6.0), 1e-9);
    let sector = Curve::ring_sector(c, 10.0, 18.0, 1.0, 0.5, 0.0);
    near(sector.area(), 0.5 * (324.0 - 100.0), 1e-9);
    near(sector.perimeter(), 28.0 + 16.0, 1e-9);
    // Crests on the circle, scoops of the asked depth below it.
    let rim = Curve::scalloped(c, 20.0, 30, 0.6);
    near(rim.farthest_from(c), 20.0, 1e-9);
    near(rim.nearest_to(c), 19.4, 1e-9);
}

/// A rounded rectangle with two scoops and two windows; closed forms 4290.902664 and 357.097336, grown by 0.08 4319.439358,
/// shrunk 4262.320231 (worked by hand beforehand).
#[test]
fn the_worked_cover_comes_out_to_the_last_digit() {
    let at = Point::new;
    let mut cover = Shape::from(Curve::rounded_rectangle(at(0.0, 0.0), 80.0, 60.0, 8.0));
    for y in [30.0, -30.0] {
        cover = cover.minus(&Shape::from(Curve::circle(at(0.0, y), 10.0)));
    }
    for x in [-20.0, 20.0] {
        cover = cover.minus(&Shape::from(Curve::rounded_rectangle(at(x, 0.0), 10.0, 7.0, 0.0)));
    }
    near(cover.area(), 4_290.902_664, 1e-6);
    near(cover.perimeter(), 357.097_336, 1e-6);
    near(cover.grown(0.08).expect("closes").area(), 4_319.439_358, 1e-6);
    near(cover.shrunk(0.08).expect("closes").area(), 4_262.320_231, 1e-6);
}

#[test]
fn polygons_that_cannot_be_drawn_are_refused() {
    let p = |x: f64, y: f64| Point::new(x, y);
    assert!(Curve::polygon(&[p(0.0, 0.0), p(1.0, 0.0)], 0.0).is_err());
    assert!(Curve::polygon(&[p(0.0, 0.0), p(10.0, 10.0), p(10.0, 0.0), p(0.0, 10.0)], 0.0).is_err());
    assert!(Curve::polygon(&[p(0.0, 0.0), p(10.0, 0.0), p(0.0, 10.0)], 4.0).is_err());
    assert!(Curve::polygon(&[p(0.0, 0.0), p(f64::NAN, 0.0), p(0.0, 10.0)], 0.0).is_err());
    let clockwise = Curve::polygon(&[p(0.0, 0.0), p(0.0, 10.0), p(10.0, 0.0)], 1.0).expect("fits");
    assert!(!clockwise.is_clockwise());
}

#[test]
fn bezier_paths_become_arcs_within_the_tolerance() {
    let mut path = BezPath::new();
    path.move_to((0.0, 0.0));
    path.curve_to((10.0, -5.0), (20.0, 15.0), (30.0, 0.0));
    path.quad_to((40.0, 20.0), (20.0, 25.0));
    path.line_to((0.0, 18.0));
    path.close_path();
    for tolerance in [0.1, 0.01, 0.001] {
        let edges = Edges::of(&Shape::from_path(&path, tolerance));
        let worst = path
            .segments()
            .flat_map(|segment| (0..=400).map(move |k| kurbo::ParamCurve::eval(&segment, f64::from(k) / 400.0)));
        let worst = worst.map(|p| edges.distance_to(p)).fold(0.0, f64::max);
        assert!(worst <= tolerance, "{worst} off at {tolerance}");
        near(Shape::from_path(&path, tolerance).area(), kurbo::Shape::area(&path).abs(), 100.0 * tolerance);
    }
}

#[test]
fn overlapping_contours_unite_and_opposite_ones_are_holes() {
    let mut path = BezPath::from_svg("M0 0 H10 V10 H0Z M5 5 H15 V15 H5Z").expect("a path");
    near(Shape::from_path(&path, 0.01).area(), 175.0, 1e-9);
    path.extend(BezPath::from_svg("M1 1 V3 H3 V1Z").expect("a path"));
    near(Shape::from_path(&path, 0.01).area(), 171.0, 1e-9);
}

#[test]
fn strokes_gaps_and_circles_measure_what_they_should() {
    let ring = Shape::new(Curve::circle(Point::ZERO, 10.0), vec![Curve::circle(Point::new(0.5, 0.0), 8.0)]);
    near(narrowest_stroke(&ring).expect("a ring has a stroke").width, 1.5, 0.03);
    let (_, radius) = inscribed_circle(&ring, 1e-4).expect("fits");
    near(radius, 1.25, 1e-3);
    let pair = Shape::joined(&[
        Shape::from(Curve::rounded_rectangle(Point::ZERO, 4.0, 10.0, 0.0)),
        Shape::from(Curve::rounded_rectangle(Point::new(5.0, 0.0), 4.0, 10.0, 0.0)),
    ]);
    near(narrowest_gap(&pair).expect("a gap").width, 1.0, 1e-9);
    near(narrowest_stroke(&pair).expect("a stroke").width, 4.0, 1e-9);
    near(enclosing_radius(&[&pair], Point::ZERO), 7.0f64.hypot(5.0), 1e-9);
    // A wedge tapers to nothing, which is no stroke.
    let wedge = Curve::polygon(&[Point::ZERO, Point::new(20.0, -3.0), Point::new(20.0, 3.0)], 0.0).expect("a wedge");
    assert!(narrowest_stroke(&Shape::from(wedge)).is_none_or(|neck| neck.width > 3.0));
}

#[test]
fn a_turning_piece_touches_where_trigonometry_says() {
    // A point-like disc on a circle of 20 about the origin meets a wall at y = 10.
    let disc = Edges::of_curve(&Curve::circle(Point::new(20.0, 0.0), 0.5));
    let wall = Edges::of_curve(&Curve::rounded_rectangle(Point::new(0.0, 15.0), 100.0, 10.0, 0.0));
    let touch = disc.first_touch_turning(Point::ZERO, &wall, Turn::Anticlockwise, PI).expect("touches");
    near(touch.angle, (9.5f64 / 20.0).asin(), 1e-7);
    assert!(disc.first_touch_turning(Point::ZERO, &wall, Turn::Clockwise, FRAC_PI_2).is_none());
    let slid = disc.last_touch_sliding(Vec2::new(0.0, -1.0), &wall, 2.0, 100.0);
    // Coming down from above: the wall's upper side is at 20, the disc's radius 0.5, 2 kept: -s = 22.5.
    near(disc.last_touch_sliding(Vec2::new(0.0, 1.0), &wall, 2.0, 100.0), 22.5, 1e-6);
    assert!(slid.is_finite());
}

#[test]
fn kerf_leaves_holes_and_parts_as_drawn() {
    let hole = Shape::from(Curve::rounded_rectangle(Point::ZERO, 10.0, 8.0, 1.0));
    let path = compensated(&hole, KerfSide::KeepOutside, 0.1, 0.1).expect("closes");
    near(path[0].bounds().width(), 9.8, 1e-9);
    let path = compensated(&hole, KerfSide::KeepInside, 0.1, 0.1).expect("closes");
    near(path[0].bounds().width(), 10.2, 1e-9);
    // Two axes: each direction by its own half kerf, and every point of the path keeps the spot's ellipse touching the edge.
    let (hx, hy) = (0.15, 0.06);
    let disc = Shape::from(Curve::circle(Point::ZERO, 20.0));
    let path = compensated(&disc, KerfSide::KeepInside, hx, hy).expect("closes");
    near(path[0].bounds().width(), 40.0 + 2.0 * hx, 2e-3);
    near(path[0].bounds().height(), 40.0 + 2.0 * hy, 2e-3);
    for piece in path[0].pieces() {
        let p = piece.point_at(0.37);
        // The support of the ellipse in the direction of the disc's normal there.
        let reach =
            (0..3600).map(|k| f64::from(k) * TAU / 3600.0).map(|t| (p.x + hx * t.cos()).hypot(p.y + hy * t.sin()));
        near(reach.fold(f64::INFINITY, f64::min), 20.0, 2e-3);
    }
    assert!(
        compensated(&Shape::from(Curve::circle(Point::ZERO, 0.05)), KerfSide::KeepOutside, 0.1, 0.1)
            .expect("no error")
            .is_empty()
    );
}

#[test]
fn a_mirrored_half_is_exactly_symmetric() {
    let lopsided = Shape::from(Curve::rounded_rectangle(Point::new(3.0, 0.0), 40.0, 20.0, 4.0))
        .minus(&Shape::from(Curve::circle(Point::new(-17.0, 2.0), 5.0)));
    let axis = Axis::vertical(0.0);
    assert!(mirror_mismatch(&lopsided, &axis).distance > 3.0);
    let even = lopsided.mirrored_from(&axis, Side::Left);
    assert!(mirror_mismatch(&even, &axis).distance < 1e-6);
    near(even.area(), 2.0 * lopsided.clipped_to_half(&axis, Side::Left).area(), 1e-3);
    assert_eq!(even.loops().len(), 1);
    // A shape that is off by a known amount is told so: a rectangle shifted by 0.3 misses its image by 0.6.
    let shifted = Shape::from(Curve::rounded_rectangle(Point::new(0.3, 0.0), 40.0, 20.0, 0.0));
    near(mirror_mismatch(&shifted, &axis).distance, 0.6, 2e-3);
}

fn any_curve() -> impl Strategy<Value = Curve> {
    let centre = (-10.0f64..10.0, -10.0f64..10.0).prop_map(|(x, y)| Point::new(x, y));
    (centre, 3.0f64..12.0, 3.0f64..12.0, 0.0f64..1.4, 0..4u8, -3.0f64..3.0).prop_map(|(c, a, b, r, kind, angle)| {
        let curve = match kind {
            0 => Curve::circle(c, a),
            1 => Curve::rounded_rectangle(c, a, b, r),
            2 => Curve::ring_sector(c, a, a + b, angle, 0.3 + r, r * 0.5),
            _ => Curve::regular_polygon(c, 3 + (a as usize), b, r * 0.2),
        };
        curve.moved(&Motion::turn(c, angle))
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, ..ProptestConfig::default() })]

    #[test]
    fn areas_add_up(a in any_curve(), b in any_curve()) {
        let (a, b) = (Shape::from(a), Shape::from(b));
        let (both, rest, all) = (a.common(&b).area(), a.minus(&b).area(), a.united(&b).area());
        prop_assert!((a.area() - both - rest).abs() < 1e-5);
        prop_assert!((a.area() + b.area() - both - all).abs() < 1e-5);
        prop_assert!((overlap(&a, &a) - 1.0).abs() < 1e-9);
        let share = overlap(&a, &b);
        for (asked, reached) in [(share - 1e-6, true), (share + 1e-6, false)] {
            prop_assert_eq!(overlap_reaches(&a, &b, asked), reached);
        }
    }

    /// Steiner's formula for convex shapes: area + perimeter d + pi d^2, perimeter + 2 pi d.
    #[test]
    fn convex_shapes_grow_as_steiner_says(curve in any_curve(), d in 0.01f64..3.0) {
        prop_assume!(curve.segments().iter().all(|piece| !matches!(piece, outline::Segment::Arc { sweep, .. } if *sweep < 0.0)));
        let shape = Shape::from(curve);
        let grown = shape.grown(d).expect("closes");
        prop_assert!((grown.area() - shape.area() - shape.perimeter() * d - PI * d * d).abs() < 1e-6);
        prop_assert!((grown.perimeter() - shape.perimeter() - TAU * d).abs() < 1e-6);
        let back = grown.shrunk(d).expect("closes");
        prop_assert!((back.area() - shape.area()).abs() < 1e-4);
    }

    #[test]
    fn motions_keep_measures_and_undo(curve in any_curve(), angle in -7.0f64..7.0, x in -50.0f64..50.0) {
        let motion = Motion::turn(Point::new(x, 3.0), angle).then(&Motion::mirror(&Axis { point: Point::new(1.0, x), direction: Vec2::new(1.0, angle) }));
        let moved = curve.moved(&motion);
        prop_assert!((moved.area() - curve.area()).abs() < 1e-8 && (moved.perimeter() - curve.perimeter()).abs() < 1e-8);
        let back = moved.moved(&motion.inverse());
        prop_assert!(Edges::of_curve(&back).nearest(&Edges::of_curve(&curve)).distance < 1e-9);
        let p = Point::new(2.0, -x);
        prop_assert!((motion.then(&motion.inverse()).apply(p) - p).hypot() < 1e-9);
    }

    /// Distances against brute force over points.
    #[test]
    fn distances_agree_with_sampling(a in any_curve(), b in any_curve(), away in 0.0f64..60.0) {
        let b = b.moved(&Motion::shift(Vec2::new(away, 0.5 * away)));
        let near = Edges::of_curve(&a).nearest(&Edges::of_curve(&b));
        let sampled = |curve: &Curve| -> Vec<Point> {
            curve.segments().iter().flat_map(|piece| (0..60).map(|k| piece.point_at(f64::from(k) / 60.0)).collect::<Vec<_>>()).collect()
        };
        let (pa, pb) = (sampled(&a), sampled(&b));
        let brute = pa.iter().flat_map(|p| pb.iter().map(move |q| (*p - *q).hypot())).fold(f64::INFINITY, f64::min);
        prop_assert!(near.distance <= brute + 1e-9);
        // Samples lie at most half a step from the true nearest points, on either curve.
        let step = a.segments().iter().chain(&b.segments()).map(outline::Segment::length).fold(0.0, f64::max) / 60.0;
        prop_assert!(brute <= near.distance + 1.5 * step, "{} against {brute}", near.distance);
        if near.distance > 0.0 {
            prop_assert!(((near.on_self - near.on_other).hypot() - near.distance).abs() < 1e-9);
            prop_assert!(Edges::of_curve(&a).distance_to(near.on_self) < 1e-9 && Edges::of_curve(&b).distance_to(near.on_other) < 1e-9);
        }
    }

    /// The first touch is a touch, and nothing touched before it.
    #[test]
    fn touches_are_the_first_ones(a in any_curve(), b in any_curve(), away in 30.0f64..45.0) {
        let fixed = Edges::of_curve(&b.moved(&Motion::shift(Vec2::new(0.0, away))));
        let mover = Edges::of_curve(&a.moved(&Motion::shift(Vec2::new(away, 0.0))));
        prop_assume!(mover.nearest(&fixed).distance > 0.01);
        if let Some(touch) = mover.first_touch_turning(Point::ZERO, &fixed, Turn::Anticlockwise, PI) {
            let at = |angle: f64| mover.moved(&Motion::turn(Point::ZERO, angle)).nearest(&fixed).distance;
            // Where it only grazes, advancing ends a little before contact.
            prop_assert!(at(touch.angle) < 1e-4, "{}", at(touch.angle));
            for k in 1..20 {
                prop_assert!(at(touch.angle * f64::from(k) / 20.0 - 1e-9) > 0.0);
            }
        }
    }
}
