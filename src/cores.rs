//! Work in pieces that need nothing of each other, on all cores where the caller allows threads.
//!
//! Every piece gets the same input however many cores there are, so that what comes out is the same to the last bit.

/// What becomes of each piece, in their order.
#[cfg(feature = "threads")]
pub(crate) fn map<T: Sync, R: Send>(pieces: &[T], each: impl Fn(&T) -> R + Send + Sync) -> Vec<R> {
    use rayon::iter::{IntoParallelRefIterator, ParallelIterator};

    match pieces {
        [] => Vec::new(),
        [one] => vec![each(one)],
        many => many.par_iter().map(each).collect(),
    }
}

/// What becomes of each piece, in their order.
#[cfg(not(feature = "threads"))]
pub(crate) fn map<T, R>(pieces: &[T], each: impl Fn(&T) -> R) -> Vec<R> {
    pieces.iter().map(each).collect()
}

/// What becomes of two works.
#[cfg(feature = "threads")]
pub(crate) fn both<A: Send, B: Send>(
    one: impl FnOnce() -> A + Send,
    other: impl FnOnce() -> B + Send,
) -> (A, B) {
    rayon::join(one, other)
}

/// What becomes of two works.
#[cfg(not(feature = "threads"))]
pub(crate) fn both<A, B>(one: impl FnOnce() -> A, other: impl FnOnce() -> B) -> (A, B) {
    (one(), other())
}

#[cfg(test)]
mod tests {
    #[test]
    fn pieces_come_back_in_their_order() {
        let pieces: Vec<u32> = (0..1000).collect();
        let doubled = super::map(&pieces, |piece| 2 * piece);
        assert!(doubled.iter().zip(&pieces).all(|(a, b)| *a == 2 * b));
        assert!(super::map(&[], |piece: &u32| 2 * piece).is_empty());
        assert_eq!(super::both(|| 1, || "two"), (1, "two"));
    }
}
