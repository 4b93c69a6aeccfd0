//! The kitchen as the method goes along: which vessels there are, what is in them, what the cook has in hand.

use std::collections::BTreeMap;

use super::foods::{Names, Place};
use super::vessels::VesselMention;
use super::words::{VesselKind, in_group};
use crate::{FoodRef, Share, Target, Verb, Words};

/// A vessel that has been named, or one that must be there though it has no name.
#[derive(Clone, Debug)]
pub(super) struct Vessel {
    /// The words of its first naming; empty for one without a name.
    pub(super) words: Words,
    pub(super) kind: VesselKind,
    name: String,
    noun: String,
    pub(super) contents: Vec<FoodRef>,
    pub(super) liquid: bool,
    pub(super) fat: bool,
    /// Its contents are one thing: mixed, whisked, blended.
    pub(super) mixed: bool,
}

/// What the next words are about when they name nothing.
#[derive(Clone, Debug, Default)]
pub(super) enum Focus {
    /// The contents of the vessel being worked in.
    #[default]
    Pot,
    /// Foods in hand.
    Hand(Vec<FoodRef>),
    /// Foods that were taken out and stand by.
    TakenOut(Vec<FoodRef>),
}

/// A name that the page has used, with its words in the singular.
#[derive(Clone, Debug)]
pub(super) struct Known {
    pub(super) name: String,
    pub(super) words: Vec<String>,
}

/// The state of the kitchen.
#[derive(Debug, Default)]
pub(super) struct Scene {
    pub(super) vessels: Vec<Vessel>,
    /// The vessel being worked in.
    pub(super) working: Option<usize>,
    pub(super) focus: Focus,
    /// The setting of the oven.
    pub(super) oven: super::degrees::Setting,
    /// The vessel each food went into.
    pub(super) placed: BTreeMap<Place, usize>,
    /// What the dish was served in.
    pub(super) served: Option<crate::VesselRef>,
    /// The vessel worked in before one without a name.
    before: Option<usize>,
    /// Foods that were made ready and have not gone in.
    waiting: Vec<FoodRef>,
    /// The foods that went in last.
    pub(super) last: Vec<FoodRef>,
    /// The part of a food that was worked on last, with the verb: 'brown half the lamb'.
    pub(super) part: Option<(&'static str, FoodRef)>,
    /// The foods that were cut last.
    pub(super) cut: Vec<FoodRef>,
    /// Foods that the page names and the list does not, as they were first named.
    pub(super) unlisted: Vec<Known>,
    /// Things made on the way.
    pub(super) made: Vec<Known>,
}

/// No kitchen works with more vessels at a time, no vessel holds more foods, and no page goes back to more things made.
const VESSELS: usize = 48;
const CONTENTS: usize = 200;
const MADE: usize = 120;

impl Scene {
    /// The vessels named last, with their places.
    fn recent(&self) -> impl DoubleEndedIterator<Item = (usize, &Vessel)> {
        let first = self.vessels.len().saturating_sub(VESSELS);
        self.vessels[first..]
            .iter()
            .enumerate()
            .map(move |(at, vessel)| (at + first, vessel))
    }

    /// The vessel named last that passes a test.
    fn last_that(&self, test: impl Fn(&Vessel) -> bool) -> Option<usize> {
        self.recent()
            .filter(|(_, vessel)| test(vessel))
            .map(|(at, _)| at)
            .last()
    }

    /// Keeps the name of a thing made on the way, or of a food that is not listed.
    pub(super) fn learn(&mut self, target: &Target) {
        let (names, name) = match target {
            Target::Component(name) => (&mut self.made, name),
            Target::Unlisted(name) => (&mut self.unlisted, name),
            _ => return,
        };
        let words = super::foods::plain(name);
        if !names.iter().any(|known| known.words == words) {
            if names.len() == MADE {
                names.remove(0);
            }
            names.push(Known {
                name: name.clone(),
                words,
            });
        }
    }

    /// The vessel that a mention means: one named before, or a new one.
    pub(super) fn vessel(&mut self, mention: &VesselMention, words: Words) -> usize {
        if let Some(index) = self.known(mention) {
            return index;
        }
        self.vessels.push(Vessel {
            words,
            kind: mention.kind,
            name: mention.name.clone(),
            noun: mention.noun.clone(),
            contents: Vec::new(),
            liquid: false,
            fat: false,
            mixed: false,
        });
        self.vessels.len() - 1
    }

