//! Bodies of one coordinate against the exact products.

use super::*;
use crate::physics::conduction::{Profile, Step, Stepper};

#[derive(Clone, Copy, Debug)]
enum Exact {
    /// Half edges.
    Brick([f64; 3]),
    /// Half the length, the radius being 1.
    Cylinder(f64),
}

use Exact::{Brick, Cylinder};

/// Body, Biot and Fourier number by the radius or half thickness of 1, share of the step left at the centre and on the
/// mean: products of the exact series of slab and cylinder (`tests/scipy/pieces.py`).
const PRODUCTS: [(Exact, f64, f64, f64, f64); 112] = [
    (Brick([1.0, 1.0, 1.0]), 1.0, 0.05, 0.99925, 0.87732),
    (Brick([1.0, 1.0, 1.0]), 1.0, 0.15, 0.92837, 0.69223),
    (Brick([1.0, 1.0, 1.0]), 1.0, 0.3, 0.70924, 0.49323),
    (Brick([1.0, 1.0, 1.0]), 1.0, 0.6, 0.36965, 0.25302),
    (Brick([1.0, 1.0, 1.0]), 5.0, 0.05, 0.99714, 0.65446),
    (Brick([1.0, 1.0, 1.0]), 5.0, 0.15, 0.79778, 0.35870),
    (Brick([1.0, 1.0, 1.0]), 5.0, 0.3, 0.39922, 0.16140),
    (Brick([1.0, 1.0, 1.0]), 5.0, 0.6, 0.08532, 0.03404),
    (Brick([1.0, 1.0, 1.0]), 20.0, 0.05, 0.99398, 0.49590),
    (Brick([1.0, 1.0, 1.0]), 20.0, 0.15, 0.69943, 0.22632),
    (Brick([1.0, 1.0, 1.0]), 20.0, 0.3, 0.27193, 0.08100),
    (Brick([1.0, 1.0, 1.0]), 20.0, 0.6, 0.03643, 0.01079),
    (Brick([1.0, 1.0, 1.0]), 1e9, 0.05, 0.99064, 0.41798),
    (Brick([1.0, 1.0, 1.0]), 1e9, 0.15, 0.64547, 0.17850),
    (Brick([1.0, 1.0, 1.0]), 1e9, 0.3, 0.22343, 0.05785),
    (Brick([1.0, 1.0, 1.0]), 1e9, 0.6, 0.02432, 0.00627),
    (Brick([1.0, 1.0, 1e6]), 1.0, 0.05, 0.99420, 0.91335),
    (Brick([1.0, 1.0, 1e6]), 1.0, 0.15, 0.94661, 0.77989),
    (Brick([1.0, 1.0, 1e6]), 1.0, 0.3, 0.79108, 0.62216),
    (Brick([1.0, 1.0, 1e6]), 1.0, 0.6, 0.51233, 0.39869),
    (Brick([1.0, 1.0, 1e6]), 5.0, 0.05, 0.99280, 0.75125),
    (Brick([1.0, 1.0, 1e6]), 5.0, 0.15, 0.85562, 0.50314),
    (Brick([1.0, 1.0, 1e6]), 5.0, 0.3, 0.53930, 0.29544),
    (Brick([1.0, 1.0, 1e6]), 5.0, 0.6, 0.19278, 0.10468),
    (Brick([1.0, 1.0, 1e6]), 20.0, 0.05, 0.99070, 0.62440),
    (Brick([1.0, 1.0, 1e6]), 20.0, 0.15, 0.78377, 0.37012),
    (Brick([1.0, 1.0, 1e6]), 20.0, 0.3, 0.41750, 0.18658),
    (Brick([1.0, 1.0, 1e6]), 20.0, 0.6, 0.10932, 0.04866),
    (Brick([1.0, 1.0, 1e6]), 1e9, 0.05, 0.98848, 0.55715),
    (Brick([1.0, 1.0, 1e6]), 1e9, 0.15, 0.74292, 0.31595),
    (Brick([1.0, 1.0, 1e6]), 1e9, 0.3, 0.36626, 0.14908),
    (Brick([1.0, 1.0, 1e6]), 1e9, 0.6, 0.08349, 0.03390),
    (Brick([1.0, 1.0, 2.0]), 1.0, 0.05, 0.99950, 0.89688),
    (Brick([1.0, 1.0, 2.0]), 1.0, 0.15, 0.95160, 0.73738),
    (Brick([1.0, 1.0, 2.0]), 1.0, 0.3, 0.79219, 0.55870),
    (Brick([1.0, 1.0, 2.0]), 1.0, 0.6, 0.49349, 0.32562),
    (Brick([1.0, 1.0, 2.0]), 5.0, 0.05, 0.99809, 0.70413),
    (Brick([1.0, 1.0, 2.0]), 5.0, 0.15, 0.86000, 0.43177),
    (Brick([1.0, 1.0, 2.0]), 5.0, 0.3, 0.53620, 0.22872),
    (Brick([1.0, 1.0, 2.0]), 5.0, 0.6, 0.17535, 0.06816),
    (Brick([1.0, 1.0, 2.0]), 20.0, 0.05, 0.99598, 0.56121),
    (Brick([1.0, 1.0, 2.0]), 20.0, 0.15, 0.78764, 0.29884),
    (Brick([1.0, 1.0, 2.0]), 20.0, 0.3, 0.41280, 0.13380),
    (Brick([1.0, 1.0, 2.0]), 20.0, 0.6, 0.09637, 0.02867),
    (Brick([1.0, 1.0, 2.0]), 1e9, 0.05, 0.99375, 0.48851),
    (Brick([1.0, 1.0, 2.0]), 1e9, 0.15, 0.74649, 0.24775),
    (Brick([1.0, 1.0, 2.0]), 1e9, 0.3, 0.36098, 0.10336),
    (Brick([1.0, 1.0, 2.0]), 1e9, 0.6, 0.07254, 0.01915),
    (Brick([1.0, 1.5, 1.5]), 1.0, 0.05, 0.99975, 0.90360),
    (Brick([1.0, 1.5, 1.5]), 1.0, 0.15, 0.97208, 0.75374),
    (Brick([1.0, 1.5, 1.5]), 1.0, 0.3, 0.84868, 0.58431),
    (Brick([1.0, 1.5, 1.5]), 1.0, 0.6, 0.55844, 0.35778),
    (Brick([1.0, 1.5, 1.5]), 5.0, 0.05, 0.99904, 0.72236),
    (Brick([1.0, 1.5, 1.5]), 5.0, 0.15, 0.91692, 0.46273),
    (Brick([1.0, 1.5, 1.5]), 5.0, 0.3, 0.64421, 0.26329),
    (Brick([1.0, 1.5, 1.5]), 5.0, 0.6, 0.24608, 0.09202),
    (Brick([1.0, 1.5, 1.5]), 20.0, 0.05, 0.99799, 0.58680),
    (Brick([1.0, 1.5, 1.5]), 20.0, 0.15, 0.87068, 0.33333),
    (Brick([1.0, 1.5, 1.5]), 20.0, 0.3, 0.53459, 0.16612),
    (Brick([1.0, 1.5, 1.5]), 20.0, 0.6, 0.15557, 0.04504),
    (Brick([1.0, 1.5, 1.5]), 1e9, 0.05, 0.99686, 0.51731),
    (Brick([1.0, 1.5, 1.5]), 1e9, 0.15, 0.84302, 0.28276),
    (Brick([1.0, 1.5, 1.5]), 1e9, 0.3, 0.48540, 0.13372),
    (Brick([1.0, 1.5, 1.5]), 1e9, 0.6, 0.12554, 0.03254),
    (Cylinder(1.0), 1.0, 0.05, 0.99865, 0.87660),
    (Cylinder(1.0), 1.0, 0.15, 0.90624, 0.68828),
    (Cylinder(1.0), 1.0, 0.3, 0.66896, 0.48462),
    (Cylinder(1.0), 1.0, 0.6, 0.33630, 0.24168),
    (Cylinder(1.0), 5.0, 0.05, 0.99490, 0.64948),
    (Cylinder(1.0), 5.0, 0.15, 0.74330, 0.34459),
    (Cylinder(1.0), 5.0, 0.3, 0.33664, 0.14484),
    (Cylinder(1.0), 5.0, 0.6, 0.06150, 0.02628),
    (Cylinder(1.0), 20.0, 0.05, 0.98948, 0.48775),
    (Cylinder(1.0), 20.0, 0.15, 0.62990, 0.21089),
    (Cylinder(1.0), 20.0, 0.3, 0.21428, 0.06787),
    (Cylinder(1.0), 20.0, 0.6, 0.02282, 0.00721),
    (Cylinder(1.0), 1e9, 0.05, 0.98401, 0.40964),
    (Cylinder(1.0), 1e9, 0.15, 0.57197, 0.16433),
    (Cylinder(1.0), 1e9, 0.3, 0.17141, 0.04720),
    (Cylinder(1.0), 1e9, 0.6, 0.01444, 0.00397),
    (Cylinder(2.0), 1.0, 0.05, 0.99890, 0.89615),
    (Cylinder(2.0), 1.0, 0.15, 0.92891, 0.73317),
    (Cylinder(2.0), 1.0, 0.3, 0.74720, 0.54894),
    (Cylinder(2.0), 1.0, 0.6, 0.44897, 0.31103),
    (Cylinder(2.0), 5.0, 0.05, 0.99585, 0.69877),
    (Cylinder(2.0), 5.0, 0.15, 0.80127, 0.41478),
    (Cylinder(2.0), 5.0, 0.3, 0.45215, 0.20525),
    (Cylinder(2.0), 5.0, 0.6, 0.12640, 0.05261),
    (Cylinder(2.0), 20.0, 0.05, 0.99147, 0.55198),
    (Cylinder(2.0), 20.0, 0.15, 0.70934, 0.27846),
    (Cylinder(2.0), 20.0, 0.3, 0.32530, 0.11210),
    (Cylinder(2.0), 20.0, 0.6, 0.06036, 0.01914),
    (Cylinder(2.0), 1e9, 0.05, 0.98710, 0.47876),
    (Cylinder(2.0), 1e9, 0.15, 0.66149, 0.22809),
    (Cylinder(2.0), 1e9, 0.3, 0.27694, 0.08432),
    (Cylinder(2.0), 1e9, 0.6, 0.04308, 0.01212),
    (Cylinder(0.7), 1.0, 0.05, 0.99351, 0.85985),
    (Cylinder(0.7), 1.0, 0.15, 0.85016, 0.64987),
    (Cylinder(0.7), 1.0, 0.3, 0.58002, 0.43105),
    (Cylinder(0.7), 1.0, 0.6, 0.25668, 0.19020),
    (Cylinder(0.7), 5.0, 0.05, 0.97638, 0.60723),
    (Cylinder(0.7), 5.0, 0.15, 0.61210, 0.28493),
    (Cylinder(0.7), 5.0, 0.3, 0.22024, 0.09810),
    (Cylinder(0.7), 5.0, 0.6, 0.02656, 0.01180),
    (Cylinder(0.7), 20.0, 0.05, 0.95399, 0.43269),
    (Cylinder(0.7), 20.0, 0.15, 0.46470, 0.15403),
    (Cylinder(0.7), 20.0, 0.3, 0.11232, 0.03613),
    (Cylinder(0.7), 20.0, 0.6, 0.00627, 0.00201),
    (Cylinder(0.7), 1e9, 0.05, 0.93408, 0.35040),
    (Cylinder(0.7), 1e9, 0.15, 0.39562, 0.11119),
    (Cylinder(0.7), 1e9, 0.3, 0.07940, 0.02184),
    (Cylinder(0.7), 1e9, 0.6, 0.00309, 0.00085),
];

