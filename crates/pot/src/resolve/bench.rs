//! The bench: which vessels are in use and what is in each while the method is followed.
//!
//! Nothing is heated here. What each vessel holds is kept only as shares of lots, so that later words ('the beef',
//! 'the paste', 'it') can be followed to where the food is.

use potwright_larder::State;
use potwright_manuscript::{Cover, HeatWord, Operation, Span};
use potwright_measure::{Duration, Temperature};

use super::lots::{Shelf, Stocked};
use super::shaped::Shaped;
use super::vessels::{Asked, Style, Use};
use super::words::has;
use super::{Notes, vessels};
use crate::{Act, Aim, Doing, Part, Place, Portion};

/// Shares smaller than this are nothing.
pub(super) const NOTHING: f64 = 1e-9;

/// What is known of a vessel in use.
#[derive(Clone, Debug)]
pub(super) struct Held {
    /// Lots and their shares.
    pub(super) lots: Vec<(usize, f64)>,
    /// Names of what it holds: 'the dumplings', 'soaking liquid'.
    pub(super) names: Vec<String>,
    /// The part of the page it was opened for.
    pub(super) section: Option<usize>,
    /// The step in which it was last used.
    pub(super) step: usize,
    pub(super) cover: Option<Cover>,
    pub(super) heat: Option<HeatWord>,
    pub(super) place: Place,
    /// What was last aimed at.
    pub(super) aim: Option<Aim>,
    /// Its contents were worked together and go as one.
    pub(super) mixed: bool,
    /// Must not boil from here on.
    pub(super) guarded: bool,
}

/// The words an act comes from.
#[derive(Clone, Copy, Debug)]
pub(super) struct Said {
    pub(super) operation: Option<usize>,
    pub(super) span: Option<Span>,
    pub(super) step: usize,
}

/// The bench.
pub(super) struct Bench<'a> {
    pub(super) shelf: &'a Shelf<'a>,
    pub(super) stocked: Stocked,
    /// Share of each lot that is still on the shelf.
    pub(super) left: Vec<f64>,
    pub(super) uses: Vec<Use>,
    pub(super) held: Vec<Held>,
    pub(super) shaped: Vec<Shaped>,
    /// The vessel being worked in.
    pub(super) here: Option<usize>,
    /// The vessel last on the fire.
    pub(super) fire: Option<usize>,
    pub(super) section: Option<usize>,
    pub(super) oven: Option<Temperature>,
    /// The page has said to heat the oven, or it was told that it never does.
    pub(super) oven_lit: bool,
    pub(super) acts: Vec<Act>,
    pub(super) notes: Notes,
    pub(super) said: Said,
    /// The operation that serves.
    pub(super) served: Option<Said>,
    /// Hands and 'meanwhile' for the next act.
    hands: Duration,
    meanwhile: bool,
    /// The vessel beside which work goes on in others, until it is touched again.
    beside: Option<usize>,
}

impl<'a> Bench<'a> {
    pub(super) fn new(shelf: &'a Shelf<'a>, stocked: Stocked, notes: Notes) -> Self {
        let left = vec![1.0; stocked.lots.len()];
        let said = Said {
            operation: None,
            span: None,
            step: 0,
        };
        Bench {
            shelf,
            stocked,
            left,
            uses: Vec::new(),
            held: Vec::new(),
            shaped: Vec::new(),
            here: None,
            fire: None,
            section: None,
            oven: None,
            oven_lit: false,
            acts: Vec::new(),
            notes,
            said,
            served: None,
            hands: Duration::ZERO,
            meanwhile: false,
            beside: None,
        }
    }

    /// Turns to an operation: its words, its hands, whether it goes on beside the one before.
    pub(super) fn turn_to(&mut self, index: usize, operation: &Operation, hands: Duration) {
        self.said = Said {
            operation: Some(index),
            span: Some(operation.span),
            step: operation.step,
        };
        self.hands += hands;
        let words = self.words();
        self.meanwhile = operation.meanwhile || ["meanwhile", "in the meantime"].iter().any(|word| has(&words, word));
    }

    /// An assumption about the words being followed.
    pub(super) fn assume(&mut self, text: impl Into<String>) {
        let span = self.said.span;
        self.notes.assume(text, span);
    }

    /// Something left open about the words being followed.
    pub(super) fn leave_open(&mut self, text: impl Into<String>) {
        let span = self.said.span;
        self.notes.open(text, span);
    }

    /// The words of the operation being followed.
    pub(super) fn words(&self) -> String {
        self.said
            .span
            .map_or(String::new(), |span| super::words::plain(span.of(self.shelf.text)))
    }

