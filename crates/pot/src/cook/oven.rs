//! The oven: one temperature of air and walls for all that stands in it, driven by a thermostat.
//!
//! C·dT/dt = P − U·(T − room) − what the food takes up, with P between nought and full as the dial asks. A dish goes into
//! an oven that is hot; an open door and a cold load cost it degrees that it wins back as fast as its power allows.

use crate::Kitchen;
use crate::cook::conditions::{read, sane};
use crate::cook::practice;

/// The oven in one run.
#[derive(Clone, Copy, Debug)]
pub(super) struct Oven {
    /// True temperature, °C.
    pub(super) temp_c: f64,
    /// Convection from its air, W/(m²·K).
    pub(super) convection_w_m2k: f64,
    dial_c: Option<f64>,
    offset_k: f64,
    most_w: f64,
    capacity_j_k: f64,
    loss_w_k: f64,
    door_k: f64,
}

impl Oven {
    pub(super) fn new(kitchen: &Kitchen, room_c: f64, z: f64) -> Self {
        let oven = &kitchen.oven;
        Oven {
            temp_c: room_c,
            convection_w_m2k: read(oven.convection_w_m2k, z, 0.5, 200.0),
            dial_c: None,
            offset_k: read(oven.offset_k, z, -100.0, 100.0),
            most_w: sane(oven.power.watts(), 0.0, 50_000.0, 2500.0),
            // A lighter oven runs with the hotter one: quicker back after the door.
            capacity_j_k: read(oven.capacity_j_k, -z, 100.0, 1e6),
            loss_w_k: read(oven.loss_w_k, 0.0, 0.0, 1000.0),
            door_k: practice::DOOR_K.at(-z),
        }
    }

    /// Turns the dial; none switches it off.
    pub(super) fn turn(&mut self, dial_c: Option<f64>) {
        self.dial_c = dial_c.filter(|c| c.is_finite()).map(|c| c.clamp(-20.0, 350.0));
    }

    /// What the thermostat steers for, °C.
    fn steers_for_c(&self) -> Option<f64> {
        self.dial_c.map(|dial| dial + self.offset_k)
    }

    /// Hot before the dish goes in: as hot as the dial says, or as its power can make it. Gives how long that takes from
    /// where it stands, seconds, and what the dial says, °C; none where it is hot.
    pub(super) fn heat_up(&mut self, room_c: f64) -> Option<(f64, f64)> {
        let (dial_c, to_c) = (self.dial_c?, self.steers_for_c()?);
        let (loss, from_c) = (self.loss_w_k.max(1e-6), self.temp_c);
        // An oven creeps up to its hottest for ever: a kelvin below is as good.
        let to_c = to_c.min(room_c + self.most_w / loss - 1.0);
        self.temp_c = to_c;
        let spare = |c: f64| (self.most_w - loss * (c - room_c)).max(1e-3);
        let takes_s = self.capacity_j_k / loss * libm::log(spare(from_c) / spare(to_c));
        (takes_s > 0.0).then_some((takes_s, dial_c))
    }

    /// The door is opened for a moment. Twice in one moment is once.
    pub(super) fn open_door(&mut self, room_c: f64) {
        if let Some(c) = self.steers_for_c() {
            self.temp_c = self.temp_c.min((c - self.door_k).max(room_c.min(c)));
        }
    }

    /// A step in which what stands in it took up so much heat, joules.
    pub(super) fn go_on(&mut self, dt_s: f64, taken_j: f64, room_c: f64) {
        if dt_s <= 0.0 {
            return;
        }
        let stored = self.capacity_j_k / dt_s;
        let taken_w = taken_j / dt_s;
        let watts = self.steers_for_c().map_or(0.0, |c| {
            (stored * (c - self.temp_c) + taken_w + self.loss_w_k * (c - room_c)).clamp(0.0, self.most_w)
        });
        let drive = stored * self.temp_c + watts + self.loss_w_k * room_c - taken_w;
        self.temp_c = (drive / (stored + self.loss_w_k)).clamp(room_c.min(self.temp_c), 400.0);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use potwright_measure::Temperature;

    /// From 20 °C to 180 °C, empty: as long as [`crate::Oven::preheat`] has it in closed form, and then it stays there.
    #[test]
    fn heats_up_as_long_as_the_closed_form_says() {
        let kitchen = Kitchen::default();
        let mut oven = Oven::new(&kitchen, 20.0, 0.0);
        oven.turn(Some(180.0));
        let mut seconds = 0.0_f64;
        while oven.temp_c < 179.99 && seconds < 1e5 {
            oven.go_on(1.0, 0.0, 20.0);
            seconds += 1.0;
        }
        let at = Temperature::from_celsius;
        let expected = kitchen.oven.preheat(at(180.0), at(20.0)).unwrap().seconds();
        assert!((seconds - expected).abs() < 3.0, "{seconds} for {expected}");
        (0..100).for_each(|_| oven.go_on(60.0, 0.0, 20.0));
        assert!((oven.temp_c - 180.0).abs() < 1e-9);
        // Turned down it cools by its own losses: τ = 9000 ÷ 5 = 1800 s, from 180 to 150 °C in 1800 · ln(160 ÷ 130) = 374 s.
        oven.turn(Some(150.0));
        let mut seconds = 0.0_f64;
        while oven.temp_c > 150.0 + 1e-6 && seconds < 1e5 {
            oven.go_on(1.0, 0.0, 20.0);
            seconds += 1.0;
        }
        assert!((seconds - 374.0).abs() < 3.0, "{seconds}");
    }

    /// An open door and a cold load cost degrees, which come back.
    #[test]
    fn the_door_and_a_cold_load_cost_degrees() {
        let mut oven = Oven::new(&Kitchen::default(), 20.0, 0.0);
        oven.turn(Some(180.0));
        let (takes_s, to_c) = oven.heat_up(20.0).unwrap();
        assert!((takes_s - 694.2).abs() < 0.5 && to_c == 180.0, "{takes_s}");
        oven.open_door(20.0);
        oven.open_door(20.0);
        assert!((oven.temp_c - (180.0 - practice::DOOR_K.mid)).abs() < 1e-9);
        let behind = |load_w: f64| {
            let mut oven = oven;
            (0..60).for_each(|_| oven.go_on(1.0, load_w, 20.0));
            180.0 - oven.temp_c
        };
        assert!(behind(600.0) > behind(0.0) && behind(0.0) < practice::DOOR_K.mid);
    }
}
