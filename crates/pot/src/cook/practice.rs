//! What cooks and kitchens do, where no source was found: every figure here is common practice, no source, and carries
//! a spread of at least a factor of 1.5 either way where it is uncertain rather than a definition. Calibration may move
//! them.

use potwright_manuscript::{Cover, HeatWord};
use potwright_measure::Spread;

/// Share of the burner's power for a word: low 0.2, medium-low ⅓, medium ½, medium-high ¾, high all.
pub(super) const fn setting_share(word: HeatWord) -> Option<f64> {
    match word {
        HeatWord::Off => Some(0.0),
        HeatWord::Low => Some(0.2),
        HeatWord::MediumLow => Some(0.33),
        HeatWord::Medium => Some(0.5),
        HeatWord::MediumHigh => Some(0.75),
        HeatWord::High => Some(1.0),
        HeatWord::Lower => None,
    }
}

/// What 'reduce the heat' leaves of the setting before.
pub(super) const LOWER: f64 = 0.5;
/// How differently two cooks read such a word.
pub(super) const SETTING: Spread = Spread::within_factor(1.0, 1.5);

/// A pan to sweat or fry in is warmed up to here, °C, with at least this share.
pub(super) const PAN_WARM_C: f64 = 90.0;
pub(super) const WARM_UP: f64 = 0.45;

/// How much farther above the boil than another's one cook's pan is, by the same word.
pub(super) const PAN_LIMIT: Spread = Spread::within_factor(1.0, 1.5);
pub(super) const PAN_LIMIT_FROM_C: f64 = 100.0;

/// Where a cook who fries keeps the pan's surface, °C, by the same words.
pub(super) const fn pan_limit_c(word: HeatWord) -> f64 {
    match word {
        HeatWord::Off => 20.0,
        HeatWord::Low | HeatWord::Lower => 115.0,
        HeatWord::MediumLow => 135.0,
        HeatWord::Medium => 155.0,
        HeatWord::MediumHigh => 180.0,
        HeatWord::High => 210.0,
    }
}

/// A simmer: so many kelvins below the boil (88 to 96 °C at sea level).
pub(super) const SIMMER_BELOW_K: Spread = Spread {
    low: 2.5,
    mid: 5.0,
    high: 11.0,
};
/// 'Heated through, do not boil': at most this, and this far below the boil.
pub(super) const BELOW_BOIL_C: f64 = 82.0;
pub(super) const BELOW_BOIL_K: f64 = 8.0;
/// Working pressure of a pressure cooker above the air's, kPa, low and high. Household cookers are rated at 15 psi, 103 kPa,
/// or less (the safety standard, as quoted on public pages) and are said to work at 80 to 100; electric ones at less.
pub(super) const GAUGE_KPA: [Spread; 2] = [
    Spread::within_factor(35.0, 1.7),
    Spread {
        low: 60.0,
        mid: 85.0,
        high: 105.0,
    },
];
/// What its valve lets out while a cook keeps it there, kg/h.
pub(super) const VENTS_KG_H: Spread = Spread::within_factor(0.05, 2.0);
/// The element of a slow cooker, watts for each litre it holds, low and high: one of five litres has 130 and 210 W.
pub(super) const SLOW_W_L: [Spread; 2] = [Spread::within_factor(26.0, 1.5), Spread::within_factor(42.0, 1.5)];
/// What the housing of a slow cooker leaves of the heat its wall would lose.
pub(super) const HOUSING: f64 = 0.5;
/// An oven whose dial nobody has said, °C.
pub(super) const USUAL_OVEN_C: f64 = 180.0;
/// What an oven's shelf and walls lose when its door is opened for a quarter of a minute, kelvins.
pub(super) const DOOR_K: Spread = Spread::within_factor(20.0, 1.5);
/// A full rolling boil: vapour driven off, kg/(h·m²). A cook turns the knob down once more than that rises.
pub(super) const ROLLING_KG_H_M2: Spread = Spread::within_factor(24.0, 1.6);

/// Of the heat that a pot on its way to the boil gets and keeps from the room, evaporation takes at most this share.
pub(super) const EVAPORATES_AT_MOST: f64 = 0.5;

/// Share of the vapour of the open pot that leaves past a lid.
pub(super) const fn cover_share(cover: Cover) -> Spread {
    match cover {
        Cover::Off => Spread::exact(1.0),
        Cover::Ajar => Spread {
            low: 0.18,
            mid: 0.3,
            high: 0.5,
        },
        Cover::On => Spread {
            low: 0.04,
            mid: 0.08,
            high: 0.16,
        },
    }
}

