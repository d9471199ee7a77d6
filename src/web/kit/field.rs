//! Fields of a form: label above, hint, the control with its unit, what is wrong beneath.

use askama::Template;

use super::already_escaped;
use crate::model::Coded;
use crate::unit::{Unit, plain};
use crate::web::form::{Form, number as typed_number, unit_name};
use crate::words::Words;

/// One answer of a closed list.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Choice {
    pub value: String,
    /// In ready words.
    pub label: String,
    pub hint: String,
}

impl Choice {
    /// An answer and how it reads.
    pub fn new(value: impl Into<String>, label: impl Into<String>) -> Self {
        Self { value: value.into(), label: label.into(), hint: String::new() }
    }
}

/// The answers `values` with their words under `prefix-value`.
pub fn choices<'a>(w: &Words, prefix: &str, values: impl IntoIterator<Item = &'a str>) -> Vec<Choice> {
    values.into_iter().map(|value| Choice::new(value, w.t(format!("{prefix}-{value}")))).collect()
}

/// Every member of a closed list, with its words under `list-code`.
pub fn coded<T: Coded>(w: &Words) -> Vec<Choice> {
    choices(w, T::LIST, T::ALL.iter().map(|one| one.code()))
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Control {
    Input,
    Area,
    Select,
    Radios,
    Ticks,
    Tick,
    File,
}

/// A field, ready to be shown; the methods change how.
#[derive(Debug, Clone, Template)]
#[template(path = "kit/field.html")]
pub struct Field {
    w: Words,
    control: Control,
    name: String,
    id: String,
    label: String,
    hint: String,
    error: String,
    read_as: String,
    value: String,
    chosen: Vec<String>,
    kind: &'static str,
    mode: &'static str,
    unit: String,
    /// Symbol of the unit that a bare number is read in, where that is not the one it is kept in.
    bare_unit: &'static str,
    written: Written,
    autocomplete: String,
    accept: String,
    size: &'static str,
    is_optional: bool,
    takes_many: bool,
    options: Vec<Choice>,
    list: String,
}

/// The text of a field, and whose it is: a number that a page filled in is turned into the shop's unit; what somebody
/// typed is left as it is.
#[derive(Debug, Clone)]
struct Written {
    text: String,
    is_filled_in: bool,
    /// The unit the field was shown in when somebody typed.
    typed_in: Option<Unit>,
}

/// An input nobody sees.
#[derive(Debug, Clone, Template)]
#[template(source = r#"<input type="hidden" name="{{ name }}" value="{{ value }}">"#, ext = "html")]
pub struct Hidden {
    name: &'static str,
    value: String,
}

/// What is wrong on a page, with a link to each field.
#[derive(Debug, Clone, Template)]
#[template(path = "kit/summary.html")]
pub struct Summary {
    w: Words,
    title: String,
    faults: Vec<Fault>,
}

#[derive(Debug, Clone)]
struct Fault {
    id: String,
    label: Option<String>,
    sentence: String,
}

already_escaped!(Field, Hidden, Summary);

/// `parts[0][serial]` to `parts-0-serial`.
fn id_of(name: &str) -> String {
    name.replace("][", "-").replace('[', "-").replace(']', "")
}

/// The label of a field, in words.
pub fn label(form: &Form, w: &Words, name: &str) -> String {
    w.t(label_key(form, w, name).unwrap_or_else(|| format!("field-{}", last_of(name))))
}

/// The last part of a name: `serial` of `parts[0][serial]`.
fn last_of(name: &str) -> &str {
    name.strip_suffix(']').and_then(|name| name.rsplit_once('[')).map_or(name, |(_, last)| last)
}

/// The label of a field: under the form's own scope first, then the one that all screens share.
fn label_key(form: &Form, w: &Words, name: &str) -> Option<String> {
    let last = last_of(name);
    let own = form.scope().map(|scope| format!("{scope}-{last}")).filter(|key| w.find(key).is_some());
    own.or_else(|| Some(format!("field-{last}")).filter(|key| w.find(key).is_some()))
}

impl Summary {
    /// The same under another title, from the words: for a form that saves nothing.
    #[must_use]
    pub fn titled(mut self, key: &str) -> Self {
        self.title = self.w.t(key);
        self
    }
}

impl Field {
    fn new(form: &Form, w: &Words, name: &str, control: Control) -> Self {
        let key = label_key(form, w, name).unwrap_or_else(|| format!("field-{}", last_of(name)));
        let read_as = form.read_as(name).map(|quantity| {
            let shown_in = w.units().shown(quantity.unit);
            let shown = quantity.unit.convert(quantity.value, shown_in).unwrap_or(quantity.value);
            let shown = w.as_kept().quantity(shown, decimals_for(shown), shown_in.symbol());
            w.tv("kit-read-as", &[("value", shown.into())])
        });
        Self {
            w: *w,
            control,
            name: name.to_owned(),
            id: id_of(name),
            label: w.t(&key),
            hint: w.find(&format!("{key}.hint")).unwrap_or_default(),
            error: form.wrong(name).map(|wrong| wrong.say(w)).unwrap_or_default(),
            read_as: read_as.unwrap_or_default(),
            value: form.value(name).to_owned(),
            chosen: form.values(name).map(str::to_owned).collect(),
            kind: "text",
            mode: "",
            unit: String::new(),
            bare_unit: "",
            written: Written::of(form, name),
            autocomplete: "off".to_owned(),
            accept: String::new(),
            size: "",
            is_optional: false,
            takes_many: false,
            options: Vec::new(),
            list: String::new(),
        }
    }

    /// Its name, as it comes back with the form.
    pub fn name(&self) -> &str {
        &self.name
    }

    /// The sentence under its label; empty for none.
    pub fn hint_said(&self) -> &str {
        &self.hint
    }

    /// Says "optional" beside the label.
    #[must_use]
    pub fn optional(mut self) -> Self {
        self.is_optional = true;
        self
    }

    /// Another label, and its hint, from the words.
    #[must_use]
    pub fn label(mut self, key: &str) -> Self {
        self.label = self.w.t(key);
        self.hint = self.w.find(&format!("{key}.hint")).unwrap_or_default();
        self
    }

    /// Another label, in ready words: a name from the shop's own data.
    #[must_use]
    pub fn called(mut self, label: impl Into<String>) -> Self {
        self.label = label.into();
        self
    }

    /// Another hint, from the words.
    #[must_use]
    pub fn hint(mut self, key: &str) -> Self {
        self.hint = self.w.t(key);
        self
    }

    /// Another hint, in ready words.
    #[must_use]
    pub fn hinted(mut self, hint: impl Into<String>) -> Self {
        self.hint = hint.into();
        self
    }

    /// Another unit than the name says.
    #[must_use]
    pub fn unit(mut self, unit: Unit) -> Self {
        let shown = self.w.units().shown(unit);
        shown.symbol().clone_into(&mut self.unit);
        self.value = self.written.shown_in(unit, shown);
        self.bare_unit = if shown == unit { "" } else { shown.symbol() };
        self
    }

    /// Name of the unseen field that says which unit a bare number is in.
    fn unit_name(&self) -> String {
        unit_name(&self.name)
    }

    /// What a number is counted in where that is no unit of measure: a currency, "teeth".
    #[must_use]
    pub fn counted_in(mut self, unit: impl Into<String>) -> Self {
        self.unit = unit.into();
        self
    }

    /// What a browser may fill in (the tokens of the HTML standard, 4.10.18.7).
    #[must_use]
    pub fn autocomplete(mut self, token: &str) -> Self {
        token.clone_into(&mut self.autocomplete);
        self
    }

    /// What was entered before, offered while typing.
    #[must_use]
    pub fn offering(mut self, known: &[String]) -> Self {
        self.options = known.iter().map(|known| Choice::new(known, known)).collect();
        self.list = format!("{}-known", self.id);
        self
    }

    /// Takes the whole line.
    #[must_use]
    pub fn wide(mut self) -> Self {
        self.size = "wide";
        self
    }

    /// A drawn signature instead of a chosen file, where scripts run.
    #[must_use]
    pub fn drawn(mut self) -> Self {
        self.mode = "signature";
        self
    }

    /// Several files.
    #[must_use]
    pub fn many(mut self) -> Self {
        self.takes_many = true;
        self
    }

    fn is_chosen(&self, value: &str) -> bool {
        self.chosen.iter().any(|chosen| chosen == value)
    }

    fn described_by(&self) -> String {
        let parts = [(&self.hint, "hint"), (&self.error, "error"), (&self.read_as, "read")];
        let ids: Vec<String> =
            parts.iter().filter(|(text, _)| !text.is_empty()).map(|(_, end)| format!("{}-{end}", self.id)).collect();
        ids.join(" ")
    }

    /// The first answer carries the field's own id, so that the summary's link lands on it.
    fn option_id(&self, index0: usize) -> String {
        if index0 == 0 { self.id.clone() } else { format!("{}-{}", self.id, index0 + 1) }
    }
}

impl Written {
    fn of(form: &Form, name: &str) -> Self {
        Self {
            text: form.value(name).to_owned(),
            is_filled_in: form.is_filled_in(name),
            typed_in: form.value(&unit_name(name)).parse().ok(),
        }
    }

    /// The text for a field whose number, or list of numbers, is kept in `kept` and shown in `shown`.
    fn shown_in(&self, kept: Unit, shown: Unit) -> String {
        let bare =
            |text: &str| typed_number::read(text).ok().filter(|read| read.unit.is_empty()).map(|read| read.value);
        let all: Option<Vec<f64>> = self.text.split_whitespace().map(bare).collect();
        let of = if self.is_filled_in { kept } else { self.typed_in.unwrap_or(kept) };
        let Some(all) = all.filter(|all| of != shown && !all.is_empty()) else { return self.text.clone() };
        match () {
            () if self.is_filled_in => {
                let turned: Option<Vec<String>> = all.iter().map(|one| plain(*one, kept, shown)).collect();
                turned.map_or_else(|| self.text.clone(), |turned| turned.join(" "))
            }
            // Typed where another unit was shown, as in the address of a sum somebody sent: the unit joins the number.
            () => format!("{} {}", self.text.trim(), of.symbol()),
        }
    }
}

/// Enough decimals to show five figures, and none that say nothing.
fn decimals_for(value: f64) -> u8 {
    let shows_all = |decimals: &u8| {
        let scaled = value.abs() * 10_f64.powi(i32::from(*decimals));
        (scaled - scaled.round()).abs() < 1e-6 || scaled >= 1e4
    };
    (0..4).find(shows_all).unwrap_or(4)
}

/// A number; its unit stands inside at the right.
pub fn number(form: &Form, w: &Words, name: impl AsRef<str>) -> Field {
    let mut field = Field::new(form, w, name.as_ref(), Control::Input);
    field.mode = "decimal";
    match Unit::of_name(last_of(name.as_ref())) {
        Some(unit) => field.unit(unit),
        None => field,
    }
}

/// One line of text.
pub fn text(form: &Form, w: &Words, name: impl AsRef<str>) -> Field {
    Field::new(form, w, name.as_ref(), Control::Input)
}

/// A short code in capitals and digits: VIN, serial, approval mark.
pub fn code(form: &Form, w: &Words, name: impl AsRef<str>) -> Field {
    let mut field = Field::new(form, w, name.as_ref(), Control::Input);
    field.mode = "code";
    field
}

/// A mail address.
pub fn mail(form: &Form, w: &Words, name: impl AsRef<str>) -> Field {
    let mut field = Field::new(form, w, name.as_ref(), Control::Input);
    // Not type=email: a browser would trim and judge the text before we see it.
    field.mode = "email";
    field.autocomplete("email")
}

/// A password, passphrase or PIN; what was typed is not shown again.
pub fn secret(form: &Form, w: &Words, name: impl AsRef<str>) -> Field {
    let mut field = Field::new(form, w, name.as_ref(), Control::Input);
    field.kind = "password";
    field.value = String::new();
    field.autocomplete("current-password")
}

/// Several lines of text.
pub fn area(form: &Form, w: &Words, name: impl AsRef<str>) -> Field {
    Field::new(form, w, name.as_ref(), Control::Area).wide()
}

/// A date. A text that is none stays visible: a browser's own date field would drop it.
pub fn date(form: &Form, w: &Words, name: impl AsRef<str>) -> Field {
    let mut field = Field::new(form, w, name.as_ref(), Control::Input);
    let is_plain = field.value.is_empty() || (field.value.len() == 10 && field.error.is_empty());
    field.kind = if is_plain { "date" } else { "text" };
    field
}

/// A date and time of day in the shop's zone.
pub fn moment(form: &Form, w: &Words, name: impl AsRef<str>) -> Field {
    let mut field = Field::new(form, w, name.as_ref(), Control::Input);
    let is_plain = field.value.is_empty() || (field.value.contains('T') && field.error.is_empty());
    field.kind = if is_plain { "datetime-local" } else { "text" };
    field
}

/// One of a closed list, folded away.
pub fn choice(form: &Form, w: &Words, name: impl AsRef<str>, options: &[Choice]) -> Field {
    let mut field = Field::new(form, w, name.as_ref(), Control::Select);
    field.options = options.to_vec();
    field
}

/// One of a closed list, all answers in sight.
pub fn radios(form: &Form, w: &Words, name: impl AsRef<str>, options: &[Choice]) -> Field {
    let mut field = Field::new(form, w, name.as_ref(), Control::Radios).wide();
    field.options = options.to_vec();
    field
}

/// Yes or no.
pub fn yes_no(form: &Form, w: &Words, name: impl AsRef<str>) -> Field {
    let answers = choices(w, "kit", ["yes", "no"]);
    pick(form, w, name, &answers)
}

/// Pass, fail or not applicable, or any other short answer; radios side by side.
pub fn pick(form: &Form, w: &Words, name: impl AsRef<str>, options: &[Choice]) -> Field {
    let mut field = radios(form, w, name, options);
    field.size = "wide inline";
    field
}

/// Several of a closed list.
pub fn ticks(form: &Form, w: &Words, name: impl AsRef<str>, options: &[Choice]) -> Field {
    let mut field = Field::new(form, w, name.as_ref(), Control::Ticks).wide();
    field.options = options.to_vec();
    field
}

/// A single tick.
pub fn tick(form: &Form, w: &Words, name: impl AsRef<str>) -> Field {
    Field::new(form, w, name.as_ref(), Control::Tick).wide()
}

/// A file; `accept` as in the HTML standard, "image/*,application/pdf".
pub fn file(form: &Form, w: &Words, name: impl AsRef<str>, accept: &str) -> Field {
    let mut field = Field::new(form, w, name.as_ref(), Control::File).wide();
    accept.clone_into(&mut field.accept);
    field
}

/// The key that makes a double tap one record. It survives an error, so that a mended form is still the same one.
pub fn key(form: &Form) -> Hidden {
    let key = form.key().unwrap_or_else(uuid::Uuid::now_v7);
    Hidden { name: "key", value: key.to_string() }
}

/// The version of the record that the form is opened at.
pub fn version(form: &Form) -> Hidden {
    Hidden { name: "opened_version", value: form.value("opened_version").to_owned() }
}

/// The list of what is wrong, at the top of a page; empty when nothing is.
pub fn summary(form: &Form, w: &Words) -> Summary {
    let fault = |(name, wrong): &(String, crate::web::form::Wrong)| Fault {
        id: id_of(name),
        label: label_key(form, w, name).map(|key| w.t(&key)),
        sentence: wrong.say(w),
    };
    Summary { w: *w, title: w.t("kit-problems-title"), faults: form.wrongs().iter().map(fault).collect() }
}