    /// Takes a vessel into use.
    pub(super) fn take_out(&mut self, name: &str, style: Style) -> usize {
        let asked = vessels::size_in(name);
        self.uses.push(Use {
            name: name.to_owned(),
            style,
            asked,
            most_l: 0.0,
            used: (self.acts.len(), self.acts.len()),
        });
        self.held.push(Held {
            lots: Vec::new(),
            names: Vec::new(),
            section: self.section,
            step: self.said.step,
            cover: None,
            heat: None,
            place: Place::Hob,
            aim: None,
            mixed: false,
            guarded: false,
        });
        self.note_size(self.uses.len() - 1);
        self.uses.len() - 1
    }

    /// A note to the desk in this step that names a size is about this vessel.
    pub(super) fn note_size(&mut self, vessel: usize) {
        let step = self.said.step;
        let notes = self
            .shelf
            .recipe
            .desk_notes
            .iter()
            .filter(|note| note.step == Some(step));
        for note in notes {
            let size = vessels::size_in(&note.words.text);
            let used = &mut self.uses[vessel];
            let unsized_yet = used.asked.diameter_mm.is_none() && used.asked.litres.is_none();
            if unsized_yet && used.style != Style::Hold && (size.diameter_mm.is_some() || size.litres.is_some()) {
                used.asked = Asked { ..size };
            }
        }
        let said = self.said.span.map_or("", |span| span.of(self.shelf.text));
        let used = &mut self.uses[vessel];
        let unsized_yet = used.asked.diameter_mm.is_none() && used.asked.litres.is_none();
        if unsized_yet && used.style != Style::Hold {
            used.asked = vessels::size_after(said, &used.name);
        }
    }

    /// Records an act.
    pub(super) fn act(&mut self, vessel: usize, doing: Doing) {
        let place = self.acts.len();
        let mut touch = |vessel: usize| {
            if let Some(used) = self.uses.get_mut(vessel) {
                if used.used.1 == used.used.0 && used.most_l == 0.0 {
                    used.used.0 = place;
                }
                used.used.1 = place;
            }
            if let Some(held) = self.held.get_mut(vessel) {
                held.step = self.said.step;
            }
        };
        touch(vessel);
        if let Doing::Transfer { to, .. } = &doing {
            touch(*to);
        }
        let hands = std::mem::take(&mut self.hands);
        let meanwhile = self.goes_on_beside(vessel, &doing);
        let Said { operation, span, .. } = self.said;
        self.acts.push(Act {
            vessel,
            doing,
            operation,
            span,
            hands,
            meanwhile,
        });
    }

    /// Whether an act goes on while the pot that was being cooked in before 'meanwhile' cooks on: all that follows does,
    /// until something is done to that pot.
    fn goes_on_beside(&mut self, vessel: usize, doing: &Doing) -> bool {
        if std::mem::take(&mut self.meanwhile) && self.beside.is_none() {
            self.beside = self.acts.last().map(|act| act.vessel);
        }
        let to = match doing {
            Doing::Transfer { to, .. } => *to,
            _ => vessel,
        };
        self.beside = self.beside.filter(|base| *base != vessel && *base != to);
        self.beside.is_some()
    }

    /// Puts shares of lots in from the shelf.
    pub(super) fn add(&mut self, vessel: usize, portions: Vec<Portion>) {
        let mut kept: Vec<Portion> = Vec::new();
        for mut portion in portions {
            let Some(left) = self.left.get_mut(portion.lot) else {
                continue;
            };
            portion.share = portion.share.clamp(0.0, *left);
            if portion.share <= NOTHING {
                continue;
            }
            *left -= portion.share;
            match kept.iter_mut().find(|other| other.lot == portion.lot) {
                Some(other) => other.share += portion.share,
                None => kept.push(portion),
            }
        }
        if kept.is_empty() {
            return;
        }
        for portion in &kept {
            self.put_share(vessel, portion.lot, portion.share);
        }
        self.act(vessel, Doing::Add(kept));
        self.measure(vessel);
    }

    fn put_share(&mut self, vessel: usize, lot: usize, share: f64) {
        let lots = &mut self.held[vessel].lots;
        match lots.iter_mut().find(|(other, _)| *other == lot) {
            Some((_, held)) => *held += share,
            None => lots.push((lot, share)),
        }
    }

