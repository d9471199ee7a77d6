//! The rule book of a branch on a day: the sets that ship with the program, and the shop's own lines on top.

use time::Date;

use super::{Con, Error, Result, rule_files};
use crate::model::ids::BranchId;
use crate::rules::{BASE, RuleBook, RuleSet, embedded};

/// The name of the shop's own set.
pub const SHOP: &str = "shop";

/// The book in force on a day. A file of the shop's own that this version cannot read is an error, never left out: with
/// it, a limit would silently be gone.
pub async fn book_on(con: &mut Con, branch: BranchId, date: Date) -> Result<RuleBook> {
    let mut book = base()?;
    let own = rule_files::find_in_force(con, branch, SHOP, date).await?;
    book.sets.push(match &own {
        Some(file) => read(SHOP, &file.text)?,
        None => read(SHOP, embedded(SHOP).unwrap_or_default())?,
    });
    Ok(book)
}

/// The sets that ship with the program, without the shop's own lines.
pub fn base() -> Result<RuleBook> {
    let sets = BASE.iter().map(|name| read(name, embedded(name).unwrap_or_default()));
    Ok(RuleBook { sets: sets.collect::<Result<_>>()? })
}

fn read(name: &str, text: &str) -> Result<RuleSet> {
    RuleSet::read(text)
        .map_err(|bad| Error::Broken(sqlx::Error::Decode(format!("the rule set {name} cannot be read: {bad}").into())))
}
