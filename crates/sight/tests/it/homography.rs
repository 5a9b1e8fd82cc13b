//! Homographies against values worked by hand, a closed form, two other libraries, and what no view can be.

use std::collections::BTreeMap;

use proptest::prelude::*;
use sight::{Axes, Homography, HomographyError, Side};

use crate::table::{agree, rows};

type Pair = ([f64; 2], [f64; 2]);

const SQUARE: [[f64; 2]; 4] = [[0.0, 0.0], [1.0, 0.0], [1.0, 1.0], [0.0, 1.0]];

fn pairs(from: &[[f64; 2]], to: &[[f64; 2]]) -> Vec<Pair> {
    from.iter().copied().zip(to.iter().copied()).collect()
}

fn fit(pairs: &[Pair]) -> Homography {
    Homography::fit(pairs, Axes::Alike).expect("a map").homography
}

fn apply(map: &Homography, point: [f64; 2]) -> [f64; 2] {
    map.apply(point).expect("in sight")
}

fn distance(one: [f64; 2], other: [f64; 2]) -> f64 {
    (one[0] - other[0]).hypot(one[1] - other[1])
}

/// By hand: (2x + y, 2y) / (1 + x) takes the unit square to (0,0), (1,0), (3/2,1), (1,2).
#[test]
fn worked_by_hand() {
    let map = fit(&pairs(&SQUARE, &[[0.0, 0.0], [1.0, 0.0], [1.5, 1.0], [1.0, 2.0]]));
    let hand = [[2.0, 1.0, 0.0], [0.0, 2.0, 0.0], [1.0, 0.0, 1.0]];
    let scale = map.matrix()[2][2];
    for (row, expected) in map.matrix().iter().zip(hand) {
        for (cell, expected) in row.iter().zip(expected) {
            agree("matrix", cell / scale, expected, 1e-12);
        }
    }
    // The middle, (1/2, 1/2), goes to (3/2, 1) / (3/2).
    assert!(distance(apply(&map, [0.5, 0.5]), [1.0, 2.0 / 3.0]) < 1e-12);
    // x = -1 is the horizon, and beyond it nothing is seen.
    assert_eq!(map.apply([-1.1, 0.0]), None);
    // The inverse by hand, by Cramer's rule: the determinant is 4.
    let back = Homography::from_matrix(hand).expect("a map").inverse().matrix();
    for (row, expected) in back.iter().zip([[0.5, -0.25, 0.0], [0.0, 0.5, 0.0], [-0.5, 0.25, 1.0]]) {
        for (cell, expected) in row.iter().zip(expected) {
            agree("inverse", *cell, expected, 1e-15);
        }
    }
}

/// The closed form for the unit square (P. Heckbert, Fundamentals of Texture Mapping and Image Warping, master's
/// thesis, Berkeley 1989, section 2.2.3), which solves no system of nine.
fn heckbert(to: &[[f64; 2]; 4]) -> [[f64; 3]; 3] {
    let [[x0, y0], [x1, y1], [x2, y2], [x3, y3]] = *to;
    let (dx1, dx2, sx) = (x1 - x2, x3 - x2, x0 - x1 + x2 - x3);
    let (dy1, dy2, sy) = (y1 - y2, y3 - y2, y0 - y1 + y2 - y3);
    let whole = dx1 * dy2 - dx2 * dy1;
    let (g, h) = ((sx * dy2 - dx2 * sy) / whole, (dx1 * sy - sx * dy1) / whole);
    [[x1 - x0 + g * x1, x3 - x0 + h * x3, x0], [y1 - y0 + g * y1, y3 - y0 + h * y3, y0], [g, h, 1.0]]
}

/// Four points are met exactly, and every other point goes where two other libraries send it; of more points the map is
/// that of the same method elsewhere, and within a quarter of the noise (0.2) of the least sum of squares.
#[test]
fn other_libraries() {
    let mut cases: BTreeMap<u64, Vec<Vec<f64>>> = BTreeMap::new();
    for row in rows(include_str!("../data/homographies.csv"), 9) {
        cases.entry(row[0] as u64).or_default().push(row);
    }
    assert_eq!(cases.len(), 40);
    for (case, rows) in cases {
        let at = |row: &Vec<f64>, column: usize| [row[column], row[column + 1]];
        let pairs: Vec<Pair> = rows.iter().filter(|row| !row[3].is_nan()).map(|row| (at(row, 1), at(row, 3))).collect();
        assert!(pairs.len() >= 4 && pairs.len() + 6 == rows.len());
        let map = fit(&pairs);
        // OpenCV reckons with single precision here.
        let (same, least) = if pairs.len() == 4 { (1e-10, 1e-3) } else { (1e-4, 0.05) };
        for row in &rows {
            let found = apply(&map, at(row, 1));
            assert!(distance(found, at(row, 5)) < same, "case {case}: {found:?}, scikit-image {:?}", at(row, 5));
            assert!(distance(found, at(row, 7)) < least, "case {case}: {found:?}, OpenCV {:?}", at(row, 7));
        }
    }
}

#[test]
fn residuals_are_distances_in_the_target() {
    let mut points = pairs(&SQUARE, &SQUARE);
    points.push(([0.5, 0.5], [0.5, 0.5]));
    assert!(Homography::fit(&points, Axes::Alike).expect("a map").worst() < 1e-14);
    points[4].1 = [0.5, 0.6];
    let fitted = Homography::fit(&points, Axes::Alike).expect("a map");
    for ((from, to), residual) in points.iter().zip(&fitted.residuals) {
        agree("residual", *residual, distance(apply(&fitted.homography, *from), *to), 1e-15);
    }
    assert!(fitted.worst() > 0.02 && fitted.root_mean_square() < fitted.worst());
}

