//! Texts, their finest places, and the search for twins among a hundred marks.

use criterion::{Criterion, criterion_group, criterion_main};
use lettering::{Lettering, TwinMark, Weight, upside_down_twins};
use outline::Shape;
use std::hint::black_box;
use std::time::Instant;

/// What is paid once in a process: ten figures of a weight that nothing has touched.
fn first_time() {
    let figures: Vec<String> = ('0'..='9').map(String::from).collect();
    let start = Instant::now();
    let lettering = Lettering::shipped(Weight::SemiBold);
    for text in &figures {
        let _ = black_box(lettering.inscription(text, 5.0, TwinMark::None));
    }
    let outlines = start.elapsed();
    for text in &figures {
        black_box(lettering.thinnest_stroke(text, 5.0));
        black_box(lettering.smallest_island(text, 5.0));
    }
    let measures = start.elapsed() - outlines;
    println!("ten figures for the first time: outlines {outlines:?}, finest places {measures:?}");
}

fn all(c: &mut Criterion) {
    first_time();
    let lettering = Lettering::shipped(Weight::Medium);
    let numbers: Vec<String> = (0..100).map(|n| n.to_string()).collect();
    let set = || -> Vec<Shape> {
        let shapes = numbers.iter().map(|text| lettering.inscription(text, 5.0, TwinMark::None));
        shapes.filter_map(Result::ok).collect()
    };
    let shapes = set();
    let marks: Vec<&Shape> = shapes.iter().collect();
    c.bench_function("numbers 0 to 99", |b| b.iter(set));
    c.bench_function("a word of seven letters", |b| {
        b.iter(|| lettering.inscription(black_box("Victory"), 5.0, TwinMark::None))
    });
    c.bench_function("finest places of 0 to 99", |b| {
        b.iter(|| {
            for text in &numbers {
                black_box(lettering.thinnest_stroke(text, 5.0));
                black_box(lettering.smallest_island(text, 5.0));
            }
        })
    });
    c.bench_function("twins among a hundred", |b| b.iter(|| upside_down_twins(black_box(&marks))));
}

criterion_group! {
    name = benches;
    config = Criterion::default().sample_size(20);
    targets = all
}
criterion_main!(benches);
