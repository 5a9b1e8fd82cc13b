//! Wheels of which the same is to be said: once is enough.

use super::Bench;

/// Groups wheels by what is to be said of them, in the order of the first of each.
pub(super) fn groups<K: PartialEq>(said: impl Iterator<Item = (usize, K)>) -> Vec<(K, Vec<usize>)> {
    let mut groups: Vec<(K, Vec<usize>)> = Vec::new();
    for (wheel, key) in said {
        match groups.iter_mut().find(|group| group.0 == key) {
            Some(group) => group.1.push(wheel),
            None => groups.push((key, vec![wheel])),
        }
    }
    groups
}

/// Names of wheels, in one line.
pub(super) fn names(bench: &Bench, wheels: &[usize]) -> String {
    wheels.iter().map(|i| bench.dial.wheels[*i].name.as_str()).collect::<Vec<_>>().join(", ")
}

/// Keys of the dial file that matter for some wheels: each counter's own, then the dial's.
pub(super) fn keys(wheels: &[usize], paths: &[&str]) -> Vec<String> {
    let own = wheels.iter().flat_map(|i| paths.iter().map(move |path| format!("counter[{i}].{path}")));
    own.chain(paths.iter().map(|path| (*path).to_owned())).collect()
}
