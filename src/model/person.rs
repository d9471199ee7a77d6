//! Somebody who works here: a name, roles in branches, perhaps the right to sign.

use time::Date;

use super::coded;
use super::ids::{BranchId, PersonId};

coded! {
    /// What somebody does here, and with it what they may do.
    "role" Role {
        /// Everything, people and settings included.
        Manager = "manager",
        /// Customers, vehicles, bookings, estimates, hand-over, messages; reads job files.
        Desk = "desk",
        /// Stages of a job file, evidence, instruments, stores.
        Technician = "technician",
        /// Reads everything, changes nothing.
        Auditor = "auditor",
    }
}

/// Who works, or worked, here.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct Person {
    pub id: PersonId,
    pub name: String,
    /// What stands beside each tick of a checklist.
    pub initials: String,
    /// Typed at sign-in; folded to lower case, unique in the whole shop.
    pub sign_in_name: String,
    pub mail: String,
    /// The language of their pages; empty: the branch's.
    pub language: String,
    /// An auditor's sight of phone numbers and mail addresses.
    pub sees_contacts: bool,
    /// The first day on which the account no longer works.
    pub ended_on: Option<Date>,
    /// Counts changes, so that two people never overwrite each other unseen.
    pub version: i64,
}

impl Person {
    /// Whether the account works on `day`.
    pub fn is_here_on(&self, day: Date) -> bool {
        self.ended_on.is_none_or(|end| day < end)
    }
}

/// The right to sign certificates.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct SignatoryGrant {
    pub person_id: PersonId,
    pub authorisation_number: String,
    /// The last day on which it holds.
    pub expires_on: Date,
}

/// Who does a deed: a person with the standing of this moment, a customer behind a link, or the program by itself.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Actor {
    /// `None`: a customer behind a link, or the program.
    pub person: Option<PersonId>,
    /// What the log calls them.
    pub name: String,
    pub branch: BranchId,
    pub roles: Vec<Role>,
    /// The right to sign, if they hold it; it may have expired.
    pub signatory: Option<SignatoryGrant>,
    /// Whether phone numbers and mail addresses are shown to them.
    pub sees_contacts: bool,
}

impl Actor {
    /// The program itself, for work that nobody asked for just now.
    pub fn program(branch: BranchId) -> Self {
        Self::without_account("the program", branch)
    }

    /// A customer who came by a link.
    pub fn customer(branch: BranchId) -> Self {
        Self::without_account("the customer's link", branch)
    }

    fn without_account(name: &str, branch: BranchId) -> Self {
        Self { person: None, name: name.into(), branch, roles: vec![], signatory: None, sees_contacts: false }
    }

    /// Whether they hold one of these roles.
    pub fn is_one_of(&self, roles: &[Role]) -> bool {
        self.roles.iter().any(|role| roles.contains(role))
    }

    /// Whether they manage the branch.
    pub fn is_manager(&self) -> bool {
        self.roles.contains(&Role::Manager)
    }

    /// The right to sign, if it holds on `day`.
    pub fn may_sign_on(&self, day: Date) -> Option<&SignatoryGrant> {
        self.signatory.as_ref().filter(|grant| day <= grant.expires_on)
    }
}
