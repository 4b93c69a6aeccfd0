//! Cooking by computation: a process in a kitchen, under one draw, gives a trace.
//!
//! One clock runs for all vessels. A vessel keeps its place and its heat until an act changes them, so what stands on
//! the hob goes on cooking while something else is done. Each step moves heat, vapour and matter between vessels,
//! pieces and the accounts of the ledger; nothing is ever set that is not booked.

mod acts;
mod conditions;
mod cooling;
mod exchange;
mod food;
mod group;
mod practice;
mod record;
mod running;
mod step;
#[cfg(test)]
mod tests;
mod vessel;

use crate::{
    Act, ActTrace, Aim, Cooling, Doing, Draw, Event, Happening, Kitchen, Ledger, Matter, PieceTrace, Place, Process,
    Sample, ServedPieces, Stretch, Trace,
};
use conditions::Conditions;
use group::Shaped;
use running::{Outcome, Running};
use vessel::VesselState;

/// Cooks a process: never fails and never panics. What cannot be cooked is left out and told in the events.
///
/// The trace is the same, bit for bit, for the same process, kitchen and draw.
#[must_use]
pub fn cook(process: &Process, kitchen: &Kitchen, draw: &Draw) -> Trace {
    let mut run = Run::new(process, kitchen, draw);
    run.all();
    run.into_trace()
}

/// Mistakes that the balance test must catch.
#[cfg(test)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Fault {
    /// Vapour leaves the pot and is not booked.
    VapourForgotten,
}

/// The dish when it is served.
struct Served {
    liquid: Matter,
    pieces: Vec<ServedPieces>,
    temp_c: f64,
    volume_l: f64,
}

/// A cooking that is going on.
struct Run<'a> {
    process: &'a Process,
    cond: Conditions,
    time_s: f64,
    vessels: Vec<VesselState>,
    /// Mass of each lot in this run, and the share of it that has gone in.
    lot_kg: Vec<f64>,
    added: Vec<f64>,
    running: Vec<Running>,
    ledger: Ledger,
    samples: Vec<Sample>,
    acts: Vec<ActTrace>,
    events: Vec<Event>,
    pieces: Vec<PieceTrace>,
    coolings: Vec<Cooling>,
    served: Option<Served>,
}

/// Between samples while something hot changes, and at most, seconds.
const SAMPLE_S: f64 = 60.0;
const QUIET_SAMPLE_S: f64 = 600.0;
/// No dish is followed for longer than a month.
const LONGEST_S: f64 = 30.0 * 24.0 * 3600.0;

impl<'a> Run<'a> {
    fn new(process: &'a Process, kitchen: &Kitchen, draw: &Draw) -> Self {
        let cond = Conditions::new(kitchen, draw);
        let lot_kg = process.lots.iter().enumerate().map(|(index, lot)| {
            let factor = lot.spread.at(draw.lot(index));
            let kg = lot.mass.kilograms() * if factor.is_finite() { factor } else { 1.0 };
            if kg.is_finite() { kg.max(0.0) } else { 0.0 }
        });
        let mut run = Run {
            vessels: process
                .vessels
                .iter()
                .map(|vessel| VesselState::new(vessel, &cond))
                .collect(),
            lot_kg: lot_kg.collect(),
            added: vec![0.0; process.lots.len()],
            process,
            cond,
            time_s: 0.0,
            running: Vec::new(),
            ledger: Ledger::default(),
            samples: Vec::new(),
            acts: vec![
                ActTrace {
                    start_s: 0.0,
                    end_s: 0.0,
                    hands_s: 0.0
                };
                process.acts.len()
            ],
            events: Vec::new(),
            pieces: Vec::new(),
            coolings: Vec::new(),
            served: None,
        };
        for lot in process
            .lots
            .iter()
            .filter(|lot| !lot.mass.is_finite() || !lot.matter.is_sound())
        {
            run.note(
                0,
                0,
                Happening::LeftOut(format!("the amount of {} is not a number", lot.name)),
            );
        }
        run
    }

