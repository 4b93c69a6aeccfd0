//! The variations that a page prints, each cooked like the dish itself.

use potwright_manuscript::Recipe;
use potwright_pot::{Varied, varied};
use potwright_reckon::{Reckoned, Variant};

/// Every variation of a recipe, cooked by `reckon`.
pub(crate) fn variants(
    recipe: &Recipe,
    text: &str,
    larder: &potwright_larder::Larder,
    reckon: impl Fn(&Recipe) -> Reckoned,
) -> Vec<Variant> {
    let of = |(index, variation): (usize, &potwright_manuscript::Variation)| {
        let name = variation.name.as_ref().map_or("", |words| words.text.as_str());
        let name = match name {
            "" => format!("variation {}", index + 1),
            name => name.to_owned(),
        };
        let found = varied(recipe, text, larder, index);
        let (changes, reckoned) = found.map_or((Vec::new(), None), |Varied { recipe, changes }| {
            (changes, Some(Box::new(reckon(&recipe))))
        });
        Variant {
            name,
            span: variation.words.span,
            changes,
            reckoned,
        }
    };
    recipe.variations.iter().enumerate().map(of).collect()
}