/// Liquid that bathes pieces, share of their volume; with less they lie in a little of it.
pub(super) const BATHES: f64 = 0.25;
/// Film between liquid and pieces, W/(m²·K): still, simmering, boiling.
pub(super) const FILM_STILL: f64 = 250.0;
pub(super) const FILM_SIMMER: f64 = 800.0;
pub(super) const FILM_BOIL: f64 = 1200.0;
/// Film where there is hardly any liquid: steam and juices in a covered pot, a heap on a plate.
pub(super) const FILM_SCANT: f64 = 120.0;
/// Contact with a hot pan, W/(m²·K), and which part of the pieces' surface and of the pan's takes part: the three are one
/// product, whose spread is the film's.
pub(super) const FILM_PAN: Spread = Spread::within_factor(350.0, 1.5);
pub(super) const CONTACT_PIECES: f64 = 0.3;
pub(super) const CONTACT_PAN: f64 = 0.65;
/// Pieces in an oven dish: a heap of them shows the air at most so many times the square of its cubic root (6 for a
/// cube), and all together at most so many times the dish's area, what its hot bottom passes on among it.
pub(super) const SHOWN_HEAP: f64 = 8.0;
pub(super) const SHOWN_DISH: f64 = 2.5;
/// Porosity of a dough raised by soda or baking powder once it is baked, percent (common practice, no source; ×/÷1.5: such
/// breads and dumplings are two fifths air, those of yeast up to four).
const POROSITY: f64 = 40.0;

/// Diffusivity, m²/s, of the crumb that a risen dough becomes: α = exp(0.01 ε − 15.25) at a porosity of ε percent, measured
/// in bread that was heated to 100 °C (Zanoni, Peri, Gianotti, Journal of Food Engineering 26 (1995) 497–510). Vapour
/// that moves from bubble to bubble carries three times what dense dough conducts.
pub(super) fn crumb_m2_s() -> f64 {
    libm::exp(0.01 * POROSITY - 15.25)
}

/// Conductivity of its crust, W/(m·K): diffusivity exp(0.0062 ε − 15.30) m²/s and density 895 − 9.0 ε kg/m³ of crust (the
/// same) with the specific heat of dry crumb, 1.7 kJ/(kg·K) (from memory), at 40 %: 2.9e-7 · 535 · 1700.
pub(super) const CRUST_W_MK: f64 = 0.26;

/// Density of that crumb, kg/m³: 979 − 9.9 ε (the same).
pub(super) const CRUMB_KG_M3: f64 = 979.0 - 9.9 * POROSITY;

/// From a pot's base to what it holds, W/(m²·K): water about to boil (handbooks, from memory: 500 to 3000).
pub(super) const FILM_BASE: f64 = 1500.0;
/// How many times as thick as its wall the base of a pot is.
pub(super) const BASE_THICKER: f64 = 2.0;
/// Film on the outside of a pot's wall for its fin, W/(m²·K): convection and radiation of a wall at the simmer.
pub(super) const FILM_RIM: f64 = 11.0;
/// Emissivity of a wet or oily surface and of what a lid shows it (handbooks, from memory: water 0.95).
pub(super) const WET_EMISSIVITY: f64 = 0.95;

/// Bone and shell: specific heat J/(kg·K), density kg/m³.
pub(super) const BONE_J_KG_K: f64 = 1300.0;
pub(super) const BONE_KG_M3: f64 = 1500.0;

/// A bowl or plate that only holds: diameter and height in metres, J/K, emissivity.
pub(super) const BOWL: (f64, f64, f64, f64) = (0.24, 0.12, 600.0, 0.9);

/// Liquid that clings to strained pieces, share of their mass.
pub(super) const CLINGING: Spread = Spread::within_factor(0.06, 1.7);
/// Less than this is not worth a word, kg.
pub(super) const CLINGING_TOLD_KG: f64 = 0.01;
/// Liquid that stays in an emptied vessel, kg per m² of wetted wall, and at most this share of it.
pub(super) const LEFT_KG_M2: f64 = 0.10;
pub(super) const LEFT_SHARE: f64 = 0.03;

