//! Which things were compared, and who was picked over whom.

use super::Votes;

/// The groups within which things were compared, directly or by way of others; between groups there is no vote.
pub(super) fn groups(votes: &Votes) -> Vec<Vec<usize>> {
    let both_ways = edges(votes).flat_map(|(better, worse)| [(better, worse), (worse, better)]);
    let next = neighbours(votes.things(), both_ways);
    let mut groups: Vec<Vec<usize>> = Vec::new();
    for thing in 0..votes.things() {
        if !groups.iter().any(|group| group.contains(&thing)) {
            groups.push(reached(thing, &next));
        }
    }
    groups
}

/// Whether everything was picked, directly or by way of others, over everything else: then and only then the likelihood
/// has a highest point (Ford 1957; Hunter 2004, assumption 1, for rankings).
pub(super) fn all_beat_all(votes: &Votes) -> bool {
    let down = neighbours(votes.things(), edges(votes));
    let up = neighbours(votes.things(), edges(votes).map(|(better, worse)| (worse, better)));
    [down, up].iter().all(|next| reached(0, next).len() == votes.things())
}

/// Each picked thing with each it was picked over.
fn edges(votes: &Votes) -> impl Iterator<Item = (usize, usize)> {
    votes.choices.iter().flat_map(|choice| choice.passed_over().iter().map(|worse| (choice.picked(), *worse)))
}

fn neighbours(things: usize, edges: impl Iterator<Item = (usize, usize)>) -> Vec<Vec<usize>> {
    let mut next = vec![Vec::new(); things];
    for (from, to) in edges {
        next[from].push(to);
    }
    next
}

/// All that can be reached from one, in rising order.
fn reached(start: usize, next: &[Vec<usize>]) -> Vec<usize> {
    let mut seen = vec![false; next.len()];
    let mut open = vec![start];
    while let Some(thing) = open.pop() {
        if !std::mem::replace(&mut seen[thing], true) {
            open.extend(&next[thing]);
        }
    }
    (0..next.len()).filter(|thing| seen[*thing]).collect()
}
