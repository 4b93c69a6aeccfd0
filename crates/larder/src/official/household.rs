//! The official wording of household weights ('stalk, large (11"-12" long)', '.5 cup, diced') in our units and cuts.
//!
//! What is no kitchen measure is passed over: servings, ounces, cubic inches, yields of cooked meat from raw; tins and
//! jars too, which the table weighs sometimes whole, sometimes drained.

/// A weight in our words: unit (`each` for a piece that is counted), cut or size.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Said {
    /// The unit, in the word of [`potwright_measure::Unit`]'s serialised form.
    pub unit: &'static str,
    /// The cut or size.
    pub cut: String,
}

/// Words that make a weight something else than a measure of the food as it is bought or cut.
const NOT_A_MEASURE: [&str; 22] = [
    "serving",
    "nlea",
    "yield",
    "yields",
    "cubic",
    "refuse",
    "oz",
    "lb",
    "pat",
    "order",
    "container",
    "recipe",
    "prepared",
    "frozen",
    "ckd",
    "inch",
    "dinner",
    "bird",
    "patty",
    "as",
    "from",
    "link",
];

/// Words for a unit of the measure crate.
const UNITS: [(&str, &str); 35] = [
    ("cup", "cup"),
    ("cups", "cup"),
    ("tbsp", "tablespoon"),
    ("tablespoon", "tablespoon"),
    ("tablespoons", "tablespoon"),
    ("tsp", "teaspoon"),
    ("teaspoon", "teaspoon"),
    ("teaspoons", "teaspoon"),
    ("floz", "fluid_ounce"),
    ("pint", "pint"),
    ("quart", "quart"),
    ("clove", "clove"),
    ("cloves", "clove"),
    ("stalk", "stalk"),
    ("stalks", "stalk"),
    ("sprig", "sprig"),
    ("sprigs", "sprig"),
    ("leaf", "leaf"),
    ("leaves", "leaf"),
    ("slice", "slice"),
    ("slices", "slice"),
    ("strip", "strip"),
    ("strips", "strip"),
    ("head", "head"),
    ("bunch", "bunch"),
    ("stick", "stick"),
    ("bulb", "bulb"),
    ("fillet", "fillet"),
    ("fillets", "fillet"),
    ("sheet", "sheet"),
    ("loaf", "loaf"),
    ("cube", "cube"),
    ("piece", "piece"),
    ("dash", "dash"),
    ("drop", "drop"),
];

/// Words for a piece of any food.
const PIECES: [&str; 14] = [
    "each", "item", "unit", "whole", "fruit", "spear", "ear", "pod", "pepper", "root", "rhizome", "chop", "steak",
    "sprout",
];

/// The words a cut may be made of. A weight with any other is passed over: the official table has trade names among
/// them, and shapes that no page asks for.
const CUTS: [&str; 46] = [
    "chopped",
    "diced",
    "sliced",
    "slices",
    "slice",
    "shredded",
    "grated",
    "cubes",
    "cubed",
    "mashed",
    "pureed",
    "halves",
    "quartered",
    "quarters",
    "pieces",
    "strips",
    "chunks",
    "crumbled",
    "crumbs",
    "crushed",
    "ground",
    "whole",
    "leaves",
    "packed",
    "unpacked",
    "not",
    "drained",
    "undrained",
    "pitted",
    "cooked",
    "whipped",
    "melted",
    "slivered",
    "sifted",
    "unsifted",
    "sections",
    "kernels",
    "florets",
    "peeled",
    "unpeeled",
    "thin",
    "thick",
    "or",
    "and",
    "with",
    "sprigs",
];

const SIZES: [&str; 4] = ["small", "medium", "large", "jumbo"];

/// Lower-case words of a text.
#[must_use]
pub fn words(text: &str) -> Vec<String> {
    let parts = text.split(|character: char| !character.is_alphanumeric());
    parts.filter(|part| !part.is_empty()).map(str::to_lowercase).collect()
}

