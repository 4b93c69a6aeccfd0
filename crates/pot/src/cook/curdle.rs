//! What may curdle or break in a vessel: milk with acid, yoghurt, stirred egg, melted cheese.

use potwright_larder::{Hazard, Kind};

use crate::cook::Run;
use crate::cook::group::Group;
use crate::cook::vessel::VesselState;
use crate::physics::emulsions;
use crate::{Curdling, Event, Happening, Lot, Matter, Stuff};

/// Milk or cream is told of from here, °C: it rises, catches and may curdle (common practice, no source; 80 to 90).
const DAIRY_C: f64 = 85.0;
/// Cheese that melts and strings has so much protein; soft fresh ones behave like cream (common practice, no source).
const CHEESE_PROTEIN: f64 = 0.12;
/// An egg in drops no larger than this is stirred in, metres of radius (common practice, no source).
const STIRRED_EGG_M: f64 = 0.003;

/// What may curdle in a liquid: protein by where it comes from, kilograms.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Fragile {
    milk_kg: f64,
    cultured_kg: f64,
    cheese_kg: f64,
    /// What has been told, by [`Curdling`].
    told: [bool; 4],
}

impl Fragile {
    /// What a lot brings along that goes into the liquid.
    pub(super) fn of(lot: &Lot, matter: &Matter) -> Self {
        let (all, protein) = (matter.total_kg(), matter.kg(Stuff::Protein));
        let fat_enough = matter.kg(Stuff::Fat) >= emulsions::SAFE_CREAM_FAT * all;
        let sour = matter.kg(Stuff::Acid) > emulsions::clotting_acid(20.0) * protein;
        let mut fragile = Fragile::default();
        match lot.kind {
            Kind::Milk if fat_enough => {}
            Kind::Milk if sour => fragile.cultured_kg = protein,
            Kind::Milk => fragile.milk_kg = protein,
            Kind::Cheese if protein > CHEESE_PROTEIN * all => fragile.cheese_kg = protein,
            _ => {}
        }
        fragile
    }

    /// Puts more in.
    pub(super) fn add(&mut self, more: Fragile) {
        self.milk_kg += more.milk_kg;
        self.cultured_kg += more.cultured_kg;
        self.cheese_kg += more.cheese_kg;
        for (told, also) in self.told.iter_mut().zip(more.told) {
            *told |= also;
        }
    }

    /// Takes a share out; what was told of it stays told.
    pub(super) fn take_share(&mut self, share: f64) -> Fragile {
        let mut taken = *self;
        for (mine, theirs) in [
            (&mut self.milk_kg, &mut taken.milk_kg),
            (&mut self.cultured_kg, &mut taken.cultured_kg),
            (&mut self.cheese_kg, &mut taken.cheese_kg),
        ] {
            *theirs *= share;
            *mine -= *theirs;
        }
        taken
    }

    fn has_milk(&self) -> bool {
        self.milk_kg > 0.0
    }
}

impl VesselState {
    /// What curdles now and was not told yet.
    fn curdles(&mut self, food: f64) -> Vec<Curdling> {
        let liquid = self.liquid.total_kg();
        let starch = self.liquid.kg(Stuff::GelatinisedStarch);
        let protected = starch >= emulsions::STARCH_PROTECTS * liquid;
        let temp_c = self.temp_c;
        let hot = |spread: potwright_measure::Spread| !protected && temp_c > spread.at(-food);
        let bears = if protected { emulsions::STARCH_BEARS_ACID } else { 1.0 };
        let acid = self.liquid.kg(Stuff::Acid);
        let fragile = &self.fragile;
        let clots = fragile.has_milk()
            && temp_c > emulsions::HOT_MILK_C
            && acid > bears * fragile.milk_kg * emulsions::clotting_acid(temp_c) * emulsions::CLOTTING_ACID.at(-food);
        let happens = [
            (Curdling::MilkWithAcid, clots),
            (
                Curdling::Cultured,
                fragile.cultured_kg > 0.0 && hot(emulsions::CULTURED_SEPARATES_C),
            ),
            (
                Curdling::Egg,
                hot(emulsions::EGG_CURDLES_C) && self.groups.iter().any(Group::is_stirred_egg),
            ),
            (
                Curdling::Cheese,
                fragile.cheese_kg > 0.0 && hot(emulsions::CHEESE_BREAKS_C),
            ),
        ];
        let mut new = Vec::new();
        for ((what, now), told) in happens.into_iter().zip(&mut self.fragile.told) {
            if now && !*told {
                *told = true;
                new.push(what);
            }
        }
        new
    }
}

impl Group {
    /// Egg that was whisked or beaten into the liquid.
    pub(super) fn is_stirred_egg(&self) -> bool {
        self.habits.hazard == Some(Hazard::Egg) && self.radius_m() <= STIRRED_EGG_M
    }
}

impl Run<'_> {
    /// Tells of what curdles, once, and of hot milk with the hottest it was.
    pub(super) fn notice_curdling(&mut self, act: usize, index: usize) {
        let food = self.cond.food;
        let state = &mut self.vessels[index];
        if state.liquid.total_kg() <= 0.0 {
            return;
        }
        let (temp_c, milk) = (state.temp_c, state.fragile.has_milk());
        for what in state.curdles(food) {
            self.note(act, index, Happening::Curdles { what, temp_c });
        }
        if milk && temp_c > DAIRY_C {
            self.notice_hot_milk(act, index, temp_c);
        }
    }

    fn notice_hot_milk(&mut self, act: usize, index: usize, temp_c: f64) {
        let told = self.vessels[index].watch.dairy_event;
        if let Some(Event {
            what: Happening::DairyHot(hottest),
            ..
        }) = told.and_then(|event| self.events.get_mut(event))
        {
            *hottest = hottest.max(temp_c);
            return;
        }
        self.vessels[index].watch.dairy_event = Some(self.events.len());
        self.note(act, index, Happening::DairyHot(temp_c));
    }
}
