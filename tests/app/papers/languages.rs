//! What a customer is handed, in each language: the owner's sheet and a letter as poppler reads them.

use fuelwright::model::branch::PaperSize::{A4, Letter};
use fuelwright::model::paper::GasFuel;
use fuelwright::model::paper::letter::LetterContent;
use fuelwright::model::paper::owner_sheet::OwnerSheetContent;
use fuelwright::papers::owner_sheet::owner_sheet;
use fuelwright::papers::post::letter;
use fuelwright::words::{Language, Words};

use super::full::{self, Much};
use super::others;
use super::reading::Paper;

/// What stands on the owner's sheet: title for LPG; the day it was handed over, with its sentence; the date of the next
/// test; the line on heavy gas; page of pages. Dates are those of CLDR (`yMMMMd`), from memory.
const SHEETS: [(Language, [&str; 5]); 8] = [
    (
        Language::English,
        [
            "Your vehicle runs on LPG",
            "handed over 25 November 2026",
            "31 March 2036",
            "LPG is heavier than air",
            "Page 1 of 1",
        ],
    ),
    (
        Language::German,
        [
            "Ihr Fahrzeug fährt mit Flüssiggas (LPG)",
            "übergeben am 25. November 2026",
            "31. März 2036",
            "Flüssiggas ist schwerer als Luft",
            "Seite 1 von 1",
        ],
    ),
    (
        Language::Polish,
        [
            "Państwa pojazd jeździ na LPG",
            "wydany 25 listopada 2026",
            "31 marca 2036",
            "LPG jest cięższy od powietrza",
            "Strona 1 z 1",
        ],
    ),
    (
        Language::Italian,
        [
            "Il Suo veicolo va a GPL",
            "consegnato il 25 novembre 2026",
            "31 marzo 2036",
            "il GPL è più pesante dell’aria",
            "Pagina 1 di 1",
        ],
    ),
    (
        Language::Spanish,
        [
            "Su vehículo funciona con GLP",
            "entregado el 25 de noviembre de 2026",
            "31 de marzo de 2036",
            "el GLP pesa más que el aire",
            "Página 1 de 1",
        ],
    ),
    (
        Language::Turkish,
        ["Aracınız LPG ile çalışıyor", "teslim 25 Kasım 2026", "31 Mart 2036", "LPG havadan ağırdır", "Sayfa 1 / 1"],
    ),
    (
        Language::French,
        [
            "Votre véhicule roule au GPL",
            "remis le 25 novembre 2026",
            "31 mars 2036",
            "le GPL est plus lourd que l’air",
            "Page 1 sur 1",
        ],
    ),
    (
        Language::Dutch,
        [
            "Uw voertuig rijdt op LPG",
            "overgedragen op 25 november 2026",
            "31 maart 2036",
            "LPG is zwaarder dan lucht",
            "Pagina 1 van 1",
        ],
    ),
];

pub fn sheet(fuel: GasFuel, w: &Words) -> OwnerSheetContent {
    let content = others::owner_sheet(fuel);
    let duties = ["duty-kind-first-check", "duty-kind-pressure-test"];
    let duties = content.duties.iter().zip(duties).map(|(duty, key)| {
        let mut duty = duty.clone();
        duty.what = w.t(key);
        duty.due_at_km = Some(129_930);
        duty
    });
    OwnerSheetContent {
        emergency_number: w.t("issue-emergency-number"),
        duties: duties.collect(),
        further_cautions: Vec::new(),
        language: w.tag().into(),
        is_demonstration: false,
        ..content
    }
}

#[test]
fn the_owner_s_sheet_speaks_each_language_on_one_page() {
    assert_eq!(SHEETS.map(|(language, _)| language), Language::PAPERS);
    for (language, expected) in SHEETS {
        let w = Words::new(language);
        for (size, format) in [(A4, "a4"), (Letter, "letter")] {
            for fuel in [GasFuel::Lpg, GasFuel::Cng] {
                let pdf = owner_sheet(&sheet(fuel, &w), &w, size).unwrap();
                let paper = Paper::new(&format!("owner-{}-{}-{format}", w.tag(), fuel.as_str()), &pdf);
                assert_eq!(paper.page_count(), 1, "{language:?} {fuel:?} {format}");
                paper.stays_inside_its_margins();
                paper.does_not_print_over_itself();
                if fuel == GasFuel::Lpg {
                    for text in expected {
                        paper.says(text);
                    }
                    paper.says("129 930 km");
                }
                for (_, texts) in SHEETS.iter().filter(|(other, _)| *other != language) {
                    paper.does_not_say(texts[3]);
                }
            }
        }
    }
}

#[test]
fn a_letter_speaks_each_language() {
    for language in Language::PAPERS {
        let w = Words::new(language);
        let values = [
            ("plate", "NM 47 KTR".into()),
            ("vehicle", "Corvane Pilot 1.6".into()),
            ("number", "C-2026-0093".into()),
            ("found", "G-2".into()),
            ("reason", "W-31".into()),
            ("at", w.date_time(time::macros::datetime!(2026-11-25 09:30 UTC)).into()),
        ];
        let parts = [w.tv("letter-re-test-text", &values), w.t("letter-without-consent")];
        let answers = ["letter-answer-come", "letter-answer-elsewhere", "letter-answer-sold", "letter-answer-no-more"];
        let content = LetterContent {
            subject: w.tv("letter-re-test", &values),
            paragraphs: parts.iter().flat_map(|part| part.split("\n\n")).map(str::to_owned).collect(),
            answers: answers.map(|key| w.t(key)).to_vec(),
            language: w.tag().into(),
            is_demonstration: false,
            ..full::letter(Much::Usual)
        };
        let paper = Paper::new(&format!("letter-{}", w.tag()), &letter(&content, &w, A4).unwrap());
        assert_eq!(paper.page_count(), 1, "{language:?}");
        paper.stays_inside_its_margins();
        paper.does_not_print_over_itself();
        for text in content.paragraphs.iter().chain(&content.answers).chain([&content.subject]) {
            paper.says(text);
        }
        paper.says(&w.date(content.day));
        paper.says(&w.t("letter-sign"));
    }
}
