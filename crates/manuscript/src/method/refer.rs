//! What a noun of the method stands for: foods of the list, the contents of the pot, things made on the way.

use std::rc::Rc;

use super::foods::{Names, Place, Sought, plain};
use super::nouns::{Mention, describes};
use super::scene::{Focus, Scene};
use super::words::{self, Inflection, VesselKind};
use crate::lexicon::{Class, class, singular};
use crate::speech::{Speech, speech};
use crate::{FoodRef, Recipe, Share, Target, Verb, Words};
use potwright_measure::Unit;

/// What it takes to find out what a noun stands for.
pub(super) struct Referrer<'a> {
    pub(super) text: &'a str,
    pub(super) recipe: &'a Recipe,
    pub(super) names: &'a Names,
    /// The section of the step.
    pub(super) section: Option<usize>,
    /// The foods listed right above the step, on pages where lists and steps take turns.
    pub(super) block: Rc<[Place]>,
    /// The verb of the clause in its base form.
    pub(super) verb: &'a str,
    /// What is named is moved to another vessel.
    pub(super) moved: bool,
    /// The vessel it goes to, when a food that is in it says which.
    pub(super) goes_to: Option<usize>,
}

/// How a noun stands in its clause.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Standing {
    /// The verb takes a food here, so that an unknown noun is one.
    pub(super) asks: bool,
    /// It is what the verb is done to.
    pub(super) object: bool,
}

