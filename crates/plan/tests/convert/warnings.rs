//! What is said of the things the method does not solve, each figure worked by hand.

use potwright_measure::Measures::Metric as MetricHome;
use potwright_plan::MeasuresWanted::AsWritten;
use potwright_plan::{Converted, Warning, WarningKind};

use super::{reset, times};

const BRAISE: &str = "Braise\n\nServes 4\n\n1 kg beef shin, cut into pieces\n2 litres water\n30 g plain flour\n2 tsp fine salt\n\
    4 sprigs thyme\n1/4 tsp cayenne\n\n\
    1. Brown the beef in three batches, 6 minutes a batch, in a large pot.\n\
    2. Stir in the flour. Add the water, salt, thyme and cayenne, bring to the boil and simmer, uncovered, for 40 minutes. [4 litre pot]\n\
    3. Leave to cool, then refrigerate overnight.\n";

fn of(done: &Converted, kind: WarningKind) -> &Warning {
    let found = done.warnings.iter().find(|warning| warning.kind == kind);
    found.unwrap_or_else(|| panic!("no {kind:?} in {:#?}", done.warnings))
}

/// Eight times: 8^(-1/3) = ½ and 1/8 of the steam a litre; 8^(1/3) = 2 times the cooling; 3 × 8 = 24 batches of 6 minutes =
/// 2 h 24 min; at least 8 × (1 + 2) = 24 litres in a pot of 4, filled to 2.7–3.2.
#[test]
fn eight_times_as_much() {
    let done = reset(BRAISE, times("8"), AsWritten, MetricHome);
    let steam = of(&done, WarningKind::Evaporation);
    assert_eq!(steam.steps, [1]);
    assert!(
        steam.text.contains("only 50 %") && steam.text.contains("the same pot 13 %"),
        "{}",
        steam.text
    );
    let browning = of(&done, WarningKind::Browning);
    assert!(
        browning.text.contains("3 batches become 24") && browning.text.contains("2 hours 24 minutes"),
        "{}",
        browning.text
    );
    let pot = of(&done, WarningKind::Pot);
    assert!(
        pot.text.contains("the 4-litre pot named takes 2.7 to 3.2"),
        "{}",
        pot.text
    );
    assert!(
        pot.text.contains("about 24 litres") || pot.text.contains("about 25 litres"),
        "{}",
        pot.text
    );
    assert!(of(&done, WarningKind::Cooling).text.contains("about 2 times as long"));
    assert!(of(&done, WarningKind::Heating).text.contains("takes 8 times as long"));
    assert!(of(&done, WarningKind::Thickener).text.contains("plain flour"));
    assert!(
        of(&done, WarningKind::Batch).text.contains("8 times the tested one")
            && of(&done, WarningKind::Batch).text.contains("two batches")
    );
    of(&done, WarningKind::Salt);
    of(&done, WarningKind::Times);
    assert!(
        done.warnings
            .iter()
            .all(|warning| !warning.source.is_empty() && !warning.text.is_empty())
    );
}

/// Four times: herbs 2 + 2 × ½ = 3 times 4 sprigs = 12; red pepper 2 + 2 × ¼ = 2½ times ¼ tsp = ⅝, measured as ½ or ¾ tsp.
#[test]
fn the_trades_rules_are_offered_not_applied() {
    let done = reset(BRAISE, times("4"), AsWritten, MetricHome);
    let text = done.text();
    assert!(
        text.contains("\n16 sprigs thyme\n") && text.contains("\n1 tsp cayenne\n"),
        "{text}"
    );
    let trade: Vec<&str> = done
        .warnings
        .iter()
        .filter(|w| w.kind == WarningKind::Trade)
        .map(|w| w.text.as_str())
        .collect();
    assert_eq!(trade.len(), 2);
    assert!(trade[0].contains("3 times here: ‘12 sprigs thyme’"), "{trade:?}");
    assert!(
        trade[1].contains("2.5 times here") && trade[1].contains("3/4 tsp cayenne"),
        "{trade:?}"
    );
    let twice = reset(BRAISE, times("2"), AsWritten, MetricHome);
    assert!(
        twice.warnings.iter().all(|warning| warning.kind != WarningKind::Trade),
        "up to twice there is nothing to offer"
    );
}

/// Half: 0.5^(-1/3) = 1.26 times the steam a litre in a pot of the same shape, twice in the same pot.
#[test]
fn half_as_much() {
    let done = reset(BRAISE, times("1/2"), AsWritten, MetricHome);
    let steam = &of(&done, WarningKind::Evaporation).text;
    assert!(
        steam.contains("loses 126 %") && steam.contains("the same pot 200 %") && steam.contains("boil down"),
        "{steam}"
    );
    for kind in [
        WarningKind::Browning,
        WarningKind::Cooling,
        WarningKind::Batch,
        WarningKind::Trade,
    ] {
        assert!(done.warnings.iter().all(|warning| warning.kind != kind), "{kind:?}");
    }
}

#[test]
fn a_page_at_its_own_size_is_not_warned_about() {
    let done = reset(BRAISE, potwright_plan::BatchSize::AsWritten, AsWritten, MetricHome);
    assert!(done.warnings.is_empty(), "{:#?}", done.warnings);
    assert!(!done.text().contains("does not solve"));
}

#[test]
fn a_covered_pot_loses_nothing_to_speak_of() {
    let covered = BRAISE.replace("uncovered", "covered");
    let done = reset(&covered, times("8"), AsWritten, MetricHome);
    assert!(
        done.warnings
            .iter()
            .all(|warning| warning.kind != WarningKind::Evaporation),
        "{:#?}",
        done.warnings
    );
}

/// m c ΔT / P: 3 kg as water from 12 to 100 °C on 3500 W × 0.40: 3 × 4180 × 88 / 1400 = 788 s = 13 min; eight times
/// 105 min.
#[test]
fn heating_up_by_the_kitchens_burner() {
    let plain = "Soup\n\nServes 4\n\n3 litres water\na little salt\n\nSalt the water, bring it to the boil in a pot and simmer, covered, for 10 minutes.\n";
    let done = reset(plain, times("8"), AsWritten, MetricHome);
    let text = &of(&done, WarningKind::Heating).text;
    assert!(text.contains("about 1 hour 45 minutes instead of 13 minutes"), "{text}");
}
