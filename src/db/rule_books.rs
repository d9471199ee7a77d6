//! The rule book of a branch on a day: the sets that it stacks (the base, those of its country or those it chose, the shop's
//! own lines on top), and for one vehicle those of the country that it is registered in.

use time::Date;

use super::{Con, Error, Result, branches, rule_files, settings};
use crate::model::ids::BranchId;
use crate::rules::{BASE, EMBEDDED, RuleBook, RuleSet, embedded, sets_of_country};

/// The name of the shop's own set.
pub const SHOP: &str = "shop";
/// The setting with the names of the sets that a branch stacks: "un-baseline, nl"; not set: those of its country.
pub const STACK_SETTING: &str = "rule-sets";
/// The setting by which a vehicle's country of registration adds its set; "no" turns it off.
pub const BY_VEHICLE_SETTING: &str = "rule-sets-by-vehicle";

/// What a branch stacks.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Stack {
    /// Names of the sets below the shop's own, base first.
    pub names: Vec<String>,
    /// They were chosen; else they follow the branch's country.
    pub is_chosen: bool,
    /// A vehicle's country of registration adds its set.
    pub by_vehicle: bool,
}

/// The sets that follow from a country: the base, and those of the country.
pub fn names_of(country: &str) -> Vec<String> {
    let of_country = sets_of_country(country);
    let all = EMBEDDED.iter().map(|(name, _)| *name);
    all.filter(|name| BASE.contains(name) || of_country.contains(name)).map(str::to_owned).collect()
}

/// What a branch stacks now.
pub async fn stack(con: &mut Con, branch: BranchId) -> Result<Stack> {
    let chosen =
        settings::find(con, branch, STACK_SETTING).await?.map(|set| set.value).filter(|names| !names.is_empty());
    let by_vehicle = settings::find(con, branch, BY_VEHICLE_SETTING).await?;
    let by_vehicle = by_vehicle.is_none_or(|set| set.value != "no");
    let is_chosen = chosen.is_some();
    let names = if let Some(names) = chosen {
        names.split(',').map(|name| name.trim().to_owned()).collect()
    } else {
        let country = branches::find(con, branch).await?.map(|branch| branch.country);
        names_of(country.as_deref().unwrap_or_default())
    };
    Ok(Stack { names, is_chosen, by_vehicle })
}

/// The book of a branch in force on a day. A file that this version cannot read is an error, never left out: with it, a
/// limit would silently be gone.
pub async fn book_on(con: &mut Con, branch: BranchId, date: Date) -> Result<RuleBook> {
    let mut book = base_on(con, branch, date).await?;
    book.sets.push(set_on(con, branch, SHOP, date).await?);
    Ok(book)
}

/// The book for a vehicle that is registered in a country: the branch's, and the sets of that country below the shop's own
/// lines. The strictest line of all of them counts.
pub async fn book_for(con: &mut Con, branch: BranchId, country: &str, date: Date) -> Result<RuleBook> {
    let mut book = book_on(con, branch, date).await?;
    if stack(con, branch).await?.by_vehicle {
        for name in sets_of_country(country) {
            if book.sets.iter().all(|set| set.name != name) {
                let at = book.sets.len().saturating_sub(1);
                let set = RuleSet { is_by_vehicle: true, ..set_on(con, branch, name, date).await? };
                book.sets.insert(at, set);
            }
        }
    }
    Ok(book)
}

/// Books by country of registration, each read once: for lists of many jobs.
#[derive(Debug)]
pub struct Books {
    branch: BranchId,
    date: Date,
    read: Vec<(String, RuleBook)>,
}

impl Books {
    /// None read yet.
    pub fn new(branch: BranchId, date: Date) -> Self {
        Self { branch, date, read: Vec::new() }
    }

    /// The book for a vehicle that is registered in a country.
    pub async fn of(&mut self, con: &mut Con, country: &str) -> Result<&RuleBook> {
        let at = if let Some(at) = self.read.iter().position(|(of, _)| of == country) {
            at
        } else {
            let book = book_for(con, self.branch, country, self.date).await?;
            self.read.push((country.to_owned(), book));
            self.read.len() - 1
        };
        Ok(&self.read[at].1)
    }
}

/// The sets of a branch on a day, without the shop's own lines.
pub async fn base_on(con: &mut Con, branch: BranchId, date: Date) -> Result<RuleBook> {
    let mut sets = Vec::new();
    for name in stack(con, branch).await?.names {
        sets.push(set_on(con, branch, &name, date).await?);
    }
    Ok(RuleBook { sets })
}

/// One set as it counts in a branch on a day: the file that was put in its place, else as the program ships it.
pub async fn set_on(con: &mut Con, branch: BranchId, name: &str, date: Date) -> Result<RuleSet> {
    let file = rule_files::find_in_force(con, branch, name, date).await?;
    let text = file.as_ref().map(|file| file.text.as_str()).or_else(|| embedded(name));
    let unknown = || Error::Broken(sqlx::Error::Decode(format!("there is no rule set {name}").into()));
    read(name, text.ok_or_else(unknown)?)
}

fn read(name: &str, text: &str) -> Result<RuleSet> {
    RuleSet::read(text)
        .map_err(|bad| Error::Broken(sqlx::Error::Decode(format!("the rule set {name} cannot be read: {bad}").into())))
}
