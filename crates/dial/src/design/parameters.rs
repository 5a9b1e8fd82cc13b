//! The parameters of a dial file.

use super::table::Default::{Derived, Fixed, Required};
use super::table::Kind::{
    Angle, Choice, Colour, Count, Flag, Friction, Grade, Length, List, Named, Number, Point, Points, Share, Stock,
    Symbol, Symbols, Text, Unit, Values, Words,
};
use super::table::{Default, Groups, Kind, Param};

const OWN: &str = "our own proposal";
const PRACTICE: &str = "common practice";

const fn param(path: &'static str, kind: Kind, default: Default, words: &'static str, source: &'static str) -> Param {
    Param { path, kind, default, words, source }
}

/// The whole dial.
const DIAL: &[Param] = &[
    param("name", Text, Required, "name of the dial; it also names the job folder", PRACTICE),
    param(
        "stock",
        Stock,
        Derived("`cover.stock` and `wheel.stock` must both be given then"),
        "stock of the cover and of all wheels",
        PRACTICE,
    ),
    param(
        "show",
        Choice(&["mm", "inch"]),
        Fixed("mm"),
        "units in which figures are shown; lengths are written in either",
        OWN,
    ),
    param(
        "symmetry",
        Choice(&["left", "right", "top", "bottom"]),
        Derived("none: both halves as they come"),
        "this half of the cover is the master, the other its exact mirror image; a wheel placed in it places its partner",
        PRACTICE,
    ),
    param(
        "turn_over",
        Choice(&["sideways", "endways"]),
        Fixed("sideways"),
        "how the cover is turned over for the pockets in its back: sideways like the page of a book, endways like a notepad",
        PRACTICE,
    ),
    param("gauges", Flag, Fixed("true"), "cut a pole gauge and a depth gauge with the sheets", OWN),
    param(
        "standard",
        Text,
        Derived("none"),
        "dial file of an earlier design whose covers and wheels this one must fit, from this file's folder",
        OWN,
    ),
    param("counter", List(COUNTER), Required, "one table for each counter: one to six", OWN),
    param("stocks", Named(STOCK), Derived("the stocks of the workshop"), "stocks described in this file, by name", OWN),
];

const COVER: &[Param] = &[
    param("cover.stock", Stock, Derived("`stock`"), "stock of the cover", PRACTICE),
    param(
        "cover.outline",
        Choice(&["rounded rectangle", "circle", "stadium", "regular polygon", "polygon"]),
        Derived("a circle for one wheel, else a rounded rectangle"),
        "form of the cover",
        OWN,
    ),
    param(
        "cover.width",
        Length(10.0, 1000.0),
        Derived("the smallest that keeps `cover.edge`"),
        "width of the cover; the diameter of a circle; across the flats of a regular polygon",
        OWN,
    ),
    param(
        "cover.height",
        Length(10.0, 1000.0),
        Derived("the smallest that keeps `cover.edge`"),
        "height of a rounded rectangle or stadium",
        OWN,
    ),
    param("cover.corner", Length(0.0, 200.0), Fixed("6 mm"), "radius of the cover's corners", OWN),
    param("cover.sides", Count(3, 24), Fixed("6"), "sides of a regular polygon", OWN),
    param(
        "cover.points",
        Points,
        Derived("none"),
        "corners of a free polygon, in order round it, from the cover's middle",
        OWN,
    ),
    param("cover.edge", Length(0.0, 50.0), Fixed("1.5 mm"), "from a wheel's rim to the cover's edge, at least", OWN),
    param(
        "cover.engrave_depth",
        Length(0.05, 3.0),
        Fixed("0.3 mm"),
        "depth of the engraving on the cover's face",
        PRACTICE,
    ),
    param("cover.art", List(ART), Derived("none"), "more text and symbols on the cover's face", OWN),
];

const WHEEL_OF_ALL: &[Param] = &[
    param("wheel.stock", Stock, Derived("`stock`"), "stock of all wheels", PRACTICE),
    param("wheel.gap", Length(0.0, 50.0), Fixed("1.5 mm"), "clear distance between two wheels", OWN),
    param("wheel.same_size", Flag, Fixed("true"), "all wheels as large as the largest, all windows alike", OWN),
];

