//! Pure sums: numbers in, numbers out. No clock, no disk, no network.
