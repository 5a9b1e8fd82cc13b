//! What PDF/UA-1 (ISO 14289-1:2014) asks of a file, as far as a machine can see it and our pages hold such things. Clauses and numbers are
//! those of the rules in veraPDF's published profile for PDF/UA-1, which `tools/PdfUa.java` runs whole.

use crate::read::Read;
use lopdf::content::{Content, Operation};
use lopdf::{Dictionary, Object, ObjectId};
use std::collections::HashSet;

/// What breaks the standard, and how many things were looked at.
#[derive(Debug, Default)]
pub struct Checked {
    pub broken: Vec<String>,
    pub figures: usize,
    pub headings: usize,
    pub tables: usize,
    pub links: usize,
    pub marked: usize,
}

pub fn check(read: &Read) -> Checked {
    let mut all = Checked::default();
    catalog(read, &mut all);
    let mut tree = Tree { read, level: 0, content: HashSet::new(), all };
    let root = read.dictionary(read.pdf.catalog().expect("a catalog"), b"StructTreeRoot");
    if let Some(root) = root {
        tree.kids(root, None, "StructTreeRoot");
    }
    let Tree { content, mut all, .. } = tree;
    for (k, page) in read.pages.iter().enumerate() {
        marked(read, k, *page, &content, &mut all);
        links(read, k, *page, &mut all);
    }
    fonts(read, &mut all);
    all
}

fn catalog(read: &Read, all: &mut Checked) {
    let catalog = read.pdf.catalog().expect("a catalog");
    let mut ask = |clause: &str, holds: bool| {
        if !holds {
            all.broken.push(format!("{clause} does not hold"));
        }
    };
    let yes = |of: &[u8], key: &[u8]| {
        read.dictionary(catalog, of).is_some_and(|one| one.get(key).and_then(Object::as_bool).unwrap_or(false))
    };
    ask("6.2-1: marked", yes(b"MarkInfo", b"Marked"));
    ask("7.1-4: no suspects", !yes(b"MarkInfo", b"Suspects"));
    ask("7.1-10: the title is shown", yes(b"ViewerPreferences", b"DisplayDocTitle"));
    ask("7.1-11: a structure tree", catalog.has(b"StructTreeRoot"));
    ask("7.2: a language", catalog.get(b"Lang").and_then(Object::as_str).is_ok_and(|one| one == b"en"));
    let stream = catalog.get(b"Metadata").and_then(|one| read.pdf.dereference(one)).map(|one| one.1.clone());
    let told = stream.ok().and_then(|one| one.as_stream().and_then(lopdf::Stream::get_plain_content).ok());
    let told = String::from_utf8(told.unwrap_or_default()).unwrap_or_default();
    ask("5-1, 5-2: PDF/UA part 1", told.contains("<pdfuaid:part>1</pdfuaid:part>"));
    let title = told.split("<dc:title>").nth(1).and_then(|rest| rest.split("</dc:title>").next()).unwrap_or_default();
    let title = title.split("x-default\">").nth(1).and_then(|rest| rest.split('<').next()).unwrap_or_default();
    ask("7.1-9: a title", !title.trim().is_empty());
}

/// The walk through the tree of what the pages hold.
struct Tree<'a> {
    read: &'a Read,
    /// Of the last heading.
    level: usize,
    /// Marked content that the tree holds, by page.
    content: HashSet<(ObjectId, i64)>,
    all: Checked,
}

impl Tree<'_> {
    /// The kids of an element: elements, and content of a page.
    fn kids(&mut self, element: &Dictionary, page: Option<ObjectId>, kind: &str) -> Vec<String> {
        let page = element.get(b"Pg").and_then(Object::as_reference).ok().or(page);
        let kids = match element.get(b"K").and_then(|one| self.read.pdf.dereference(one)) {
            Ok((_, Object::Array(all))) => all.clone(),
            Ok((_, one)) => vec![one.clone()],
            Err(_) => Vec::new(),
        };
        let mut kinds = Vec::new();
        for kid in &kids {
            match self.read.pdf.dereference(kid).expect("it is there").1 {
                Object::Integer(id) => self.content.extend(page.map(|page| (page, *id))),
                Object::Dictionary(one) if one.has(b"S") => kinds.push(self.element(one, page, kind)),
                Object::Dictionary(one) if one.has(b"MCID") => {
                    let page = one.get(b"Pg").and_then(Object::as_reference).ok().or(page);
                    let id = one.get(b"MCID").and_then(Object::as_i64).expect("a number");
                    self.content.extend(page.map(|page| (page, id)));
                }
                _ => {}
            }
        }
        kinds
    }

    fn element(&mut self, one: &Dictionary, page: Option<ObjectId>, parent: &str) -> String {
        let kind = String::from_utf8_lossy(one.get(b"S").and_then(Object::as_name).expect("a kind")).into_owned();
        let mut broken = |clause: &str| self.all.broken.push(format!("{clause} does not hold: {kind} in {parent}"));
        let level = kind.strip_prefix('H').and_then(|rest| rest.parse::<usize>().ok());
        match kind.as_str() {
            "Figure" => {
                self.all.figures += 1;
                if !one.get(b"Alt").and_then(Object::as_str).is_ok_and(|words| words.len() > 3) {
                    broken("7.3-1: a figure told in words");
                }
            }
            "TR" if !["Table", "THead", "TBody", "TFoot"].contains(&parent) => broken("7.2-4: rows in tables"),
            "TH" | "TD" if parent != "TR" => broken("7.2-8, 7.2-9: cells in rows"),
            "TH" if !format!("{one:?}").contains("Scope") => broken("7.5-1: what a head is head of"),
            "LI" if parent != "L" => broken("7.2-17: items in lists"),
            _ => {}
        }
        if let Some(level) = level {
            self.all.headings += 1;
            if level > self.level + 1 {
                broken("7.4.2-1: no level of heading is skipped");
            }
            self.level = level;
        }
        let kids = self.kids(one, page, &kind);
        match kind.as_str() {
            "Table" => {
                self.all.tables += 1;
                if kids.first().is_none_or(|first| first != "THead") || !kids.contains(&"TBody".into()) {
                    self.all.broken.push(format!("7.5, 7.2-14: head and body of a table: {kids:?}"));
                }
            }
            "L" if kids.iter().any(|kid| !["LI", "L", "Caption"].contains(&kid.as_str())) => {
                self.all.broken.push(format!("7.2-19: items of a list: {kids:?}"));
            }
            _ => {}
        }
        kind
    }
}

