//! Heat and oven: what is set without cooking anything, and what holds for the work that follows.

use potwright_measure::{Oven, WrittenTemperature};

use super::build::Builder;
use super::takes;
use super::told::Told;
use super::words::VesselKind;
use crate::{HeatWord, Operation, Unsure, Verb, VesselRef, Words};

impl Builder<'_> {
    /// 'Turn the heat down to low': the heat of what follows; with a time or a sign to stop it is cooking itself.
    pub(super) fn heat_alone(&mut self, told: &Told) {
        let up = told
            .said
            .words
            .iter()
            .any(|word| matches!(word.as_str(), "up" | "raise" | "increase" | "high"));
        let raised = up || matches!(told.clause.verb, "raise" | "increase");
        let heat = told
            .said
            .heat
            .unwrap_or(if raised { HeatWord::High } else { HeatWord::Lower });
        self.heat = Some(heat);
        self.go_under(told);
        let timed = told.said.times.iter().any(|timed| !timed.minutes.from_end);
        if timed {
            self.order(Verb::Simmer, told);
        }
    }

    pub(super) fn off_the_heat(&mut self, told: &Told, heat: HeatWord) {
        let mut operation = self.blank(Verb::Remove, told);
        operation.foods = vec![self.pot(told)];
        operation.heat = Some(heat);
        self.scene.turn_to_stove();
        operation.into = self.inferred();
        self.heat = None;
        (self.baking, self.off) = (false, true);
        self.operations.push(operation);
    }

    /// A setting that is given for a fan oven only, as that of an ordinary one.
    pub(super) fn conventional(&mut self, set: WrittenTemperature, operation: &Operation) -> WrittenTemperature {
        let still = Oven::Fan.conventional(set.temperature());
        let taken = WrittenTemperature::Celsius(still.celsius());
        let already = self
            .unsure
            .iter()
            .any(|unsure| unsure.taken_as.as_deref() == Some(&taken.to_string()));
        if !already {
            self.unsure.push(Unsure {
                span: operation.span,
                what: format!("The oven is set for a fan, {set}; the setting of an ordinary oven is not given."),
                taken_as: Some(taken.to_string()),
            });
        }
        taken
    }

    /// The heat that is said, else the one that was set before this work.
    pub(super) fn heat_of(&mut self, operation: &mut Operation, told: &Told) {
        let carried =
            takes::cooks(operation.verb) || matches!(operation.verb, Verb::Add | Verb::Stir | Verb::Pour | Verb::Cover);
        let pending = if carried && told.said.heat.is_none() {
            self.take_heat()
        } else {
            None
        };
        operation.heat = told.said.heat.or(pending);
        let cooking = takes::cooks(operation.verb) && !takes::in_oven(operation.verb);
        if operation.heat.is_none() && cooking && told.said.gentle {
            operation.heat = Some(HeatWord::Low);
        }
        if takes::cooks(operation.verb) && operation.cover.is_none() {
            operation.cover = self.lid();
        }
    }

    /// Keeps the setting of the oven and gives it to what is done there.
    pub(super) fn temperature_of(&mut self, operation: &mut Operation, told: &Told) {
        let said = told.said.temperature;
        let oven_said = told
            .said
            .vessels
            .iter()
            .any(|(_, vessel)| vessel.kind == VesselKind::Oven);
        operation.core = told.said.core;
        if operation.verb == Verb::Heat && (oven_said || (said.is_said() && told.foods.is_empty())) {
            operation.foods.clear();
            self.scene.oven = said.or(self.scene.oven);
            // 'Raise the oven to 220C' while something bakes in it: that bakes on.
            self.baking &= !matches!(told.clause.verb, "heat" | "preheat");
            if operation.into.as_ref().is_none_or(|into| into.inferred) {
                operation.into = Some(VesselRef {
                    words: Words {
                        text: "oven".to_owned(),
                        span: told.verb_span,
                    },
                    inferred: !oven_said,
                });
            }
        } else if said.is_said() && (self.baking || takes::in_oven(operation.verb)) {
            self.scene.oven = said;
        }
        let inherits = takes::in_oven(operation.verb) || (operation.verb == Verb::Toast && oven_said);
        let setting = if inherits { said.or(self.scene.oven) } else { said };
        operation.fan = setting.fan;
        operation.temperature = match (setting.ordinary, setting.fan) {
            (None, Some(fan)) => Some(self.conventional(fan, operation)),
            (ordinary, _) => ordinary,
        };
    }
}
