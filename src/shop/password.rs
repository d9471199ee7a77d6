//! Which passwords will do. No rule about digits and capitals: length and not being guessable is what counts
//! (NIST SP 800-63B, 5.1.1.2).

use super::Refusal;

const SHORTEST_PASSWORD: usize = 8;
/// In bytes; more is nobody's password and costs time to hash.
pub(super) const LONGEST_PASSWORD: usize = 4096;

/// Refuses a password that is too short, too long, among the most common, or made of words that anybody here knows.
pub(super) fn refuse_weak(password: &str, known: &[&str]) -> Result<(), Refusal> {
    let no = |why| Err(Refusal::Field { field: "new_password", why });
    if password.chars().count() < SHORTEST_PASSWORD {
        return no("password-short");
    }
    if password.len() > LONGEST_PASSWORD {
        return no("password-long");
    }
    let folded = password.to_lowercase();
    let bare: String = folded.chars().filter(|c| c.is_alphabetic()).collect();
    let letters = |text: &str| text.to_lowercase().chars().filter(|c| c.is_alphabetic()).collect::<String>();
    let words = known.iter().flat_map(|text| text.split_whitespace().chain([*text]));
    let is_known = words.map(letters).any(|word| !word.is_empty() && bare == word);
    let one_letter = folded.chars().next().is_some_and(|first| folded.chars().all(|c| c == first));
    if is_known || one_letter || COMMON.contains(&folded.as_str()) || COMMON.contains(&bare.as_str()) {
        return no("password-common");
    }
    Ok(())
}

/// Passwords of at least eight characters (or their letters) that guessers try first; from memory, common practice, and
/// words of this trade.
const COMMON: &[&str] = &[
    "12345678",
    "123456789",
    "1234567890",
    "password",
    "passwort",
    "password1",
    "password123",
    "qwertyuiop",
    "qwerty123",
    "qwertzuiop",
    "1q2w3e4r",
    "1q2w3e4r5t",
    "iloveyou",
    "sunshine",
    "princess",
    "football",
    "baseball",
    "superman",
    "trustno1",
    "letmein1",
    "welcome1",
    "welcome123",
    "admin123",
    "administrator",
    "abc12345",
    "11223344",
    "12341234",
    "87654321",
    "123123123",
    "987654321",
    "asdfghjkl",
    "zaq12wsx",
    "passw0rd",
    "changeme",
    "computer",
    "internet",
    "michelle",
    "jennifer",
    "starwars",
    "whatever",
    "fuelwright",
    "autogas",
    "autogaz",
    "workshop",
    "werkstatt",
    "conversion",
    "vaporiser",
    "cylinder",
    "container",
    "petrolgas",
    "injector",
    "manager1",
    "technician",
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn weak_passwords_are_refused_and_long_ones_taken_unchanged() {
        for weak in ["short", "password", "Password123", "fuelwright1", "ilse-1234", "aaaaaaaaaa"] {
            assert!(refuse_weak(weak, &["Ilse Brandt"]).is_err(), "{weak}");
        }
        for good in ["correct horse battery", &"x1".repeat(200), "  blanks stay  "] {
            assert!(refuse_weak(good, &["Ilse Brandt"]).is_ok(), "{good}");
        }
        assert!(refuse_weak(&"x".repeat(4097), &[]).is_err());
    }
}