    /// All acts: one after the other, and those said to happen meanwhile beside the one before.
    fn all(&mut self) {
        let acts = &self.process.acts;
        let mut first = 0;
        while first < acts.len() {
            let beside = acts[first + 1..].iter().take_while(|act| act.meanwhile).count();
            self.together(first, first + 1 + beside);
            first += 1 + beside;
        }
    }

    /// Acts that overlap: each begins when its vessels are free of earlier ones.
    fn together(&mut self, first: usize, end: usize) {
        let mut pending: Vec<usize> = (first..end).collect();
        while !(pending.is_empty() && self.running.is_empty()) {
            let mut taken: Vec<usize> = self.running.iter().map(|running| running.vessel).collect();
            pending.retain(|&index| {
                let vessels = vessels_of(&self.process.acts[index]);
                let free = vessels.iter().all(|vessel| !taken.contains(vessel));
                if free {
                    self.start(index);
                    // A short act that is over at once leaves its vessel free.
                }
                if !free || self.running.iter().any(|running| running.act == index) {
                    taken.extend(vessels);
                }
                !free
            });
            if !self.running.is_empty() {
                self.step();
            }
        }
    }

    /// Begins an act; what happens at one moment happens now, and may keep the cook a while.
    fn start(&mut self, index: usize) {
        let act = &self.process.acts[index];
        self.acts[index] = ActTrace {
            start_s: self.time_s,
            end_s: self.time_s,
            hands_s: 0.0,
        };
        if act.vessel >= self.vessels.len() {
            let vessel = act.vessel;
            self.note(
                index,
                vessel,
                Happening::LeftOut(format!("vessel {vessel} does not exist")),
            );
            return;
        }
        self.sample(index);
        let hands_s = act.hands.seconds();
        self.acts[index].hands_s = if hands_s.is_finite() { hands_s.max(0.0) } else { 0.0 };
        match &act.doing {
            Doing::Cook(stretch) => {
                self.place(index, act.vessel, stretch);
                let state = &self.vessels[act.vessel];
                let running = Running::stretch(index, act.vessel, self.time_s, stretch, state, &self.cond);
                self.running.push(running);
                return;
            }
            Doing::Add(portions) => self.add(index, act.vessel, portions),
            Doing::Transfer { to, what } => {
                self.transfer(index, act.vessel, *to, what);
                self.set_aside_if_last(index, act.vessel);
            }
            Doing::Discard(what) => {
                self.discard(act.vessel, what);
                self.set_aside_if_last(index, act.vessel);
            }
            Doing::Puree(share) => self.puree(act.vessel, *share),
            Doing::Shape {
                lot,
                pieces,
                risen,
                count,
            } => {
                let shaped = Shaped {
                    risen: *risen,
                    count: *count,
                };
                self.shape(index, act.vessel, (*lot, pieces), shaped);
            }
            Doing::Skim(share) => self.skim(act.vessel, *share),
            Doing::Serve => self.serve(act.vessel),
        }
        let running = Running::short(index, act.vessel, self.time_s, hands_s);
        if running.remaining_s(self.time_s) > 0.0 {
            self.running.push(running);
        } else {
            self.finish(index, act.vessel);
        }
    }

    /// Puts a vessel where a stretch wants it and turns its heat.
    fn place(&mut self, act: usize, vessel: usize, stretch: &Stretch) {
        if stretch.place == Place::Hob && self.vessels[vessel].burner.is_none() {
            let taken: Vec<usize> = self.vessels.iter().filter_map(|state| state.burner).collect();
            let free = (0..self.cond.burner_w.len()).find(|burner| !taken.contains(burner));
            self.vessels[vessel].burner = free;
            if free.is_none() {
                self.note(act, vessel, Happening::NotEnoughHeat);
            }
        }
        let state = &mut self.vessels[vessel];
        if stretch.place != Place::Hob {
            state.burner = None;
        }
        state.place = stretch.place;
        state.aim = stretch.aim;
        state.cover = stretch.cover;
        state.turns = f64::from(stretch.batches.clamp(1, 100));
        if let Aim::Setting(word) | Aim::Fry(word) = stretch.aim {
            let share = practice::setting_share(word).map(|share| share * self.cond.setting);
            let before = if state.setting > 0.0 { state.setting } else { 0.7 };
            state.setting = share.unwrap_or(before * practice::LOWER).clamp(0.0, 1.0);
        } else {
            state.setting = 1.0;
        }
        state.watch.browned = 0.0;
        state.watch.wet_s = 0.0;
        state.watch.crowded = false;
        state.disturb();
    }

