//! Votes against published worked examples, three other libraries, and luck itself.

use std::collections::BTreeMap;

use proptest::prelude::*;
use sight::{Favourite, FitError, VoteError, Votes};

use crate::table::{agree, cells, number};

/// The cases of tools/votes_reference.py by name: votes, and log-strengths with errors.
fn cases() -> BTreeMap<&'static str, (Votes, Vec<[f64; 2]>)> {
    let mut cases = BTreeMap::new();
    for row in cells(include_str!("../data/strengths.csv"), 4) {
        let (_, strengths) = cases.entry(row[0]).or_insert((Votes::on(0), Vec::new()));
        strengths.push([number(row[2]), number(row[3])]);
    }
    for (votes, strengths) in cases.values_mut() {
        *votes = Votes::on(strengths.len());
    }
    for row in cells(include_str!("../data/votes.csv"), 3) {
        let picked: Vec<usize> = row[2].split(' ').map(|thing| thing.parse().expect("a number")).collect();
        let (votes, _) = cases.get_mut(row[0]).expect("a case");
        let times = row[1].parse().expect("a count");
        let voted = if row[0].starts_with("rankings") {
            assert_eq!(times, 1);
            votes.rank(&picked)
        } else {
            votes.pick_often(picked[0], &picked[1..], times)
        };
        voted.expect("a vote");
    }
    cases
}

/// Agresti, Categorical Data Analysis (2nd edition 2002), section 10.6, baseball 1987: strengths against Baltimore as
/// printed in table 10.11, column 3; each standard error about 0.3. (Both also in the tests of the R package
/// BradleyTerry2.)
#[test]
fn baseball() {
    let (votes, _) = &cases()["baseball"];
    let strengths = votes.fit().expect("strengths");
    assert_eq!(strengths.cast(), 21 * 13);
    assert!(strengths.bounded_by_votes());
    let teams = ["Milwaukee", "Detroit", "Toronto", "New York", "Boston", "Cleveland"];
    for (team, printed) in [1.58, 1.44, 1.29, 1.25, 1.11, 0.68].into_iter().enumerate() {
        let over_baltimore = strengths.difference(team, 6);
        agree(teams[team], over_baltimore.value, printed, 0.005);
        agree(teams[team], over_baltimore.error, 0.3, 0.05);
    }
    assert_eq!(strengths.order(), [0, 1, 2, 3, 4, 5, 6]);
    // The season's best is not beyond luck.
    let Favourite::TooClose(lead) = strengths.favourite() else { panic!("{:?}", strengths.favourite()) };
    assert_eq!((lead.leader, lead.rival), (0, 1));
    assert!(lead.doubt > 0.5 && lead.needed().is_some_and(|needed| needed > 3000), "{lead:?} {:?}", lead.needed());
}

/// Stigler's citations, as fitted in H. Turner, D. Firth, Journal of Statistical Software 48 (2012) number 9, section
/// 2.1: against Biometrika, with the printed standard errors (from memory; the table of this test agrees with them).
#[test]
fn citations() {
    let (votes, _) = &cases()["citations"];
    let strengths = votes.fit().expect("strengths");
    for (journal, value, error) in [(1, -2.94907, 0.10255), (2, -0.47957, 0.06059), (3, 0.26895, 0.07083)] {
        let over_biometrika = strengths.difference(journal, 0);
        agree("strength", over_biometrika.value, value, 6e-6);
        agree("error", over_biometrika.error, error, 6e-6);
    }
    let Favourite::Called(lead) = strengths.favourite() else { panic!("{:?}", strengths.favourite()) };
    assert_eq!((lead.leader, lead.rival), (3, 0));
    agree("doubt", lead.doubt, 0.000_146, 2e-6); // two-sided tail of z = 0.26895 / 0.07083 = 3.797
}

/// Pairs against logistic regression, rankings against conditional logit, separated votes against arbitrary precision.
#[test]
fn other_libraries() {
    let cases = cases();
    assert_eq!(cases.len(), 29);
    for (case, (votes, expected)) in cases {
        let strengths = votes.fit().expect("strengths");
        for (thing, [log, error]) in expected.into_iter().enumerate() {
            agree(&format!("{case}, {thing}"), strengths.log(thing), log, 2e-6);
            agree(&format!("{case}, {thing}, error"), strengths.error(thing), error, 2e-6);
        }
        assert_eq!(strengths.bounded_by_votes(), !["unanimous", "chain", "unbeaten"].contains(&case), "{case}");
    }
}

