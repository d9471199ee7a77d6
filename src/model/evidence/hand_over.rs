//! Hand-over: what was explained, and who took the vehicle.

use serde::{Deserialize, Serialize};

use crate::model::coded;

coded! {
    /// How the owner's signature was taken.
    "received-how" ReceivedHow {
        /// Drawn on the screen.
        Drawn = "drawn",
        /// Signed on paper, the copy attached.
        Paper = "paper",
    }
}

/// What was handed over.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct HandOver {
    /// Ids of the topics explained.
    pub topics: Vec<String>,
    /// Who took the vehicle.
    pub received_by: String,
    /// How they signed.
    pub received_how: ReceivedHow,
    /// They agreed to be reminded.
    pub consents_to_reminders: bool,
    /// Manuals handed over.
    pub manuals_given: bool,
}
