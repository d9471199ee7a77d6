//! Money: whole minor units of one currency. No float comes near it.
//!
//! An amount is rounded once, where a quantity meets a price; a total is the exact sum of the amounts that are printed,
//! so that whoever adds the paper up gets the same.

pub use crate::unit::{Currency, fixed};

/// Thousandths in one.
const THOUSAND: i128 = 1_000;

/// What so many thousandths of a thing cost at a price for one, in minor units, half a minor unit rounded up. `None`
/// beyond what can be kept.
///
/// ```
/// use fuelwright::model::money::amount_minor;
/// assert_eq!(amount_minor(1_500, 4_999), Some(7_499)); // 1.5 × 49.99 = 74.985
/// ```
pub fn amount_minor(quantity_thousandths: i64, unit_price_minor: i64) -> Option<i64> {
    let product = i128::from(quantity_thousandths) * i128::from(unit_price_minor);
    i64::try_from((product + THOUSAND / 2).div_euclid(THOUSAND)).ok()
}

/// The exact sum of amounts of one currency; `None` beyond what can be kept.
pub fn total_minor(amounts: impl IntoIterator<Item = i64>) -> Option<i64> {
    amounts.into_iter().try_fold(0_i64, i64::checked_add)
}

/// A number kept in thousandths, in plain digits with as many decimals as it needs: "1.5" for 1 500.
pub fn plain_thousandths(thousandths: i64) -> String {
    let text = fixed(thousandths, 3);
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn half_a_minor_unit_is_rounded_up_and_less_is_dropped() {
        // Worked by hand: 0.005 up, 0.004 9 down, 0.333 × 0.01, 2.5 × 0.01 = 0.025.
        for (thousandths, price, amount) in [
            (1_000, 148_000, 148_000),
            (500, 1, 1),
            (499, 1, 0),
            (333, 1, 0),
            (2_500, 1, 3),
            (1_500, 4_999, 7_499),
            (125, 20, 3),
            (3, 166, 0),
            (3, 167, 1),
            (0, 99, 0),
        ] {
            assert_eq!(amount_minor(thousandths, price), Some(amount), "{thousandths} of {price}");
        }
    }

    #[test]
    fn what_cannot_be_kept_is_no_amount() {
        assert_eq!(amount_minor(i64::MAX, i64::MAX), None);
        assert_eq!(amount_minor(1_000, i64::MAX), Some(i64::MAX));
        assert_eq!(total_minor([i64::MAX, 1]), None);
        assert_eq!(total_minor([7_499, 1, 0]), Some(7_500));
        assert_eq!(total_minor([]), Some(0));
    }

    #[test]
    fn a_program_reads_a_point_and_no_groups() {
        assert_eq!(fixed(148_050, 2), "1480.50");
        assert_eq!(fixed(-5, 2), "-0.05");
        assert_eq!(fixed(1_500, 0), "1500");
        assert_eq!(fixed(1_500, 3), "1.500");
        assert_eq!(plain_thousandths(2_000), "2");
        assert_eq!(plain_thousandths(1_250), "1.25");
        assert_eq!(plain_thousandths(10_000), "10");
        assert_eq!(plain_thousandths(5), "0.005");
    }
}
