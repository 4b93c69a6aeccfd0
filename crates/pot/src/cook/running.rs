//! A stretch that is going on, and when it is over.

use potwright_larder::Hazard;

use crate::cook::conditions::Conditions;
use crate::cook::group::Group;
use crate::cook::practice;
use crate::cook::vessel::VesselState;
use crate::{Aim, Cue, Lasts, Place, Stretch};

/// What ends a stretch.
#[derive(Clone, Debug)]
enum End {
    /// A time by the clock, seconds from the start of everything.
    At(f64),
    /// So many seconds once the liquid is as hot as is aimed at; the second figure is when waiting for that ends.
    Counted(f64, f64),
    /// The cue, at the latest by the second figure.
    Cue(Cue, f64),
}

/// How a stretch ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Outcome {
    GoesOn,
    Done,
    /// The sign was not reached.
    NotReached,
}

/// A stretch or a short act that is going on.
#[derive(Clone, Debug)]
pub(super) struct Running {
    pub(super) act: usize,
    pub(super) vessel: usize,
    pub(super) start_s: f64,
    end: End,
    cue: Option<Cue>,
    volume_m3: f64,
    begun_c: f64,
    /// How far the cue has come (1 = reached) and when, at the last look.
    came: Option<(f64, f64)>,
    /// Seconds until it is reached if it goes on as in the last step.
    forecast_s: f64,
    /// Where the cue's figure stood at the last look, for telling that nothing moves any more.
    looked: (f64, f64),
    /// Heat too weak to reach what is aimed at.
    pub(super) weak: bool,
}

/// How often a cue is looked at to see whether anything still moves, seconds.
const LOOK_S: f64 = 900.0;
const HOUR: f64 = 3600.0;

impl Running {
    /// A short act that keeps the cook for some seconds.
    pub(super) fn short(act: usize, vessel: usize, now_s: f64, hands_s: f64) -> Self {
        let seconds = if hands_s.is_finite() {
            hands_s.clamp(0.0, practice::LONGEST_ACT_S)
        } else {
            0.0
        };
        Running {
            act,
            vessel,
            start_s: now_s,
            end: End::At(now_s + seconds),
            cue: None,
            volume_m3: 0.0,
            begun_c: 0.0,
            came: None,
            forecast_s: f64::MAX,
            looked: (now_s, 0.0),
            weak: false,
        }
    }

    /// A stretch; the vessel is already where it stands.
    pub(super) fn stretch(
        act: usize,
        vessel: usize,
        now_s: f64,
        stretch: &Stretch,
        state: &VesselState,
        cond: &Conditions,
    ) -> Self {
        let cue = stretch.lasts.cue.clone().map(|cue| understood(cue, state));
        let batches = state.turns;
        let end = match minutes(&stretch.lasts, cond) {
            Some(minutes) => timed(minutes * 60.0 * batches, now_s, state, cond),
            None => match cue.clone().filter(|cue| !matches!(cue, Cue::Other(_))) {
                Some(cue) => {
                    let longest = longest_s(&cue) * batches;
                    End::Cue(cue, now_s + longest)
                }
                None => unsaid(now_s, state, cond),
            },
        };
        let mut running = Running {
            act,
            vessel,
            start_s: now_s,
            end,
            cue,
            volume_m3: state.liquid_m3(),
            begun_c: state.shown_c(),
            came: None,
            forecast_s: f64::MAX,
            looked: (now_s, 0.0),
            weak: false,
        };
        running.looked.1 = running.figure(state);
        running
    }

    /// The longest step that does not pass its end, seconds.
    pub(super) fn remaining_s(&self, now_s: f64) -> f64 {
        let end = match self.end {
            End::At(end) | End::Counted(_, end) | End::Cue(_, end) => end,
        };
        (end - now_s).max(0.0).min(self.forecast_s)
    }

    /// Whether what happens in the vessel decides when it ends, rather than the clock alone.
    pub(super) fn watches(&self) -> bool {
        !matches!(self.end, End::At(_))
    }

