//! Messages that the shop owes somebody. A message is written in the transaction of its cause; the primary key of
//! `message_duties` keeps it from being owed twice.

use time::OffsetDateTime;

use super::{Con, Db, Result};
use crate::model::ids::{BranchId, CustomerId, DutyId, MessageId};
use crate::model::message::{HeldBecause, Message, MessageState, NewMessage};

/// That somebody was, or will be, told of a duty at one lead time.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct Told {
    pub duty_id: DutyId,
    pub lead_days: i64,
    /// The customer's id, as text.
    pub recipient: String,
}

/// How many messages stand where.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct Tally {
    pub state: MessageState,
    pub count: i64,
}

/// Adds a message and the duties that it tells of.
///
/// # Errors
/// [`super::Error::Taken`] when one of the duties was told already at that lead time to that person.
pub async fn insert(con: &mut Con, branch: BranchId, message: &NewMessage, at: OffsetDateTime) -> Result<MessageId> {
    let id = MessageId::new();
    sqlx::query(
        "insert into messages (id, branch_id, kind, customer_id, vehicle_id, recipient, language, subject, body_text,
             body_html, calendar, state, held_because, not_before, made_at)
         values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14, $15)",
    )
    .bind(id)
    .bind(branch)
    .bind(message.kind)
    .bind(message.customer_id)
    .bind(message.vehicle_id)
    .bind(&message.recipient)
    .bind(&message.language)
    .bind(&message.subject)
    .bind(&message.body_text)
    .bind(&message.body_html)
    .bind(&message.calendar)
    .bind(message.state)
    .bind(message.held_because)
    .bind(message.not_before)
    .bind(at)
    .execute(&mut *con)
    .await?;
    let recipient = message.customer_id.map(|customer| customer.to_string()).unwrap_or_default();
    for (duty, lead_days) in &message.duties {
        sqlx::query("insert into message_duties (message_id, duty_id, lead_days, recipient) values ($1, $2, $3, $4)")
            .bind(id)
            .bind(duty)
            .bind(lead_days)
            .bind(&recipient)
            .execute(&mut *con)
            .await?;
    }
    Ok(id)
}

/// Who was told of what, for every open duty of a branch.
pub async fn told(con: &mut Con, branch: BranchId) -> Result<Vec<Told>> {
    Ok(sqlx::query_as::<Db, Told>(
        "select t.duty_id, t.lead_days, t.recipient
         from message_duties t
         join duties d on d.id = t.duty_id
         where d.branch_id = $1
           and d.closed_at is null
         order by t.duty_id, t.lead_days desc",
    )
    .bind(branch)
    .fetch_all(con)
    .await?)
}

/// The duties that a message tells of.
pub async fn duties(con: &mut Con, message: MessageId) -> Result<Vec<DutyId>> {
    Ok(sqlx::query_scalar::<Db, DutyId>(
        "select duty_id from message_duties where message_id = $1 order by lead_days, duty_id",
    )
    .bind(message)
    .fetch_all(con)
    .await?)
}

/// One message.
pub async fn find(con: &mut Con, branch: BranchId, id: MessageId) -> Result<Option<Message>> {
    Ok(sqlx::query_as::<Db, Message>(
        "select id, kind, customer_id, vehicle_id, recipient, language, subject, body_text, body_html, calendar, state,
             attempts, not_before, last_error, made_at, sent_at, held_because
         from messages
         where branch_id = $1
           and id = $2",
    )
    .bind(branch)
    .bind(id)
    .fetch_optional(con)
    .await?)
}

/// The messages of a branch in one state, the latest first.
pub async fn list(con: &mut Con, branch: BranchId, state: MessageState, most: i64) -> Result<Vec<Message>> {
    Ok(sqlx::query_as::<Db, Message>(
        "select id, kind, customer_id, vehicle_id, recipient, language, subject, body_text, body_html, calendar, state,
             attempts, not_before, last_error, made_at, sent_at, held_because
         from messages
         where branch_id = $1
           and state = $2
         order by made_at desc, id desc
         limit $3",
    )
    .bind(branch)
    .bind(state)
    .bind(most)
    .fetch_all(con)
    .await?)
}

