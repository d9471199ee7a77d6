//! Mole, mass and liquid-volume fractions; what is refused.

use fuelwright::calc::composition::{Composition, PRESETS, Shares};
use fuelwright::calc::{Error, Outside};

use crate::cases::p60_b40;
use crate::reference::close;

#[test]
fn sixty_mole_per_cent_propane_is_53_2_by_mass_and_56_7_by_liquid_volume() {
    let fuel = p60_b40();
    close("mass", fuel.mass().propane, 0.532, 0.0005);
    close("liquid volume", fuel.liquid_volume().unwrap().propane, 0.567, 0.0005);
}

#[test]
fn each_way_in_is_undone_by_its_way_out() {
    let typed =
        Shares { ethane: 0.02, propane: 0.48, propene: 0.1, n_butane: 0.3, isobutane: 0.1, ..Shares::default() };
    let by_mass = Composition::from_mass(typed).unwrap().mass().to_array();
    let by_volume = Composition::from_liquid_volume(typed).unwrap().liquid_volume().unwrap().to_array();
    for (i, share) in typed.to_array().into_iter().enumerate() {
        close("mass", by_mass[i], share, 1e-12);
        close("volume", by_volume[i], share, 1e-12);
    }
}

#[test]
fn a_sum_that_misses_one_is_refused_and_says_the_sum() {
    let refused = Composition::from_mole(Shares { propane: 0.6, n_butane: 0.39, ..Shares::default() });
    let Err(Outside { quantity, got, .. }) = refused else { panic!("taken") };
    assert_eq!(quantity, "composition");
    close("sum", got, 0.99, 1e-12);
    assert!(Composition::from_mole(Shares::default()).is_err());
    let scaled = Composition::from_mole(Shares { propane: 0.6, n_butane: 0.4005, ..Shares::default() }).unwrap();
    close("scaled", scaled.mole().iter().sum(), 1.0, 1e-12);
}

#[test]
fn a_negative_share_or_none_at_all_is_refused_by_name() {
    for share in [-0.1, 1.2, f64::NAN, f64::INFINITY] {
        let refused = Composition::from_mole(Shares { propane: 1.0, n_butane: share, ..Shares::default() });
        assert_eq!(refused.unwrap_err().quantity, "n_butane");
    }
}

#[test]
fn methane_has_no_liquid_volume_at_15_c() {
    let refused = Composition::from_liquid_volume(Shares { methane: 0.1, propane: 0.9, ..Shares::default() });
    assert!(matches!(refused, Err(Error::Unfit { component: "methane", .. })));
}

#[test]
fn json_reads_back_to_the_last_bit_and_refuses_strangers() {
    let text = serde_json::to_string(&p60_b40()).unwrap();
    assert_eq!(text, r#"{"propane":0.6,"n_butane":0.4}"#);
    assert_eq!(serde_json::from_str::<Composition>(&text).unwrap(), p60_b40());
    let odd =
        Composition::from_mole(Shares { propane: 0.333, n_butane: 0.333, isobutane: 0.3338, ..Shares::default() });
    let odd = odd.unwrap();
    assert_eq!(serde_json::from_str::<Composition>(&serde_json::to_string(&odd).unwrap()).unwrap(), odd);
    assert!(serde_json::from_str::<Composition>(r#"{"propane":1,"butene":0}"#).is_err());
    assert!(serde_json::from_str::<Composition>(r#"{"propane":0.5}"#).is_err());
}

#[test]
fn every_preset_is_a_composition() {
    for preset in PRESETS {
        close(preset.key, preset.composition.mole().iter().sum(), 1.0, 1e-12);
        assert_eq!(preset.is_lpg, preset.composition.is_liquefiable(), "{}", preset.key);
        assert!(!preset.source.is_empty());
    }
}