fn body(exact: Exact) -> Body {
    match exact {
        Brick(half) => Body::brick(half.map(|half| 2.0 * half)),
        Cylinder(half) => Body::cylinder(2.0, 2.0 * half),
    }
}

/// Steps a profile from 1 to 0 outside: a few fine backward steps, then Crank–Nicolson.
fn cooled(body: &Body, biot: f64, fourier: f64) -> Profile {
    let mut profile = Profile::uniform(body.form, 1.0);
    let step = |part: f64, theta: f64| Step {
        fourier: fourier * part / (body.radius_m * body.radius_m),
        biot: biot * body.radius_m * body.film_factor(),
        theta,
    };
    let parts = (0..200).map(|i| if i < 8 { (0.001, 1.0) } else { (0.992 / 192.0, 0.5) });
    for (part, theta) in parts {
        let stepper = Stepper::new(body.form, step(part, theta));
        let base = stepper.base(&profile, 0.0);
        stepper.finish(&mut profile, &base, 0.0);
    }
    profile
}

/// The module's own promise: means within 2 % of the step, centres within 3.5 % where no edge is longer than the others
/// by more than half, or one of them far longer; else within 5 %.
#[test]
fn bricks_and_short_cylinders_follow_as_the_products_do() {
    for (exact, biot, fourier, centre, mean) in PRODUCTS {
        let profile = cooled(&body(exact), biot, fourier);
        let compact = matches!(exact, Brick([1.0, 1.0, 1.0] | [1.0, 1.0, 1e6]) | Cylinder(1.0));
        let allowed = if compact { 0.035 } else { 0.055 };
        let label = format!("{exact:?} Bi {biot} Fo {fourier}");
        let off = profile.centre_c() - centre;
        assert!(off.abs() < allowed, "{label}: centre off by {off}");
        let off = profile.mean_c() - mean;
        assert!(off.abs() < 0.02, "{label}: mean off by {off}");
    }
}

