//! A quick hash for maps of words. Nobody chooses the words so that they clash; order never comes from a map.

use std::collections::{HashMap, HashSet};
use std::hash::{BuildHasherDefault, Hasher};

pub(crate) type QuickMap<K, V> = HashMap<K, V, BuildHasherDefault<Quick>>;
pub(crate) type QuickSet<K> = HashSet<K, BuildHasherDefault<Quick>>;

/// Multiply, rotate, add, eight bytes at a time; the multiplier is 2⁶⁴ over the golden ratio, made odd.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Quick(u64);

impl Quick {
    fn take(&mut self, word: u64) {
        self.0 = (self.0.rotate_left(23) ^ word).wrapping_mul(0x9E37_79B9_7F4A_7C15);
    }
}

impl Hasher for Quick {
    fn write(&mut self, bytes: &[u8]) {
        for part in bytes.chunks(8) {
            let mut word = [0; 8];
            for (to, from) in word.iter_mut().zip(part) {
                *to = *from;
            }
            self.take(u64::from_le_bytes(word));
        }
    }

    fn write_u8(&mut self, byte: u8) {
        self.take(u64::from(byte));
    }

    fn write_u32(&mut self, number: u32) {
        self.take(u64::from(number));
    }

    fn write_usize(&mut self, number: usize) {
        self.take(number as u64);
    }

    fn finish(&self) -> u64 {
        // A map looks at the top and at the bottom bits.
        self.0 ^ (self.0 >> 32)
    }
}