    /// The temperature the cue waits for, °C.
    pub(super) fn awaited_c(&self, state: &VesselState) -> Option<f64> {
        match &self.end {
            End::Cue(Cue::Boils, _) => Some(state.boil_c),
            End::Cue(Cue::Reaches(t), _) => Some(t.celsius()),
            _ => None,
        }
    }

    /// What the cue looks at, as a number that moves towards it.
    fn figure(&self, state: &VesselState) -> f64 {
        match &self.end {
            End::Cue(Cue::ReducedTo(_) | Cue::ReducedToVolume(_), _) => {
                300.0 * state.liquid_m3() / self.volume_m3.max(1e-9)
            }
            End::Cue(Cue::Browned, _) => 100.0 * state.watch.browned + state.temp_c,
            End::Cue(Cue::Tender(_) | Cue::Softened, _) => {
                state.groups.iter().map(|g| 50.0 * g.tender + g.mean_c).sum::<f64>()
            }
            End::Cue(Cue::CookedThrough(_), _) => state.groups.iter().map(Group::centre_c).sum::<f64>(),
            _ => state.shown_c(),
        }
    }

    /// How far the cue has come, 1 when reached; none where that is not a matter of steady progress.
    fn progress(&self, state: &VesselState) -> Option<f64> {
        match &self.end {
            End::Cue(Cue::Browned, _) => Some(state.watch.browned),
            End::Cue(Cue::ReducedTo(share), _) => {
                Some((1.0 - state.liquid_m3() / self.volume_m3.max(1e-12)) / (1.0 - share).max(1e-9))
            }
            End::Cue(Cue::Tender(lots), _) => {
                let groups = state.groups.iter().filter(|g| lots.is_empty() || lots.contains(&g.lot));
                groups
                    .filter(|g| g.habits.softens.is_some())
                    .map(|g| g.tender)
                    .reduce(f64::min)
            }
            _ => None,
        }
    }

    /// Looks ahead, so that the last step ends where the cue is reached.
    pub(super) fn forecast(&mut self, now_s: f64, state: &VesselState) {
        self.forecast_s = f64::MAX;
        let Some(progress) = self.progress(state) else {
            return;
        };
        if let Some((then_s, before)) = self.came {
            let rate = (progress - before) / (now_s - then_s).max(1e-9);
            if rate > 0.0 && progress < 1.0 {
                // A thousandth more, lest the last step stops just short.
                self.forecast_s = (1.001 * (1.0 - progress) / rate).max(1.0);
            }
        }
        self.came = Some((now_s, progress));
    }

    /// Whether it is over, after a step.
    pub(super) fn look(&mut self, now_s: f64, state: &VesselState, cond: &Conditions) -> Outcome {
        let over = now_s + 1e-6;
        match &self.end {
            End::At(end) if over < *end => return Outcome::GoesOn,
            End::At(_) => {}
            End::Counted(seconds, latest) => {
                let target = state.target_c(cond).unwrap_or(f64::NEG_INFINITY).min(state.boil_c);
                let there = state.shown_c() >= target - 2.0;
                let stuck = self.is_stuck(now_s, state);
                if there || stuck || over >= *latest {
                    self.weak = !there;
                    self.end = End::At(now_s + seconds);
                } else {
                    return Outcome::GoesOn;
                }
                return self.look_again(now_s);
            }
            End::Cue(cue, latest) => {
                if self.reached(cue, state, cond) {
                    return Outcome::Done;
                }
                if over < *latest && !self.is_stuck(now_s, state) {
                    return Outcome::GoesOn;
                }
                return Outcome::NotReached;
            }
        }
        match &self.cue {
            Some(cue) if !self.reached(cue, state, cond) && !self.nearly(cue, state) => Outcome::NotReached,
            _ => Outcome::Done,
        }
    }

