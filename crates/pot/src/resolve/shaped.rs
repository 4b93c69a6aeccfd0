//! Shaped: what was worked together and shaped is one kind of piece from then on – dough, dumplings, meatballs.
//!
//! Flour, fat and water in a bowl are separate lots; once they are a dough, a ball of it has one temperature profile and
//! one make-up. [`Doing::Shape`] says so to the simulation; here the lots of each such thing are remembered, so that words that
//! name any of them, or the dough, find it.

use potwright_larder::{Hazard, Kind, Shape};
use potwright_manuscript::{Operation, Target};
use potwright_measure::Spread;

use super::bench::Bench;
use super::cuts;
use super::vessels::Style;
use super::words::{has, share_a_word};
use crate::{Doing, Pieces, Stuff};

/// Diameter of a dumpling or meatball of which no size is said, millimetres (common practice, no source).
const BALL_MM: f64 = 40.0;

/// Grams of water on a gram of flour from which flour is a dough, and up to which it does not pour (common practice, no
/// source: shortcrust 0.35, bread 0.55–0.8, spooned dumplings 1; batters 1.3 and more).
const DOUGH: (f64, f64) = (0.35, 1.15);

/// Share of flour in a mixture from which it is the flour that holds it together (common practice, no source).
const MOSTLY_FLOUR: f64 = 0.3;

/// Lots that were shaped into one.
#[derive(Clone, Debug)]
pub(super) struct Shaped {
    /// The lot it goes by.
    pub(super) main: usize,
    lots: Vec<usize>,
    /// The heading its list stands under, if any: 'herb dumplings'.
    name: Option<String>,
}

