//! Dials to set, and a reader of what was set that is not ours.

use dial::Looked;
use dial::job::{self, Job};
use lopdf::content::{Content, Operation};
use lopdf::{Dictionary, Document as Pdf, Object, ObjectId};
use process::Workshop;
use workbook::{Document, Make, Paper, Workbook};

/// A dial made ready for the press.
pub struct Ready {
    pub looked: Looked,
    pub job: Job,
    pub workshop: Workshop,
}

pub fn ready_in(text: &str, workshop: Workshop) -> Ready {
    let design = dial::design::read(text, &workshop).expect("reads");
    let looked = dial::look(&design, &workshop, &[]).expect("can be drawn");
    let job = job::plan(&looked.laid.dial, &workshop).expect("fits");
    Ready { looked, job, workshop }
}

pub fn example(name: &str) -> Ready {
    let path = format!("{}/../../examples/{name}/dial.toml", env!("CARGO_MANIFEST_DIR"));
    ready_in(&std::fs::read_to_string(path).expect("reads"), workshop::starter())
}

/// A small dial with little to draw.
pub const SMALL: &str = "name = \"Small\"\nstock = \"birch plywood 3 mm\"\n[[counter]]\nname = \"sign\"\nlabel = \"\"\nsymbols = [\"star\", \"coin\", \"bolt\"]\n";

impl Ready {
    pub fn make(&self, paper: Paper) -> Make<'_> {
        Make { looked: &self.looked, job: &self.job, workshop: &self.workshop, paper, pairings: None }
    }

    pub fn alone(&self, which: Document, paper: Paper) -> Workbook {
        workbook::document(&self.make(paper), which).expect("sets")
    }
}

/// mm in a point of PDF (ISO 32000-1, 8.3.2.3: 1/72 inch).
pub const POINT: f64 = 25.4 / 72.0;

/// A book as another library reads it.
pub struct Read {
    pub pdf: Pdf,
    pub pages: Vec<ObjectId>,
}

/// A painted path's bounds on its page in mm, y up: x0, y0, x1, y1.
pub type Painted = [f64; 4];

/// What a page does with paths, in order.
#[derive(Clone, Copy, Debug)]
pub enum Drawn {
    Painted(Painted),
    /// What is drawn next shows only within these bounds.
    Clip(Painted),
}

impl Read {
    pub fn of(book: &Workbook) -> Read {
        Read::of_bytes(&book.pdf)
    }

    pub fn of_bytes(bytes: &[u8]) -> Read {
        let pdf = Pdf::load_mem(bytes).expect("a PDF");
        let pages = pdf.get_pages().into_values().collect();
        Read { pdf, pages }
    }

    /// Width and height of a page in mm.
    pub fn size(&self, page: ObjectId) -> (f64, f64) {
        let page = self.pdf.get_dictionary(page).expect("a page");
        let array = page.get(b"MediaBox").and_then(Object::as_array).expect("a box");
        let side = |k: usize| f64::from(array[k].as_float().expect("a number")) * POINT;
        (side(2) - side(0), side(3) - side(1))
    }

    /// The words of a page, without invisible breaks, white space as single blanks.
    pub fn text(&self, index: usize) -> String {
        let number = u32::try_from(index + 1).expect("small");
        let text = self.pdf.extract_text(&[number]).expect("text");
        squeezed(&text)
    }

    pub fn all_text(&self) -> String {
        (0..self.pages.len()).map(|k| self.text(k)).collect::<Vec<_>>().join(" ")
    }

    /// The bounds of everything that is painted as a path on a page.
    pub fn painted(&self, page: ObjectId) -> Vec<Painted> {
        let painted = |one: &Drawn| match one {
            Drawn::Painted(bounds) => Some(*bounds),
            Drawn::Clip(_) => None,
        };
        self.drawn(page).iter().filter_map(painted).collect()
    }

    /// The bounds of every path on a page, in the order of drawing.
    pub fn drawn(&self, page: ObjectId) -> Vec<Drawn> {
        let content = self.pdf.get_page_content(page);
        let dictionary = self.pdf.get_dictionary(page).expect("a page");
        let resources = self.resolve(dictionary.get(b"Resources").expect("resources"));
        let mut out = Vec::new();
        self.run(&content, resources, [1.0, 0.0, 0.0, 1.0, 0.0, 0.0], &mut out);
        out
    }

