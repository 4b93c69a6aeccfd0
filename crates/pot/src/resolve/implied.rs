//! What the page means without saying it: the soak that the list asks for, the water in the bowl.

use potwright_larder::{Hints, Kind};
use potwright_manuscript::{Target, Verb};
use potwright_measure::{Mass, Spread};

use super::amount::{self, Weighed};
use super::bench::{Bench, NOTHING, Said};
use super::lots::Wording;
use super::vessels::Style;
use super::words::{has, plain};
use crate::{Aim, Doing, Lasts, Part, Place, Portion, Stretch};
use potwright_manuscript::Cover;

/// Water that dried food is soaked in, parts by weight (common practice, no source; ×/÷1.5).
const SOAKING_WATER: f64 = 3.0;

/// A night's soak, minutes (common practice, no source).
const NIGHT: Spread = Spread {
    low: 480.0,
    mid: 600.0,
    high: 720.0,
};

impl Bench<'_> {
    /// 'Dried beans, soaked overnight' on the list, when the method has no soak of its own for them.
    pub(super) fn soak_what_the_list_soaks(&mut self) {
        let recipe = self.shelf.recipe;
        for (index, line) in recipe.ingredients.iter().enumerate() {
            let said = line
                .preparation
                .as_ref()
                .map_or(String::new(), |words| plain(&words.text));
            let Some(lot) = self.stocked.lot(index, 0) else {
                continue;
            };
            let by_method = recipe.operations.iter().any(|operation| {
                operation.verb == Verb::Soak
                    && operation
                        .foods
                        .iter()
                        .any(|food| matches!(food.target, Target::Ingredient { index: i, .. } if i == index))
            });
            let drinks = matches!(self.stocked.lots[lot].kind, Kind::Pulse | Kind::Grain);
            if !has(&said, "soaked") || by_method || !drinks {
                continue;
            }
            self.said = Said {
                operation: None,
                span: Some(line.span),
                step: 0,
            };
            let bowl = self.take_out("bowl", Style::Hold);
            self.add(bowl, vec![Portion { lot, share: 1.0 }]);
            self.water_for_soaking(bowl);
            let lasts = Lasts {
                minutes: Some(NIGHT),
                cue: None,
            };
            let stretch = Stretch {
                place: Place::Counter,
                aim: Aim::Off,
                lasts,
                cover: Cover::Off,
                assumed: false,
                batches: 1,
            };
            self.act(bowl, Doing::Cook(stretch));
            self.discard(bowl, Part::Liquid);
        }
    }

    /// Cold water for what soaks, when no liquid went in with it.
    pub(super) fn water_for_soaking(&mut self, vessel: usize) {
        let food = self.mass_kg(vessel);
        if food <= NOTHING || self.liquid_kg(vessel) > NOTHING {
            return;
        }
        self.add_water(vessel, food * SOAKING_WATER, "not said: three times what soaks");
    }

    /// Cold water of no line of the list.
    pub(super) fn add_water(&mut self, vessel: usize, kg: f64, how: &str) {
        self.assume(format!("{} of water are reckoned: {how}.", amount::grams(kg * 1000.0)));
        let found = self.shelf.find("water", &Hints::default());
        let weighed = Weighed {
            mass: Mass::from_kilograms(kg),
            spread: amount::around_one(1.5),
            how: how.to_owned(),
            prepared: true,
            guess: true,
        };
        let mut lot = self.shelf.make_up(&found, &weighed, &Wording::plain(" cold water "));
        "water".clone_into(&mut lot.name);
        self.stocked.lots.push(lot);
        self.left.push(1.0);
        let lot = self.stocked.lots.len() - 1;
        self.add(vessel, vec![Portion { lot, share: 1.0 }]);
    }
}