    /// Whether a cue that the page's minutes did not quite reach lies within what a rule of thumb leaves open.
    fn nearly(&self, cue: &Cue, state: &VesselState) -> bool {
        let least = match cue {
            Cue::Softened => practice::SOFTENED,
            Cue::Tender(_) => 1.0,
            _ => return false,
        };
        let asked = |group: &&Group| match cue {
            Cue::Tender(lots) => lots.is_empty() || lots.contains(&group.lot),
            _ => true,
        };
        let mut softening = state
            .groups
            .iter()
            .filter(asked)
            .filter(|group| group.habits.softens.is_some());
        let limp = |group: &Group| matches!(cue, Cue::Softened) && group.is_nearly_limp();
        softening.all(|group| group.tender * practice::RULE_OF_THUMB >= least || limp(group))
    }

    fn look_again(&self, now_s: f64) -> Outcome {
        if self.remaining_s(now_s) > 1e-6 {
            Outcome::GoesOn
        } else {
            Outcome::Done
        }
    }

    /// Nothing has moved for a quarter of an hour; looked at once in that time. What cools creeps up to its end.
    fn is_stuck(&self, now_s: f64, state: &VesselState) -> bool {
        let least = match &self.end {
            End::Cue(Cue::Reaches(t), _) if t.celsius() < self.begun_c => 0.02,
            _ => 0.5,
        };
        now_s - self.looked.0 >= LOOK_S - 1e-6 && (self.figure(state) - self.looked.1).abs() < least
    }

    /// Remembers where things stand, a quarter of an hour after the last time.
    pub(super) fn remember(&mut self, now_s: f64, state: &VesselState) {
        if now_s - self.looked.0 >= LOOK_S - 1e-6 {
            self.looked = (now_s, self.figure(state));
        }
    }

    fn reached(&self, cue: &Cue, state: &VesselState, cond: &Conditions) -> bool {
        let chosen = |lots: &[usize], group: &Group| lots.is_empty() || lots.contains(&group.lot);
        match cue {
            Cue::Boils => match state.target_c(cond) {
                // Under an aim below the boil 'boils' means that the aim is reached.
                Some(target) if target < state.boil_c => state.temp_c >= target - 0.5,
                _ => state.watch.boiled && (state.boils() || state.temp_c >= state.boil_c - 0.1),
            },
            Cue::Reaches(t) => {
                let t = t.celsius();
                let shown = state.shown_c();
                if self.begun_c < t {
                    shown >= t - 0.05
                } else {
                    shown <= t + 0.05
                }
            }
            Cue::Browned => state.watch.browned >= 1.0,
            Cue::Softened => state.groups.iter().all(Group::is_softened),
            Cue::ReducedTo(share) => state.liquid_m3() <= share.clamp(0.0, 1.0) * self.volume_m3,
            Cue::ReducedToVolume(volume) => state.liquid_m3() <= volume.cubic_metres(),
            Cue::Tender(lots) => state
                .groups
                .iter()
                .filter(|group| chosen(lots, group))
                .all(|g| g.habits.softens.is_none() || g.tender >= 1.0),
            Cue::CookedThrough(lots) => {
                // Where something must be made safe that alone decides; the onions need not be soft for it.
                let chosen = || state.groups.iter().filter(|group| chosen(lots, group));
                let hazardous = chosen().any(|group| group.habits.hazard.is_some());
                chosen()
                    .filter(|g| !hazardous || g.habits.hazard.is_some())
                    .all(Group::is_cooked_through)
            }
            Cue::Other(_) => true,
        }
    }
}

/// Share of the water that food sheds on sweating which is gone when a cook calls it limp.
const LIMP: f64 = 0.6;

impl Group {
    fn is_softened(&self) -> bool {
        let shed = self.raw_water_kg * self.habits.sheds;
        (self.habits.softens.is_none() || self.tender >= practice::SOFTENED) && self.shed_kg >= LIMP * shed
    }

    /// Cells whose membranes gave have let their water go and no longer hold a piece up: it is limp and glassy, which a
    /// cook who sweats calls soft, long before its walls are tender.
    fn is_nearly_limp(&self) -> bool {
        let shed = self.raw_water_kg * self.habits.sheds;
        shed > 0.0 && self.shed_kg * practice::RULE_OF_THUMB >= LIMP * shed
    }