const WHEEL: &[Param] = &[
    param(
        "wheel.radius",
        Length(5.0, 300.0),
        Derived("the smallest on which every mark stands whole and alone in its window"),
        "radius of the wheel over its rim",
        OWN,
    ),
    param(
        "wheel.land",
        Length(0.3, 50.0),
        Fixed("1.5 mm"),
        "from the window's farthest corner to the rim's lowest place, at least",
        OWN,
    ),
    param(
        "wheel.rim",
        Choice(&["plain", "scalloped"]),
        Fixed("plain"),
        "the wheel's rim: plain, or scalloped for grip",
        PRACTICE,
    ),
    param(
        "wheel.scallops",
        Count(8, 200),
        Derived("one for each 4 mm of rim"),
        "how many scoops a scalloped rim has",
        OWN,
    ),
    param("wheel.scallop_depth", Length(0.1, 3.0), Fixed("0.6 mm"), "depth of the scoops", OWN),
];

const MARK: &[Param] = &[
    param(
        "mark.height",
        Length(1.0, 40.0),
        Fixed("5 mm"),
        "height of figures and capitals, or of a symbol",
        "MIL-STD-1472E 5.4.2.1.3.5: about 4.8 mm on a thumbwheel",
    ),
    param("mark.margin", Length(0.1, 20.0), Fixed("0.8 mm"), "from a mark to its window's edge, at least", OWN),
    param(
        "mark.clear",
        Length(0.0, 20.0),
        Fixed("0.8 mm"),
        "from anything else to the window's edge, at least: more than one finger pushes a wheel aside",
        OWN,
    ),
    param(
        "mark.weight",
        Choice(&["regular", "medium", "semi-bold", "bold"]),
        Fixed("medium"),
        "weight of the strokes",
        "DOD-HDBK-791 6-5.3.2.3: stroke to height about 1 to 6, dark on light",
    ),
    param(
        "mark.twins",
        Choice(&["where needed", "bar", "dot", "none"]),
        Fixed("where needed"),
        "what tells 6 from 9 and their kin: a bar or dot on every one, or a bar only where the font does not tell them apart",
        PRACTICE,
    ),
    param("mark.depth", Length(0.05, 3.0), Fixed("0.3 mm"), "depth of the engraving on the wheel", PRACTICE),
];

const WINDOW: &[Param] = &[
    param(
        "window.shape",
        Choice(&["rounded rectangle", "round", "ring sector"]),
        Fixed("rounded rectangle"),
        "form of the window",
        OWN,
    ),
    param(
        "window.shows",
        Choice(&["one mark", "neighbours too"]),
        Fixed("one mark"),
        "one mark alone, or the neighbours' edges too, which is better for setting",
        "MIL-STD-1472E 5.2.3.3.4",
    ),
    param(
        "window.neighbour_share",
        Share(0.05, 1.0),
        Fixed("0.4"),
        "share of each neighbour's width that is seen, at least",
        OWN,
    ),
    param(
        "window.angle",
        Angle,
        Derived("towards the cover's middle, or to the side where that makes the smaller wheel"),
        "direction of the window from the wheel's middle",
        OWN,
    ),
    param(
        "window.distance",
        Length(2.0, 300.0),
        Derived("the smallest at which every mark is alone"),
        "from the wheel's middle to the window's middle",
        OWN,
    ),
    param(
        "window.width",
        Length(1.0, 200.0),
        Derived("the smallest that keeps `mark.margin`"),
        "width of the window; the diameter of a round one; along its middle arc for a ring sector",
        OWN,
    ),
    param(
        "window.height",
        Length(1.0, 200.0),
        Derived("the smallest that keeps `mark.margin`"),
        "height of the window; from arc to arc for a ring sector",
        OWN,
    ),
    param("window.corner", Length(0.0, 50.0), Derived("`mark.margin`"), "radius of the window's corners", OWN),
];

const NOTCH: &[Param] = &[
    param(
        "notch.angle",
        Angle,
        Derived("away from the window, to the cover's nearest edge"),
        "direction of the notch from the wheel's middle",
        OWN,
    ),
    param(
        "notch.width",
        Length(4.0, 100.0),
        Fixed("16 mm"),
        "width of the notch at the cover's edge",
        "MIL-STD-1472E figure 6: a thumbwheel's trough is 11 to 19 mm",
    ),
    param(
        "notch.depth",
        Length(0.5, 100.0),
        Derived("the least that bares `notch.bares`"),
        "depth of the notch from the cover's edge",
        OWN,
    ),
    param("notch.bares", Length(1.0, 100.0), Fixed("12 mm"), "length of rim that the notch bares, at least", PRACTICE),
    param(
        "notch.corner",
        Length(0.0, 10.0),
        Fixed("1.5 mm"),
        "radius of the corners where the notch meets the cover's edge",
        PRACTICE,
    ),
    param("notch.signs", Flag, Fixed("false"), "engrave a small + and - beside the notch", PRACTICE),
];

