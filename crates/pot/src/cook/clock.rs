//! One clock for all vessels. A vessel that changes slowly and in which nothing is waited for falls behind it and makes
//! one long step where its neighbours make many; it is level with the clock whenever anyone looks.

use crate::Place;
use crate::cook::{LONGEST_S, QUIET_SAMPLE_S, Run, SAMPLE_S, step};

/// A vessel whose own steps may be this long, seconds, may fall behind the clock.
const SLOW_S: f64 = 60.0;

impl Run<'_> {
    /// The clock goes on by one step.
    pub(super) fn step(&mut self) {
        let (mut dt_s, every_s) = self.longest_step_s();
        if dt_s > 0.0 {
            let plans = self.plan(&mut dt_s);
            self.time_s += dt_s;
            for (vessel, plan) in plans.iter().enumerate() {
                match plan {
                    Some(plan) => self.go_on(vessel, plan),
                    None => self.vessels[vessel].behind_s += dt_s,
                }
            }
            let taken_j = self.ledger.oven_j - std::mem::replace(&mut self.oven_seen_j, self.ledger.oven_j);
            self.cond.oven.go_on(dt_s, taken_j, self.cond.room_c);
        }
        self.sample_if_due(dt_s, every_s);
        self.finish_what_is_over();
    }

    /// Does a step of one vessel, which is then level with the clock.
    fn go_on(&mut self, vessel: usize, plan: &step::Plan) {
        let state = &mut self.vessels[vessel];
        state.apply(plan, &self.cond, &mut self.ledger);
        state.tend(plan.dt_s, &self.cond, &mut self.ledger);
        state.settle(&self.cond);
        state.grow_step(plan.dt_s);
        state.behind_s = 0.0;
        let ended = state.follow_cooling(self.time_s, plan.dt_s, &self.cond);
        if let Some(follow) = ended {
            let act = self.act_of(vessel);
            self.coolings.extend(follow.tell(vessel, act));
        }
        self.notice(vessel, plan.dt_s);
    }

    /// Brings a vessel level with the clock.
    fn catch_up(&mut self, vessel: usize) {
        let state = &mut self.vessels[vessel];
        let behind_s = std::mem::take(&mut state.behind_s);
        if behind_s > 0.0 && !state.is_empty() {
            let plan = state.plan(behind_s, &self.cond);
            self.go_on(vessel, &plan);
        }
    }

    /// Brings all vessels level with the clock.
    pub(super) fn catch_up_all(&mut self) {
        (0..self.vessels.len()).for_each(|vessel| self.catch_up(vessel));
    }

    /// Brings the vessels level whose stretch is over by the clock.
    pub(super) fn catch_up_what_is_over(&mut self) {
        for index in 0..self.running.len() {
            if self.running[index].remaining_s(self.time_s) <= 1e-6 {
                self.catch_up(self.running[index].vessel);
            }
        }
    }

    /// The longest step all vessels that keep up, all running acts and the samples allow; and the time between samples:
    /// a minute while something hot changes, longer where a straight line between two samples tells as much. Says of
    /// every vessel whether it keeps up.
    fn longest_step_s(&mut self) -> (f64, f64) {
        let over_s = self
            .running
            .iter()
            .map(|running| running.remaining_s(self.time_s))
            .fold(f64::MAX, f64::min);
        let over_s = over_s.min((LONGEST_S - self.time_s).max(0.0));
        let mut sample_s = QUIET_SAMPLE_S;
        let mut longest_s = f64::MAX;
        for (vessel, state) in self.vessels.iter_mut().enumerate() {
            if state.is_empty() {
                continue;
            }
            state.own_s = state.longest_step_s(&self.cond);
            let watched = self
                .running
                .iter()
                .any(|running| running.vessel == vessel && running.watches());
            // What stands in the oven takes its heat from there step by step.
            state.keeps_up = watched || state.own_s < SLOW_S || state.place == Place::Oven;
            if state.keeps_up {
                longest_s = longest_s.min(state.own_s);
            }
            if state.temp_c > 40.0 || state.is_heated(&self.cond) {
                sample_s = sample_s.min(state.own_s.max(SAMPLE_S));
            }
        }
        if longest_s == f64::MAX {
            // All are slow: they go on together.
            for state in &mut self.vessels {
                state.keeps_up = true;
                longest_s = longest_s.min(if state.is_empty() { f64::MAX } else { state.own_s });
            }
        }
        let dt_s = step::rounded_s(longest_s.min(sample_s)).min(over_s);
        for state in &mut self.vessels {
            // Not one step more before it would be too long.
            state.keeps_up |= state.behind_s + (1.0 + step::GROWTH) * dt_s > state.own_s;
        }
        (dt_s, sample_s)
    }

    /// Plans a step of the vessels that keep up; shortens it to end where one begins to boil, reaches its aim or what
    /// is waited for.
    fn plan(&mut self, dt_s: &mut f64) -> Vec<Option<step::Plan>> {
        let awaited: Vec<(usize, f64)> = self
            .running
            .iter()
            .filter_map(|running| Some((running.vessel, running.awaited_c(&self.vessels[running.vessel])?)))
            .collect();
        let mut plans = Vec::with_capacity(self.vessels.len());
        for attempt in 0..5 {
            plans.clear();
            let mut earliest = 1.0_f64;
            for (index, state) in self.vessels.iter_mut().enumerate() {
                if state.is_empty() || !state.keeps_up {
                    plans.push(None);
                    continue;
                }
                let behind_s = state.behind_s;
                let plan = state.plan(behind_s + *dt_s, &self.cond);
                plans.push(Some(plan));
                if behind_s > 0.0 {
                    continue;
                }
                earliest = earliest.min(plan.crossing.unwrap_or(1.0));
                for (_, target) in awaited.iter().filter(|(vessel, _)| *vessel == index) {
                    let share = (target - state.temp_c) / plan.rise_k;
                    if share > 0.0 && share < 1.0 && (target - state.temp_c).abs() > 0.02 {
                        earliest = earliest.min(share);
                    }
                }
            }
            if attempt == 4 || earliest > 0.98 || *dt_s < 0.2 {
                break;
            }
            *dt_s = (*dt_s * (earliest * 1.002)).max(0.05);
        }
        plans
    }

    /// Samples when the time between two would else be passed in the next step.
    fn sample_if_due(&mut self, dt_s: f64, every_s: f64) {
        let last = self.samples.last().map_or(f64::NEG_INFINITY, |sample| sample.time_s);
        if self.time_s + step::GROWTH * dt_s > last + every_s - 1e-6 {
            let act = self.running.first().map_or(0, |running| running.act);
            self.sample(act);
        }
    }
}
