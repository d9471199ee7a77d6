//! Vehicles are written down and changed, change hands, and have their odometers read.

use time::Date;
use uuid::Uuid;

use super::{Refusal, Shop, Work};
use crate::db;
use crate::db::vehicle_people;
use crate::model::deed::Deed;
use crate::model::ids::{CustomerId, JobId, VehicleId};
use crate::model::odometer::question;
use crate::model::person::Actor;
use crate::model::vehicle::{NewVehicle, OdometerExplained, OdometerReading, Vehicle, VehiclePerson, VehicleRole};

impl Shop {
    /// Writes a vehicle down, with whoever stands behind it from today on.
    ///
    /// # Errors
    /// [`Refusal::Taken`] at `vin` when another vehicle has it, unless `is_vin_shared` says that this is so.
    pub async fn add_vehicle(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        new: NewVehicle,
        is_vin_shared: bool,
        people: Vec<(VehicleRole, CustomerId)>,
    ) -> Result<VehicleId, Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let id = insert(&mut work, &new, is_vin_shared, &people).await?;
            work.done(Deed::VehicleAdded { vehicle: id }, id).await
        })
        .await
    }

    /// Saves a vehicle over the version that was opened; another plate begins today.
    ///
    /// # Errors
    /// [`Refusal::Stale`] when somebody saved meanwhile; [`Refusal::Taken`] as for a new one.
    pub async fn change_vehicle(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        opened: (VehicleId, i64),
        new: NewVehicle,
        is_vin_shared: bool,
    ) -> Result<(), Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let ((id, version), branch, today) = (opened, work.who.branch, work.today);
            let before = db::vehicles::find(&mut work, branch, id).await?.ok_or(Refusal::Gone)?;
            if before.vin != new.vin {
                refuse_taken_vin(&mut work, &new.vin, is_vin_shared).await?;
            }
            db::vehicles::save(&mut work, branch, id, version, &new, today).await?;
            work.done(Deed::VehicleChanged { vehicle: id, changed: changes(&before, &new) }, ()).await
        })
        .await
    }

    /// Makes somebody owner, keeper, payer or contact from a day on. Whoever was it until then is it no longer, and
    /// their links to the vehicle end when nothing else ties them to it.
    ///
    /// # Errors
    /// [`Refusal::Field`] when they are it already, or when the day lies before the present one began.
    pub async fn begin_role(&self, who: &Actor, key: Option<Uuid>, one: VehiclePerson) -> Result<(), Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let branch = work.who.branch;
            db::vehicles::find(&mut work, branch, one.vehicle_id).await?.ok_or(Refusal::Gone)?;
            begin_role(&mut work, &one).await?;
            let VehiclePerson { vehicle_id: vehicle, customer_id: customer, role, from_on, .. } = one;
            work.done(Deed::VehicleRoleBegun { vehicle, customer, role, from_on }, ()).await
        })
        .await
    }

    /// Ends a role that nobody takes over; `on` is its last day.
    ///
    /// # Errors
    /// [`Refusal::Field`] when the day lies before the role began.
    pub async fn end_role(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        vehicle: VehicleId,
        role: VehicleRole,
        on: Date,
    ) -> Result<(), Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let branch = work.who.branch;
            db::vehicles::find(&mut work, branch, vehicle).await?.ok_or(Refusal::Gone)?;
            let open = vehicle_people::open(&mut work, vehicle, role).await?.ok_or(Refusal::Gone)?;
            end_open(&mut work, &open, on).await?;
            let customer = open.customer_id;
            work.done(Deed::VehicleRoleEnded { vehicle, customer, role, to_on: on }, ()).await
        })
        .await
    }

    /// Keeps an odometer reading.
    ///
    /// # Errors
    /// [`Refusal::Field`] at `explained` when the reading goes backwards or too far and nothing explains it; with any
    /// explanation it is kept.
    pub async fn read_odometer(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        vehicle: VehicleId,
        job: Option<JobId>,
        reading: OdometerReading,
    ) -> Result<(), Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let branch = work.who.branch;
            db::vehicles::find(&mut work, branch, vehicle).await?.ok_or(Refusal::Gone)?;
            insert_reading(&mut work, vehicle, job, &reading).await?;
            let OdometerReading { km, explained, .. } = reading;
            work.done(Deed::OdometerRead { vehicle, km, explained }, ()).await
        })
        .await
    }
}

