//! A browser under a test's hands: its driver process, a window, and the verbs of somebody who fills in forms.
//!
//! Nothing here skips: a browser that is missing or does not start fails the test that wanted it.

use std::net::TcpListener;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

use tempfile::TempDir;
use thirtyfour::ChromeCapabilities;
use thirtyfour::common::capabilities::chromium::ChromiumLikeCapabilities;
use thirtyfour::common::log::LoggingPrefsLogLevel;
use thirtyfour::prelude::*;
use tokio::sync::{Mutex, MutexGuard};

/// One window at a time: two cores do not drive three browsers well.
static ONE: Mutex<()> = Mutex::const_new(());

const FLAGS: &[&str] = &[
    "--headless=new",
    "--no-sandbox",
    "--disable-dev-shm-usage",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--hide-scrollbars",
    "--force-prefers-reduced-motion",
    "--lang=en-US",
    "--window-size=1280,1000",
];

/// Whether the window runs scripts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Scripts {
    On,
    Off,
}

/// A window, signed in to nothing.
pub struct Browser {
    pub driver: WebDriver,
    site: String,
    pub name: &'static str,
    pub downloads: TempDir,
    // Dropped in this order: the driver's process, then the folder it writes, then the turn of the next test.
    _process: Process,
    _profile: TempDir,
    _turn: MutexGuard<'static, ()>,
}

/// The driver process; its end is the end of the browser too.
struct Process(Child);

impl Drop for Process {
    fn drop(&mut self) {
        let _ = self.0.kill();
        let _ = self.0.wait();
    }
}

/// Where pictures of a test go.
pub fn pictures() -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("browser");
    std::fs::create_dir_all(&folder).unwrap();
    folder
}

impl Browser {
    /// Opens a window on a site. `name` is what its pictures are called.
    pub async fn open(site: &str, name: &'static str, scripts: Scripts) -> Self {
        let turn = ONE.lock().await;
        let profile = TempDir::new().unwrap();
        let downloads = TempDir::new().unwrap();
        let port = TcpListener::bind("127.0.0.1:0").unwrap().local_addr().unwrap().port();
        let process = Command::new("chromedriver")
            .args([format!("--port={port}"), "--log-level=WARNING".to_owned()])
            .stdin(Stdio::null())
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .expect("chromedriver starts; tests/run installs it");
        let process = Process(process);
        let capabilities = capabilities(profile.path(), downloads.path(), scripts);
        let driver = connect(port, capabilities).await;
        driver.set_page_load_timeout(Duration::from_mins(1)).await.unwrap();
        Self { driver, site: site.to_owned(), name, downloads, _process: process, _profile: profile, _turn: turn }
    }

    /// Sets the size of the page itself, in CSS pixels, to look at it: a window is never as narrow as a phone, so the
    /// device is told instead.
    pub async fn resize(&self, width: u32, height: u32) {
        let metrics = serde_json::json!({
            "width": width, "height": height, "deviceScaleFactor": 1, "mobile": false
        });
        self.driver.cdp().send_raw("Emulation.setDeviceMetricsOverride", metrics).await.unwrap();
    }

    /// Opens an address of the site.
    pub async fn go(&self, path: &str) {
        self.driver.goto(format!("{}{path}", self.site)).await.unwrap();
    }

    /// The path that is open, with its question and without its site.
    pub async fn path(&self) -> String {
        let url = self.driver.current_url().await.unwrap();
        url.as_str().strip_prefix(&self.site).unwrap_or(url.as_str()).to_owned()
    }

    /// What the page says, white space folded.
    pub async fn text(&self) -> String {
        let body = self.driver.find(By::Tag("body")).await.unwrap();
        let text = body.prop("textContent").await.unwrap().unwrap_or_default();
        text.split_whitespace().collect::<Vec<_>>().join(" ")
    }

