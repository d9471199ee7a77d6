//! One conversion told by hand, in the browser: from the one-time code of an empty shop to the first reminder after the
//! hand-over. Told twice, with scripts and without; the steps are the same.

use std::cell::RefCell;
use std::path::PathBuf;
use std::time::{Duration as Pause, Instant};

use fuelwright::db;
use fuelwright::demo::story;
use fuelwright::model::ids::{JobId, PersonId};
use fuelwright::rules::RuleBook;
use time::Duration;
use time::macros::datetime;

use crate::driver::{Browser, Scripts};
use crate::reading::Paper;
use crate::server::Server;
use crate::support::{PASSWORD, TestShop};

/// A shop, its window, and the job that is told.
pub struct Told {
    pub server: Server,
    pub window: Browser,
    pub job: JobId,
    /// Sign-in name of whoever stands at the window.
    who: RefCell<String>,
    scripts: Scripts,
}

#[tokio::test(flavor = "multi_thread")]
async fn a_conversion_by_hand() {
    tell("story", Scripts::On).await;
}

#[tokio::test(flavor = "multi_thread")]
async fn the_same_without_scripts() {
    tell("plain", Scripts::Off).await;
}

async fn tell(name: &'static str, scripts: Scripts) {
    let mut told = open_shop(name, scripts).await;
    told.add_people().await;
    told.add_analyser().await;
    told.take_in().await;
    told.size().await;
    told.fit().await;
    told.calibrate().await;
    told.prove().await;
    told.hand_over_signed().await;
    let paper = told.issue().await;
    told.read_paper(&paper).await;
    told.verify().await;
    told.close_job().await;
    told.remind().await;
    assert!(told.paper().page_count() <= 2, "a plain conversion takes {} pages", told.paper().page_count());
    told.window.is_quiet().await;
    told.window.close().await;
}

/// The set-up page of an empty shop, with the code that the program prints.
pub async fn open_shop(name: &'static str, scripts: Scripts) -> Told {
    let server = Server::of(TestShop::empty().await).await;
    let code = server.open.shop.make_set_up_code().await.unwrap();
    let window = Browser::open(&server.site, name, scripts).await;
    window.go("/").await;
    assert_eq!(window.path().await, "/set-up", "an empty shop opens with its set-up");
    window
        .fill_all(&[
            ("code", code.as_text()),
            ("shop_name", "Saltmarsh Autogas"),
            ("address", "4 Quay Lane\nNorthmere"),
            ("phone", "+44 1632 960100"),
            ("shop_mail", "shop@example.org"),
            ("licence_number", "NM-W-17"),
            ("licence_expires_on", "2027-12-31"),
            ("country", "GB"),
            ("time_zone", "Europe/London"),
            ("currency", "GBP"),
            ("language", "en"),
            ("name", "Ilse Brandt"),
            ("initials", "IB"),
            ("sign_in_name", "ilse"),
            ("mail", "ilse@example.org"),
            ("new_password", PASSWORD),
            ("new_password_again", PASSWORD),
        ])
        .await;
    window.keep().await;
    window.is_content().await;
    window.go("/office/shop").await;
    window.says("Saltmarsh Autogas").await;
    Told { server, window, job: JobId::new(), who: RefCell::new("ilse".into()), scripts }
}

impl Told {
    fn wait(&self, minutes: i64) {
        self.server.open.clock.advance(Duration::minutes(minutes));
    }

    pub async fn id_of(&self, sign_in_name: &str) -> PersonId {
        let mut con = self.server.open.shop.db.read().await.unwrap();
        let people = db::people::list(&mut con, self.server.open.branch).await.unwrap();
        people.into_iter().find(|person| person.sign_in_name == sign_in_name).expect("is in the shop").id
    }

    /// Leaves, and comes in as somebody else.
    pub async fn is_now(&self, sign_in_name: &str) {
        self.window.leave().await;
        sign_in_name.clone_into(&mut self.who.borrow_mut());
        self.window.go("/sign-in").await;
        self.sign_in().await;
    }

    async fn sign_in(&self) {
        let who = self.who.borrow().clone();
        self.window.fill_all(&[("sign_in_name", &who), ("password", PASSWORD)]).await;
        self.window.keep().await;
        self.window.is_content().await;
    }

