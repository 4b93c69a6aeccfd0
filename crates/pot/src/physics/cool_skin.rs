//! The cool skin of a warm liquid that mixes by itself: what its surface gives off has to be brought up from below by
//! convection, so the surface is the colder the more it gives off.
//!
//! It is that of water. Bubbles that burst and a spoon make it thinner, a thick soup thicker; neither is reckoned.

/// How fast turbulent convection brings heat to a cooled surface of water, W/(m²·K^(4/3)): 0.156·k·(g·β/(ν·α))^⅓, from
/// Nu = 0.156·Ra^⅓ of an open tank of water that evaporates (Katsaros, Liu, Businger, Tillman, Journal of Fluid Mechanics
/// 83 (1977) 311), with conductivity k, expansion β, viscosity ν and diffusivity α of water by IAPWS: 224 at 20 °C, 415 at
/// 60 °C, 560 at 100 °C and the parabola through them.
fn brings_up(bulk_c: f64) -> f64 {
    let t = bulk_c.clamp(5.0, 120.0);
    224.0 + 4.775 * (t - 20.0) - 0.014_4 * (t - 20.0) * (t - 60.0)
}

/// How much colder the surface is than the liquid, kelvins, and how much of a kelvin it follows the liquid by.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CoolSkin {
    /// Kelvins.
    pub kelvins: f64,
    /// Kelvins of the surface per kelvin of the liquid.
    pub follows: f64,
}

impl CoolSkin {
    /// No skin: the surface is as warm as the liquid.
    pub const NONE: CoolSkin = CoolSkin {
        kelvins: 0.0,
        follows: 1.0,
    };
}

/// The skin over a liquid at a temperature in °C, where `flux` is what a surface at a temperature in °C gives off, W/m²:
/// ΔT for which C·ΔT^(4/3) is that flux. The flux is taken to be a straight line through two temperatures, which is right
/// to a tenth of a kelvin.
pub fn cool_skin(bulk_c: f64, mut flux: impl FnMut(f64) -> f64) -> CoolSkin {
    let bringing = brings_up(bulk_c);
    let most = flux(bulk_c);
    if !(most > 0.0 && most.is_finite()) {
        return CoolSkin::NONE;
    }
    let alone = (most / bringing).sqrt();
    let guess = 0.75 * alone * alone.sqrt();
    let slope = ((most - flux(bulk_c - guess)) / guess).max(0.0);
    let (mut kelvins, mut rising) = (guess, bringing);
    for _ in 0..3 {
        let root = libm::cbrt(kelvins);
        rising = 4.0 / 3.0 * bringing * root;
        let off = bringing * kelvins * root + slope * kelvins - most;
        kelvins = (kelvins - off / (rising + slope)).max(1e-6);
    }
    CoolSkin {
        kelvins,
        follows: rising / (rising + slope),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// k, β, ν, α of water by IAPWS-IF97: at 40 °C 0.62845, 3.83e-4, 6.579e-7, 1.5157e-7; at 80 °C 0.66698, 6.40e-4,
    /// 3.643e-7, 1.6359e-7; at 95 °C 0.67517, 7.23e-4, 3.089e-7, 1.6671e-7. Two per cent, for the parabola.
    #[test]
    fn water_by_its_properties() {
        for (t, k, beta, nu, alpha) in [
            (40.0, 0.628_45, 3.83e-4, 6.579e-7, 1.5157e-7),
            (80.0, 0.666_98, 6.40e-4, 3.643e-7, 1.6359e-7),
            (95.0, 0.675_17, 7.23e-4, 3.089e-7, 1.6671e-7),
        ] {
            let expected = 0.156 * k * libm::cbrt(9.806_65 * beta / (nu * alpha));
            assert!((brings_up(t) / expected - 1.0).abs() < 0.02, "{t}: {}", brings_up(t));
        }
    }

    /// What is given off arrives: with a flux that doubles every twelve kelvins, as evaporation does, and with none.
    #[test]
    fn what_leaves_arrives() {
        for (bulk_c, most) in [(95.0, 15_000.0), (80.0, 6_000.0), (50.0, 1_000.0)] {
            let flux = |c: f64| most * libm::exp2((c - bulk_c) / 12.0);
            let skin = cool_skin(bulk_c, flux);
            let (up, off) = (
                brings_up(bulk_c) * libm::pow(skin.kelvins, 4.0 / 3.0),
                flux(bulk_c - skin.kelvins),
            );
            assert!((up / off - 1.0).abs() < 0.02, "{bulk_c}: {up} for {off}");
            let warmer = cool_skin(bulk_c + 1.0, flux);
            let follows = 1.0 + skin.kelvins - warmer.kelvins;
            assert!((skin.follows - follows).abs() < 0.07, "{} for {follows}", skin.follows);
        }
        assert_eq!(cool_skin(20.0, |_| -5.0).kelvins, 0.0);
        assert_eq!(cool_skin(20.0, |_| f64::NAN).kelvins, 0.0);
    }
}
