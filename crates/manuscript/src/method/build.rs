//! From clauses to operations: one clause, one operation, unless a time stands with a verb that takes none.

use std::rc::Rc;

use super::clauses::{Clause, Lead, clauses, sentences};
use super::facts::{Facts, lid_on};
use super::foods::{Names, Place};
use super::said::Role;
use super::scene::{Focus, Scene};
use super::shared::{same_work, sharing};
use super::takes;
use super::told::Told;
use super::words::{Inflection, Meaning, VesselKind, entry};
use crate::token::{Token, tokens};
use crate::{
    Cover, FoodRef, Form, HeatWord, Minutes, Operation, Recipe, Share, Span, Step, Target, Unsure, Verb, VesselRef,
    Words,
};

/// The operations as they are read, step by step.
pub(super) struct Builder<'a> {
    pub(super) text: &'a str,
    pub(super) recipe: &'a Recipe,
    pub(super) names: &'a Names,
    pub(super) scene: Scene,
    pub(super) operations: Vec<Operation>,
    pub(super) unsure: Vec<Unsure>,
    pub(super) step: usize,
    pub(super) section: Option<usize>,
    pub(super) block: Rc<[Place]>,
    /// Where the preparation of listed foods stands.
    prepared: Vec<Span>,
    /// Where the times that the page declares stand, in the order of the page.
    declared: Vec<Span>,
    /// A heat that was said and holds for what follows.
    pub(super) heat: Option<HeatWord>,
    /// The lid as it was put in this sentence.
    lid: Option<Cover>,
    /// The heat has been turned off, or the vessel taken from it.
    pub(super) off: bool,
    /// The work goes on in the oven.
    pub(super) baking: bool,
    pub(super) meanwhile: bool,
    pub(super) optional: bool,
    /// This sentence has told how the dish is kept.
    pub(super) kept: bool,
}

impl<'a> Builder<'a> {
    pub(super) fn new(text: &'a str, recipe: &'a Recipe, names: &'a Names) -> Self {
        Builder {
            text,
            recipe,
            names,
            scene: Scene::default(),
            operations: Vec::new(),
            unsure: Vec::new(),
            step: 0,
            section: None,
            block: Rc::new([]),
            prepared: prepared(recipe),
            declared: declared(recipe),
            heat: None,
            lid: None,
            off: false,
            baking: false,
            meanwhile: false,
            optional: false,
            kept: false,
        }
    }

    /// Reads one step. `block` are the foods listed right above it on a page where lists and steps take turns.
    pub(super) fn step(&mut self, index: usize, step: &Step, block: Vec<Place>) {
        self.step = index;
        if step.section != self.section {
            self.scene.focus = Focus::Pot;
        }
        self.section = step.section;
        self.lid = None;
        if !block.is_empty() {
            let whole = |place: Place| FoodRef {
                words: Words::default(),
                target: super::refer::target_of(place),
                share: Share::Whole,
            };
            self.scene.focus = Focus::Hand(block.iter().map(|place| whole(*place)).collect());
        }
        self.block = block.into();
        let places = step.places().iter();
        let tokens: Vec<Token> = places.flat_map(|place| tokens(self.text, *place)).collect();
        let mut kept = self.names.kept(&tokens);
        // In running text the preparation of a listed food is no order.
        for (mark, token) in kept.iter_mut().zip(&tokens) {
            *mark |= self.in_listed_words(token.span);
        }
        for sentence in sentences(&tokens) {
            self.sentence(&tokens, sentence, &kept);
        }
    }

    fn in_listed_words(&self, span: Span) -> bool {
        let next = self.prepared.partition_point(|words| words.start <= span.start);
        self.prepared[..next]
            .iter()
            .rev()
            .take(8)
            .any(|words| words.contains(span))
    }

