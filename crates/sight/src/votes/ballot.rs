//! Votes as they come in.

use std::error::Error;
use std::fmt;

/// Votes on things that are numbered from 0.
///
/// ```
/// use sight::{Favourite, Votes};
///
/// let mut votes = Votes::on(3);
/// votes.prefer_often(0, 1, 9)?;  // nine people liked 0 better than 1, two the other way round
/// votes.prefer_often(1, 0, 2)?;
/// votes.rank(&[0, 2, 1])?;       // and two ranked all three
/// votes.rank(&[2, 0, 1])?;
/// let strengths = votes.fit().expect("all three were compared");
/// assert_eq!(strengths.order(), [2, 0, 1]); // 2 was seen twice only ...
/// assert!(!matches!(strengths.favourite(), Favourite::Called { .. })); // ... which is too little to call it
/// # Ok::<(), sight::VoteError>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Votes {
    things: usize,
    pub(super) choices: Vec<Choice>,
}

/// The first was picked out of all, so many times.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Choice {
    pub(super) set: Vec<usize>,
    pub(super) times: u32,
}

impl Choice {
    pub(super) fn picked(&self) -> usize {
        self.set[0]
    }

    pub(super) fn passed_over(&self) -> &[usize] {
        &self.set[1..]
    }
}

/// Why a vote does not count; things are told from 1, as people count.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum VoteError {
    /// A vote for what is not there.
    Unknown {
        /// Its number, from 0.
        thing: usize,
        /// How many there are.
        things: usize,
    },
    /// One thing named twice in one vote.
    Twice {
        /// Its number, from 0.
        thing: usize,
    },
    /// A vote that compares nothing.
    Alone,
}

impl Votes {
    /// No votes yet on so many things.
    #[must_use]
    pub fn on(things: usize) -> Votes {
        Votes { things, choices: Vec::new() }
    }

    /// How many things there are to choose from.
    #[must_use]
    pub fn things(&self) -> usize {
        self.things
    }

    /// How many choices were made; a ranking of n things is n - 1 choices.
    #[must_use]
    pub fn cast(&self) -> u64 {
        self.choices.iter().map(|choice| u64::from(choice.times)).sum()
    }

    /// For each thing, in how many choices it was laid out.
    #[must_use]
    pub fn laid_out(&self) -> Vec<u64> {
        let mut counts = vec![0; self.things];
        for choice in &self.choices {
            for thing in &choice.set {
                counts[*thing] += u64::from(choice.times);
            }
        }
        counts
    }

    /// Somebody likes one better than the other.
    ///
    /// # Errors
    /// [`VoteError`] where one is unknown, or both are one.
    pub fn prefer(&mut self, better: usize, worse: usize) -> Result<(), VoteError> {
        self.prefer_often(better, worse, 1)
    }

    /// So many people like one better than the other.
    ///
    /// # Errors
    /// [`VoteError`] where one is unknown, or both are one.
    pub fn prefer_often(&mut self, better: usize, worse: usize, times: u32) -> Result<(), VoteError> {
        self.pick_often(better, &[worse], times)
    }

    /// So many people pick one out of it and others that are laid out beside it.
    ///
    /// # Errors
    /// [`VoteError`] where one is unknown or named twice, or there are no others.
    pub fn pick_often(&mut self, picked: usize, others: &[usize], times: u32) -> Result<(), VoteError> {
        let set = [&[picked], others].concat();
        self.check(&set)?;
        if times > 0 {
            self.choices.push(Choice { set, times });
        }
        Ok(())
    }

    /// Somebody ranks two or more, best first. What is left out was not looked at: it is neither better nor worse.
    ///
    /// The ranking counts as a choice out of all, then out of the rest, and so on: not as all its pairs, which would
    /// count one person's opinion several times over.
    ///
    /// # Errors
    /// [`VoteError`] where one is unknown or named twice, or fewer than two are named.
    pub fn rank(&mut self, best_first: &[usize]) -> Result<(), VoteError> {
        self.check(best_first)?;
        let steps = (0..best_first.len() - 1).map(|step| Choice { set: best_first[step..].to_vec(), times: 1 });
        self.choices.extend(steps);
        Ok(())
    }

    fn check(&self, named: &[usize]) -> Result<(), VoteError> {
        if let Some(&thing) = named.iter().find(|thing| **thing >= self.things) {
            return Err(VoteError::Unknown { thing, things: self.things });
        }
        if let Some((_, &thing)) = named.iter().enumerate().find(|(at, thing)| named[..*at].contains(thing)) {
            return Err(VoteError::Twice { thing });
        }
        if named.len() < 2 { Err(VoteError::Alone) } else { Ok(()) }
    }
}

impl fmt::Display for VoteError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            VoteError::Unknown { thing, things } => {
                write!(f, "a vote names number {}, but only {things} are there to choose from", thing + 1)
            }
            VoteError::Twice { thing } => write!(f, "a vote names number {} twice: name each once", thing + 1),
            VoteError::Alone => f.write_str("a vote must name two at least: one alone is compared with nothing"),
        }
    }
}

impl Error for VoteError {}
