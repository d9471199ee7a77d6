//! The language in which a job's certificate is made, and the keeper's own beside it.

use super::JobPage;
use crate::shop::issue::{keeper_language, official_language};
use crate::web::app::App;
use crate::web::language::own_name;
use crate::web::office::languages::is_reviewed;
use crate::web::routes::MANAGER;
use crate::web::{Error, path};
use crate::words::Language;

/// What a signatory is told of the language before signing.
#[derive(Debug)]
pub struct PaperLanguage {
    /// In which language it is made, where that is another than the screen's.
    pub said: Option<String>,
    /// Nobody of the trade has read a translation that the paper would be printed in.
    pub unread: Option<String>,
    /// The page where a manager notes who has read it.
    pub to_note: Option<&'static str>,
    /// The offer to print the keeper's language beside it.
    pub beside: Option<String>,
}

impl PaperLanguage {
    /// Reads what has been reviewed.
    pub async fn of(app: &App, job: &JobPage) -> Result<Self, Error> {
        let (w, branch) = (job.w(), &job.who.branch);
        let (official, keeper) = languages(job);
        let keeper = Some(keeper).filter(|one| *one != official);
        let mut con = app.read().await?;
        let mut unread = Vec::new();
        for language in [Some(official), keeper].into_iter().flatten().filter(|one| *one != Language::default()) {
            if !is_reviewed(&mut con, branch.id, language).await? {
                unread.push(own_name(language));
            }
        }
        let said = |key: &str, name: String| w.tv(key, &[("language", name.into())]);
        Ok(Self {
            said: (official != w.language()).then(|| said("signing-language", own_name(official))),
            unread: (!unread.is_empty()).then(|| said("signing-language-unread", unread.join(", "))),
            to_note: MANAGER.lets(&job.who.actor).then_some(path::LANGUAGES),
            beside: keeper.map(|one| said("signing-beside", own_name(one))),
        })
    }
}

/// The language of the rules, and the keeper's.
pub(super) fn languages(job: &JobPage) -> (Language, Language) {
    (official_language(&job.book, &job.who.branch), keeper_language(&job.file, &job.who.branch))
}