    /// Whether the sentence declares how long all of it takes: 'Time, about three hours.'
    fn declares(&self, tokens: &[Token], (from, to): (usize, usize)) -> bool {
        let place = super::phrases::span(tokens, from, to);
        let next = self.declared.partition_point(|declared| declared.end <= place.start);
        self.declared
            .get(next)
            .is_some_and(|declared| declared.start < place.end)
    }

    fn sentence(&mut self, tokens: &[Token], sentence: (usize, usize), kept: &[bool]) {
        if self.declares(tokens, sentence) {
            return;
        }
        let clauses = clauses(tokens, sentence, kept);
        (self.lid, self.meanwhile, self.kept) = (None, false, false);
        self.optional = opens_with(tokens, sentence, &["if"]) || opens_with(tokens, sentence, &["optional"]);
        if self.optional && substitutes(tokens, sentence) {
            return;
        }
        let mut index = 0;
        while let Some(clause) = clauses.get(index) {
            index += 1;
            if clause.first && clause.lead != Lead::Bare {
                self.foods_ahead(tokens, clause);
            }
            // 'grate or slice': the same work in two words.
            let shared = sharing(tokens, &clauses, index - 1);
            if shared.is_some_and(|next| same_work(clause, next)) {
                continue;
            }
            self.kept |= matches!(clause.verb, "keep" | "store");
            let told = self.told(tokens, clause);
            let mut fed = shared.map_or(Vec::new(), |next| self.objects_of(tokens, next));
            while let Some(done) = clauses
                .get(index)
                .filter(|next| next.lead == Lead::Done && clause.lead != Lead::Bare)
            {
                fed.extend(self.participle(tokens, done));
                index += 1;
            }
            self.clause(tokens, told, fed);
        }
    }

    /// The foods that an order names, without following it.
    fn objects_of(&mut self, tokens: &[Token], clause: &Clause) -> Vec<FoodRef> {
        let count = self.operations.len();
        let told = self.told(tokens, clause);
        self.operations.truncate(count);
        told.foods
            .into_iter()
            .filter(|(role, _)| *role == Role::Object)
            .map(|(_, food)| food)
            .collect()
    }

    /// 'crackers split and soaked in milk': an operation of its own; gives the foods that then go on.
    fn participle(&mut self, tokens: &[Token], clause: &Clause) -> Vec<FoodRef> {
        let told = self.told(tokens, clause);
        let mut foods: Vec<FoodRef> = told
            .foods
            .iter()
            .filter(|(role, _)| !matches!(role, Role::Aside | Role::To | Role::Rest))
            .map(|(_, food)| food.clone())
            .collect();
        if clause.object.0 == clause.object.1 {
            // A second participle of the same foods.
            let before = self.operations.last().map(|op| op.foods.clone()).unwrap_or_default();
            foods.splice(0..0, before);
        }
        let named: Vec<FoodRef> = told
            .foods
            .iter()
            .filter(|(role, _)| *role == Role::Object)
            .map(|(_, food)| food.clone())
            .collect();
        let then: Vec<FoodRef> = told
            .foods
            .iter()
            .filter(|(role, _)| *role == Role::Rest)
            .map(|(_, food)| food.clone())
            .collect();
        let Some(Meaning::Do(verb)) = self.facts(&told, |facts| facts.meaning(clause.verb)) else {
            return [named, then].concat();
        };
        let cut = verb == Verb::Cut || verb == Verb::Peel;
        let done = foods.iter().all(|food| self.is_done(verb, &food.target)) && !foods.is_empty();
        if foods.is_empty() || (cut && done) {
            return [named, then].concat();
        }
        let mut operation = self.blank(verb, &told);
        operation.form = Form::Participle;
        operation.foods.clone_from(&foods);
        if !told.said.times.is_empty() {
            operation.minutes = told.said.times.first().map(|timed| timed.minutes.clone());
        }
        self.operations.push(operation);
        let fed = if clause.object.0 == clause.object.1 {
            Vec::new()
        } else {
            foods
        };
        [fed, then].concat()
    }

