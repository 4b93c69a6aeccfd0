//! Draws of what is not known exactly, and the percentiles of what comes of them.
//!
//! Two designs. *Even* draws cover the unknowns far more evenly than chance does: those that all foods share lie on a
//! shifted lattice, the masses of the lots on a Latin hypercube. *Independent* draws are plain chance; they are slow to
//! settle, and prove the even ones. Which design and how many of its draws a dish needs is worked out by
//! `cargo xtask prove spread`.

use potwright_pot::Draw;

/// Runs that the spread of every figure is taken from, unless asked otherwise. `docs/figures/spread.md` shows what they
/// leave open.
pub const DRAWS: usize = 128;

/// How draws are chosen.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Design {
    /// Evenly spread over all that is not known.
    Even,
    /// Each by itself, by chance alone.
    Independent,
}

impl Design {
    /// `count` draws for a process of `lots` lots: the same for the same seed on every machine.
    #[must_use]
    pub fn draws(self, lots: usize, count: usize, seed: u64) -> Vec<Draw> {
        match self {
            Design::Even => even(lots, count, seed),
            Design::Independent => independent(lots, count, seed),
        }
    }
}

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

/// Unknowns that all foods of a process share, in the order of [`draw`].
const SHARED: usize = 5;

/// A draw from shares of probability: those of the shared unknowns, then the lots'.
fn draw(shared: [f64; SHARED], lots: impl Iterator<Item = f64>) -> Draw {
    let [evaporation, burner, oven, reading, food] = shared.map(normal_deviate);
    Draw {
        lots: lots.map(normal_deviate).collect(),
        evaporation,
        burner,
        oven,
        reading,
        food,
    }
}

/// Plain chance.
fn independent(lots: usize, count: usize, seed: u64) -> Vec<Draw> {
    let mut stream = Stream(seed);
    let mut one = || {
        let shared = std::array::from_fn(|_| stream.unit());
        draw(shared, (0..lots).map(|_| stream.unit()))
    };
    (0..count).map(|_| one()).collect()
}

/// The shared unknowns on a rank-one lattice, point i at {i·z/n + Δ} with a random shift Δ (Cranley and Patterson, SIAM
/// J. Numer. Anal. 13:904, 1976; from memory); the lots, whose parts in a figure add up, on a Latin hypercube: each is
/// cut into as many strata of equal probability as there are draws, and every stratum is used once (McKay, Beckman and
/// Conover, Technometrics 21:239, 1979; from memory).
fn even(lots: usize, count: usize, seed: u64) -> Vec<Draw> {
    let mut stream = Stream(seed);
    let generator = lattice(count);
    let shift: [f64; SHARED] = std::array::from_fn(|_| stream.unit());
    let part = 1.0 / count.max(1) as f64;
    let columns: Vec<Vec<f64>> = (0..lots)
        .map(|_| {
            let order = stream.order(count);
            order
                .into_iter()
                .map(|stratum| (stratum as f64 + stream.unit()) * part)
                .collect()
        })
        .collect();
    let one = |point: usize| {
        let shared = std::array::from_fn(|axis| (step(point, generator[axis], count) + shift[axis]).fract());
        draw(shared, columns.iter().map(|column| column[point]))
    };
    (0..count).map(one).collect()
}

/// {i·z/n}.
fn step(point: usize, generator: usize, count: usize) -> f64 {
    (point * generator % count) as f64 / count as f64
}

/// Numbers tried for each place of a lattice's generator.
const TRIED: usize = 256;

/// The generator of a lattice of `count` points, built place by place: the next number is the one that leaves the least
/// mean of the products Π (1 + γ·2π²·B₂({i·z/n})), B₂(x) = x² − x + 1/6 – the square of the worst error over periodic
/// functions with square-integrable mixed derivatives (Sloan and Reztsov, Math. Comp. 71:263, 2002; from memory). Every
/// number has no factor in common with `count`, so that each unknown by itself is covered evenly.
fn lattice(count: usize) -> [usize; SHARED] {
    let coprime: Vec<usize> = (1..=count / 2).filter(|z| common_factor(*z, count) == 1).collect();
    let every = coprime.len().div_ceil(TRIED).max(1);
    let mut products = vec![1.0; count];
    let mut generator = [1; SHARED];
    for place in &mut generator {
        let error = |z: usize| -> f64 {
            let of_point = |(point, product): (usize, &f64)| product * kernel(step(point, z, count));
            products.iter().enumerate().map(of_point).sum()
        };
        let tried = coprime.iter().step_by(every).map(|z| (error(*z), *z));
        *place = tried.min_by(|(a, _), (b, _)| a.total_cmp(b)).map_or(1, |(_, z)| z);
        for (point, product) in products.iter_mut().enumerate() {
            *product *= kernel(step(point, *place, count));
        }
    }
    generator
}

/// γ of [`lattice`]: small, since pairs of unknowns matter more to a pot than what three or more do together (a choice of
/// our own; anything from 0.02 to 0.5 serves as well).
const WEIGHT: f64 = 0.1;

fn kernel(x: f64) -> f64 {
    use std::f64::consts::PI;
    1.0 + WEIGHT * 2.0 * PI * PI * (x * x - x + 1.0 / 6.0)
}

