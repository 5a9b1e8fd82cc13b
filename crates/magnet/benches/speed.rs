//! Evaluations a second over the pairs of the reference table, near and far, and the searches of
//! later rooms. `tools/magnet_peer.py time` sets the first two beside another library.

use std::hint::black_box;

use criterion::{Criterion, Throughput};
use magnet::{Disc, Pair};

/// Pair, gap and offset of each row of the table whose gap lies in the range.
fn work(least: f64, most: f64) -> Vec<(Pair, f64, f64)> {
    include_str!("../tests/data/pairs.csv")
        .lines()
        .filter(|line| line.starts_with(|c: char| c.is_ascii_digit()))
        .map(|line| {
            let row: Vec<f64> = line.split(',').map(|x| x.parse().expect("a number")).collect();
            let disc = |i: usize| Disc::new(row[i], row[i + 1], row[i + 2]).expect("a disc");
            (Pair { first: disc(0), second: disc(3) }, row[6], row[7])
        })
        .filter(|(_, gap, _)| (least..=most).contains(gap))
        .collect()
}

fn speed(c: &mut Criterion) {
    let aside = |gap: f64, offset: f64| {
        if offset > 0.0 { offset } else { 0.3 + 0.1 * gap }
    };
    for (name, least, most) in [("near", 0.02, 8.0), ("far", 60.0, 250.0), ("contact", 0.0, 0.0)] {
        let work = work(least, most);
        let mut group = c.benchmark_group(name);
        group.throughput(Throughput::Elements(work.len() as u64));
        group.bench_function("axial", |b| {
            b.iter(|| work.iter().map(|(pair, gap, _)| black_box(pair).pull(*gap)).sum::<f64>());
        });
        group.bench_function("axial and lateral", |b| {
            b.iter(|| {
                work.iter()
                    .map(|(pair, gap, offset)| {
                        let forces = black_box(pair).forces(*gap, aside(*gap, *offset));
                        forces.axial + forces.lateral
                    })
                    .sum::<f64>()
            });
        });
    }
    let disc = Disc::new(6.0, 2.0, 1.3).expect("a disc");
    let pair = Pair::twins(disc);
    let mut group = c.benchmark_group("search");
    group.throughput(Throughput::Elements(1));
    group.bench_function("largest restoring force", |b| {
        b.iter(|| black_box(pair).largest_restoring(0.3));
    });
    group.bench_function("offset for a side force", |b| {
        b.iter(|| black_box(pair).offset_for_side_force(0.3, 0.5));
    });
    group.bench_function("flux index", |b| b.iter(|| black_box(disc).flux_index()));
}

fn main() {
    let mut criterion = Criterion::default().configure_from_args();
    speed(&mut criterion);
    criterion.final_summary();
}
