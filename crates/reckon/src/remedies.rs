//! What would cool a pot in time: each remedy is cooked before it is offered, in a kitchen at the cautious end.
//!
//! Tried in this order, and the first that meets both limits is told: iced water; shallow trays in the freezer; iced
//! water and then trays; tubs of a litre in the freezer. A refrigerator alone is never offered: in the published trial
//! chilli failed there in a pan 5 cm deep (Food Protection Trends 33 (2013) 27–31).

use potwright_manuscript::Cover;
use potwright_measure::{Duration, Spread, Temperature};
use potwright_pot::{
    Act, Aim, Cooling, Cue, Doing, Draw, Lasts, Material, Part, Place, Pot, Process, Stretch, Trace, Vessel,
};

use crate::Verdict;
use crate::cooling::judge_cooling;

/// The pot stays in the ice until the rule is met, °C.
const OUT_C: f64 = 5.0;
/// Where it is cool enough to be poured into trays (common practice, no source; 30 to 50).
const POURED_C: f64 = 40.0;
/// Hours a remedy is followed: a little over what the rule allows.
const FOLLOWED_H: f64 = 8.0;
/// Trays of 40 × 30 cm filled 5 cm deep, and round tubs that hold a litre 11 cm wide (common practice, no source).
const TRAY_M2: f64 = 0.12;
const TRAY_DEPTH_M: f64 = 0.05;
const TUB_CM: (f64, f64) = (11.0, 10.5);

/// The kitchen at the cautious end of what is not known: little evaporates, much was put in, foods hold their heat.
/// 1.645 is the end of a 5–95 % range.
#[must_use]
pub(crate) fn cautious_draw(process: &Process) -> Draw {
    const END: f64 = 1.645;
    Draw {
        lots: vec![END; process.lots.len()],
        evaporation: -END,
        food: -END,
        ..Draw::central()
    }
}

/// What is done with a pot that stands to cool.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Remedy {
    Ice,
    Trays,
    Tubs,
    IceThenTrays,
}

impl Remedy {
    const ALL: [Remedy; 4] = [Remedy::Ice, Remedy::Trays, Remedy::IceThenTrays, Remedy::Tubs];

    const fn words(self) -> &'static str {
        match self {
            Remedy::Ice => "Stood in iced water, stirred now and then, until it is at 5 °C",
            Remedy::Trays => {
                "Poured into trays no deeper than 5 cm and stood uncovered in a freezer that keeps its -18 °C"
            }
            Remedy::IceThenTrays => {
                "Stood in iced water first, stirred now and then, and at 40 °C poured into trays no deeper than 5 cm and \
                 stood uncovered in a freezer that keeps its -18 °C"
            }
            Remedy::Tubs => "In open tubs of a litre, apart from each other in a freezer that keeps its -18 °C",
        }
    }
}

/// A sentence for the first remedy that meets the rule, with its hours; else that none does. Nothing where the cooling is
/// no stretch of its own.
pub(crate) fn remedy(
    process: &Process,
    central: &Trace,
    cooling: &Cooling,
    cook: &dyn Fn(&Process) -> Trace,
) -> String {
    let Some(first) = first_unheated(process, cooling) else {
        return String::new();
    };
    let litres = litres_at(central, first, cooling.vessel);
    let iced = matches!(&process.acts[first].doing, Doing::Cook(stretch) if stretch.place == Place::IceBath);
    for remedy in Remedy::ALL {
        if iced && remedy == Remedy::Ice {
            continue;
        }
        let changed = with(process, first, remedy, litres);
        let trace = cook(&changed);
        let found = trace.coolings.iter().rfind(|found| found.act >= first);
        let Some(found) = found else { continue };
        let verdict = judge_cooling(found.stage_one_h, found.total_h, found.followed_h);
        if let (Verdict::Meets, Some(one_h), Some(total_h)) = (verdict, found.stage_one_h, found.total_h) {
            return format!(" {}, it takes at most {one_h:.1} h and {total_h:.1} h.", remedy.words());
        }
    }
    " Neither iced water nor trays 5 cm deep in the freezer do: cook less at a time.".to_owned()
}

