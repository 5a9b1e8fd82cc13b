//! A photo of 12 million pixels from its bytes to its reading, on one core, and what of that is decoding alone: the peer in
//! the same run is the decoder. Then the parts.

use std::hint::black_box;

use card::{CardPlan, Paper, Photo, Print};
use criterion::Criterion;
use scene::{Camera, Chance, Scene};

#[path = "../tests/scene/mod.rs"]
#[allow(dead_code, reason = "the tests draw more of the scenes")]
mod scene;

fn speed(c: &mut Criterion) {
    let plan = CardPlan::new(Paper::A4, 8).expect("eight steps are allowed");
    let mut scene = Scene::clean(&mut Chance::new(1), &plan, 4000);
    scene.camera = Camera::new(4000, 3000.0, [72.0, 48.0], 220.0, 25.0, 60.0, 15.0);
    scene.development.quality = 92;
    let upright = scene.jpeg(&plan);
    let print = Print::default();
    card::read(&upright, &plan, &print).expect("a clean scene is read");
    // As most phones write it: lying, with a note to turn it (EXIF orientation 6), which costs a turn of all pixels.
    let mut lying = upright.clone();
    let exif = b"\xff\xe1\0\x22Exif\0\0II*\0\x08\0\0\0\x01\0\x12\x01\x03\0\x01\0\0\0\x06\0\0\0\0\0\0\0";
    lying.splice(2..2, *exif);

    let mut group = c.benchmark_group("12 megapixels");
    group.sample_size(10);
    group.bench_function("peer: the decoder alone", |b| {
        b.iter(|| image::load_from_memory_with_format(black_box(&upright), image::ImageFormat::Jpeg));
    });
    group.bench_function("decode", |b| b.iter(|| Photo::decode(black_box(&upright))));
    group.bench_function("decode and turn", |b| b.iter(|| Photo::decode(black_box(&lying))));
    let photo = Photo::decode(&upright).expect("it is a picture");
    group.bench_function("read what is decoded", |b| b.iter(|| card::read_photo(black_box(&photo), &plan, &print)));
    group.bench_function("decode and read", |b| b.iter(|| card::read(black_box(&upright), &plan, &print)));
    group.bench_function("decode, turn and read", |b| b.iter(|| card::read(black_box(&lying), &plan, &print)));
    let grey = Photo::from_pixels(4000, 3000, vec![128; 36_000_000]).expect("as many as there are");
    group.bench_function("refuse what shows no card", |b| {
        b.iter(|| card::read_photo(black_box(&grey), &plan, &print).is_err());
    });
    group.finish();
}

fn main() {
    let mut criterion = Criterion::default().configure_from_args();
    speed(&mut criterion);
    criterion.final_summary();
}