    /// Moves part of one vessel's contents to another.
    pub(super) fn transfer(&mut self, from: usize, to: usize, what: Part) {
        self.drop_dough(from, to);
        let moved = self.split_off(from, &what);
        // Fat and juice that pieces gave off are in a pan that was cooked in, though no lot of the list is.
        let juices = what == Part::Liquid && self.held[from].aim.is_some() && !self.is_empty(from);
        if from == to || (moved.is_empty() && !juices) {
            for (lot, share) in moved {
                self.put_share(from, lot, share);
            }
            return;
        }
        for (lot, share) in moved {
            self.put_share(to, lot, share);
        }
        if what == Part::All {
            let names = std::mem::take(&mut self.held[from].names);
            self.held[to].names.extend(names);
        }
        self.act(from, Doing::Transfer { to, what });
        self.measure(to);
    }

    /// Throws part of a vessel's contents away.
    pub(super) fn discard(&mut self, vessel: usize, what: Part) {
        let juices = what == Part::Liquid && self.held[vessel].aim.is_some() && !self.is_empty(vessel);
        if !self.split_off(vessel, &what).is_empty() || juices {
            self.act(vessel, Doing::Discard(what));
        }
    }

    /// Takes a part out of what a vessel holds.
    fn split_off(&mut self, vessel: usize, what: &Part) -> Vec<(usize, f64)> {
        let solid = |lot: usize| self.is_solid(lot);
        let goes = |lot: usize| match what {
            Part::All => 1.0,
            Part::Liquid => f64::from(!solid(lot)),
            Part::Solids => f64::from(solid(lot)),
            Part::Lots(lots) => f64::from(lots.contains(&self.shaped_with(lot).map_or(lot, |shaped| shaped.main))),
            Part::Share(share) => share.clamp(0.0, 1.0),
        };
        let mut out = Vec::new();
        let mut kept = Vec::new();
        for (lot, share) in &self.held[vessel].lots {
            let gone = share * goes(*lot);
            if gone > NOTHING {
                out.push((*lot, gone));
            }
            if share - gone > NOTHING {
                kept.push((*lot, share - gone));
            }
        }
        self.held[vessel].lots = kept;
        out
    }

    /// Notes how full a vessel is now.
    fn measure(&mut self, vessel: usize) {
        // A litre of food weighs about a kilogram: near enough to choose a pot.
        let litres = self.mass_kg(vessel);
        let used = &mut self.uses[vessel];
        used.most_l = used.most_l.max(litres);
    }

    /// Mass in a vessel as put in, kilograms.
    pub(super) fn mass_kg(&self, vessel: usize) -> f64 {
        self.sum(vessel, |_| true)
    }

    /// Mass of what pours in a vessel, kilograms.
    pub(super) fn liquid_kg(&self, vessel: usize) -> f64 {
        self.sum(vessel, |lot| {
            self.stocked.lots.get(lot).is_some_and(|lot| self.pours(lot))
        })
    }

    /// Whether a lot pours: a liquid, or a tin of fruit in its juice (tomatoes; pulses are drained).
    fn pours(&self, lot: &crate::Lot) -> bool {
        let food = match lot.source {
            crate::Source::Larder(id) => self.shelf.larder.get(id),
            _ => None,
        };
        let in_juice =
            food.is_some_and(|food| food.state == State::Canned && food.composition.water_g.is_some_and(|g| g > 85.0));
        in_juice || super::lots::is_liquid(lot)
    }

    fn sum(&self, vessel: usize, counts: impl Fn(usize) -> bool) -> f64 {
        let Some(held) = self.held.get(vessel) else { return 0.0 };
        let mass = |lot: usize| self.stocked.lots.get(lot).map_or(0.0, |lot| lot.mass.kilograms());
        held.lots
            .iter()
            .filter(|(lot, _)| counts(*lot))
            .map(|(lot, share)| mass(*lot) * share)
            .sum()
    }

    /// Whether a vessel holds anything.
    pub(super) fn is_empty(&self, vessel: usize) -> bool {
        self.held.get(vessel).is_none_or(|held| held.lots.is_empty())
    }

    /// The lots in a vessel.
    pub(super) fn inside(&self, vessel: usize) -> Vec<usize> {
        self.held
            .get(vessel)
            .map_or_else(Vec::new, |held| held.lots.iter().map(|(lot, _)| *lot).collect())
    }

    /// The vessels that hold some of a lot, the one being worked in first, then the newest.
    pub(super) fn where_is(&self, lot: usize) -> Vec<usize> {
        let holds = |vessel: &usize| self.held[*vessel].lots.iter().any(|(other, _)| *other == lot);
        let mut found: Vec<usize> = (0..self.held.len()).rev().filter(holds).collect();
        found.sort_by_key(|vessel| self.here != Some(*vessel));
        found
    }
}
