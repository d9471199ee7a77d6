//! What a proof can ask for. Each is met in the file of its stage; what can hurt is named here, where no text of a rule set
//! reaches it.

use serde::Deserialize;

use crate::model::evidence::Section;
use crate::model::part::PartCategory;

/// What a proof needs to be met.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Need {
    /// Identity, plate and what the sums need to know.
    VehicleKnown,
    /// A keeper with name and a way to be reached.
    KeeperKnown,
    /// Odometer at arrival.
    Odometer,
    /// A photo in this slot.
    Photo(String),
    /// Suitability, not "not suitable".
    Suitable,
    /// A nozzle that fits.
    Nozzle,
    /// A container that fits.
    ContainerSized,
    /// One of these parts, with serial or batch.
    Part(Vec<PartCategory>),
    /// Every part has a serial or a batch, none doubled.
    PartsTraceable,
    /// Every part that must be approved carries a mark that fits the fuel.
    MarksFitFuel,
    /// No part on the vehicle is under an open recall.
    NotRecalled,
    /// Container or cylinder within its date.
    StorageInDate,
    /// A row for each engine cylinder, each answering, no injector twice.
    CylinderTable,
    /// Every line of this group of the checklist passed.
    Checklist(String),
    /// How the level is known.
    LevelSensing,
    /// Calibrated with engine and vaporiser warm.
    CalibratedWarm,
    /// Calibrated in closed loop without fault codes.
    CalibratedClean,
    /// The nozzle served.
    NozzleAdequate,
    /// Trims on both fuels within the limit.
    Trims,
    /// Enough was driven on both fuels to compare them.
    RoadCovered,
    /// Both fuels are alike on the road.
    RoadAlike,
    /// No fault codes after driving on both fuels.
    CleanAfterDrive,
    /// All joints of a section searched and dry.
    LeakJoints(Section),
    /// Pressure decay of a section within the shop's limit.
    LeakDecay(Section),
    /// Exhaust on petrol within limits.
    ExhaustPetrol,
    /// Exhaust on gas within limits.
    ExhaustGas,
    /// Changes over and back, returns to petrol when empty.
    Changeover,
    /// Gas shut with ignition off and with the engine stalled.
    ShutOff,
    /// Filling stops by itself.
    FillStop,
    /// Level shows right.
    Level,
    /// Housing vent open, excess-flow valve present.
    VentAndExcessFlow,
    /// Plate or label in place.
    Label,
    /// What an inspection found is written down, be it nothing.
    Deficiencies,
    /// Each container or cylinder that came was looked at, and none is condemned.
    VesselChecked,
    /// No open finding in this job.
    FindingsDecided,
    /// All topics explained and manuals given.
    Instructed,
    /// Taken over with a signature.
    Received,
}

impl Need {
    /// A test that runs the engine or opens the gas, or is recorded with one: not to be made on a vehicle on which something
    /// is dangerous.
    pub fn is_test(&self) -> bool {
        matches!(
            self,
            Self::LeakJoints(_)
                | Self::LeakDecay(_)
                | Self::ExhaustPetrol
                | Self::ExhaustGas
                | Self::Changeover
                | Self::ShutOff
                | Self::FillStop
                | Self::Level
                | Self::VentAndExcessFlow
                | Self::Label
        )
    }

    /// Looks at the vehicle itself, which a repeat need not do where the first inspection found it in order.
    pub fn is_examination(&self) -> bool {
        self.is_test()
            || matches!(self, Self::Checklist(_) | Self::StorageInDate | Self::MarksFitFuel | Self::PartsTraceable)
    }

    /// Nobody may waive what can hurt: leak, container date, fixing, vent, shut-off, mark. A looser line of a shop cannot
    /// change that, so it is asked of the need, not of the text.
    pub fn is_never_waived(&self) -> bool {
        match self {
            Self::LeakJoints(_)
            | Self::LeakDecay(_)
            | Self::StorageInDate
            | Self::NotRecalled
            | Self::Deficiencies
            | Self::VesselChecked
            | Self::VentAndExcessFlow
            | Self::ShutOff
            | Self::MarksFitFuel => true,
            Self::Checklist(group) => {
                matches!(group.as_str(), "fixing" | "housing" | "refitted" | "requalified" | "petrol-tight")
            }
            _ => false,
        }
    }
}