/// Two things, by hand: log(a/b) with error sqrt(1/a + 1/b).
#[test]
fn two_things_by_hand() {
    let mut votes = Votes::on(2);
    votes.prefer_often(1, 0, 9).expect("votes");
    votes.prefer_often(0, 1, 3).expect("votes");
    let strengths = votes.fit().expect("strengths");
    let lead = strengths.difference(1, 0);
    agree("lead", lead.value, 3f64.ln(), 1e-12);
    agree("error", lead.error, (1.0 / 9.0 + 1.0 / 3.0f64).sqrt(), 1e-12);
    agree("chance", strengths.chance(1, 0), 0.75, 1e-12);
    agree("share", strengths.share(1), 0.75, 1e-12);
    assert_eq!((strengths.order(), strengths.laid_out(0)), (vec![1, 0], 12));
}

/// A vote of each order of three makes them equal, whatever the method.
#[test]
fn every_order_once_makes_equals() {
    let mut votes = Votes::on(3);
    for order in [[0, 1, 2], [0, 2, 1], [1, 0, 2], [1, 2, 0], [2, 0, 1], [2, 1, 0]] {
        votes.rank(&order).expect("a ranking");
    }
    let strengths = votes.fit().expect("strengths");
    for thing in 0..3 {
        agree("log", strengths.log(thing), 0.0, 1e-12);
        agree("share", strengths.share(thing), 1.0 / 3.0, 1e-12);
    }
    let Favourite::TooClose(lead) = strengths.favourite() else { panic!("equals") };
    assert_eq!(lead.needed(), None);
    agree("doubt", lead.doubt, 1.0, 1e-9);
}

#[test]
fn too_few_votes_call_no_favourite() {
    let mut votes = Votes::on(2);
    votes.prefer_often(0, 1, 5).expect("votes");
    let strengths = votes.fit().expect("strengths");
    assert!(!strengths.bounded_by_votes(), "five to nothing bounds nothing");
    assert!(matches!(strengths.favourite(), Favourite::TooFew(lead) if lead.leader == 0 && lead.cast == 5));
    votes.prefer_often(0, 1, 20).expect("votes");
    assert!(matches!(votes.fit().expect("strengths").favourite(), Favourite::Called(lead) if lead.doubt < 0.05));
}

/// A third, hardly ever laid out, may be anything: the leader of the two others is not called.
#[test]
fn a_stranger_stands_in_the_way() {
    let mut votes = Votes::on(3);
    votes.prefer_often(0, 1, 40).expect("votes");
    votes.prefer_often(1, 0, 10).expect("votes");
    assert!(matches!(votes.fit(), Err(FitError::Apart { .. })));
    votes.prefer(0, 2).expect("a vote");
    votes.prefer(2, 1).expect("a vote");
    assert!(matches!(votes.fit().expect("strengths").favourite(), Favourite::TooClose(lead) if lead.rival == 2));
}

/// Ford 1957: without votes between groups there is no order, and the reason names them.
#[test]
fn groups_that_never_met_are_refused() {
    let mut votes = Votes::on(5);
    for (better, worse) in [(0, 2), (2, 0), (3, 4), (4, 3)] {
        votes.prefer_often(better, worse, 9).expect("votes");
    }
    let error = votes.fit().expect_err("three groups");
    assert_eq!(error, FitError::Apart { groups: vec![vec![0, 2], vec![1], vec![3, 4]] });
    assert!(error.to_string().starts_with("nobody has compared any of {1, 3}, of {2} with any of {4, 5}"), "{error}");
    assert_eq!(Votes::on(3).fit(), Err(FitError::Nothing));
    assert_eq!(Votes::on(1).fit(), Err(FitError::Nothing));
}