    /// The vessel a mention means, without making a new one.
    pub(super) fn peek(&self, mention: &VesselMention) -> Option<usize> {
        self.known(mention)
    }

    fn known(&self, mention: &VesselMention) -> Option<usize> {
        let find = |test: &dyn Fn(&Vessel) -> bool| self.last_that(test);
        let same = find(&|v| v.name == mention.name && v.kind == mention.kind);
        if mention.fresh {
            return same.filter(|_| mention.kind != VesselKind::Bowl && mention.name != mention.noun);
        }
        if same.is_some() {
            return same;
        }
        let plain = mention.name == mention.noun;
        let noun = find(&|v| v.noun == mention.noun || v.noun.ends_with(&format!(" {}", mention.noun)));
        if noun.is_some()
            && (plain
                || self.recent().filter(|(_, v)| v.noun == mention.noun).count() == 1
                    && !plain_clash(mention, self, noun))
        {
            return noun;
        }
        let family = find(&|v| v.kind == mention.kind && family(&mention.noun, &v.noun));
        let any = matches!(
            mention.noun.as_str(),
            "pot" | "pan" | "dish" | "casserole" | "tin" | "cooker"
        );
        if plain && any && mention.kind == VesselKind::Cook {
            let ware = oven_ware(&mention.noun);
            return family.or_else(|| find(&|v| v.kind == VesselKind::Cook && oven_ware(&v.noun) == ware));
        }
        None
    }

    /// The vessel being worked in, made up when none has been named.
    pub(super) fn working(&mut self) -> usize {
        if let Some(index) = self.working.filter(|index| *index < self.vessels.len()) {
            return index;
        }
        self.unnamed(VesselKind::Cook)
    }

    /// A vessel that must be there though the page does not name it; the work goes on in it.
    pub(super) fn unnamed(&mut self, kind: VesselKind) -> usize {
        self.vessels.push(Vessel {
            words: Words::default(),
            kind,
            name: String::new(),
            noun: String::new(),
            contents: Vec::new(),
            liquid: false,
            fat: false,
            mixed: false,
        });
        let index = self.vessels.len() - 1;
        self.before = self.working;
        self.working = Some(index);
        index
    }

    /// Whether the work goes on in a bowl without a name, to be brought to another vessel.
    pub(super) fn is_aside(&self) -> bool {
        self.here().is_some_and(|vessel| {
            vessel.kind == VesselKind::Bowl && vessel.words.text.is_empty() && !vessel.contents.is_empty()
        })
    }

    /// Back from a bowl without a name to the vessel before it.
    pub(super) fn back(&mut self) {
        if let Some(before) = self.before.take() {
            self.working = Some(before);
        } else {
            self.turn_to_stove();
        }
    }

    /// What 'them' means when nothing is in hand: foods that wait to go in, else what is in the vessel.
    pub(super) fn several(&self, names: &Names) -> Vec<FoodRef> {
        let waiting: Vec<FoodRef> = self
            .waiting
            .iter()
            .filter(|food| self.holds(&food.target).is_none())
            .cloned()
            .collect();
        if waiting.is_empty() {
            self.solids(names)
        } else {
            waiting
        }
    }

    /// The vessel being worked in, if there is one.
    pub(super) fn here(&self) -> Option<&Vessel> {
        self.working.and_then(|index| self.vessels.get(index))
    }

    /// The cooking vessel used last, for heat is not put under a bowl.
    pub(super) fn turn_to_stove(&mut self) {
        if self.here().is_some_and(|vessel| vessel.kind == VesselKind::Cook) {
            return;
        }
        let cook = self.last_that(|v| v.kind == VesselKind::Cook && !v.contents.is_empty());
        if let Some(index) = cook.or_else(|| self.last_that(|v| v.kind == VesselKind::Cook)) {
            self.working = Some(index);
        }
    }

    /// The vessel that holds the dish: the fullest with liquid in it, else the fullest; the later of equals.
    pub(super) fn main(&self) -> Option<usize> {
        let fullest = |wet: bool| {
            let cooks = self
                .recent()
                .filter(|(_, v)| v.kind == VesselKind::Cook && (v.liquid || !wet));
            cooks
                .filter(|(_, v)| !v.contents.is_empty())
                .max_by_key(|(index, v)| (v.contents.len(), *index))
                .map(|(index, _)| index)
        };
        fullest(true).or_else(|| fullest(false))
    }