    /// Fails unless the page says this.
    pub async fn says(&self, wanted: &str) -> &Self {
        let text = self.text().await;
        if !text.contains(wanted) {
            let picture = self.picture("failed").await;
            panic!("{wanted:?} is not on {} (see {}): {text}", self.path().await, picture.display());
        }
        self
    }

    /// Fills one field by its name, as a hand would: types, chooses, ticks, or attaches a file by its path.
    pub async fn fill(&self, name: &str, value: &str) {
        if let Err(error) = self.try_fill(name, value).await {
            let picture = self.picture("failed").await;
            panic!("cannot fill {name} on {} (see {}): {error}", self.path().await, picture.display());
        }
    }

    async fn try_fill(&self, name: &str, value: &str) -> WebDriverResult<()> {
        let field = self.driver.find(By::Css(format!("main [name=\"{name}\"]"))).await?;
        let kind = field.attr("type").await?.unwrap_or_default();
        match (field.tag_name().await?.as_str(), kind.as_str()) {
            ("select", _) => field.find(By::Css(format!("option[value=\"{value}\"]"))).await?.click().await,
            (_, "radio" | "checkbox") => {
                let box_ = self.driver.find(By::Css(format!("main [name=\"{name}\"][value=\"{value}\"]"))).await?;
                if !box_.is_selected().await? {
                    box_.send_keys(" ").await?;
                }
                Ok(())
            }
            (_, "file") => field.send_keys(value).await,
            (_, "date" | "datetime-local") => {
                field.clear().await?;
                field.send_keys(by_hand(value)).await
            }
            _ => {
                field.clear().await?;
                field.send_keys(value).await
            }
        }
    }

    /// Fills several fields.
    pub async fn fill_all(&self, fields: &[(&str, &str)]) {
        for (name, value) in fields {
            self.fill(name, value).await;
        }
    }

    /// What a field holds.
    pub async fn holds(&self, name: &str) -> String {
        let field = self.driver.find(By::Css(format!("main [name=\"{name}\"]"))).await.unwrap();
        field.prop("value").await.unwrap().unwrap_or_default()
    }

    /// Whether the page has a field of this name.
    pub async fn has_field(&self, name: &str) -> bool {
        !self.driver.find_all(By::Css(format!("main [name=\"{name}\"]"))).await.unwrap().is_empty()
    }

    /// Chooses the answer of a list by the beginning of its words.
    pub async fn choose(&self, name: &str, begins: &str) {
        let path = format!("//main//select[@name=\"{name}\"]/option[starts-with(normalize-space(), \"{begins}\")]");
        self.driver.find(By::XPath(path)).await.unwrap().click().await.unwrap();
    }

    /// Hands a file to the field that a CSS selector finds.
    pub async fn attach(&self, selector: &str, file: &Path) {
        self.driver.find(By::Css(selector)).await.unwrap().send_keys(file.to_str().unwrap()).await.unwrap();
    }

    /// Fails unless something on the page matches.
    pub async fn has(&self, selector: &str) {
        if self.driver.find(By::Css(selector)).await.is_err() {
            let picture = self.picture("failed").await;
            panic!("no {selector} on {} (see {})", self.path().await, picture.display());
        }
    }

    /// Fails if anything on the page matches.
    pub async fn has_not(&self, selector: &str) {
        let found = self.driver.find_all(By::Css(selector)).await.unwrap().len();
        assert_eq!(found, 0, "{selector} on {}", self.path().await);
    }

    /// The answers that a field of several offers.
    pub async fn ticks(&self, name: &str) -> Vec<String> {
        let mut values = Vec::new();
        for one in self.driver.find_all(By::Css(format!("main [name=\"{name}\"]"))).await.unwrap() {
            values.push(one.attr("value").await.unwrap().unwrap_or_default());
        }
        values
    }

    /// Whether one of them is ticked.
    pub async fn is_ticked(&self, name: &str, value: &str) -> bool {
        let selector = format!("main [name=\"{name}\"][value=\"{value}\"]");
        self.driver.find(By::Css(selector)).await.unwrap().is_selected().await.unwrap()
    }

