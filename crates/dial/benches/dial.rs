//! How long a dial takes from its file to its findings, on one core.

use criterion::{Criterion, criterion_group, criterion_main};
use dial::findings::{self, Bench};
use dial::{design, job, layout, magnets, turning};
use std::hint::black_box;

const TWO: &str = include_str!("../../../examples/harbour/dial.toml");

/// Six wheels of sixty stops each.
fn six() -> String {
    let counters: String = ["ash", "birch", "cedar", "elm", "fir", "oak"]
        .iter()
        .map(|name| format!("[[counter]]\nname = \"{name}\"\nvalues = \"0..59\"\nmark = {{ height = \"2.8 mm\" }}\n"))
        .collect();
    format!("name = \"Grove\"\nstock = \"birch plywood 3 mm\"\n{counters}")
}

fn parts(c: &mut Criterion, name: &str, text: &str) {
    let workshop = workshop::starter();
    let design = design::read(text, &workshop).expect("reads");
    let laid = layout::assemble(&design).expect("can be drawn");
    let turns = turning::turn(&laid.dial);
    let held = magnets::hold_all(&laid.dial, &turns, &workshop.feel);
    let looks = dial::looks::look_at(&laid.dial);
    let bench = Bench { dial: &laid.dial, turns: &turns, held: &held, looks: &looks, workshop: &workshop, family: &[] };
    let mut group = c.benchmark_group(name);
    group.sample_size(20);
    group.bench_function("read", |b| b.iter(|| design::read(black_box(text), &workshop).expect("reads")));
    group.bench_function("layout", |b| b.iter(|| layout::assemble(black_box(&design)).expect("can be drawn")));
    group.bench_function("turn test", |b| b.iter(|| turning::turn(black_box(&laid.dial))));
    group.bench_function("magnets", |b| b.iter(|| magnets::hold_all(black_box(&laid.dial), &turns, &workshop.feel)));
    group.bench_function("all rules", |b| b.iter(|| findings::check(black_box(&bench))));
    group.bench_function("job", |b| b.iter(|| job::plan(black_box(&laid.dial), &workshop).expect("fits")));
    group.bench_function("layout, turn test, magnets and all rules", |b| {
        b.iter(|| dial::look(black_box(&design), &workshop, &[]).expect("can be drawn"))
    });
    group.finish();
}

fn all(c: &mut Criterion) {
    parts(c, "two wheels", TWO);
    parts(c, "six wheels of sixty stops", &six());
}

criterion_group!(benches, all);
criterion_main!(benches);
