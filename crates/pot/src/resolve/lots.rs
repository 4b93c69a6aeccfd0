//! Lots: every food of the list with its mass, make-up, pieces, warmth and preparation time.

use potwright_larder::{Hints, Kind, Market, State};
use potwright_manuscript::{Ingredient, Item, Operation, Recipe, Target, Verb};
use potwright_measure::{Duration, Mass, Measures, Spread};

use super::amount::{self, Asked, Weighed};
use super::foods::{self, Found};
use super::prepare::{edible, inedible, minutes_of_work, refuse};
use super::words::{has, plain};
use super::{Notes, cuts, matter, storage, table};
use crate::{Kitchen, Lot, Made, Stuff};

/// What lots are made from.
pub(super) struct Shelf<'a> {
    pub(super) recipe: &'a Recipe,
    /// The page's text, for the words of an operation.
    pub(super) text: &'a str,
    pub(super) larder: &'a potwright_larder::Larder,
    pub(super) made: &'a [Made],
    pub(super) kitchen: &'a Kitchen,
    pub(super) measures: Measures,
}

/// The words about a food.
pub(super) struct Wording<'a> {
    /// All of them.
    pub(super) all: &'a str,
    /// Those of the cut and other work.
    pub(super) cut: &'a str,
    /// The size on the line.
    pub(super) size: Option<&'a potwright_manuscript::Size>,
}

impl<'a> Wording<'a> {
    /// A food that only the method names: no work is done on it.
    pub(super) fn plain(all: &'a str) -> Self {
        Wording {
            all,
            cut: "",
            size: None,
        }
    }
}

/// The lots of a list, and which lot each item of each ingredient became.
pub(super) struct Stocked {
    pub(super) lots: Vec<Lot>,
    /// For each ingredient, the lot of each of its items; none for equipment and second choices.
    pub(super) of: Vec<Vec<Option<usize>>>,
    pub(super) to_taste: Vec<usize>,
}

impl Stocked {
    /// The lot of an item of an ingredient.
    pub(super) fn lot(&self, index: usize, item: usize) -> Option<usize> {
        let items = self.of.get(index)?;
        items.get(item).or(items.first()).copied().flatten()
    }
}

