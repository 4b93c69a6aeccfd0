//! Work shared among all cores.

use std::panic::resume_unwind;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::thread;

/// What work makes of items, in their order, worked out on all cores; a core that is busy elsewhere takes fewer.
pub fn side_by_side<T: Sync, R: Send>(items: &[T], work: impl Fn(&T) -> R + Sync) -> Vec<R> {
    let hands = thread::available_parallelism().map_or(1, usize::from);
    by_hands(hands, items, work)
}

/// [`side_by_side`] on so many cores; what comes out is the same for any number of them.
pub(crate) fn by_hands<T: Sync, R: Send>(hands: usize, items: &[T], work: impl Fn(&T) -> R + Sync) -> Vec<R> {
    let hands = hands.min(items.len());
    let next = AtomicUsize::new(0);
    let hand = || {
        let mut done = Vec::new();
        loop {
            let index = next.fetch_add(1, Ordering::Relaxed);
            let Some(item) = items.get(index) else {
                return done;
            };
            done.push((index, work(item)));
        }
    };
    let mut done: Vec<(usize, R)> = thread::scope(|scope| {
        let helpers: Vec<_> = (1..hands).map(|_| scope.spawn(hand)).collect();
        let mut done = hand();
        for helper in helpers {
            done.extend(helper.join().unwrap_or_else(|panic| resume_unwind(panic)));
        }
        done
    });
    done.sort_by_key(|(index, _)| *index);
    done.into_iter().map(|(_, made)| made).collect()
}

#[cfg(test)]
mod tests {
    use super::{by_hands, side_by_side};

    #[test]
    fn all_are_done_in_their_order() {
        let items: Vec<usize> = (0..100).collect();
        let squares: Vec<usize> = (0..100).map(|n| n * n).collect();
        assert_eq!(side_by_side(&items, |n| n * n), squares);
        for hands in [0, 1, 2, 3, 200] {
            assert_eq!(by_hands(hands, &items, |n| n * n), squares, "{hands} hands");
        }
        assert_eq!(side_by_side(&items[..0], |n| n * n), Vec::<usize>::new());
    }
}