impl Referrer<'_> {
    /// The foods a mention stands for, several for a group; empty for a noun that is no food.
    pub(super) fn foods(&self, mention: &Mention, scene: &Scene, standing: Standing) -> Vec<FoodRef> {
        if mention.words.iter().all(|word| describes(word) || word == "juices") && !mention.words.is_empty() {
            return Vec::new();
        }
        if mention.pronoun {
            return self.pronoun(mention, scene);
        }
        let Some(last) = mention.words.last() else {
            return self.unnamed_rest(mention, scene);
        };
        let dry = mention.words.iter().any(|word| word == "dry");
        let whole = speech(last).is(Speech::ALL) || (last == "else" && mention.words.len() > 1);
        if whole && !dry {
            return self.everything(mention, scene);
        }
        let correcting = matches!(self.verb, "adjust" | "correct" | "check" | "taste");
        if correcting && last.starts_with("seasoning") {
            return Vec::new();
        }
        let placed = |place: Place| scene.placed.contains_key(&place);
        let sought = Sought {
            section: self.section,
            placed: &placed,
            moved: self.moved,
            verb: self.verb,
            recipe: self.recipe,
        };
        if let Some(all) = self.brought_along(mention, scene) {
            return all.into_iter().map(|food| self.food(mention, food.target)).collect();
        }
        let found = self.names.find(mention, &sought);
        let whole_name = found.first().and_then(|place| self.names.get(*place));
        let pot = speech(&singular(last)).is(Speech::POT)
            && !whole_name.is_some_and(|name| name_is_meant(name, mention, scene));
        let said = plain(&mention.words.join(" "));
        let exact = whole_name.is_some_and(|name| name.is_called(&said));
        let food = exact || self.still_to_make(&found, mention, scene);
        if !found.is_empty() && !pot && !self.made_before(mention, scene, food) {
            return found
                .into_iter()
                .map(|place| self.food(mention, target_of(place)))
                .collect();
        }
        if let Some(target) = self.made(mention, scene) {
            return vec![self.food(mention, target)];
        }
        if let Some(shorter) = to_last_food(mention) {
            return self.foods(&shorter, scene, standing);
        }
        self.unlisted(mention, scene, standing)
    }

    fn food(&self, mention: &Mention, target: Target) -> FoodRef {
        FoodRef {
            words: Words::at(self.text, mention.span),
            target,
            share: mention.share,
        }
    }

    /// 'Add the vegetables to the beans': vegetables that were cooked in another vessel come with all that is in it.
    fn brought_along(&self, mention: &Mention, scene: &Scene) -> Option<Vec<FoodRef>> {
        let to = self.goes_to?;
        let last = singular(mention.words.last()?);
        if !matches!(&*last, "vegetable" | "mixture" | "veg") {
            return None;
        }
        let from = scene
            .vessels
            .iter()
            .enumerate()
            .rev()
            .take(48)
            .find_map(|(index, vessel)| {
                let some = vessel
                    .contents
                    .iter()
                    .filter(|food| self.is_vegetable(&food.target))
                    .count()
                    > 1;
                (index != to && (some || (last == "mixture" && !vessel.contents.is_empty()))).then_some(index)
            })?;
        scene.vessels.get(from).map(|vessel| vessel.contents.clone())
    }

    fn is_vegetable(&self, target: &Target) -> bool {
        matches!(target, Target::Ingredient { index, item } if self.names.get((*index, *item)).is_some_and(|name| name.acts_as("vegetable")))
    }

    /// 'it', 'them': what is in hand, or the pot.
    fn pronoun(&self, mention: &Mention, scene: &Scene) -> Vec<FoodRef> {
        let word = mention.words.first().map_or("", String::as_str);
        let several = matches!(word, "them" | "they" | "these" | "those" | "both");
        let held = match &scene.focus {
            _ if word == "any" => scene.last.clone(),
            Focus::Hand(foods) | Focus::TakenOut(foods) => foods.clone(),
            // What was mixed in a vessel without a name is what is in it.
            Focus::Pot if scene.is_aside() => scene.here().map(|vessel| vessel.contents.clone()).unwrap_or_default(),
            Focus::Pot if several => scene.several(self.names),
            // 'lift it out': the one thing in the pot that can be lifted.
            Focus::Pot if matches!(self.verb, "lift" | "take" | "fish" | "remove" | "scoop") => {
                Some(scene.solids(self.names))
                    .filter(|solids| solids.len() == 1)
                    .unwrap_or_default()
            }
            Focus::Pot => Vec::new(),
        };
        if held.is_empty() {
            return vec![self.food(mention, Target::Pot)];
        }
        held.into_iter().map(|food| self.food(mention, food.target)).collect()
    }

    /// 'everything', 'all ingredients', 'the rest': the list as far as it has not gone in, or the pot.
    fn everything(&self, mention: &Mention, scene: &Scene) -> Vec<FoodRef> {
        let optional = mention.words.iter().any(|word| word == "optional");
        let open: Vec<Place> = self
            .listed(mention.span.start)
            .into_iter()
            .filter(|place| !scene.placed.contains_key(place))
            .collect();
        let wanted = |place: &Place| {
            let name = self.names.get(*place);
            !name.is_some_and(|name| name.for_serving) && (!optional || name.is_some_and(|name| name.optional))
        };
        let open: Vec<Place> = open.into_iter().filter(wanted).collect();
        let begun = scene.here().is_some_and(|vessel| !vessel.contents.is_empty());
        let rest = mention.share == Share::Rest || mention.words.iter().any(|word| word == "else");
        let open = match mention.share {
            // 'the first five ingredients'.
            Share::Measure(first) if first.unit.is_none() => {
                let count = usize::try_from(first.amount.low.numerator()).unwrap_or(usize::MAX);
                open.into_iter().take(count).collect()
            }
            _ => open,
        };
        // What is in the vessel already cannot be added to it.
        let there = self.goes_to.is_some() && self.goes_to == scene.working;
        let adds = matches!(self.verb, "add" | "throw" | "chuck" | "tip") && (!self.moved || there);
        let list_meant = adds || rest || optional || mention.words.iter().any(|word| word == "ingredients");
        if open.is_empty() || (begun && !list_meant) {
            return vec![self.food(mention, Target::Pot)];
        }
        open.into_iter()
            .map(|place| self.food(mention, target_of(place)))
            .collect()
    }

    /// The foods in reach of this step: those listed right above it, those of its section, or all.
    fn listed(&self, place: usize) -> Vec<Place> {
        if self.block.is_empty() {
            self.names.in_reach(self.section, place)
        } else {
            self.block.to_vec()
        }
    }

    /// 'the remaining two thirds', 'the rest': of the food of which a part was taken, else of the list.
    fn unnamed_rest(&self, mention: &Mention, scene: &Scene) -> Vec<FoodRef> {
        // 'brown half the lamb, add more oil and brown the rest': of what the same work was done to.
        let same_work = scene.part.as_ref().filter(|(verb, _)| *verb == self.verb);
        if let Some((_, food)) = same_work {
            return vec![self.food(mention, food.target.clone())];
        }
        let held = match &scene.focus {
            Focus::Hand(foods) | Focus::TakenOut(foods) => foods.clone(),
            Focus::Pot => scene.solids(self.names),
        };
        let part = |food: &&FoodRef| !matches!(food.share, Share::Whole | Share::Rest);
        let parted = held.iter().rev().find(part).or(scene.last.iter().rev().find(part));
        match parted.or(held.last()) {
            // Of what went in whole there is no rest: that of the list is meant.
            Some(food) if parted.is_some() || matches!(mention.share, Share::Fraction(_)) => {
                vec![self.food(mention, food.target.clone())]
            }
            _ if mention.share == Share::Rest => self.everything(mention, scene),
            _ => Vec::new(),
        }
    }

    /// Whether a listed name is rather something that was made of it: 'chile puree' of chiles.
    fn made_before(&self, mention: &Mention, scene: &Scene, listed: bool) -> bool {
        let name = component_name(mention);
        let words = plain(&name);
        let known = scene.made.iter().any(|made| made.words == words);
        let head = mention.words.last().map(|word| singular(word)).unwrap_or_default();
        let section = self.section_named(&head, mention).is_some() && !listed;
        known || section
    }

    /// 'Add the rice' under 'For the rice': what a part of the list makes is not there before its own foods are in, so
    /// that the word is that of the food.
    fn still_to_make(&self, found: &[Place], mention: &Mention, scene: &Scene) -> bool {
        let section = |place: &Place| self.recipe.ingredients.get(place.0).and_then(|line| line.section);
        let Some(Some(of)) = found.first().map(section) else {
            return false;
        };
        let head = mention.words.last().map(|word| singular(word)).unwrap_or_default();
        if !self.names.sections_ending(&head).any(|(at, _)| at == of) {
            return false;
        }
        let list = self.recipe.ingredients.iter().enumerate().take(super::NEAR);
        let mut own = list.filter(|(_, line)| line.section == Some(of));
        own.any(|(index, line)| {
            let to_pot = line.quantity.is_some() && !line.optional;
            to_pot && (0..line.items.len()).all(|item| !scene.placed.contains_key(&(index, item)))
        })
    }

    /// A thing made on the way, or the contents of the pot.
    fn made(&self, mention: &Mention, scene: &Scene) -> Option<Target> {
        let last = mention.words.last()?;
        let head = singular(last);
        let name = component_name(mention);
        let words = plain(&name);
        if let Some(known) = scene.made.iter().find(|made| same_thing(&made.words, &words)) {
            return Some(Target::Component(known.name.clone()));
        }
        if let Some(section) = self.section_named(&head, mention) {
            return Some(Target::Component(section));
        }
        let described = name.split(' ').count() > 1;
        if speech(&head).is(Speech::POT)
            || (matches!(&*head, "broth" | "stock" | "bouillon") && !scene.vessels.is_empty())
        {
            // From a bowl, a part of the broth is taken out of the pot.
            let in_bowl = scene.here().is_some_and(|vessel| vessel.kind == VesselKind::Bowl) && scene.main().is_some();
            if in_bowl && mention.share != Share::Whole {
                return Some(Target::Component(head.into_owned()));
            }
            let other = described && !matches!(&*head, "broth" | "stock");
            return Some(if other { Target::Component(name) } else { Target::Pot });
        }
        let of_food = mention.words.len() > 1
            && mention
                .words
                .first()
                .is_some_and(|word| class(word).is(Class::FOOD) || class(&singular(word)).is(Class::FOOD));
        let grown = matches!(&*head, "leaf" | "stalk" | "skin" | "rind") && of_food;
        ((speech(&head).is(Speech::MADE) || speech(last).is(Speech::MADE)) && !grown).then_some(Target::Component(name))
    }

    /// The section whose name ends in this word.
    fn section_named(&self, head: &str, mention: &Mention) -> Option<String> {
        // 'the hot stock' is that of 'For the stock'.
        let content: Vec<&str> = mention
            .words
            .iter()
            .map(String::as_str)
            .filter(|word| !class(word).is(Class::TEMPERATURE | Class::STATE | Class::SIZE))
            .collect();
        let own = plain(&content.join(" "));
        let fits = |words: &&[String]| own.len() == 1 || own.iter().all(|word| words.contains(word));
        let (at, words) = self.names.sections_ending(head).find(|(_, words)| fits(words))?;
        let section = self.recipe.sections.get(at)?;
        // The section of the main part of the dish is the pot.
        (!speech(head).is(Speech::POT) || own.len() > 1).then(|| {
            let short = mention.words.join(" ");
            if plain(&short).len() >= words.len() {
                section.name.to_lowercase()
            } else {
                short
            }
        })
    }

    /// A food that is not on the list; nouns that are no food give nothing unless the place asks for a food.
    fn unlisted(&self, mention: &Mention, scene: &Scene, standing: Standing) -> Vec<FoodRef> {
        let Some(last) = mention.words.last() else {
            return Vec::new();
        };
        let head = singular(last);
        let shape = mention
            .words
            .iter()
            .all(|word| class(&singular(word)).is(Class::SHAPE) || speech(word).is(Speech::PLAIN));
        let held = |word: &str| {
            matches!(
                word,
                "slices" | "wedges" | "pieces" | "cubes" | "strips" | "rounds" | "halves" | "batch" | "chunks"
            )
        };
        if shape && held(last) {
            if !standing.object {
                return Vec::new();
            }
            return scene
                .cut
                .iter()
                .map(|food| self.food(mention, food.target.clone()))
                .collect();
        }
        if let Some(held) = self.in_hand_named(mention, scene, standing) {
            return held;
        }
        let plain_noun = speech(&head).is(Speech::PLAIN)
            || speech(last).is(Speech::PLAIN)
            || speech(&head).is(Speech::ADVERB)
            || words::vessel(last).is_some()
            || words::vessel(&head).is_some();
        let verb_form = words::verb(last).is_some_and(|(_, form)| form != Inflection::Base);
        let food = class(last).is(Class::FOOD) || class(&head).is(Class::FOOD);
        // A noun without a row is a food only where it stands like one: with an article, an amount, a name of its own.
        let like_one = mention.determined || mention.words.len() > 1;
        if plain_noun || (!food && (!standing.asks || verb_form || !like_one)) {
            return Vec::new();
        }
        let name = mention.words.join(" ");
        let words = plain(&name);
        let before = scene
            .unlisted
            .iter()
            .find(|known| known.words.last() == words.last() && words.len() == 1)
            .map(|known| known.name.clone());
        vec![self.food(mention, Target::Unlisted(before.unwrap_or(name)))]
    }

    /// 'each bulb', 'each batch': of what is in hand; words that are orders, and 'more' alone, are nothing.
    fn in_hand_named(&self, mention: &Mention, scene: &Scene, standing: Standing) -> Option<Vec<FoodRef>> {
        let [word] = mention.words.as_slice() else { return None };
        // 'tomatoes with their juice' are the tomatoes.
        if matches!(word.as_str(), "more" | "extra" | "rest" | "juice") {
            return Some(Vec::new());
        }
        let order = words::verb(word).is_some_and(|(_, form)| form == Inflection::Base);
        if order && !class(word).is(Class::FOOD) {
            return Some(Vec::new());
        }
        let piece = matches!(word.as_str(), "batch" | "lot" | "flesh" | "meat") || Unit::from_spelling(word).is_some();
        let foods = match &scene.focus {
            Focus::Hand(foods) | Focus::TakenOut(foods) => foods.clone(),
            // 'lifting each lot out', 'cut the flesh in chunks'.
            Focus::Pot if matches!(word.as_str(), "batch" | "lot") => scene.solids(self.names),
            Focus::Pot if word == "flesh" => scene.cut.clone(),
            Focus::Pot => return None,
        };
        piece.then(|| {
            let named = foods.iter().filter(|_| standing.object);
            named.map(|food| self.food(mention, food.target.clone())).collect()
        })
    }

    /// Work that stands as a participle before the noun and that nothing has done: 'sliced potatoes', 'melted butter'.
    pub(super) fn work_before(
        &self,
        mention: &Mention,
        foods: &[FoodRef],
        done: &dyn Fn(Verb, &Target) -> bool,
    ) -> Vec<Verb> {
        const WORK: &[&str] = &[
            "cut", "chop", "slice", "dice", "grate", "shred", "mince", "halve", "quarter", "peel", "melt", "whisk",
            "beat", "toast", "grind",
        ];
        let forms = mention.words.iter().filter_map(|word| words::verb(word));
        let bases = forms.filter(|(base, form)| *form == Inflection::Past && WORK.contains(base));
        let mut verbs = Vec::new();
        for (base, _) in bases {
            let Some(verb) = words::entry(base)
                .and_then(|entry| entry.rows.last())
                .and_then(|row| match row.meaning {
                    words::Meaning::Do(verb) => Some(verb),
                    _ => None,
                })
            else {
                continue;
            };
            let known = foods.iter().all(|food| match &food.target {
                Target::Ingredient { index, item } => {
                    let name = self.names.get((*index, *item));
                    done(verb, &food.target)
                        || name.is_some_and(|name| self.line_does(name.place, verb) || name.has(&mention.words[0]))
                }
                Target::Component(_) => done(verb, &food.target),
                _ => true,
            });
            if !known && !verbs.contains(&verb) {
                verbs.push(verb);
            }
        }
        verbs
    }

    /// Whether the line itself says that this work is done.
    fn line_does(&self, place: Place, verb: Verb) -> bool {
        let Some(ingredient) = self.recipe.ingredients.get(place.0) else {
            return false;
        };
        let line = ingredient.line.text.to_lowercase();
        line.split(|c: char| !c.is_alphanumeric())
            .filter_map(words::verb)
            .any(|(base, form)| {
                let row = words::entry(base).and_then(|entry| entry.rows.last());
                form != Inflection::Ing && row.is_some_and(|row| row.meaning == words::Meaning::Do(verb))
            })
    }
}

