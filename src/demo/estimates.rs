//! What some of today's jobs are reckoned to cost: one agreed, one changed since, one with a deposit, one not agreed yet.

use super::shop::Teller;
use crate::model::deposit::NewDeposit;
use crate::model::estimate::{AgreedHow, EstimateLine, LineKind, NewAgreement, NewEstimate};
use crate::model::ids::JobId;
use crate::shop::Refusal;
use time::{Date, Duration};

/// What, kind, thousandths, price for one in minor units.
type Line = (&'static str, LineKind, i64, i64);

/// The estimate of an open job, by its plate.
struct Plan {
    plate: &'static str,
    /// Who agrees to the first version, and how.
    agreed: Option<(&'static str, AgreedHow)>,
    /// A line that is added after that, and not agreed.
    added: Option<Line>,
    /// Taken in advance, and how it was paid.
    deposit: Option<(i64, &'static str)>,
}

const LINES: [Line; 6] = [
    ("Container, 54 L, with multivalve", LineKind::Part, 1_000, 31_500),
    ("Vaporiser and filter", LineKind::Part, 1_000, 18_450),
    ("Injector rail, 4 outlets", LineKind::Part, 1_000, 14_900),
    ("Gas line, metre", LineKind::Part, 6_500, 795),
    ("Fitting and calibration, hour", LineKind::Work, 9_500, 5_800),
    ("Inspection fee", LineKind::Other, 1_000, 6_500),
];

const BRACKET: Line = ("Bracket for the vaporiser, made to measure", LineKind::Part, 1_000, 12_000);

const PLANS: [Plan; 4] = [
    Plan { plate: "NM 47 KTR", agreed: Some(("Ilse Varnham", AgreedHow::Phone)), added: None, deposit: None },
    Plan { plate: "NM 11 LAN", agreed: Some(("Cora Lund", AgreedHow::InPerson)), added: Some(BRACKET), deposit: None },
    Plan {
        plate: "NM 29 SPA",
        agreed: Some(("Tom Barrow", AgreedHow::Writing)),
        added: None,
        deposit: Some((40_000, "card")),
    },
    Plan { plate: "NM 42 OKE", agreed: None, added: None, deposit: None },
];

impl Teller<'_> {
    /// Writes the estimate of a job that has one, and what became of it.
    pub(super) async fn estimate(&self, job: JobId, plate: &str, today: Date) -> Result<(), Refusal> {
        let Some(plan) = PLANS.iter().find(|plan| plan.plate == plate) else { return Ok(()) };
        self.version(job, 0, &LINES, today).await?;
        if let Some((name, how)) = plan.agreed {
            let (agreed_by, agreed_at) = (name.to_owned(), self.now());
            let new = NewAgreement { number: 1, how, agreed_by, agreed_at };
            self.shop.agree_estimate(&self.cast.desk, None, job, new).await?;
        }
        if let Some(line) = plan.added {
            self.version(job, 1, &[&LINES[..], &[line]].concat(), today).await?;
        }
        if let Some((amount_minor, how)) = plan.deposit {
            let (paid_how, received_by) = (how.to_owned(), self.cast.desk.name.clone());
            let new = NewDeposit { amount_minor, paid_how, received_on: today, received_by };
            self.shop.take_deposit(&self.cast.desk, None, job, new).await?;
        }
        Ok(())
    }

    async fn version(&self, job: JobId, opened_at_number: i64, lines: &[Line], today: Date) -> Result<(), Refusal> {
        let line =
            |(what, kind, quantity, price): &Line| EstimateLine::new((*what).to_owned(), *kind, *quantity, *price);
        let new = NewEstimate {
            opened_at_number,
            lines: lines.iter().filter_map(line).collect(),
            valid_until_on: Some(today + Duration::days(30)),
            note: "Tax is included.".to_owned(),
        };
        self.shop.write_estimate(&self.cast.desk, None, job, new).await.map(|_| ())
    }
}
