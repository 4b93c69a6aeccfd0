//! The texts of all tables, and which columns each must have.

/// The texts of the tables a larder is made of, one field a file of `data/`.
#[derive(Clone, Copy, Debug)]
pub struct Tables<'a> {
    /// `names.tsv`: the hand-kept key file.
    pub names: &'a str,
    /// `composition.tsv`: generated from the official tables for the keys of `names`.
    pub composition: &'a str,
    /// `composition_own.tsv`: foods without a row in the official tables.
    pub composition_own: &'a str,
    /// `weights.tsv`: generated household weights.
    pub weights: &'a str,
    /// `weights_own.tsv`: weights kept by hand; they stand before the generated ones.
    pub weights_own: &'a str,
    /// `refuse.tsv`: generated.
    pub refuse: &'a str,
    /// `refuse_own.tsv`: kept by hand; takes the place of the generated row.
    pub refuse_own: &'a str,
    /// `kinds.tsv`: what holds for a kind of food unless a food's own row says otherwise.
    pub kinds: &'a str,
    /// `allergens.tsv`.
    pub allergens: &'a str,
    /// `behaviour.tsv`.
    pub behaviour: &'a str,
    /// `preparation.tsv`.
    pub preparation: &'a str,
    /// `keeping.tsv`.
    pub keeping: &'a str,
    /// `packs.tsv`.
    pub packs: &'a str,
    /// `season.tsv`.
    pub season: &'a str,
    /// `words.tsv`: words of state, cut and grade that stand around a food's name.
    pub words: &'a str,
}

impl Tables<'static> {
    /// The project's own tables.
    pub const BUILT_IN: Tables<'static> = Tables {
        names: include_str!("../data/names.tsv"),
        composition: include_str!("../data/composition.tsv"),
        composition_own: include_str!("../data/composition_own.tsv"),
        weights: include_str!("../data/weights.tsv"),
        weights_own: include_str!("../data/weights_own.tsv"),
        refuse: include_str!("../data/refuse.tsv"),
        refuse_own: include_str!("../data/refuse_own.tsv"),
        kinds: include_str!("../data/kinds.tsv"),
        allergens: include_str!("../data/allergens.tsv"),
        behaviour: include_str!("../data/behaviour.tsv"),
        preparation: include_str!("../data/preparation.tsv"),
        keeping: include_str!("../data/keeping.tsv"),
        packs: include_str!("../data/packs.tsv"),
        season: include_str!("../data/season.tsv"),
        words: include_str!("../data/words.tsv"),
    };
}

pub(crate) const NAMES: [&str; 11] = [
    "key", "name", "plural", "synonyms", "ndb", "kind", "state", "animal", "shop", "notes", "source",
];
pub(crate) const COMPOSITION: [&str; 24] = [
    "key",
    "water_g",
    "energy_kcal",
    "protein_g",
    "fat_g",
    "saturated_g",
    "carbohydrate_g",
    "fibre_g",
    "sugars_g",
    "starch_g",
    "ash_g",
    "alcohol_g",
    "sodium_mg",
    "potassium_mg",
    "calcium_mg",
    "iron_mg",
    "cholesterol_mg",
    "vitamin_a_ug",
    "vitamin_c_mg",
    "vitamin_d_ug",
    "protein_factor",
    "fat_factor",
    "carbohydrate_factor",
    "source",
];
pub(crate) const WEIGHTS: [&str; 5] = ["key", "unit", "cut", "grams", "source"];
pub(crate) const WEIGHTS_OWN: [&str; 7] = ["key", "unit", "cut", "low", "grams", "high", "source"];
pub(crate) const REFUSE: [&str; 3] = ["key", "share", "source"];
pub(crate) const KINDS: [&str; 9] = [
    "kind", "state", "table", "property", "low", "mid", "high", "word", "source",
];
pub(crate) const ALLERGENS: [&str; 4] = ["key", "allergen", "contains", "source"];
pub(crate) const BEHAVIOUR: [&str; 7] = ["key", "property", "low", "mid", "high", "word", "source"];
pub(crate) const PREPARATION: [&str; 4] = ["key", "work", "minutes_per_kg", "source"];
pub(crate) const KEEPING: [&str; 4] = ["key", "low_days", "high_days", "source"];
pub(crate) const PACKS: [&str; 5] = ["key", "market", "pack", "grams", "source"];
pub(crate) const SEASON: [&str; 5] = ["key", "market", "from", "to", "source"];
pub(crate) const WORDS: [&str; 4] = ["words", "class", "stands_for", "source"];
