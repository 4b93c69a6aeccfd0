//! Conduction: the first term of the series, row by row, and the textbook's worked examples.

use crate::physics::conduction::{Form, Profile, Step, Stepper};

/// Form, Biot number, first eigenvalue and the coefficient of its term at the centre (the standard transcendental
/// equations; scipy, 400 terms).
#[expect(clippy::approx_constant, reason = "figures as the table prints them")]
const FIRST_TERMS: [(Form, f64, f64, f64); 90] = [
    (Form::Slab, 0.01, 0.099834, 1.001661),
    (Form::Slab, 0.02, 0.140952, 1.003310),
    (Form::Slab, 0.04, 0.198676, 1.006574),
    (Form::Slab, 0.06, 0.242526, 1.009792),
    (Form::Slab, 0.08, 0.279126, 1.012966),
    (Form::Slab, 0.1, 0.311053, 1.016094),
    (Form::Slab, 0.2, 0.432841, 1.031088),
    (Form::Slab, 0.3, 0.521791, 1.045047),
    (Form::Slab, 0.4, 0.593242, 1.058039),
    (Form::Slab, 0.5, 0.653271, 1.070128),
    (Form::Slab, 0.6, 0.705065, 1.081378),
    (Form::Slab, 0.7, 0.750558, 1.091848),
    (Form::Slab, 0.8, 0.791034, 1.101595),
    (Form::Slab, 0.9, 0.827401, 1.110673),
    (Form::Slab, 1.0, 0.860334, 1.119132),
    (Form::Slab, 2.0, 1.076874, 1.178456),
    (Form::Slab, 3.0, 1.192459, 1.210226),
    (Form::Slab, 4.0, 1.264592, 1.228708),
    (Form::Slab, 5.0, 1.313838, 1.240249),
    (Form::Slab, 6.0, 1.349553, 1.247884),
    (Form::Slab, 7.0, 1.376615, 1.253175),
    (Form::Slab, 8.0, 1.397816, 1.256983),
    (Form::Slab, 9.0, 1.414865, 1.259809),
    (Form::Slab, 10.0, 1.428870, 1.261963),
    (Form::Slab, 20.0, 1.496129, 1.269916),
    (Form::Slab, 30.0, 1.520167, 1.271678),
    (Form::Slab, 40.0, 1.532502, 1.272336),
    (Form::Slab, 50.0, 1.540006, 1.272652),
    (Form::Slab, 100.0, 1.555245, 1.273088),
    (Form::Slab, 1e9, 1.570796, 1.273240),
    (Form::Cylinder, 0.01, 0.141245, 1.002496),
    (Form::Cylinder, 0.02, 0.199501, 1.004983),
    (Form::Cylinder, 0.04, 0.281434, 1.009933),
    (Form::Cylinder, 0.06, 0.343828, 1.014849),
    (Form::Cylinder, 0.08, 0.396033, 1.019731),
    (Form::Cylinder, 0.1, 0.441682, 1.024579),
    (Form::Cylinder, 0.2, 0.616975, 1.048304),
    (Form::Cylinder, 0.3, 0.746461, 1.071162),
    (Form::Cylinder, 0.4, 0.851578, 1.093145),
    (Form::Cylinder, 0.5, 0.940771, 1.114255),
    (Form::Cylinder, 0.6, 1.018442, 1.134498),
    (Form::Cylinder, 0.7, 1.087254, 1.153885),
    (Form::Cylinder, 0.8, 1.148972, 1.172434),
    (Form::Cylinder, 0.9, 1.204840, 1.190162),
    (Form::Cylinder, 1.0, 1.255784, 1.207092),
    (Form::Cylinder, 2.0, 1.599449, 1.338377),
    (Form::Cylinder, 3.0, 1.788657, 1.419095),
    (Form::Cylinder, 4.0, 1.908079, 1.469796),
    (Form::Cylinder, 5.0, 1.989815, 1.502869),
    (Form::Cylinder, 6.0, 2.049011, 1.525313),
    (Form::Cylinder, 7.0, 2.093731, 1.541106),
    (Form::Cylinder, 8.0, 2.128639, 1.552578),
    (Form::Cylinder, 9.0, 2.156607, 1.561143),
    (Form::Cylinder, 10.0, 2.179497, 1.567692),
    (Form::Cylinder, 20.0, 2.288048, 1.591944),
    (Form::Cylinder, 30.0, 2.326143, 1.597288),
    (Form::Cylinder, 40.0, 2.345518, 1.599274),
    (Form::Cylinder, 50.0, 2.357242, 1.600221),
    (Form::Cylinder, 100.0, 2.380902, 1.601524),
    (Form::Cylinder, 1e9, 2.404826, 1.601975),
    (Form::Sphere, 0.01, 0.173032, 1.002998),
    (Form::Sphere, 0.02, 0.244460, 1.005992),
    (Form::Sphere, 0.04, 0.345028, 1.011969),
    (Form::Sphere, 0.06, 0.421728, 1.017929),
    (Form::Sphere, 0.08, 0.485999, 1.023872),
    (Form::Sphere, 0.1, 0.542281, 1.029798),
    (Form::Sphere, 0.2, 0.759308, 1.059155),
    (Form::Sphere, 0.3, 0.920787, 1.088021),
    (Form::Sphere, 0.4, 1.052794, 1.116351),
    (Form::Sphere, 0.5, 1.165561, 1.144106),
    (Form::Sphere, 0.6, 1.264404, 1.171252),
    (Form::Sphere, 0.7, 1.352522, 1.197759),
    (Form::Sphere, 0.8, 1.432032, 1.223605),
    (Form::Sphere, 0.9, 1.504423, 1.248770),
    (Form::Sphere, 1.0, 1.570796, 1.273240),
    (Form::Sphere, 2.0, 2.028758, 1.479319),
    (Form::Sphere, 3.0, 2.288930, 1.622681),
    (Form::Sphere, 4.0, 2.455644, 1.720172),
    (Form::Sphere, 5.0, 2.570432, 1.787001),
    (Form::Sphere, 6.0, 2.653662, 1.833779),
    (Form::Sphere, 7.0, 2.716460, 1.867347),
    (Form::Sphere, 8.0, 2.765360, 1.892038),
    (Form::Sphere, 9.0, 2.804425, 1.910624),
    (Form::Sphere, 10.0, 2.836300, 1.924909),
    (Form::Sphere, 20.0, 2.985724, 1.978138),
    (Form::Sphere, 30.0, 3.037241, 1.989840),
    (Form::Sphere, 40.0, 3.063210, 1.994165),
    (Form::Sphere, 50.0, 3.078842, 1.996221),
    (Form::Sphere, 100.0, 3.110187, 1.999033),
    (Form::Sphere, 1e9, 3.141593, 2.000000),
];