const MAGNET: &[Param] = &[
    param("magnet.diameter", Length(1.0, 20.0), Fixed("6 mm"), "diameter of the magnets", PRACTICE),
    param("magnet.thickness", Length(0.5, 10.0), Fixed("1.5 mm"), "thickness of the magnets", PRACTICE),
    param("magnet.grade", Grade, Fixed("N42"), "their grade, or their remanence", "makers' tables: a trade name"),
    param(
        "magnet.wheel_diameter",
        Length(1.0, 20.0),
        Derived("`magnet.diameter`"),
        "diameter of those in the wheels",
        OWN,
    ),
    param(
        "magnet.wheel_thickness",
        Length(0.5, 10.0),
        Derived("`magnet.thickness`"),
        "thickness of those in the wheels",
        OWN,
    ),
    param("magnet.wheel_grade", Grade, Derived("`magnet.grade`"), "grade of those in the wheels", OWN),
    param("magnet.fit", Length(0.0, 1.0), Fixed("0.15 mm"), "pocket diameter less magnet diameter", PRACTICE),
    param(
        "magnet.seat",
        Choice(&["flush", "recessed", "proud", "pin and socket", "enclosed"]),
        Fixed("flush"),
        "how a pair sits: just under the faces, deeper, standing out and touching, the wheel's in the cover's pocket, or each under a glued cap",
        PRACTICE,
    ),
    param(
        "magnet.recess",
        Length(0.0, 3.0),
        Derived("flush: 0.1 mm; recessed: 0.4 mm"),
        "how far a magnet's face lies under the face it is sunk into",
        PRACTICE,
    ),
    param(
        "magnet.stand",
        Length(0.05, 3.0),
        Derived("proud: 0.2 mm; pin and socket: 0.5 mm"),
        "how far a magnet stands out of the face",
        OWN,
    ),
    param(
        "magnet.cover_pocket",
        Length(0.2, 20.0),
        Derived("what the seat needs, with the glue"),
        "depth of the pockets in the cover's back",
        PRACTICE,
    ),
    param(
        "magnet.wheel_pocket",
        Length(0.2, 20.0),
        Derived("what the seat needs, with the glue"),
        "depth of the pocket in each wheel's face",
        PRACTICE,
    ),
    param("magnet.glue", Length(0.0, 0.5), Fixed("0.1 mm"), "film of glue under a magnet or a cap", PRACTICE),
    param(
        "magnet.depth_within",
        Length(0.01, 0.5),
        Fixed("0.1 mm"),
        "how near a magnet's face comes to where it is wanted, glue and all, when the pocket is measured with the depth gauge",
        OWN,
    ),
    param("magnet.flatness", Length(0.0, 1.0), Fixed("0.1 mm"), "how far the two faces together may be from flat", OWN),
    param(
        "magnet.friction",
        Friction,
        Derived("from the two faces that touch"),
        "friction of the faces that touch; measured by tilting: the angle at which one begins to slide on the other",
        PRACTICE,
    ),
    param(
        "magnet.ring",
        Length(4.0, 200.0),
        Derived("none: the whole face touches"),
        "diameter of a ring about each pair that alone touches",
        PRACTICE,
    ),
    param(
        "magnet.ring_stock",
        Stock,
        Derived("none: the ring is left standing in the cover's back"),
        "thin stock of which the ring is cut as a washer and glued to the wheel",
        OWN,
    ),
    param("magnet.ring_height", Length(0.05, 2.0), Fixed("0.2 mm"), "height of a ring that is left standing", OWN),
    param(
        "magnet.cap_stock",
        Stock,
        Fixed("maple veneer 0.6 mm"),
        "thin stock of the caps that enclose the magnets",
        OWN,
    ),
    param(
        "magnet.poles",
        Choice(&["cover pulls", "cover pushes"]),
        Fixed("cover pulls"),
        "what every pocket of a cover does to the marked face of the master magnet; every wheel does the other",
        OWN,
    ),
    param(
        "magnet.spares",
        Count(0, 100),
        Derived("a tenth, two at least"),
        "magnets to have at hand beyond those that are glued in",
        PRACTICE,
    ),
];