    /// Opens an address; whoever was away too long signs in again and is brought to where they wanted.
    async fn go(&self, path: &str) {
        self.window.go(path).await;
        if self.window.path().await.starts_with("/sign-in") {
            self.sign_in().await;
            assert_eq!(self.window.path().await, path);
        }
    }

    /// The manager adds a desk, a technician and a signatory; each chooses a password with the code handed on.
    pub async fn add_people(&mut self) {
        let add = [
            ("Mara Lind", "ML", "mara", "desk"),
            ("Jon Aspen", "JA", "jon", "technician"),
            ("Vera Holm", "VH", "vera", "technician"),
        ];
        let mut codes = vec![];
        for (name, initials, sign_in_name, role) in add {
            self.window.go("/office/people/new").await;
            self.window
                .fill_all(&[("name", name), ("initials", initials), ("sign_in_name", sign_in_name), ("roles", role)])
                .await;
            self.window.keep().await;
            self.window.says(name).await;
            codes.push((sign_in_name, self.window.text_of("p.code").await));
        }
        let open = &mut self.server.open;
        let branches = {
            let mut con = open.shop.db.read().await.unwrap();
            db::branches::list(&mut con).await.unwrap()
        };
        open.branch = branches[0].id;
        let vera = self.id_of("vera").await;
        self.window.go(&format!("/office/people/{vera}")).await;
        self.window
            .fill_all(&[
                ("authorisation_number", "NM-2031"),
                ("expires_on", "2027-05-31"),
                ("signing_password", PASSWORD),
            ])
            .await;
        self.window.press("Change the right to sign").await;
        self.window.is_content().await;
        self.window.go("/office/people").await;
        self.window.says("NM-2031").await;
        for (_, code) in &codes {
            self.window.leave().await;
            self.window.go("/welcome").await;
            self.window.fill_all(&[("code", code), ("new_password", PASSWORD), ("new_password_again", PASSWORD)]).await;
            self.window.keep().await;
            self.window.is_content().await;
        }
        let (ilse, mara, jon) = (self.id_of("ilse").await, self.id_of("mara").await, self.id_of("jon").await);
        let open = &mut self.server.open;
        (open.ilse, open.mara, open.jon, open.vera) = (ilse, mara, jon, vera);
    }

    /// The technician enters the gas analyser, its certificate, and this morning's check.
    pub async fn add_analyser(&self) {
        self.is_now("jon").await;
        self.window.go("/instruments/new").await;
        self.window
            .fill_all(&[
                ("code", "A-2"),
                ("kind", "gas-analyser"),
                ("serial", "88231"),
                ("maker", "Lowell"),
                ("type_name", "four-gas"),
                ("unit", "%"),
                ("resolution", "0.01"),
                ("needs_daily_check", "yes"),
            ])
            .await;
        self.window.keep().await;
        self.window.is_content().await;
        let at = self.window.path().await;
        self.window.go(&format!("{at}/certificates/new")).await;
        self.window
            .fill_all(&[
                ("certificate_number", "K-5531"),
                ("laboratory", "Northmere Metrology"),
                ("calibrated_on", "2026-02-03"),
                ("due_on", "2027-02-03"),
                ("expanded_uncertainty", "0.04"),
                ("coverage_factor", "2"),
            ])
            .await;
        self.window.keep().await;
        self.window.is_content().await;
        self.window.go(&format!("{at}/checks/new")).await;
        self.window.fill("has_passed", "passed").await;
        self.window.keep().await;
        self.window.is_content().await;
        self.window.go(&at).await;
        self.window.says("K-5531").await;
    }

