//! Which vessel each lot is in at each act, and what heat it has had there.
//!
//! A lot counts as one thing: where it is parted, it goes with the larger part.

use potwright_pot::{Aim, Doing, Part, Process, Trace};

/// Where every lot is while an act goes on.
#[derive(Clone, Debug)]
pub(crate) struct Whereabouts {
    /// For each act, for each lot: its vessel while the act goes on (for additions: afterwards).
    during: Vec<Vec<Option<usize>>>,
    /// For each act, for each lot: whether it is part of the liquid.
    dispersed: Vec<Vec<bool>>,
}

/// Minutes of heat of each kind that a lot has had.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Heat {
    /// In the fat of a pan.
    pub(crate) fried_min: f64,
    /// In hot liquid.
    pub(crate) wet_min: f64,
    /// In the dry heat of an oven.
    pub(crate) baked_min: f64,
}

/// The vessel each lot is in, and whether it is part of the liquid.
#[derive(Clone, Debug)]
struct Now {
    vessel: Vec<Option<usize>>,
    dispersed: Vec<bool>,
}

impl Whereabouts {
    /// Follows the lots of a process through its acts.
    pub(crate) fn of(process: &Process) -> Self {
        let mut now = Now {
            vessel: vec![None; process.lots.len()],
            dispersed: process.lots.iter().map(|lot| lot.pieces.is_none()).collect(),
        };
        let mut whereabouts = Whereabouts {
            during: Vec::with_capacity(process.acts.len()),
            dispersed: Vec::with_capacity(process.acts.len()),
        };
        for act in &process.acts {
            now.follow(act.vessel, &act.doing);
            whereabouts.during.push(now.vessel.clone());
            whereabouts.dispersed.push(now.dispersed.clone());
        }
        whereabouts
    }

    /// The vessel of a lot while an act goes on.
    pub(crate) fn vessel(&self, act: usize, lot: usize) -> Option<usize> {
        *self.during.get(act)?.get(lot)?
    }

    /// The act with which a lot first goes into a vessel.
    pub(crate) fn goes_in(&self, lot: usize) -> Option<usize> {
        self.during
            .iter()
            .position(|vessels| vessels.get(lot).is_some_and(Option::is_some))
    }

    /// Whether something of a vessel's contents is liquid while an act goes on.
    fn has_liquid(&self, act: usize, vessel: usize) -> bool {
        let (Some(vessels), Some(dispersed)) = (self.during.get(act), self.dispersed.get(act)) else {
            return false;
        };
        let here = |at: &Option<usize>| *at == Some(vessel);
        vessels.iter().zip(dispersed).any(|(at, wet)| here(at) && *wet)
    }

    /// The heat a lot has had in a run.
    pub(crate) fn heat(&self, process: &Process, trace: &Trace, lot: usize) -> Heat {
        let mut heat = Heat::default();
        for (index, act) in process.acts.iter().enumerate() {
            let Doing::Cook(stretch) = &act.doing else {
                continue;
            };
            if self.vessel(index, lot) != Some(act.vessel) {
                continue;
            }
            let minutes = trace
                .acts
                .get(index)
                .map_or(0.0, |times| ((times.end_s - times.start_s) / 60.0).max(0.0));
            match stretch.aim {
                Aim::Off => {}
                Aim::Fry(_) => heat.fried_min += minutes,
                Aim::Oven(_) if !self.has_liquid(index, act.vessel) => heat.baked_min += minutes,
                _ => heat.wet_min += minutes,
            }
        }
        heat
    }
}

impl Now {
    fn follow(&mut self, vessel: usize, doing: &Doing) {
        match doing {
            Doing::Add(portions) => {
                for portion in portions.iter().filter(|portion| portion.share > 0.0) {
                    if let Some(at) = self.vessel.get_mut(portion.lot) {
                        *at = Some(vessel);
                    }
                }
            }
            Doing::Transfer { to, what } => self.shift(vessel, what, Some(*to)),
            Doing::Discard(what) => self.shift(vessel, what, None),
            Doing::Puree(share) if *share >= 0.5 => {
                for (at, dispersed) in self.vessel.iter().zip(&mut self.dispersed) {
                    *dispersed |= *at == Some(vessel);
                }
            }
            Doing::Shape { .. } => {
                for (at, dispersed) in self.vessel.iter().zip(&mut self.dispersed) {
                    *dispersed &= *at != Some(vessel);
                }
            }
            Doing::Puree(_) | Doing::Cook(_) | Doing::Skim(_) | Doing::Serve => {}
        }
    }

    fn shift(&mut self, from: usize, what: &Part, to: Option<usize>) {
        for lot in 0..self.vessel.len() {
            let goes = match what {
                Part::All => true,
                Part::Liquid => self.dispersed[lot],
                Part::Solids => !self.dispersed[lot],
                Part::Lots(lots) => lots.contains(&lot),
                Part::Share(share) => *share >= 0.5,
            };
            if goes && self.vessel[lot] == Some(from) {
                self.vessel[lot] = to;
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing;
    use potwright_larder::Kind;
    use potwright_manuscript::HeatWord;

    /// Bones and water; simmer an hour; strain into a second pot, bones away; onion fried there ten minutes.
    #[test]
    fn lots_are_followed_through_straining() {
        let mut process = testing::process(&[
            testing::piece_lot("bones", Kind::Meat, 1.0),
            testing::lot("water", Kind::Water, 2.0),
            testing::piece_lot("onion", Kind::Onion, 0.1),
        ]);
        process.acts = vec![
            testing::add(0, &[0, 1]),
            testing::cook(0, Aim::Simmer, 60.0),
            testing::act(
                0,
                Doing::Transfer {
                    to: 1,
                    what: Part::Liquid,
                },
            ),
            testing::act(0, Doing::Discard(Part::All)),
            testing::add(1, &[2]),
            testing::cook(1, Aim::Fry(HeatWord::Medium), 10.0),
        ];
        let found = Whereabouts::of(&process);
        assert_eq!(found.vessel(1, 0), Some(0));
        assert_eq!(found.vessel(3, 0), None, "the bones are thrown away");
        assert_eq!(found.vessel(5, 1), Some(1), "the stock is in the second pot");
        assert_eq!(found.goes_in(2), Some(4));
        let trace = testing::trace(&process);
        assert_eq!(found.heat(&process, &trace, 0).wet_min, 60.0);
        assert_eq!(found.heat(&process, &trace, 2).fried_min, 10.0);
        assert_eq!(found.heat(&process, &trace, 2).wet_min, 0.0);
    }
}
