//! Weights of the shipped font.

/// Weight of the strokes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[expect(missing_docs, reason = "the names say it")]
pub enum Weight {
    Regular,
    Medium,
    SemiBold,
    Bold,
}

impl Weight {
    /// All weights, lightest first.
    pub const ALL: [Weight; 4] = [Weight::Regular, Weight::Medium, Weight::SemiBold, Weight::Bold];

    /// What a maker calls it.
    pub fn name(self) -> &'static str {
        match self {
            Weight::Regular => "regular",
            Weight::Medium => "medium",
            Weight::SemiBold => "semi-bold",
            Weight::Bold => "bold",
        }
    }

    /// The weight of that name.
    pub fn named(name: &str) -> Option<Weight> {
        Weight::ALL.into_iter().find(|weight| weight.name() == name)
    }

    pub(crate) fn font(self) -> &'static [u8] {
        match self {
            Weight::Regular => include_bytes!("../fonts/AtkinsonHyperlegibleNext-Regular.ttf"),
            Weight::Medium => include_bytes!("../fonts/AtkinsonHyperlegibleNext-Medium.ttf"),
            Weight::SemiBold => include_bytes!("../fonts/AtkinsonHyperlegibleNext-SemiBold.ttf"),
            Weight::Bold => include_bytes!("../fonts/AtkinsonHyperlegibleNext-Bold.ttf"),
        }
    }
}
