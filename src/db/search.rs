//! Finding by what people remember: names without their accents, plates and numbers without their blanks.
//!
//! `customers.search` and `vehicles.search` hold folded text, made here and nowhere else, because the two engines fold
//! differently. The one box asks all kinds of things at once; a list asks one kind.

use time::OffsetDateTime;
use unicode_normalization::UnicodeNormalization;
use unicode_normalization::char::is_combining_mark;

use super::{Con, Db, Result};
use crate::model::ids::{BranchId, JobId, PaperId, VehicleId};

/// How many of a kind the one box shows.
const MOST: i64 = 20;
/// Words of a query that count; the fifth would not make it narrower.
const WORDS: usize = 4;

/// Small letters without accents, runs of blanks as one: "Łukasz  Ångström" and "lukasz angstrom" are the same.
///
/// Letters that no decomposition takes apart are spelled as people do without them (common practice).
pub fn fold(text: &str) -> String {
    let mut folded = String::with_capacity(text.len());
    for c in text.nfkd().filter(|c| !is_combining_mark(*c)).flat_map(char::to_lowercase) {
        match c {
            'ł' => folded.push('l'),
            'ı' => folded.push('i'),
            'đ' | 'ð' => folded.push('d'),
            'ø' => folded.push('o'),
            'ħ' => folded.push('h'),
            'ŧ' => folded.push('t'),
            'ŋ' => folded.push('n'),
            'ĸ' => folded.push('k'),
            'ß' => folded.push_str("ss"),
            'æ' => folded.push_str("ae"),
            'œ' => folded.push_str("oe"),
            'þ' => folded.push_str("th"),
            // Lower case of İ brings a dot of its own.
            c if is_combining_mark(c) => {}
            c if c.is_whitespace() => {
                if !folded.ends_with(' ') {
                    folded.push(' ');
                }
            }
            c => folded.push(c),
        }
    }
    folded.trim().to_owned()
}

/// Folded, and nothing but letters and digits: plates, VINs, phones, serials, whatever they were grouped with.
pub fn squeeze(text: &str) -> String {
    fold(text).chars().filter(|c| c.is_alphanumeric()).collect()
}

/// Folded parts as a `search` column keeps them: lines, so that a word never matches across two fields.
pub(super) fn column(words: &[&str], codes: &[&str]) -> String {
    let words = words.iter().map(|text| fold(text));
    let codes = codes.iter().map(|text| squeeze(text));
    let parts: Vec<String> = words.chain(codes).filter(|part| !part.is_empty()).collect();
    parts.join("\n")
}

/// What is looked for, ready for `like … escape '\'`.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Wanted {
    words: [String; WORDS],
    /// The whole query as a code.
    whole: String,
}

impl Wanted {
    /// Reads a query; an empty one finds everything.
    pub fn new(query: &str) -> Self {
        let folded = fold(query);
        let mut words = folded.split(' ').map(like);
        let words = std::array::from_fn(|_| words.next().unwrap_or_else(|| "%".into()));
        Self { words, whole: like(&squeeze(query)) }
    }

    /// The pattern of a word; `%` where the query has fewer.
    pub fn word(&self, at: usize) -> &str {
        self.words.get(at).map_or("%", String::as_str)
    }

    /// The pattern of the whole query without blanks and signs.
    pub fn whole(&self) -> &str {
        &self.whole
    }
}

/// A pattern that finds `text` anywhere; its own `%` and `_` stand for themselves.
fn like(text: &str) -> String {
    let mut pattern = String::from("%");
    for c in text.chars() {
        if matches!(c, '%' | '_' | '\\') {
            pattern.push('\\');
        }
        pattern.push(c);
    }
    pattern.push('%');
    pattern
}

/// A job that the one box found.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct FoundJob {
    pub id: JobId,
    pub number: String,
    pub plate: String,
    pub make: String,
    pub model: String,
}

/// A part that the one box found by its serial or batch.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct FoundPart {
    pub vehicle_id: VehicleId,
    pub fitted_in: JobId,
    pub serial: String,
    pub category: String,
    pub maker: String,
    pub type_name: String,
    pub plate: String,
    pub is_fitted: bool,
}

/// A paper that the one box found by its number or its code.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct FoundPaper {
    pub id: PaperId,
    pub number: String,
    pub kind: String,
    pub code: String,
    pub plate: String,
}