    /// Somebody calls: a name and a phone in the bay plan. They come: the booking becomes customer, vehicle and job.
    pub async fn arrive(&mut self) {
        self.is_now("ilse").await;
        self.go("/bay-plan/bays").await;
        self.window.fill("name", "Bay 1").await;
        self.window.act("form[action='/bay-plan/bays'] button").await;
        self.window.is_content().await;
        self.is_now("mara").await;
        self.go("/bay-plan/bookings/new").await;
        self.window.choose("bay_id", "Bay 1").await;
        self.window
            .fill_all(&[
                ("name", "Ilse Marrow"),
                ("phone", "0555 0142"),
                ("starts_at", "2026-05-12T10:00"),
                ("ends_at", "2026-05-12T18:00"),
                ("job_kind", "conversion"),
            ])
            .await;
        self.window.keep().await;
        self.window.is_content().await;
        self.go("/bay-plan").await;
        self.window.says("Ilse Marrow").await;
        self.window.act("main a[href^='/bay-plan/bookings/0']").await;
        self.window.act("main a[href^='/arrivals/new?booking=']").await;
        assert_eq!(self.window.holds("phone").await, "0555 0142", "what was booked is not asked again");
        self.window
            .fill_all(&[
                ("customer", "new"),
                ("vehicle", "new"),
                ("address", "Fen Lane 7\nNorthmere"),
                ("mail", "ilse.marrow@example.org"),
                ("plate", "NM 47 KTR"),
                ("plate_country", "GB"),
                ("vin", "1M8GDM9AXKP042788"),
                ("make", "Corvane"),
                ("model", "Pilot 1.6"),
                ("first_registered_on", "2014-03-01"),
                ("category", "M1"),
                ("engine_fuel", "petrol"),
                ("engine_code", "CV16"),
                ("displacement_cm3", "1598"),
                ("engine_cylinders", "4"),
                ("rated_power_kw", "82"),
                ("rated_rpm", "6000"),
                ("aspiration", "natural"),
                ("petrol_injection", "port"),
                ("has_catalyst", "yes"),
                ("is_closed_loop", "yes"),
                ("gross_mass_kg", "1780"),
                ("rear_axle_reserve_kg", "140"),
                ("kind", "conversion"),
                ("fuel", "lpg"),
                ("system_kind", "vapour-injection"),
            ])
            .await;
        self.window.keep().await;
        self.window.is_content().await;
        let path = self.window.path().await;
        self.job = path.split('/').nth(2).and_then(|id| id.parse().ok()).expect("a job file stands open");
        self.go("/").await;
        self.window.says("NM 47 KTR").await;
        self.window.picture("today").await;
    }

    /// Opens a slot of the job file, fills it, records it.
    async fn record(&self, slot: &str, fields: &[(&str, &str)]) {
        self.go(&format!("/jobs/{}/{slot}", self.job)).await;
        self.window.fill_all(fields).await;
        self.window.keep().await;
        self.window.is_content().await;
    }

    /// Intake: the odometer, the engine on petrol, photos of the plates.
    pub async fn take_in(&mut self) {
        self.arrive().await;
        self.wait(5);
        self.is_now("jon").await;
        self.record("arrival", &[("odometer", "128430"), ("reported_faults", "none")]).await;
        self.wait(40);
        let sound = [
            ("compression_unit", "bar"),
            ("compression[0][compression]", "12.8"),
            ("compression[1][compression]", "12.4"),
            ("compression[2][compression]", "12.8"),
            ("compression[3][compression]", "12.4"),
            ("coolant_c", "88"),
            ("trim_idle_percent", "1.6"),
            ("trim_raised_percent", "2.3"),
            ("idle_co_percent", "0.04"),
            ("is_ignition_sound", "yes"),
            ("is_valve_clearance_sound", "yes"),
            ("has_valve_seat_risk", "no"),
            ("verdict", "suitable"),
        ];
        self.record("suitability", &sound).await;
        for slot in ["odometer", "vin-plate", "container-plate"] {
            self.send_picture(slot).await;
        }
    }

    async fn send_picture(&self, slot: &str) {
        let photo = self.photo(slot);
        self.go(&format!("/jobs/{}/photos", self.job)).await;
        self.window.attach(&format!("#{slot} input[type=file]"), &photo).await;
        self.window.act(&format!("#{slot} form .acts button")).await;
        self.window.is_content().await;
        self.window.has(&format!("#{slot} .shots img")).await;
    }

    fn photo(&self, name: &str) -> PathBuf {
        let path = self.window.downloads.path().join(format!("{name}.png"));
        let picture = image::RgbImage::from_fn(640, 480, |x, y| {
            image::Rgb([u8::try_from(x % 256).unwrap(), u8::try_from(y % 256).unwrap(), 96])
        });
        picture.save(&path).unwrap();
        path
    }

