//! Draws of what is not known exactly, and the percentiles of what comes of them.
//!
//! A Latin hypercube: each dimension of [`Draw`] is cut into as many strata of equal probability as there are draws,
//! and every stratum is used once (McKay, Beckman and Conover, Technometrics 21:239, 1979; from memory).

use potwright_pot::Draw;

/// A seeded stream of numbers: splitmix64 (Steele, Lea and Flood, OOPSLA 2014; constants as in its published code).
#[derive(Clone, Debug)]
struct Stream(u64);

impl Stream {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    /// In [0, 1): the top 53 bits.
    fn unit(&mut self) -> f64 {
        (self.next() >> 11) as f64 / 9_007_199_254_740_992.0
    }

    /// A whole number below `end`; the bias of the remainder is below 2⁻⁵⁰ for the few draws taken here.
    fn below(&mut self, end: usize) -> usize {
        (self.next() % end.max(1) as u64) as usize
    }

    /// The numbers from nought to `count` in random order (Fisher and Yates).
    fn order(&mut self, count: usize) -> Vec<usize> {
        let mut order: Vec<usize> = (0..count).collect();
        for last in (1..count).rev() {
            order.swap(last, self.below(last + 1));
        }
        order
    }
}

/// `count` draws for a process of `lots` lots: the same for the same seed on every machine.
pub(crate) fn latin_hypercube(lots: usize, count: usize, seed: u64) -> Vec<Draw> {
    let mut stream = Stream(seed);
    let mut column = || -> Vec<f64> {
        let order = stream.order(count);
        order
            .into_iter()
            .map(|stratum| normal_deviate((stratum as f64 + stream.unit()) / count as f64))
            .collect()
    };
    let shared: [Vec<f64>; 5] = std::array::from_fn(|_| column());
    let of_lots: Vec<Vec<f64>> = (0..lots).map(|_| column()).collect();
    let [evaporation, burner, oven, reading, food] = shared;
    (0..count)
        .map(|i| Draw {
            lots: of_lots.iter().map(|column| column[i]).collect(),
            evaporation: evaporation[i],
            burner: burner[i],
            oven: oven[i],
            reading: reading[i],
            food: food[i],
        })
        .collect()
}

/// The standard normal deviate below which a share `p` of the distribution lies.
///
/// Rational minimax approximation by P. J. Acklam (2000), relative error below 1.15e-9; `p` is held inside
/// (1e-12, 1 − 1e-12).
fn normal_deviate(p: f64) -> f64 {
    const A: [f64; 6] = [
        -3.969_683_028_665_376e1,
        2.209_460_984_245_205e2,
        -2.759_285_104_469_687e2,
        1.383_577_518_672_69e2,
        -3.066_479_806_614_716e1,
        2.506_628_277_459_239,
    ];
    const B: [f64; 6] = [
        -5.447_609_879_822_406e1,
        1.615_858_368_580_409e2,
        -1.556_989_798_598_866e2,
        6.680_131_188_771_972e1,
        -1.328_068_155_288_572e1,
        1.0,
    ];
    const C: [f64; 6] = [
        -7.784_894_002_430_293e-3,
        -3.223_964_580_411_365e-1,
        -2.400_758_277_161_838,
        -2.549_732_539_343_734,
        4.374_664_141_464_968,
        2.938_163_982_698_783,
    ];
    const D: [f64; 5] = [
        7.784_695_709_041_462e-3,
        3.224_671_290_700_398e-1,
        2.445_134_137_142_996,
        3.754_408_661_907_416,
        1.0,
    ];
    const TAIL: f64 = 0.024_25;
    let p = p.clamp(1e-12, 1.0 - 1e-12);
    let tail = |p: f64| {
        let q = (-2.0 * libm::log(p)).sqrt();
        polynomial(&C, q) / polynomial(&D, q)
    };
    if p < TAIL {
        tail(p)
    } else if p > 1.0 - TAIL {
        -tail(1.0 - p)
    } else {
        let q = p - 0.5;
        polynomial(&A, q * q) * q / polynomial(&B, q * q)
    }
}

/// Coefficients from the highest power down.
fn polynomial(coefficients: &[f64], x: f64) -> f64 {
    coefficients.iter().fold(0.0, |sum, c| sum * x + c)
}

/// 5th and 95th percentile, between the two nearest values by straight line; none for no values.
///
/// The value at share p of n sorted values stands at place p·(n − 1), the usual definition of tables and
/// spreadsheets. Values that are not numbers are left out.
pub(crate) fn five_to_ninety_five(values: impl Iterator<Item = f64>) -> Option<(f64, f64)> {
    let mut sorted: Vec<f64> = values.filter(|x| x.is_finite()).collect();
    sorted.sort_by(f64::total_cmp);
    let at = |share: f64| {
        let place = share * (sorted.len().checked_sub(1)? as f64);
        let below = *sorted.get(place.floor() as usize)?;
        let above = *sorted.get(place.ceil() as usize)?;
        Some(below + (above - below) * place.fract())
    };
    Some((at(0.05)?, at(0.95)?))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Percentage points of the normal distribution as any statistical table prints them.
    #[test]
    fn deviates_are_those_of_the_tables() {
        for (p, z) in [
            (0.5, 0.0),
            (0.8413, 0.99982),
            (0.95, 1.644_854),
            (0.975, 1.959_964),
            (0.99, 2.326_348),
            (0.999, 3.090_232),
        ] {
            assert!((normal_deviate(p) - z).abs() < 5e-6, "{p}");
            assert!((normal_deviate(1.0 - p) + z).abs() < 5e-6, "{p}");
        }
    }

    /// Steele's test value: the first output of splitmix64 seeded with nought (published with the reference code).
    #[test]
    fn the_stream_is_splitmix64() {
        assert_eq!(Stream(0).next(), 0xE220_A839_7B1D_CDAF);
    }

    #[test]
    fn every_stratum_is_used_once() {
        let draws = latin_hypercube(2, 20, 7);
        for pick in [(|d: &Draw| d.burner) as fn(&Draw) -> f64, |d| d.food, |d| d.lots[1]] {
            let mut values: Vec<f64> = draws.iter().map(pick).collect();
            values.sort_by(f64::total_cmp);
            for (i, z) in values.iter().enumerate() {
                let (low, high) = (i as f64 / 20.0, (i as f64 + 1.0) / 20.0);
                assert!(normal_deviate(low) <= *z && *z <= normal_deviate(high), "{i}");
            }
        }
        assert_eq!(draws, latin_hypercube(2, 20, 7));
        assert_ne!(draws, latin_hypercube(2, 20, 8));
    }

    /// 0 … 100: place 0.05 · 100 = 5 and 95.
    #[test]
    fn percentiles() {
        let found = five_to_ninety_five((0..=100).rev().map(f64::from));
        assert_eq!(found, Some((5.0, 95.0)));
        assert_eq!(five_to_ninety_five(std::iter::empty()), None);
        assert_eq!(five_to_ninety_five(std::iter::once(3.0)), Some((3.0, 3.0)));
    }
}
