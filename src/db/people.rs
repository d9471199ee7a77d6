//! People, what they may do in which branch, and the hashes by which they are known again.

use time::OffsetDateTime;

use super::{Con, Db, Result, exactly_one};
use crate::model::ids::{BranchId, PersonId};
use crate::model::person::{Actor, Person, Role, SignatoryGrant};

/// What a sign-in is compared with.
#[derive(Debug, Clone, sqlx::FromRow)]
pub struct Secrets {
    pub id: PersonId,
    /// Empty until the person chose one.
    pub password_phc: Option<String>,
    pub pin_phc: Option<String>,
}

/// The person with this id.
pub async fn find(con: &mut Con, id: PersonId) -> Result<Option<Person>> {
    Ok(sqlx::query_as::<Db, Person>(
        "select id, name, initials, sign_in_name, mail, language, sees_contacts, ended_on, version
         from people
         where id = $1",
    )
    .bind(id)
    .fetch_optional(con)
    .await?)
}

/// Everybody who has, or had, a role in the branch, by name.
pub async fn list(con: &mut Con, branch: BranchId) -> Result<Vec<Person>> {
    Ok(sqlx::query_as::<Db, Person>(
        "select id, name, initials, sign_in_name, mail, language, sees_contacts, ended_on, version
         from people
         where exists (select 1 from person_roles where person_id = people.id and branch_id = $1)
         order by name, id",
    )
    .bind(branch)
    .fetch_all(con)
    .await?)
}

/// Who may come in with a PIN on a tablet of the branch, by name.
pub async fn with_pin(con: &mut Con, branch: BranchId) -> Result<Vec<(PersonId, String)>> {
    Ok(sqlx::query_as::<Db, (PersonId, String)>(
        "select id, name
         from people
         where pin_phc is not null
           and exists (
             select 1 from person_roles where person_id = people.id and branch_id = $1 and ended_at is null)
         order by name, id",
    )
    .bind(branch)
    .fetch_all(con)
    .await?)
}

/// How many people there are in the whole shop; none means that it was never set up.
pub async fn count(con: &mut Con) -> Result<i64> {
    Ok(sqlx::query_scalar("select count(*) from people").fetch_one(con).await?)
}

/// Adds a person, still without password.
pub async fn insert(con: &mut Con, person: &Person) -> Result<()> {
    sqlx::query(
        "insert into people (id, name, initials, sign_in_name, mail, language, sees_contacts, ended_on)
         values ($1, $2, $3, $4, $5, $6, $7, $8)",
    )
    .bind(person.id)
    .bind(&person.name)
    .bind(&person.initials)
    .bind(&person.sign_in_name)
    .bind(&person.mail)
    .bind(&person.language)
    .bind(person.sees_contacts)
    .bind(person.ended_on)
    .execute(con)
    .await?;
    Ok(())
}

/// Saves a person over the version it was read at.
pub async fn save(con: &mut Con, person: &Person) -> Result<()> {
    let done = sqlx::query(
        "update people
         set name = $3, initials = $4, sign_in_name = $5, mail = $6, language = $7, sees_contacts = $8,
             ended_on = $9, version = version + 1
         where id = $1
           and version = $2",
    )
    .bind(person.id)
    .bind(person.version)
    .bind(&person.name)
    .bind(&person.initials)
    .bind(&person.sign_in_name)
    .bind(&person.mail)
    .bind(&person.language)
    .bind(person.sees_contacts)
    .bind(person.ended_on)
    .execute(con)
    .await?;
    exactly_one(&done)
}

/// The hashes of whoever signs in under this name.
pub async fn secrets_of(con: &mut Con, sign_in_name: &str) -> Result<Option<Secrets>> {
    Ok(sqlx::query_as::<Db, Secrets>("select id, password_phc, pin_phc from people where sign_in_name = $1")
        .bind(sign_in_name)
        .fetch_optional(con)
        .await?)
}

/// The hashes of this person.
pub async fn secrets(con: &mut Con, id: PersonId) -> Result<Option<Secrets>> {
    Ok(sqlx::query_as::<Db, Secrets>("select id, password_phc, pin_phc from people where id = $1")
        .bind(id)
        .fetch_optional(con)
        .await?)
}

/// Keeps a password's hash.
pub async fn save_password(con: &mut Con, id: PersonId, phc: &str) -> Result<()> {
    exactly_one(
        &sqlx::query("update people set password_phc = $2 where id = $1").bind(id).bind(phc).execute(con).await?,
    )
}

/// Keeps a PIN's hash.
pub async fn save_pin(con: &mut Con, id: PersonId, phc: &str) -> Result<()> {
    exactly_one(&sqlx::query("update people set pin_phc = $2 where id = $1").bind(id).bind(phc).execute(con).await?)
}