    /// Sizing: the nozzle by its sheet.
    pub async fn size(&self) {
        self.wait(20);
        let sheet = [
            ("fuel_mix", "typed-mole"),
            ("share_propane", "60"),
            ("share_n_butane", "40"),
            ("rated_power_kw", "75"),
            ("rated_rpm", "5800"),
            ("engine_cylinders", "4"),
            ("brake_efficiency", "0.30"),
            ("manifold_kpa", "0.97 bar"),
            ("gas_temperature_c", "50"),
            ("max_duty", "0.90"),
            ("idle_rpm", "800"),
            ("idle_fuel_power_kw", "9.5"),
            ("idle_manifold_kpa", "35"),
            ("sets[0][supply_over_manifold_kpa]", "120"),
            ("sets[0][dead_time_ms]", "1.6"),
            ("sets[0][min_pulse_ms]", "2.5"),
            ("sets[0][discharge_coefficient]", "0.80"),
            ("sets[0][sizes_mm]", "1.8 2.0 2.2 2.4 2.6"),
        ];
        self.record("nozzle-sizing", &sheet).await;
        self.window.says("Fits: 2.20").await;
        let sheet = [
            ("fuel_mix", "typed-mole"),
            ("share_propane", "60"),
            ("share_n_butane", "40"),
            ("fill_percent", "80"),
            ("temperature_c", "15"),
            ("consumption_l_per_100km", "9.5"),
            ("left_behind_percent", "5"),
            ("sets[0][name]", "toroidal"),
            ("sets[0][gross_volume_l]", "54"),
            ("sets[0][container_mass_kg]", "28"),
            ("taken", "1"),
        ];
        self.record("container-sizing", &sheet).await;
    }

    /// Fitting: nine parts, the table of engine cylinders, every line of the checklist, the level.
    pub async fn fit(&self) {
        self.wait(180);
        for part in PARTS {
            self.go(&format!("/jobs/{}/parts/new?category={}", self.job, part[0])).await;
            let names = ["maker", "type_name", "approval_mark", "serial", "batch", "made_on", "capacity_l", "place"];
            for (name, value) in names.iter().zip(&part[1..]).filter(|(_, value)| !value.is_empty()) {
                self.window.fill(name, value).await;
            }
            self.window.keep().await;
            self.window.is_content().await;
        }
        let mut rows = vec![];
        for n in 1..=4 {
            rows.push((format!("rows[{n}][petrol_connector]"), "two-pin oval".to_owned()));
            rows.push((format!("rows[{n}][control_pin]"), format!("pin {n}")));
            rows.push((format!("rows[{n}][branch_mark]"), format!("ring {n}")));
            rows.push((format!("rows[{n}][gas_injector]"), n.to_string()));
            rows.push((format!("rows[{n}][nozzle_mm]"), "2.2".to_owned()));
            rows.push((format!("rows[{n}][answers]"), "yes".to_owned()));
        }
        self.record_owned("cylinder-table", &rows).await;
        self.wait(30);
        let job = {
            let open = &self.server.open;
            let mut con = open.shop.db.read().await.unwrap();
            db::jobs::find(&mut con, open.branch, self.job).await.unwrap().unwrap()
        };
        let book = RuleBook::shipped().unwrap();
        let lines = book.checks(&job);
        assert!(lines.len() > 10, "a checklist of {}", lines.len());
        let answers: Vec<_> =
            lines.iter().map(|line| (format!("answers[{}][answer]", line.id), "pass".to_owned())).collect();
        self.record_owned("checklist", &answers).await;
        self.record("level-sensing", &[("how", "sender")]).await;
    }

    async fn record_owned(&self, slot: &str, fields: &[(String, String)]) {
        let fields: Vec<_> = fields.iter().map(|(name, value)| (name.as_str(), value.as_str())).collect();
        self.record(slot, &fields).await;
    }