#[test]
fn what_no_view_can_be_is_refused_with_its_reason() {
    let far = [[0.0, 0.0], [10.0, 0.0], [11.0, 9.0], [1.0, 10.0]];
    let error = |from: &[[f64; 2]], to: &[[f64; 2]], axes| {
        let error = Homography::fit(&pairs(from, to), axes).expect_err("no view");
        (error, error.to_string())
    };
    let (which, words) = error(&SQUARE[..3], &far[..3], Axes::Alike);
    assert_eq!(which, HomographyError::TooFew { given: 3 });
    assert!(words.contains("only 3 points") && words.contains("find more"), "{words}");

    let (which, words) = error(&SQUARE, &[far[0], far[1], [f64::NAN, 0.0], far[3]], Axes::Alike);
    assert_eq!(which, HomographyError::NoPlace { pair: 2 });
    assert!(words.contains("point 3"), "{words}");

    // Three in line, on either side, and five with four in line.
    let line = [[0.0, 0.0], [1.0, 1.0], [3.0, 3.0], [0.0, 1.0]];
    assert_eq!(error(&line, &far, Axes::Alike).0, HomographyError::OnALine { side: Side::Source });
    let (which, words) = error(&far, &line, Axes::Alike);
    assert_eq!(which, HomographyError::OnALine { side: Side::Target });
    assert!(words.contains("no three are in line"), "{words}");
    let five = [[9.0, 2.0], [0.0, 0.0], [1.0, 1.0], [3.0, 3.0], [7.0, 7.0]];
    assert_eq!(error(&five, &five, Axes::Alike).0, HomographyError::OnALine { side: Side::Source });
    // Two off the line suffice.
    let six = [five[0], five[1], five[2], five[3], five[4], [-2.0, 5.0]];
    assert!(Homography::fit(&pairs(&six, &six), Axes::Alike).is_ok());

    let (which, words) = error(&SQUARE, &[far[0], far[1], far[2], far[1]], Axes::Alike);
    assert_eq!(which, HomographyError::SamePlace { side: Side::Target, pairs: [1, 3] });
    assert!(words.contains("points 2 and 4"), "{words}");
    assert!(matches!(error(&SQUARE, &[[5.0; 2]; 4], Axes::Alike).0, HomographyError::SamePlace { .. }));

    // In a mirror; and the same points where the axes say so.
    let mirrored = far.map(|[x, y]| [x, -y]);
    assert_eq!(error(&SQUARE, &mirrored, Axes::Alike).0, HomographyError::TurnedOver);
    assert_eq!(error(&SQUARE, &far, Axes::Opposed).0, HomographyError::TurnedOver);
    assert!(Homography::fit(&pairs(&SQUARE, &mirrored), Axes::Opposed).expect("a map").homography.turns_over());

    // Two neighbours swapped: the square comes out crossed.
    let (which, words) = error(&SQUARE, &[far[1], far[0], far[2], far[3]], Axes::Alike);
    assert_eq!(which, HomographyError::Crossed);
    assert!(words.contains("swapped"), "{words}");

    assert_eq!(Homography::from_matrix([[1.0, 2.0, 3.0]; 3]), Err(HomographyError::Flat));
    assert_eq!(Homography::from_matrix([[f64::NAN; 3]; 3]), Err(HomographyError::Flat));
}

prop_compose! {
    /// A convex quadrilateral, corners about those of the square, not too thin.
    fn quadrilateral()(shift in prop::array::uniform8(-0.2..0.2f64), scale in 0.1..1000.0, x in -1e3..1e3, y in -1e3..1e3) -> [[f64; 2]; 4] {
        std::array::from_fn(|at| {
            [x + scale * (SQUARE[at][0] + shift[2 * at]), y + scale * (SQUARE[at][1] + shift[2 * at + 1])]
        })
    }
}

proptest! {
    #[test]
    fn four_corners_by_the_closed_form(to in quadrilateral(), point in prop::array::uniform2(0.0..1.0f64)) {
        let map = fit(&pairs(&SQUARE, &to));
        let expected = apply(&Homography::from_matrix(heckbert(&to)).expect("a map"), point);
        let size = distance(to[0], to[2]);
        prop_assert!(distance(apply(&map, point), expected) < 1e-10 * (size + to[0][0].abs() + to[0][1].abs()));
    }

    #[test]
    fn there_and_back(from in quadrilateral(), to in quadrilateral(), point in prop::array::uniform2(0.0..1.0f64)) {
        let (first, second) = (fit(&pairs(&SQUARE, &from)), fit(&pairs(&from, &to)));
        let inside = apply(&first, point);
        let there = apply(&second, inside);
        let size = distance(from[0], from[2]);
        prop_assert!(distance(apply(&second.inverse(), there), inside) < 1e-8 * (size + from[0][0].abs() + from[0][1].abs()));
        let whole = first.then(&second);
        prop_assert!(distance(apply(&whole, point), there) < 1e-8 * (1.0 + there[0].abs() + there[1].abs()));
        prop_assert!(distance(apply(&whole.inverse(), there), point) < 1e-7);
    }

    /// Without noise every count of points gives the same map.
    #[test]
    fn more_points_that_agree(to in quadrilateral(), inside in prop::collection::vec(prop::array::uniform2(0.0..1.0f64), 1..20)) {
        let true_map = Homography::from_matrix(heckbert(&to)).expect("a map");
        let points: Vec<Pair> = SQUARE.iter().chain(&inside).map(|point| (*point, apply(&true_map, *point))).collect();
        let fitted = Homography::fit(&points, Axes::Alike).expect("a map");
        prop_assert!(fitted.worst() < 1e-10 * (1.0 + distance(to[0], to[2]) + to[0][0].abs() + to[0][1].abs()));
    }
}
