//! Vehicles, and the plates they carried.

use time::{Date, OffsetDateTime};

use super::search::{Wanted, column, squeeze};
use super::{Con, Db, Result, exactly_one};
use crate::model::ids::{BranchId, CustomerId, VehicleId};
use crate::model::vehicle::{NewVehicle, Vehicle};

/// Binds what is written down of a vehicle, in the order of the table's columns.
macro_rules! written {
    ($query:expr, $new:expr) => {
        $query
            .bind(&$new.plate)
            .bind(&$new.plate_country)
            .bind(&$new.vin)
            .bind(&$new.chassis_number)
            .bind($new.category)
            .bind(&$new.make)
            .bind(&$new.model)
            .bind($new.first_registered_on)
            .bind(&$new.engine_code)
            .bind(&$new.engine_number)
            .bind($new.displacement_cm3)
            .bind($new.engine_cylinders)
            .bind($new.rated_power_kw)
            .bind($new.rated_rpm)
            .bind($new.aspiration)
            .bind($new.boost_kpa)
            .bind($new.petrol_injection)
            .bind(&$new.injector_connector)
            .bind(&$new.control_pin)
            .bind($new.gross_mass_kg)
            .bind($new.rear_axle_reserve_kg)
            .bind($new.has_catalyst)
            .bind($new.is_closed_loop)
            .bind($new.maker_idle_co_percent)
            .bind($new.maker_raised_co_percent)
            .bind($new.maker_lambda_least)
            .bind($new.maker_lambda_most)
            .bind(&$new.emission_class)
            .bind(&$new.obd_standard)
            .bind($new.has_start_stop)
            .bind($new.is_hybrid)
            .bind($new.odometer_unit)
    };
}

/// One plate of a vehicle, from its first day to its last.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct Plate {
    pub plate: String,
    pub plate_country: String,
    pub from_on: Date,
    /// `None`: still carried.
    pub to_on: Option<Date>,
}

/// A vehicle in a list, with who keeps it.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct Listed {
    pub id: VehicleId,
    pub plate: String,
    pub plate_country: String,
    pub make: String,
    pub model: String,
    /// The VIN, or the chassis number of a vehicle without one.
    pub identity: String,
    pub keeper_id: Option<CustomerId>,
    pub keeper_name: Option<String>,
}

/// The vehicle with this id.
pub async fn find(con: &mut Con, branch: BranchId, id: VehicleId) -> Result<Option<Vehicle>> {
    Ok(sqlx::query_as::<Db, Vehicle>(
        "select id, branch_id, plate, plate_country, vin, chassis_number, category, make, model,
             first_registered_on, engine_code, engine_number, displacement_cm3, engine_cylinders,
             rated_power_kw, rated_rpm, aspiration, boost_kpa, petrol_injection, injector_connector,
             control_pin, gross_mass_kg, rear_axle_reserve_kg, has_catalyst, is_closed_loop,
             maker_idle_co_percent, maker_raised_co_percent, maker_lambda_least, maker_lambda_most,
             emission_class, obd_standard, has_start_stop, is_hybrid, odometer_unit, created_at, version
         from vehicles
         where id = $1
           and branch_id = $2",
    )
    .bind(id)
    .bind(branch)
    .fetch_optional(con)
    .await?)
}

/// A vehicle with this VIN; an empty one is nobody's.
pub async fn find_by_vin(con: &mut Con, branch: BranchId, vin: &str) -> Result<Option<VehicleId>> {
    Ok(sqlx::query_scalar("select id from vehicles where branch_id = $1 and vin = $2 and vin <> '' order by id")
        .bind(branch)
        .bind(vin)
        .fetch_optional(con)
        .await?)
}

/// Vehicles that a query finds, by plate; `first` of them are passed over, at most `most` given.
pub async fn list(con: &mut Con, branch: BranchId, wanted: &Wanted, first: i64, most: i64) -> Result<Vec<Listed>> {
    Ok(sqlx::query_as::<Db, Listed>(
        "select vehicles.id, vehicles.plate, vehicles.plate_country, vehicles.make, vehicles.model,
             case when vehicles.vin = '' then vehicles.chassis_number else vehicles.vin end as identity,
             customers.id as keeper_id, customers.name as keeper_name
         from vehicles
         left join vehicle_people on vehicle_people.vehicle_id = vehicles.id
           and vehicle_people.role = 'keeper'
           and vehicle_people.to_on is null
         left join customers on customers.id = vehicle_people.customer_id
         where vehicles.branch_id = $1
           and ((vehicles.search like $2 escape '\\' and vehicles.search like $3 escape '\\'
                 and vehicles.search like $4 escape '\\' and vehicles.search like $5 escape '\\')
             or ($6 <> '%%' and vehicles.search like $6 escape '\\'))
         order by vehicles.search, vehicles.id
         limit $7 offset $8",
    )
    .bind(branch)
    .bind(wanted.word(0))
    .bind(wanted.word(1))
    .bind(wanted.word(2))
    .bind(wanted.word(3))
    .bind(wanted.whole())
    .bind(most)
    .bind(first)
    .fetch_all(con)
    .await?)
}

