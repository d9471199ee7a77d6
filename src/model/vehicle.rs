//! A vehicle: what the sums and the papers need to know of it, and who stands behind it on which day.

use serde::{Deserialize, Serialize};
use time::{Date, OffsetDateTime};

use super::coded;
use super::ids::{BranchId, CustomerId, VehicleId};

coded! {
    /// Vehicle category of the UN consolidated resolution (M: persons, N: goods).
    "vehicle-category" VehicleCategory {
        /// Passenger car.
        M1 = "M1",
        /// Bus up to 5 t.
        M2 = "M2",
        /// Bus above 5 t.
        M3 = "M3",
        /// Goods up to 3.5 t.
        N1 = "N1",
        /// Goods up to 12 t.
        N2 = "N2",
        /// Goods above 12 t.
        N3 = "N3",
        /// Anything else.
        Other = "other",
    }
}

coded! {
    /// How the engine takes its air.
    "aspiration" Aspiration {
        /// By itself.
        Natural = "natural",
        /// Turbocharged or supercharged.
        Boosted = "boosted",
    }
}

coded! {
    /// How petrol gets into the engine.
    "petrol-injection" PetrolInjection {
        /// One injector in each inlet port.
        Port = "port",
        /// Into the engine cylinder.
        Direct = "direct",
        /// One injector for all.
        SinglePoint = "single-point",
        /// No injection.
        Carburettor = "carburettor",
    }
}

coded! {
    /// What the vehicle's odometer counts.
    "odometer-unit" OdometerUnit {
        /// Kilometres.
        Km = "km",
        /// Miles.
        Mi = "mi",
    }
}

coded! {
    /// What a customer is to a vehicle.
    "vehicle-role" VehicleRole {
        /// Owns it.
        Owner = "owner",
        /// Drives and keeps it; reminders go here.
        Keeper = "keeper",
        /// Pays.
        Payer = "payer",
        /// Is asked.
        Contact = "contact",
    }
}

/// What the shop writes down of a vehicle. Empty texts and `None` mean "not known yet".
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct NewVehicle {
    /// Plate as on the vehicle.
    pub plate: String,
    /// Country sign of the plate.
    pub plate_country: String,
    /// VIN, capitals; empty when there is only a chassis number.
    pub vin: String,
    /// Chassis number of a vehicle without VIN.
    pub chassis_number: String,
    /// Category.
    pub category: VehicleCategory,
    /// Maker, as text.
    pub make: String,
    /// Model, as text.
    pub model: String,
    /// First registration.
    pub first_registered_on: Option<Date>,
    /// Engine code.
    pub engine_code: String,
    /// Engine number.
    pub engine_number: String,
    /// Displacement, cm3.
    pub displacement_cm3: Option<i64>,
    /// Count of engine cylinders, 1 to 12.
    pub engine_cylinders: Option<i64>,
    /// Rated power, kW.
    pub rated_power_kw: Option<f64>,
    /// Engine speed of rated power, 1/min.
    pub rated_rpm: Option<i64>,
    /// Aspiration.
    pub aspiration: Aspiration,
    /// Boost over ambient, kPa.
    pub boost_kpa: Option<f64>,
    /// Petrol injection.
    pub petrol_injection: PetrolInjection,
    /// Petrol injector connector, in words.
    pub injector_connector: String,
    /// Control pin of the petrol injectors, in words.
    pub control_pin: String,
    /// Gross mass, kg.
    pub gross_mass_kg: Option<i64>,
    /// What the rear axle may still carry, kg.
    pub rear_axle_reserve_kg: Option<i64>,
    /// Has a catalyst.
    pub has_catalyst: bool,
    /// Mixture is controlled by an oxygen sensor.
    pub is_closed_loop: bool,
    /// Maker's CO limit at idle, per cent by volume.
    pub maker_idle_co_percent: Option<f64>,
    /// Maker's CO limit at raised idle, per cent by volume.
    pub maker_raised_co_percent: Option<f64>,
    /// Maker's lowest lambda.
    pub maker_lambda_least: Option<f64>,
    /// Maker's highest lambda.
    pub maker_lambda_most: Option<f64>,
    /// Emission class, as text.
    pub emission_class: String,
    /// OBD standard, as text.
    pub obd_standard: String,
    /// Stops its engine at a halt.
    pub has_start_stop: bool,
    /// Has an electric drive beside the engine.
    pub is_hybrid: bool,
    /// What the odometer counts.
    pub odometer_unit: OdometerUnit,
}