    /// The dish is finished: what it is now is what is served.
    fn serve(&mut self, vessel: usize) {
        self.served = Some(self.dish());
        let state = &mut self.vessels[vessel];
        state.burner = None;
        state.place = Place::Counter;
        state.aim = Aim::Off;
        state.disturb();
    }

    /// The clock goes on by one step for every vessel.
    fn step(&mut self) {
        let (mut dt_s, every_s) = self.longest_step_s();
        if dt_s > 0.0 {
            let awaited: Vec<(usize, f64)> = self
                .running
                .iter()
                .filter_map(|running| Some((running.vessel, running.awaited_c(&self.vessels[running.vessel])?)))
                .collect();
            let plans = self.plan(&mut dt_s, &awaited);
            for (state, plan) in self.vessels.iter_mut().zip(&plans) {
                if let Some(plan) = plan {
                    state.apply(plan, &self.cond, &mut self.ledger);
                    state.tend(plan.dt_s, &self.cond, &mut self.ledger);
                    state.settle(&self.cond);
                    state.grow_step(plan.dt_s);
                }
            }
            self.time_s += dt_s;
            self.follow_coolings(dt_s);
            self.notice(dt_s);
        }
        self.sample_if_due(dt_s, every_s);
        self.finish_what_is_over();
    }

    /// The longest step all vessels, all running acts and the samples allow; and the time between samples: a minute
    /// while something hot changes, longer where a straight line between two samples tells as much.
    fn longest_step_s(&self) -> (f64, f64) {
        let over_s = self
            .running
            .iter()
            .map(|running| running.remaining_s(self.time_s))
            .fold(f64::MAX, f64::min);
        let over_s = over_s.min((LONGEST_S - self.time_s).max(0.0));
        let mut sample_s = QUIET_SAMPLE_S;
        let mut longest_s = f64::MAX;
        for state in self.vessels.iter().filter(|state| !state.is_empty()) {
            let own_s = state.longest_step_s(&self.cond);
            longest_s = longest_s.min(own_s);
            if state.temp_c > 40.0 || state.is_heated(&self.cond) {
                sample_s = sample_s.min(own_s.max(SAMPLE_S));
            }
        }
        (step::rounded_s(longest_s.min(sample_s)).min(over_s), sample_s)
    }

    /// Plans a step of every vessel; shortens it to end where a vessel begins to boil, reaches its aim or what is
    /// waited for.
    fn plan(&mut self, dt_s: &mut f64, awaited: &[(usize, f64)]) -> Vec<Option<step::Plan>> {
        let mut plans = Vec::with_capacity(self.vessels.len());
        for attempt in 0..5 {
            plans.clear();
            let mut earliest = 1.0_f64;
            for (index, state) in self.vessels.iter_mut().enumerate() {
                if state.is_empty() {
                    plans.push(None);
                    continue;
                }
                let plan = state.plan(*dt_s, &self.cond);
                earliest = earliest.min(plan.crossing.unwrap_or(1.0));
                for (_, target) in awaited.iter().filter(|(vessel, _)| *vessel == index) {
                    let share = (target - state.temp_c) / plan.rise_k;
                    if share > 0.0 && share < 1.0 && (target - state.temp_c).abs() > 0.02 {
                        earliest = earliest.min(share);
                    }
                }
                plans.push(Some(plan));
            }
            if attempt == 4 || earliest > 0.98 || *dt_s < 0.2 {
                break;
            }
            *dt_s = (*dt_s * (earliest * 1.002)).max(0.05);
        }
        plans
    }