#[test]
fn votes_that_compare_nothing_are_refused() {
    let mut votes = Votes::on(3);
    for (vote, error) in [
        (votes.prefer(0, 3), VoteError::Unknown { thing: 3, things: 3 }),
        (votes.prefer(1, 1), VoteError::Twice { thing: 1 }),
        (votes.rank(&[0, 1, 2, 1]), VoteError::Twice { thing: 1 }),
        (votes.rank(&[2]), VoteError::Alone),
        (votes.rank(&[]), VoteError::Alone),
        (votes.pick_often(2, &[], 4), VoteError::Alone),
    ] {
        assert_eq!(vote, Err(error));
        assert!(error.to_string().contains("a vote"));
    }
    assert_eq!(votes.cast(), 0);
}

/// Random numbers of a fixed seed (SplitMix64: G. Steele, D. Lea, C. Flood, OOPSLA 2014).
struct Luck(u64);

impl Luck {
    fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        ((mixed ^ (mixed >> 31)) >> 11) as f64 / (1u64 << 53) as f64
    }

    /// A person's ranking of things of these strengths: the first of exponential clocks.
    fn ranking(&mut self, strengths: &[f64]) -> Vec<usize> {
        let mut clocks: Vec<(f64, usize)> =
            strengths.iter().enumerate().map(|(thing, strength)| (-self.next().ln() / strength, thing)).collect();
        clocks.sort_by(|one, other| one.0.total_cmp(&other.0));
        clocks.into_iter().map(|(_, thing)| thing).collect()
    }
}

/// How often a favourite is called, and is the first, when so many people rank so many things.
fn called(strengths: &[f64], people: usize, trials: usize, looked_at: usize) -> (f64, f64) {
    let mut luck = Luck(1929);
    let mut share = (0.0, 0.0);
    for _ in 0..trials {
        let mut votes = Votes::on(strengths.len());
        for _ in 0..people {
            let mut ranking = luck.ranking(strengths);
            let some = luck.ranking(&vec![1.0; strengths.len()]);
            ranking.retain(|thing| some[..looked_at].contains(thing));
            votes.rank(&ranking).expect("a ranking");
        }
        let favourite = votes.fit().map(|strengths| strengths.favourite());
        if let Ok(Favourite::Called(lead)) = favourite {
            share.0 += 1.0 / trials as f64;
            share.1 += if lead.leader == 0 { 1.0 / trials as f64 } else { 0.0 };
        }
    }
    share
}

/// Two things that are alike, every outcome of every count up to 100, by the binomial distribution: how often one of
/// them is called. The normal approximation lets it pass 5 % here and there, never 7 %.
#[test]
fn two_alike_are_rarely_called() {
    let mut worst: (f64, u32) = (0.0, 0);
    for cast in 1..=100u32 {
        let mut probability = 0.5f64.powi(cast as i32);
        let mut called = 0.0;
        for won in 0..=cast {
            let mut votes = Votes::on(2);
            votes.prefer_often(0, 1, won).expect("votes");
            votes.prefer_often(1, 0, cast - won).expect("votes");
            if let Favourite::Called(_) = votes.fit().expect("strengths").favourite() {
                called += probability;
            }
            probability *= f64::from(cast - won) / f64::from(won + 1);
        }
        worst = if called > worst.0 { (called, cast) } else { worst };
    }
    assert!(worst.0 > 0.03 && worst.0 < 0.07, "{worst:?}");
}

/// Where there is no favourite, one is called in about one case of twenty at most (7 %, with what chance adds in 500
/// trials); where there is one, it is found.
#[test]
fn luck_is_rarely_taken_for_a_favourite() {
    for (strengths, people, looked_at) in [
        (vec![1.0; 2], 12, 2),
        (vec![1.0; 2], 60, 2),
        (vec![1.0; 5], 30, 2),
        (vec![1.0; 4], 20, 4),
        (vec![1.0; 12], 40, 5),
        (vec![1.0, 1.0, 0.2, 0.2, 0.2], 40, 5),
    ] {
        let (wrongly, _) = called(&strengths, people, 500, looked_at);
        assert!(wrongly <= 0.08, "{strengths:?}, {people}: {wrongly}");
    }
    let (all, rightly) = called(&[4.0, 1.0, 1.0, 1.0], 40, 100, 4);
    assert!(rightly > 0.9 && rightly > all - 0.011, "{rightly} of {all}");
}