    /// Signs on the pad over a file field: a few strokes with the pointer down.
    pub async fn sign(&self, name: &str) {
        let pad = self.driver.find(By::Css("main canvas.pad")).await.expect("a pad to sign on");
        pad.scroll_into_view().await.unwrap();
        let mut pen = self.driver.action_chain().move_to_element_center(&pad).move_by_offset(-120, 20).click_and_hold();
        for (x, y) in [(30, -50), (30, 60), (30, -70), (40, 60), (30, -30), (60, 10)] {
            pen = pen.move_by_offset(x, y);
        }
        pen.release().perform().await.unwrap();
        let begun = Instant::now();
        // The drawing becomes the field's file a moment after the pen is lifted.
        while self.holds(name).await.is_empty() {
            assert!(begun.elapsed() < Duration::from_secs(10), "the drawing did not become a file");
            tokio::time::sleep(Duration::from_millis(20)).await;
        }
    }

    /// The text of the first element that matches.
    pub async fn text_of(&self, selector: &str) -> String {
        self.driver.find(By::Css(selector)).await.unwrap().text().await.unwrap()
    }

    /// Clicks what a CSS selector finds and waits for the next page.
    pub async fn act(&self, selector: &str) {
        self.act_on(By::Css(selector), selector).await;
    }

    /// Signs out by the button in the bar; does nothing when nobody is signed in.
    pub async fn leave(&self) {
        if self.driver.find(By::Css("details.more")).await.is_err() {
            return;
        }
        self.driver.find(By::Css("details.more > summary")).await.unwrap().click().await.unwrap();
        self.act("details.more form button").await;
    }

    /// Whether a form came back with something wrong in it.
    pub async fn has_error(&self) -> bool {
        !self.driver.find_all(By::Css("main .error, main .summary")).await.unwrap().is_empty()
    }

    /// Follows a link to a file and waits until all of it is here.
    pub async fn download(&self, words: &str) -> Vec<u8> {
        let link = format!("//a[normalize-space()=\"{words}\"]");
        press(&self.driver.find(By::XPath(link)).await.unwrap()).await.unwrap();
        crate::story::downloaded(self.downloads.path(), ".pdf").await
    }

    /// Presses the button with these words and waits for the next page.
    pub async fn press(&self, words: &str) {
        let path = format!("//main//button[normalize-space()=\"{words}\"]");
        self.act_on(By::XPath(path), words).await;
    }

    /// Presses the main button of the page's form.
    pub async fn keep(&self) {
        self.act_on(By::Css("main form button.main"), "the main button").await;
    }

    /// Follows the link with these words.
    pub async fn follow(&self, words: &str) {
        let path = format!("//a[normalize-space()=\"{words}\"]");
        self.act_on(By::XPath(path), words).await;
    }

    /// Clicks, and comes back when another document stands there.
    pub async fn act_on(&self, by: By, words: &str) {
        let before = self.driver.find(By::Tag("html")).await.unwrap();
        let Ok(element) = self.driver.find(by).await else {
            let picture = self.picture("failed").await;
            panic!("no {words:?} on {} (see {}): {}", self.path().await, picture.display(), self.text().await);
        };
        if let Err(error) = press(&element).await {
            let picture = self.picture("failed").await;
            panic!("cannot press {words:?} on {} (see {}): {error}", self.path().await, picture.display());
        }
        let begun = Instant::now();
        // The old document goes stale as soon as the new one stands.
        while before.tag_name().await.is_ok() {
            assert!(begun.elapsed() < Duration::from_mins(1), "nothing happened after {words:?}");
            tokio::time::sleep(Duration::from_millis(20)).await;
        }
        self.driver.find(By::Css("main, body")).await.unwrap();
    }

    /// Fails if a form came back with something wrong in it.
    pub async fn is_content(&self) -> &Self {
        let wrong = self.driver.find_all(By::Css("main .error, main .summary")).await.unwrap();
        if !wrong.is_empty() {
            let picture = self.picture("failed").await;
            panic!("refused on {} (see {}): {}", self.path().await, picture.display(), self.text().await);
        }
        self
    }

