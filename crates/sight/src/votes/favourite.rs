//! Whether there is a favourite, or only luck.

use std::f64::consts::SQRT_2;

use super::Strengths;

/// A favourite is called where luck alone would lead so clearly in fewer cases than this.
const DOUBT: f64 = 0.05;
/// The lead that belongs to that doubt, in standard errors.
const CLEAR: f64 = 1.959_963_984_540_054;
/// In fewer choices than this no outcome is clear: even when picked every time, a thing may owe it to luck, with a
/// probability of 2 · 2⁻⁵ = 6 % (sign test, both sides).
const LEAST: u64 = 6;
/// Beyond so many times the votes cast, a forecast of how many are needed is worth nothing.
const FORECAST: f64 = 100.0;

/// What can be said of the one in front.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Favourite {
    /// It leads so clearly that luck is a poor explanation.
    Called(Lead),
    /// It leads, but luck explains that well enough.
    TooClose(Lead),
    /// It was laid out so seldom that no outcome could be clear.
    TooFew(Lead),
}

/// The strongest, and the one that could best be as strong.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lead {
    /// The strongest.
    pub leader: usize,
    /// The rival it leads least clearly. That need not be the second: one hardly ever voted on may be anything.
    pub rival: usize,
    /// By how much it leads, in log-strength.
    pub by: f64,
    /// Standard error of the lead.
    pub error: f64,
    /// How often luck would lead so clearly if both were alike, 0 to 1.
    pub doubt: f64,
    /// On how many choices all of it rests.
    pub cast: u64,
}

impl Lead {
    /// How many choices in all would make the lead clear if they went on falling like these; a rough forecast. None
    /// where that is a hundred times the votes or more: the two are as good as equal.
    #[must_use]
    pub fn needed(&self) -> Option<u64> {
        let times = (CLEAR * self.error / self.by).powi(2);
        (times < FORECAST).then(|| (times * self.cast as f64).ceil() as u64)
    }
}

impl Strengths {
    /// The favourite, if it can be called: the strongest leads every other one by 1.96 standard errors.
    ///
    /// Although the leader is chosen for its lead, a plain two-sided test at 5 % holds: it is wrong most often where
    /// just two are best, and there either may lead (S. Gutmann, Z. Maymin, Is the selected population the best?,
    /// Annals of Statistics 15 (1987) 456-461, for independent means). Being built on a normal approximation, it is
    /// wrong in up to 7 % of cases at some counts of votes: for two things counted over all outcomes of up to 100
    /// votes, for up to 12 things in simulations.
    ///
    /// ```
    /// use sight::{Favourite, Votes};
    /// let mut votes = Votes::on(2);
    /// votes.prefer_often(0, 1, 7)?;
    /// votes.prefer_often(1, 0, 4)?;
    /// let strengths = votes.fit().expect("two things, compared");
    /// let Favourite::TooClose(lead) = strengths.favourite() else { panic!("7 to 4 is luck") };
    /// assert_eq!(lead.needed(), Some(54));
    /// # Ok::<(), sight::VoteError>(())
    /// ```
    #[must_use]
    pub fn favourite(&self) -> Favourite {
        let order = self.order();
        let leads = order[1..].iter().map(|rival| self.lead(order[0], *rival));
        // There are two things at least: without a second, there would be no fit.
        let closest = leads.reduce(|closest, lead| if lead.doubt > closest.doubt { lead } else { closest });
        let closest = closest.unwrap_or_else(|| self.lead(order[0], order[0]));
        if self.laid_out(closest.leader) < LEAST {
            Favourite::TooFew(closest)
        } else if closest.doubt < DOUBT {
            Favourite::Called(closest)
        } else {
            Favourite::TooClose(closest)
        }
    }

    fn lead(&self, leader: usize, rival: usize) -> Lead {
        let lead = self.difference(leader, rival);
        // Twice the tail of the normal distribution beyond the lead.
        let doubt = libm::erfc(lead.value / lead.error / SQRT_2);
        Lead { leader, rival, by: lead.value, error: lead.error, doubt, cast: self.cast() }
    }
}