/// Plants shed their water between these temperatures of a piece, °C; flesh between the second pair: the rise of
/// 1/(1 + 30·exp(−0.25·(T − 52))), by which meat loses its hold of water (van der Sman, Meat Science 76 (2007) 730, from
/// memory), drawn as a smooth step. And the time constant in seconds.
pub(super) const SHED_FROM_C: f64 = 45.0;
pub(super) const SHED_TO_C: f64 = 80.0;
pub(super) const FLESH_SHEDS_C: (f64, f64) = (53.6, 77.6);
pub(super) const SHED_S: Spread = Spread::within_factor(240.0, 1.6);
/// Fat renders with this time constant at 90 °C outside the piece, twice as fast for each so many kelvins more, from
/// the given temperature of the piece up.
pub(super) const RENDER_S: Spread = Spread::within_factor(2700.0, 1.6);
pub(super) const RENDER_DOUBLING_K: f64 = 30.0;
pub(super) const RENDER_FROM_C: f64 = 45.0;
/// What soaking in the cold gives of the water a dry food takes up in all, and from where to where heat adds the rest.
pub(super) const SOAKED_SHARE: f64 = 0.65;
pub(super) const SOAK_ENDS_C: f64 = 55.0;
pub(super) const SWELLS_FULLY_C: f64 = 92.0;
/// Cold soaking times hold for this temperature, °C.
pub(super) const SOAK_C: f64 = 15.0;
/// Time constant of gelatinisation once the temperature is there, seconds, and the water it needs per starch.
pub(super) const GELATINISE_S: Spread = Spread::within_factor(60.0, 1.6);
pub(super) const WATER_PER_STARCH: Spread = Spread::within_factor(0.7, 1.5);
/// Diffusivity of salt in food at 25 °C, m²/s: 6.0e-10 (taro) to 1.3e-9 (pumpkin) in balls of five vegetables in brine, and
/// 7.13 kJ/mol between that and the boil (J. Phys. Opt. Sci. 7 (2025) 324): the geometric mean, the spread wider for meat,
/// of which no hot figure was found.
pub(super) const DIFFUSIVITY_25: Spread = Spread::within_factor(0.88e-9, 2.0);
pub(super) const DIFFUSION_KJ_MOL: f64 = 7.13;
/// Plant cells keep their sugars and acids until heat has broken their membranes, °C.
pub(super) const MEMBRANES_GIVE_C: f64 = 60.0;
/// Softness at which half the pieces that fall apart at all have done so; of unlike pieces the first tenth does 1.55 times
/// sooner and the last tenth later: share 1/(1 + (half/softness)⁵).
pub(super) const FALLS_HALF: f64 = 1.2;
/// Skins and a few whole ones stay of whatever falls apart, share.
pub(super) const STAYS_WHOLE: f64 = 0.02;
/// Cooks' softening times are taken at this temperature: the upper end of a simmer (88 to 96 °C), °C.
pub(super) const COOKS_SIMMER_C: f64 = 96.0;
/// A doneness time is a rule of thumb within this factor: a cue so nearly reached counts as reached.
pub(super) const RULE_OF_THUMB: f64 = 1.5;
/// Softening that a cook calls 'softened without colour'.
pub(super) const SOFTENED: f64 = 0.7;
/// Pieces from this thickness up, metres, are laid side by side to brown; smaller ones are stirred about. They cover this
/// share of the bottom, with room between for their steam, and so many layers more are pressed in.
pub(super) const LAID_FROM_M: f64 = 0.015;
pub(super) const LAYER_SHARE: Spread = Spread::within_factor(0.6, 1.5);
pub(super) const PRESSED_IN: f64 = 0.1;
/// A pan that has been wet so long, seconds, while it should brown, is crowded.
pub(super) const WET_LONG_S: f64 = 90.0;
/// Fat that clings to what is fried, kg per m² of its surface (a film of three hundredths of a millimetre), and the time it
/// takes, seconds.
pub(super) const OIL_KG_M2: Spread = Spread::within_factor(0.03, 2.0);
pub(super) const OIL_S: f64 = 180.0;
/// Browning counts from here, °C; at the second figure so many seconds (of one batch) bring its onset, half as many for
/// each ten kelvins more.
pub(super) const BROWNS_FROM_C: f64 = 115.0;
pub(super) const BROWNING_C: f64 = 140.0;
pub(super) const BROWNING_S: Spread = Spread::within_factor(120.0, 1.6);
/// Less water than this is no broth that could boil dry, kg.
pub(super) const BROTH_KG: f64 = 0.15;
/// Spatter from a frying pan: share of its fat per second.
pub(super) const SPATTER_PER_S: f64 = 3.0e-5;

/// How full a vessel may be at a rolling boil and at a simmer, share of its height.
pub(super) const FULL_BOIL: f64 = 2.0 / 3.0;
/// Under pressure, with what swells and foams, no more than half: the foam must not reach the valve.
pub(super) const FULL_FOAMING: f64 = 0.5;
pub(super) const FULL_SIMMER: f64 = 0.8;
pub(super) const FULL: f64 = 1.0;

/// Share of the time one's hands are busy with a vessel.
pub(super) const ATTENTION_FRY: f64 = 0.8;
pub(super) const ATTENTION_SWEAT: f64 = 0.25;
pub(super) const ATTENTION_WATCH: f64 = 0.15;
pub(super) const ATTENTION_SIMMER: f64 = 0.03;
/// The longest that a short act keeps the cook, seconds.
pub(super) const LONGEST_ACT_S: f64 = 900.0;
/// A vessel out of use cools to the room with this time constant, seconds.
pub(super) const EMPTY_COOLS_S: f64 = 900.0;
