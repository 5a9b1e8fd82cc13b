//! A dial file looked at: the whole chain from its text to what the page shows, kept for as long as it is asked for.

use crate::house::{House, Shop};
use crate::kin::{Kin, Kinship};
use crate::mend::{self, Mend};
use crate::pieces::{self, Piece};
use crate::store::Version;
use dial::design::{self, Design};
use dial::family::Member;
use dial::looks::{Pairing, pairings};
use dial::{Looked, Mistake};
use process::Workshop;
use serde_json::{Value, json};
use std::collections::HashMap;
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, OnceLock, PoisonError};

/// How many looks are remembered: enough for some pages and the last steps of a drag.
const REMEMBERED: usize = 24;

/// One text of a dial file, looked at in one workshop.
pub struct Look {
    /// Tells it from all other looks.
    pub id: String,
    /// The text.
    pub text: String,
    /// Its version.
    pub version: Version,
    /// The workshop.
    pub workshop: Workshop,
    /// Others that it is held against.
    pub kin: Arc<Kin>,
    /// What came of it.
    pub outcome: Result<Seen, Vec<Mistake>>,
    /// What the page is shown.
    pub pieces: Vec<Piece>,
    mends: OnceLock<Vec<Option<Mend>>>,
    ranked: OnceLock<Vec<Pairing>>,
}

/// A dial that could be drawn.
pub struct Seen {
    /// What was asked for.
    pub design: Design,
    /// The dial, looked over.
    pub looked: Looked,
}

impl std::ops::Deref for Seen {
    type Target = Looked;

    fn deref(&self) -> &Looked {
        &self.looked
    }
}

impl Seen {
    /// From a text to its findings: the same calls as the command line's.
    ///
    /// # Errors
    /// All mistakes in it.
    pub fn of(text: &str, workshop: &Workshop, family: &[Member]) -> Result<Seen, Vec<Mistake>> {
        let design = design::read(text, workshop)?;
        let looked = dial::look(&design, workshop, family)?;
        Ok(Seen { design, looked })
    }
}

impl Look {
    fn at(text: &str, shop: Shop, kin: Arc<Kin>, id: String, house: &House) -> Look {
        let outcome = Seen::of(text, &shop.workshop, &kin.members);
        let pieces = match &outcome {
            Ok(seen) => pieces::of_dial(seen, text, &shop, &kin, house),
            Err(mistakes) => pieces::of_mistakes(mistakes, text, &shop, &kin),
        };
        let (text, version) = (text.to_owned(), Version::of(text));
        Look {
            id,
            text,
            version,
            workshop: shop.workshop,
            kin,
            outcome,
            pieces,
            mends: OnceLock::new(),
            ranked: OnceLock::new(),
        }
    }

    /// The mends that are known for the findings, by their order. They are looked for when they are first asked for,
    /// since each is tried on the whole dial.
    pub fn mends(&self) -> &[Option<Mend>] {
        self.mends.get_or_init(|| {
            let Ok(seen) = &self.outcome else { return Vec::new() };
            mend::mends(seen, &self.text, &self.workshop, &self.kin)
        })
    }

    /// Every pairing of the shelf's stocks for this dial, best first; computed when it is first asked for.
    pub fn ranked(&self) -> &[Pairing] {
        self.ranked.get_or_init(|| match &self.outcome {
            Ok(seen) => pairings(&seen.looked, &self.workshop),
            Err(_) => Vec::new(),
        })
    }

    /// What of this look differs from one that the page has already: the names of all pieces, and those that changed.
    pub fn since(&self, had: Option<&Look>) -> Value {
        let before: HashMap<&str, u64> = had
            .map(|look| look.pieces.iter().map(|piece| (piece.name.as_str(), piece.hash)).collect())
            .unwrap_or_default();
        let changed: serde_json::Map<String, Value> = self
            .pieces
            .iter()
            .filter(|piece| before.get(piece.name.as_str()) != Some(&piece.hash))
            .map(|piece| (piece.name.clone(), piece.value.clone()))
            .collect();
        let all: Vec<&str> = self.pieces.iter().map(|piece| piece.name.as_str()).collect();
        json!({ "look": self.id, "version": self.version, "all": all, "changed": changed })
    }
}

/// The looks that are remembered.
pub struct Looks {
    house: House,
    root: Option<PathBuf>,
    kinship: Kinship,
    kept: Mutex<Vec<Arc<Look>>>,
}

impl Looks {
    /// None yet; nothing outside `root` is read for them.
    pub fn new(house: House, root: Option<PathBuf>) -> Looks {
        Looks { house, root, kinship: Kinship::default(), kept: Mutex::new(Vec::new()) }
    }

    /// Looks at a text of a dial file, or remembers having looked.
    pub fn at(&self, file: &Path, text: &str) -> Arc<Look> {
        let shop = self.house.shop(file);
        let kin = self.kinship.of(file, text, self.root.as_deref(), &shop.workshop, &shop.text);
        let id = Version::of(&format!("{text}\0{}\0{}", shop.text, kin.id)).as_str().to_owned();
        if let Some(look) = self.remembered(&id) {
            return look;
        }
        let look = Arc::new(Look::at(text, shop, kin, id, &self.house));
        let mut kept = self.kept.lock().unwrap_or_else(PoisonError::into_inner);
        if kept.len() >= REMEMBERED {
            kept.remove(0);
        }
        kept.push(look.clone());
        look
    }

    /// A look by its name; the one asked for last is forgotten last.
    pub fn remembered(&self, id: &str) -> Option<Arc<Look>> {
        let mut kept = self.kept.lock().unwrap_or_else(PoisonError::into_inner);
        let at = kept.iter().position(|look| look.id == id)?;
        let look = kept.remove(at);
        kept.push(look.clone());
        Some(look)
    }
}