/// Steps of a Fourier number, backward at first and then Crank–Nicolson, of a profile from 1 to 0 outside.
fn step(profile: &mut Profile, biot: f64, fourier: f64, backward: u32, middle: u32) {
    for (theta, count) in [(1.0, backward), (0.5, middle)] {
        let stepper = Stepper::new(profile.form, Step { fourier, biot, theta });
        for _ in 0..count {
            let base = stepper.base(profile, 0.0);
            stepper.finish(profile, &base, 0.0);
        }
    }
}

/// Late in a cooling only the first term is left: the centre falls by exp(−ζ²·ΔFo), and what it had at Fo is C·exp(−ζ²·Fo).
/// ζ² and C within 0.5 %, the tolerance of the reference for first-term conduction; our own twenty cells add 0.3 %.
#[test]
fn first_terms() {
    for (form, biot, zeta, coefficient) in FIRST_TERMS {
        let decay = zeta * zeta;
        // Until the first term is alone, Fo 0.5 at least; then a span over which it falls by a factor of e.
        let (start, span) = (0.5, 1.0 / decay);
        let mut profile = Profile::uniform(form, 1.0);
        step(&mut profile, biot, start / 400.0, 4, 396);
        let first = profile.centre_c();
        step(&mut profile, biot, span / 400.0, 0, 400);
        let label = format!("{form:?} Bi {biot}");
        let found = libm::log(first / profile.centre_c()) / span;
        assert!((found / decay - 1.0).abs() < 0.008, "{label}: ζ² {found} for {decay}");
        let found = first * libm::exp(decay * start);
        assert!(
            (found / coefficient - 1.0).abs() < 0.008,
            "{label}: C {found} for {coefficient}"
        );
    }
}

/// A plate of brass 4 cm thick, 20 °C into an oven of 500 °C, h 120, k 110, α 33.9e-6: its surface after 7 min 279.6 °C
/// (282 °C printed). A shaft of 20 cm, 600 °C into 200 °C, h 80, k 14.9, α 3.95e-6: its centre after 45 min 364.3 °C.
/// Textbook examples, inputs recalled, recomputed: 3 % of the step allowed.
#[test]
fn plate_and_shaft() {
    let mut plate = Profile::uniform(Form::Slab, 1.0);
    let biot = 120.0 * 0.02 / 110.0;
    step(&mut plate, biot, 33.9e-6 * 420.0 / (0.02 * 0.02) / 400.0, 4, 396);
    let surface = 500.0 - 480.0 * plate.surface_c(biot, 0.0);
    assert!((surface - 279.6).abs() < 2.0, "{surface}");
    let mut shaft = Profile::uniform(Form::Cylinder, 1.0);
    step(&mut shaft, 80.0 * 0.1 / 14.9, 3.95e-6 * 2700.0 / 0.01 / 400.0, 4, 396);
    let centre = 200.0 + 400.0 * shaft.centre_c();
    assert!((centre - 364.3).abs() < 2.0, "{centre}");
}

/// A bead of 1 mm, k 35, ρ 8500, c 320, h 210, is as good as of one temperature: 9.94 s to 99 % of a step.
#[test]
fn a_bead_is_lumped() {
    let diffusivity = 35.0 / (8500.0 * 320.0);
    let mut bead = Profile::uniform(Form::Sphere, 1.0);
    let fourier = diffusivity * 9.94 / (0.5e-3 * 0.5e-3);
    step(&mut bead, 210.0 * 0.5e-3 / 35.0, fourier / 400.0, 4, 396);
    assert!((bead.centre_c() - 0.01).abs() < 2e-4, "{}", bead.centre_c());
}
