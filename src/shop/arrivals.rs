//! An arrival: a booking, or somebody at the door, becomes customer, vehicle and job in one deed.

use uuid::Uuid;

use super::{Refusal, Shop, Work, customers, vehicles};
use crate::db;
use crate::db::vehicle_people;
use crate::model::booking::BookingState;
use crate::model::customer::NewCustomer;
use crate::model::deed::Deed;
use crate::model::ids::{BayId, BookingId, CustomerId, JobId, VehicleId};
use crate::model::job::{Fuel, JobKind, NewJob, SystemKind};
use crate::model::person::Actor;
use crate::model::vehicle::{NewVehicle, OdometerReading, VehiclePerson, VehicleRole};

/// Who came.
#[derive(Debug, Clone)]
pub enum Comer {
    /// Somebody already in the books.
    Known(CustomerId),
    /// Somebody new.
    New(NewCustomer),
}

/// What they came in.
#[derive(Debug, Clone)]
pub enum Brought {
    /// A vehicle already in the books.
    Known(VehicleId),
    /// A new one; the flag says that its VIN is another vehicle's too.
    New(Box<NewVehicle>, bool),
}

/// What the desk writes down when a vehicle comes in.
#[derive(Debug, Clone)]
pub struct Arrival {
    pub comer: Comer,
    pub brought: Brought,
    pub kind: JobKind,
    pub fuel: Fuel,
    pub system_kind: SystemKind,
    pub bay_id: Option<BayId>,
    pub is_low_pressure_only: bool,
    pub comes_back_from: Option<JobId>,
    pub reported_faults: String,
    pub reading: Option<OdometerReading>,
}

impl Shop {
    /// Takes a vehicle in: what is new is written down, whoever came keeps the vehicle from today on unless they did
    /// already, the odometer is read, a job opens, and the booking (with the version it was opened at) says so.
    ///
    /// # Errors
    /// [`Refusal::Ended`] when the booking has arrived already; [`Refusal::Stale`] when it was changed meanwhile;
    /// and whatever customer, vehicle, reading and job refuse on their own.
    pub async fn arrive(
        &self,
        who: &Actor,
        key: Option<Uuid>,
        booking: Option<(BookingId, i64)>,
        arrival: Arrival,
    ) -> Result<JobId, Refusal> {
        self.deed(who, key, async move |mut work: Work| {
            let branch = work.who.branch;
            if let Some((id, version)) = booking {
                expect(&mut work, id, version).await?;
            }
            let keeper = comer(&mut work, &arrival.comer).await?;
            let vehicle = brought(&mut work, &arrival.brought, keeper).await?;
            let job = NewJob {
                kind: arrival.kind,
                fuel: arrival.fuel,
                system_kind: arrival.system_kind,
                vehicle_id: vehicle,
                keeper_id: keeper,
                bay_id: arrival.bay_id,
                is_low_pressure_only: arrival.is_low_pressure_only,
                comes_back_from: arrival.comes_back_from,
                reported_faults: arrival.reported_faults,
            };
            if let Some(bay) = job.bay_id {
                db::bays::find(&mut work, branch, bay).await?.ok_or(Refusal::Gone)?;
            }
            let id = work.open_job(&job).await?;
            if let Some(reading) = &arrival.reading {
                vehicles::insert_reading(&mut work, vehicle, Some(id), reading).await?;
                let (km, explained) = (reading.km, reading.explained);
                work.note(Deed::OdometerRead { vehicle, km, explained }).await?;
            }
            if let Some((booking, version)) = booking {
                let (from, to) = (BookingState::Expected, BookingState::Arrived);
                db::bookings::save_state(&mut work, branch, booking, version, to, Some(id)).await?;
                work.note(Deed::BookingAnswered { booking, from, to }).await?;
            }
            let opened = db::jobs::find(&mut work, branch, id).await?.ok_or(Refusal::Gone)?;
            work.done(Deed::JobOpened { job: id, number: opened.number, vehicle }, id).await
        })
        .await
    }
}

async fn expect(work: &mut Work, id: BookingId, version: i64) -> Result<(), Refusal> {
    let branch = work.who.branch;
    let booking = db::bookings::find(work, branch, id).await?.ok_or(Refusal::Gone)?;
    if booking.state != BookingState::Expected {
        return Err(Refusal::Ended("refused-booking-answered"));
    }
    if booking.version == version { Ok(()) } else { Err(Refusal::Stale) }
}

async fn comer(work: &mut Work, comer: &Comer) -> Result<CustomerId, Refusal> {
    let branch = work.who.branch;
    match comer {
        Comer::Known(id) => Ok(db::customers::find(work, branch, *id).await?.ok_or(Refusal::Gone)?.id),
        Comer::New(new) => {
            let customer = customers::insert(work, new).await?;
            work.note(Deed::CustomerAdded { customer }).await?;
            Ok(customer)
        }
    }
}

async fn brought(work: &mut Work, brought: &Brought, keeper: CustomerId) -> Result<VehicleId, Refusal> {
    let (branch, today) = (work.who.branch, work.today);
    match brought {
        Brought::New(new, is_vin_shared) => {
            let people = [(VehicleRole::Owner, keeper), (VehicleRole::Keeper, keeper)];
            let vehicle = vehicles::insert(work, new, *is_vin_shared, &people).await?;
            work.note(Deed::VehicleAdded { vehicle }).await?;
            Ok(vehicle)
        }
        Brought::Known(id) => {
            let vehicle = db::vehicles::find(work, branch, *id).await?.ok_or(Refusal::Gone)?.id;
            if vehicle_people::keeper(work, vehicle).await? != Some(keeper) {
                let role = VehicleRole::Keeper;
                let one = VehiclePerson { vehicle_id: vehicle, customer_id: keeper, role, from_on: today, to_on: None };
                vehicles::begin_role(work, &one).await?;
                let begun = Deed::VehicleRoleBegun { vehicle, customer: keeper, role, from_on: today };
                work.note(begun).await?;
            }
            Ok(vehicle)
        }
    }
}