/// Vehicles that carry, or carried, this plate; or whose VIN or chassis number it is.
pub async fn list_called(con: &mut Con, branch: BranchId, code: &str) -> Result<Vec<Listed>> {
    let code = squeeze(code);
    if code.is_empty() {
        return Ok(Vec::new());
    }
    Ok(sqlx::query_as::<Db, Listed>(
        "select vehicles.id, vehicles.plate, vehicles.plate_country, vehicles.make, vehicles.model,
             case when vehicles.vin = '' then vehicles.chassis_number else vehicles.vin end as identity,
             customers.id as keeper_id, customers.name as keeper_name
         from vehicles
         left join vehicle_people on vehicle_people.vehicle_id = vehicles.id
           and vehicle_people.role = 'keeper'
           and vehicle_people.to_on is null
         left join customers on customers.id = vehicle_people.customer_id
         where vehicles.branch_id = $1
           and '\n' || vehicles.search || '\n' like '%\n' || $2 || '\n%'
         order by vehicles.search, vehicles.id
         limit 20",
    )
    .bind(branch)
    .bind(code)
    .fetch_all(con)
    .await?)
}

/// Adds a vehicle; its plate begins on `today`.
pub async fn insert(
    con: &mut Con,
    branch: BranchId,
    id: VehicleId,
    new: &NewVehicle,
    at: OffsetDateTime,
    today: Date,
) -> Result<()> {
    let query = sqlx::query(
        "insert into vehicles (id, branch_id, plate, plate_country, vin, chassis_number, category, make, model,
             first_registered_on, engine_code, engine_number, displacement_cm3, engine_cylinders,
             rated_power_kw, rated_rpm, aspiration, boost_kpa, petrol_injection, injector_connector,
             control_pin, gross_mass_kg, rear_axle_reserve_kg, has_catalyst, is_closed_loop,
             maker_idle_co_percent, maker_raised_co_percent, maker_lambda_least, maker_lambda_most,
             emission_class, obd_standard, has_start_stop, is_hybrid, odometer_unit, search, created_at)
         values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14, $15, $16, $17, $18, $19, $20, $21,
             $22, $23, $24, $25, $26, $27, $28, $29, $30, $31, $32, $33, $34, $35, $36)",
    );
    written!(query.bind(id).bind(branch), new).bind(search_of(new, &[])).bind(at).execute(&mut *con).await?;
    insert_plate(con, id, new, today).await
}

/// Saves a vehicle over the version it was read at. Another plate ends the one before.
pub async fn save(
    con: &mut Con,
    branch: BranchId,
    id: VehicleId,
    version: i64,
    new: &NewVehicle,
    today: Date,
) -> Result<()> {
    let plates = plates(&mut *con, id).await?;
    let query = sqlx::query(
        "update vehicles
         set plate = $4, plate_country = $5, vin = $6, chassis_number = $7, category = $8, make = $9,
             model = $10, first_registered_on = $11, engine_code = $12, engine_number = $13,
             displacement_cm3 = $14, engine_cylinders = $15, rated_power_kw = $16, rated_rpm = $17,
             aspiration = $18, boost_kpa = $19, petrol_injection = $20, injector_connector = $21,
             control_pin = $22, gross_mass_kg = $23, rear_axle_reserve_kg = $24, has_catalyst = $25,
             is_closed_loop = $26, maker_idle_co_percent = $27, maker_raised_co_percent = $28,
             maker_lambda_least = $29, maker_lambda_most = $30, emission_class = $31, obd_standard = $32,
             has_start_stop = $33, is_hybrid = $34, odometer_unit = $35, search = $36, version = version + 1
         where id = $1
           and branch_id = $2
           and version = $3",
    );
    let written = written!(query.bind(id).bind(branch).bind(version), new);
    exactly_one(&written.bind(search_of(new, &plates)).execute(&mut *con).await?)?;
    let open = plates.iter().find(|plate| plate.to_on.is_none());
    if open.is_some_and(|open| open.plate == new.plate && open.plate_country == new.plate_country) {
        return Ok(());
    }
    sqlx::query("update vehicle_plates set to_on = $2 where vehicle_id = $1 and to_on is null")
        .bind(id)
        .bind(today)
        .execute(&mut *con)
        .await?;
    insert_plate(con, id, new, today).await
}

async fn insert_plate(con: &mut Con, id: VehicleId, new: &NewVehicle, from_on: Date) -> Result<()> {
    if new.plate.is_empty() {
        return Ok(());
    }
    sqlx::query(
        "insert into vehicle_plates (id, vehicle_id, plate, plate_country, from_on) values ($1, $2, $3, $4, $5)",
    )
    .bind(uuid::Uuid::now_v7().to_string())
    .bind(id)
    .bind(&new.plate)
    .bind(&new.plate_country)
    .bind(from_on)
    .execute(con)
    .await?;
    Ok(())
}

/// Every plate a vehicle carried here, the present one first.
pub async fn plates(con: &mut Con, id: VehicleId) -> Result<Vec<Plate>> {
    Ok(sqlx::query_as::<Db, Plate>(
        "select plate, plate_country, from_on, to_on
         from vehicle_plates
         where vehicle_id = $1
         order by to_on is not null, from_on desc, id desc",
    )
    .bind(id)
    .fetch_all(con)
    .await?)
}

/// The plate stands first: lists are ordered by this column. Earlier plates find the vehicle too.
fn search_of(new: &NewVehicle, plates: &[Plate]) -> String {
    let mut codes = vec![new.plate.as_str(), &new.vin, &new.chassis_number, &new.engine_number];
    codes.extend(plates.iter().map(|plate| plate.plate.as_str()));
    column(&[&squeeze(&new.plate), &new.make, &new.model], &codes)
}
