//! The file of votes on disk: a vote is added or taken back, whatever else stands in it stays.

use super::disk::{self, Settle};
use dial::Mistake;
use process::Vote;
use std::io;
use std::path::{Path, PathBuf};
use toml_edit::{Array, ArrayOfTables, DocumentMut, InlineTable, Item, TableLike, Value};

/// How a new file begins.
const HEAD: &str = "# Which pairings of stocks people picked, best first: see docs/votes-file.md.\n";

/// A file of votes. Every change is made under a lock that all desks and commands respect, on what the file holds then.
#[derive(Clone, Debug)]
pub struct VotesFile {
    path: PathBuf,
}

/// Why a vote was not written. The file is as it was.
#[derive(Debug)]
pub enum NoVote {
    /// The file, or what would have become of it, cannot be read.
    Mistakes {
        /// The text.
        text: String,
        /// What is wrong with it.
        mistakes: Vec<Mistake>,
    },
    /// There is no such vote to take back.
    NoSuch,
    /// The system refused.
    Io(io::Error),
}

impl From<io::Error> for NoVote {
    fn from(error: io::Error) -> NoVote {
        NoVote::Io(error)
    }
}

impl VotesFile {
    /// The file at a path, whether it is there yet or not.
    pub fn at(path: &Path) -> VotesFile {
        VotesFile { path: path.to_owned() }
    }

    /// All votes in it; none where it is not there.
    ///
    /// # Errors
    /// Why it cannot be read.
    pub fn votes(&self) -> Result<Vec<Vote>, NoVote> {
        votes_of(&self.text()?)
    }

    /// Adds a vote, best first, and returns all.
    ///
    /// # Errors
    /// Why it was not written.
    pub fn add(&self, best_first: &[String]) -> Result<Vec<Vote>, NoVote> {
        self.change(|text| Some(added(text, best_first)))
    }

    /// Takes back the last vote that says just this, and returns those that are left.
    ///
    /// # Errors
    /// Why it was not written.
    pub fn take_back(&self, best_first: &[String]) -> Result<Vec<Vote>, NoVote> {
        self.change(|text| taken_back(text, best_first))
    }

    fn text(&self) -> io::Result<String> {
        match disk::text(&self.path) {
            Err(error) if error.kind() == io::ErrorKind::NotFound => Ok(String::new()),
            read => read,
        }
    }

    fn change(&self, make: impl FnOnce(&str) -> Option<String>) -> Result<Vec<Vote>, NoVote> {
        let _lock = disk::lock(&self.path)?;
        let now = self.text()?;
        // What cannot be read is for its writer to mend, not to be added to.
        votes_of(&now)?;
        let text = make(&now).ok_or(NoVote::NoSuch)?;
        let votes = votes_of(&text)?;
        disk::put(&self.path, &text, Settle::Now)?;
        Ok(votes)
    }
}

fn votes_of(text: &str) -> Result<Vec<Vote>, NoVote> {
    workshop::read_votes(text).map_err(|mistakes| NoVote::Mistakes { text: text.to_owned(), mistakes })
}

/// The text with one more vote at its end.
fn added(text: &str, best_first: &[String]) -> String {
    let list: Value = best_first.iter().collect::<Array>().into();
    if let Ok(mut document) = text.parse::<DocumentMut>()
        && let Some(Item::Value(Value::Array(votes))) = document.get_mut("vote")
    {
        let mut vote = InlineTable::new();
        vote.insert("best_first", list);
        votes.push(vote);
        return document.to_string();
    }
    let before = if text.trim().is_empty() { HEAD } else { text };
    let ended = if before.ends_with('\n') { "" } else { "\n" };
    format!("{before}{ended}\n[[vote]]\nbest_first = {list}\n")
}

/// The text with the last such vote told once less; `None` where there is none.
fn taken_back(text: &str, best_first: &[String]) -> Option<String> {
    let mut document: DocumentMut = text.parse().ok()?;
    match document.get_mut("vote")? {
        Item::ArrayOfTables(votes) => {
            let at = last(votes.iter().map(|vote| says(vote, best_first)))?;
            if !once_less(votes.get_mut(at)?) {
                let comments = comments_above(votes, at);
                votes.remove(at);
                let below = votes.get_mut(at).map(|next| next.decor_mut());
                match below {
                    Some(decor) => {
                        let old = decor.prefix().and_then(|raw| raw.as_str()).unwrap_or_default().to_owned();
                        decor.set_prefix(format!("{comments}{old}"));
                    }
                    None => {
                        let old = document.trailing().as_str().unwrap_or_default().to_owned();
                        document.set_trailing(format!("{comments}{old}"));
                    }
                }
            }
        }
        Item::Value(Value::Array(votes)) => {
            let at = last(votes.iter().map(|vote| vote.as_inline_table().is_some_and(|vote| says(vote, best_first))))?;
            if !once_less(votes.get_mut(at)?.as_inline_table_mut()?) {
                votes.remove(at);
            }
        }
        _ => return None,
    }
    Some(document.to_string())
}

