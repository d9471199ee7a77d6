//! What the audit log can say: one variant a deed.
//!
//! To add one, add a line to `deeds!` below: the variant, what it is about (`on job: JobId`), and what else is worth
//! remembering. The log keeps the whole variant as JSON; its tag in kebab case is also the key of its sentence
//! (`deed-hold-begun`). A variant that was ever written stays readable: add fields as `Option`, never rename.

use serde::{Deserialize, Serialize};
use time::{Date, OffsetDateTime};

use super::booking::BookingState;
use super::duty::{CallOutcome, ClosedHow};
#[allow(clippy::wildcard_imports, reason = "every noun may be the subject of a deed")]
use super::ids::*;
use super::message::MessageState;
use super::person::Role;
use super::vehicle::{OdometerExplained, VehicleRole};

macro_rules! deeds {
    ($($(#[$doc:meta])* $tag:literal $name:ident on $subject:ident: $id:ty { $($field:ident: $type:ty),* $(,)? })*) => {
        /// Something that was done, as the audit log tells it.
        #[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
        #[serde(tag = "deed")]
        pub enum Deed {$(
            $(#[$doc])*
            #[serde(rename = $tag)]
            $name { $subject: $id, $($field: $type),* },
        )*}

        impl Deed {
            /// Every tag, for the screen that filters by it and the test that looks for its sentence.
            pub const TAGS: &'static [&'static str] = &[$($tag),*];

            /// The name under which this deed is kept.
            pub fn tag(&self) -> &'static str {
                match self { $(Self::$name { .. } => $tag,)* }
            }

            /// What the deed is about: the kind of thing, and its id.
            pub fn subject(&self) -> (&'static str, String) {
                match self { $(Self::$name { $subject, .. } => (stringify!($subject), $subject.to_string()),)* }
            }
        }
    };
}

deeds! {
    /// The first manager and the first branch were made with the one-time code.
    "shop-set-up" ShopSetUp on branch: BranchId { manager: PersonId, name: String }
    /// The shop was brought back from a backup made at this second since 1970.
    "shop-restored" ShopRestored on branch: BranchId { made_at: i64 }
    /// A manager said that no other copy of the shop works any more.
    "only-one-confirmed" OnlyOneConfirmed on branch: BranchId {}
    /// The shop block of a branch was changed.
    "branch-changed" BranchChanged on branch: BranchId { changed: Vec<String> }
    /// A setting was changed.
    "setting-changed" SettingChanged on branch: BranchId { name: String, from: Option<String>, to: String }
    /// Somebody signed in.
    "signed-in" SignedIn on person: PersonId { address: String, with: String }
    /// Somebody signed out.
    "signed-out" SignedOut on person: PersonId {}
    /// Somebody joined.
    "person-added" PersonAdded on person: PersonId { name: String, roles: Vec<Role> }
    /// Name, initials, mail or end of an account were changed.
    "person-changed" PersonChanged on person: PersonId { changed: Vec<String> }
    /// Somebody's roles were changed; their sessions ended.
    "roles-changed" RolesChanged on person: PersonId { from: Vec<Role>, to: Vec<Role> }
    /// Somebody was given the right to sign.
    "signing-granted" SigningGranted on person: PersonId { authorisation_number: String, expires_on: Date }
    /// Somebody's right to sign was ended.
    "signing-ended" SigningEnded on person: PersonId {}
    /// A password was chosen or changed; other sessions ended.
    "password-set" PasswordSet on person: PersonId {}
    /// A one-time code to choose a password was made for somebody.
    "password-code-made" PasswordCodeMade on person: PersonId {}
    /// A PIN for the shop's tablets was chosen.
    "pin-set" PinSet on person: PersonId {}
    /// Sessions were ended by hand.
    "sessions-ended" SessionsEnded on person: PersonId { count: i64 }
    /// A tablet was enrolled.
    "device-enrolled" DeviceEnrolled on device: DeviceId { name: String }
    /// A tablet was taken out of use.
    "device-ended" DeviceEnded on device: DeviceId {}
    /// A job file was opened.
    "job-opened" JobOpened on job: JobId { number: String, vehicle: VehicleId }
    /// The repeat of an inspection that failed was opened.
    "inspection-repeated" InspectionRepeated on job: JobId { next: JobId }
    /// A repair ended an inspection, and a new one was opened.
    "inspection-ended-by-repair" InspectionEndedByRepair on job: JobId { what: String, next: JobId }
    /// Work waits.
    "hold-begun" HoldBegun on job: JobId { hold: HoldId, reason: String }
    /// Work goes on.
    "hold-ended" HoldEnded on job: JobId {}
    /// A job was called off.
    "job-cancelled" JobCancelled on job: JobId { reason: String }
    /// A vehicle left without certificate.
    "job-released" JobReleased on job: JobId { reason: String, is_gas_shut_off: bool }
    /// A vehicle was handed over with its certificate.
    "job-handed-over" JobHandedOver on job: JobId { duties: u32 }
    /// Something was measured or answered.
    "evidence-recorded" EvidenceRecorded on job: JobId { evidence: EvidenceId, kind: String, subject: String }
    /// A decay test began.
    "leak-test-started" LeakTestStarted on job: JobId { section: String, start_kpa: f64, start_c: f64 }
    /// A decay test was read.
    "leak-test-read" LeakTestRead on job: JobId { section: String, kpa: f64, c: f64 }
    /// A decay test was given up.
    "leak-test-given-up" LeakTestGivenUp on job: JobId { section: String }
    /// An entry was corrected by a new one.
    "evidence-corrected" EvidenceCorrected on job: JobId { evidence: EvidenceId, replaces: EvidenceId, kind: String, reason: String }
    /// A part was fitted.
    "part-fitted" PartFitted on part: PartId { job: JobId, category: String, serial: String }
    /// What is written on a part was changed.
    "part-changed" PartChanged on part: PartId { job: JobId, changed: Vec<String> }
    /// A part was taken off.
    "part-removed" PartRemoved on part: PartId { job: JobId, reason: String }
    /// A proof was let pass.
    "proof-waived" ProofWaived on job: JobId { waiver: WaiverId, proof: String, how: String, reason: String }
    /// A certificate was issued.
    "certificate-issued" CertificateIssued on paper: PaperId { job: JobId, number: String }
    /// A certificate was taken back.
    "certificate-withdrawn" CertificateWithdrawn on paper: PaperId { job: JobId, number: String, reason: String }
    /// A paper was printed a second time.
    "second-copy-made" SecondCopyMade on paper: PaperId { job: JobId, number: String, reason: String }
    /// The audit pack of a period was drawn.
    "audit-pack-drawn" AuditPackDrawn on branch: BranchId { from: Date, to: Date, seed: String }
    /// Every issued paper was written out into a folder.
    "papers-exported" PapersExported on branch: BranchId { papers: i64 }
    /// A waiver was taken back.
    "waiver-ended" WaiverEnded on job: JobId { waiver: WaiverId }
    /// Duties began to run for a vehicle.
    "duties-made" DutiesMade on vehicle: VehicleId { lines: Vec<String>, job: Option<JobId> }
    /// A duty ended.
    "duty-closed" DutyClosed on duty: DutyId { how: ClosedHow, note: String }
    /// Somebody tried to reach the keeper about a duty.
    "duty-called" DutyCalled on duty: DutyId { outcome: CallOutcome }
    /// The daily round wrote reminders.
    "reminders-written" RemindersWritten on branch: BranchId { messages: i64, letters: i64, held: i64 }
    /// A message was held by hand.
    "message-held" MessageHeld on message: MessageId {}
    /// A held message was let go.
    "message-released" MessageReleased on message: MessageId {}
    /// Every message that a large run had held was let go.
    "messages-released" MessagesReleased on branch: BranchId { count: i64 }
    /// A message is tried again by hand.
    "message-retried" MessageRetried on message: MessageId {}
    /// A message is not wanted any more.
    "message-dropped" MessageDropped on message: MessageId { why: String }
    /// A letter was printed and posted.
    "letter-posted" LetterPosted on message: MessageId {}
    /// A message goes by post instead.
    "message-to-letter" MessageToLetter on message: MessageId { why: String }
    /// A message went out.
    "message-sent" MessageSent on message: MessageId {}
    /// A message did not go out, or nobody can tell.
    "message-failed" MessageFailed on message: MessageId { state: MessageState, said: String }
    /// A mail address was refused twice for good.
    "address-marked-bad" AddressMarkedBad on customer: CustomerId {}
    /// The code of a vehicle's label was drawn.
    "label-made" LabelMade on vehicle: VehicleId { job: JobId }
    /// A customer's link was made; it goes out with a message or over the counter.
    "link-made" LinkMade on vehicle: VehicleId { customer: CustomerId }
    /// A customer came by a link.
    "link-used" LinkUsed on vehicle: VehicleId { customer: CustomerId }
    /// A customer wants no more reminders.
    "reminders-off" RemindersOff on customer: CustomerId {}
    /// A customer asked for a slot.
    "slot-asked" SlotAsked on vehicle: VehicleId { customer: CustomerId }
    /// A customer was written down.
    "customer-added" CustomerAdded on customer: CustomerId {}
    /// Fields of a customer were changed.
    "customer-changed" CustomerChanged on customer: CustomerId { changed: Vec<String> }
    /// A vehicle was written down.
    "vehicle-added" VehicleAdded on vehicle: VehicleId {}
    /// Fields of a vehicle were changed.
    "vehicle-changed" VehicleChanged on vehicle: VehicleId { changed: Vec<String> }
    /// Somebody became owner, keeper, payer or contact of a vehicle; whoever was it before is it no longer.
    "vehicle-role-begun" VehicleRoleBegun on vehicle: VehicleId { customer: CustomerId, role: VehicleRole, from_on: Date }
    /// Somebody ceased to be owner, keeper, payer or contact of a vehicle.
    "vehicle-role-ended" VehicleRoleEnded on vehicle: VehicleId { customer: CustomerId, role: VehicleRole, to_on: Date }
    /// An odometer was read.
    "odometer-read" OdometerRead on vehicle: VehicleId { km: i64, explained: OdometerExplained }
    /// A note was written about a customer, a vehicle or a job.
    "note-written" NoteWritten on note: NoteId {
        customer: Option<CustomerId>, vehicle: Option<VehicleId>, job: Option<JobId> }
    /// A bay was added.
    "bay-added" BayAdded on bay: BayId { name: String }
    /// A bay got another name.
    "bay-renamed" BayRenamed on bay: BayId { from: String, to: String }
    /// A bay was taken out of use.
    "bay-ended" BayEnded on bay: BayId { on: Date }
    /// A time was booked; with a reason where the bay was booked already.
    "booking-made" BookingMade on booking: BookingId { doubled_reason: String }
    /// Fields of a booking were changed.
    "booking-changed" BookingChanged on booking: BookingId { changed: Vec<String>, doubled_reason: String }
    /// It was said what became of a booking.
    "booking-answered" BookingAnswered on booking: BookingId { from: BookingState, to: BookingState }
    /// A version of an estimate was written.
    "estimate-written" EstimateWritten on job: JobId {
        estimate: EstimateId, number: i64, total_minor: i64, currency: String }
    /// The customer agreed to a version of an estimate.
    "estimate-agreed" EstimateAgreed on job: JobId {
        estimate: EstimateId, number: i64, amount_minor: i64, currency: String, how: String }
    /// A deposit was taken.
    "deposit-taken" DepositTaken on job: JobId { deposit: DepositId, amount_minor: i64, currency: String }
    /// A deposit was taken back.
    "deposit-taken-back" DepositTakenBack on job: JobId { deposit: DepositId, takes_back: DepositId, reason: String }
    /// Logs of a drive were handed in.
    "road-logs-kept" RoadLogsKept on job: JobId { session: RoadSessionId, phase: String, logs: usize }
    /// It was said what the columns of a drive's logs are, and both fuels were compared.
    "road-compared" RoadCompared on job: JobId { session: RoadSessionId, cells: usize }
    /// A file was kept.
    "file-kept" FileKept on file: AttachmentId { job: Option<JobId>, slot: String, sha256: String }
    /// A fault was written down.
    "finding-opened" FindingOpened on finding: FindingId { job: Option<JobId>, instrument: Option<InstrumentId>, source: String, text: String }
    /// A finding was decided.
    "finding-decided" FindingDecided on finding: FindingId { job: Option<JobId>, instrument: Option<InstrumentId>, decision: String }
    /// The time in doubt was stated.
    "doubt-dated" DoubtDated on finding: FindingId { from: String, reason: String }
    /// The error as found was entered.
    "error-entered" ErrorEntered on finding: FindingId { errors: Vec<String>, how_known: String }
    /// A paper came under review, or out of it again.
    "paper-reviewed" PaperReviewed on finding: FindingId { paper: PaperId, number: String, is_open: bool }
    /// A signatory decided what becomes of a paper that a finding put in doubt.
    "paper-decided" PaperDecided on finding: FindingId { paper: PaperId, number: String, decision: String, reason: String }
    /// A recall was entered.
    "recall-entered" RecallEntered on recall: RecallId { finding: FindingId, document: String }
    /// The keepers of what a recall names were written to.
    "recall-letters" RecallLetters on recall: RecallId { letters: i64 }
    /// An instrument was added.
    "instrument-added" InstrumentAdded on instrument: InstrumentId { code: String }
    /// What is written down of an instrument was changed.
    "instrument-changed" InstrumentChanged on instrument: InstrumentId { changed: Vec<String> }
    /// An instrument was taken out of use, or into use again (no day).
    "instrument-retired" InstrumentRetired on instrument: InstrumentId { retired_on: Option<Date> }
    /// A calibration certificate was entered.
    "instrument-calibrated" InstrumentCalibrated on instrument: InstrumentId { number: String, calibrated_on: Date, due_on: Date }
    /// An instrument was checked.
    "instrument-checked" InstrumentChecked on instrument: InstrumentId { has_passed: bool }
    /// A new signing key was begun; the one before vouches for it.
    "key-begun" KeyBegun on key: String { vouched_by: String }
    /// A signing key was marked as not trusted after an instant.
    "key-distrusted" KeyDistrusted on key: String { after: OffsetDateTime, reason: String }
    /// A second person stood behind lines of the shop that ask less than the sets below.
    "looser-rules-signed" LooserRulesSigned on branch: BranchId { second: PersonId, lines: Vec<String> }
    /// The shop's own rule lines, or the file in the place of a shipped set, were changed from a day on.
    "rules-changed" RulesChanged on branch: BranchId { name: String, sha256: String, from_on: Date }
}
