//! The shop block: what stands on every paper, and the customs of the place.

use askama::Template;
use axum::extract::State;

use super::four_eyes;
use crate::clock::Zone;
use crate::db;
use crate::model::branch::{Branch, PaperSize};
use crate::model::ids::BranchId;
use crate::shop::Refusal;
use crate::unit::{Currency, Unit, Units};
use crate::web::app::App;
use crate::web::error::{beside, meanwhile};
use crate::web::form::{Form, Typed, Wrong};
use crate::web::kit::{self, Choice};
use crate::web::language;
use crate::web::page::{Frame, Place, page, retry, see_other};
use crate::web::visitor::Visitor;
use crate::web::{Answer, Error, path};
use crate::words::Language;

#[derive(Template)]
#[template(path = "office/shop.html")]
struct ShopPage {
    frame: Frame,
    form: Form,
    paper_sizes: Vec<Choice>,
    languages: Vec<Choice>,
    /// The other form of the page: four eyes, as set now.
    eyes: Form,
    /// Name of the field and what can be chosen.
    units: [(&'static str, Vec<Choice>); 5],
}

/// Fields of the units, and what each can be.
const UNITS: [(&str, &[Unit]); 5] = [
    ("pressure_unit", &Units::PRESSURES),
    ("temperature_unit", &Units::TEMPERATURES),
    ("power_unit", &Units::POWERS),
    ("length_unit", &Units::LENGTHS),
    ("volume_unit", &Units::VOLUMES),
];

/// A unit is its symbol in every language.
fn unit_choices((name, units): (&'static str, &[Unit])) -> (&'static str, Vec<Choice>) {
    (name, units.iter().map(|unit| Choice::new(unit.symbol(), unit.symbol())).collect())
}

impl ShopPage {
    async fn new(app: &App, who: &Visitor, form: Form) -> Result<Self, Error> {
        let frame = who.frame().at(Place::Office);
        let asked = four_eyes::is_asked(&mut *app.read().await?, who.branch.id).await?;
        let eyes = Form::blank().scoped("shop").with("four_eyes", if asked { "yes" } else { "no" });
        Ok(Self {
            paper_sizes: kit::coded::<PaperSize>(&frame.w),
            languages: language::choices(form.value("language")),
            units: UNITS.map(unit_choices),
            frame,
            form,
            eyes,
        })
    }
}

/// `GET /office/shop`.
pub async fn edit(State(app): State<App>, who: Visitor) -> Answer {
    let branch = db::branches::find(&mut *app.read().await?, who.branch.id).await?.ok_or(Error::NotFound)?;
    let mut form = Form::blank().scoped("shop").with("opened_version", branch.version.to_string());
    for (name, text) in texts(&branch) {
        form.set(name, text);
    }
    page(ShopPage::new(&app, &who, form).await?)
}

/// `POST /office/shop`.
pub async fn update(State(app): State<App>, who: Visitor, typed: Typed) -> Answer {
    let mut form = Form::from(typed).scoped("shop");
    let version = form.opened_version().unwrap_or(0);
    let Some(branch) = read_branch(&mut form, "shop_", who.branch.id, version) else {
        return retry(ShopPage::new(&app, &who, form).await?);
    };
    match app.shop.change_branch(&who.actor, form.key(), branch).await {
        Ok(()) => see_other(path::SHOP),
        Err(Refusal::Stale) => {
            let now = db::branches::find(&mut *app.read().await?, who.branch.id).await?.ok_or(Error::NotFound)?;
            meanwhile(&mut form, now.version, &texts(&now));
            retry(ShopPage::new(&app, &who, form).await?)
        }
        Err(refusal) => {
            beside(&mut form, refusal)?;
            retry(ShopPage::new(&app, &who, form).await?)
        }
    }
}

/// What each field shows of a branch.
fn texts(branch: &Branch) -> Vec<(&'static str, String)> {
    let expires = branch.licence_expires_on.map(|day| day.to_string()).unwrap_or_default();
    vec![
        ("shop_name", branch.name.clone()),
        ("address", branch.address.clone()),
        ("phone", branch.phone.clone()),
        ("shop_mail", branch.mail.clone()),
        ("licence_number", branch.licence_number.clone()),
        ("licence_expires_on", expires),
        ("country", branch.country.clone()),
        ("time_zone", branch.time_zone.clone()),
        ("currency", branch.currency.clone()),
        ("language", branch.language.clone()),
        ("paper_size", branch.paper_size.to_string()),
        ("pressure_unit", branch.units.pressure.symbol().to_owned()),
        ("temperature_unit", branch.units.temperature.symbol().to_owned()),
        ("power_unit", branch.units.power.symbol().to_owned()),
        ("length_unit", branch.units.length.symbol().to_owned()),
        ("volume_unit", branch.units.volume.symbol().to_owned()),
    ]
}

/// Reads the shop block; name and mail are behind `prefix`, because a person's stand on the same page at set-up.
pub fn read_branch(form: &mut Form, prefix: &str, id: BranchId, version: i64) -> Option<Branch> {
    let name = form.text(&format!("{prefix}name"), 200);
    let address = form.long_text("address", 1000);
    let phone = form.text("phone", 50);
    let mail = form.opt_mail(&format!("{prefix}mail")).unwrap_or_default();
    let licence_number = form.opt_text("licence_number", 100).unwrap_or_default();
    let licence_expires_on = form.opt_date("licence_expires_on");
    let country = code(form, "country", 2);
    let time_zone = form.text("time_zone", 100);
    if time_zone.as_deref().is_some_and(|name| Zone::named(name).is_err()) {
        form.fail("time_zone", Wrong::NotKnown);
    }
    let currency = code(form, "currency", 3);
    if currency.as_deref().is_some_and(|code| code.parse::<Currency>().is_err()) {
        form.fail("currency", Wrong::NotKnown);
    }
    let language = form.text("language", 35);
    if language.as_deref().is_some_and(|tag| Language::of_papers(tag).is_none()) {
        form.fail("language", Wrong::NotKnown);
    }
    let paper_size = form.choice("paper_size");
    let units = read_units(form);
    form.sound()?;
    Some(Branch {
        id,
        name: name?,
        address: address?,
        phone: phone?,
        mail,
        licence_number,
        licence_expires_on,
        country: country?,
        time_zone: time_zone?,
        currency: currency?,
        language: language?,
        paper_size: paper_size?,
        units: units?,
        version,
    })
}

/// The units; as things are kept where none is chosen, which is how a new shop begins.
fn read_units(form: &mut Form) -> Option<Units> {
    let kept = Units::KEPT;
    let mut one = |(name, choices): (&str, &[Unit]), kept: Unit| match form.value(name) {
        "" => Some(kept),
        symbol => {
            let chosen = choices.iter().copied().find(|unit| unit.symbol() == symbol);
            if chosen.is_none() {
                form.fail(name, Wrong::NotAChoice);
            }
            chosen
        }
    };
    let [pressure, temperature, power, length, volume] = UNITS;
    Some(Units {
        pressure: one(pressure, kept.pressure)?,
        temperature: one(temperature, kept.temperature)?,
        power: one(power, kept.power)?,
        length: one(length, kept.length)?,
        volume: one(volume, kept.volume)?,
    })
}

/// A code of exactly `length` Latin letters, in capitals.
fn code(form: &mut Form, name: &str, length: usize) -> Option<String> {
    let text = form.text(name, length)?.to_uppercase();
    if text.len() == length && text.bytes().all(|byte| byte.is_ascii_uppercase()) {
        return Some(text);
    }
    form.fail(name, Wrong::NotKnown);
    None
}
