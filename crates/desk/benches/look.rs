//! From a text to what the page shows: the heart's part of it, and the desk's own.

use criterion::{Criterion, criterion_group, criterion_main};
use desk::{House, Looks, Seen};
use dial::design;
use dial::findings::{self, Bench};
use dial::{layout, magnets, turning};
use std::hint::black_box;
use std::path::Path;

const HOUSE: House = House {
    workshop_file: |_| None,
    sizes: |dial, _| dial.name.clone(),
    words: |_, _, _, _, _| String::new(),
    job_files: |make| press::job_files(make).map_err(|error| error.to_string()),
    documents: || vec![("dial", "The dial")],
    paper: |_, _, _, which| Ok(format!("%PDF of {}", which.unwrap_or("all")).into_bytes()),
    brief: |_| Err(String::new()),
    votes_place: |dial| dial.with_file_name("votes.toml"),
    contrast: |_, _| Err(String::new()),
    print: |_, _| card::Print::default(),
    card_figures: |_| serde_json::Value::Null,
    measured: |_, _| Err(String::new()),
};

fn looks(c: &mut Criterion) {
    let shop = workshop::starter();
    for (name, text) in [
        ("harbour", include_str!("../../../examples/harbour/dial.toml")),
        ("caravan", include_str!("../../../examples/caravan/dial.toml")),
    ] {
        let read = design::read(text, &shop).expect("reads");
        let laid = layout::assemble(&read).expect("lays out");
        let turns = turning::turn(&laid.dial);
        c.bench_function(&format!("{name}: layout"), |b| b.iter(|| layout::assemble(black_box(&read))));
        c.bench_function(&format!("{name}: turn test"), |b| b.iter(|| turning::turn(black_box(&laid.dial))));
        let looks = dial::looks::look_at(&laid.dial);
        let held = magnets::hold_all(&laid.dial, &turns, &shop.feel);
        let bench = Bench { dial: &laid.dial, turns: &turns, held: &held, looks: &looks, workshop: &shop, family: &[] };
        c.bench_function(&format!("{name}: rules"), |b| b.iter(|| findings::check(black_box(&bench))));
        c.bench_function(&format!("{name}: from text to findings"), |b| {
            b.iter(|| Seen::of(black_box(text), &shop, &[]))
        });
        let mut n = 0;
        c.bench_function(&format!("{name}: from text to the page"), |b| {
            b.iter(|| {
                // Another text each time: a look that is remembered costs nothing.
                n += 1;
                Looks::new(HOUSE, None).at(Path::new("dial.toml"), &format!("{text}# {n}\n"))
            });
        });
    }
}

criterion_group!(benches, looks);
criterion_main!(benches);