    /// Centre at the safe temperature of its hazard (USDA FSIS safe minimum internal temperatures: 165, 160, 145 °F),
    /// or tender where there is none.
    fn is_cooked_through(&self) -> bool {
        let safe_c = match self.habits.hazard {
            Some(Hazard::Poultry | Hazard::ReadyToEat) => 73.9,
            Some(Hazard::MincedMeat | Hazard::Egg) => 71.1,
            Some(Hazard::WholeMeat | Hazard::Fish | Hazard::Crustacean | Hazard::Bivalve) => 62.8,
            Some(Hazard::KidneyBean) | None => {
                return self.habits.softens.is_none() || self.tender >= 1.0;
            }
        };
        self.centre_c() >= safe_c
    }
}

/// Minutes said, at the draw's reading.
fn minutes(lasts: &Lasts, cond: &Conditions) -> Option<f64> {
    let minutes = lasts.minutes?.at(cond.reading);
    minutes.is_finite().then(|| minutes.clamp(0.0, 30.0 * 24.0 * 60.0))
}

/// Seconds that count from now, or from when the boil or simmer is reached.
fn timed(seconds: f64, now_s: f64, state: &VesselState, cond: &Conditions) -> End {
    let (awaits, near_k) = match state.aim {
        Aim::Boil | Aim::Simmer | Aim::BelowBoil => (true, 15.0),
        // Under pressure minutes count from when it is up.
        Aim::Pressure(_) => (true, 2.0),
        _ => (false, 0.0),
    };
    match state.target_c(cond) {
        Some(target)
            if awaits && state.most_power_w(cond) > 0.0 && state.shown_c() < target.min(state.boil_c) - near_k =>
        {
            End::Counted(seconds, now_s + 3.0 * HOUR)
        }
        _ => End::At(now_s + seconds),
    }
}

/// Neither minutes nor a sign that can be computed: what is aimed at is waited for, else a default in minutes.
fn unsaid(now_s: f64, state: &VesselState, cond: &Conditions) -> End {
    let minutes = match state.aim {
        Aim::Boil | Aim::Simmer | Aim::BelowBoil | Aim::Pressure(_) | Aim::Hold(_)
            if state.most_power_w(cond) > 0.0 =>
        {
            return End::Counted(2.0 * 60.0, now_s + 3.0 * HOUR);
        }
        Aim::Fry(_) | Aim::Setting(_) => 5.0,
        Aim::Oven(_) => 30.0,
        _ => match state.place {
            Place::Refrigerator | Place::Freezer => 240.0,
            Place::Sink | Place::IceBath => 20.0,
            _ => 5.0,
        },
    };
    End::At(now_s + minutes * 60.0)
}

/// The longest a sign is waited for, seconds.
fn longest_s(cue: &Cue) -> f64 {
    match cue {
        Cue::Browned => 0.75 * HOUR,
        Cue::Softened => HOUR,
        Cue::Boils => 4.0 * HOUR,
        Cue::Tender(_) | Cue::ReducedTo(_) | Cue::ReducedToVolume(_) => 8.0 * HOUR,
        Cue::CookedThrough(_) => 4.0 * HOUR,
        Cue::Reaches(_) => 24.0 * HOUR,
        Cue::Other(_) => 0.0,
    }
}

/// A cue that cannot be computed in this vessel becomes one in words.
fn understood(cue: Cue, state: &VesselState) -> Cue {
    let none = match &cue {
        Cue::Reaches(t) => !t.celsius().is_finite(),
        Cue::ReducedTo(share) => !share.is_finite() || state.liquid.total_kg() <= 0.0,
        Cue::ReducedToVolume(volume) => !volume.is_finite() || state.liquid.total_kg() <= 0.0,
        Cue::Softened => state.groups.is_empty(),
        Cue::Tender(lots) => {
            let tells = |g: &Group| g.habits.softens.is_some() && (lots.is_empty() || lots.contains(&g.lot));
            !state.groups.iter().any(tells)
        }
        Cue::CookedThrough(lots) => !state.groups.iter().any(|g| lots.is_empty() || lots.contains(&g.lot)),
        Cue::Boils | Cue::Browned | Cue::Other(_) => false,
    };
    if none { Cue::Other(String::new()) } else { cue }
}