    /// Keeps a picture of the window.
    pub async fn picture(&self, what: &str) -> PathBuf {
        let path = pictures().join(format!("{}-{what}.png", self.name));
        self.driver.screenshot(&path).await.unwrap();
        path
    }

    /// Fails if the browser had anything to say on any page since the window opened: a script's error, a blocked style, a
    /// file not found, advice about a form. It may say that a form was refused (422), which the tests provoke, and that it
    /// forgot its copies at signing out, which it was asked to.
    pub async fn is_quiet(&self) {
        let log = self.driver.browser_log().await.unwrap();
        let said: Vec<String> = log
            .iter()
            .filter(|entry| {
                !["status of 422", "/sign-out': Cleared data"].iter().any(|said| entry.message.contains(said))
            })
            .map(|entry| format!("{} {}", entry.level, entry.message))
            .collect();
        assert!(said.is_empty(), "the console says: {said:#?}");
    }

    /// The width of a page that is wider than its window, in CSS pixels.
    pub async fn overflow_px(&self) -> Option<f64> {
        let root = self.driver.find(By::Tag("html")).await.unwrap();
        let content: f64 = root.prop("scrollWidth").await.unwrap().unwrap().parse().unwrap();
        let window: f64 = root.prop("clientWidth").await.unwrap().unwrap().parse().unwrap();
        (content > window).then_some(content)
    }

    /// Ends the session; without it the window would end with its process.
    pub async fn close(self) {
        self.driver.clone().quit().await.unwrap();
    }
}

/// Presses a button or follows a link by the keyboard; what takes no keys is clicked.
async fn press(element: &WebElement) -> WebDriverResult<()> {
    match element.tag_name().await?.as_str() {
        "a" | "button" => element.send_keys(Key::Enter).await,
        _ => element.click().await,
    }
}

fn capabilities(profile: &Path, downloads: &Path, scripts: Scripts) -> ChromeCapabilities {
    let mut wanted = DesiredCapabilities::chrome();
    for flag in FLAGS {
        wanted.add_arg(flag).unwrap();
    }
    wanted.add_arg(&format!("--user-data-dir={}", profile.display())).unwrap();
    let mut preferences = serde_json::json!({
        "download.default_directory": downloads.display().to_string(),
        "download.prompt_for_download": false,
        "plugins.always_open_pdf_externally": true,
        "intl.accept_languages": "en-US",
    });
    if scripts == Scripts::Off {
        preferences["profile.managed_default_content_settings.javascript"] = 2.into();
    }
    wanted.add_experimental_option("prefs", preferences).unwrap();
    wanted.set_logging_prefs("browser", LoggingPrefsLogLevel::All).unwrap();
    wanted
}

async fn connect(port: u16, capabilities: ChromeCapabilities) -> WebDriver {
    let begun = Instant::now();
    loop {
        match WebDriver::new(format!("http://127.0.0.1:{port}"), capabilities.clone()).await {
            Ok(driver) => return driver,
            Err(error) if begun.elapsed() > Duration::from_mins(1) => panic!("no browser: {error}"),
            Err(_) => tokio::time::sleep(Duration::from_millis(100)).await,
        }
    }
}

/// `2026-05-31` as 05312026, `2026-05-31T09:30` as 05312026, tab, 0930AM: the order in which a browser without any
/// language settled asks for them.
fn by_hand(value: &str) -> String {
    let (date, time) = value.split_once('T').unwrap_or((value, ""));
    let parts: Vec<&str> = date.split('-').collect();
    let date = [parts[1], parts[2], parts[0]].concat();
    let Some((hour, minute)) = time.split_once(':') else { return date };
    let hour: u8 = hour.parse().unwrap();
    let half = if hour < 12 { "AM" } else { "PM" };
    format!("{date}\u{e004}{:02}{minute}{half}", (hour + 11) % 12 + 1)
}