const CLICK: &[Param] = &[
    param(
        "click.diameter",
        Length(1.0, 10.0),
        Derived("none: no clicks"),
        "diameter of small magnets on a ring that let the wheel click into its stops",
        PRACTICE,
    ),
    param("click.thickness", Length(0.5, 5.0), Fixed("1 mm"), "their thickness", PRACTICE),
    param("click.grade", Grade, Fixed("N42"), "their grade, or their remanence", "makers' tables: a trade name"),
    param(
        "click.ring",
        Length(3.0, 200.0),
        Derived("the smallest on which there is room for all"),
        "radius of the ring they stand on",
        OWN,
    ),
];

const READING: &[Param] = &[
    param(
        "reading.seats",
        Words(&["owner", "neighbour", "across"]),
        Fixed("owner"),
        "who must read the numbers, from where at the table; the first one also reads what is engraved on the cover",
        "our own seats: eye 0.47 m above the table, 0.35, 0.6 and 0.95 m away; the one across reads upside down",
    ),
    param(
        "reading.distance",
        Length(0.0, 5000.0),
        Derived("no reader but those at `reading.seats`"),
        "one more reader: from the dial along the table to below the eye",
        OWN,
    ),
    param(
        "reading.eye",
        Length(50.0, 3000.0),
        Fixed("470 mm"),
        "height of that reader's eye above the dial",
        "seated eye height 1.20 m, from anthropometric tables, from memory; tables 0.73 m, furniture guides",
    ),
    param(
        "reading.side",
        Angle,
        Fixed("0 deg"),
        "where that reader sits: 0 deg before the upright dial, anticlockwise from there, 180 deg across",
        OWN,
    ),
    param(
        "reading.eyesight",
        Number(10.0, 200.0),
        Fixed("40"),
        "how fine the readers' eyes are: the S of 20/S; 20 is a normal eye, 30 an older reader's, 40 weak",
        "Snellen; strokes after Howett, NBS Technical Note 1180 (1983)",
    ),
];

const COUNTER_OWN: &[Param] = &[
    param("name", Text, Required, "what it counts", PRACTICE),
    param("values", Values, Derived("`symbols` must be given then"), "its marks in counting order: 2 to 100", OWN),
    param("symbols", Symbols, Derived("`values` must be given then"), "its marks, as built-in symbols", OWN),
    param("label", Text, Derived("the counter's name"), "text beside the window; \"\" for none", OWN),
    param("symbol", Symbol, Derived("none"), "symbol beside the window", OWN),
    param(
        "label_height",
        Length(1.0, 40.0),
        Derived("0.8 of the marks' height and at least 3.8 mm, less where it does not fit"),
        "height of the label's capitals",
        OWN,
    ),
    param(
        "running",
        Choice(&["alike", "alike reversed", "numbers clockwise", "turn clockwise"]),
        Fixed("alike"),
        "alike: in every window the next higher mark comes in from above, or from the right; numbers clockwise: they grow clockwise round the wheel, which turns anticlockwise to count up; turn clockwise: the wheel turns clockwise to count up",
        "MIL-STD-1472E 5.2.3.3.1: straight scales grow upwards and to the right, circular ones clockwise",
    ),
    param(
        "at",
        Point,
        Derived("side by side, in rows, or on a ring"),
        "place of the wheel's middle, from the cover's middle",
        OWN,
    ),
];

const ART_OWN: &[Param] = &[
    param("text", Text, Derived("`symbol` must be given then"), "text to engrave", OWN),
    param("symbol", Symbol, Derived("`text` must be given then"), "symbol to engrave", OWN),
    param("at", Point, Required, "its middle, from the cover's middle", OWN),
    param("height", Length(1.0, 100.0), Fixed("4 mm"), "height of its capitals, or of the symbol", OWN),
    param("angle", Angle, Fixed("0 deg"), "turned anticlockwise by this", OWN),
];

