//! `fuelwright serve`: the app.

use std::io::ErrorKind;
use std::sync::Arc;
use std::time::Duration;

use anyhow::{Context, bail};
use tokio::net::TcpListener;
use tracing_subscriber::EnvFilter;

use super::folder::Folder;
use super::{Outcome, Place};
use crate::clock::Clock;
use crate::config::Config;
use crate::web;
use crate::web::app::App;

/// How long a stop waits for a mail that is being sent.
const ROUNDS_END: Duration = Duration::from_secs(10);

#[derive(Debug, clap::Args)]
pub(super) struct Serve {
    /// Address and port to listen on.
    #[arg(long, value_name = "ADDR")]
    pub listen: Option<String>,
}

pub(super) async fn run(place: &Place, Serve { listen }: &Serve) -> anyhow::Result<Outcome> {
    let config = configuration(place, listen.as_deref())?;
    start_log(&config)?;
    let folder = Folder::open(&config, Clock::system()).await?;
    serve(config, &folder).await
}

/// Everything that is settled before the start; the flag goes first.
pub(super) fn configuration(place: &Place, listen: Option<&str>) -> anyhow::Result<Config> {
    let flags: Vec<_> = listen.iter().map(|listen| ("listen", (*listen).to_owned())).collect();
    let mut config = Config::load(&place.data, &flags, std::env::vars())?;
    config.is_demo = super::demo::is_demonstration(&place.data);
    Ok(config)
}

/// Serves an open folder until the process is told to stop.
pub(super) async fn serve(config: Config, folder: &Folder) -> anyhow::Result<Outcome> {
    let listen = config.listen;
    let listener = match TcpListener::bind(listen).await {
        Ok(listener) => listener,
        Err(error) if error.kind() == ErrorKind::AddrInUse => {
            bail!("{listen} is in use by another program; choose another port with --listen")
        }
        Err(error) => return Err(error).with_context(|| format!("cannot listen on {listen}")),
    };
    // The port may have been 0: the system chose.
    let url = config.public_url.clone().unwrap_or(format!("http://{}", listener.local_addr()?));
    println!("Fuelwright {} serves {} at {url}", env!("CARGO_PKG_VERSION"), config.data.display());
    if folder.shop.is_new().await? {
        let code = folder.shop.make_set_up_code().await?;
        println!(
            "Set the shop up at {url}{} with this code, good for one hour:\n\n    {}\n",
            web::path::SET_UP,
            code.as_text()
        );
    }
    let rounds = super::remind::rounds(&config, folder.shop.clone());
    let (stop, stopped) = tokio::sync::watch::channel(false);
    let rounds = tokio::spawn(rounds.run(stopped));
    let app = App { shop: folder.shop.clone(), config: Arc::new(config) };
    web::serve::serve(listener, web::routes::router(&app), told_to_stop()).await;
    // A message on its way is finished, or its lease runs out and it is tried again under the same Message-ID.
    stop.send_replace(true);
    if tokio::time::timeout(ROUNDS_END, rounds).await.is_err() {
        tracing::warn!("the rounds did not end in time");
    }
    folder.shop.db.close().await;
    Ok(Outcome::Done)
}

pub(super) fn start_log(config: &Config) -> anyhow::Result<()> {
    let filter =
        EnvFilter::try_new(&config.log).with_context(|| format!("log is {:?}; it takes a level", config.log))?;
    tracing_subscriber::fmt().json().with_env_filter(filter).with_writer(std::io::stderr).init();
    Ok(())
}

async fn told_to_stop() {
    let by_hand = async {
        // Without a handler for it the process simply ends at Ctrl-C; nothing to wait for.
        if tokio::signal::ctrl_c().await.is_err() {
            std::future::pending::<()>().await;
        }
    };
    #[cfg(unix)]
    let by_system = async {
        match tokio::signal::unix::signal(tokio::signal::unix::SignalKind::terminate()) {
            Ok(mut signal) => drop(signal.recv().await),
            Err(_) => std::future::pending().await,
        }
    };
    #[cfg(not(unix))]
    let by_system = std::future::pending::<()>();
    tokio::select! { () = by_hand => {}, () = by_system => {} }
}
