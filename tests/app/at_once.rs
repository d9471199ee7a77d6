//! Many certificates at once: no number missing, none twice, the chain whole; fifty clicks make one paper; a server killed
//! between two clicks leaves nothing half issued.

use std::collections::BTreeMap;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::thread;
use std::time::Duration;

use fuelwright::backup::check::check;
use fuelwright::clock::Clock;
use fuelwright::db::{self, Database, Db};
use fuelwright::model::ids::JobId;
use fuelwright::model::paper::issued::Issued;
use fuelwright::seal::{self, Signer};
use fuelwright::shop::issue::Issuer;
use fuelwright::shop::{Refusal, Shop};
use uuid::Uuid;

use crate::issue::futures_of;
use crate::killed::{post, sign_in_as, start};
use crate::support::{Browser, PASSWORD, TestShop};
use crate::told::seen;

/// Tables that hold what a job rests on, and the rows of them that belong to it.
const TABLES: [(&str, &str); 10] = [
    ("vehicles", "true"),
    ("vehicle_plates", "true"),
    ("vehicle_people", "true"),
    ("jobs", "true"),
    ("odometer_readings", "true"),
    ("attachments", "job_id is not null"),
    ("evidence", "true"),
    ("evidence_attachments", "true"),
    ("evidence_instruments", "true"),
    ("parts", "true"),
];

/// Names of rows that get a twin: all but those of people, branch, customers and instruments.
const TWINS: [&str; 9] =
    ["id", "vehicle_id", "job_id", "evidence_id", "attachment_id", "replaces_id", "fitted_in", "removed_in", "part_id"];

/// The told job of a shop that holds no other, copied row by row: as many jobs more, each on a vehicle of its own.
async fn copy(open: &TestShop, told: JobId, copies: usize) -> Vec<JobId> {
    let mut tx = open.shop.db.write().await.unwrap();
    sqlx::raw_sql("pragma defer_foreign_keys = on").execute(&mut *tx).await.unwrap();
    for (table, rows) in TABLES {
        let columns: Vec<String> = sqlx::query_scalar::<Db, String>("select name from pragma_table_info($1)")
            .bind(table)
            .fetch_all(&mut *tx)
            .await
            .unwrap();
        let values = columns.iter().map(|column| match column.as_str() {
            // The head of an id is the time, alike in all of them; the tail tells them apart.
            one if TWINS.contains(&one) => format!("printf('%05x', n.n) || substr({one}, 6)"),
            "serial" | "plate" | "number" | "chassis_number" => {
                format!("case {column} when '' then '' else {column} || '-' || n.n end")
            }
            one => one.to_owned(),
        });
        let (names, values) = (columns.join(", "), values.collect::<Vec<_>>().join(", "));
        let statement = format!(
            "with recursive n (n) as (select 1 union all select n + 1 from n where n < {copies})
             insert into {table} ({names}) select {values} from {table}, n where {rows}"
        );
        sqlx::query::<Db>(sqlx::AssertSqlSafe(statement)).execute(&mut *tx).await.unwrap();
    }
    tx.commit().await.unwrap();
    let all: Vec<JobId> = sqlx::query_scalar::<Db, JobId>("select id from jobs order by id")
        .fetch_all(&mut *open.shop.db.read().await.unwrap())
        .await
        .unwrap();
    assert_eq!(all.len(), copies + 1);
    assert!(all.contains(&told));
    all
}