    /// Calibration: warm, in closed loop, trims alike on both fuels, clean after the drive.
    pub async fn calibrate(&self) {
        self.wait(60);
        let calibration = [
            ("coolant_c", "89"),
            ("vaporiser_c", "61"),
            ("was_closed_loop", "yes"),
            ("set_pressure_kpa", "1.15 bar"),
            ("gas_temperature_c", "48"),
            ("how", "idle first, then held at 2 500 /min, then a road drive with corrections by hand"),
            ("is_nozzle_adequate", "yes"),
            ("changeover_c", "38"),
            ("fall_back_kpa", "60"),
            ("lock_holder", "nobody; not locked"),
        ];
        self.record("engine-calibration", &calibration).await;
        self.wait(30);
        let mut points = vec![];
        for (n, (point, petrol, gas)) in [("idle", "1.6", "3.1"), ("2 500 /min", "2.3", "4.7")].iter().enumerate() {
            for (name, value) in [
                ("point", *point),
                ("bank", "1"),
                ("petrol_short_percent", "0.8"),
                ("petrol_long_percent", petrol),
                ("gas_short_percent", "1.6"),
                ("gas_long_percent", gas),
            ] {
                points.push((format!("points[{n}][{name}]"), value.to_owned()));
            }
        }
        self.record_owned("trims", &points).await;
        self.wait(45);
        self.record("after-drive", &[("petrol_km", "9"), ("gas_km", "14")]).await;
    }

    /// Proving: both sections dry by foam, exhaust on both fuels, everything works.
    pub async fn prove(&self) {
        for (section, pressure, names) in
            [("lpg-liquid", "620", story::LIQUID_JOINTS), ("lpg-vapour", "115", story::VAPOUR_JOINTS)]
        {
            self.wait(15);
            self.go(&format!("/jobs/{}/leak-joints/{section}", self.job)).await;
            self.window
                .fill_all(&[
                    ("method", "foam"),
                    ("pressure_gauge_kpa", pressure),
                    ("foam_batch", "F-2"),
                    ("foam_expires_on", "2028-06-30"),
                ])
                .await;
            // The page names the joints that are common practice; those that are there are searched, one by one.
            let mut searched = 0;
            while self.window.has_field(&format!("joints[{searched}][verdict]")).await
                && !self.window.holds(&format!("joints[{searched}][name]")).await.is_empty()
            {
                self.window.fill(&format!("joints[{searched}][verdict]"), "dry").await;
                searched += 1;
            }
            assert!(searched >= names.len().min(5), "{searched} joints");
            self.window.keep().await;
            self.window.is_content().await;
        }
        for (fuel, set_to, idle_co2, raised_co2) in
            [("petrol", "petrol", "14.9", "15.1"), ("gas", "lpg", "12.9", "13.1")]
        {
            self.wait(12);
            self.go(&format!("/jobs/{}/exhaust/{fuel}", self.job)).await;
            self.window.choose("analyser_id", "A-2").await;
            self.window
                .fill_all(&[
                    ("analyser_set_to", set_to),
                    ("coolant_c", "90"),
                    ("idle_rpm", "780"),
                    ("idle_co_percent", "0.08"),
                    ("idle_co2_percent", idle_co2),
                    ("idle_o2_percent", "0.12"),
                    ("idle_hc_ppm", "28"),
                    ("raised_rpm", "2600"),
                    ("raised_co_percent", "0.05"),
                    ("raised_co2_percent", raised_co2),
                    ("raised_o2_percent", "0.12"),
                    ("raised_hc_ppm", "16"),
                ])
                .await;
            self.window.keep().await;
            self.window.is_content().await;
        }
        self.wait(20);
        let works = [
            ("changeover_works", "yes"),
            ("returns_when_empty", "yes"),
            ("starts_on_gas", "not-fitted"),
            ("shut_off_ignition_s", "1.1"),
            ("shut_off_stalled_s", "1.6"),
            ("fill_stop_how", "first-fill"),
            ("fill_stop_l", "42.6"),
            ("fill_ticket", "ticket 8812"),
            ("level_shows", "yes"),
            ("vent_is_open", "yes"),
            ("excess_flow_present", "yes"),
            ("label_in_place", "yes"),
        ];
        self.record("function-checks", &works).await;
        self.window.picture("proving").await;
    }

