//! The whole way from a process to a dossier.

use potwright_larder::Larder;
use potwright_pot::{Cooling, Draw, Kitchen, Made, Process, Trace};

use crate::body::Thickener;
use crate::foods::Foods;
use crate::hands::side_by_side;
use crate::happenings::Dry;
use crate::reading::{Reading, Runs, lot_kg, served};
use crate::safety::Outcome;
use crate::sampling::Design;
use crate::taste::{self, Tasted};
use crate::whereabouts::Whereabouts;
use crate::{Prices, Reckoned, Target, assemble, cost, happenings, retention, safety, steps};

/// Cooks a process, solves what is 'to taste', and reads every answer off.
///
/// `draws` further runs give the 5–95 % ranges; with none of them only the central run is done and every
/// [`crate::Figure::spread`] is empty. The same input and `seed` give the same bytes on every machine.
#[must_use]
#[expect(
    clippy::too_many_arguments,
    reason = "each is a thing of its own that the caller owns"
)]
pub fn reckon(
    process: Process,
    kitchen: &Kitchen,
    larder: &Larder,
    made: &[Made],
    prices: &Prices,
    target: &Target,
    draws: usize,
    seed: u64,
) -> Reckoned {
    let cook = |process: &Process, draw: &Draw| potwright_pot::cook(process, kitchen, draw);
    let given = Given {
        cook: &cook,
        foods: larder,
        made,
        prices,
        target,
    };
    given.reckon(process, draws, seed)
}

/// What a process is reckoned with.
pub(crate) struct Given<'a> {
    pub(crate) cook: &'a (dyn Fn(&Process, &Draw) -> Trace + Sync),
    pub(crate) foods: &'a dyn Foods,
    pub(crate) made: &'a [Made],
    pub(crate) prices: &'a Prices,
    pub(crate) target: &'a Target,
}

/// What is read off one run; the trace itself need not be kept.
struct Account {
    reading: Reading,
    outcomes: Vec<Outcome>,
    coolings: Vec<Cooling>,
    thickener: Thickener,
    dry: Vec<Dry>,
}

/// All runs of a process, read.
#[derive(Default)]
pub(crate) struct Read {
    pub(crate) runs: Runs,
    pub(crate) outcomes: Vec<Outcome>,
    pub(crate) other_outcomes: Vec<Vec<Outcome>>,
    pub(crate) other_coolings: Vec<Vec<Cooling>>,
    pub(crate) others_dry: Vec<Vec<Dry>>,
    pub(crate) thickener: Thickener,
    pub(crate) other_thickeners: Vec<Thickener>,
}

/// What holds for all runs of a process.
pub(crate) struct Ground<'a> {
    pub(crate) process: &'a Process,
    pub(crate) places: Whereabouts,
    pub(crate) kept: Vec<retention::Kept>,
    pub(crate) costs: cost::Costs,
}

impl Given<'_> {
    pub(crate) fn taste(&self, process: Process) -> Tasted {
        let central = |process: &Process| (self.cook)(process, &Draw::central());
        taste::solve(process, self.target, &central, self.foods)
    }

    pub(crate) fn ground<'a>(&self, tasted: &'a Tasted) -> Ground<'a> {
        let process = &tasted.process;
        let places = Whereabouts::of(process);
        Ground {
            process,
            kept: retention::by_lot(process, &tasted.trace, &places),
            costs: cost::Costs::of(process, self.made, self.prices, self.foods),
            places,
        }
    }

    pub(crate) fn reckon(&self, process: Process, draws: usize, seed: u64) -> Reckoned {
        let tasted = self.taste(process);
        let (process, ground) = (&tasted.process, self.ground(&tasted));
        let draws = Design::Even.draws(process.lots.len(), draws, seed);
        let others = side_by_side(&draws, |draw| self.account(&ground, &(self.cook)(process, draw)));
        let read = Read::of(self.account(&ground, &tasted.trace), others);
        let (dossier, made) = assemble::assemble(self, &ground, &tasted, &read);
        let Tasted { process, trace, .. } = tasted;
        Reckoned {
            process,
            trace,
            dossier,
            made,
        }
    }

    fn account(&self, ground: &Ground<'_>, trace: &Trace) -> Account {
        Account {
            reading: reading(ground, trace),
            outcomes: safety::outcomes(ground.process, trace, &ground.places, self.foods),
            coolings: trace.coolings.clone(),
            thickener: Thickener::of(ground.process, trace),
            dry: happenings::boiled_dry(trace),
        }
    }
}

impl Read {
    fn of(central: Account, others: Vec<Account>) -> Self {
        let mut read = Read {
            runs: Runs {
                central: central.reading,
                others: Vec::with_capacity(others.len()),
            },
            outcomes: central.outcomes,
            thickener: central.thickener,
            ..Read::default()
        };
        for other in others {
            read.runs.others.push(other.reading);
            read.other_outcomes.push(other.outcomes);
            read.others_dry.push(other.dry);
            read.other_coolings.push(other.coolings);
            read.other_thickeners.push(other.thickener);
        }
        read
    }
}

/// The numbers of one run.
pub(crate) fn reading(ground: &Ground<'_>, trace: &Trace) -> Reading {
    let process = ground.process;
    let whole = served(trace);
    let inedible_kg: f64 = trace.served_pieces.iter().map(|pieces| pieces.inedible_kg).sum();
    let pieces_kg: f64 = trace
        .served_pieces
        .iter()
        .map(|pieces| pieces.matter.total_kg() + pieces.inedible_kg)
        .sum();
    let lot_kg: Vec<f64> = (0..process.lots.len()).map(|lot| lot_kg(process, trace, lot)).collect();
    Reading {
        yield_kg: whole.total_kg() + inedible_kg,
        volume_l: trace.served_volume_l,
        liquid: trace.served_liquid,
        whole,
        pieces_kg,
        elapsed_min: steps::Clock::of(process, trace, &ground.places).elapsed_min,
        hands_on_min: trace.hands_on.minutes(),
        alcohol_in_kg: trace.ledger.put_in.kg(potwright_pot::Stuff::Alcohol),
        boiling_c: trace.boiling_c,
        evaporated_kg: trace.ledger.vapour.kg(potwright_pot::Stuff::Water),
        put_in_kg: trace.ledger.put_in.total_kg() + trace.ledger.inedible_in_kg,
        nutrients: retention::after_heat(process, trace, &ground.kept),
        cost: ground.costs.total(&lot_kg),
        inedible_kg,
        lot_kg,
    }
}