    /// A dictionary within another, wherever it stands.
    pub fn dictionary<'a>(&'a self, within: &'a Dictionary, key: &[u8]) -> Option<&'a Dictionary> {
        within.get(key).ok().map(|one| self.resolve(one))
    }

    pub fn resolve<'a>(&'a self, object: &'a Object) -> &'a Dictionary {
        match object {
            Object::Reference(id) => self.pdf.get_dictionary(*id).expect("a dictionary"),
            other => other.as_dict().expect("a dictionary"),
        }
    }

    /// Follows a content stream and the forms it draws (ISO 32000-1, 8.3 and 8.5).
    fn run(&self, content: &[u8], resources: &Dictionary, start: Matrix, out: &mut Vec<Drawn>) {
        let mut matrix = start;
        let mut kept = Vec::new();
        let mut points: Vec<(f64, f64)> = Vec::new();
        for Operation { operator, operands } in Content::decode(content).expect("decodes").operations {
            let n = |k: usize| f64::from(operands[k].as_float().expect("a number"));
            match operator.as_str() {
                "q" => kept.push(matrix),
                "Q" => matrix = kept.pop().expect("kept"),
                "cm" => matrix = times([n(0), n(1), n(2), n(3), n(4), n(5)], matrix),
                "m" | "l" => points.push(apply(matrix, n(0), n(1))),
                "c" => points.extend([0, 2, 4].map(|k| apply(matrix, n(k), n(k + 1)))),
                "v" | "y" => points.extend([0, 2].map(|k| apply(matrix, n(k), n(k + 1)))),
                "re" => points.extend([(0.0, 0.0), (n(2), n(3))].map(|(x, y)| apply(matrix, n(0) + x, n(1) + y))),
                "S" | "s" | "f" | "F" | "f*" | "B" | "B*" | "b" | "b*" => {
                    out.push(Drawn::Painted(bounds(&points)));
                    points.clear();
                }
                "W" | "W*" => out.push(Drawn::Clip(bounds(&points))),
                "n" => points.clear(),
                "Do" => {
                    let name = operands[0].as_name().expect("a name");
                    let forms = self.resolve(resources.get(b"XObject").expect("forms"));
                    let id = forms.get(name).and_then(Object::as_reference).expect("a form");
                    let stream = self.pdf.get_object(id).and_then(Object::as_stream).expect("a stream");
                    if stream.dict.get(b"Subtype").and_then(Object::as_name).is_ok_and(|kind| kind == b"Form") {
                        let own = stream.dict.get(b"Matrix").and_then(Object::as_array).map(|array| {
                            let m: Vec<f64> =
                                array.iter().map(|one| f64::from(one.as_float().expect("a number"))).collect();
                            [m[0], m[1], m[2], m[3], m[4], m[5]]
                        });
                        let inner = own.map_or(matrix, |own| times(own, matrix));
                        let content = stream.get_plain_content().expect("unpacks");
                        let within = stream.dict.get(b"Resources").map_or(resources, |one| self.resolve(one));
                        self.run(&content, within, inner, out);
                    }
                }
                _ => {}
            }
        }
    }
}

type Matrix = [f64; 6];

/// First `a`, then `b`.
fn times(a: Matrix, b: Matrix) -> Matrix {
    [
        a[0] * b[0] + a[1] * b[2],
        a[0] * b[1] + a[1] * b[3],
        a[2] * b[0] + a[3] * b[2],
        a[2] * b[1] + a[3] * b[3],
        a[4] * b[0] + a[5] * b[2] + b[4],
        a[4] * b[1] + a[5] * b[3] + b[5],
    ]
}

fn apply(m: Matrix, x: f64, y: f64) -> (f64, f64) {
    (m[0] * x + m[2] * y + m[4], m[1] * x + m[3] * y + m[5])
}

fn bounds(points: &[(f64, f64)]) -> Painted {
    let fold = |of: fn(&(f64, f64)) -> f64, by: fn(f64, f64) -> f64, from: f64| points.iter().map(of).fold(from, by);
    [
        fold(|p| p.0, f64::min, f64::INFINITY) * POINT,
        fold(|p| p.1, f64::min, f64::INFINITY) * POINT,
        fold(|p| p.0, f64::max, f64::NEG_INFINITY) * POINT,
        fold(|p| p.1, f64::max, f64::NEG_INFINITY) * POINT,
    ]
}

pub fn squeezed(text: &str) -> String {
    text.replace('\u{200b}', "").split_whitespace().collect::<Vec<_>>().join(" ")
}