/// Euclid's.
fn common_factor(a: usize, b: usize) -> usize {
    if b == 0 { a } else { common_factor(b, a % b) }
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

/// 5th and 95th percentile; none for no values.
pub(crate) fn five_to_ninety_five(values: impl Iterator<Item = f64>) -> Option<(f64, f64)> {
    let sorted = sorted(values);
    Some((percentile(&sorted, 5.0)?, percentile(&sorted, 95.0)?))
}

/// Values in order; what is not a number is left out.
#[must_use]
pub fn sorted(values: impl Iterator<Item = f64>) -> Vec<f64> {
    let mut sorted: Vec<f64> = values.filter(|x| x.is_finite()).collect();
    sorted.sort_by(f64::total_cmp);
    sorted
}

/// A percentile (0–100) of values in order, between the two nearest by straight line; none of none.
///
/// Each of n values stands in the middle of its n-th part of the distribution, so that share p lies at place p·n − ½
/// (definition 5 of Hyndman and Fan, The American Statistician 50:361, 1996; from memory). Even draws are even in just
/// that sense; the definition of spreadsheets, p·(n − 1), would pull the ends inwards by half a part.
#[must_use]
pub fn percentile(sorted: &[f64], percent: f64) -> Option<f64> {
    let last = sorted.len().checked_sub(1)?;
    let place = (percent / 100.0 * sorted.len() as f64 - 0.5).clamp(0.0, last as f64);
    let below = *sorted.get(place.floor() as usize)?;
    let above = *sorted.get(place.ceil() as usize)?;
    Some(below + (above - below) * place.fract())
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

    /// By each unknown itself the draws fall one into each stratum (the lattice's: strata shifted by its Δ).
    #[test]
    fn every_stratum_is_used_once() {
        let draws = Design::Even.draws(2, 20, 7);
        let shares = |pick: fn(&Draw) -> f64| {
            let values = sorted(draws.iter().map(pick));
            values.into_iter().map(share_below).collect::<Vec<f64>>()
        };
        for (place, share) in shares(|draw| draw.lots[1]).iter().enumerate() {
            assert_eq!((share * 20.0).floor() as usize, place);
        }
        for pick in [(|draw| draw.burner) as fn(&Draw) -> f64, |draw| draw.food] {
            let shares = shares(pick);
            assert!(shares.windows(2).all(|pair| (pair[1] - pair[0] - 0.05).abs() < 1e-6));
        }
        assert_eq!(draws, Design::Even.draws(2, 20, 7));
        assert_ne!(draws, Design::Even.draws(2, 20, 8));
        assert!(Design::Even.draws(3, 0, 1).is_empty());
    }

    /// The normal distribution by its own integral: Φ(z) = ½·erfc(−z/√2).
    fn share_below(z: f64) -> f64 {
        0.5 * libm::erfc(-z / 2.0_f64.sqrt())
    }

    /// Of two independent normal deviates the mean product is nought. Plain chance with n draws is off by about 1/√n; even
    /// draws are to be off by clearly less, over all pairs of shared unknowns and twenty seeds.
    #[test]
    fn pairs_of_unknowns_are_even() {
        let off = |design: Design| {
            let shared = |draw: &Draw| [draw.evaporation, draw.burner, draw.oven, draw.reading, draw.food];
            let mut sum = 0.0;
            for seed in 0..20 {
                let draws: Vec<[f64; SHARED]> = design.draws(0, DRAWS, seed).iter().map(shared).collect();
                for (a, b) in (0..SHARED).flat_map(|a| (0..a).map(move |b| (a, b))) {
                    let mean = draws.iter().map(|draw| draw[a] * draw[b]).sum::<f64>() / DRAWS as f64;
                    sum += mean.abs();
                }
            }
            sum / 200.0
        };
        let (even, chance) = (off(Design::Even), off(Design::Independent));
        assert!(even < 0.8 * chance, "{even} against {chance}");
    }

    /// Twelve unknown masses that add up: the sum is normal with the root of the sum of squares, whose 5 and 95 % points
    /// are 1.644854 of them from the middle. An end that n independent draws find is off by √(0.05·0.95/n)/0.103 of them
    /// (one standard error): 5.7 % of the width for 128. The middle of twenty seeds must be within 10 % at both ends, and
    /// none off by three and a half such errors.
    #[test]
    fn a_sum_of_many_masses() {
        let exact = 1.644_854 * 12.0_f64.sqrt();
        let worst = |seed| {
            let draws = Design::Even.draws(12, DRAWS, seed);
            let sum = |draw: &Draw| draw.lots.iter().sum::<f64>();
            let (low, high) = five_to_ninety_five(draws.iter().map(sum)).unwrap();
            (low + exact).abs().max((high - exact).abs()) / (2.0 * exact)
        };
        let worst = sorted((0..20).map(worst));
        assert!(percentile(&worst, 50.0).unwrap() < 0.1 && worst[19] < 0.2, "{worst:?}");
    }

    /// 1 … 100: each stands in the middle of its hundredth, so 5 % lie at 5.5 and 95 % at 95.5.
    #[test]
    fn percentiles() {
        let found = five_to_ninety_five((1..=100).rev().map(f64::from));
        assert_eq!(found, Some((5.5, 95.5)));
        assert_eq!(percentile(&[1.0, 2.0, 3.0], 50.0), Some(2.0));
        assert_eq!(five_to_ninety_five(std::iter::empty()), None);
        assert_eq!(five_to_ninety_five(std::iter::once(3.0)), Some((3.0, 3.0)));
    }
}
