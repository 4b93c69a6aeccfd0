//! Variations that the page prints: each is cooked as a dish of its own, and what it changes is shown beside the dish.
//!
//! An allergen of a variation is on the page's list, with the variation named as its cause. A variation is only ever
//! said to be free of something when that is known.

use potwright_larder::{Allergen, Contains};
use potwright_manuscript::Span;
use potwright_pot::Assumption;
use serde::{Deserialize, Serialize};

use crate::allergens::row_of;
use crate::as_made::cause;
use crate::{AllergenRow, Body, Dossier, Figure, Reckoned};

/// A variation, cooked.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct VariationRow {
    /// What the page calls it, or 'variation 2' by its place among them.
    pub name: String,
    /// Where it stands on the page.
    pub span: Span,
    /// What is changed: 'without double cream', 'olive oil instead of butter'.
    pub changes: Vec<String>,
    /// Mass of the finished dish.
    pub yield_mass: Figure,
    /// Mass of a portion.
    pub portion_mass: Figure,
    /// Energy of a portion.
    pub energy: Figure,
    /// Salt in the whole dish, percent.
    pub salinity: Figure,
    /// Body.
    pub body: Body,
    /// Allergens it contains and the dish as written is not known to contain.
    pub allergens_gained: Vec<Allergen>,
    /// Allergens that the dish contains as written and this is known to be free of.
    pub allergens_lost: Vec<Allergen>,
    /// Allergens that the dish contains as written and of which it is not known whether this is free of them.
    pub allergens_open: Vec<Allergen>,
    /// Whether any animal product is or may be in it; none when something is not known.
    pub animal: Option<bool>,
    /// Cost of a portion; none when nothing has a price.
    pub cost_per_portion: Option<Figure>,
    /// What stays open about it and not about the dish as written.
    pub open: Vec<Assumption>,
}

/// A variation of a dish, as it was cooked.
#[derive(Clone, Debug)]
pub struct Variant {
    /// What the page calls it, or 'variation 2' by its place among them.
    pub name: String,
    /// Where it stands on the page.
    pub span: Span,
    /// What is changed, each change in a few words.
    pub changes: Vec<String>,
    /// What came of it; none when no change was understood.
    pub reckoned: Option<Box<Reckoned>>,
}

/// Adds variations to a dish: a row for each that was cooked, its allergens to the dish's own, and a note for each that
/// was not understood.
pub fn add_variations(dish: &mut Reckoned, variants: &[Variant]) {
    let as_written = dish.dossier.clone();
    for variant in variants {
        let Some(reckoned) = &variant.reckoned else {
            dish.dossier.open.push(Assumption {
                text: format!(
                    "The variation '{}' is not understood: it is not cooked, and what it brings is in none of the figures and not among the allergens.",
                    variant.name
                ),
                span: Some(variant.span),
            });
            continue;
        };
        let row = row(variant, &reckoned.dossier, &as_written);
        for other in &reckoned.dossier.allergens {
            raise(&mut dish.dossier.allergens, other, &variant.name);
        }
        raise_animal(&mut dish.dossier, &reckoned.dossier, &variant.name);
        dish.dossier.variations.push(row);
    }
    for row in &dish.dossier.allergens {
        let listed = dish
            .made
            .allergens
            .iter_mut()
            .find(|(which, _, _)| *which == row.allergen);
        if let Some(listed) = listed.filter(|listed| listed.1 != row.contains) {
            *listed = (row.allergen, row.contains, cause(row));
        }
    }
    dish.made.animal |= dish.dossier.animal != Some(false);
}

fn row(variant: &Variant, varied: &Dossier, as_written: &Dossier) -> VariationRow {
    let known = |dossier: &Dossier, which: Allergen| {
        let row = dossier.allergens.iter().find(|row| row.allergen == which);
        row.map_or(Contains::NotKnown, |row| row.contains)
    };
    let all = varied.allergens.iter().map(|row| row.allergen);
    let that = |now: Contains, before: fn(Contains) -> bool| -> Vec<Allergen> {
        let changed = |which: &Allergen| known(varied, *which) == now && before(known(as_written, *which));
        all.clone().filter(changed).collect()
    };
    let energy = varied.nutrition.iter().find(|row| row.name == "Energy");
    let new = |note: &&Assumption| !as_written.open.contains(note);
    VariationRow {
        name: variant.name.clone(),
        span: variant.span,
        changes: variant.changes.clone(),
        yield_mass: varied.yield_mass.clone(),
        portion_mass: varied.portion_mass.clone(),
        energy: energy.map_or_else(Figure::nothing, |row| row.per_portion.clone()),
        salinity: varied.salinity.clone(),
        body: varied.body.clone(),
        allergens_gained: that(Contains::Yes, |before| before != Contains::Yes),
        allergens_lost: that(Contains::No, |before| before == Contains::Yes),
        allergens_open: that(Contains::NotKnown, |before| before == Contains::Yes),
        animal: varied.animal,
        cost_per_portion: varied.cost_per_portion.clone(),
        open: varied.open.iter().filter(new).cloned().collect(),
    }
}

