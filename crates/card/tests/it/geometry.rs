//! Where the reader finds things, against the camera that took the picture.

use card::{CardPlan, Paper};

use super::scene::{Camera, Chance, Scene};
use super::trial::read;

fn plan() -> CardPlan {
    CardPlan::new(Paper::A4, 6).expect("six steps are allowed")
}

/// A still scene in even light; everything by chance but the camera.
fn scene(camera: Camera) -> Scene {
    let plan = plan();
    let mut scene = Scene::clean(&mut Chance::new(7), &plan, camera.width);
    scene.camera = camera;
    scene.sample.height = 0.0;
    scene.sample.aside = [0.0, 0.0];
    scene
}

/// What the camera projects it meets again: the truth the other tests stand on.
#[test]
fn the_camera_of_the_scenes_is_its_own_inverse() {
    let camera = Camera::new(1600, 1500.0, [60.0, 55.0], 260.0, 35.0, 70.0, 200.0);
    for (x, y, z) in [(0.0, 0.0, 0.0), (140.0, 100.0, 0.0), (70.0, 20.0, 3.0)] {
        let [u, v] = camera.project(x, y, z);
        let [a, b] = camera.meets(u, v, z);
        assert!((a - x).hypot(b - y) < 1e-9, "{x} {y} {z}: {a} {b}");
    }
    // By hand: straight above, 200 mm high, focal length 1000 pixels: 5 pixels to a mm.
    let above = Camera::new(1600, 1000.0, [70.0, 50.0], 200.0, 0.0, 0.0, 0.0);
    let ([a, b], [c, d]) = (above.project(0.0, 50.0, 0.0), above.project(140.0, 50.0, 0.0));
    assert!(((c - a).hypot(d - b) - 700.0).abs() < 1e-9);
}

/// Corners of the card to a twentieth of a mm, at any turn.
#[test]
fn the_card_is_found_where_it_lies() {
    let plan = plan();
    for (tilt, from, roll) in [(0.0, 0.0, 10.0), (35.0, 80.0, 100.0), (33.0, 200.0, 190.0), (20.0, 320.0, 300.0)] {
        let scene = scene(Camera::new(1280, 1100.0, [70.0, 50.0], 235.0, tilt, from, roll));
        let reading = read(&scene.jpeg(&plan), &plan);
        let corners = [(0.0, 0.0), (140.0, 0.0), (140.0, 100.0), (0.0, 100.0)];
        for (found, (x, y)) in reading.outlines.card.iter().zip(corners) {
            let [u, v] = scene.camera.project(x, y, 0.0);
            let off = (found.x - u).hypot(found.y - v) / scene.camera.pixels_to_mm();
            assert!(off < 0.05, "tilt {tilt}: {off} mm");
        }
        assert!((reading.tilt - tilt).abs() < 3.0, "{} {tilt}", reading.tilt);
    }
}

/// A plate of 3 mm lies nearer to the camera than the card, and is seen aside: 2 mm at 35 degrees.
#[test]
fn a_thick_sample_is_found_where_it_is_seen() {
    let plan = plan();
    let mut scene = scene(Camera::new(1280, 1100.0, [70.0, 50.0], 235.0, 34.0, 0.0, 0.0));
    scene.sample.height = 3.0;
    let reading = read(&scene.jpeg(&plan), &plan);
    let places = plan.sample.steps.iter().flat_map(|step| [step.face, step.engraved]);
    let found = reading.outlines.steps.iter().flatten();
    for (place, quad) in places.zip(found) {
        // Half a mm is what the search steps by; patches are read 2 mm inside their own.
        let [u, v] = scene.camera.project(place.x0, place.y0, 3.0);
        let off = (quad[0].x - u).hypot(quad[0].y - v) / scene.camera.pixels_to_mm();
        assert!(off < 0.9, "{off} mm at {place}");
    }
    assert!(reading.shift.hypot() > 1.0, "{}", reading.shift);
}

/// A phone held upright writes its picture lying, and says so in the file (EXIF 2.32, tag 0x0112, value 6).
#[test]
fn a_photo_is_turned_as_its_file_says() {
    let plan = plan();
    let scene = scene(Camera::new(1280, 1100.0, [70.0, 50.0], 235.0, 15.0, 30.0, 20.0));
    let picture = scene.photograph(&plan);
    let upright = read(&picture.jpeg(90), &plan);

    let (width, height) = (picture.width as u32, picture.height as u32);
    let pixels = image::RgbImage::from_raw(width, height, picture.rgb).expect("as many as there are");
    let lying = image::imageops::rotate270(&pixels);
    let mut jpeg = Vec::new();
    image::codecs::jpeg::JpegEncoder::new_with_quality(&mut jpeg, 90).encode_image(&lying).expect("it can be coded");
    // One entry: orientation, short, one value, 6.
    let exif = b"Exif\0\0II*\0\x08\0\0\0\x01\0\x12\x01\x03\0\x01\0\0\0\x06\0\0\0\0\0\0\0";
    let mut segment = vec![0xff, 0xe1, 0, exif.len() as u8 + 2];
    segment.extend(exif);
    jpeg.splice(2..2, segment);
    let turned = read(&jpeg, &plan);

    for (a, b) in upright.outlines.card.iter().zip(&turned.outlines.card) {
        assert!(a.distance(*b) < 0.5, "{a} {b}");
    }
    for (a, b) in upright.steps.iter().zip(&turned.steps) {
        assert!((a.contrast.value / b.contrast.value - 1.0).abs() < 0.02);
    }
}