impl Bench<'_> {
    /// Whether a lot is in pieces: of its own, or as part of what was shaped.
    pub(super) fn is_solid(&self, lot: usize) -> bool {
        let own = self.stocked.lots.get(lot).is_some_and(|lot| lot.pieces.is_some());
        own || self.shaped_with(lot).is_some()
    }

    /// What a lot was shaped into.
    pub(super) fn shaped_with(&self, lot: usize) -> Option<&Shaped> {
        self.shaped.iter().find(|one| one.lots.contains(&lot))
    }

    /// What was shaped, by a name: 'the dumplings'.
    pub(super) fn shaped_named(&self, name: &str) -> Option<&Shaped> {
        let called = |one: &&Shaped| one.name.as_ref().is_some_and(|known| share_a_word(known, name));
        self.shaped.iter().rev().find(called)
    }

    /// Balls and loaves: what is worked together no longer disperses, it is pieces of that size.
    pub(super) fn shape(&mut self, operation: &Operation) {
        let named = operation.foods.iter().find_map(|food| match &food.target {
            Target::Component(name) => self.component(name),
            _ => None,
        });
        let Some(vessel) = named.or(self.here).filter(|vessel| !self.is_empty(*vessel)) else {
            return;
        };
        if self.uses[vessel].style != Style::Hold {
            return;
        }
        let words = self.words();
        let said = |list: &[&str]| list.iter().any(|word| has(&words, word));
        let count = self.count(&words);
        let written = cuts::written_size_mm(&words).map(|mm| mm.clamp(3.0, 200.0));
        let ball = count.map(|count| ball_of(self.mass_kg(vessel) * 1000.0 / f64::from(count)));
        let shape = match (written, ball) {
            (Some(mm), _) if said(&["thick", "deep", "flat", "patties", "round"]) => Shape::Slab { thickness_mm: mm },
            (Some(mm), _) => Shape::Sphere { diameter_mm: mm },
            (None, Some(mm)) if said(&["loaf", "loaves", "flat", "patties", "round", "rounds"]) => loaf_of(mm),
            (None, ball) => Shape::Sphere {
                diameter_mm: ball.unwrap_or(BALL_MM).clamp(3.0, 200.0),
            },
        };
        self.make_one(vessel, shape, count);
        self.here = Some(vessel);
    }

    /// A dough that is dropped or tipped in as it is: spoonfuls in a pot, one piece in a tin.
    pub(super) fn drop_dough(&mut self, from: usize, to: usize) {
        if self.uses[from].style != Style::Hold || self.uses[to].style == Style::Hold || !self.is_dough(from) {
            return;
        }
        if self.uses[to].style == Style::Oven {
            self.make_one(from, loaf_of(ball_of(self.mass_kg(from) * 1000.0)), Some(1));
        } else {
            self.make_one(from, Shape::Sphere { diameter_mm: BALL_MM }, None);
        }
    }

    /// Whether a bowl holds flour and as much water as makes it a dough, mixed and not yet shaped.
    fn is_dough(&self, vessel: usize) -> bool {
        let held = &self.held[vessel];
        if !held.mixed || held.lots.iter().any(|(lot, _)| self.shaped_with(*lot).is_some()) {
            return false;
        }
        let (mut flour, mut water) = (0.0, 0.0);
        for (index, share) in &held.lots {
            let lot = &self.stocked.lots[*index];
            let made_of = lot.matter.total_kg() + lot.inedible.kilograms();
            if made_of > 0.0 {
                water += share * lot.mass.kilograms() * lot.matter.kg(Stuff::Water) / made_of;
            }
            flour += if lot.kind == Kind::Flour {
                share * lot.mass.kilograms()
            } else {
                0.0
            };
        }
        let ratio = if flour > 0.0 { water / flour } else { 0.0 };
        flour > MOSTLY_FLOUR * self.mass_kg(vessel) && (DOUGH.0..=DOUGH.1).contains(&ratio)
    }

    /// All that a vessel holds is one from now on.
    fn make_one(&mut self, vessel: usize, shape: Shape, count: Option<u32>) {
        let lots = self.inside(vessel);
        let Some(main) = self.goes_by(&lots) else { return };
        let of_lots = || lots.iter().filter_map(|lot| self.stocked.lots[*lot].pieces);
        let hazards = lots.iter().filter_map(|lot| self.hazard_of(*lot));
        // Meat in it shrinks and gives off fat as meat does; flour and crumbs do neither.
        let own = self.stocked.lots[main]
            .pieces
            .or_else(|| of_lots().find(|pieces| pieces.hazard.is_some()));
        let pieces = Pieces {
            shape,
            size_spread: Spread::within_factor(1.0, cuts::WRITTEN_SIZE),
            hazard: hazards.max_by_key(|hazard| strictness(*hazard)),
            softens: None,
            absorbs: None,
            sheds_water: own.and_then(|own| own.sheds_water),
            renders: own.and_then(|own| own.renders),
            falls_apart: None,
        };
        let sections = &self.shelf.recipe.sections;
        let section = self.stocked.lots[main]
            .ingredient
            .and_then(|line| self.shelf.recipe.ingredients.get(line)?.section);
        let name = section
            .and_then(|section| sections.get(section))
            .map(|section| section.name.clone());
        let risen = lots.iter().any(|lot| self.raises(*lot));
        self.act(
            vessel,
            Doing::Shape {
                lot: main,
                pieces,
                risen,
                count,
            },
        );
        self.held[vessel].mixed = true;
        self.shaped.retain(|one| !one.lots.iter().any(|lot| lots.contains(lot)));
        self.shaped.push(Shaped { main, lots, name });
    }

    /// The lot it goes by: the heaviest of its flour and of what must be made safe, else the heaviest of all.
    fn goes_by(&self, lots: &[usize]) -> Option<usize> {
        let names_it = |lot: &usize| self.stocked.lots[*lot].kind == Kind::Flour || self.hazard_of(*lot).is_some();
        let g = |lot: &usize| self.stocked.lots[*lot].mass.grams();
        let heaviest = |list: &[usize]| list.iter().copied().max_by(|a, b| g(a).total_cmp(&g(b)));
        let named: Vec<usize> = lots.iter().copied().filter(names_it).collect();
        heaviest(&named).or_else(|| heaviest(lots))
    }

    /// Whether a lot makes dough rise: soda, baking powder, yeast, self-raising flour.
    fn raises(&self, lot: usize) -> bool {
        let lot = &self.stocked.lots[lot];
        let name = super::words::plain(&lot.name);
        let ready = ["self raising", "self rising", "raising", "rising"];
        lot.kind == Kind::Leavening || lot.kind == Kind::Flour && ready.iter().any(|word| has(&name, word))
    }

    /// What must be made safe in a lot, in pieces or not.
    fn hazard_of(&self, lot: usize) -> Option<Hazard> {
        let lot = self.stocked.lots.get(lot)?;
        let of_pieces = lot.pieces.and_then(|pieces| pieces.hazard);
        let of_food = || match lot.source {
            crate::Source::Larder(id) => self.shelf.larder.get(id)?.behaviour.hazard,
            _ => None,
        };
        of_pieces.or_else(of_food)
    }

    /// Into how many it is shaped: 'into 12 balls', 'into a round'.
    fn count(&self, words: &str) -> Option<u32> {
        let counted = super::words::numbers(words).into_iter().find(|(_, what)| {
            [
                "balls",
                "dumplings",
                "meatballs",
                "patties",
                "pieces",
                "rolls",
                "rounds",
                "loaves",
                "portions",
            ]
            .contains(&what.as_str())
        });
        let one = || {
            ["a round", "one round", "a loaf", "one loaf"]
                .iter()
                .any(|word| has(words, word))
        };
        match counted {
            Some((count, _)) if (1.0..1000.0).contains(&count) => Some(count as u32),
            _ => one().then_some(1),
        }
    }
}

/// A loaf of the mass of a ball: one of dough sinks and spreads to half the height (common practice, no source; ×/÷1.3).
fn loaf_of(ball_mm: f64) -> Shape {
    Shape::Slab {
        thickness_mm: (0.5 * ball_mm).clamp(3.0, 150.0),
    }
}

