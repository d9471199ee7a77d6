//! smoke
use crate::driver::{Browser, Scripts};
use crate::server::Server;
use crate::support::TestShop;

async fn smoke(scripts: Scripts, name: &'static str) {
    let server = Server::of(TestShop::empty().await).await;
    let code = server.open.shop.make_set_up_code().await.unwrap();
    let browser = Browser::open(&server.site, name, scripts).await;
    browser.go("/set-up").await;
    browser.fill("code", code.as_text()).await;
    browser.fill("licence_expires_on", "2027-12-31").await;
    println!("{}", browser.holds("licence_expires_on").await);
    browser.resize(360, 740).await;
    browser.picture("set-up").await;
    browser.fits().await;
    browser.keep().await;
    println!("{}", browser.text().await);
    browser.is_quiet().await;
    browser.close().await;
}

#[tokio::test(flavor = "multi_thread")]
async fn with_scripts() {
    smoke(Scripts::On, "on").await;
}

#[tokio::test(flavor = "multi_thread")]
async fn without_scripts() {
    smoke(Scripts::Off, "off").await;
}
