//! Booleans, offsets, distances and touches, on the outlines that a dial is made of.

use criterion::{Criterion, criterion_group, criterion_main};
use outline::{Curve, Edges, Motion, Point, Shape, Turn, Vec2};
use std::hint::black_box;

/// A rounded cover with two scoops and two windows.
fn cover() -> Shape {
    let mut cover = Shape::from(Curve::rounded_rectangle(Point::ZERO, 80.0, 60.0, 8.0));
    for y in [30.0, -30.0] {
        cover = cover.minus(&Shape::from(Curve::circle(Point::new(0.0, y), 10.0)));
    }
    for x in [-20.0, 20.0] {
        cover = cover.minus(&Shape::from(Curve::rounded_rectangle(Point::new(x, 0.0), 10.0, 7.0, 0.0)));
    }
    cover
}

/// A star with so many corners whose radii vary, the same each time.
fn star(corners: usize, seed: u64) -> Shape {
    let mut state = seed;
    let points: Vec<Point> = (0..corners)
        .map(|k| {
            state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            let radius = 30.0 + 10.0 * ((state >> 33) as f64 / (1u64 << 31) as f64);
            Point::ZERO + radius * Vec2::from_angle(std::f64::consts::TAU * k as f64 / corners as f64)
        })
        .collect();
    Shape::from(Curve::polygon(&points, 0.0).expect("a star"))
}

fn all(c: &mut Criterion) {
    let cover = cover();
    c.bench_function("cover: booleans", |b| b.iter(self::cover));
    c.bench_function("cover: grown by 0.08", |b| b.iter(|| black_box(&cover).grown(0.08)));
    for corners in [200, 2000] {
        let (one, other) = (star(corners, 1), star(corners, 2));
        c.bench_function(&format!("star of {corners}: difference"), |b| b.iter(|| black_box(&one).minus(&other)));
        c.bench_function(&format!("star of {corners}: grown by 0.08"), |b| b.iter(|| black_box(&one).grown(0.08)));
    }
    let window = Edges::of_curve(&Curve::rounded_rectangle(Point::new(30.0, 0.0), 9.0, 7.0, 0.8));
    let mark = Edges::of(&star(60, 3).scaled(Point::ZERO, 0.07).moved(&Motion::shift(Vec2::new(30.0, 0.0))));
    c.bench_function("mark of 60 pieces: nearest to window", |b| b.iter(|| black_box(&mark).nearest(&window)));
    c.bench_function("mark of 60 pieces: first touch turning", |b| {
        b.iter(|| black_box(&mark).first_touch_turning(Point::ZERO, &window, Turn::Anticlockwise, 0.3))
    });
}

criterion_group!(benches, all);
criterion_main!(benches);