/// The weight's unit and cut; nothing when it is no kitchen measure of this food. `own`: the words of the food's names;
/// 'leek' in a weight's text is then a piece of it.
#[must_use]
pub fn said(text: &str, own: &[String]) -> Option<Said> {
    let bare = outside_brackets(text).to_lowercase().replace("fl oz", "floz");
    let words = words(&bare);
    if words
        .iter()
        .any(|word| NOT_A_MEASURE.contains(&word.as_str()) || word.bytes().any(|byte| byte.is_ascii_digit()))
    {
        return None;
    }
    let first = words.first()?;
    let size = SIZES.into_iter().find(|size| words.iter().any(|word| word == size));
    if let Some((_, unit)) = UNITS.iter().find(|(word, _)| word == first) {
        let volume = ["cup", "tablespoon", "teaspoon", "fluid_ounce", "pint", "quart"].contains(unit);
        let cut = match size {
            Some(size) if !volume => size.to_owned(),
            _ => joined(words.get(1..).unwrap_or(&[]))?,
        };
        return Some(Said { unit, cut });
    }
    let is_own = |word: &String| {
        let singular = word
            .strip_suffix("es")
            .or_else(|| word.strip_suffix('s'))
            .unwrap_or(word);
        own.iter().any(|name| name == word || name == singular)
    };
    if SIZES.contains(&first.as_str()) || first == "extra" || PIECES.contains(&first.as_str()) || is_own(first) {
        let extra = words.iter().any(|word| word == "extra");
        let rest = words
            .iter()
            .skip(1)
            .filter(|word| !is_own(word) && !PIECES.contains(&word.as_str()));
        let cut = match size {
            Some("large") if extra => "extra large".to_owned(),
            Some(size) => size.to_owned(),
            None => joined(&rest.cloned().collect::<Vec<_>>())?,
        };
        return Some(Said { unit: "each", cut });
    }
    None
}

/// The words of a cut in a row; none when one of them is no word of a cut.
fn joined(words: &[String]) -> Option<String> {
    let aside = |word: &String| {
        [
            "of", "the", "skin", "bone", "removed", "raw", "fluid", "regular", "only",
        ]
        .contains(&word.as_str())
    };
    let words: Vec<&str> = words.iter().filter(|word| !aside(word)).map(String::as_str).collect();
    if !words.iter().all(|word| CUTS.contains(word)) {
        return None;
    }
    let told = words.iter().any(|word| !["or", "and", "with", "not"].contains(word));
    Some(if told { words.join(" ") } else { String::new() })
}

/// The text without what stands in brackets.
fn outside_brackets(text: &str) -> String {
    let mut depth = 0usize;
    let mut out = String::with_capacity(text.len());
    for character in text.chars() {
        match character {
            '(' => depth += 1,
            ')' => depth = depth.saturating_sub(1),
            other if depth == 0 => out.push(other),
            _ => {}
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::{said, words};

    #[test]
    fn official_wordings_in_our_units_and_cuts() {
        let own = words("potato potatoes leek celery");
        let cases = [
            ("cup, chopped", Some(("cup", "chopped"))),
            ("cup chopped", Some(("cup", "chopped"))),
            ("cup (8 fl oz)", Some(("cup", ""))),
            ("fl oz", Some(("fluid_ounce", ""))),
            ("stalk, large (11\"-12\" long)", Some(("stalk", "large"))),
            ("Potato large (3\" to 4-1/4\" dia)", Some(("each", "large"))),
            ("medium (2-1/2\" dia)", Some(("each", "medium"))),
            ("extra large", Some(("each", "extra large"))),
            ("leek", Some(("each", ""))),
            ("clove", Some(("clove", ""))),
            ("thigh, bone and skin removed", None),
            ("cracker, Somebody's Own", None),
            ("cup, Somebody's Own", None),
            ("NLEA serving", None),
            ("oz, boneless", None),
            (
                "piece, cooked, excluding refuse (yield from 1 lb raw meat with refuse)",
                None,
            ),
            ("cubic inch", None),
            ("slice, large (1/4\" thick)", Some(("slice", "large"))),
        ];
        for (text, expected) in cases {
            let found = said(text, &own);
            assert_eq!(
                found.as_ref().map(|said| (said.unit, said.cut.as_str())),
                expected,
                "{text}"
            );
        }
    }
}
