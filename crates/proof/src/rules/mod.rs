//! The rules. To add one: a file here, its name below in [`ALL`].

use crate::Rule;

mod amount_differs;
mod component_loose;
mod cross_reference;
mod divided_sum;
mod listed_never_used;
mod nothing_remaining;
mod out_of_order;
mod several_foods;
mod stated_time;
mod used_never_listed;
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
];

/// The rule of this code, in any case.
#[must_use]
pub fn by_code(code: &str) -> Option<&'static Rule> {
    ALL.iter().find(|rule| rule.code.eq_ignore_ascii_case(code))
}
