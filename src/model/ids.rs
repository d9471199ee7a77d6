//! Names that never change: one type per noun, each a UUID of version 7 kept as text.
//!
//! A typed id cannot be handed to the wrong function. Version 7 begins with the time, so rows sort by birth. An id is
//! parsed once, at the door; text that is no UUID never becomes an id.

use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Deserializer, Serialize};
use sqlx::encode::IsNull;
use sqlx::error::BoxDynError;
use sqlx::{Database, Decode, Encode, Type};
use uuid::Uuid;

/// Text that names nothing: it is not a UUID.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct NotAnId;

impl fmt::Display for NotAnId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("not an id: a UUID like 01890a5d-ac96-774b-bcce-b302099a8057 is wanted")
    }
}

impl std::error::Error for NotAnId {}

macro_rules! ids {
    ($($(#[$doc:meta])* $name:ident;)*) => {$(
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
        #[serde(transparent)]
        pub struct $name(Uuid);

        impl $name {
            /// A new id, different from every other.
            // Chance and the order of birth come in here and nowhere else; no rule depends on the time inside an id.
            #[allow(clippy::new_without_default)]
            pub fn new() -> Self {
                Self(Uuid::now_v7())
            }

            /// The id with exactly this UUID inside; for content that must come out the same every time.
            pub const fn from_uuid(uuid: Uuid) -> Self {
                Self(uuid)
            }

            /// The UUID inside.
            pub const fn uuid(self) -> Uuid {
                self.0
            }
        }

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                self.0.as_hyphenated().fmt(f)
            }
        }

        impl FromStr for $name {
            type Err = NotAnId;

            fn from_str(text: &str) -> Result<Self, NotAnId> {
                // Only the hyphenated form: one thing has one name, also in an address.
                if text.len() != 36 {
                    return Err(NotAnId);
                }
                Uuid::try_parse(text).map(Self).map_err(|_| NotAnId)
            }
        }

        impl<'de> Deserialize<'de> for $name {
            fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
                let text = String::deserialize(deserializer)?;
                text.parse().map_err(serde::de::Error::custom)
            }
        }

        impl<DB: Database> Type<DB> for $name where String: Type<DB> {
            fn type_info() -> DB::TypeInfo {
                <String as Type<DB>>::type_info()
            }

            fn compatible(ty: &DB::TypeInfo) -> bool {
                <String as Type<DB>>::compatible(ty)
            }
        }

        impl<'q, DB: Database> Encode<'q, DB> for $name where String: Encode<'q, DB> {
            fn encode_by_ref(&self, buf: &mut <DB as Database>::ArgumentBuffer) -> Result<IsNull, BoxDynError> {
                <String as Encode<'q, DB>>::encode_by_ref(&self.to_string(), buf)
            }
        }

        impl<'r, DB: Database> Decode<'r, DB> for $name where String: Decode<'r, DB> {
            fn decode(value: <DB as Database>::ValueRef<'r>) -> Result<Self, BoxDynError> {
                Ok(<String as Decode<'r, DB>>::decode(value)?.parse()?)
            }
        }
    )*};
}

ids! {
    /// A branch of the shop: an address, a licence, number series of its own.
    BranchId;
    /// Somebody who works here, now or once.
    PersonId;
    /// A signed-in browser.
    SessionId;
    /// A tablet that stays in the shop and may be opened with a PIN.
    DeviceId;
    /// Who a vehicle belongs to, or who brings it.
    CustomerId;
    /// A vehicle, whatever plate it carries.
    VehicleId;
    /// A time held in the bay plan.
    BookingId;
    /// A place where a vehicle is worked on.
    BayId;
    /// A job: one visit with one outcome.
    JobId;
    /// One thing written down for a proof.
    EvidenceId;
    /// A kind of part: maker, type, approval.
    PartTypeId;
    /// One part, by serial or lot.
    PartId;
    /// A delivery of parts.
    LotId;
    /// A measuring instrument with a calibration.
    InstrumentId;
    /// A file that was handed in.
    AttachmentId;
    /// A numbered paper.
    PaperId;
    /// Something that falls due.
    DutyId;
    /// A message owed to somebody.
    MessageId;
    /// Something found wrong, and what became of it.
    FindingId;
    /// A proof set aside, with who took that on.
    WaiverId;
    /// A job standing still, and why.
    HoldId;
    /// A remark on a customer, vehicle or job.
    NoteId;
    /// One version of an estimate.
    EstimateId;
    /// Money taken before the work is paid.
    DepositId;
    /// A recall of parts.
    RecallId;
    /// A key that signs papers.
    KeyId;
    /// A secret link handed to a customer or a calendar.
    LinkId;
    /// A drive whose logs were handed in.
    RoadSessionId;
    /// A pressure-decay test that runs.
    LeakRunId;
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_id_reads_back_what_it_prints() {
        let id = JobId::new();
        assert_eq!(id.to_string().parse(), Ok(id));
        let json = serde_json::to_string(&id).unwrap();
        assert_eq!(json, format!("\"{id}\""));
        assert_eq!(serde_json::from_str::<JobId>(&json).unwrap(), id);
    }

    #[test]
    fn other_spellings_are_no_ids() {
        for text in ["", "7", "01890a5dac96774bbcceb302099a8057", "{01890a5d-ac96-774b-bcce-b302099a8057}", "../../etc"]
        {
            assert_eq!(text.parse::<JobId>(), Err(NotAnId), "{text}");
        }
    }
}
