//! The real site on a free port, over a shop with a clock that the test moves.

use fuelwright::mail::{Post, Transport};
use fuelwright::rounds::Rounds;
use fuelwright::web::{routes, serve};
use tokio::net::TcpListener;
use tokio::sync::oneshot;

use crate::support::TestShop;

/// A shop that serves.
pub struct Server {
    pub open: TestShop,
    /// Where it is reached, without a slash at the end.
    pub site: String,
    // Dropped last with the server: its going tells the accept loop to stop.
    _stop: oneshot::Sender<()>,
}

impl Server {
    /// Serves a shop on a port that the system chooses.
    pub async fn of(open: TestShop) -> Self {
        let listener = TcpListener::bind("127.0.0.1:0").await.unwrap();
        let site = format!("http://{}", listener.local_addr().unwrap());
        let (stop, stopped) = oneshot::channel::<()>();
        let router = routes::router(&open.app);
        tokio::spawn(serve::serve(listener, router, async {
            let _ = stopped.await;
        }));
        Self { open, site, _stop: stop }
    }

    /// What the program does by itself each hour: reminders written, mail put into the folder.
    pub async fn go_round(&self) {
        let post = Post { transport: Transport::Folder(self.mail_folder()), from: None };
        let rounds = Rounds {
            shop: self.open.shop.clone(),
            post: Some(post),
            public_url: Some("https://shop.example".to_owned()),
            is_demo: false,
        };
        rounds.once(true).await.unwrap();
    }

    /// Where mail lies.
    pub fn mail_folder(&self) -> std::path::PathBuf {
        self.open.folder.path().join("mail")
    }
}
