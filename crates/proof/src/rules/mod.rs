//! The rules. To add one: a file here, its name below in [`ALL`].

use crate::Rule;

mod alcohol_claim;
mod allergen_claim;
mod amount_differs;
mod body_against_cue;
mod boils_away;
mod component_loose;
mod count_and_size;
mod cross_reference;
mod crowded_pan;
mod cue_without_time;
mod curdles;
mod diet_word;
mod divided_sum;
mod firm_or_mushy;
mod firm_pulses;
mod garlic_in_oil;
mod hidden_time;
mod kidney_beans;
mod left_overs;
mod listed_never_used;
mod live_shellfish;
mod long_step;
mod never_brought_back;
mod never_reduces;
mod no_heat_level;
mod no_tested_process;
mod no_vessel;
mod nothing_remaining;
mod out_of_order;
mod oven_not_hot;
mod overcooked_fish;
mod portion_size;
mod raw_starch;
mod reheated_twice;
mod salinity;
mod several_foods;
mod slow_cooling;
mod stated_time;
mod time_without_cue;
mod two_oven_temperatures;
mod unit_slip;
mod unsafe_protein;
mod used_never_listed;
mod vague_amount;
mod vessel_too_small;
mod yield_line;

/// Every rule, in the order of the manual.
pub const ALL: &[Rule] = &[
    listed_never_used::RULE,
    used_never_listed::RULE,
    out_of_order::RULE,
    divided_sum::RULE,
    nothing_remaining::RULE,
    component_loose::RULE,
    amount_differs::RULE,
    yield_line::RULE,
    stated_time::RULE,
    cross_reference::RULE,
    several_foods::RULE,
    time_without_cue::RULE,
    cue_without_time::RULE,
    no_heat_level::RULE,
    no_vessel::RULE,
    vessel_too_small::RULE,
    crowded_pan::RULE,
    oven_not_hot::RULE,
    two_oven_temperatures::RULE,
    vague_amount::RULE,
    unit_slip::RULE,
    count_and_size::RULE,
    hidden_time::RULE,
    never_brought_back::RULE,
    long_step::RULE,
    unsafe_protein::RULE,
    slow_cooling::RULE,
    kidney_beans::RULE,
    live_shellfish::RULE,
    left_overs::RULE,
    no_tested_process::RULE,
    garlic_in_oil::RULE,
    reheated_twice::RULE,
    allergen_claim::RULE,
    diet_word::RULE,
    portion_size::RULE,
    salinity::RULE,
    body_against_cue::RULE,
    firm_or_mushy::RULE,
    firm_pulses::RULE,
    boils_away::RULE,
    never_reduces::RULE,
    curdles::RULE,
    raw_starch::RULE,
    overcooked_fish::RULE,
    alcohol_claim::RULE,
];

/// The rule of this code, in any case.
#[must_use]
pub fn by_code(code: &str) -> Option<&'static Rule> {
    ALL.iter().find(|rule| rule.code.eq_ignore_ascii_case(code))
}
