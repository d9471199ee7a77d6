//! The code by which anybody looks a paper up: short enough to type, too long to guess.

/// 32 signs, five bits each. I, L, O and U are left out, so that 1, 0 and V stand alone.
const SIGNS: &[u8; 32] = b"0123456789ABCDEFGHJKMNPQRSTVWXYZ";

/// Random bytes a code is made of: 80 bits.
pub const CODE_BYTES: usize = 10;

/// Signs in a code, without its dashes.
const CODE_SIGNS: usize = CODE_BYTES * 8 / 5;

/// A code in its printed form, four groups of four: `7KQ4-M2XR-9HTW-C3PN`.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub struct VerifyCode(String);

impl VerifyCode {
    /// Reads what somebody typed: small letters, spaces, missing dashes and the usual slips (O for 0, I or L for 1,
    /// U for V) are mended. `None` when it cannot be a code.
    pub fn read(typed: &str) -> Option<Self> {
        let mut signs = String::new();
        for c in typed.chars().filter(|c| !c.is_whitespace() && !matches!(c, '-' | '\u{2010}'..='\u{2015}')) {
            let sign = match c.to_ascii_uppercase() {
                'O' => '0',
                'I' | 'L' => '1',
                'U' => 'V',
                other => other,
            };
            if !sign.is_ascii() || !SIGNS.contains(&(sign as u8)) || signs.len() == CODE_SIGNS {
                return None;
            }
            signs.push(sign);
        }
        (signs.len() == CODE_SIGNS).then(|| Self(grouped(&signs)))
    }

    /// The printed form.
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl std::fmt::Display for VerifyCode {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&self.0)
    }
}

/// The code these random bytes spell.
pub fn verify_code(random: [u8; CODE_BYTES]) -> VerifyCode {
    let bits = random.iter().fold(0_u128, |all, byte| (all << 8) | u128::from(*byte));
    let signs: String =
        (0..CODE_SIGNS).rev().map(|place| char::from(SIGNS[((bits >> (place * 5)) & 31) as usize])).collect();
    VerifyCode(grouped(&signs))
}

fn grouped(signs: &str) -> String {
    let mut text = String::with_capacity(signs.len() + 3);
    for (index, sign) in signs.chars().enumerate() {
        if index > 0 && index % 4 == 0 {
            text.push('-');
        }
        text.push(sign);
    }
    text
}

#[cfg(test)]
mod tests {
    use std::collections::HashSet;

    use super::*;

    #[test]
    fn every_bit_of_chance_reaches_the_code() {
        assert_eq!(verify_code([0; 10]).as_str(), "0000-0000-0000-0000");
        assert_eq!(verify_code([255; 10]).as_str(), "ZZZZ-ZZZZ-ZZZZ-ZZZZ");
        let mut seen = HashSet::new();
        for bit in 0..80 {
            let mut random = [0_u8; 10];
            random[bit / 8] = 1 << (bit % 8);
            assert!(seen.insert(verify_code(random)), "bit {bit}");
        }
    }

    #[test]
    fn a_code_typed_by_a_tired_hand_is_read() {
        let code = verify_code([0x39, 0xef, 0x20, 0x10, 0x44, 0x3c, 0xa5, 0xb7, 0xd8, 0x01]);
        let typed = code.as_str().to_lowercase().replace('-', " ").replace('0', "o").replace('1', "l");
        assert_eq!(VerifyCode::read(&typed), Some(code));
        for wrong in
            ["", "7KQ4", "7KQ4-M2XR-9HTW-C3P", "7KQ4-M2XR-9HTW-C3PNN", "7KQ4-M2XR-9HTW-C3P*", "７KQ4M2XR9HTWC3PN"]
        {
            assert_eq!(VerifyCode::read(wrong), None, "{wrong}");
        }
    }
}
