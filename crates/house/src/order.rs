//! Which dish uses which, and in what order they can be cooked.

use potwright_manuscript::{Change, Recipe};
use potwright_pot::names_dish;

/// For every dish the dishes its list names, each once, longest title first, so that the fullest name wins where
/// several fit. A dish never uses itself: what bears its own name on its list is bought.
pub(crate) fn uses(recipes: &[Recipe]) -> Vec<Vec<usize>> {
    let titles: Vec<String> = recipes.iter().map(title).collect();
    recipes
        .iter()
        .enumerate()
        .map(|(dish, recipe)| used_by(recipe, Some(dish), &titles))
        .collect()
}

/// The dishes of these titles that a recipe's list, its second choices or its variations name; `own` is the recipe's
/// own index, if it is one of them.
pub(crate) fn used_by(recipe: &Recipe, own: Option<usize>, titles: &[String]) -> Vec<usize> {
    let changes = recipe.variations.iter().flat_map(|variation| &variation.changes);
    let brought = changes.filter_map(|change| match change {
        Change::Swap { with, .. } | Change::Add(with) => Some(&**with),
        Change::LeaveOut(_) => None,
    });
    let names = recipe.ingredients.iter().chain(brought).flat_map(|line| {
        let others = line.alternatives.iter().map(|other| &other.item);
        line.items.iter().chain(others).map(|item| item.name.as_str())
    });
    let mut used: Vec<usize> = names.filter_map(|name| named(name, own, titles)).collect();
    used.sort_by_key(|dish| (std::cmp::Reverse(titles.get(*dish).map_or(0, String::len)), *dish));
    used.dedup();
    used
}

/// The dish a name names; the longest title of those that fit.
fn named(name: &str, own: Option<usize>, titles: &[String]) -> Option<usize> {
    let fitting = titles
        .iter()
        .enumerate()
        .filter(|(dish, title)| Some(*dish) != own && names_dish(title, name));
    fitting
        .max_by_key(|(dish, title)| (title.len(), std::cmp::Reverse(*dish)))
        .map(|(dish, _)| dish)
}

/// The title of a recipe; empty when it has none.
pub(crate) fn title(recipe: &Recipe) -> String {
    recipe.title.as_ref().map_or(String::new(), |words| words.text.clone())
}

/// The dishes in rounds: those of a round use only dishes of earlier rounds. Dishes in a circle, or that use one in a
/// circle, are in no round.
pub(crate) fn rounds(uses: &[Vec<usize>]) -> Vec<Vec<usize>> {
    let mut done = vec![false; uses.len()];
    let mut rounds = Vec::new();
    loop {
        let ready = |dish: &usize| !done[*dish] && uses[*dish].iter().all(|used| done.get(*used) == Some(&true));
        let round: Vec<usize> = (0..uses.len()).filter(ready).collect();
        if round.is_empty() {
            return rounds;
        }
        for dish in &round {
            done[*dish] = true;
        }
        rounds.push(round);
    }
}

/// A circle that a dish is in or leads into, each dish using the next; none when it can be cooked.
pub(crate) fn circle(dish: usize, uses: &[Vec<usize>]) -> Option<Vec<usize>> {
    walk(dish, uses, &mut Vec::new(), &mut vec![false; uses.len()])
}

fn walk(dish: usize, uses: &[Vec<usize>], path: &mut Vec<usize>, clear: &mut [bool]) -> Option<Vec<usize>> {
    if let Some(at) = path.iter().position(|other| *other == dish) {
        return Some(path[at..].to_vec());
    }
    if clear.get(dish).copied().unwrap_or(true) {
        return None;
    }
    path.push(dish);
    let found = uses
        .get(dish)
        .into_iter()
        .flatten()
        .find_map(|used| walk(*used, uses, path, clear));
    path.pop();
    clear[dish] = true;
    found
}

#[cfg(test)]
mod tests {
    use super::*;
    use potwright_manuscript::read;

    fn recipes(pages: &[&str]) -> Vec<Recipe> {
        pages.iter().map(|page| read(page)).collect()
    }

    #[test]
    fn a_list_that_names_a_dish_uses_it() {
        let pages = [
            "Beef stew\n\n500 g beef\n1 litre brown beef stock\n\nSimmer the beef in the stock for 2 hours.\n",
            "Stock\n\n2 kg bones\n3 litres water\n\nSimmer the bones in the water for 8 hours.\n",
            "Brown beef stock\n\n2 kg bones\n3 litres water\n\nSimmer the bones in the water for 8 hours.\n",
        ];
        assert_eq!(uses(&recipes(&pages)), [vec![2], vec![], vec![]]);
    }

    #[test]
    fn a_dish_does_not_use_itself() {
        let page = "Chicken stock\n\n1 litre chicken stock\n1 chicken\n\nSimmer the chicken in the stock.\n";
        assert_eq!(uses(&recipes(&[page])), [Vec::<usize>::new()]);
    }

    #[test]
    fn rounds_follow_the_uses() {
        let uses = vec![vec![1, 2], vec![2], vec![], vec![]];
        assert_eq!(rounds(&uses), [vec![2, 3], vec![1], vec![0]]);
        assert_eq!(circle(0, &uses), None);
    }

    #[test]
    fn a_circle_is_named_and_keeps_no_one_else_from_cooking() {
        let uses = vec![vec![1], vec![2], vec![1], vec![]];
        assert_eq!(rounds(&uses), [vec![3]]);
        assert_eq!(circle(0, &uses), Some(vec![1, 2]));
        assert_eq!(circle(2, &uses), Some(vec![2, 1]));
        assert_eq!(circle(3, &uses), None);
    }
}
