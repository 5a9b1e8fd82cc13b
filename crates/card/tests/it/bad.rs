//! What is no good photograph of a card: always a reason, never a panic, and no more memory than a large photo takes.

use std::sync::LazyLock;

use card::{CardPlan, Paper, Photo, Place, Print, Refused, Why};
use proptest::prelude::*;

use super::scene::{Camera, Chance, Picture, Scene};
use super::trial::read;

static PLAN: LazyLock<CardPlan> = LazyLock::new(|| CardPlan::new(Paper::Letter, 5).expect("five steps are allowed"));

fn scene() -> Scene {
    let mut scene = Scene::clean(&mut Chance::new(3), &PLAN, 1000);
    scene.camera = Camera::new(1000, 900.0, [70.0, 50.0], 235.0, 12.0, 50.0, 30.0);
    scene.uncut = false;
    scene.development.blur = 0.5;
    scene
}

/// A good photograph, drawn once.
static GOOD: LazyLock<Vec<u8>> = LazyLock::new(|| scene().jpeg(&PLAN));

fn why(bytes: &[u8]) -> Why {
    card::read(bytes, &PLAN, &Print::default()).map(|reading| reading.best).expect_err("it must be refused").why
}

/// Why a picture is refused.
fn of_picture(picture: &Picture) -> Result<Vec<card::Step>, Refused> {
    let photo = Photo::from_pixels(picture.width as u32, picture.height as u32, picture.rgb.clone());
    card::read_photo(&photo.expect("as many pixels as there are"), &PLAN, &Print::default())
        .map(|reading| reading.steps)
}

#[test]
fn the_good_photograph_is_read() {
    // Otherwise the tests below show nothing.
    read(&GOOD, &PLAN);
}

#[test]
fn what_is_no_picture_is_told() {
    assert!(matches!(why(b""), Why::NotAPicture(_)));
    assert!(matches!(why(b"hello, this is no picture"), Why::NotAPicture(_)));
    assert!(matches!(why(b"\xff\xd8\xff\xe0"), Why::CutShort));
}

/// Cut anywhere, even where a decoder would fill up the rest with grey.
#[test]
fn a_file_cut_short_is_told() {
    for k in 1..40 {
        let length = GOOD.len() * k / 40;
        assert!(matches!(why(&GOOD[..length]), Why::CutShort | Why::NotAPicture(_)), "{length}");
    }
    assert!(matches!(why(&GOOD[..GOOD.len() - 2]), Why::CutShort));
}

/// What some phones write after the picture does no harm.
#[test]
fn what_follows_the_picture_is_left_alone() {
    let longer = [GOOD.as_slice(), b"a short film, perhaps"].concat();
    read(&longer, &PLAN);
}

/// A file of 60 bytes that claims 3.6 thousand million pixels.
#[test]
fn a_huge_picture_is_refused_before_it_takes_memory() {
    let mut file = b"\x89PNG\r\n\x1a\n\0\0\0\x0dIHDR\0\0\xea\x60\0\0\xea\x60\x08\x02\0\0\0".to_vec();
    let checksum = !file[12..].iter().fold(!0_u32, |crc, byte| {
        (0..8).fold(crc ^ u32::from(*byte), |crc, _| (crc >> 1) ^ (0xedb8_8320 & (crc & 1).wrapping_neg()))
    });
    file.extend(checksum.to_be_bytes());
    file.extend(b"\0\0\0\0IDAT\x35\xaf\x06\x1e");
    assert!(matches!(why(&file), Why::TooLarge { .. } | Why::NotAPicture(_)), "{}", why(&file));
}

/// White, black, noise, stripes, one pixel.
#[test]
fn a_picture_without_a_card_is_told() {
    let mut chance = Chance::new(11);
    let mut noise = |_: usize| chance.next() as u8;
    type Maker<'a> = &'a mut dyn FnMut(usize) -> u8;
    let makers: [Maker; 4] = [&mut |_| 255, &mut |_| 0, &mut noise, &mut |i| if i / 3 % 40 < 20 { 30 } else { 220 }];
    for make in makers {
        for (width, height) in [(1, 1), (3, 2), (640, 480)] {
            let rgb = (0..3 * width * height).map(&mut *make).collect();
            let refused = of_picture(&Picture { width, height, rgb }).expect_err("there is no card");
            assert_eq!(refused.why, Why::NoCard, "{width} {height}");
        }
    }
}

/// A table with things on it, black squares among them, and no card.
#[test]
fn a_table_without_a_card_is_told() {
    let mut scene = scene();
    scene.camera = scene.camera.moved(200.0, 150.0);
    let refused = of_picture(&scene.photograph(&PLAN)).expect_err("there is no card");
    assert_eq!(refused.why, Why::NoCard, "{refused}");
}

/// Pushed out over each side of the picture: the corner that is missing is named.
#[test]
fn a_card_cut_off_by_the_picture_is_told() {
    for (dx, dy) in [(55.0, 0.0), (-55.0, 0.0), (0.0, 45.0), (0.0, -45.0)] {
        let mut scene = scene();
        scene.camera = scene.camera.moved(dx, dy);
        let refused = of_picture(&scene.photograph(&PLAN)).expect_err("the card is not whole");
        let Why::NotWhole(place) = refused.why else { panic!("{dx} {dy}: {refused}") };
        let missing = match (dx > 0.0, dx < 0.0, dy > 0.0) {
            (true, ..) => [Place::LowerLeft, Place::UpperLeft],
            (_, true, _) => [Place::LowerRight, Place::UpperRight],
            (.., true) => [Place::LowerLeft, Place::LowerRight],
            _ => [Place::UpperLeft, Place::UpperRight],
        };
        assert!(missing.contains(&place), "{dx} {dy}: {place}");
        assert!(!refused.found.tags.is_empty(), "what was found can be drawn");
    }
}

