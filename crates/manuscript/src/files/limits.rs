//! How much of a file is read. The figures are our own: far above any page, far below what a machine chokes on.

/// The largest file, in bytes.
pub(super) const FILE: usize = 64 << 20;
/// The largest part of a packed file once unpacked, in bytes: a packed file can grow a thousandfold.
pub(super) const PART: usize = 64 << 20;
/// The most text that is taken out of a file, in bytes.
pub(super) const TEXT: usize = 32 << 20;
/// The most parts of a packed file.
pub(super) const PARTS: usize = 10_000;
/// The deepest elements or groups.
pub(super) const DEPTH: usize = 300;
/// The most spaces that one mark may stand for.
pub(super) const SPACES: usize = 64;

/// Bytes as whole mebibytes, for messages.
pub(super) const fn mebibytes(bytes: usize) -> usize {
    bytes >> 20
}