/// A vehicle as stored; the fields of [`NewVehicle`] with identity and version.
#[derive(Debug, Clone, PartialEq, sqlx::FromRow)]
#[allow(missing_docs, reason = "the fields are those of NewVehicle, explained there")]
pub struct Vehicle {
    pub id: VehicleId,
    pub branch_id: BranchId,
    pub plate: String,
    pub plate_country: String,
    pub vin: String,
    pub chassis_number: String,
    pub category: VehicleCategory,
    pub make: String,
    pub model: String,
    pub first_registered_on: Option<Date>,
    pub engine_code: String,
    pub engine_number: String,
    pub displacement_cm3: Option<i64>,
    pub engine_cylinders: Option<i64>,
    pub rated_power_kw: Option<f64>,
    pub rated_rpm: Option<i64>,
    pub aspiration: Aspiration,
    pub boost_kpa: Option<f64>,
    pub petrol_injection: PetrolInjection,
    pub injector_connector: String,
    pub control_pin: String,
    pub gross_mass_kg: Option<i64>,
    pub rear_axle_reserve_kg: Option<i64>,
    pub has_catalyst: bool,
    pub is_closed_loop: bool,
    pub maker_idle_co_percent: Option<f64>,
    pub maker_raised_co_percent: Option<f64>,
    pub maker_lambda_least: Option<f64>,
    pub maker_lambda_most: Option<f64>,
    pub emission_class: String,
    pub obd_standard: String,
    pub has_start_stop: bool,
    pub is_hybrid: bool,
    pub odometer_unit: OdometerUnit,
    pub created_at: OffsetDateTime,
    pub version: i64,
}

impl Vehicle {
    /// "Corvane Pilot 1.6": maker and model in one line.
    pub fn title(&self) -> String {
        format!("{} {}", self.make, self.model).trim().to_owned()
    }

    /// The VIN, or the chassis number of a vehicle without one; empty when neither is known.
    pub fn identity(&self) -> &str {
        if self.vin.is_empty() { &self.chassis_number } else { &self.vin }
    }
}

/// Whether an identity that a paper carries is a VIN; else it is the chassis number of a vehicle without one.
///
/// Papers keep one text for both. A number that has the form of ISO 3779 is a VIN by that standard.
pub fn is_vin(identity: &str) -> bool {
    crate::calc::vin::check(identity).well_formed
}

/// Who is what to a vehicle, from when to when.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct VehiclePerson {
    /// The vehicle.
    pub vehicle_id: VehicleId,
    /// The customer.
    pub customer_id: CustomerId,
    /// In which role.
    pub role: VehicleRole,
    /// First day.
    pub from_on: Date,
    /// Last day, or still.
    pub to_on: Option<Date>,
}

coded! {
    /// What explains an odometer reading that does not follow from the one before.
    #[derive(Default)]
    "odometer-explained" OdometerExplained {
        /// Nothing to explain.
        #[default]
        Plain = "plain",
        /// The earlier reading was a typing error.
        TypingErrorBefore = "typing-error-before",
        /// The instrument was replaced.
        Replaced = "replaced",
        /// The earlier reading was in miles.
        WasMiles = "was-miles",
        /// It reads so, the reason is unknown.
        AsRead = "as-read",
    }
}

/// One odometer reading, kept in kilometres with what was typed.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct OdometerReading {
    /// Day of reading.
    pub read_on: Date,
    /// Kilometres.
    pub km: i64,
    /// As typed, with unit.
    pub typed: String,
    /// What explains it.
    pub explained: OdometerExplained,
}