/// A finger on a corner mark.
#[test]
fn a_covered_corner_is_named() {
    let scene = scene();
    let mut picture = scene.photograph(&PLAN);
    let [u, v] = scene.camera.project(129.0, 11.0, 0.0);
    for y in v as usize - 20..v as usize + 20 {
        for x in u as usize - 20..u as usize + 20 {
            let at = 3 * (y * picture.width + x);
            picture.rgb[at..at + 3].copy_from_slice(&[200, 150, 120]);
        }
    }
    let refused = of_picture(&picture).expect_err("a corner is covered");
    assert_eq!(refused.why, Why::CornerHidden(Place::LowerRight), "{refused}");
}

/// A front camera shows the world mirrored; the numbers would be those of other steps.
#[test]
fn a_mirrored_photo_is_not_taken_for_a_card() {
    let mut picture = scene().photograph(&PLAN);
    for row in picture.rgb.chunks_exact_mut(3 * picture.width) {
        let mirrored: Vec<u8> = row.chunks_exact(3).rev().flatten().copied().collect();
        row.copy_from_slice(&mirrored);
    }
    assert_eq!(of_picture(&picture).expect_err("it is mirrored").why, Why::NoCard);
}

#[test]
fn an_empty_field_is_told() {
    let mut scene = scene();
    scene.sample.face = [scene.print.paper; 3];
    scene.sample.engraved = vec![scene.sample.face; 5];
    scene.sample.grain = 0.0;
    assert_eq!(of_picture(&scene.photograph(&PLAN)).expect_err("nothing is engraved").why, Why::NoSample);
}

/// Laid in by half a turn, its steps would be read in the wrong order; with and without numerals.
#[test]
fn a_sample_the_wrong_way_round_is_noticed() {
    for marks in [true, false] {
        let mut scene = scene();
        scene.sample.turned = std::f64::consts::PI;
        scene.sample.marks = marks;
        let refused = of_picture(&scene.photograph(&PLAN)).expect_err("it lies the wrong way round");
        assert!(matches!(refused.why, Why::UnevenPatch { .. } | Why::UnevenSample { .. } | Why::NoSample), "{refused}");
    }
}

#[test]
fn the_sample_of_another_card_is_noticed() {
    let eight = CardPlan::new(Paper::A4, 8).expect("eight steps are allowed");
    let mut scene = Scene::clean(&mut Chance::new(3), &eight, 1000);
    scene.camera = Camera::new(1000, 900.0, [70.0, 50.0], 235.0, 12.0, 50.0, 30.0);
    let refused = of_picture(&scene.photograph(&eight)).expect_err("its steps lie elsewhere");
    assert!(matches!(refused.why, Why::UnevenPatch { .. } | Why::UnevenSample { .. }), "{refused}");
}

#[test]
fn a_card_far_away_is_told() {
    let mut scene = scene();
    scene.camera = Camera::new(1000, 900.0, [70.0, 50.0], 420.0, 12.0, 50.0, 30.0);
    let refused = of_picture(&scene.photograph(&PLAN)).expect_err("it is too small");
    assert!(matches!(refused.why, Why::TooSmall { .. }), "{refused}");
}

#[test]
fn a_card_seen_from_the_side_is_told() {
    let mut scene = scene();
    scene.camera = Camera::new(1000, 900.0, [70.0, 50.0], 260.0, 52.0, 50.0, 30.0);
    let refused = of_picture(&scene.photograph(&PLAN)).expect_err("it is too steep");
    assert!(matches!(refused.why, Why::TooSteep { .. }), "{refused}");
}

#[test]
fn a_photo_in_the_dark_is_told() {
    let mut scene = scene();
    scene.development.white = 0.04;
    let refused = of_picture(&scene.photograph(&PLAN)).expect_err("it is too dark");
    assert!(matches!(refused.why, Why::TooDark(_)), "{refused}");
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 64, ..ProptestConfig::default() })]

    /// Random bytes, with and without the head of a picture, never panic and never make a reading.
    #[test]
    fn random_bytes_are_refused(head in 0..3_usize, bytes in proptest::collection::vec(any::<u8>(), 0..400)) {
        let heads: [&[u8]; 3] = [b"", b"\xff\xd8\xff", b"\x89PNG\r\n\x1a\n\0\0\0\x0dIHDR"];
        let file = [heads[head], &bytes].concat();
        let refused = card::read(&file, &PLAN, &Print::default()).expect_err("it is no picture");
        prop_assert!(!refused.to_string().is_empty());
    }

    /// A good file with some bytes changed is read or refused.
    #[test]
    fn a_damaged_file_never_panics(places in proptest::collection::vec((any::<prop::sample::Index>(), any::<u8>()), 1..6)) {
        let mut file = GOOD.clone();
        for (place, byte) in places {
            let at = place.index(file.len());
            file[at] = byte;
        }
        if let Err(refused) = card::read(&file, &PLAN, &Print::default()) {
            prop_assert!(!refused.to_string().is_empty());
        }
    }
}