/// What a person is in a branch today.
pub async fn roles(con: &mut Con, person: PersonId, branch: BranchId) -> Result<Vec<Role>> {
    Ok(sqlx::query_scalar(
        "select role from person_roles where person_id = $1 and branch_id = $2 and ended_at is null order by role",
    )
    .bind(person)
    .bind(branch)
    .fetch_all(con)
    .await?)
}

/// The branches in which a person has a role today, by name.
pub async fn branches(con: &mut Con, person: PersonId) -> Result<Vec<BranchId>> {
    Ok(sqlx::query_scalar(
        "select id
         from branches
         where exists (
             select 1 from person_roles where person_id = $1 and branch_id = branches.id and ended_at is null)
         order by name, id",
    )
    .bind(person)
    .fetch_all(con)
    .await?)
}

/// Gives a role.
pub async fn insert_role(
    con: &mut Con,
    person: PersonId,
    branch: BranchId,
    role: Role,
    at: OffsetDateTime,
) -> Result<()> {
    sqlx::query("insert into person_roles (person_id, branch_id, role, began_at) values ($1, $2, $3, $4)")
        .bind(person)
        .bind(branch)
        .bind(role)
        .bind(at)
        .execute(con)
        .await?;
    Ok(())
}

/// Ends a role.
pub async fn end_role(con: &mut Con, person: PersonId, branch: BranchId, role: Role, at: OffsetDateTime) -> Result<()> {
    let done = sqlx::query(
        "update person_roles
         set ended_at = $4
         where person_id = $1
           and branch_id = $2
           and role = $3
           and ended_at is null",
    )
    .bind(person)
    .bind(branch)
    .bind(role)
    .bind(at)
    .execute(con)
    .await?;
    exactly_one(&done)
}

/// How many managers the branch has whose account works on `day` and who have a password.
pub async fn managers(con: &mut Con, branch: BranchId, day: time::Date) -> Result<i64> {
    Ok(sqlx::query_scalar(
        "select count(*)
         from people
         join person_roles on person_roles.person_id = people.id
         where person_roles.branch_id = $1
           and person_roles.role = 'manager'
           and person_roles.ended_at is null
           and (people.ended_on is null or people.ended_on > $2)
           and people.password_phc is not null",
    )
    .bind(branch)
    .bind(day)
    .fetch_one(con)
    .await?)
}

/// The right to sign that a person holds in a branch, expired or not.
pub async fn signatory(con: &mut Con, person: PersonId, branch: BranchId) -> Result<Option<SignatoryGrant>> {
    Ok(sqlx::query_as::<Db, SignatoryGrant>(
        "select person_id, authorisation_number, expires_on
         from signatory_grants
         where person_id = $1
           and branch_id = $2
           and ended_at is null",
    )
    .bind(person)
    .bind(branch)
    .fetch_optional(con)
    .await?)
}

/// Every right to sign that is held in a branch, the first to expire first.
pub async fn signatories(con: &mut Con, branch: BranchId) -> Result<Vec<SignatoryGrant>> {
    Ok(sqlx::query_as::<Db, SignatoryGrant>(
        "select person_id, authorisation_number, expires_on
         from signatory_grants
         where branch_id = $1
           and ended_at is null
         order by expires_on, person_id",
    )
    .bind(branch)
    .fetch_all(con)
    .await?)
}

/// Gives the right to sign; one that was held before must be ended first.
pub async fn insert_signatory(
    con: &mut Con,
    branch: BranchId,
    grant: &SignatoryGrant,
    at: OffsetDateTime,
) -> Result<()> {
    sqlx::query(
        "insert into signatory_grants (person_id, branch_id, authorisation_number, expires_on, began_at)
         values ($1, $2, $3, $4, $5)",
    )
    .bind(grant.person_id)
    .bind(branch)
    .bind(&grant.authorisation_number)
    .bind(grant.expires_on)
    .bind(at)
    .execute(con)
    .await?;
    Ok(())
}

/// Ends the right to sign. Returns whether there was one.
pub async fn end_signatory(con: &mut Con, person: PersonId, branch: BranchId, at: OffsetDateTime) -> Result<bool> {
    let done = sqlx::query(
        "update signatory_grants set ended_at = $3 where person_id = $1 and branch_id = $2 and ended_at is null",
    )
    .bind(person)
    .bind(branch)
    .bind(at)
    .execute(con)
    .await?;
    Ok(done.rows_affected() > 0)
}

/// The person as one who acts in a branch; `None` when they have no role there.
pub async fn actor(con: &mut Con, person: PersonId, branch: BranchId) -> Result<Option<Actor>> {
    let Some(found) = find(con, person).await? else { return Ok(None) };
    let roles = roles(con, person, branch).await?;
    if roles.is_empty() {
        return Ok(None);
    }
    let sees_contacts = found.sees_contacts || roles.iter().any(|role| *role != Role::Auditor);
    let signatory = signatory(con, person, branch).await?;
    Ok(Some(Actor { person: Some(person), name: found.name, branch, roles, signatory, sees_contacts }))
}