/// What is far longer than it is thick is the plain form: a sheet a slab, a rod a long cylinder.
#[test]
fn long_and_flat_bodies_are_the_plain_forms() {
    let sheet = Body::brick([0.5, 0.01, 0.7]);
    assert_eq!((sheet.form, sheet.radius_m), (Form::Slab, 0.005));
    let disc = Body::cylinder(0.1, 0.01);
    assert_eq!((disc.form, disc.radius_m), (Form::Slab, 0.005));
    let rod = Body::cylinder(0.02, 20.0);
    assert_eq!(rod.form, Form::Cylinder);
    assert!((rod.radius_m / 0.01 - 1.0).abs() < 2e-3 && (rod.film_factor() - 1.0).abs() < 5e-3);
}

/// Surface per volume by hand: a cube of 4 cm has 6·16 cm² on 64 cm³, 1.5 per cm; a cylinder of 3 by 5 cm
/// 2·(2.25π) + 3π·5 = 19.5π cm² on 11.25π cm³, 1.7333 per cm.
#[test]
fn surfaces() {
    assert!((Body::brick([0.04; 3]).surface_per_volume - 150.0).abs() < 1e-9);
    assert!((Body::cylinder(0.03, 0.05).surface_per_volume - 173.333_333).abs() < 1e-5);
}