/// Numbers gapless, none twice, each paper with its file and its line in the log, the chain whole, `check` sound.
async fn assert_whole(db: &Database, open: &TestShop, wanted: Option<usize>) -> Vec<Issued> {
    let mut con = db.read().await.unwrap();
    let papers = db::papers::list_all(&mut con).await.unwrap();
    if let Some(wanted) = wanted {
        assert_eq!(papers.len(), wanted);
    }
    let mut by_number = BTreeMap::new();
    for paper in &papers {
        let running: usize = paper.number.rsplit('-').next().unwrap().parse().unwrap();
        assert!(by_number.insert(running, paper).is_none(), "{} twice", paper.number);
        let file = open.folder.path().join("papers").join(&paper.pdf_sha256[..2]).join(&paper.pdf_sha256);
        let bytes = std::fs::read(&file).unwrap_or_else(|e| panic!("{}: {}: {e}", paper.number, file.display()));
        assert_eq!(seal::sha256_hex(&bytes), paper.pdf_sha256, "{}", paper.number);
    }
    let mut previous = String::new();
    for (expected, (running, paper)) in (1..).zip(&by_number) {
        assert_eq!(expected, *running, "a gap before {}", paper.number);
        let content: serde_json::Value = serde_json::from_slice(&paper.content).unwrap();
        assert_eq!(content["previous_sha256"], previous, "{} does not follow", paper.number);
        previous = seal::sha256_hex(&paper.content);
    }
    let next = db::numbers::peek(&mut con, open.branch, "conversion").await.unwrap();
    assert_eq!(usize::try_from(next).unwrap(), papers.len() + 1, "a number without a row");
    let told: i64 = sqlx::query_scalar::<Db, i64>("select count(*) from audit where deed = 'certificate-issued'")
        .fetch_one(&mut *con)
        .await
        .unwrap();
    assert_eq!(usize::try_from(told).unwrap(), papers.len(), "lines in the log");
    for line in check(&mut con, open.folder.path(), Clock::system().now()).await.unwrap() {
        assert!(line.holds(), "{}: {:?}", line.what, line.wrong);
    }
    papers
}

/// A second process on the same store: its own connections and its own turn.
async fn second_process(open: &TestShop) -> Shop {
    let db = Database::open(&open.folder.path().join("fuelwright.db")).await.unwrap();
    let issuer = Issuer::new(Signer::from_random(&[7; 32]), Some("https://shop.example".to_owned()), false);
    Shop { db, issuer, ..open.shop.clone() }
}

#[tokio::test(flavor = "multi_thread", worker_threads = 4)]
async fn sixty_four_certificates_at_once_from_two_processes_leave_no_gap_and_no_double() {
    let open = TestShop::open().await;
    let told = open.told().await;
    let jobs = copy(&open, told.job, 63).await;
    let vera = open.actor(open.vera).await;
    let shops = [open.shop.clone(), second_process(&open).await];
    let issues: Vec<_> = jobs
        .iter()
        .enumerate()
        .map(|(n, job)| {
            let (shop, vera, job) = (shops[n % 2].clone(), vera.clone(), *job);
            tokio::spawn(async move {
                // Whoever lost twenty times against the other process is told to try again.
                for _ in 0..20 {
                    match shop.issue_certificate(&vera, Some(Uuid::now_v7()), job, seen()).await {
                        Err(Refusal::Stale) => {}
                        outcome => return outcome,
                    }
                }
                Err(Refusal::Stale)
            })
        })
        .collect();
    for issue in issues {
        issue.await.unwrap().unwrap();
    }
    let papers = assert_whole(&open.shop.db, &open, Some(64)).await;
    assert_eq!(papers.iter().map(|paper| paper.job_id).collect::<std::collections::BTreeSet<_>>().len(), 64);
    assert_eq!(papers.iter().map(|paper| &paper.code).collect::<std::collections::BTreeSet<_>>().len(), 64);
}

#[tokio::test]
async fn a_clock_that_was_set_back_does_not_break_the_chain() {
    let open = TestShop::open().await;
    let told = open.told().await;
    let jobs = copy(&open, told.job, 3).await;
    let vera = open.actor(open.vera).await;
    for job in &jobs {
        open.shop.issue_certificate(&vera, None, *job, seen()).await.unwrap();
        // A second each way is what a clock does that is set by the network.
        open.clock.advance(time::Duration::seconds(-1));
    }
    assert_whole(&open.shop.db, &open, Some(jobs.len())).await;
}

#[tokio::test]
async fn fifty_clicks_on_one_job_give_one_certificate() {
    let open = TestShop::open().await;
    let told = open.told().await;
    let path = format!("/jobs/{}/papers", told.job);
    let browsers: Vec<Browser> = {
        let mut all = Vec::new();
        for _ in 0..5 {
            all.push(open.signatory().await);
        }
        all
    };
    let same = Uuid::now_v7().to_string();
    let keys: Vec<String> =
        (0..50).map(|n| if n % 2 == 0 { same.clone() } else { Uuid::now_v7().to_string() }).collect();
    let forms: Vec<_> = keys
        .iter()
        .map(|key| {
            let mut form = vec![("password", PASSWORD), ("key", key.as_str())];
            form.extend(["odometer", "vin-plate", "container-plate"].map(|slot| ("photos_seen", slot)));
            form
        })
        .collect();
    let clicks = forms.iter().enumerate().map(|(n, form)| browsers[n % 5].post(&path, form));
    let answers = futures_of(clicks).await;
    let mut led_to: Vec<&str> = Vec::new();
    for answer in &answers {
        match answer.status.as_u16() {
            303 => led_to.push(answer.headers["location"].to_str().unwrap()),
            // More secrets at once than there are places to prove them: told to try again, which is no paper either.
            429 => {}
            _ => drop(answer.is(422).says("certificate")),
        }
    }
    assert!(!led_to.is_empty());
    assert!(led_to.iter().all(|to| *to == led_to[0]), "one paper for all: {led_to:?}");
    assert_whole(&open.shop.db, &open, Some(1)).await;
}