    fn follow_coolings(&mut self, dt_s: f64) {
        for index in 0..self.vessels.len() {
            let ended = self.vessels[index].follow_cooling(self.time_s, dt_s, &self.cond);
            if let Some(follow) = ended {
                let act = self.act_of(index);
                self.coolings.extend(follow.tell(index, act));
            }
        }
    }

    /// Samples when the time between two would else be passed in the next step.
    fn sample_if_due(&mut self, dt_s: f64, every_s: f64) {
        let last = self.samples.last().map_or(f64::NEG_INFINITY, |sample| sample.time_s);
        if self.time_s + step::GROWTH * dt_s > last + every_s - 1e-6 {
            let act = self.running.first().map_or(0, |running| running.act);
            self.sample(act);
        }
    }

    fn finish_what_is_over(&mut self) {
        let mut running = std::mem::take(&mut self.running);
        let too_long = self.time_s >= LONGEST_S;
        running.retain_mut(|stretch| {
            let state = &self.vessels[stretch.vessel];
            let outcome = stretch.look(self.time_s, state, &self.cond);
            stretch.remember(self.time_s, state);
            stretch.forecast(self.time_s, state);
            let (act, vessel) = (stretch.act, stretch.vessel);
            if std::mem::take(&mut stretch.weak) {
                self.note(act, vessel, Happening::NotEnoughHeat);
            }
            if outcome == Outcome::GoesOn && !too_long {
                return true;
            }
            if outcome == Outcome::NotReached {
                self.note(act, vessel, Happening::CueNotReached);
            }
            let attention = self.vessels[vessel].attention();
            let busy = (self.time_s - stretch.start_s) * attention;
            if matches!(self.process.acts[act].doing, Doing::Cook(_)) {
                self.acts[act].hands_s += busy;
            }
            self.finish(act, vessel);
            false
        });
        self.running = running;
    }

    fn finish(&mut self, act: usize, vessel: usize) {
        self.acts[act].end_s = self.time_s;
        self.sample(act);
        self.vessels[vessel].turns = 1.0;
    }

    /// What is left in a vessel that no later act comes back to is off the heat, and no food any more whose cooling
    /// matters.
    fn set_aside_if_last(&mut self, act: usize, vessel: usize) {
        let later = self.process.acts.iter().skip(act + 1);
        if vessel != self.process.dish_vessel && !later.flat_map(vessels_of).any(|touched| touched == vessel) {
            self.close_cooling(vessel, act);
            self.vessels[vessel].set_aside();
        }
    }

    /// The act that goes on in a vessel, else the first that goes on.
    fn act_of(&self, vessel: usize) -> usize {
        let own = self.running.iter().find(|running| running.vessel == vessel);
        own.or(self.running.first()).map_or(0, |running| running.act)
    }
}

/// Vessels an act touches.
fn vessels_of(act: &Act) -> Vec<usize> {
    match &act.doing {
        Doing::Transfer { to, .. } => vec![act.vessel, *to],
        _ => vec![act.vessel],
    }
}

impl VesselState {
    /// Share of the time the cook's hands are busy with it.
    fn attention(&self) -> f64 {
        use potwright_manuscript::HeatWord;
        match (self.place, self.aim) {
            (Place::Hob, Aim::Fry(HeatWord::Off | HeatWord::Low | HeatWord::MediumLow | HeatWord::Lower)) => {
                practice::ATTENTION_SWEAT
            }
            (Place::Hob, Aim::Fry(_)) => practice::ATTENTION_FRY,
            (Place::Hob, Aim::BelowBoil | Aim::Setting(_)) => practice::ATTENTION_WATCH,
            (Place::Hob, _) => practice::ATTENTION_SIMMER,
            _ => 0.0,
        }
    }
}