    /// The vessel that holds a food.
    pub(super) fn holds(&self, target: &Target) -> Option<usize> {
        match target {
            Target::Ingredient { index, item } => self.placed.get(&(*index, *item)).copied(),
            Target::Pot => self.main(),
            // The fat is where it ran out or was melted.
            Target::Component(name) if name.ends_with("fat") || name.starts_with("dripping") => {
                self.last_that(|v| v.kind == VesselKind::Cook && v.fat)
            }
            other => self.last_that(|v| v.contents.iter().any(|food| food.target == *other)),
        }
    }

    /// Puts foods into a vessel.
    pub(super) fn put(&mut self, foods: &[FoodRef], into: usize, names: &Names) {
        let named: Vec<FoodRef> = foods
            .iter()
            .filter(|food| food.target != Target::Pot)
            .cloned()
            .collect();
        if !named.is_empty() {
            self.last = named;
        }
        for food in foods {
            self.lift(&food.target, matches!(food.share, Share::Whole));
            if let Target::Ingredient { index, item } = food.target {
                self.placed.insert((index, item), into);
            }
            let (liquid, fat) = acts(&food.target, names);
            let Some(vessel) = self.vessels.get_mut(into) else {
                continue;
            };
            vessel.liquid |= liquid;
            vessel.fat |= fat;
            let room = vessel.contents.len() < CONTENTS;
            if room && food.target != Target::Pot && !vessel.contents.iter().any(|held| held.target == food.target) {
                vessel.contents.push(food.clone());
            }
        }
    }

    /// Takes a food out of whatever vessel it is in.
    pub(super) fn lift(&mut self, target: &Target, whole: bool) {
        if !whole || *target == Target::Pot {
            return;
        }
        let first = self.vessels.len().saturating_sub(VESSELS);
        for vessel in &mut self.vessels[first..] {
            vessel.contents.retain(|held| held.target != *target);
        }
    }

    /// Moves everything from one vessel to another.
    pub(super) fn empty(&mut self, from: usize, into: usize, names: &Names) {
        let Some(vessel) = self.vessels.get_mut(from).filter(|_| from != into) else {
            return;
        };
        let contents = std::mem::take(&mut vessel.contents);
        let (liquid, fat) = (std::mem::take(&mut vessel.liquid), std::mem::take(&mut vessel.fat));
        self.put(&contents, into, names);
        if let Some(vessel) = self.vessels.get_mut(into) {
            vessel.liquid |= liquid;
            vessel.fat |= fat;
        }
    }

    /// What is in the working vessel besides liquid and fat.
    pub(super) fn solids(&self, names: &Names) -> Vec<FoodRef> {
        let Some(vessel) = self.here() else { return Vec::new() };
        let solid = |food: &&FoodRef| {
            let (liquid, fat) = acts(&food.target, names);
            !liquid && (!fat || is_meat(&food.target, names)) && !is_seasoning(&food.target, names)
        };
        vessel.contents.iter().filter(solid).cloned().collect()
    }

    /// What follows from an operation for the next words. `with` are the foods it was done with, not to.
    pub(super) fn turn_to(&mut self, verb: Verb, foods: &[FoodRef], with: &[FoodRef]) {
        let object =
            |food: &&FoodRef| food.target != Target::Pot && !with.iter().any(|other| other.target == food.target);
        let named: Vec<FoodRef> = foods.iter().filter(object).cloned().collect();
        match verb {
            Verb::Wash
            | Verb::PickOver
            | Verb::Peel
            | Verb::Cut
            | Verb::Grind
            | Verb::Soak
            | Verb::Drain
            | Verb::Dredge
            | Verb::Season
            | Verb::Beat
            | Verb::Whisk => {
                if verb == Verb::Cut {
                    self.cut.clone_from(&named);
                }
                let in_pot = named.iter().all(|food| self.here_holds(&food.target));
                let stays = matches!(verb, Verb::Whisk | Verb::Beat) || (in_pot && verb == Verb::Season);
                if !named.is_empty() && !stays {
                    self.waiting.clone_from(&named);
                    self.focus = Focus::Hand(named);
                }
            }
            Verb::Cool | Verb::Rest | Verb::Chill if !named.is_empty() => self.focus = Focus::TakenOut(named),
            Verb::Remove | Verb::SetAside => {
                let foods: Vec<FoodRef> = named
                    .into_iter()
                    .filter(|food| !matches!(food.target, Target::Component(_)))
                    .collect();
                if !foods.is_empty() {
                    self.focus = Focus::TakenOut(foods);
                }
            }
            // Fat or oven made hot for what is in hand.
            Verb::Heat | Verb::Melt
                if foods.iter().all(|food| food.target != Target::Pot) && matches!(self.focus, Focus::Hand(_)) => {}
            Verb::Cover | Verb::Uncover | Verb::KeepHot | Verb::Skim | Verb::Discard | Verb::Garnish | Verb::Rest => {}
            _ => self.focus = Focus::Pot,
        }
        if matches!(
            verb,
            Verb::Mix | Verb::Whisk | Verb::Beat | Verb::Knead | Verb::Puree | Verb::Shape | Verb::RubThroughSieve
        ) && let Some(vessel) = self.working.and_then(|index| self.vessels.get_mut(index))
        {
            vessel.mixed = true;
        }
    }