/// What must not run out while the server's own clock, which is not the test's, says a later day.
async fn never_runs_out(open: &TestShop) {
    let mut tx = open.shop.db.write().await.unwrap();
    for statement in [
        "update signatory_grants set expires_on = '2999-12-31'",
        "update branches set licence_expires_on = '2999-12-31'",
    ] {
        sqlx::query::<Db>(statement).execute(&mut *tx).await.unwrap();
    }
    tx.commit().await.unwrap();
}

/// Clicks through the jobs, from a place of its own, until the server is gone.
fn click_until_killed(port: u16, session: &str, jobs: &[JobId], from: usize, issued: &AtomicUsize) {
    for n in 0..jobs.len() {
        let job = jobs[(from + n) % jobs.len()];
        match issue(port, session, job) {
            Some(303) => drop(issued.fetch_add(1, Ordering::Relaxed)),
            Some(422 | 409) => {}
            Some(status) => panic!("{job}: {status}"),
            None => return,
        }
    }
}

fn issue(port: u16, session: &str, job: JobId) -> Option<u16> {
    let seen = ["odometer", "vin-plate", "container-plate"].map(|slot| ("photos_seen", slot));
    let form = [&[("password", PASSWORD)], &seen[..]].concat();
    post(port, session, &format!("/jobs/{job}/papers"), Uuid::now_v7(), &form)
}

/// `KILL_ROUNDS` says how often; six unless told otherwise.
#[tokio::test(flavor = "multi_thread")]
async fn a_kill_leaves_no_certificate_half_issued() {
    let rounds: usize = std::env::var("KILL_ROUNDS").ok().and_then(|rounds| rounds.parse().ok()).unwrap_or(6);
    let open = TestShop::open().await;
    let told = open.told().await;
    never_runs_out(&open).await;
    let jobs = copy(&open, told.job, (4 * rounds).max(12)).await;
    open.shop.db.close().await;
    let file = open.folder.path().join("fuelwright.db");
    let (answered, mut kept, mut cut) = (AtomicUsize::new(0), 0, 0);
    for _ in 0..rounds {
        let session = sign_in_as(&open, "vera").await;
        let (mut child, port) = start(&open);
        thread::scope(|scope| {
            // Two begin at the same job, so that there is something to quarrel about.
            for from in [kept, kept, kept + 2] {
                let (session, jobs, answered) = (&session, &jobs, &answered);
                scope.spawn(move || click_until_killed(port, session, jobs, from, answered));
            }
            thread::sleep(Duration::from_millis(rand::random_range(200..2_500)));
            child.kill().unwrap();
            child.wait().unwrap();
        });
        let db = Database::open(&file).await.unwrap();
        let papers = assert_whole(&db, &open, None).await;
        assert!(papers.len() >= answered.load(Ordering::Relaxed), "an answered certificate was lost");
        cut += usize::from(papers.len() > kept);
        kept = papers.len();
        db.close().await;
    }
    assert!(cut > 0, "no certificate was issued before any kill, so nothing was tried");
    let session = sign_in_as(&open, "vera").await;
    let (mut child, port) = start(&open);
    for job in jobs.iter().take(kept + 3) {
        assert!(matches!(issue(port, &session, *job), Some(303 | 422)), "{job}");
    }
    child.kill().unwrap();
    child.wait().unwrap();
    let db = Database::open(&file).await.unwrap();
    let papers = assert_whole(&db, &open, None).await;
    let with: std::collections::BTreeSet<_> = papers.iter().map(|paper| paper.job_id).collect();
    assert_eq!(with.len(), papers.len(), "a job with two certificates");
    println!(
        "{rounds} kills, {} certificates, {} answered before a kill",
        papers.len(),
        answered.load(Ordering::Relaxed)
    );
}