/// The first of the unheated stretches that end with the cooling's act.
fn first_unheated(process: &Process, cooling: &Cooling) -> Option<usize> {
    let stands = |act: &Act| match &act.doing {
        Doing::Cook(stretch) => act.vessel == cooling.vessel && stretch.aim == Aim::Off,
        _ => false,
    };
    let end = cooling.act.min(process.acts.len().checked_sub(1)?);
    // The dish may be served or heated in the act that ends it.
    let last = process.acts[..=end].iter().rposition(stands)?;
    let unheated = process.acts[..=last].iter().rev().take_while(|act| stands(act)).count();
    (last + 1).checked_sub(unheated)
}

/// The process up to the cooling, and then the remedy instead of what the page does.
fn with(process: &Process, first: usize, remedy: Remedy, litres: f64) -> Process {
    let mut changed = process.clone();
    let template = changed.acts[first].clone();
    changed.acts.truncate(first);
    let act = |vessel: usize, doing: Doing| Act {
        vessel,
        doing,
        operation: None,
        span: None,
        hands: Duration::ZERO,
        meanwhile: false,
    };
    let pot = template.vessel;
    if matches!(remedy, Remedy::Ice | Remedy::IceThenTrays) {
        let until = Lasts {
            minutes: None,
            cue: Some(Cue::Reaches(Temperature::from_celsius(match remedy {
                Remedy::IceThenTrays => POURED_C,
                _ => OUT_C,
            }))),
        };
        changed.acts.push(act(pot, stands(Place::IceBath, until)));
    }
    let followed = Lasts {
        minutes: Some(Spread::exact(60.0 * FOLLOWED_H)),
        cue: None,
    };
    match remedy {
        Remedy::Ice => changed.acts.push(act(pot, stands(Place::Refrigerator, followed))),
        Remedy::Trays | Remedy::IceThenTrays | Remedy::Tubs => {
            let (vessel, holds_l) = match remedy {
                Remedy::Tubs => (Pot::new("tub", TUB_CM.0, TUB_CM.1, Material::Steel, 0.0), 1.0),
                _ => {
                    let wide_cm = 100.0 * libm::sqrt(4.0 * TRAY_M2 / std::f64::consts::PI);
                    let tray = Pot::new("tray", wide_cm, 6.0, Material::Steel, 0.8);
                    (tray, 1000.0 * TRAY_M2 * TRAY_DEPTH_M)
                }
            };
            let to = changed.vessels.len();
            changed.vessels.push(Vessel {
                name: vessel.name.clone(),
                pot: Some(vessel),
            });
            let share = (holds_l / litres.max(0.1)).clamp(0.0, 1.0);
            let what = if share < 1.0 { Part::Share(share) } else { Part::All };
            changed.acts.push(act(pot, Doing::Transfer { to, what }));
            changed.acts.push(act(to, stands(Place::Freezer, followed)));
        }
    }
    changed
}

/// Litres in a vessel when an act begins.
fn litres_at(trace: &Trace, act: usize, vessel: usize) -> f64 {
    let start_s = trace.acts.get(act).map_or(0.0, |times| times.start_s);
    let until_then = trace
        .samples
        .iter()
        .take_while(|sample| sample.time_s <= start_s + 1e-6);
    let of_it = until_then.filter_map(|sample| sample.vessels.iter().find(|found| found.vessel == vessel));
    of_it.last().map_or(0.0, |found| found.volume_l)
}

