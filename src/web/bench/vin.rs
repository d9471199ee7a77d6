//! A vehicle identification number: structure, check digit, region, a hint at the model year.

use super::answered::Answered;
use super::sum::BenchSum;
use crate::calc::vin::{BASIS, Checked, Malformed, Region, check};
use crate::web::form::Form;
use crate::web::job::origins;
use crate::web::kit::{self, Group, Mark, Tone, Verdict};
use crate::words::Words;

/// `/bench/vin`.
#[derive(Debug)]
pub struct VinSum;

fn region(w: &Words, region: Region) -> String {
    w.t(match region {
        Region::Africa => "vin-region-africa",
        Region::Asia => "vin-region-asia",
        Region::Europe => "vin-region-europe",
        Region::NorthAmerica => "vin-region-north-america",
        Region::Oceania => "vin-region-oceania",
        Region::SouthAmerica => "vin-region-south-america",
        Region::Unknown => "vin-region-unknown",
    })
}

fn verdict(w: &Words, found: &Checked) -> Verdict {
    if let Some(why) = found.malformed {
        let sentence = match why {
            Malformed::Length => {
                let got = w.number(found.vin.chars().count() as f64, 0);
                w.tv("says-vin-length", &[("got", got.into())])
            }
            Malformed::Alphabet => w.t("says-vin-alphabet"),
            Malformed::LastFour => w.t("says-vin-last-four"),
        };
        let title = w.t("says-vin-malformed");
        return Verdict { tone: Tone::Stop, mark: Mark::Stops, title, sentences: vec![sentence] };
    }
    if found.check_digit_ok {
        let sentences = vec![w.t("says-vin-fits-more")];
        return Verdict { tone: Tone::Met, mark: Mark::Met, title: w.t("says-vin-fits"), sentences };
    }
    let got = found.vin.chars().nth(8).unwrap_or('–').to_string();
    let wanted = found.check_digit_expected.unwrap_or('–').to_string();
    let key = if found.check_digit_compulsory { "vehicles-vin-warning-law" } else { "vehicles-vin-warning-more" };
    let (tone, mark) =
        if found.check_digit_compulsory { (Tone::Stop, Mark::Stops) } else { (Tone::Copper, Mark::Undecided) };
    let sentences = vec![w.tv(key, &[("got", got.into()), ("wanted", wanted.into())])];
    Verdict { tone, mark, title: w.t("vehicles-vin-warning"), sentences }
}

impl BenchSum for VinSum {
    const KEY: &'static str = "vin";
    const SCOPE: &'static str = "bench-vin";
    // The number that encyclopaedias work the check digit out for (49 CFR 565.15): X.
    const EXAMPLE: &'static [(&'static str, &'static str)] = &[("vin", "1M8GDM9AXKP042788")];
    type Asked = Checked;

    fn openings() -> Vec<origins::Default> {
        Vec::new()
    }

    fn groups(w: &Words, form: &Form) -> Vec<Group> {
        vec![Group::new(w.t("bench-vin-group"), vec![kit::code(form, w, "vin").wide()])]
    }

    fn read(_: &Words, form: &mut Form) -> Option<Checked> {
        Some(check(&form.text("vin", 60)?))
    }

    fn answer(w: &Words, _: &mut Form, found: &Checked) -> Option<Answered> {
        let mut answer = Answered::new(w).verdict(verdict(w, found)).main("says-vin-kept", found.vin.clone());
        if found.well_formed {
            answer = answer.main("says-vin-region", region(w, found.region));
            let yes = |is: bool| Some(w.t(if is { "kit-yes" } else { "kit-no" }));
            answer = answer.results(vec![
                ("says-vin-digit", found.check_digit_expected.map(String::from)),
                ("says-vin-compulsory", yes(found.check_digit_compulsory)),
                ("says-vin-small", yes(found.small_maker)),
                ("says-vin-year", found.model_year.map(|year| year.to_string())),
            ]);
        }
        Some(answer.note(w.t("says-vin-note")).basis(&BASIS))
    }
}
