//! What heat leaves of vitamins: published retention factors, by kind of food and what was done to it.
//!
//! [`Matter`] carries vitamins undiminished. Minerals are not destroyed by heat; what their factors express is what
//! goes into liquid that is thrown away, which the mass balance already follows, except where the table counts a
//! loss with the liquid eaten (pulses): that is taken as printed.

use potwright_larder::Kind;
use potwright_pot::{Matter, Nutrient, Process, ServedPieces, Source, Trace};

use crate::reading::{lot_kg, lot_matter};
use crate::table::{Row, Table, rows};
use crate::whereabouts::{Heat, Whereabouts};

static TABLE: Table = Table::of(include_str!("../data/retention.tsv"));

/// The share of each nutrient that is left, 0–1, in the order of [`Nutrient::ALL`].
pub(crate) type Kept = [f64; Nutrient::ALL.len()];

const ALL: Kept = [1.0; Nutrient::ALL.len()];

/// The shares kept by each lot of a process, judged by what the central run did to it.
pub(crate) fn by_lot(process: &Process, trace: &Trace, places: &Whereabouts) -> Vec<Kept> {
    process
        .lots
        .iter()
        .enumerate()
        .map(|(index, lot)| {
            let kind = match lot.source {
                Source::Made(_) => None,
                Source::Larder(_) | Source::Unknown => Some(lot.kind),
            };
            kept(kind, places.heat(process, trace, index))
        })
        .collect()
}

/// The dish's nutrients after loss by heat.
pub(crate) fn after_heat(process: &Process, trace: &Trace, factors: &[Kept]) -> Kept {
    let put_in = |lot| lot_matter(process, lot, lot_kg(process, trace, lot));
    let put_in: Vec<Matter> = (0..factors.len()).map(put_in).collect();
    left(&put_in, &trace.served_pieces, &trace.served_liquid, factors)
}

/// What is left in pieces and liquid of the nutrients put in, lot by lot.
///
/// Pieces keep by their own lot's factors. What is in the liquid came out of all lots: each counts with what it
/// brought and no longer holds in its pieces.
pub(crate) fn left(put_in: &[Matter], served: &[ServedPieces], liquid: &Matter, factors: &[Kept]) -> Kept {
    let mut brought = ALL.map(|_| 0.0);
    let mut left = brought;
    let mut dish = brought;
    let in_pieces = |lot: usize| served.iter().filter(move |pieces| pieces.lot == lot);
    for (lot, (put_in, kept)) in put_in.iter().zip(factors).enumerate() {
        for (n, share) in kept.iter().enumerate() {
            let held: f64 = in_pieces(lot).map(|pieces| pieces.matter.nutrients[n]).sum();
            let given = (put_in.nutrients[n] - held).max(0.0);
            brought[n] += given;
            left[n] += given * share;
            dish[n] += held * share;
        }
    }
    for n in 0..dish.len() {
        let share = if brought[n] > 0.0 { left[n] / brought[n] } else { 1.0 };
        dish[n] += liquid.nutrients[n] * share;
    }
    dish
}

/// A finished dish with its nutrients as heat has left them.
pub(crate) fn with_nutrients(matter: &Matter, nutrients: &Kept) -> Matter {
    Matter {
        nutrients: *nutrients,
        ..*matter
    }
}