const STOCK_OWN: &[Param] = &[
    param("layers", List(LAYER), Required, "its layers from the face to the back", OWN),
    param(
        "kerf",
        Length(0.0, 2.0),
        Fixed("0.2 mm"),
        "full width that the beam removes",
        "averages of a cutting bureau for 3 mm plywood",
    ),
    param(
        "kerf_x",
        Length(0.0, 2.0),
        Derived("`kerf`"),
        "width removed along x, on a machine whose kerf differs between the axes",
        PRACTICE,
    ),
    param("kerf_y", Length(0.0, 2.0), Derived("`kerf`"), "width removed along y", PRACTICE),
    param(
        "friction",
        Friction,
        Derived("that of its faces' materials"),
        "friction of its faces, measured by tilting",
        PRACTICE,
    ),
    param("face", Colour, Derived("that of its first layer"), "colour of its face", OWN),
    param("back", Colour, Derived("that of its last layer"), "colour of its back", OWN),
    param(
        "engraved",
        Colour,
        Derived("that of the layer in which the engraving ends"),
        "colour of the floor of an engraving as deep as `engraved_at`, and of all that end in the same layer",
        OWN,
    ),
    param("engraved_at", Length(0.05, 10.0), Fixed("0.3 mm"), "depth of the engraving whose colour is given", OWN),
    param("edge", Colour, Derived("that of its thickest layer"), "colour of its edge as the beam leaves it", OWN),
    param(
        "finish",
        Choice(&["raw", "clear-coated", "smooth", "leather"]),
        Derived("that of its first layer"),
        "finish of its face: raw wood smears, clear-coated and smooth faces wipe clean",
        PRACTICE,
    ),
    param(
        "back_finish",
        Choice(&["raw", "clear-coated", "smooth", "leather"]),
        Derived("that of its last layer"),
        "finish of its back, which is under the fingers on a wheel",
        PRACTICE,
    ),
    param(
        "grain",
        Choice(&["none", "along the sheet"]),
        Derived("that of its first layer"),
        "which way the grain of its face runs",
        OWN,
    ),
    param("laser", Text, Derived("none"), "how the beam takes it: notes for the next time", OWN),
    param("price", Number(0.0, 10_000.0), Derived("unknown"), "price of one sheet, in your own money", OWN),
    param("sheet_width", Length(20.0, 5000.0), Fixed("600 mm"), "width of that sheet", OWN),
    param("sheet_height", Length(20.0, 5000.0), Fixed("300 mm"), "height of that sheet", OWN),
    param(
        "looks",
        Text,
        Derived("“typical”"),
        "where its colours come from: \"typical\", or \"measured here on 2026-05-01\"",
        OWN,
    ),
    param("photo", Text, Derived("none"), "file of the photo in which its colours were measured", OWN),
    param(
        "contrast_least",
        Number(1.0, 21.0),
        Derived("nobody measured it"),
        "least contrast of that engraving against the face that the measure allows",
        OWN,
    ),
    param("contrast_most", Number(1.0, 21.0), Derived("nobody measured it"), "most contrast that it allows", OWN),
    param("source", Text, Derived("“as written in the file”"), "where its figures come from", OWN),
];

const LAYER_OWN: &[Param] = &[
    param(
        "material",
        Text,
        Required,
        "a material that the house knows; unknown ones are read, but never cut",
        "safety lists of laser workshops",
    ),
    param("thickness", Length(0.01, 50.0), Required, "true thickness, measured", PRACTICE),
    param(
        "thinner",
        Length(0.0, 10.0),
        Derived("by the material's standard"),
        "how much thinner it may come",
        "EN 315, EN 622-1, ISO 7823-1",
    ),
    param(
        "thicker",
        Length(0.0, 10.0),
        Derived("by the material's standard"),
        "how much thicker it may come",
        "EN 315, EN 622-1, ISO 7823-1",
    ),
    param("colour", Colour, Derived("the usual one of its material"), "its colour", OWN),
    param(
        "engraved",
        Colour,
        Derived("the usual one of its material"),
        "colour of the floor of an engraving that ends in it",
        OWN,
    ),
];

const MACHINE: &[Param] = &[
    param("machine.name", Text, Derived("the starter machine's"), "what the machine is called", PRACTICE),
    param("machine.bed_width", Length(50.0, 5000.0), Derived("400 mm"), "usable width of the bed", PRACTICE),
    param("machine.bed_height", Length(50.0, 5000.0), Derived("300 mm"), "usable height of the bed", PRACTICE),
    param(
        "machine.engrave",
        Colour,
        Derived("#0072b2, blue"),
        "colour of engraved areas on a sheet",
        "Okabe & Ito, Color Universal Design (2008)",
    ),
    param(
        "machine.pocket",
        Colour,
        Derived("#009e73, bluish green"),
        "colour of pockets on a sheet",
        "Okabe & Ito, Color Universal Design (2008)",
    ),
    param(
        "machine.cut_inside",
        Colour,
        Derived("#d55e00, vermilion"),
        "colour of inside cuts on a sheet",
        "Okabe & Ito, Color Universal Design (2008)",
    ),
    param(
        "machine.cut_outside",
        Colour,
        Derived("#000000, black"),
        "colour of outside cuts on a sheet",
        "Okabe & Ito, Color Universal Design (2008)",
    ),
];