/// The worse of what is known of an allergen in the dish and in a variation of it.
fn raise(rows: &mut [AllergenRow], other: &AllergenRow, name: &str) {
    let Some(row) = rows.iter_mut().find(|row| row.allergen == other.allergen) else {
        return;
    };
    if other.contains > row.contains {
        *row = row_of(other.allergen, other.contains, told(&other.causes, name));
    }
}

fn raise_animal(dish: &mut Dossier, varied: &Dossier, name: &str) {
    let rank = |animal: Option<bool>| match animal {
        Some(false) => 0,
        None => 1,
        Some(true) => 2,
    };
    if rank(varied.animal) > rank(dish.animal) {
        dish.animal = varied.animal;
        dish.animal_causes = told(&varied.animal_causes, name);
    }
}

/// Causes with the variation in which they are causes.
fn told(causes: &[String], name: &str) -> Vec<String> {
    let place = match name.split_whitespace().next().unwrap_or("") {
        "variation" => format!("in {name}"),
        "with" | "without" => format!("in the variation {name}"),
        _ => format!("in the variation '{name}'"),
    };
    let tell = |cause: &String| format!("{cause} ({place})");
    causes.iter().map(tell).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::{self, Shelf};
    use crate::{Prices, Target};
    use potwright_larder::{Contains, FoodId, Kind};
    use potwright_pot::{Lot, Source};

    use Allergen::{Celery, Milk, TreeNuts};
    use Contains::{No, NotKnown, Yes};

    fn shelf() -> Shelf {
        let mut cream = testing::food("cream", Kind::Milk, &[(Milk, Yes)]);
        cream.animal = true;
        let mut stock = testing::food("bought stock", Kind::Stock, &[]);
        stock.allergens_complete = false;
        Shelf(vec![
            cream,
            testing::food("oil", Kind::Oil, &[]),
            testing::food("walnuts", Kind::Nut, &[(TreeNuts, Yes)]),
            stock,
        ])
    }

    /// A dish of these foods of the shelf.
    fn dish(foods: &[u32]) -> Reckoned {
        let shelf = shelf();
        let lot = |index: &u32| Lot {
            source: Source::Larder(FoodId(*index)),
            ..testing::lot(&shelf.0[*index as usize].name, Kind::Other, 0.5)
        };
        let lots: Vec<Lot> = foods.iter().map(lot).collect();
        let given = crate::reckon::Given {
            cook: &|process, _| testing::trace(process),
            foods: &shelf,
            made: &[],
            prices: &Prices::default(),
            target: &Target::default(),
        };
        given.reckon(testing::process(&lots), 0, 1)
    }

    fn variant(name: &str, foods: &[u32]) -> Variant {
        Variant {
            name: name.to_owned(),
            span: Span::new(0, 0),
            changes: Vec::new(),
            reckoned: Some(Box::new(dish(foods))),
        }
    }

    fn of(dish: &Reckoned, which: Allergen) -> (Contains, Vec<String>) {
        let rows = &dish.dossier.allergens;
        let row = rows.iter().find(|row| row.allergen == which).unwrap();
        (row.contains, row.causes.clone())
    }

    /// Cream as written, oil in the one variation, walnuts in the other: the page warns of milk and of nuts.
    #[test]
    fn an_allergen_of_a_variation_is_on_the_page() {
        let mut written = dish(&[0]);
        let oil = variant("without cream", &[1]);
        let nuts = variant("variation 2", &[0, 2]);
        add_variations(&mut written, &[oil, nuts]);
        assert_eq!(of(&written, Milk), (Yes, vec!["cream".to_owned()]));
        assert_eq!(
            of(&written, TreeNuts),
            (Yes, vec!["walnuts (in variation 2)".to_owned()])
        );
        assert_eq!(of(&written, Celery), (No, Vec::new()));
        let [oil, nuts] = written.dossier.variations.as_slice() else {
            panic!("a row each")
        };
        assert_eq!(
            (oil.allergens_lost.as_slice(), oil.animal),
            ([Milk].as_slice(), Some(false))
        );
        assert_eq!(nuts.allergens_gained, [TreeNuts]);
        let made = &written.made.allergens;
        let made = made.iter().find(|(which, ..)| *which == TreeNuts).unwrap();
        assert_eq!((made.1, made.2.as_str()), (Yes, "walnuts (in variation 2)"));
    }

    /// Without cream but with a bought stock that nobody knows: not free of milk, only not known.
    #[test]
    fn free_of_something_is_only_said_where_it_is_known() {
        let mut written = dish(&[0]);
        add_variations(&mut written, &[variant("without cream", &[3])]);
        let row = &written.dossier.variations[0];
        assert!(row.allergens_lost.is_empty());
        assert_eq!(row.allergens_open, [Milk]);
        let celery = (
            NotKnown,
            vec!["bought stock (in the variation without cream)".to_owned()],
        );
        assert_eq!(of(&written, Celery), celery);
        assert_eq!(row.animal, None);
    }

    #[test]
    fn what_was_not_understood_is_said() {
        let mut written = dish(&[0]);
        let unread = Variant {
            reckoned: None,
            ..variant("for a crowd", &[0])
        };
        add_variations(&mut written, &[unread]);
        assert!(written.dossier.variations.is_empty());
        assert!(
            written
                .dossier
                .open
                .iter()
                .any(|note| note.text.contains("'for a crowd' is not understood"))
        );
    }
}
