//! What a maker may write, and what is said to one who slips.

use magnet::{Disc, Grade};

fn says(text: &str) -> String {
    text.parse::<Disc>().expect_err(text).to_string()
}

#[test]
fn ways_to_write_a_disc() {
    let disc = Disc::new(6.0, 2.0, 1.30).expect("a disc");
    for text in ["6x2:N42", "6x2:1.30T", " 6 x 2 : n42 ", "6 mm x 2 mm : 1.3 T", "6×2:N42SH", "6X2mm:N42"] {
        assert_eq!(text.parse::<Disc>(), Ok(disc), "{text}");
    }
    assert_eq!("6.35x3.2:N52".parse::<Disc>().expect("a disc").remanence(), 1.45);
}

#[test]
fn printed_and_read_again() {
    for text in ["6x2:1.3T", "6.35x3.175:1.45T", "0.1x0.01:0.01T"] {
        assert_eq!(text.parse::<Disc>().expect(text).to_string(), text);
    }
}

#[test]
fn slips() {
    for (text, part) in [
        ("6x2", "such as 6x2:N42"),
        ("6:N42", "such as 6x2:N42"),
        ("", "such as 6x2:N42"),
        ("6,5x2:N42", "use a point for decimals, \"6.5\""),
        ("sixx2:N42", "diameter \"si\" is not a number"),
        ("6x2:1.3", "neither a grade such as N42 nor a remanence in tesla"),
        ("6x2:N43", "grade \"N43\" is not in the table: choose one of N35, N38"),
        ("6x2:13000T", "remanence of 13000 T cannot be"),
        ("6x-2:N42", "thickness of -2 mm cannot be"),
        ("6000x2:N42", "diameter of 6000 mm cannot be: it lies between 0.1 and 1000 mm"),
        ("NaNx2:N42", "diameter of NaN mm"),
        ("6xinf:N42", "thickness of inf mm"),
        ("6x2:é", "neither a grade"),
        ("6x2:T", "remanence \"\" is not a number"),
    ] {
        let said = says(text);
        assert!(said.contains(part), "{text}: {said}");
        assert!(!said.ends_with('.'), "{said}");
    }
}

/// The three makers' tables named at `Grade::remanence`, their spans side by side.
#[test]
fn grades() {
    for (grade, tables) in [
        (Grade::N35, [[1.17, 1.22], [1.18, 1.22], [1.16, 1.21]]),
        (Grade::N38, [[1.22, 1.25], [1.22, 1.25], [1.22, 1.28]]),
        (Grade::N40, [[1.25, 1.28], [1.25, 1.28], [1.25, 1.29]]),
        (Grade::N42, [[1.28, 1.32], [1.28, 1.32], [1.28, 1.32]]),
        (Grade::N45, [[1.32, 1.37], [1.32, 1.38], [1.32, 1.36]]),
        (Grade::N48, [[1.37, 1.42], [1.38, 1.42], [1.38, 1.43]]),
        (Grade::N50, [[1.39, 1.44], [1.40, 1.45], [1.40, 1.45]]),
        (Grade::N52, [[1.42, 1.46], [1.43, 1.48], [1.42, 1.48]]),
    ] {
        let least = tables.iter().map(|t| t[0]).fold(f64::INFINITY, f64::min);
        let most = tables.iter().map(|t| t[1]).fold(0.0, f64::max);
        assert_eq!(grade.remanence(), [least, most], "{grade}");
        assert!((grade.nominal() - 0.5 * (least + most)).abs() < 1e-9, "{grade}");
        // ASTM A1101-16, clause 1.2: sintered NdFeB spans 1.08 to 1.50 T.
        assert!(least >= 1.08 && most <= 1.50);
    }
    assert_eq!(Grade::N42.nominal(), 1.30);
}

/// 7.5 g/cm³: a 6x2 disc weighs 0.42 g (a maker's table).
#[test]
fn mass() {
    let disc: Disc = "6x2:N42".parse().expect("a disc");
    assert!((disc.mass() - 0.424).abs() < 0.001);
}