/// Jobs whose number holds the text, the newest first.
pub async fn jobs(con: &mut Con, branch: BranchId, query: &str) -> Result<Vec<FoundJob>> {
    Ok(sqlx::query_as::<Db, FoundJob>(
        "select jobs.id, jobs.number, vehicles.plate, vehicles.make, vehicles.model
         from jobs
         join vehicles on vehicles.id = jobs.vehicle_id
         where jobs.branch_id = $1
           and jobs.number like $2 escape '\\'
         order by jobs.opened_at desc, jobs.id
         limit $3",
    )
    .bind(branch)
    .bind(like(query.trim()))
    .bind(MOST)
    .fetch_all(con)
    .await?)
}

/// Parts whose serial or batch is the text, blanks and case aside; those still fitted first.
pub async fn parts(con: &mut Con, branch: BranchId, query: &str) -> Result<Vec<FoundPart>> {
    Ok(sqlx::query_as::<Db, FoundPart>(
        "select parts.vehicle_id, parts.fitted_in, parts.serial, parts.category, parts.maker, parts.type_name,
             vehicles.plate, parts.removed_on is null as is_fitted
         from parts
         join vehicles on vehicles.id = parts.vehicle_id
         where parts.branch_id = $1
           and (lower(replace(replace(parts.serial, ' ', ''), '-', '')) = $2
             or lower(replace(replace(parts.batch, ' ', ''), '-', '')) = $2)
         order by parts.removed_on is not null, parts.fitted_on desc, parts.id
         limit $3",
    )
    .bind(branch)
    .bind(squeeze(query))
    .bind(MOST)
    .fetch_all(con)
    .await?)
}

/// Papers whose number holds the text, or whose code it is; the newest first.
pub async fn papers(con: &mut Con, branch: BranchId, query: &str) -> Result<Vec<FoundPaper>> {
    Ok(sqlx::query_as::<Db, FoundPaper>(
        "select papers.id, papers.number, papers.kind, papers.code, vehicles.plate
         from papers
         join vehicles on vehicles.id = papers.vehicle_id
         where papers.branch_id = $1
           and (papers.number like $2 escape '\\' or upper(replace(papers.code, '-', '')) = $3)
         order by papers.issued_at desc, papers.id
         limit $4",
    )
    .bind(branch)
    .bind(like(&query.trim().to_uppercase()))
    .bind(squeeze(query).to_uppercase())
    .bind(MOST)
    .fetch_all(con)
    .await?)
}

/// A paper as a vehicle's life line shows it.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct PaperOfVehicle {
    pub id: PaperId,
    pub number: String,
    pub kind: String,
    pub issued_at: OffsetDateTime,
}

/// Every paper issued for a vehicle, in order.
pub async fn papers_of_vehicle(con: &mut Con, branch: BranchId, vehicle: VehicleId) -> Result<Vec<PaperOfVehicle>> {
    Ok(sqlx::query_as::<Db, PaperOfVehicle>(
        "select id, number, kind, issued_at
         from papers
         where vehicle_id = $1
           and branch_id = $2
         order by issued_at, id",
    )
    .bind(vehicle)
    .bind(branch)
    .fetch_all(con)
    .await?)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_fold_as_people_spell_them_without_their_keyboard() {
        for (typed, folded) in [
            ("Łukasz  Ångström", "lukasz angstrom"),
            ("Işıl ÇELİK", "isil celik"),
            ("Đorđe Søren", "dorde soren"),
            ("Straße", "strasse"),
            ("STRASSE", "strasse"),
            ("Zoë\tĲsbrand", "zoe ijsbrand"),
            ("Þóra Æsir", "thora aesir"),
            ("Анна Ковалёва", "анна ковалева"),
            ("ﬁne １２", "fine 12"),
        ] {
            assert_eq!(fold(typed), folded, "{typed}");
        }
    }

    #[test]
    fn plates_and_phones_are_the_same_however_they_are_grouped() {
        assert_eq!(squeeze("NM 47-KTR"), "nm47ktr");
        assert_eq!(squeeze("+44 (1632) 960 100"), "441632960100");
    }

    #[test]
    fn signs_of_the_pattern_stand_for_themselves() {
        assert_eq!(like("50%_\\"), "%50\\%\\_\\\\%");
        assert_eq!(Wanted::new("ana").word(1), "%");
    }
}