    pub(super) fn facts<T>(&self, told: &Told, ask: impl Fn(&Facts) -> T) -> T {
        let vessel = self.vessel_ahead(told);
        let facts = Facts {
            said: &told.said,
            foods: &told.foods,
            names: self.names,
            scene: &self.scene,
            vessel,
            oven: self.baking && told.clause.lead != Lead::Done,
            covered: lid_on(&told.said) || matches!(self.lid, Some(Cover::On | Cover::Ajar)),
            inner: false,
            pending: self.heat.is_some(),
            doing: told.clause.form == Inflection::Ing && told.clause.lead == Lead::Doing,
        };
        ask(&facts)
    }

    /// The vessel the clause works in, without making a new one.
    fn vessel_ahead(&self, told: &Told) -> Option<usize> {
        let named = told.said.vessels.iter().find(|(role, vessel)| {
            matches!(vessel.kind, VesselKind::Cook | VesselKind::Bowl) && !matches!(role, Role::From | Role::Aside)
        });
        match named {
            Some((_, vessel)) => self.scene.peek(vessel),
            None => self.scene.working,
        }
    }

    pub(super) fn blank(&self, verb: Verb, told: &Told) -> Operation {
        let participle = matches!(told.clause.lead, Lead::Doing | Lead::Done);
        Operation {
            form: if participle { Form::Participle } else { Form::Imperative },
            meanwhile: self.meanwhile,
            optional: self.optional || told.said.optional,
            ..Operation::new(verb, self.step, told.span, told.verb_span)
        }
    }

    /// Follows one clause; `fed` are the foods that participles or a later clause give it.
    fn clause(&mut self, tokens: &[Token], mut told: Told, fed: Vec<FoodRef>) {
        let led_by = |food: &FoodRef| {
            let first = tokens.partition_point(|token| token.span.start < food.words.span.start);
            (first.saturating_sub(3)..first)
                .rev()
                .map(|at| tokens[at].lower.as_str())
                .find(|word| matches!(*word, "in" | "with"))
        };
        // 'brown the meat in fat tried out from pork'.
        let after_in = fed
            .first()
            .is_some_and(|food| led_by(food) == Some("in") && !food.words.text.is_empty());
        let role = if told.said.says("with") {
            Role::With
        } else if after_in && !takes::puts(last_verb(told.clause.verb)) {
            Role::In
        } else {
            Role::Object
        };
        // The order reaches as far as the participles between its words.
        let last = fed.iter().map(|food| food.words.span.end).max();
        told.span.end = told.span.end.max(last.unwrap_or(0));
        told.foods.extend(fed.into_iter().map(|food| (role, food)));
        if told.clause.lead == Lead::Bare {
            self.bare(tokens, &told);
            return;
        }
        let Some(meaning) = self.facts(&told, |facts| facts.meaning(told.clause.verb)) else {
            return;
        };
        match meaning {
            Meaning::Do(Verb::Add) if told.said.goes_back() => self.order(Verb::Return, &told),
            Meaning::Do(verb) => self.order(verb, &told),
            Meaning::CoverAjar => {
                told.said.covers.insert(0, Cover::Ajar);
                self.order(Verb::Cover, &told);
            }
            Meaning::Heat => self.heat_alone(&told),
            Meaning::HeatOff => self.off_the_heat(&told, HeatWord::Off),
            Meaning::OffHeat => self.off_the_heat(&told, HeatWord::Off),
            Meaning::OutOfOven => {
                self.baking = false;
                let mut operation = self.blank(Verb::Remove, &told);
                operation.foods = self.objects_or_pot(&told);
                self.operations.push(operation);
            }
            // 'Transfer to the oven': the place of what follows.
            Meaning::Nothing => {
                let oven = told
                    .said
                    .vessels
                    .iter()
                    .any(|(role, vessel)| vessel.kind == VesselKind::Oven && *role != Role::From);
                self.baking |= oven;
                self.take_in_hand(&told);
                if matches!(told.clause.verb, "make" | "prepare") {
                    self.turn_to_section(tokens, told.clause);
                }
            }
        }
    }

