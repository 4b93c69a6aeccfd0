//! What can only be said once the whole method is read.

use crate::{Operation, Target, Verb};

/// A food that is taken out is kept when something is done with it later, else it is thrown away.
pub(super) fn settle(operations: &mut [Operation]) {
    for at in 0..operations.len() {
        let (before, after) = operations.split_at_mut(at + 1);
        let Some(operation) = before.last_mut() else { continue };
        if operation.verb != Verb::Remove || operation.foods.iter().any(|food| food.target == Target::Pot) {
            continue;
        }
        for food in operation.foods.clone() {
            let stays = |later: &&Operation| !matches!(later.verb, Verb::Remove | Verb::Discard | Verb::Skim);
            let again = after
                .iter()
                .take(super::NEAR)
                .filter(stays)
                .any(|later| later.foods.iter().any(|other| other.target == food.target));
            let list = if again {
                &mut operation.keep
            } else {
                &mut operation.discard
            };
            if !list.iter().any(|held| held.target == food.target) {
                list.push(food);
            }
        }
    }
}