/// 7.1-1 to 7.1-3: everything painted is marked, as an artifact or as content that the tree holds, and never as both.
fn marked(read: &Read, k: usize, page: ObjectId, held: &HashSet<(ObjectId, i64)>, all: &mut Checked) {
    let content = Content::decode(&read.pdf.get_page_content(page)).expect("decodes");
    // Around what is painted: artifact, real content, or neither.
    let mut around: Vec<Option<bool>> = Vec::new();
    for Operation { operator, operands } in content.operations {
        match operator.as_str() {
            "BMC" | "BDC" => {
                let artifact = operands[0].as_name().is_ok_and(|name| name == b"Artifact");
                let id = operands.get(1).and_then(|one| one.as_dict().ok()).and_then(|one| one.get(b"MCID").ok());
                let id = id.and_then(|one| one.as_i64().ok());
                if id.is_some_and(|id| !held.contains(&(page, id))) {
                    all.broken.push(format!("7.1-3: page {}: content {id:?} is not in the tree", k + 1));
                }
                let real = id.is_some();
                if around.iter().flatten().any(|within| *within != artifact) && (artifact || real) {
                    all.broken.push(format!("7.1-1, 7.1-2: page {}: artifact and content in each other", k + 1));
                }
                around.push(if artifact { Some(true) } else { real.then_some(false) });
            }
            "EMC" => {
                around.pop();
            }
            "S" | "s" | "f" | "F" | "f*" | "B" | "B*" | "b" | "b*" | "sh" | "Do" | "BI" | "Tj" | "TJ" | "'" | "\"" => {
                all.marked += 1;
                if around.iter().all(Option::is_none) {
                    all.broken.push(format!("7.1-3: page {}: {operator} is marked as nothing", k + 1));
                }
            }
            _ => {}
        }
    }
}

/// 7.18.3-1, 7.18.5-2: links are told in words and reached in order.
fn links(read: &Read, k: usize, page: ObjectId, all: &mut Checked) {
    let dictionary = read.pdf.get_dictionary(page).expect("a page");
    let Ok((_, Object::Array(annots))) = dictionary.get(b"Annots").and_then(|one| read.pdf.dereference(one)) else {
        return;
    };
    if !annots.is_empty() && dictionary.get(b"Tabs").and_then(Object::as_name).ok() != Some(b"S") {
        all.broken.push(format!("7.18.3-1: page {}: tabs follow the structure", k + 1));
    }
    for one in annots {
        all.links += 1;
        let link = read.resolve(one);
        if !link.get(b"Contents").and_then(Object::as_str).is_ok_and(|words| words.len() > 3) {
            all.broken.push(format!("7.18.5-2: page {}: a link told in words", k + 1));
        }
        if !link.has(b"StructParent") {
            all.broken.push(format!("7.18.5-1: page {}: a link in the tree", k + 1));
        }
    }
}

/// 7.21.4.1-1, 7.21.7-1: every font is inside, and every glyph has its character.
fn fonts(read: &Read, all: &mut Checked) {
    for object in read.pdf.objects.values() {
        let Ok(one) = object.as_dict() else { continue };
        let kind = one.get(b"Type").and_then(Object::as_name).unwrap_or_default();
        let within = [&b"FontFile"[..], b"FontFile2", b"FontFile3"].iter().any(|key| one.has(key));
        if kind == b"FontDescriptor" && !within {
            all.broken.push("7.21.4.1-1: a font is not embedded".into());
        }
        let composite = one.get(b"Subtype").and_then(Object::as_name).is_ok_and(|kind| kind == b"Type0");
        if kind == b"Font" && composite && !one.has(b"ToUnicode") {
            all.broken.push("7.21.7-1: a font does not tell its characters".into());
        }
    }
}
