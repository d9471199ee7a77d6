//! A part fitted to a vehicle, traceable by serial or batch.

use time::{Date, OffsetDateTime};

use super::coded;
use super::ids::{JobId, PartId, PersonId, VehicleId};

coded! {
    /// What a part is (kinds of the minimum list of UN R67 17.3.1 and R110, paragraphs from memory).
    "part-category" PartCategory {
        /// LPG container.
        Container = "container",
        /// Valves of a container in one body: fill stop, level, relief, service valve with excess flow.
        Multivalve = "multivalve",
        /// Housing over the container's fittings.
        GasTightHousing = "gas-tight-housing",
        /// Where the gas goes in.
        FillingUnit = "filling-unit",
        /// LPG vaporiser with regulator.
        Vaporiser = "vaporiser",
        /// Shut-off near the vaporiser.
        ShutOffValve = "shut-off-valve",
        /// Filter on the vapour side.
        Filter = "filter",
        /// Injectors and rail.
        InjectorRail = "injector-rail",
        /// Electronic control unit.
        ControlUnit = "control-unit",
        /// Pressure and temperature sensors.
        Sensor = "sensor",
        /// Rigid tube.
        RigidLine = "rigid-line",
        /// Flexible hose.
        Hose = "hose",
        /// CNG cylinder.
        Cylinder = "cylinder",
        /// Valve of a CNG cylinder.
        CylinderValve = "cylinder-valve",
        /// CNG pressure regulator.
        PressureRegulator = "pressure-regulator",
        /// Anything else.
        Other = "other",
    }
}

coded! {
    /// How exactly a date of manufacture is known.
    "date-precision" DatePrecision {
        /// To the day.
        Day = "day",
        /// To the month; the month ends on its last day.
        Month = "month",
        /// To the year.
        Year = "year",
    }
}

coded! {
    /// How a part came to stand in the books.
    #[derive(Default)]
    "part-origin" PartOrigin {
        /// Fitted here.
        #[default]
        Fitted = "fitted",
        /// Found on the vehicle; somebody else fitted it.
        Found = "found",
    }
}

/// What the technician writes down of a part.
#[derive(Debug, Clone, PartialEq)]
pub struct NewPart {
    /// What it is.
    pub category: PartCategory,
    /// Maker.
    pub maker: String,
    /// Type, as on the part.
    pub type_name: String,
    /// Approval mark, as on the part.
    pub approval_mark: String,
    /// Component class, if it stands on the part.
    pub component_class: String,
    /// Serial number.
    pub serial: String,
    /// Batch.
    pub batch: String,
    /// Made on: the last day of the month or year when known no better.
    pub made_on: Option<Date>,
    /// How exactly.
    pub made_precision: Option<DatePrecision>,
    /// Water capacity of a container or cylinder, L.
    pub capacity_l: Option<f64>,
    /// Test pressure on the plate, kPa.
    pub test_pressure_kpa: Option<f64>,
    /// Working pressure on the plate of a cylinder, kPa.
    pub working_pressure_kpa: Option<f64>,
    /// Last test of a vessel, as its plate or papers show it.
    pub last_tested_on: Option<Date>,
    /// Last day of a vessel by its label.
    pub end_of_life_on: Option<Date>,
    /// Place on the vehicle.
    pub place: String,
    /// Day of fitting; for a part that was found, the day it was looked at.
    pub fitted_on: Date,
    /// Fitted here, or found.
    pub origin: PartOrigin,
}

/// A part as stored; the fields of [`NewPart`] with identity.
#[derive(Debug, Clone, PartialEq, sqlx::FromRow)]
#[allow(missing_docs, reason = "the fields are those of NewPart, explained there")]
pub struct Part {
    pub id: PartId,
    pub vehicle_id: VehicleId,
    pub fitted_in: JobId,
    pub removed_in: Option<JobId>,
    pub category: PartCategory,
    pub maker: String,
    pub type_name: String,
    pub approval_mark: String,
    pub component_class: String,
    pub serial: String,
    pub batch: String,
    pub made_on: Option<Date>,
    pub made_precision: Option<DatePrecision>,
    pub capacity_l: Option<f64>,
    pub test_pressure_kpa: Option<f64>,
    pub working_pressure_kpa: Option<f64>,
    pub last_tested_on: Option<Date>,
    pub end_of_life_on: Option<Date>,
    pub place: String,
    pub fitted_on: Date,
    pub origin: PartOrigin,
    pub removed_on: Option<Date>,
    pub removed_reason: String,
    /// Where it went after it was taken off.
    pub whereabouts: String,
    pub shared_reason: String,
    pub entered_by: PersonId,
    pub entered_at: OffsetDateTime,
    pub version: i64,
}

impl Part {
    /// On the vehicle today.
    pub fn is_fitted(&self) -> bool {
        self.removed_on.is_none()
    }

    /// Somebody else fitted it.
    pub fn is_found(&self) -> bool {
        self.origin == PartOrigin::Found
    }

    /// A container or a cylinder.
    pub fn is_vessel(&self) -> bool {
        matches!(self.category, PartCategory::Container | PartCategory::Cylinder)
    }

    /// The same thing by all that is written on it: category, maker, mark or type, and serial.
    pub fn is_same_thing(&self, other: &NewPart) -> bool {
        let same = |a: &str, b: &str| !a.is_empty() && fold(a) == fold(b);
        self.category == other.category
            && same(&self.serial, &other.serial)
            && same(&self.maker, &other.maker)
            && (same(&self.approval_mark, &other.approval_mark) || same(&self.type_name, &other.type_name))
    }
}

/// Letters and figures alone, capitals: how two writings of one serial are compared.
pub fn fold(text: &str) -> String {
    text.chars().filter(|c| c.is_alphanumeric()).flat_map(char::to_uppercase).collect()
}