/// Beyond all reason, and still no panic.
#[test]
fn lopsided_votes_settle_or_say_so() {
    for times in [1_000, 1_000_000, u32::MAX] {
        let mut votes = Votes::on(4);
        for (better, worse) in [(0, 1), (1, 2), (2, 3)] {
            votes.prefer_often(better, worse, times).expect("votes");
        }
        assert!(votes.fit().is_ok_and(|strengths| !strengths.bounded_by_votes() && strengths.order() == [0, 1, 2, 3]));
        votes.prefer(3, 0).expect("a vote");
        match votes.fit() {
            Ok(strengths) => assert_eq!(strengths.order(), [0, 1, 2, 3]),
            Err(error) => assert!(times == u32::MAX && error == FitError::Unsettled, "{times}: {error}"),
        }
    }
}

/// One, another, and how often the one was picked.
type Counts = Vec<(usize, usize, u32)>;

prop_compose! {
    /// Votes on a ring, so that all beat all, and across it.
    fn counts()(things in 2..7usize)(
        things in Just(things),
        ring in prop::collection::vec(1..5u32, things),
        across in prop::collection::vec((0..things, 1..things, 1..20u32), 0..20),
    ) -> (usize, Counts) {
        let ring = ring.into_iter().enumerate().map(|(thing, times)| (thing, (thing + 1) % things, times));
        let across = across.into_iter().map(|(thing, on, times)| (thing, (thing + on) % things, times));
        (things, ring.chain(across).collect())
    }
}

fn fit(things: usize, counts: &Counts, fold: u32) -> sight::Strengths {
    let mut votes = Votes::on(things);
    for (better, worse, times) in counts {
        votes.prefer_often(*better, *worse, times * fold).expect("votes");
    }
    votes.fit().expect("strengths")
}

proptest! {
    /// At the summit each is picked as often as its strength makes one expect (Zermelo 1929).
    #[test]
    fn each_is_picked_as_often_as_expected((things, counts) in counts()) {
        let strengths = fit(things, &counts, 1);
        prop_assert!(strengths.bounded_by_votes());
        for thing in 0..things {
            let mut surplus = 0.0;
            for (better, worse, times) in &counts {
                if *better == thing || *worse == thing {
                    let other = better + worse - thing;
                    surplus += f64::from(*times) * (f64::from(u8::from(*better == thing)) - strengths.chance(thing, other));
                }
            }
            prop_assert!(surplus.abs() < 1e-6, "{thing}: {surplus}");
        }
    }

    /// Strengths sum to 0 and shares to 1, rows of the covariance to 0, and both ways round say the same.
    #[test]
    fn strengths_hang_together((things, counts) in counts()) {
        let strengths = fit(things, &counts, 1);
        prop_assert!((0..things).map(|thing| strengths.log(thing)).sum::<f64>().abs() < 1e-9);
        prop_assert!(((0..things).map(|thing| strengths.share(thing)).sum::<f64>() - 1.0).abs() < 1e-12);
        for one in 0..things {
            prop_assert!((0..things).map(|other| strengths.covariance(one, other)).sum::<f64>().abs() < 1e-9);
            for other in 0..things {
                let (forth, back) = (strengths.difference(one, other), strengths.difference(other, one));
                prop_assert_eq!(forth.value, -back.value);
                prop_assert!((forth.error - back.error).abs() < 1e-9);
                prop_assert!((strengths.chance(one, other) + strengths.chance(other, one) - 1.0).abs() < 1e-12);
            }
        }
        prop_assert!(strengths.order().windows(2).all(|two| strengths.log(two[0]) >= strengths.log(two[1])));
    }

    /// The same votes many times over: the same strengths, surer by the root; and numbering does not matter.
    #[test]
    fn more_of_the_same_is_surer((things, counts) in counts(), fold in 2..50u32, shift in 1..6usize) {
        let (once, often) = (fit(things, &counts, 1), fit(things, &counts, fold));
        let turned = counts.iter().map(|(better, worse, times)| ((better + shift) % things, (worse + shift) % things, *times));
        let turned = fit(things, &turned.collect(), 1);
        for thing in 0..things {
            prop_assert!((once.log(thing) - often.log(thing)).abs() < 1e-6);
            prop_assert!((once.error(thing) / often.error(thing) / f64::from(fold).sqrt() - 1.0).abs() < 1e-6);
            prop_assert!((once.log(thing) - turned.log((thing + shift) % things)).abs() < 1e-6);
        }
    }
}