fn stands(place: Place, lasts: Lasts) -> Doing {
    Doing::Cook(Stretch {
        place,
        aim: Aim::Off,
        lasts,
        cover: Cover::Off,
        assumed: false,
        batches: 1,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing;
    use potwright_pot::Kitchen;
    use potwright_pot::{Stuff, cook};

    /// So many kilograms of a food that is thick (a twentieth of it gelatinised starch) or clear, simmered in a pot and
    /// stood somewhere for half a day.
    fn pot_of(kg: f64, starch: f64, pot: Pot, place: Place) -> Process {
        let mut lot = testing::lot("stew", potwright_larder::Kind::Other, kg);
        lot.matter = testing::matter(&[
            (Stuff::Water, (1.0 - starch) * kg),
            (Stuff::GelatinisedStarch, starch * kg),
        ]);
        let mut process = testing::process(&[lot]);
        process.vessels[0].pot = Some(pot);
        let followed = Lasts {
            minutes: Some(Spread::exact(720.0)),
            cue: None,
        };
        process.acts = vec![
            testing::add(0, &[0]),
            testing::cook(0, Aim::Simmer, 10.0),
            testing::act(0, stands(place, followed)),
            testing::act(0, Doing::Serve),
        ];
        process
    }

    fn offered(process: &Process) -> (Trace, String) {
        let kitchen = Kitchen::default();
        let trace = cook(process, &kitchen, &Draw::central());
        let cooling = *trace.coolings.last().unwrap();
        assert_eq!(
            judge_cooling(cooling.stage_one_h, cooling.total_h, cooling.followed_h),
            Verdict::Fails
        );
        let says = remedy(process, &trace, &cooling, &|changed| {
            cook(changed, &kitchen, &cautious_draw(changed))
        });
        (trace, says)
    }

    fn stockpot() -> Pot {
        Pot::new("stockpot", 26.0, 24.0, Material::Steel, 2.5)
    }

    /// Ten litres of clear stock in the refrigerator are too slow; iced water does.
    #[test]
    fn iced_water_for_a_clear_stock() {
        let (_, says) = offered(&pot_of(10.0, 0.0, stockpot(), Place::Refrigerator));
        assert!(says.contains("iced water, stirred"), "{says}");
    }

    /// Every remedy that is offered was cooked and met both limits: the sentence's own hours.
    #[test]
    fn what_is_offered_meets_the_rule() {
        for (kg, starch, place) in [
            (10.0, 0.0, Place::Counter),
            (10.0, 0.05, Place::Refrigerator),
            (3.0, 0.05, Place::Refrigerator),
            (4.0, 0.0, Place::Counter),
        ] {
            let (_, says) = offered(&pot_of(kg, starch, stockpot(), place));
            println!("{kg} kg, {starch}: {says}");
            let hours: Vec<f64> = says.split(' ').filter_map(|word| word.parse().ok()).collect();
            if let [.., one_h, total_h] = hours[..]
                && says.contains("at most")
            {
                assert!(one_h <= 2.0 && total_h <= 6.0, "{says}");
            } else {
                assert!(says.contains("cook less"), "{says}");
            }
        }
    }

    /// No remedy is 5 cm in a refrigerator, which failed in the published trial: where trays are meant the freezer is said.
    #[test]
    fn trays_are_for_the_freezer() {
        for remedy in Remedy::ALL {
            let words = remedy.words();
            assert!(!words.contains("trays") || words.contains("freezer"), "{words}");
            let process = pot_of(5.0, 0.05, stockpot(), Place::Counter);
            let changed = with(&process, 2, remedy, 5.0);
            let trays = changed.acts.iter().filter(|act| act.vessel >= process.vessels.len());
            for act in trays {
                assert!(matches!(&act.doing, Doing::Cook(stretch) if stretch.place == Place::Freezer));
            }
        }
    }

    /// A pot that stands in iced water already is not told to stand there.
    #[test]
    fn iced_already() {
        let mut process = pot_of(
            30.0,
            0.0,
            Pot::new("cauldron", 36.0, 32.0, Material::Steel, 6.0),
            Place::IceBath,
        );
        if let Doing::Cook(stretch) = &mut process.acts[2].doing {
            stretch.lasts.minutes = Some(Spread::exact(600.0));
        }
        let trace = cook(&process, &Kitchen::default(), &Draw::central());
        let slow = Cooling {
            vessel: 0,
            act: 2,
            stage_one_h: Some(3.0),
            total_h: None,
            end_c: 10.0,
            followed_h: 10.0,
            acid: 0.0,
        };
        let says = remedy(&process, &trace, &slow, &|changed| {
            if let Doing::Cook(stretch) = &changed.acts[2].doing {
                assert!(
                    stretch.place != Place::IceBath || changed.acts.len() > 4,
                    "ice alone again"
                );
            }
            cook(changed, &Kitchen::default(), &Draw::central())
        });
        assert!(!says.contains("refrigerator"), "{says}");
    }

    /// Nothing is tried where the cooling is no stretch of its own.
    #[test]
    fn no_stretch_no_remedy() {
        let process = testing::process(&[]);
        let slow = Cooling {
            vessel: 0,
            act: 0,
            stage_one_h: None,
            total_h: None,
            end_c: 40.0,
            followed_h: 4.0,
            acid: 0.0,
        };
        let says = remedy(&process, &testing::trace(&process), &slow, &|_| {
            panic!("nothing is tried")
        });
        assert_eq!(says, "");
    }
}