const WORKSHOP_STOCKS: &[Param] = &[param(
    "stocks",
    Named(STOCK),
    Derived("the starter stocks"),
    "stocks on the shelf, by name; one of a starter stock's name takes its place",
    OWN,
)];

const VOTES: &[Param] = &[param("vote", List(VOTE), Derived("no votes"), "one table for each vote", OWN)];

const VOTE_OWN: &[Param] = &[
    param(
        "best_first",
        Words(&[]),
        Required,
        "the pairings that were laid side by side, best first, each as \"cover / wheel\"; what is left out was not looked at",
        "Plackett and Luce's model of rankings; of two, Bradley and Terry's",
    ),
    param("times", Count(1, 100_000), Fixed("1"), "how many people said so", OWN),
    param("who", Text, Derived("nobody's business"), "who said so; kept for you alone", OWN),
    param("on", Text, Derived("none"), "when", OWN),
];

const WORKSHOP_MAGNETS: &[Param] = &[param(
    "magnets",
    Named(SHELF_MAGNET),
    Derived("the starter magnets"),
    "disc magnets on the shelf, by name; one of a starter magnet's name takes its place",
    OWN,
)];

const SHELF_MAGNET_OWN: &[Param] = &[
    param("diameter", Length(1.0, 20.0), Required, "diameter", PRACTICE),
    param("thickness", Length(0.5, 10.0), Required, "thickness", PRACTICE),
    param("grade", Grade, Required, "grade, or remanence", "makers' tables: a trade name"),
    param("price", Number(0.0, 1000.0), Derived("unknown"), "price of one, in your own money", OWN),
    param("source", Text, Derived("“as written in the file”"), "where its figures come from", OWN),
];

const FEEL: &[Param] = &[
    param(
        "feel.turn_least",
        Unit("N", 0.0, 20.0),
        Fixed("0.15 N"),
        "force at the rim below which a wheel slips by itself",
        OWN,
    ),
    param("feel.turn_stiff", Unit("N", 0.0, 20.0), Fixed("2.5 N"), "force at the rim above which it is stiff", OWN),
    param(
        "feel.turn_most",
        Unit("N", 0.0, 50.0),
        Fixed("5.6 N"),
        "force at the rim above which one finger does not turn it",
        "MIL-STD-1472E figure 6: 20 oz at most on a discrete thumbwheel",
    ),
    param(
        "feel.shake",
        Unit("g", 0.0, 500.0),
        Fixed("15 g"),
        "acceleration that a wheel stands without being thrown off its seat",
        "IEC 60068-2-27: common severity for handled equipment, from memory",
    ),
    param(
        "feel.finger",
        Number(0.1, 3.0),
        Fixed("0.6"),
        "friction of a finger on the rim",
        "Seo et al., Ergonomics 52 (2009): finger pad on aluminium",
    ),
];

/// All parameters of a dial file.
pub const DIAL_FILE: Groups = &[DIAL, COVER, WHEEL_OF_ALL, WHEEL, MARK, WINDOW, NOTCH, MAGNET, CLICK, READING];
/// Those of one counter: its own, and those that override the dial's.
pub const COUNTER: Groups = &[COUNTER_OWN, WHEEL, MARK, WINDOW, NOTCH];
/// Those that a counter may override.
pub const OVERRIDES: Groups = &[WHEEL, MARK, WINDOW, NOTCH];
/// Those of one piece of art.
pub const ART: Groups = &[ART_OWN];
/// Those of one stock.
pub const STOCK: Groups = &[STOCK_OWN];
/// Those of one layer.
pub const LAYER: Groups = &[LAYER_OWN];
/// All parameters of a workshop file.
pub const WORKSHOP_FILE: Groups = &[MACHINE, FEEL, WORKSHOP_STOCKS, WORKSHOP_MAGNETS];
/// All parameters of a file of votes.
pub const VOTES_FILE: Groups = &[VOTES];
/// Those of one vote.
pub const VOTE: Groups = &[VOTE_OWN];
/// Those of one kind of magnet on the shelf.
pub const SHELF_MAGNET: Groups = &[SHELF_MAGNET_OWN];