/// Place of the last that holds.
fn last(all: impl Iterator<Item = bool>) -> Option<usize> {
    all.enumerate().filter_map(|(at, holds)| holds.then_some(at)).last()
}

fn says(vote: &dyn TableLike, best_first: &[String]) -> bool {
    let list = vote.get("best_first").and_then(Item::as_array);
    list.is_some_and(|list| list.iter().map(|one| one.as_str()).eq(best_first.iter().map(|one| Some(one.as_str()))))
}

/// Counts a vote that several people gave once less; `false` if it was given once.
fn once_less(vote: &mut dyn TableLike) -> bool {
    let times = vote.get("times").and_then(Item::as_integer).unwrap_or(1);
    if times > 1
        && let Some(value) = vote.get_mut("times").and_then(Item::as_value_mut)
    {
        let decor = value.decor().clone();
        *value = Value::from(times - 1);
        *value.decor_mut() = decor;
    }
    times > 1
}

/// What stands above a vote, if there is a comment in it.
fn comments_above(votes: &ArrayOfTables, at: usize) -> String {
    let above = votes.get(at).and_then(|vote| vote.decor().prefix()?.as_str()).unwrap_or_default();
    if above.contains('#') { format!("{}\n", above.trim_end()) } else { String::new() }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn names(all: &[&str]) -> Vec<String> {
        all.iter().map(|one| (*one).to_owned()).collect()
    }

    #[test]
    fn a_vote_is_added_and_taken_back_and_all_else_stays() {
        let folder = tempfile::tempdir().expect("a folder");
        let file = VotesFile::at(&folder.path().join("votes.toml"));
        assert!(file.votes().expect("none yet").is_empty());
        let [ab, ba] = [names(&["a / b", "b \"c\" / d"]), names(&["b \"c\" / d", "a / b"])];
        assert_eq!(file.add(&ab).expect("added").len(), 1);
        let hand = "# at the fair\n[[vote]]\nbest_first = [\"a / b\", \"e / f\"] # Sunday\ntimes = 3\n# the end\n";
        std::fs::write(folder.path().join("votes.toml"), hand).expect("written");
        assert_eq!(file.add(&ba).expect("added").len(), 2);
        let text = file.text().expect("there");
        assert!(text.starts_with(hand), "{text}");
        assert_eq!(file.take_back(&ba).expect("taken back").len(), 1);
        let text = file.text().expect("there");
        assert!(text.starts_with(hand.trim_end()) && !text.contains("\"c\""), "{text}");
        // One of three says so no more; a vote that nobody gave is none to take back.
        let left = file.take_back(&names(&["a / b", "e / f"])).expect("taken back");
        assert_eq!(left[0].times, 2);
        assert!(matches!(file.take_back(&ab), Err(NoVote::NoSuch)));
        // A comment above a vote outlives it.
        for _ in 0..2 {
            file.take_back(&names(&["a / b", "e / f"])).expect("taken back");
        }
        let text = file.text().expect("there");
        assert!(text.contains("# at the fair") && text.contains("# the end") && !text.contains("[[vote]]"), "{text}");
    }

    #[test]
    fn what_is_no_vote_or_no_file_of_votes_is_left_alone() {
        let folder = tempfile::tempdir().expect("a folder");
        let path = folder.path().join("votes.toml");
        let file = VotesFile::at(&path);
        assert!(matches!(file.add(&names(&["a / b"])), Err(NoVote::Mistakes { .. })), "one against none");
        assert!(!path.exists());
        std::fs::write(&path, "[[vote]]\nbest = 3\n").expect("written");
        assert!(matches!(file.add(&names(&["a / b", "c / d"])), Err(NoVote::Mistakes { .. })));
        assert_eq!(std::fs::read_to_string(&path).expect("there"), "[[vote]]\nbest = 3\n");
    }

    /// Many at once, as from several desks: none is lost.
    #[test]
    fn votes_given_at_the_same_time_are_all_kept() {
        let folder = tempfile::tempdir().expect("a folder");
        let file = VotesFile::at(&folder.path().join("votes.toml"));
        std::thread::scope(|scope| {
            for desk in 0..4 {
                let file = &file;
                scope.spawn(move || {
                    for k in 0..8 {
                        file.add(&names(&[&format!("{desk} / {k}"), "b / b"])).expect("added");
                    }
                });
            }
        });
        assert_eq!(file.votes().expect("read").len(), 32);
    }

    #[test]
    fn votes_in_one_line_stay_in_it() {
        let folder = tempfile::tempdir().expect("a folder");
        let path = folder.path().join("votes.toml");
        std::fs::write(&path, "vote = [{ best_first = [\"a / b\", \"c / d\"] }]\n").expect("written");
        let file = VotesFile::at(&path);
        assert_eq!(file.add(&names(&["c / d", "a / b"])).expect("added").len(), 2);
        assert_eq!(file.take_back(&names(&["a / b", "c / d"])).expect("taken").len(), 1);
        assert!(!file.text().expect("there").contains("[["));
    }
}
