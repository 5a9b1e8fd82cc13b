//! Booleans, offsets and distances against an independent geometry library: GEOS, through shapely; the table says
//! which versions. `tools/outline_oracle.py` makes it.

use outline::{Curve, Edges, Point, Shape};

/// Chords of the table's circles leave out this share of their area, and this share of their radius.
const CHORDS: f64 = 2e-5;

fn curve(kind: &str, p: &[f64]) -> Curve {
    let centre = Point::new(p[0], p[1]);
    match kind {
        "circle" => Curve::circle(centre, p[2]),
        "rounded" => Curve::rounded_rectangle(centre, p[2], p[3], p[4]),
        "sector" => Curve::ring_sector(centre, p[2], p[3], p[4], p[5], 0.0),
        other => panic!("unknown kind {other}"),
    }
}

#[test]
fn two_thousand_pairs_agree_with_geos() {
    let table = include_str!("data/geos.csv");
    let mut rows = 0;
    let mut worst: [f64; 7] = [0.0; 7];
    for line in table.lines().filter(|line| !line.starts_with('#')) {
        let fields: Vec<&str> = line.split(',').collect();
        let numbers = |range: std::ops::Range<usize>| -> Vec<f64> {
            fields[range].iter().map(|field| field.parse().expect("a number")).collect()
        };
        let (a, b) = (curve(fields[0], &numbers(1..7)), curve(fields[7], &numbers(8..14)));
        let values = numbers(14..22);
        let d = values[0];
        let distance = Edges::of_curve(&a).nearest(&Edges::of_curve(&b)).distance;
        let (a, b) = (Shape::from(a), Shape::from(b));
        let rest = a.minus(&b);
        let ours = [
            a.united(&b).area(),
            rest.area(),
            a.common(&b).area(),
            rest.perimeter(),
            rest.grown(d).expect("closes").area(),
            rest.shrunk(d).expect("closes").area(),
            distance,
        ];
        // Where edges cross at a small angle the chords move the crossing along them, and with it the length.
        // What the chords leave out of an area is a share of the circles' size; rows of the table carry eight digits.
        let area = (a.area() + b.area()) * CHORDS * 4.0 + 1e-3;
        let slack = [area, area, area, 6e-3 + rest.perimeter() * CHORDS, area * 2.0, area * 2.0, 1e-3];
        for (i, (ours, theirs)) in ours.iter().zip(&values[1..]).enumerate() {
            let off = (ours - theirs).abs();
            worst[i] = worst[i].max(off);
            assert!(off <= slack[i], "row {rows}, value {i}: ours {ours}, GEOS {theirs}, {line}");
        }
        rows += 1;
    }
    assert_eq!(rows, 2000);
    println!("largest differences: {worst:?}");
}
