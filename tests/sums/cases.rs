//! Mixtures that several tests use.

use fuelwright::calc::composition::{Composition, Shares};

pub fn p60_b40() -> Composition {
    Composition::from_mole(Shares { propane: 0.6, n_butane: 0.4, ..Shares::default() }).unwrap()
}

pub fn propane() -> Composition {
    Composition::from_mole(Shares { propane: 1.0, ..Shares::default() }).unwrap()
}

pub fn methane() -> Composition {
    Composition::from_mole(Shares { methane: 1.0, ..Shares::default() }).unwrap()
}

pub fn nitrogen() -> Composition {
    Composition::from_mole(Shares { nitrogen: 1.0, ..Shares::default() }).unwrap()
}
