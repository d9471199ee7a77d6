//! Customers.

use time::OffsetDateTime;

use super::search::{Wanted, column, fold, squeeze};
use super::{Con, Db, Result, exactly_one};
use crate::model::customer::{Customer, NewCustomer};
use crate::model::ids::{BranchId, CustomerId};

/// What a booking is compared with: the end of a phone number, without country or trunk digits, is the number.
const PHONE_END: usize = 8;

/// The customer with this id.
pub async fn find(con: &mut Con, branch: BranchId, id: CustomerId) -> Result<Option<Customer>> {
    Ok(sqlx::query_as::<Db, Customer>(
        "select id, branch_id, name, name_in_latin, address, phone, mail, mail_state, language, reminder_basis,
             reminder_basis_on, created_at, version
         from customers
         where id = $1
           and branch_id = $2",
    )
    .bind(id)
    .bind(branch)
    .fetch_optional(con)
    .await?)
}

/// Customers that a query finds, by name; `first` of them are passed over, at most `most` given.
pub async fn list(con: &mut Con, branch: BranchId, wanted: &Wanted, first: i64, most: i64) -> Result<Vec<Customer>> {
    Ok(sqlx::query_as::<Db, Customer>(
        "select id, branch_id, name, name_in_latin, address, phone, mail, mail_state, language, reminder_basis,
             reminder_basis_on, created_at, version
         from customers
         where branch_id = $1
           and ((search like $2 escape '\\' and search like $3 escape '\\'
                 and search like $4 escape '\\' and search like $5 escape '\\')
             or ($6 <> '%%' and search like $6 escape '\\'))
         order by search, id
         limit $7 offset $8",
    )
    .bind(branch)
    .bind(wanted.word(0))
    .bind(wanted.word(1))
    .bind(wanted.word(2))
    .bind(wanted.word(3))
    .bind(wanted.whole())
    .bind(most)
    .bind(first)
    .fetch_all(con)
    .await?)
}

/// Customers that may be the one who called: the same end of the phone number, or the same name.
pub async fn list_likely(con: &mut Con, branch: BranchId, name: &str, phone: &str) -> Result<Vec<Customer>> {
    let digits: Vec<char> = squeeze(phone).chars().filter(char::is_ascii_digit).collect();
    let end: String = digits.iter().skip(digits.len().saturating_sub(PHONE_END)).collect();
    let phone = if end.len() < 5 { String::new() } else { format!("%{end}\n%") };
    let name = fold(name).replace(['%', '_', '\\'], "");
    Ok(sqlx::query_as::<Db, Customer>(
        "select id, branch_id, name, name_in_latin, address, phone, mail, mail_state, language, reminder_basis,
             reminder_basis_on, created_at, version
         from customers
         where branch_id = $1
           and (($2 <> '' and search || '\n' like $2) or search like $3)
         order by search, id
         limit 6",
    )
    .bind(branch)
    .bind(phone)
    .bind(if name.is_empty() { String::new() } else { format!("{name}\n%") })
    .fetch_all(con)
    .await?)
}

/// Adds a customer.
pub async fn insert(
    con: &mut Con,
    branch: BranchId,
    id: CustomerId,
    new: &NewCustomer,
    at: OffsetDateTime,
) -> Result<()> {
    sqlx::query(
        "insert into customers (id, branch_id, name, name_in_latin, address, phone, mail, language, reminder_basis,
             reminder_basis_on, search, created_at)
         values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12)",
    )
    .bind(id)
    .bind(branch)
    .bind(&new.name)
    .bind(&new.name_in_latin)
    .bind(&new.address)
    .bind(&new.phone)
    .bind(&new.mail)
    .bind(&new.language)
    .bind(new.reminder_basis)
    .bind(new.reminder_basis_on)
    .bind(search_of(new))
    .bind(at)
    .execute(con)
    .await?;
    Ok(())
}

/// Saves a customer over the version it was read at. A new mail address is good until it proves bad.
pub async fn save(con: &mut Con, branch: BranchId, id: CustomerId, version: i64, new: &NewCustomer) -> Result<()> {
    let done = sqlx::query(
        "update customers
         set name = $4, name_in_latin = $5, address = $6, phone = $7,
             mail_state = case when mail = $8 then mail_state else 'good' end,
             mail = $8, language = $9, reminder_basis = $10, reminder_basis_on = $11, search = $12,
             version = version + 1
         where id = $1
           and branch_id = $2
           and version = $3",
    )
    .bind(id)
    .bind(branch)
    .bind(version)
    .bind(&new.name)
    .bind(&new.name_in_latin)
    .bind(&new.address)
    .bind(&new.phone)
    .bind(&new.mail)
    .bind(&new.language)
    .bind(new.reminder_basis)
    .bind(new.reminder_basis_on)
    .bind(search_of(new))
    .execute(con)
    .await?;
    exactly_one(&done)
}

/// How many customers of the branch share this mail address, case aside.
pub async fn count_with_mail(con: &mut Con, branch: BranchId, mail: &str) -> Result<i64> {
    if mail.is_empty() {
        return Ok(0);
    }
    Ok(sqlx::query_scalar("select count(*) from customers where branch_id = $1 and lower(mail) = lower($2)")
        .bind(branch)
        .bind(mail)
        .fetch_one(con)
        .await?)
}

/// The name stands first: lists are ordered by this column.
fn search_of(new: &NewCustomer) -> String {
    column(&[&new.name, &new.name_in_latin, &new.mail], &[&new.phone])
}
