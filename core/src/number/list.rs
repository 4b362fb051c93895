//! Lists of bounded length.

use heapless::Vec;

/// The first `N` of `items`. `collect` would do the same, but for a panic on more than `N`; the callers' own bounds
/// keep that from happening, which the compiler cannot see.
pub(crate) fn list<T, const N: usize>(items: impl Iterator<Item = T>) -> Vec<T, N> {
    let mut list = Vec::new();
    for item in items.take(N) {
        let _ = list.push(item);
    }
    list
}
