//! What spice traders say of herbs and red pepper in larger batches. Offered beside an amount, never applied.

use potwright_measure::Exact;

/// What grows slower than the batch.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Seasoning {
    /// Herbs, fresh or dried.
    Herb,
    /// Ground red pepper: cayenne, chilli flakes.
    RedPepper,
}

/// By how much the amount is multiplied for a batch of `factor` times: twice for twice, then half of the original for
/// each further multiple of a herb, a quarter for red pepper. Other spices and salt go with the batch.
///
/// Up to twice it is the factor itself. `None` beyond exact numbers.
///
/// Source: a spice-trade handbook's page on larger batches (seen); it gives whole multiples only, parts of a multiple
/// are our own reading.
#[must_use]
pub fn amount_factor(seasoning: Seasoning, factor: Exact) -> Option<Exact> {
    let two = Exact::whole(2);
    if factor <= two {
        return Some(factor);
    }
    let each = match seasoning {
        Seasoning::Herb => Exact::ratio(1, 2)?,
        Seasoning::RedPepper => Exact::ratio(1, 4)?,
    };
    two.checked_add(factor.checked_sub(two)?.checked_mul(each)?)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The rule's own words worked out by hand: 2; 2 + ½; 2 + 2 × ½ … and 2; 2 + ¼; 2 + 2 × ¼ …
    #[test]
    fn whole_multiples_by_the_rule() {
        for (batch, herb, red_pepper) in [
            ("1.5", "1.5", "1.5"),
            ("2", "2", "2"),
            ("3", "2.5", "2.25"),
            ("4", "3", "2.5"),
            ("5", "3.5", "2.75"),
        ] {
            let factor = batch.parse().unwrap();
            assert_eq!(amount_factor(Seasoning::Herb, factor), herb.parse().ok(), "{batch}");
            assert_eq!(
                amount_factor(Seasoning::RedPepper, factor),
                red_pepper.parse().ok(),
                "{batch}"
            );
        }
    }
}
