//! Which pairings people picked, ranked with how sure that is.

use process::Vote;
use sight::{Favourite, FitError, Lead, Votes};

/// What people picked.
#[derive(Clone, Debug)]
pub struct Picks {
    /// The pairings that were voted on, most liked first where they can be ranked.
    pub picked: Vec<Picked>,
    /// How many choices were made; a ranking of n is n - 1 choices.
    pub cast: u64,
    /// What can be said, in a sentence: the favourite, or why there is none yet.
    pub verdict: String,
    /// The favourite's name, only where it can be called.
    pub favourite: Option<String>,
}

/// One pairing that was voted on.
#[derive(Clone, Debug)]
pub struct Picked {
    /// Its name.
    pub name: String,
    /// Probability that it is picked out of all, 0 to 1; `None` where they cannot be ranked.
    pub share: Option<f64>,
    /// Its log-strength against the mean of all, with its standard error.
    pub strength: Option<(f64, f64)>,
    /// In how many choices it was laid out.
    pub laid_out: u64,
}

/// Ranks the pairings that were voted on; `None` without votes. The model is that of Bradley and Terry, and for rankings of Plackett
/// and Luce: see the room `sight`.
pub fn picks(votes: &[Vote]) -> Option<Picks> {
    let mut names: Vec<&str> = votes.iter().flat_map(|vote| vote.best_first.iter().map(String::as_str)).collect();
    names.sort_unstable();
    names.dedup();
    if names.len() < 2 {
        return None;
    }
    let mut counted = Votes::on(names.len());
    for vote in votes {
        let order: Vec<usize> =
            vote.best_first.iter().filter_map(|name| names.binary_search(&name.as_str()).ok()).collect();
        // The reader of the file took only votes that name two different ones at least.
        for step in 0..order.len().saturating_sub(1) {
            let _ = counted.pick_often(order[step], &order[step + 1..], vote.times);
        }
    }
    let laid_out = counted.laid_out();
    let plain = |at: usize| Picked { name: names[at].to_owned(), share: None, strength: None, laid_out: laid_out[at] };
    let cast = counted.cast();
    let strengths = match counted.fit() {
        Ok(strengths) => strengths,
        Err(error) => {
            let picked = (0..names.len()).map(plain).collect();
            return Some(Picks { picked, cast, verdict: no_ranking(&error, &names), favourite: None });
        }
    };
    let one = |at: usize| Picked {
        share: Some(strengths.share(at)),
        strength: Some((strengths.log(at), strengths.error(at))),
        ..plain(at)
    };
    let found = strengths.favourite();
    let favourite = match found {
        Favourite::Called(lead) => Some(names[lead.leader].to_owned()),
        _ => None,
    };
    let picked = strengths.order().into_iter().map(one).collect();
    Some(Picks { picked, cast, verdict: verdict(&found, &names), favourite })
}

fn verdict(found: &Favourite, names: &[&str]) -> String {
    let more = |lead: &Lead| match lead.needed() {
        Some(needed) => format!("about {needed} choices like these would settle it"),
        None => "the two are as good as equal".to_owned(),
    };
    match found {
        Favourite::Called(lead) => format!(
            "the favourite is {}: it leads {} so clearly that luck would do so in {:.1} % of cases; {} choices",
            names[lead.leader],
            names[lead.rival],
            lead.doubt * 100.0,
            lead.cast
        ),
        Favourite::TooClose(lead) => format!(
            "no favourite yet: {} leads {}, but luck alone would do so in {:.0} % of cases; {}",
            names[lead.leader],
            names[lead.rival],
            lead.doubt * 100.0,
            more(lead)
        ),
        Favourite::TooFew(lead) => format!(
            "too few votes to call a favourite: {} is in front, but was laid out in too few choices for any outcome to be clear; six at least are needed",
            names[lead.leader]
        ),
    }
}

fn no_ranking(error: &FitError, names: &[&str]) -> String {
    match error {
        FitError::Apart { groups } => {
            let told = groups.iter().map(|group| {
                let inside: Vec<&str> = group.iter().map(|thing| names[*thing]).collect();
                format!("({})", inside.join(", "))
            });
            format!(
                "no ranking yet: nobody has compared {}; ask for votes that join them",
                told.collect::<Vec<_>>().join(" with ")
            )
        }
        other => format!("no ranking yet: {other}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn vote(best_first: &[&str], times: u32) -> Vote {
        Vote { best_first: best_first.iter().map(|name| (*name).to_owned()).collect(), times }
    }

    /// Two things: the strength of one over the other is the logarithm of the odds, by hand: ln(9/2), error sqrt(1/9 + 1/2).
    #[test]
    fn two_are_ranked_by_their_odds() {
        let picks = picks(&[vote(&["a", "b"], 9), vote(&["b", "a"], 2)]).expect("votes");
        let [first, second] = [0, 1].map(|at| picks.picked[at].strength.expect("ranked"));
        assert!((first.0 - second.0 - (4.5f64).ln()).abs() < 1e-6);
        assert!((2.0 * first.1 - (1.0 / 9.0 + 0.5f64).sqrt()).abs() < 1e-6);
        assert!((picks.picked[0].share.expect("ranked") - 9.0 / 11.0).abs() < 1e-6);
        assert_eq!(picks.cast, 11);
    }

    #[test]
    fn it_says_when_no_favourite_can_be_called() {
        assert!(picks(&[]).is_none());
        let few = picks(&[vote(&["a", "b"], 3)]).expect("votes");
        assert!(few.favourite.is_none() && few.verdict.starts_with("too few votes"), "{}", few.verdict);
        let close = picks(&[vote(&["a", "b"], 7), vote(&["b", "a"], 4)]).expect("votes");
        assert!(close.favourite.is_none() && close.verdict.contains("54 choices"), "{}", close.verdict);
        let clear = picks(&[vote(&["a", "b"], 40), vote(&["b", "a"], 4)]).expect("votes");
        assert_eq!(clear.favourite.as_deref(), Some("a"));
        let apart = picks(&[vote(&["a", "b"], 4), vote(&["c", "d"], 4)]).expect("votes");
        assert!(apart.verdict.contains("(a, b) with (c, d)"), "{}", apart.verdict);
    }
}