/// Finite cylinders of thick stew with every face held (product solution, no film): 30 by 25 cm and 20 by 5 cm, 57 to
/// 4 °C, centre at 21 °C after 31,735 and 2,492 s with a diffusivity of 1.4e-7 m²/s; a textbook's short cylinder of brass,
/// 10 by 12 cm, 120 °C into air of 25 °C, h 60, k 110, α 33.9e-6, centre at 62.7 °C after 15 min. Within the module's
/// promise; the flat pan is a slab here and a little slower than it is.
#[test]
fn worked_examples_of_finite_cylinders() {
    let left = |body: &Body, biot: f64, fourier: f64| cooled(body, biot, fourier).centre_c();
    let pot = left(&Body::cylinder(0.3, 0.25), 1e9, 1.4e-7 * 31_735.0);
    assert!((pot - 17.0 / 53.0).abs() < 0.035, "{pot}");
    let pan = left(&Body::cylinder(0.2, 0.05), 1e9, 1.4e-7 * 2_492.0);
    assert!((pan - 17.0 / 53.0).abs() < 0.035 && pan > 17.0 / 53.0, "{pan}");
    let brass = 25.0 + 95.0 * left(&Body::cylinder(0.1, 0.12), 60.0 / 110.0, 33.9e-6 * 900.0);
    assert!((brass - 62.7).abs() < 0.7, "{brass}");
}

/// A bigger brick is never ahead of a smaller one at its centre.
#[test]
fn a_bigger_brick_lags() {
    let left = |edges: [f64; 3]| cooled(&Body::brick(edges), 20.0, 0.2).centre_c();
    let mut before = 0.0;
    for edges in [
        [1.0, 1.0, 1.0],
        [1.0, 1.0, 1.5],
        [1.0, 1.5, 1.5],
        [1.5, 1.5, 1.5],
        [1.5, 1.6, 3.0],
        [2.0, 2.0, 3.0],
    ] {
        let now = left(edges);
        assert!(now > before, "{edges:?}: {now} after {before}");
        before = now;
    }
}