/// By kind of food; none for a dish that was cooked before.
fn kept(kind: Option<Kind>, heat: Heat) -> Kept {
    let (method, minutes) = if heat.wet_min > 0.0 {
        ("boiled", heat.wet_min)
    } else if heat.baked_min > 0.0 {
        ("baked", heat.baked_min)
    } else if heat.fried_min > 0.0 {
        ("fried", heat.fried_min)
    } else {
        return ALL;
    };
    let holds = |row: &Row<'_>| {
        let of_this_kind = match kind {
            None => row.text(0) == "made",
            Some(kind) => row.word(0) == Some(kind),
        };
        of_this_kind && row.text(1) == method && row.number(2).is_some_and(|from| minutes >= from)
    };
    // Rows of one kind and method stand in the order of their minutes: the last that holds is the one.
    let Some(row) = rows(&TABLE).filter(holds).last() else {
        return ALL;
    };
    let mut kept = ALL;
    for (column, nutrient) in [
        (3, Nutrient::CalciumMg),
        (4, Nutrient::IronMg),
        (5, Nutrient::PotassiumMg),
        (6, Nutrient::VitaminAUg),
        (7, Nutrient::VitaminCMg),
    ] {
        kept[nutrient as usize] = row.number(column).map_or(1.0, |percent| percent / 100.0);
    }
    kept
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing;
    use potwright_pot::Aim;

    fn boiled(minutes: f64) -> Heat {
        Heat {
            wet_min: minutes,
            ..Heat::default()
        }
    }

    /// USDA retention factors, Release 6: codes 3456 (roots, water used): vitamin C 75, vitamin A 90; 502, 522 and
    /// 542 (pulses by time): vitamin C 70, potassium 80, 75, 70; 2153 (milk, an hour): vitamin C 45.
    #[test]
    fn rows_of_the_table() {
        let c = |kept: Kept| kept[Nutrient::VitaminCMg as usize];
        let k = |kept: Kept| kept[Nutrient::PotassiumMg as usize];
        assert_eq!(c(kept(Some(Kind::Root), boiled(40.0))), 0.75);
        assert_eq!(
            kept(Some(Kind::Root), boiled(40.0))[Nutrient::VitaminAUg as usize],
            0.90
        );
        assert_eq!(k(kept(Some(Kind::Pulse), boiled(18.0))), 0.80);
        assert_eq!(k(kept(Some(Kind::Pulse), boiled(60.0))), 0.75);
        assert_eq!(k(kept(Some(Kind::Pulse), boiled(130.0))), 0.70);
        assert_eq!(c(kept(Some(Kind::Milk), boiled(60.0))), 0.45);
        assert_eq!(kept(Some(Kind::Root), Heat::default()), ALL, "raw keeps all");
        assert_eq!(kept(Some(Kind::Salt), boiled(60.0)), ALL, "not in the table");
    }

    #[test]
    fn every_kind_of_the_table_is_a_kind_of_food() {
        for row in rows(&TABLE) {
            assert!(
                row.text(0) == "made" || row.word::<Kind>(0).is_some(),
                "{}",
                row.text(0)
            );
        }
    }

    /// Carrots with 100 mg of vitamin C boiled in stock: 60 mg served in the pieces, 40 in the liquid, all at 75 %;
    /// parsley with 20 mg stirred in off the heat keeps all: (60 + 40) · 0.75 + 20 = 95 mg.
    #[test]
    fn liquid_and_pieces_keep_by_where_they_came_from() {
        let vitamin = Nutrient::VitaminCMg as usize;
        let mut carrot = testing::piece_lot("carrot", Kind::Root, 1.0);
        carrot.matter.nutrients[vitamin] = 100.0;
        let mut parsley = testing::lot("parsley", Kind::Herb, 0.1);
        parsley.matter.nutrients[vitamin] = 20.0;
        let mut process = testing::process(&[carrot, parsley]);
        process.acts = vec![
            testing::add(0, &[0]),
            testing::cook(0, Aim::Simmer, 30.0),
            testing::add(0, &[1]),
        ];
        let mut trace = testing::trace(&process);
        let mut matter = testing::matter(&[(potwright_pot::Stuff::Water, 1.0)]);
        matter.nutrients[vitamin] = 60.0;
        trace.served_pieces = vec![ServedPieces {
            lot: 0,
            matter,
            inedible_kg: 0.0,
            centre_c: 90.0,
        }];
        trace.served_liquid.nutrients[vitamin] = 60.0;
        let places = Whereabouts::of(&process);
        let dish = after_heat(&process, &trace, &by_lot(&process, &trace, &places));
        assert!((dish[vitamin] - 95.0).abs() < 1e-9, "{}", dish[vitamin]);
    }
}
