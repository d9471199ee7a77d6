//! Vessels side by side: containers or cylinders as typed, up to three, of which one is taken.

use super::reckoning::Number;
use super::record::Group;
use super::sum;
use crate::calc::Error as SumError;
use crate::web::form::{Form, Row, Wrong};
use crate::web::kit::{self, Field};
use crate::words::Words;

/// Vessels compared at once.
const MOST: usize = 3;

/// What a sheet calls its vessels, and what each is made of.
#[derive(Debug)]
pub struct Vessels {
    /// The form's own scope of labels.
    pub scope: &'static str,
    /// Where a proof's link lands.
    pub id: &'static str,
    /// Words above the vessels.
    pub legend: &'static str,
    /// Words of the choice between them, `{choice}-1`.
    pub choice: &'static str,
    /// Words when one is taken that is not there.
    pub no_such: &'static str,
    /// Volume; the first column after the name.
    pub volume: Number,
    /// Empty mass.
    pub mass: Number,
}

/// One vessel as typed.
#[derive(Debug)]
pub struct Vessel {
    row: Row,
    /// In the shop's words; empty for none.
    pub name: String,
    /// Litres.
    pub volume_l: f64,
    /// Empty, kg.
    pub mass_kg: Option<f64>,
}

impl Vessels {
    /// Names of every field whose text is kept.
    pub fn names(&self) -> impl Iterator<Item = String> + '_ {
        let of_one = [self.volume.name, self.mass.name, "name"];
        (0..MOST).flat_map(move |at| of_one.map(|name| format!("sets[{at}][{name}]"))).chain(["taken".to_owned()])
    }

    /// Names and symbols of the numbers of one vessel, for the table of inputs.
    pub fn inputs_of(&self, at: usize) -> Vec<(String, &'static str)> {
        [self.volume, self.mass].map(|number| (format!("sets[{at}][{}]", number.name), number.symbol())).into()
    }

    /// Vessels as typed. What a later one leaves out is as in the first.
    pub fn read(&self, form: &mut Form) -> Vec<Vessel> {
        let mut vessels = Vec::new();
        for line in form.compared("sets", MOST) {
            let (volume_name, mass_name) = (line.name(form, self.volume.name), line.name(form, self.mass.name));
            let row = line.row;
            let volume = self.volume.read_at(form, &volume_name);
            let mass_kg = self.mass.read_at(form, &mass_name);
            let name = form.opt_text(&row.name("name"), 60).unwrap_or_default();
            vessels.extend(volume.map(|volume_l| Vessel { row, name, volume_l, mass_kg }));
        }
        vessels
    }

    /// Which of them is taken.
    pub fn taken(&self, form: &mut Form, vessels: &[Vessel]) -> Option<usize> {
        let taken = form.integer("taken", 1..=3).and_then(|n| usize::try_from(n - 1).ok());
        if taken.is_some_and(|taken| taken >= vessels.len()) && form.sound().is_some() {
            form.fail("taken", Wrong::Rule(self.no_such, Vec::new()));
        }
        taken
    }

    /// The fields: a line a vessel, and which is taken.
    pub fn groups(&self, w: &Words, form: &Form) -> [Group; 2] {
        let rows = form.rows_shown("sets", MOST, 0);
        let rows = rows.iter().take(MOST).map(|row| {
            let field = |field: Field| field.counted_in("").hinted("");
            vec![
                field(kit::text(form, w, row.name("name"))),
                field(kit::number(form, w, row.name(self.volume.name))),
                field(kit::number(form, w, row.name(self.mass.name))),
            ]
        });
        let columns = ["name", self.volume.name, self.mass.name];
        let columns = columns.map(|name| w.head(format!("{}-column-{name}", self.scope))).into();
        let taken = kit::pick(form, w, "taken", &kit::choices(w, self.choice, ["1", "2", "3"]));
        [
            Group::table(self.id, w.t(self.legend), columns, rows.collect()).noted(w.t("sizing-note-containers")),
            Group::new("", vec![taken]),
        ]
    }

    /// What a sum answers for each of the vessels; a refusal is noted beside the field of its own line, or where `field_of`
    /// says.
    pub fn answers<S, A>(
        &self,
        w: &Words,
        form: &mut Form,
        sets: &[(Vessel, S)],
        sum_of: impl Fn(&S) -> Result<A, SumError>,
        field_of: impl Fn(&str) -> String,
    ) -> Vec<A> {
        let mut answers = Vec::new();
        for (vessel, set) in sets {
            let is_own = |quantity: &str| quantity == self.volume.name || quantity == self.mass.name;
            let in_form =
                |quantity: &str| if is_own(quantity) { vessel.row.name(quantity) } else { field_of(quantity) };
            match sum_of(set) {
                Ok(answer) => answers.push(answer),
                Err(error) => sum::refuse(w, form, &error, "temperature_c", in_form),
            }
        }
        answers
    }
}
