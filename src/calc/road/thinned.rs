//! A list that never grows beyond its bound: when it is full, every other item goes, and from then on only every
//! second, fourth, eighth... is taken. What is left is spread evenly over all that came.

/// At most `most` of the items that were pushed.
#[derive(Debug, Clone)]
pub(super) struct Thinned<T> {
    kept: Vec<T>,
    most: usize,
    every: u64,
    seen: u64,
}

impl<T> Thinned<T> {
    /// Holds at most `most`, which is even and above nought.
    pub const fn new(most: usize) -> Self {
        Self { kept: Vec::new(), most, every: 1, seen: 0 }
    }

    pub fn push(&mut self, item: T) {
        if self.seen.is_multiple_of(self.every) {
            if self.kept.len() == self.most {
                let mut at = 0;
                self.kept.retain(|_| {
                    at += 1;
                    at % 2 == 1
                });
                self.every *= 2;
            }
            // The bound is even, so the item at hand is one of those that the coarser step takes.
            self.kept.push(item);
        }
        self.seen += 1;
    }

    /// All that came, kept or not.
    pub const fn seen(&self) -> u64 {
        self.seen
    }

    pub fn kept(&self) -> &[T] {
        &self.kept
    }

    pub fn clear(&mut self) {
        self.kept.clear();
        self.every = 1;
        self.seen = 0;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_full_list_keeps_every_second_fourth_eighth() {
        let mut list = Thinned::new(4);
        (0..21).for_each(|n| list.push(n));
        assert_eq!((list.kept(), list.seen()), ([0, 8, 16].as_slice(), 21));
        list.clear();
        list.push(7);
        assert_eq!((list.kept(), list.seen()), ([7].as_slice(), 1));
    }
}