    /// The driver is instructed and signs: on the pad where scripts run, else on a paper that is photographed. A form
    /// without a signature comes back and keeps what was ticked.
    pub async fn hand_over_signed(&self) {
        self.wait(20);
        self.go(&format!("/jobs/{}/hand-over", self.job)).await;
        assert_eq!(self.window.holds("received_by").await, "Ilse Marrow", "the keeper takes the vehicle");
        let topics = self.window.ticks("topics").await;
        assert!(topics.len() >= 5, "explained are {topics:?}");
        for topic in &topics {
            self.window.fill("topics", topic).await;
        }
        self.window.fill_all(&[("manuals_given", "yes"), ("consents_to_reminders", "yes")]).await;
        self.window.keep().await;
        assert!(self.window.has_error().await, "nobody signed");
        assert!(self.window.is_ticked("topics", &topics[0]).await, "what was ticked is kept");
        match self.scripts {
            Scripts::On => self.window.sign("signature").await,
            Scripts::Off => {
                self.window.fill("received_how", "paper").await;
                self.window.attach("main [name=signature]", &self.photo("signature")).await;
            }
        }
        self.window.picture("hand-over").await;
        self.window.keep().await;
        self.window.is_content().await;
        self.is_signature_kept().await;
        self.wait(5);
    }

    /// The signature lies in the job's files as it was given: ink on a white pad, or the photographed paper.
    async fn is_signature_kept(&self) {
        let open = &self.server.open;
        let file = {
            let mut con = open.shop.db.read().await.unwrap();
            let all = db::attachments::list_in_slot(&mut con, self.job, "signature").await.unwrap();
            all.into_iter().next().expect("a signature is kept")
        };
        let bytes = open.shop.files().read(&file.sha256).unwrap().unwrap();
        let picture = image::load_from_memory(&bytes).unwrap().to_rgb8();
        let dark = picture.pixels().filter(|pixel| pixel.0.iter().all(|part| *part < 128)).count();
        let white = picture.pixels().filter(|pixel| pixel.0 == [255; 3]).count();
        match self.scripts {
            Scripts::On => assert!(dark > 200 && white > 50 * dark, "ink on white: {dark} dark of {white} white"),
            Scripts::Off => assert_eq!((picture.width(), picture.height()), (640, 480)),
        }
    }

    /// A technician is not asked for a certificate; a signatory signs it. Gives the address of the paper.
    pub async fn issue(&self) -> String {
        self.go(&format!("/jobs/{}/papers", self.job)).await;
        self.window.says("A signatory issues the certificate.").await;
        self.is_now("vera").await;
        self.go(&format!("/jobs/{}/papers", self.job)).await;
        for slot in ["odometer", "vin-plate", "container-plate"] {
            self.window.fill("photos_seen", slot).await;
        }
        self.window.fill("password", "not my password").await;
        self.window.keep().await;
        assert!(self.window.has_error().await, "a wrong password signs nothing");
        self.window.fill("password", PASSWORD).await;
        self.window.keep().await;
        self.window.is_content().await;
        if !self.window.path().await.starts_with("/papers/") {
            self.window.follow("C-2026-0001").await;
        }
        self.window.says("C-2026-0001").await;
        self.window.picture("certificate").await;
        self.window.path().await
    }

    /// The paper is downloaded; other people's tools read its words.
    pub async fn read_paper(&self, paper: &str) {
        self.go(paper).await;
        let pdf = self.window.download("Open the paper").await;
        let paper = Paper::new(&format!("browser-{}", self.window.name), &pdf);
        for said in ["C-2026-0001", "Saltmarsh Autogas", "NM 47 KTR", "Vera Holm", "NM-2031", "T-118204"] {
            paper.says(said);
        }
        for said in ["1M8GDM9AXKP042788", "128 430 km", "E20 67R-01 4471", "Ilse Marrow", "A-2", "12 July 2026"] {
            paper.says(said);
        }
        paper.is_sound();
    }

    /// The paper that was downloaded.
    fn paper(&self) -> Paper {
        let name = format!("browser-{}", self.window.name);
        let pdf = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join(format!("{name}.pdf"));
        Paper::new(&name, &std::fs::read(pdf).unwrap())
    }

    /// Anybody, signed out, reads the code and asks.
    pub async fn verify(&self) {
        let paper = self.paper();
        let codes: Vec<_> = (1..=paper.page_count()).flat_map(|page| paper.codes_on_page(page)).collect();
        let link = codes.iter().find(|code| code.contains("/verify/")).expect("a code with a link");
        let path = link.strip_prefix("https://shop.example").expect("the shop's own address");
        self.window.leave().await;
        self.window.go(path).await;
        self.window.says("C-2026-0001").await;
        let text = self.window.text().await;
        assert!(!text.contains("Marrow") && !text.contains("0555"), "nobody's name or phone: {text}");
        assert!(!text.contains("NM 47 KTR"), "nobody's plate: {text}");
        self.window.picture("verify").await;
    }