/// How many messages of a branch stand where.
pub async fn tally(con: &mut Con, branch: BranchId) -> Result<Vec<Tally>> {
    Ok(sqlx::query_as::<Db, Tally>(
        "select state, count(*) as count from messages where branch_id = $1 group by state order by state",
    )
    .bind(branch)
    .fetch_all(con)
    .await?)
}

/// How many reminders a branch wrote between two instants, those aside that a large run had held.
pub async fn count_made(con: &mut Con, branch: BranchId, from: OffsetDateTime, to: OffsetDateTime) -> Result<i64> {
    Ok(sqlx::query_scalar::<Db, i64>(
        "select count(*)
         from messages
         where branch_id = $1
           and kind = 'reminder'
           and made_at >= $2
           and made_at < $3
           and held_because <> 'many'",
    )
    .bind(branch)
    .bind(from)
    .bind(to)
    .fetch_one(con)
    .await?)
}

/// The next message of a branch that is ready to go out: waiting, perhaps gone out and to be tried once more, or left
/// behind by a worker whose lease ran out. Outside working hours reminders stay where they are.
pub async fn next_ready(
    con: &mut Con,
    branch: BranchId,
    now: OffsetDateTime,
    reminders_too: bool,
) -> Result<Option<Message>> {
    Ok(sqlx::query_as::<Db, Message>(
        "select id, kind, customer_id, vehicle_id, recipient, language, subject, body_text, body_html, calendar, state,
             attempts, not_before, last_error, made_at, sent_at, held_because
         from messages
         where branch_id = $1
           and ((state in ('waiting', 'unknown') and not_before <= $2)
                or (state = 'sending' and leased_until <= $2))
           and ($3 or kind <> 'reminder')
         order by not_before, id
         limit 1",
    )
    .bind(branch)
    .bind(now)
    .bind(reminders_too)
    .fetch_optional(con)
    .await?)
}

/// Takes a message for one attempt; until `leased_until` nobody else takes it. Returns whether it was still there to be
/// taken as it was read.
pub async fn claim(con: &mut Con, message: &Message, leased_until: OffsetDateTime) -> Result<bool> {
    let done = sqlx::query(
        "update messages
         set state = 'sending', attempts = attempts + 1, leased_until = $4
         where id = $1
           and state = $2
           and attempts = $3",
    )
    .bind(message.id)
    .bind(message.state)
    .bind(message.attempts)
    .bind(leased_until)
    .execute(con)
    .await?;
    Ok(done.rows_affected() == 1)
}

/// What became of a message.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Outcome {
    pub state: MessageState,
    pub held_because: HeldBecause,
    pub not_before: OffsetDateTime,
    /// What the other side said; kept for the one who looks into it.
    pub last_error: String,
    /// The address was refused for good.
    pub is_refused: bool,
    pub sent_at: Option<OffsetDateTime>,
}

/// Moves a message on from the state it was read in. Returns whether it was still in it.
pub async fn save_outcome(con: &mut Con, id: MessageId, from: MessageState, to: &Outcome) -> Result<bool> {
    let done = sqlx::query(
        "update messages
         set state = $3, held_because = $4, not_before = $5, last_error = $6, is_refused = $7, sent_at = $8,
             leased_until = null
         where id = $1
           and state = $2",
    )
    .bind(id)
    .bind(from)
    .bind(to.state)
    .bind(to.held_because)
    .bind(to.not_before)
    .bind(&to.last_error)
    .bind(to.is_refused)
    .bind(to.sent_at)
    .execute(con)
    .await?;
    Ok(done.rows_affected() == 1)
}

/// Gives a message the address that its customer has now, if they have a good one.
pub async fn renew_recipient(con: &mut Con, id: MessageId) -> Result<()> {
    sqlx::query(
        "update messages
         set recipient = coalesce((select c.mail
                                   from customers c
                                   where c.id = messages.customer_id
                                     and c.mail <> ''
                                     and c.mail_state = 'good'), recipient)
         where id = $1",
    )
    .bind(id)
    .execute(con)
    .await?;
    Ok(())
}

