//! All that the typesetter may see: our templates, the data, the pictures and the shipped font.

use crate::book::Pictures;
use std::collections::HashMap;
use std::sync::LazyLock;
use typst::diag::{FileError, FileResult};
use typst::foundations::{Bytes, Datetime, Duration};
use typst::syntax::{FileId, RootedPath, Source, VirtualPath, VirtualRoot};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::{Library, LibraryExt, World};

/// The shipped font (SIL Open Font License 1.1), in the weights that the templates use.
static FONTS: LazyLock<Vec<Font>> = LazyLock::new(|| {
    let all: [&'static [u8]; 4] = [
        include_bytes!("../../lettering/fonts/AtkinsonHyperlegibleNext-Regular.ttf"),
        include_bytes!("../../lettering/fonts/AtkinsonHyperlegibleNext-Medium.ttf"),
        include_bytes!("../../lettering/fonts/AtkinsonHyperlegibleNext-SemiBold.ttf"),
        include_bytes!("../../lettering/fonts/AtkinsonHyperlegibleNext-Bold.ttf"),
    ];
    all.into_iter().flat_map(|bytes| Font::iter(Bytes::new(bytes))).collect()
});

static LIBRARY: LazyLock<LazyHash<Library>> = LazyLock::new(|| LazyHash::new(Library::default()));
static BOOK: LazyLock<LazyHash<FontBook>> = LazyLock::new(|| LazyHash::new(FontBook::from_fonts(FONTS.iter())));

/// The template of the book, and that of one drawing alone.
pub(crate) const BOOK_OF: &str = "book.typ";
pub(crate) const PLAIN: &str = "plain.typ";

/// Our templates by their names.
const SOURCES: [(&str, &str); 12] = [
    (BOOK_OF, include_str!("set/book.typ")),
    (PLAIN, include_str!("set/plain.typ")),
    ("style.typ", include_str!("set/style.typ")),
    ("dial.typ", include_str!("set/dial.typ")),
    ("proof.typ", include_str!("set/proof.typ")),
    ("turns.typ", include_str!("set/turns.typ")),
    ("pairings.typ", include_str!("set/pairings.typ")),
    ("magnets.typ", include_str!("set/magnets.typ")),
    ("tickets.typ", include_str!("set/tickets.typ")),
    ("assembly.typ", include_str!("set/assembly.typ")),
    ("handover.typ", include_str!("set/handover.typ")),
    ("materials.typ", include_str!("set/materials.typ")),
];

/// Whether the shipped font, in every weight, has a character.
pub(crate) fn covers(c: char) -> bool {
    c == ' ' || FONTS.iter().all(|font| font.info().coverage.contains(u32::from(c)))
}

/// What is there for one book.
pub(crate) struct Desk {
    main: FileId,
    sources: HashMap<FileId, Source>,
    files: HashMap<FileId, Bytes>,
}

impl Desk {
    /// The templates, and files by their names.
    pub(crate) fn new(main: &str, files: Pictures) -> Result<Desk, String> {
        let sources = SOURCES
            .into_iter()
            .map(|(name, text)| id(name).map(|id| (id, Source::new(id, text.to_owned()))))
            .collect::<Result<_, _>>()?;
        let files = files
            .into_iter()
            .map(|(name, bytes)| id(&name).map(|id| (id, Bytes::new(bytes))))
            .collect::<Result<_, _>>()?;
        Ok(Desk { main: id(main)?, sources, files })
    }
}

fn id(name: &str) -> Result<FileId, String> {
    let path = VirtualPath::new(name).map_err(|error| format!("{name}: {error:?}"))?;
    Ok(RootedPath::new(VirtualRoot::Project, path).intern())
}

impl World for Desk {
    fn library(&self) -> &LazyHash<Library> {
        &LIBRARY
    }

    fn book(&self) -> &LazyHash<FontBook> {
        &BOOK
    }

    fn main(&self) -> FileId {
        self.main
    }

    fn source(&self, id: FileId) -> FileResult<Source> {
        self.sources.get(&id).cloned().ok_or(FileError::AccessDenied)
    }

    fn file(&self, id: FileId) -> FileResult<Bytes> {
        self.files.get(&id).cloned().ok_or(FileError::AccessDenied)
    }

    fn font(&self, index: usize) -> Option<Font> {
        FONTS.get(index).cloned()
    }

    /// No clock.
    fn today(&self, _offset: Option<Duration>) -> Option<Datetime> {
        None
    }
}