    /// A month before the first check falls due the reminder lies in the Outbox, with a calendar entry, and as a mail in
    /// the folder; not a day earlier.
    pub async fn remind(&self) {
        let open = &self.server.open;
        for (day, told) in [(datetime!(2026-06-11 09:00 UTC), 0), (datetime!(2026-06-12 09:00 UTC), 1)] {
            open.clock.advance(day - open.clock.now());
            self.server.go_round().await;
            assert_eq!(open_messages(open).await, told, "on {day}; the first check is due on 12 July");
        }
        self.is_now("mara").await;
        self.window.go("/outbox").await;
        self.window.follow("Sent 1").await;
        self.window.act("main table a[href^='/outbox/']").await;
        self.window.says("NM 47 KTR").await.says("BEGIN:VCALENDAR").await.says("20260712").await;
        self.window.picture("reminder").await;
        let mails: Vec<_> = std::fs::read_dir(self.server.mail_folder()).unwrap().collect();
        assert_eq!(mails.len(), 1);
        let mail = std::fs::read_to_string(mails[0].as_ref().unwrap().path()).unwrap();
        assert!(mail.contains("text/calendar") && mail.contains("ilse.marrow@example.org"), "{mail}");
    }

    /// The desk hands the vehicle over with its certificate, which ends the job: nothing more can be done to it, and what
    /// it starts falls due.
    pub async fn close_job(&self) {
        self.is_now("mara").await;
        self.go(&format!("/jobs/{}/ending", self.job)).await;
        self.window.press("Hand over with certificate").await;
        self.window.is_content().await.says("Handed over with certificate").await;
        self.go(&format!("/jobs/{}/ending", self.job)).await;
        self.window.has_not("main .stage form").await;
        self.window.picture("closed").await;
        self.go("/due").await;
        self.window.says("First check").await.says("Container").await.says("Filter").await;
    }
}

async fn open_messages(open: &TestShop) -> usize {
    let mut con = open.shop.db.read().await.unwrap();
    db::outbox::tally(&mut con, open.branch).await.unwrap().iter().map(|one| usize::try_from(one.count).unwrap()).sum()
}

/// Waits for a whole file in a folder.
pub async fn downloaded(folder: &std::path::Path, ends: &str) -> Vec<u8> {
    let begun = Instant::now();
    loop {
        let found = std::fs::read_dir(folder)
            .unwrap()
            .filter_map(|entry| Some(entry.ok()?.path()))
            .find(|path| path.to_string_lossy().ends_with(ends));
        if let Some(path) = found {
            return std::fs::read(path).unwrap();
        }
        assert!(begun.elapsed() < Pause::from_mins(1), "nothing was downloaded");
        tokio::time::sleep(Pause::from_millis(50)).await;
    }
}

/// Category, maker, type, mark, serial, batch, made, litres, place.
const PARTS: [[&str; 9]; 9] = [
    [
        "container",
        "Dunmere",
        "toroidal 630 x 225",
        "E20 67R-01 4471",
        "T-118204",
        "",
        "03/2026",
        "54",
        "spare wheel well",
    ],
    ["multivalve", "Dunmere", "MV 30", "E20 67R-01 2210", "M-118204", "", "", "", ""],
    ["gas-tight-housing", "Dunmere", "H 2", "", "H-118204", "", "", "", ""],
    ["filling-unit", "Dunmere", "F 10", "E20 67R-01 1180", "F-118204", "", "", "", ""],
    ["vaporiser", "Ostrava Vale", "V 140", "E4 67R-01 0982", "V-118204", "", "", "", ""],
    ["shut-off-valve", "Ostrava Vale", "S 8", "E4 67R-01 0877", "S-118204", "", "", "", ""],
    ["filter", "Ostrava Vale", "vapour 12 mm", "E4 67R-01 0410", "", "26-19", "", "", ""],
    ["injector-rail", "Ostrava Vale", "rail of 4", "E4 67R-01 1177", "R-118204", "", "", "", ""],
    ["control-unit", "Hartwell Electronics", "CU 4", "E4 67R-01 1422", "U-118204", "", "", "", ""],
];
