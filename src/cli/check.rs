//! `fuelwright check`: whether the shop is whole; a line for each thing looked at.

use anyhow::bail;

use super::{Outcome, Place};
use crate::backup::check::{Line, check};
use crate::clock::Clock;
use crate::config::Config;
use crate::db::Database;

pub(super) async fn run(place: &Place) -> anyhow::Result<Outcome> {
    let config = Config::of_folder(&place.data);
    if !config.database().exists() {
        bail!("there is no shop in {}; name its folder with --data", config.data.display());
    }
    let db = Database::open_to_read(&config.database()).await?;
    let lines = check(&mut *db.read().await?, &config.data, Clock::system().now()).await?;
    db.close().await;
    Ok(say(&lines))
}

/// Prints the lines; how the command ends with them.
pub(super) fn say(lines: &[Line]) -> Outcome {
    for line in lines {
        if line.holds() {
            println!("good   {:<12} {}", line.what, line.said);
        } else {
            println!("WRONG  {:<12} {}", line.what, line.wrong.join("; "));
        }
    }
    if lines.iter().all(Line::holds) { Outcome::Done } else { Outcome::Failed }
}
