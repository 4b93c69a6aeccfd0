//! A number for content: the same bytes give the same number on every machine.
//!
//! FNV-1a with 64 bits (Fowler, Noll, Vo; IETF draft-eastlake-fnv gives offset basis, prime and test vectors, from
//! memory). It serves as the key of what was cooked already and as the seed of the draws; nothing here guards against
//! content made to collide.

/// The running hash.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct Content(u64);

impl Content {
    /// Of nothing.
    pub(crate) const fn new() -> Self {
        Content(0xcbf2_9ce4_8422_2325)
    }

    /// With these bytes added, and their number, so that 'ab' + 'c' is not 'a' + 'bc'.
    pub(crate) fn with(self, bytes: &[u8]) -> Self {
        self.bytes(&(bytes.len() as u64).to_le_bytes()).bytes(bytes)
    }

    fn bytes(self, bytes: &[u8]) -> Self {
        let step = |hash: u64, byte: &u8| (hash ^ u64::from(*byte)).wrapping_mul(0x0100_0000_01b3);
        Content(bytes.iter().fold(self.0, step))
    }

    /// As a number.
    pub(crate) const fn number(self) -> u64 {
        self.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Test vectors of the draft, from memory.
    #[test]
    fn vectors() {
        for (text, hash) in [
            ("", 0xcbf2_9ce4_8422_2325),
            ("a", 0xaf63_dc4c_8601_ec8c),
            ("foobar", 0x8594_4171_f739_67e8),
        ] {
            assert_eq!(Content::new().bytes(text.as_bytes()).number(), hash, "{text}");
        }
    }

    #[test]
    fn where_one_part_ends_matters() {
        assert_ne!(
            Content::new().with(b"ab").with(b"c"),
            Content::new().with(b"a").with(b"bc")
        );
    }
}