/// Lets every message go that a large run had held: mails wait their turn, those without an address become letters.
/// Returns how many.
pub async fn release_many(con: &mut Con, branch: BranchId) -> Result<i64> {
    let done = sqlx::query(
        "update messages
         set state = case when recipient = '' then 'letter' else 'waiting' end, held_because = 'no'
         where branch_id = $1
           and state = 'held'
           and held_because = 'many'",
    )
    .bind(branch)
    .execute(con)
    .await?;
    Ok(i64::try_from(done.rows_affected()).unwrap_or(i64::MAX))
}

/// How many mails to this customer at this address were refused for good.
pub async fn count_failed(con: &mut Con, customer: CustomerId, recipient: &str) -> Result<i64> {
    Ok(sqlx::query_scalar::<Db, i64>(
        "select count(*) from messages where customer_id = $1 and recipient = $2 and is_refused = 1",
    )
    .bind(customer)
    .bind(recipient)
    .fetch_one(con)
    .await?)
}

/// Marks the customer's mail address as bad, if it is still the one that failed. Returns whether it was good before.
pub async fn mark_address_bad(con: &mut Con, customer: CustomerId, recipient: &str) -> Result<bool> {
    let done = sqlx::query(
        "update customers
         set mail_state = 'bad', version = version + 1
         where id = $1
           and mail = $2
           and mail_state = 'good'",
    )
    .bind(customer)
    .bind(recipient)
    .execute(con)
    .await?;
    Ok(done.rows_affected() == 1)
}

/// Failed and waiting reminders, safety and recall letters to an address that is bad go by post. Returns how many.
pub async fn turn_to_letters(con: &mut Con, customer: CustomerId, recipient: &str) -> Result<i64> {
    let done = sqlx::query(
        "update messages
         set state = 'letter', recipient = ''
         where customer_id = $1
           and recipient = $2
           and kind in ('reminder', 'safety', 'recall')
           and state in ('failed', 'waiting', 'unknown')",
    )
    .bind(customer)
    .bind(recipient)
    .execute(con)
    .await?;
    Ok(i64::try_from(done.rows_affected()).unwrap_or(i64::MAX))
}

/// Ends the ground on which a customer is reminded. Returns whether there was one.
pub async fn end_reminders(con: &mut Con, customer: CustomerId) -> Result<bool> {
    let done = sqlx::query(
        "update customers
         set reminder_basis = 'none', reminder_basis_on = null, version = version + 1
         where id = $1
           and reminder_basis <> 'none'",
    )
    .bind(customer)
    .execute(con)
    .await?;
    Ok(done.rows_affected() == 1)
}

/// Drops whatever reminders to a customer have not gone out. Returns how many.
pub async fn drop_reminders(con: &mut Con, customer: CustomerId) -> Result<i64> {
    let done = sqlx::query(
        "update messages
         set state = 'dropped', leased_until = null
         where customer_id = $1
           and kind = 'reminder'
           and (state in ('waiting', 'held', 'unknown', 'failed') or (state = 'letter' and sent_at is null))",
    )
    .bind(customer)
    .execute(con)
    .await?;
    Ok(i64::try_from(done.rows_affected()).unwrap_or(i64::MAX))
}

/// A message that told of a duty, and where it stands.
#[derive(Debug, Clone, PartialEq, Eq, sqlx::FromRow)]
pub struct ToldOf {
    pub message_id: MessageId,
    pub lead_days: i64,
    pub state: MessageState,
    pub made_at: OffsetDateTime,
    pub sent_at: Option<OffsetDateTime>,
}

/// Every message that told of a duty, the latest first.
pub async fn told_of(con: &mut Con, duty: DutyId) -> Result<Vec<ToldOf>> {
    Ok(sqlx::query_as::<Db, ToldOf>(
        "select t.message_id, t.lead_days, m.state, m.made_at, m.sent_at
         from message_duties t
         join messages m on m.id = t.message_id
         where t.duty_id = $1
         order by m.made_at desc, m.id desc",
    )
    .bind(duty)
    .fetch_all(con)
    .await?)
}
