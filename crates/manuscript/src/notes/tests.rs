//! Short invented takes and what a listener would note; what each says is plain English, no outside table is needed.

use super::draft;

/// Title and lines of every draft.
fn noted(text: &str) -> Vec<String> {
    let drafts = draft(text).drafts;
    let page = |draft: &super::Draft| {
        let lines: Vec<&str> = draft.lines.iter().map(|line| line.line.as_str()).collect();
        format!("{}: {}", draft.title, lines.join("; "))
    };
    drafts.iter().map(page).collect()
}

#[test]
fn an_amount_said_twice_is_one() {
    let take =
        "onion soup so four hundred grams of onions no I will do six hundred six hundred grams of onions and simmer";
    assert_eq!(noted(take), ["Onion soup: 600 g onions"]);
}

#[test]
fn a_dish_called_done_gives_way_to_the_next() {
    let take = "so its the onion soup first and two onions and fifty grams of butter and that is the soup and now the \
                lamb so for the lamb its six chops and two tablespoons of oil";
    let found = noted(take);
    assert_eq!(found.len(), 2, "{found:?}");
    assert_eq!(found[0], "Onion soup: 2 onions; 50 g butter");
    assert!(
        found[1].starts_with("Lamb: ") && found[1].contains("2 tbsp oil"),
        "{found:?}"
    );
}

#[test]
fn a_reason_takes_no_amount() {
    let take =
        "bean soup so three teaspoons of salt well two and a half because of the capers yes two and a half teaspoons";
    assert_eq!(noted(take), ["Bean soup: 2½ tsp salt"]);
}

#[test]
fn how_a_piece_comes_stays_with_it() {
    let take = "chicken stew so six thighs skin on bone in about one kilo and a litre of stock it has no salt in it until \
                you can push a spoon through";
    assert_eq!(
        noted(take),
        ["Chicken stew: 6 thighs (about 1 kg), skin on, bone in; 1 l stock"]
    );
}

#[test]
fn what_is_told_not_to_do_is_no_step() {
    let take = "bean soup so a pound of beans simmer twenty minutes and warm it dont boil it now hello not yet half an hour \
                wash your hands";
    let page = draft(take).drafts.remove(0).page;
    assert!(page.contains("20 minutes"), "{page}");
    // The queries quote the words; the steps are numbered.
    let mut steps = page
        .lines()
        .filter(|line| line.starts_with(|first: char| first.is_ascii_digit()));
    assert!(
        !steps.any(|step| step.contains("oil") || step.contains("30 minutes")),
        "{page}"
    );
}

#[test]
fn a_sauce_made_before_ends_with_its_telling() {
    let take = "lamb stew so two pounds of lamb oh theres a green sauce goes with it I did that this morning thats a bunch of \
                mint and a tablespoon of capers anyway so two cups of peas go in the pot";
    let draft = draft(take).drafts.remove(0);
    let of = |name: &str| {
        draft
            .lines
            .iter()
            .find(|line| line.line.contains(name))
            .and_then(|line| line.part.clone())
    };
    assert_eq!(of("capers").as_deref(), Some("green sauce"));
    assert_eq!(of("peas"), None);
}
