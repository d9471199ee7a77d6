//! An sRGB colour profile in the second version of the ICC format, built here: a matrix and one curve (ISO 15076-1 tells
//! the later version; PDF/A-1 takes only the second). The primaries are those of IEC 61966-2-1 brought to D50.

/// Points of the tone curve.
const POINTS: usize = 1024;

/// The profile as bytes.
pub fn srgb() -> Vec<u8> {
    let curve = curve();
    let tags: Vec<([u8; 4], Vec<u8>)> = vec![
        (*b"desc", description("sRGB, IEC 61966-2-1")),
        (*b"cprt", text("No copyright, use freely.")),
        (*b"wtpt", xyz([0xf6d6, 0x1_0000, 0xd32d])),
        (*b"rXYZ", xyz([0x6fa2, 0x38f5, 0x0390])),
        (*b"gXYZ", xyz([0x6299, 0xb785, 0x18da])),
        (*b"bXYZ", xyz([0x24a0, 0x0f84, 0xb6cf])),
        (*b"rTRC", curve.clone()),
        (*b"gTRC", curve.clone()),
        (*b"bTRC", curve),
    ];
    let mut table = number(tags.len());
    let mut data: Vec<u8> = Vec::new();
    let start = 128 + 4 + 12 * tags.len();
    let mut last: Option<(usize, Vec<u8>)> = None;
    for (name, content) in tags {
        // The three curves share one place.
        let offset = match &last {
            Some((offset, before)) if *before == content => *offset,
            _ => {
                let offset = start + data.len();
                data.extend(&content);
                data.resize(data.len().next_multiple_of(4), 0);
                offset
            }
        };
        table.extend(name);
        table.extend(number(offset));
        table.extend(number(content.len()));
        last = Some((offset, content));
    }
    let mut profile = header(start + data.len());
    profile.extend(table);
    profile.extend(data);
    profile
}

fn header(size: usize) -> Vec<u8> {
    let mut head = number(size);
    head.resize(8, 0);
    head.extend([2, 0x10, 0, 0]);
    head.extend(b"mntrRGB XYZ ");
    for part in [2026_u16, 1, 1, 0, 0, 0] {
        head.extend(part.to_be_bytes());
    }
    head.extend(b"acsp");
    head.resize(68, 0);
    for part in [0xf6d6_u32, 0x1_0000, 0xd32d] {
        head.extend(part.to_be_bytes());
    }
    head.resize(128, 0);
    head
}

fn number(value: usize) -> Vec<u8> {
    u32::try_from(value).unwrap_or(u32::MAX).to_be_bytes().to_vec()
}

fn xyz(parts: [u32; 3]) -> Vec<u8> {
    let mut tag = b"XYZ \0\0\0\0".to_vec();
    tag.extend(parts.iter().flat_map(|part| part.to_be_bytes()));
    tag
}

fn text(words: &str) -> Vec<u8> {
    [b"text\0\0\0\0", words.as_bytes(), b"\0"].concat()
}

fn description(words: &str) -> Vec<u8> {
    let mut tag = b"desc\0\0\0\0".to_vec();
    tag.extend(number(words.len() + 1));
    tag.extend(words.as_bytes());
    // Its end, then empty Unicode and script names: 4 + 4, 2 + 1 + 67.
    tag.resize(tag.len() + 1 + 8 + 70, 0);
    tag
}

fn curve() -> Vec<u8> {
    let mut tag = b"curv\0\0\0\0".to_vec();
    tag.extend(number(POINTS));
    for point in 0..POINTS {
        let signal = point as f64 / (POINTS - 1) as f64;
        let light = if signal <= 0.04045 { signal / 12.92 } else { ((signal + 0.055) / 1.055).powf(2.4) };
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "between 0 and 65535")]
        let level = (light * 65535.0).round() as u16;
        tag.extend(level.to_be_bytes());
    }
    tag
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_primaries_add_up_to_the_white_of_the_profile_space() {
        for (parts, white) in
            [([0x6fa2, 0x6299, 0x24a0], 0.9642), ([0x38f5, 0xb785, 0x0f84], 1.0), ([0x390, 0x18da, 0xb6cf], 0.8249)]
        {
            let sum = parts.iter().map(|part| f64::from(*part) / 65536.0).sum::<f64>();
            assert!((sum - white).abs() < 2e-4, "{sum} against D50 {white}");
        }
    }

    #[test]
    fn the_profile_says_its_own_size() {
        let profile = srgb();
        assert_eq!(u32::from_be_bytes(profile[..4].try_into().unwrap()) as usize, profile.len());
        assert_eq!(&profile[36..40], b"acsp");
        assert!(profile.len() < 3000);
    }
}