impl Shelf<'_> {
    /// Every ingredient of the list as lots.
    pub(super) fn stock(&self, notes: &mut Notes) -> Stocked {
        let mut stocked = Stocked {
            lots: Vec::new(),
            of: Vec::new(),
            to_taste: Vec::new(),
        };
        for (index, line) in self.recipe.ingredients.iter().enumerate() {
            let skip = line.equipment || line.instead_of.is_some();
            if line.instead_of.is_some() {
                notes.assume(
                    format!("‘{}’ is the second choice: the first is cooked.", line.line.text),
                    Some(line.span),
                );
            }
            let mut items = Vec::new();
            for item in line.items.iter().filter(|_| !skip) {
                let to_taste = self.is_to_taste(line, item);
                let lot = self.lot(index, line, item, to_taste, notes);
                if to_taste {
                    stocked.to_taste.push(stocked.lots.len());
                }
                items.push(Some(stocked.lots.len()));
                stocked.lots.push(lot);
            }
            stocked.of.push(items);
            self.line_notes(line, skip, notes);
        }
        self.take_parts(&mut stocked);
        stocked
    }

    /// What a line leaves to be assumed besides its amount.
    fn line_notes(&self, line: &Ingredient, skip: bool, notes: &mut Notes) {
        if let Some(more) = &line.plus_more {
            notes.assume(format!("‘{}’ is not counted.", more.text), Some(more.span));
        }
        if line.optional && !skip {
            notes.assume(
                format!("‘{}’ is optional: it is cooked in.", line.line.text),
                Some(line.span),
            );
        }
        if !line.alternatives.is_empty() && !skip {
            notes.assume(
                format!("Of the choice in ‘{}’ the first is cooked.", line.line.text),
                Some(line.span),
            );
        }
    }

    /// Whether an item's amount is to be solved for: it is salt, and no amount is given or 'to taste' is said.
    fn is_to_taste(&self, line: &Ingredient, item: &Item) -> bool {
        let open = line.to_taste || (line.quantity.is_none() && line.also.is_empty());
        open && !line.for_serving && self.find_item(line, item).kind() == Kind::Salt
    }

    /// What an item of a line stands for.
    fn find_item(&self, line: &Ingredient, item: &Item) -> Found<'_> {
        // 'A splash of the stock' is the stock of its own line.
        let whole = line.part_of.and_then(|whole| self.recipe.ingredients.get(whole));
        let whole = whole.filter(|whole| whole.part_of.is_none());
        if let Some((line, item)) = whole.and_then(|whole| Some((whole, whole.items.first()?))) {
            return self.find_item(line, item);
        }
        let unit = line
            .quantity
            .and_then(|quantity| quantity.unit)
            .or(line.open.as_ref().and_then(|open| open.unit));
        let hints = Hints {
            state: &item.state,
            preparation: line.preparation.as_ref().map_or("", |words| &words.text),
            unit,
            counted: line.quantity.is_some() && unit.is_none(),
            market: (self.measures == Measures::Us).then_some(Market::Us),
        };
        self.find(&item.name, &hints)
    }

    /// What a name stands for.
    pub(super) fn find(&self, name: &str, hints: &Hints) -> Found<'_> {
        foods::find(self.larder, self.made, name, hints)
    }

    /// One lot of the list.
    fn lot(&self, index: usize, line: &Ingredient, item: &Item, to_taste: bool, notes: &mut Notes) -> Lot {
        let found = self.find_item(line, item);
        found.note(&item.name, item.span, notes);
        let words = self.words_about(index, line, item);
        let cut = self.cut_words(index, line);
        let asked = Asked {
            line,
            food: found.food(),
            made_g_ml: found.made().map(|made| made.density_g_ml),
            words: &words,
            cut: &cut,
            measures: self.measures,
        };
        let weighed = if to_taste {
            solved_for()
        } else {
            self.weighed(&asked, &found, line, item, notes)
        };
        let mut lot = self.make_up(
            &found,
            &weighed,
            &Wording {
                all: &words,
                cut: &plain(&cut),
                size: line.size.as_ref(),
            },
        );
        lot.ingredient = Some(index);
        lot.name.clone_from(&item.name);
        lot.doubt = found.doubt(Some(item.span));
        lot.for_serving = line.for_serving;
        lot.optional = line.optional;
        lot
    }

    /// The mass of a line, or the default of its kind when it gives none.
    fn weighed(&self, asked: &Asked, found: &Found, line: &Ingredient, item: &Item, notes: &mut Notes) -> Weighed {
        if let Some(weighed) = amount::weigh(asked) {
            if weighed.guess {
                notes.assume(
                    format!(
                        "No weight is known for ‘{}’: reckoned as {}.",
                        line.line.text, weighed.how
                    ),
                    Some(line.span),
                );
            }
            return weighed;
        }
        self.unsaid(asked, found, line, item, notes)
    }

    /// The amount of a line that gives none: by its loose measure, its words, its kind.
    fn unsaid(&self, asked: &Asked, found: &Found, line: &Ingredient, item: &Item, notes: &mut Notes) -> Weighed {
        let kind = Some(found.kind());
        let unit = line
            .open
            .as_ref()
            .and_then(|open| open.unit)
            .or_else(|| line.quantity.and_then(|q| q.unit));
        let by_unit = unit.and_then(|unit| amount::loose(unit.name(), kind));
        let by_word = || {
            [
                "squeeze",
                "grating",
                "drizzle",
                "dusting",
                "dollop",
                "scattering",
                "few",
            ]
            .iter()
            .find(|word| has(asked.words, word))
            .and_then(|word| amount::loose(word, kind))
        };
        let row = by_unit
            .or_else(by_word)
            .or_else(|| amount::by_kind(&table::UNSAID_AMOUNTS, found.kind()));
        let (g, factor) = row.map_or((0.0, 2.0), |row| {
            (row.number("grams").unwrap_or(0.0), row.factor("spread"))
        });
        let several = if has(asked.words, "few") && unit.is_some() {
            3.0
        } else {
            1.0
        };
        let how = format!("not said: {} by common practice", amount::grams(g * several));
        let sentence = format!(
            "How much {} is not said: {} are reckoned.",
            item.name,
            amount::grams(g * several)
        );
        notes.assume(sentence, Some(line.span));
        let spread = amount::around_one(factor.max(amount::spread_of("not said")));
        Weighed {
            mass: Mass::from_grams(g * several),
            spread,
            how,
            prepared: true,
            guess: true,
        }
    }

    /// A lot with its mass divided into what is thrown away, what is never eaten and what is food.
    pub(super) fn make_up(&self, found: &Found, weighed: &Weighed, wording: &Wording) -> Lot {
        let words = wording.all;
        let food = found.food();
        let refuse = food.map_or(0.0, |food| refuse(food, words));
        let (mass, purchased) = if weighed.prepared {
            (weighed.mass, weighed.mass / (1.0 - refuse))
        } else {
            (weighed.mass * (1.0 - refuse), weighed.mass)
        };
        let inedible_share = food.map_or(0.0, |food| inedible(food, words));
        let inedible = mass * inedible_share;
        let state = food.map_or(State::Prepared, |food| food.state);
        // A lot that is solved for carries the make-up of a kilogram.
        let edible_kg = if mass > Mass::ZERO {
            (mass - inedible).kilograms()
        } else {
            1.0
        };
        Lot {
            ingredient: None,
            name: String::new(),
            source: found.source(),
            doubt: found.doubt(None),
            kind: found.kind(),
            mass,
            purchased,
            spread: weighed.spread,
            how: weighed.how.clone(),
            temperature: storage::temperature(found.kind(), state, words, self.kitchen),
            matter: edible(found, edible_kg),
            inedible,
            starch: food.and_then(|food| food.behaviour.starch),
            pieces: food.and_then(|food| cuts::pieces(food, words, wording.size)),
            preparation: food.map_or(Duration::ZERO, |food| minutes_of_work(food, wording.cut, purchased)),
            for_serving: false,
            optional: false,
        }
    }

    /// The words of the line and of what the method does to the food before it goes in.
    fn words_about(&self, index: usize, line: &Ingredient, item: &Item) -> String {
        let own = line.span.of(self.text);
        let mut words = if own.is_empty() {
            line.line.text.clone()
        } else {
            own.to_owned()
        };
        for state in &item.state {
            words.push(' ');
            words.push_str(state);
        }
        words.push(' ');
        words.push_str(&self.cut_words(index, line));
        plain(&words)
    }

    /// What the line and the method say of the cut.
    fn cut_words(&self, index: usize, line: &Ingredient) -> String {
        let mut words = line
            .preparation
            .as_ref()
            .map_or(String::new(), |said| said.text.clone());
        for operation in self
            .recipe
            .operations
            .iter()
            .filter(|operation| prepares(operation, index))
        {
            words.push_str(" ; ");
            words.push_str(operation.span.of(self.text));
        }
        words
    }

    /// '2 litres of the stock' comes out of the stock's own line.
    fn take_parts(&self, stocked: &mut Stocked) {
        for (index, line) in self.recipe.ingredients.iter().enumerate() {
            let Some(whole) = line.part_of.and_then(|whole| stocked.lot(whole, 0)) else {
                continue;
            };
            let Some(part) = stocked.lot(index, 0).filter(|part| *part != whole) else {
                continue;
            };
            let taken = stocked.lots[part].mass;
            let lot = &mut stocked.lots[whole];
            let left = if lot.mass > taken {
                (lot.mass - taken) / lot.mass
            } else {
                0.0
            };
            if lot.mass > Mass::ZERO {
                lot.matter = matter::scaled(&lot.matter, left);
                lot.mass = lot.mass * left;
                lot.purchased = lot.purchased * left;
                lot.inedible = lot.inedible * left;
            }
        }
    }
}

/// An amount that is solved for.
fn solved_for() -> Weighed {
    Weighed {
        mass: Mass::ZERO,
        spread: Spread::exact(1.0),
        how: "to taste: solved for".to_owned(),
        prepared: true,
        guess: false,
    }
}

/// Whether an operation is work on this ingredient before it goes in.
fn prepares(operation: &Operation, index: usize) -> bool {
    let work = matches!(
        operation.verb,
        Verb::Cut | Verb::Peel | Verb::Wash | Verb::PickOver | Verb::Grind
    );
    work && operation
        .foods
        .iter()
        .any(|food| matches!(food.target, Target::Ingredient { index: i, .. } if i == index))
}

/// Whether a lot pours or dissolves: it has no pieces.
pub(super) fn is_liquid(lot: &Lot) -> bool {
    lot.pieces.is_none() && lot.matter.kg(Stuff::Water) > 0.5 * lot.matter.total_kg()
}
