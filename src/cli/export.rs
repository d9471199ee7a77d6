//! `fuelwright export`: what the shop issued, into an empty folder, while the server is stopped.

use std::path::PathBuf;

use super::folder::Folder;
use super::{Outcome, Place};
use crate::clock::Clock;
use crate::exchange::papers_out::{INDEX, write};
use crate::exchange::target::Target;

#[derive(Debug, clap::Args)]
pub(super) struct Export {
    /// The folder to write into; it must be empty or not there yet, and lie outside the data folder.
    #[arg(value_name = "DIR")]
    pub folder: PathBuf,
}

pub(super) async fn run(place: &Place, Export { folder: into }: &Export) -> anyhow::Result<Outcome> {
    let config = super::serve::configuration(place, None)?;
    // Before the store is opened: a wrong folder is said at once, and nothing was made.
    Target::look(into, &config.data)?;
    let folder = Folder::open_existing(&config, Clock::system()).await?;
    let mut target = Target::take(into, &config.data)?;
    let written = write(&folder.shop, &mut target).await?;
    folder.shop.db.close().await;
    println!("{}: {} papers, each as PDF and as signed content; {INDEX} lists them", into.display(), written.papers);
    println!("customers, vehicles and job files are not in it: the rest of the export comes later");
    for fault in &written.faults {
        println!("NOT AS ISSUED: {fault}");
    }
    Ok(if written.faults.is_empty() { Outcome::Done } else { Outcome::Failed })
}