    /// 'Take two pounds of shin and …', 'get a fowl': the words that follow are about it.
    fn take_in_hand(&mut self, told: &Told) {
        let object = |(role, food): &&(Role, FoodRef)| *role == Role::Object && self.is_fresh(&food.target);
        let foods: Vec<FoodRef> = told.foods.iter().filter(object).map(|(_, food)| food.clone()).collect();
        let handled = matches!(
            told.clause.verb,
            "take" | "get" | "buy" | "choose" | "prepare" | "prick" | "pierce" | "stab" | "open" | "weigh" | "tap"
        );
        if handled && !foods.is_empty() {
            self.scene.focus = Focus::Hand(foods);
        }
    }

    pub(super) fn objects_or_pot(&self, told: &Told) -> Vec<FoodRef> {
        let foods: Vec<FoodRef> = told
            .foods
            .iter()
            .filter(|(role, _)| *role == Role::Object)
            .map(|(_, food)| food.clone())
            .collect();
        if foods.is_empty() { vec![self.pot(told)] } else { foods }
    }

    pub(super) fn pot(&self, told: &Told) -> FoodRef {
        let words = Words {
            text: String::new(),
            span: Span::new(told.verb_span.end, told.verb_span.end),
        };
        FoodRef {
            words,
            target: Target::Pot,
            share: Share::Whole,
        }
    }

    /// The vessel being worked in, as a vessel not named here.
    pub(super) fn inferred(&self) -> Option<VesselRef> {
        let vessel = self.scene.here().filter(|vessel| !vessel.words.text.is_empty())?;
        Some(VesselRef {
            words: vessel.words.clone(),
            inferred: true,
        })
    }

    pub(super) fn take_heat(&mut self) -> Option<HeatWord> {
        self.heat.take()
    }

    pub(super) fn set_lid(&mut self, cover: Option<Cover>) {
        self.lid = cover;
    }

    pub(super) fn lid(&self) -> Option<Cover> {
        self.lid
    }

    pub(super) fn minutes_of(told: &Told) -> Option<Minutes> {
        told.said.times.first().map(|timed| timed.minutes.clone())
    }
}

/// Where the preparation of the listed foods stands, in the order of the page.
fn prepared(recipe: &Recipe) -> Vec<Span> {
    let words = recipe
        .ingredients
        .iter()
        .filter_map(|ingredient| ingredient.preparation.as_ref());
    let mut spans: Vec<Span> = words.map(|words| words.span).collect();
    spans.sort_unstable();
    spans.dedup();
    spans
}

/// Where the declared times stand, in the order of the page.
fn declared(recipe: &Recipe) -> Vec<Span> {
    let mut spans: Vec<Span> = recipe.declared_times.iter().map(|time| time.words.span).collect();
    spans.sort_unstable();
    spans
}

/// What a verb means when nothing else is known of it.
fn last_verb(verb: &str) -> Verb {
    match entry(verb).and_then(|entry| entry.rows.last()).map(|row| row.meaning) {
        Some(Meaning::Do(verb)) => verb,
        _ => Verb::Mix,
    }
}

fn opens_with(tokens: &[Token], (from, to): (usize, usize), words: &[&str]) -> bool {
    let first = tokens
        .get(from..to)
        .and_then(|stretch| stretch.iter().find(|token| token.is_word()));
    first.is_some_and(|token| token.is_any(words))
}

/// 'If you have no cream, use milk': another food, not an operation of this dish.
fn substitutes(tokens: &[Token], (from, to): (usize, usize)) -> bool {
    let stretch = tokens.get(from..to).unwrap_or_default();
    stretch.iter().any(|token| token.is_any(&["use", "substitute", "swap"]))
}
