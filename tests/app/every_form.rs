//! Every form of evidence, alike: opened on what is recorded it can be sent as it stands, a double tap makes one entry, and
//! a save over a newer one shows both and loses neither.

use fuelwright::db;
use fuelwright::model::evidence::Entry;
use scraper::{ElementRef, Html, Selector};
use uuid::Uuid;

use crate::support::{Page, TestShop};

/// What a browser would send of the form on this page, its buttons aside.
fn controls(page: &Page, action: &str) -> Vec<(String, String)> {
    let html = Html::parse_document(&page.html());
    let form = html
        .select(&Selector::parse("form[method=post]").unwrap())
        .find(|form| form.attr("action") == Some(action))
        .unwrap_or_else(|| panic!("no form sends to {action}: {}", page.text()));
    let named = Selector::parse("input[name], textarea[name], select[name]").unwrap();
    form.select(&named).filter_map(control).collect()
}

fn control(element: ElementRef<'_>) -> Option<(String, String)> {
    let name = element.attr("name")?.to_owned();
    let value = match (element.value().name(), element.attr("type").unwrap_or("text")) {
        ("textarea", _) => element.text().collect::<String>().trim_start_matches('\n').to_owned(),
        ("select", _) => {
            let all: Vec<ElementRef<'_>> = element.select(&Selector::parse("option").unwrap()).collect();
            let chosen = all.iter().find(|option| option.attr("selected").is_some()).or(all.first())?;
            chosen.attr("value").map_or_else(|| chosen.text().collect(), str::to_owned)
        }
        (_, "checkbox" | "radio") if element.attr("checked").is_none() => return None,
        (_, "file" | "submit" | "button") => return None,
        _ => element.attr("value").unwrap_or_default().to_owned(),
    };
    Some((name, value))
}

async fn history(open: &TestShop, job: fuelwright::model::ids::JobId) -> Vec<Entry> {
    let mut con = open.shop.db.read().await.unwrap();
    db::job_files::find_with_history(&mut con, open.branch, job).await.unwrap().unwrap().1
}

/// These two are no forms of this kind: parts have a list of their own, a decay test is run against a clock.
const APART: [&str; 2] = ["parts", "leak-decay"];

#[tokio::test]
async fn every_form_of_evidence_can_be_sent_again_and_loses_nothing() {
    let open = TestShop::open().await;
    let told = open.told().await;
    let vera = open.signatory().await;
    let slots: Vec<(String, String)> = history(&open, told.job)
        .await
        .iter()
        .map(|entry| (entry.body.kind().to_owned(), entry.body.subject().to_owned()))
        .filter(|(kind, _)| !APART.contains(&kind.as_str()))
        .collect();
    assert!(slots.len() >= 14, "{slots:?}");
    for (kind, subject) in slots {
        let of_slot =
            |all: &[Entry]| all.iter().filter(|one| one.body.kind() == kind && one.body.subject() == subject).count();
        let at = match subject.as_str() {
            "" => format!("/jobs/{}/{kind}", told.job),
            subject => format!("/jobs/{}/{kind}/{subject}", told.job),
        };
        let before = of_slot(&history(&open, told.job).await);
        let page = vera.get(&at).await;
        page.is(200);
        let mut fields = controls(&page, &at);
        fields.retain(|(name, _)| name != "replaces_reason");
        fields.push(("replaces_reason".into(), "read again".into()));
        let send = |fields: Vec<(String, String)>| {
            let (at, vera) = (at.clone(), &vera);
            async move {
                let fields: Vec<(&str, &str)> = fields.iter().map(|(name, value)| (&**name, &**value)).collect();
                vera.post(&at, &fields).await
            }
        };

        let first = send(fields.clone()).await;
        assert_eq!(first.status.as_u16(), 303, "{at} as it stood: {}", first.text());
        let again = send(fields.clone()).await;
        assert_eq!(again.status.as_u16(), 303, "{at} sent twice: {}", again.text());
        assert_eq!(of_slot(&history(&open, told.job).await), before + 1, "{at}: a double tap makes one entry");

        // Somebody else opened the form before that entry came.
        let mut late = fields.clone();
        late.retain(|(name, _)| name != "key");
        late.push(("key".into(), Uuid::now_v7().to_string()));
        let stale = send(late.clone()).await;
        stale.is(422).says("Vera");
        assert_eq!(of_slot(&history(&open, told.job).await), before + 1, "{at}: a stale save is not recorded");
        let shown = controls(&stale, &at);
        for (name, value) in &late {
            if !matches!(name.as_str(), "key" | "replaces_id") {
                assert!(shown.contains(&(name.clone(), value.clone())), "{at}: {name} = {value:?} is gone: {shown:?}");
            }
        }
        assert_ne!(stale.field("replaces_id"), page.field("replaces_id"), "{at}: it now corrects the newer entry");
    }
}
