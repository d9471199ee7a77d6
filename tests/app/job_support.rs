//! A vehicle in the bay for the tests of the job file: keeper, vehicle, an open job, instruments with what speaks for
//! them.
#![allow(dead_code, reason = "a bay for every test, of which each uses a part")]

use fuelwright::db::Db;
use fuelwright::model::evidence::{Evidence, NewEvidence};
use fuelwright::model::ids::{CustomerId, EvidenceId, InstrumentId, JobId, VehicleId};
use fuelwright::model::instrument::InstrumentKind;
use fuelwright::model::job::{Fuel, JobKind, NewJob, SystemKind};
use fuelwright::model::job_file::JobFile;
use fuelwright::rules::{self, Proof, RuleBook};
use time::{Duration, OffsetDateTime};

use crate::support::TestShop;

/// A job open in the shop, since half an hour before the clock's now.
pub struct Bay {
    pub shop: TestShop,
    pub job: JobId,
    pub vehicle: VehicleId,
    pub keeper: CustomerId,
}

impl Bay {
    /// An LPG conversion.
    pub async fn lpg() -> Self {
        Self::open(JobKind::Conversion, Fuel::Lpg).await
    }

    /// A CNG conversion.
    pub async fn cng() -> Self {
        Self::open(JobKind::Conversion, Fuel::Cng).await
    }

    /// A job of this kind on a four-cylinder car with closed loop, first registered in 2014.
    pub async fn open(kind: JobKind, fuel: Fuel) -> Self {
        let shop = TestShop::open().await;
        let (keeper_id, vehicle_id) = (CustomerId::new(), VehicleId::new());
        let now = shop.clock.now();
        let mut tx = shop.shop.db.write().await.unwrap();
        sqlx::query::<Db>(
            "insert into customers (id, branch_id, name, address, phone, mail, search, created_at)
             values ($1, $2, 'Ana Marrow', '2 Mole End, Northmere', '+44 1632 960142', 'ana@example.org', 'ana marrow', $3)",
        )
        .bind(keeper_id)
        .bind(shop.branch)
        .bind(now)
        .execute(&mut *tx)
        .await
        .unwrap();
        sqlx::query::<Db>(
            "insert into vehicles (id, branch_id, plate, plate_country, vin, make, model, first_registered_on,
                 engine_code, displacement_cm3, engine_cylinders, rated_power_kw, rated_rpm, search, created_at)
             values ($1, $2, 'NM 47 KTR', 'GB', '1M8GDM9AXKP042788', 'Corvane', 'Pilot 1.6', '2014-03-01', 'CV16',
                 1598, 4, 82, 6000, 'corvane pilot', $3)",
        )
        .bind(vehicle_id)
        .bind(shop.branch)
        .bind(now)
        .execute(&mut *tx)
        .await
        .unwrap();
        sqlx::query::<Db>(
            "insert into vehicle_people (id, vehicle_id, customer_id, role, from_on)
             values ($1, $2, $3, 'keeper', '2026-05-12')",
        )
        .bind(uuid::Uuid::now_v7().to_string())
        .bind(vehicle_id)
        .bind(keeper_id)
        .execute(&mut *tx)
        .await
        .unwrap();
        tx.commit().await.unwrap();
        let job = NewJob {
            kind,
            fuel,
            system_kind: SystemKind::VapourInjection,
            vehicle_id,
            keeper_id,
            bay_id: None,
            is_low_pressure_only: false,
            comes_back_from: None,
            reported_faults: String::new(),
        };
        let desk = shop.actor(shop.mara).await;
        let job = shop.shop.open_job(&desk, None, job).await.unwrap();
        shop.clock.advance(Duration::minutes(30));
        Self { shop, job, vehicle: vehicle_id, keeper: keeper_id }
    }

    /// An address below the job: `at("exhaust/gas")`.
    pub fn at(&self, rest: &str) -> String {
        format!("/jobs/{}/{rest}", self.job)
    }

    /// An instrument of the shop, calibrated this year, without need of a daily check.
    pub async fn instrument(
        &self,
        code: &str,
        kind: InstrumentKind,
        unit: &str,
        resolution: f64,
        standard_uncertainty: f64,
    ) -> InstrumentId {
        self.instrument_due(code, kind, unit, (resolution, standard_uncertainty), "2027-01-10").await
    }

    /// The same with a last day of its certificate.
    pub async fn instrument_due(
        &self,
        code: &str,
        kind: InstrumentKind,
        unit: &str,
        (resolution, standard_uncertainty): (f64, f64),
        due_on: &str,
    ) -> InstrumentId {
        let id = InstrumentId::new();
        let mut tx = self.shop.shop.db.write().await.unwrap();
        sqlx::query::<Db>(
            "insert into instruments (id, branch_id, code, kind, resolution, standard_uncertainty, unit)
             values ($1, $2, $3, $4, $5, $6, $7)",
        )
        .bind(id)
        .bind(self.shop.branch)
        .bind(code)
        .bind(kind)
        .bind(resolution)
        .bind(standard_uncertainty)
        .bind(unit)
        .execute(&mut *tx)
        .await
        .unwrap();
        sqlx::query::<Db>(
            "insert into instrument_certificates (id, instrument_id, number, laboratory, calibrated_on, due_on,
                 expanded_uncertainty, coverage_factor, person_id, recorded_at)
             values ($1, $2, 'C-' || $3, 'Northmere Metrology', '2026-01-10', $4, $5, 2.0, $6, $7)",
        )
        .bind(uuid::Uuid::now_v7().to_string())
        .bind(id)
        .bind(code)
        .bind(due_on)
        .bind(2.0 * standard_uncertainty)
        .bind(self.shop.ilse)
        .bind(self.shop.clock.now())
        .execute(&mut *tx)
        .await
        .unwrap();
        tx.commit().await.unwrap();
        id
    }

    /// Records an entry as the technician would, without the form.
    pub async fn record(&self, body: Evidence, instruments: Vec<InstrumentId>) -> EvidenceId {
        let new = NewEvidence {
            body,
            measured_at: None,
            replaces_id: None,
            replaces_reason: String::new(),
            instruments,
            attachments: Vec::new(),
        };
        let jon = self.shop.actor(self.shop.jon).await;
        self.shop.shop.record_evidence(&jon, None, self.job, new).await.unwrap()
    }

    /// The file as it stands.
    pub async fn file(&self) -> JobFile {
        let mut con = self.shop.shop.db.read().await.unwrap();
        fuelwright::db::job_files::find(&mut con, self.shop.branch, self.job).await.unwrap().expect("is there")
    }

    /// Every proof as it stands.
    pub async fn proofs(&self) -> Vec<Proof> {
        let file = self.file().await;
        let book = RuleBook::shipped().unwrap();
        let day_of = |at: OffsetDateTime| at.date();
        rules::assess(&file, &book, self.shop.clock.now().date(), &day_of)
    }

    /// One proof as it stands.
    pub async fn proof(&self, id: &str) -> Proof {
        self.proofs().await.into_iter().find(|proof| proof.id == id).unwrap_or_else(|| panic!("no proof {id}"))
    }

    /// How many entries of a kind were ever made.
    pub async fn entries(&self, kind: &str) -> usize {
        let mut con = self.shop.shop.db.read().await.unwrap();
        let all = fuelwright::db::evidence::list(&mut con, self.shop.branch, self.job).await.unwrap();
        all.iter().filter(|entry| entry.body.kind() == kind).count()
    }
}