    /// Foods in hand.
    pub(super) fn hand(&self) -> Vec<FoodRef> {
        match &self.focus {
            Focus::Hand(foods) => foods.clone(),
            _ => Vec::new(),
        }
    }

    /// Whether all there is of a food is in the vessel being worked in.
    pub(super) fn here_has(&self, target: &Target) -> bool {
        self.here_holds(target)
    }

    fn here_holds(&self, target: &Target) -> bool {
        self.here()
            .is_some_and(|vessel| vessel.contents.iter().any(|held| held.target == *target))
    }
}

/// A vessel of the same noun is another one when both have words that differ: 'the big pot' after 'the small pot'.
fn plain_clash(mention: &VesselMention, scene: &Scene, index: Option<usize>) -> bool {
    let Some(known) = index.and_then(|index| scene.vessels.get(index)) else {
        return false;
    };
    let own: Vec<&str> = mention.name.split(' ').collect();
    let same_words = own
        .iter()
        .any(|word| *word != mention.noun && known.name.split(' ').any(|other| other == *word));
    !same_words && known.name != known.noun
}

/// Made for the oven, not for the hob.
fn oven_ware(noun: &str) -> bool {
    ["dish", "tin", "tray", "sheet", "mould", "mold", "ramekins"]
        .iter()
        .any(|end| noun.ends_with(end))
}

/// Nouns by which another vessel may be called afterwards.
fn family(said: &str, known: &str) -> bool {
    match said {
        "pan" => matches!(
            known,
            "saucepan"
                | "skillet"
                | "frying pan"
                | "frying-pan"
                | "sauté pan"
                | "saute pan"
                | "wok"
                | "stewpan"
                | "roasting pan"
                | "roasting tin"
                | "casserole"
        ),
        "pot" => matches!(
            known,
            "dutch oven"
                | "stockpot"
                | "stock pot"
                | "soup pot"
                | "casserole"
                | "kettle"
                | "soup kettle"
                | "saucepan"
                | "marmite"
                | "casserole dish"
        ),
        "dish" => known.ends_with("dish") || known == "casserole",
        "casserole" => matches!(known, "casserole dish" | "dutch oven"),
        "tin" => known.ends_with("tin"),
        "cooker" => known.ends_with("cooker"),
        _ => false,
    }
}

/// Whether a food brings liquid or fat to a vessel.
pub(super) fn acts(target: &Target, names: &Names) -> (bool, bool) {
    match target {
        Target::Ingredient { index, item } => {
            let name = names.get((*index, *item));
            (
                name.is_some_and(|n| n.acts_as("liquid")),
                name.is_some_and(|n| n.acts_as("fat")),
            )
        }
        Target::Unlisted(name) | Target::Component(name) => {
            let head = super::foods::plain(name).pop().unwrap_or_default();
            (in_group(&head, "liquid"), in_group(&head, "fat"))
        }
        Target::Pot => (false, false),
    }
}

fn is_meat(target: &Target, names: &Names) -> bool {
    matches!(target, Target::Ingredient { index, item } if names.get((*index, *item)).is_some_and(|n| n.acts_as("meat")))
}

fn is_seasoning(target: &Target, names: &Names) -> bool {
    matches!(target, Target::Ingredient { index, item } if names.get((*index, *item)).is_some_and(|n| n.acts_as("seasoning")))
}