/// Writes a vehicle down inside a deed; its audit line is the deed's.
pub(super) async fn insert(
    work: &mut Work,
    new: &NewVehicle,
    is_vin_shared: bool,
    people: &[(VehicleRole, CustomerId)],
) -> Result<VehicleId, Refusal> {
    refuse_taken_vin(work, &new.vin, is_vin_shared).await?;
    let (branch, now, today, id) = (work.who.branch, work.now, work.today, VehicleId::new());
    db::vehicles::insert(work, branch, id, new, now, today).await?;
    for (role, customer) in people {
        let one = VehiclePerson { vehicle_id: id, customer_id: *customer, role: *role, from_on: today, to_on: None };
        begin_role(work, &one).await?;
    }
    Ok(id)
}

/// Begins a role inside a deed.
pub(super) async fn begin_role(work: &mut Work, one: &VehiclePerson) -> Result<(), Refusal> {
    let branch = work.who.branch;
    db::customers::find(work, branch, one.customer_id).await?.ok_or(Refusal::Gone)?;
    if let Some(open) = vehicle_people::open(work, one.vehicle_id, one.role).await? {
        if open.customer_id == one.customer_id {
            return Err(Refusal::Field { field: "customer", why: "wrong-role-held" });
        }
        // Days do not overlap, unless both began on the same one.
        let last = one.from_on.previous_day().filter(|day| *day >= open.from_on).unwrap_or(one.from_on);
        end_open(work, &open, last).await.map_err(|refusal| match refusal {
            Refusal::Field { .. } => Refusal::Field { field: "from_on", why: "wrong-role-before" },
            other => other,
        })?;
    }
    Ok(vehicle_people::insert(work, one).await?)
}

async fn end_open(work: &mut Work, open: &VehiclePerson, on: Date) -> Result<(), Refusal> {
    if on < open.from_on {
        return Err(Refusal::Field { field: "to_on", why: "wrong-role-before" });
    }
    let now = work.now;
    vehicle_people::end(work, open.vehicle_id, open.role, on).await?;
    vehicle_people::end_links_of_strangers(work, open.vehicle_id, open.customer_id, now).await?;
    Ok(())
}

/// Keeps a reading inside a deed.
pub(super) async fn insert_reading(
    work: &mut Work,
    vehicle: VehicleId,
    job: Option<JobId>,
    reading: &OdometerReading,
) -> Result<(), Refusal> {
    let by = work.who.person.ok_or(Refusal::MayNot("refused-needs-person"))?;
    let known = db::odometer::list(work, vehicle).await?;
    if let Some(question) = question(&known, reading.read_on, reading.km)
        && reading.explained == OdometerExplained::Plain
    {
        return Err(Refusal::Field { field: "explained", why: question.key() });
    }
    let now = work.now;
    Ok(db::odometer::insert(work, vehicle, job, reading, by, now).await?)
}

async fn refuse_taken_vin(work: &mut Work, vin: &str, is_shared: bool) -> Result<(), Refusal> {
    let branch = work.who.branch;
    if !is_shared && db::vehicles::find_by_vin(work, branch, vin).await?.is_some() {
        return Err(Refusal::Taken { field: "vin".into() });
    }
    Ok(())
}

fn changes(old: &Vehicle, new: &NewVehicle) -> Vec<String> {
    macro_rules! differing {
        ($($field:ident)*) => {
            [$((stringify!($field), old.$field != new.$field),)*]
        };
    }
    let differs = differing!(
        plate plate_country vin chassis_number category
        make model first_registered_on engine_code engine_number
        displacement_cm3 engine_cylinders rated_power_kw rated_rpm aspiration
        boost_kpa petrol_injection injector_connector control_pin gross_mass_kg
        rear_axle_reserve_kg has_catalyst is_closed_loop maker_idle_co_percent maker_raised_co_percent
        maker_lambda_least maker_lambda_most emission_class obd_standard has_start_stop
        is_hybrid odometer_unit
    );
    differs.iter().filter(|(_, differs)| *differs).map(|(name, _)| (*name).to_owned()).collect()
}
