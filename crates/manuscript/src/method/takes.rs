//! What kinds of work the verbs are, so far as reading has to know it.

use crate::Verb;

/// Heat works on what is in the vessel.
pub(super) fn cooks(verb: Verb) -> bool {
    matches!(
        verb,
        Verb::Melt
            | Verb::Render
            | Verb::Heat
            | Verb::Sweat
            | Verb::Saute
            | Verb::Fry
            | Verb::Brown
            | Verb::Boil
            | Verb::Parboil
            | Verb::Simmer
            | Verb::Steam
            | Verb::Poach
            | Verb::Braise
            | Verb::Bake
            | Verb::Roast
            | Verb::Broil
            | Verb::Toast
            | Verb::Scald
            | Verb::Reduce
            | Verb::Thicken
            | Verb::Reheat
            | Verb::KeepHot
            | Verb::Deglaze
    )
}

/// Work in the oven, whose setting it inherits.
pub(super) fn in_oven(verb: Verb) -> bool {
    matches!(verb, Verb::Bake | Verb::Roast | Verb::Braise)
}

/// What is named goes somewhere.
pub(super) fn places(verb: Verb) -> bool {
    matches!(
        verb,
        Verb::Add
            | Verb::Pour
            | Verb::Return
            | Verb::Stir
            | Verb::Season
            | Verb::Thicken
            | Verb::Dredge
            | Verb::Garnish
            | Verb::Spread
            | Verb::Serve
            | Verb::Deglaze
            | Verb::Dilute
            | Verb::Mix
            | Verb::Whisk
            | Verb::Beat
            | Verb::Soak
            | Verb::CurdleGuard
    )
}

/// 'In', 'on' and 'over' right after it belong to it: 'stir in', 'pour over'.
pub(super) fn puts(verb: Verb) -> bool {
    matches!(
        verb,
        Verb::Add
            | Verb::Pour
            | Verb::Stir
            | Verb::Whisk
            | Verb::Beat
            | Verb::Mix
            | Verb::Garnish
            | Verb::Return
            | Verb::PickOver
    )
}

/// A time that is said with it is that of the cooking which follows.
pub(super) fn takes_no_time(verb: Verb) -> bool {
    matches!(
        verb,
        Verb::Add
            | Verb::Pour
            | Verb::Stir
            | Verb::Return
            | Verb::Season
            | Verb::Cover
            | Verb::Uncover
            | Verb::SetAside
            | Verb::Dilute
    )
}

/// Work of the hands on foods, in or out of the pot.
pub(super) fn by_hand(verb: Verb) -> bool {
    matches!(
        verb,
        Verb::Wash
            | Verb::PickOver
            | Verb::Peel
            | Verb::Cut
            | Verb::Grind
            | Verb::Soak
            | Verb::Drain
            | Verb::Shape
            | Verb::Dredge
            | Verb::Remove
            | Verb::SetAside
            | Verb::Discard
            | Verb::Return
            | Verb::Add
            | Verb::Turn
            | Verb::Spread
            | Verb::Parboil
            | Verb::Freeze
            | Verb::Chill
            | Verb::Cool
    )
}

/// It speaks of what is in the vessel when it names nothing, whatever is in hand.
pub(super) fn of_the_pot(verb: Verb) -> bool {
    matches!(
        verb,
        Verb::Strain
            | Verb::Skim
            | Verb::Reduce
            | Verb::Thicken
            | Verb::Uncover
            | Verb::Serve
            | Verb::Deglaze
            | Verb::Boil
            | Verb::RubThroughSieve
            | Verb::Repeat
            | Verb::Reheat
            | Verb::Stir
            | Verb::Dilute
    )
}

/// What stands after 'in' is used up in it: 'fry in butter', 'boil in water', 'toss in flour'.
pub(super) fn takes_in(verb: Verb) -> bool {
    cooks(verb) || places(verb) || verb == Verb::Parboil
}

/// What stands after 'over' has a part in it: 'pour over the croutons', 'sprinkle salt over the meat'.
pub(super) fn takes_over(verb: Verb) -> bool {
    matches!(
        verb,
        Verb::Pour
            | Verb::Strain
            | Verb::Spread
            | Verb::Serve
            | Verb::Garnish
            | Verb::Baste
            | Verb::Season
            | Verb::Dredge
    )
}

/// Without an object, what stands after 'with' is what goes in.
pub(super) fn brings(verb: Verb) -> bool {
    matches!(
        verb,
        Verb::Add
            | Verb::Pour
            | Verb::Thicken
            | Verb::Garnish
            | Verb::Stir
            | Verb::Deglaze
            | Verb::Spread
            | Verb::Dilute
    )
}
