//! The shop's own tablets: a manager enrols one, and on it people come in with six digits instead of a password.
//!
//! A PIN is worth nothing without the tablet: its cookie holds 256 random bits. What is signed asks for the password.

use uuid::Uuid;

use super::secret::Token;
use super::sign_in::From;
use super::{Refusal, Shop, Work};
use crate::db;
use crate::db::sessions::Device;
use crate::model::deed::Deed;
use crate::model::ids::{DeviceId, PersonId};
use crate::model::person::Actor;

/// Six digits, not all alike and not simply counted up or down.
fn is_good(pin: &str) -> bool {
    let digits: Vec<i16> = pin.bytes().filter(u8::is_ascii_digit).map(i16::from).collect();
    let steps: Vec<i16> = digits.windows(2).map(|pair| pair[1] - pair[0]).collect();
    let is_run = steps.iter().all(|step| Some(step) == steps.first()) && matches!(steps.first(), Some(-1..=1));
    pin.len() == 6 && digits.len() == 6 && !is_run
}

impl Shop {
    /// Enrols the browser that asks as a tablet of the actor's branch; the token is its cookie.
    pub async fn enrol_tablet(&self, who: &Actor, key: Option<Uuid>, name: &str) -> Result<Token, Refusal> {
        let by = who.person.ok_or(Refusal::MayNot("refused-needs-person"))?;
        let (token, name) = (Token::fresh()?, name.to_owned());
        let hash = token.hash();
        self.deed(who, key, async move |mut work: Work| {
            let (branch_id, enrolled_at) = (work.who.branch, work.now);
            let device = Device { id: DeviceId::new(), branch_id, name: name.clone(), enrolled_at };
            db::sessions::insert_device(&mut work, &device, &hash, by).await?;
            work.done(Deed::DeviceEnrolled { device: device.id, name }, ()).await
        })
        .await?;
        Ok(token)
    }

    /// Takes a tablet out of use; whoever is signed in on it is signed out.
    pub async fn end_tablet(&self, who: &Actor, device: DeviceId) -> Result<(), Refusal> {
        self.deed(who, None, async move |mut work: Work| {
            let (branch, now) = (work.who.branch, work.now);
            if !db::sessions::end_device(&mut work, branch, device, now).await? {
                return Err(Refusal::Gone);
            }
            work.done(Deed::DeviceEnded { device }, ()).await
        })
        .await
    }

    /// Chooses the visitor's own PIN; asks for the password first.
    pub async fn choose_pin(&self, who: &Actor, pin: &str, password: &str, from: &From) -> Result<(), Refusal> {
        let person = who.person.ok_or(Refusal::Gone)?;
        if !is_good(pin) {
            return Err(Refusal::Field { field: "pin", why: "wrong-pin-weak" });
        }
        self.prove(person, password, &from.address).await?;
        let phc = self.hasher.hash(pin).await?;
        self.deed(who, None, async move |mut work: Work| {
            db::people::save_pin(&mut work, person, &phc).await?;
            work.done(Deed::PinSet { person }, ()).await
        })
        .await
    }

    /// The tablet of this cookie, while it is in use.
    pub async fn tablet(&self, token: &Token) -> Result<Option<Device>, Refusal> {
        Ok(db::sessions::device(&mut *self.db.read().await?, &token.hash()).await?)
    }

    /// Opens a session on a tablet.
    ///
    /// # Errors
    /// [`Refusal::Field`] on `pin` when tablet, person and PIN do not belong together; [`Refusal::Throttled`] after five
    /// failures of one person on one tablet.
    pub async fn sign_in_with_pin(
        &self,
        tablet: &Token,
        person: PersonId,
        pin: &str,
        from: &From,
    ) -> Result<Token, Refusal> {
        let wrong = || Refusal::Field { field: "pin", why: "wrong-pin" };
        let device = self.tablet(tablet).await?.ok_or_else(wrong)?;
        let subjects = [format!("pin:{}:{person}", device.id)];
        self.refuse_hasty(&subjects).await?;
        let secrets = db::people::secrets(&mut *self.db.read().await?, person).await?;
        let phc = secrets.and_then(|secrets| secrets.pin_phc);
        if !self.hasher.fits(pin, phc).await? {
            self.count_failure(&subjects).await?;
            return Err(wrong());
        }
        let token = self.open_session(person, Some((device.id, device.branch_id)), from, "pin").await?;
        let mut tx = self.db.write().await?;
        db::sessions::forget_failures(&mut tx, &subjects[0]).await?;
        tx.commit().await.map_err(db::Error::from)?;
        Ok(token)
    }
}

#[cfg(test)]
mod tests {
    use super::is_good;

    #[test]
    fn a_pin_is_six_digits_that_are_no_run() {
        for bad in ["", "12345", "1234567", "123456", "654321", "000000", "12345a", "１２３４５７"] {
            assert!(!is_good(bad), "{bad}");
        }
        for good in ["190528", "123457", "112233", "024680"] {
            assert!(is_good(good), "{good}");
        }
    }
}
