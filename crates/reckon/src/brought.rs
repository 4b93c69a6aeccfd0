//! Every food that whoever eats the dish may meet: what is cooked, what may be left out, what may be used instead.

use potwright_larder::Food;
use potwright_pot::{Doubt, Made, Process, Source};

use crate::foods::Foods;

/// A food that is or may be in the dish.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Brought {
    /// Index into the process's lots: the lot itself, or the one it may stand for.
    pub(crate) lot: usize,
    pub(crate) source: Source,
    /// Why the source is not sure, if it is not.
    pub(crate) doubt: Option<Doubt>,
    pub(crate) name: String,
    /// When it is there, if not always: 'if used instead of butter', 'optional'.
    pub(crate) when: Option<String>,
}

impl Brought {
    /// The name with when it is there: `double cream (optional)`.
    pub(crate) fn told(&self) -> String {
        self.told_with(None)
    }

    /// The same with one more remark in the brackets.
    pub(crate) fn told_with(&self, remark: Option<&str>) -> String {
        let remarks: Vec<&str> = self.when.as_deref().into_iter().chain(remark).collect();
        if remarks.is_empty() {
            return self.name.clone();
        }
        format!("{} ({})", self.name, remarks.join("; "))
    }
}

/// Everything that is or may be in a dish, lots first, in the order of the process.
pub(crate) fn brought(process: &Process) -> Vec<Brought> {
    let own = process.lots.iter().enumerate().map(|(index, lot)| Brought {
        lot: index,
        source: lot.source,
        doubt: lot.doubt.clone(),
        name: lot.name.clone(),
        when: lot.optional.then(|| "optional".to_owned()),
    });
    let others = process.alternatives.iter().map(|other| {
        let first = process.lots.get(other.lot).map_or("", |lot| lot.name.as_str());
        Brought {
            lot: other.lot,
            source: other.source,
            doubt: other.doubt.clone(),
            name: other.name.clone(),
            when: Some(format!("if used instead of {first}")),
        }
    });
    own.chain(others).collect()
}

/// What is known of a source.
pub(crate) enum Of<'a> {
    Food(&'a Food),
    Made(&'a Made),
    Unknown,
}

/// What a source stands for.
pub(crate) fn of<'a>(source: Source, made: &'a [Made], foods: &'a dyn Foods) -> Of<'a> {
    match source {
        Source::Larder(id) => foods.food(id).map_or(Of::Unknown, Of::Food),
        Source::Made(index) => made.get(index).map_or(Of::Unknown, Of::Made),
        Source::Unknown => Of::Unknown,
    }
}