/// 'the beans agianst': up to its last food, when a word without a row stands at the end.
fn to_last_food(mention: &Mention) -> Option<Mention> {
    let food = |word: &String| class(word).is(Class::FOOD) || class(&singular(word)).is(Class::FOOD);
    let last = mention.words.last()?;
    let strange =
        class(last) == Class::default() && !speech(last).is(Speech::MADE) && !speech(&singular(last)).is(Speech::POT);
    let end = mention.words.iter().rposition(food)? + 1;
    (strange && end < mention.words.len()).then(|| Mention {
        words: mention.words[..end].to_vec(),
        ..mention.clone()
    })
}

pub(super) fn target_of((index, item): Place) -> Target {
    Target::Ingredient { index, item }
}

/// Whether 'sauce' means the soy sauce of the list: only when all its words are said, or it has not gone in.
fn name_is_meant(name: &super::name::Name, mention: &Mention, scene: &Scene) -> bool {
    let said = plain(&mention.words.join(" "));
    said.len() > 1 && said.iter().all(|word| name.has(word))
        || (said.iter().all(|word| name.has(word))
            && !scene.placed.contains_key(&name.place)
            && scene.placed.is_empty())
}

/// The name of a made thing without words of state, size or work: 'grey foam', 'soaking liquid', 'dough'.
fn component_name(mention: &Mention) -> String {
    let keeps = |word: &&String| {
        let class = class(word);
        let work = words::verb(word).is_some_and(|(_, form)| form == Inflection::Past);
        !(class.is(Class::SIZE)
            || class.is(Class::TEMPERATURE)
            || class.is(Class::STATE)
            || class.is(Class::KIND)
            || work)
    };
    let last = mention.words.len().saturating_sub(1);
    let kept: Vec<&str> = mention
        .words
        .iter()
        .enumerate()
        .filter(|(at, word)| *at == last || keeps(word))
        .map(|(_, word)| word.as_str())
        .collect();
    kept.join(" ")
}

/// Whether two names of made things are of the same thing, one word being enough: 'bones' and 'bone'.
fn same_thing(known: &[String], said: &[String]) -> bool {
    known == said || (said.len() == 1 && known.last() == said.last())
}