/// Diameter of a ball of so many grams, millimetres: a gram of dough is about a millilitre.
fn ball_of(mass_g: f64) -> f64 {
    10.0 * libm::cbrt(6.0 * mass_g / std::f64::consts::PI)
}

/// How hot a hazard must be made, for picking the strictest of a mixture: minced meat wants more than whole, poultry
/// most (the order of `holding.tsv`: FDA Food Code 2022 3-401.11).
fn strictness(hazard: Hazard) -> u8 {
    match hazard {
        Hazard::Poultry => 8,
        Hazard::MincedMeat => 7,
        Hazard::Egg => 6,
        Hazard::WholeMeat => 5,
        Hazard::Fish => 4,
        Hazard::Crustacean => 3,
        Hazard::Bivalve => 2,
        Hazard::KidneyBean => 1,
        Hazard::ReadyToEat => 0,
    }
}

#[cfg(test)]
mod tests {
    use potwright_larder::{Hazard, Larder};
    use potwright_measure::Measures;

    use crate::{Doing, Kitchen, Process, resolve};

    fn process(text: &str) -> Process {
        let recipe = potwright_manuscript::read(text);
        resolve(
            &recipe,
            text,
            Larder::built_in(),
            &[],
            &Kitchen::default(),
            Measures::Metric,
        )
    }

    /// What is shaped in a process: the name it goes by, and its diameter or depth in millimetres.
    fn shaped(process: &Process) -> Vec<(&str, f64, bool)> {
        let shaped = process.acts.iter().filter_map(|act| match &act.doing {
            Doing::Shape { lot, pieces, risen, .. } => Some((*lot, pieces.shape, *risen)),
            _ => None,
        });
        let named = shaped.map(|(lot, shape, risen)| (process.lots[lot].name.as_str(), shape.least_mm(), risen));
        named.collect()
    }

    const STEW: &str = "Stew\n\nServes 4\n\n1 litre chicken stock\n500 g carrots, sliced\n";

    /// 150 g flour, 75 g suet and 100 g water in twelve balls are 27 g each: (6 · 27 ÷ π)^(1/3) = 3.7 cm across.
    #[test]
    fn balls_by_the_dozen_are_one() {
        let text = format!(
            "{STEW}\nFor the dumplings\n150 g self-raising flour\n75 g suet\n100 ml water\n\n\
            Simmer the stock and the carrots in a pot for 20 minutes.\n\n\
            For the dumplings, mix the flour and suet in a bowl and stir in the water to make a soft dough. \
            Shape into 12 balls.\n\nSit the dumplings on top of the stew, cover and simmer for 20 minutes.\n"
        );
        let process = process(&text);
        let found = shaped(&process);
        let [(name, mm, risen)] = found.as_slice() else {
            panic!("{found:?}")
        };
        assert_eq!((*name, *risen), ("self-raising flour", true));
        assert!((mm - 37.3).abs() < 0.3, "{mm}");
    }

    /// A dough that is never shaped is so once it is dropped in; a slurry and a kneaded butter are not.
    #[test]
    fn what_is_dropped_in_by_the_spoonful_is_one_if_it_is_dough() {
        let page = |list: &str, work: &str| {
            process(&format!(
                "{STEW}{list}\n\nSimmer the stock and the carrots in a pot for 20 minutes. {work}\n"
            ))
        };
        let dough = page(
            "120 g flour\n1 tsp baking powder\n100 ml milk",
            "Mix the flour, baking powder and milk in a bowl. Drop the dough by spoonfuls into the pot, cover and simmer for 15 minutes.",
        );
        assert_eq!(shaped(&dough), [("flour", super::BALL_MM, true)], "{:?}", dough.acts);
        let slurry = page(
            "20 g flour\n50 ml water",
            "Mix the flour and the water in a bowl. Stir the mixture into the pot and simmer for 5 minutes.",
        );
        assert!(shaped(&slurry).is_empty());
        let butter = page(
            "30 g flour\n30 g butter",
            "Mash the butter and flour together in a bowl to a paste. Drop in the paste a bit at a time and simmer for 5 minutes.",
        );
        assert!(shaped(&butter).is_empty());
    }

    #[test]
    fn meatballs_go_by_their_meat_and_its_rule() {
        let text = "Meatballs\n\nServes 4\n\n500 g minced beef\n50 g breadcrumbs\n1 egg, beaten\n1 litre beef stock\n\n\
            Mix the beef, breadcrumbs and egg in a bowl and shape into 20 meatballs. Bring the stock to the boil in a pot. \
            Add the meatballs and simmer for 20 minutes.\n";
        let process = process(text);
        let shaped = process.acts.iter().find_map(|act| match &act.doing {
            Doing::Shape { lot, pieces, .. } => Some((process.lots[*lot].name.as_str(), pieces.hazard)),
            _ => None,
        });
        assert_eq!(shaped, Some(("minced beef", Some(Hazard::MincedMeat))));
    }
}
