//! Measured results held against the limits of their day: what the proofs, the screens and the papers show alike.

use crate::calc::Outside;
use crate::calc::decision::{self, Rule, Verdict};
use crate::calc::lambda::{self, ExhaustFuel, NoLambda, PermissibleErrors};
use crate::calc::leak::{self, Compressibility, DecayTest, LeakResult};
use crate::model::evidence::{Entry, Exhaust, ExhaustPoint, LeakDecay, TestGas};
use crate::model::job::Fuel;
use crate::model::job_file::{DayOf, JobFile};

use super::book::{Limit, RuleBook};
use super::line::{DecisionRule, LimitLine, Quantity};

/// A decay test with its limit and what came of it.
#[derive(Debug, Clone, PartialEq)]
pub struct DecayJudged {
    /// The test as the sum took it: absolute pressures, minutes.
    pub test: DecayTest,
    /// The limit in force on that day; `None`: the shop adopted none.
    pub limit: Option<Limit>,
    /// Rate, uncertainty, verdict, what a better test would need.
    pub result: LeakResult,
}

/// Why a decay test proves nothing.
#[derive(Debug, Clone, PartialEq)]
pub enum DecayRefused {
    /// The section was put under more than its lowest-rated part may hold, kPa gauge: pressure, rating.
    OverRating(f64, f64),
    /// Liquid LPG cannot be decay-tested: its vapour pressure follows the temperature.
    LiquidSection,
    /// Air in a line that held fuel.
    AirInFuelLine,
    /// The rule book has no limit for this section.
    NoLimit,
    /// A number is outside the range of the sum.
    Outside(Outside),
}

/// Holds a decay test against the limit of its day.
pub fn decay(
    file: &JobFile,
    book: &RuleBook,
    entry: &Entry,
    decay: &LeakDecay,
    day_of: DayOf<'_>,
) -> Result<DecayJudged, DecayRefused> {
    use crate::model::evidence::Section;
    if decay.section == Section::LpgLiquid && decay.test_gas == TestGas::Fuel {
        return Err(DecayRefused::LiquidSection);
    }
    if decay.test_gas == TestGas::Air && file.has_held_fuel(decay.started_at) {
        return Err(DecayRefused::AirInFuelLine);
    }
    let over_ambient = decay.absolute_kpa(decay.start_kpa) - decay.ambient_kpa;
    if over_ambient > decay.lowest_rating_gauge_kpa {
        return Err(DecayRefused::OverRating(over_ambient, decay.lowest_rating_gauge_kpa));
    }
    let on = day_of(entry.measured_at);
    let limit = book.limit(Quantity::LeakCm3H, &file.job, &file.vehicle, Some(decay.section), on);
    let limit_cm3_h = limit.as_ref().and_then(|limit| limit.most.as_ref()).map(|(most, _)| *most);
    let test = DecayTest {
        volume_l: decay.volume_l,
        start_kpa: decay.absolute_kpa(decay.start_kpa),
        end_kpa: decay.absolute_kpa(decay.end_kpa),
        start_c: decay.start_c,
        end_c: decay.end_c,
        duration_min: decay.duration_min(),
        limit_cm3_h: limit_cm3_h.ok_or(DecayRefused::NoLimit)?,
        pressure_resolution_kpa: decay.pressure_resolution_kpa,
        pressure_standard_uncertainty_kpa: decay.pressure_standard_uncertainty_kpa,
        temperature_standard_uncertainty_k: decay.temperature_standard_uncertainty_k,
        volume_relative_standard_uncertainty: decay.volume_relative_standard_uncertainty,
        reference_c: leak::reference_c(),
        reference_kpa: leak::reference_kpa(),
    };
    let result = leak::judge(&test, &Compressibility::IDEAL).map_err(DecayRefused::Outside)?;
    Ok(DecayJudged { test, limit, result })
}

/// Where a limit comes from.
#[derive(Debug, Clone, PartialEq)]
pub enum LimitFrom {
    /// The vehicle's maker gave it.
    Maker,
    /// The strictest line in force.
    Line(Box<LimitLine>),
    /// Nothing limits the value.
    Nothing,
}

/// One value of the exhaust against its limit.
#[derive(Debug, Clone, PartialEq)]
pub struct ValueJudged {
    /// The value.
    pub value: f64,
    /// Its expanded uncertainty (k = 2), in its unit.
    pub expanded_uncertainty: f64,
    /// Not below.
    pub least: Option<f64>,
    /// Not above.
    pub most: Option<f64>,
    /// Where the limit comes from.
    pub limit: LimitFrom,
    /// It would pass, and no line whose source was read says so: a signatory confirms it with the authority.
    pub is_unconfirmed: bool,
    /// How it was held against it.
    pub rule: DecisionRule,
    /// What came of it; `None` where nothing limits it.
    pub verdict: Option<Verdict>,
}

/// Exhaust on one fuel, judged.
#[derive(Debug, Clone, PartialEq)]
pub struct ExhaustJudged {
    /// CO at idle, per cent.
    pub idle_co: ValueJudged,
    /// CO at raised idle, per cent.
    pub raised_co: ValueJudged,
    /// Lambda at raised idle, reckoned from the gases.
    pub raised_lambda: Result<ValueJudged, NoLambda>,
    /// HC at raised idle, ppm as hexane, where a line in force limits it.
    pub raised_hc: Option<ValueJudged>,
    /// The analyser's own lambda differs from ours by more than it should: (ours, its).
    pub differs: Option<(f64, f64)>,
    /// Engine speed of raised idle was too low: (got, least).
    pub too_slow: Option<(f64, f64)>,
}

impl ExhaustJudged {
    fn values(&self) -> impl Iterator<Item = &ValueJudged> {
        let all =
            [Some(&self.idle_co), Some(&self.raised_co), self.raised_lambda.as_ref().ok(), self.raised_hc.as_ref()];
        all.into_iter().flatten()
    }

    /// The worst of the verdicts; `None` where nothing is limited at all. A line that nobody read fails a value; within it
    /// a value says nothing, so that the pass rests on the other lines, and where there are none there is no pass.
    pub fn verdict(&self) -> Option<Verdict> {
        let said: Vec<_> =
            self.values().filter(|value| !value.is_unconfirmed).filter_map(|value| value.verdict).collect();
        if said.contains(&Verdict::Fail) {
            Some(Verdict::Fail)
        } else if said.contains(&Verdict::CannotTell) || self.unconfirmed().is_some() {
            Some(Verdict::CannotTell)
        } else {
            said.first().copied()
        }
    }

    /// The first line that nobody read, where only such lines would let the reading pass.
    pub fn unconfirmed(&self) -> Option<&LimitLine> {
        if self.values().any(|value| value.verdict.is_some() && !value.is_unconfirmed) {
            return None;
        }
        self.values().filter(|value| value.is_unconfirmed).find_map(|value| match &value.limit {
            LimitFrom::Line(line) => Some(line.as_ref()),
            _ => None,
        })
    }
}

/// Holds an exhaust reading against the limits of its day; the maker's own values come first where they are known.
pub fn exhaust(file: &JobFile, book: &RuleBook, entry: &Entry, seen: &Exhaust, day_of: DayOf<'_>) -> ExhaustJudged {
    let on = day_of(entry.measured_at);
    let vehicle = &file.vehicle;
    let limit = |quantity| book.limit(quantity, &file.job, vehicle, None, on);
    // OIML R 99 permissible errors, as rectangles: U = 2 a / sqrt 3.
    let errors = PermissibleErrors::default();
    let expanded = |half_width: f64| 2.0 * half_width / 3.0_f64.sqrt();
    let co_u = expanded(errors.co_percent);
    let idle_co = judged(
        seen.idle.co_percent,
        co_u,
        limit(Quantity::IdleCoPercent).as_ref(),
        None,
        vehicle.maker_idle_co_percent,
    );
    let raised_co = judged(
        seen.raised.co_percent,
        co_u,
        limit(Quantity::RaisedCoPercent).as_ref(),
        None,
        vehicle.maker_raised_co_percent,
    );
    let hc_limit = limit(Quantity::RaisedHcPpm);
    let hc_u = expanded(errors.hc_ppm_hexane);
    let raised_hc = hc_limit.as_ref().map(|limit| judged(seen.raised.hc_ppm, hc_u, Some(limit), None, None));
    let fuel = match (seen.on_gas, file.job.fuel) {
        (false, _) => ExhaustFuel::Petrol,
        (true, Fuel::Lpg) => ExhaustFuel::Lpg,
        (true, Fuel::Cng) => ExhaustFuel::Cng,
    };
    let reading = reading(fuel, &seen.raised);
    let raised_lambda = lambda::lambda(&reading).and_then(|value| {
        let u = lambda::lambda_uncertainty(&reading, &errors)?.expanded()?;
        Ok(judged(
            value,
            u,
            limit(Quantity::RaisedLambda).as_ref(),
            vehicle.maker_lambda_least,
            vehicle.maker_lambda_most,
        ))
    });
    let differs = match (&raised_lambda, seen.raised.analyser_lambda) {
        (Ok(ours), Some(its)) if lambda::differs_from_analyser(ours.value, its) => Some((ours.value, its)),
        _ => None,
    };
    let least_rpm = limit(Quantity::RaisedRpm).and_then(|limit| limit.least).map(|(least, _)| least);
    let too_slow = least_rpm.filter(|least| seen.raised.rpm < *least).map(|least| (seen.raised.rpm, least));
    ExhaustJudged { idle_co, raised_co, raised_lambda, raised_hc, differs, too_slow }
}

fn reading(fuel: ExhaustFuel, point: &ExhaustPoint) -> lambda::Exhaust {
    lambda::Exhaust {
        fuel,
        co_percent: point.co_percent,
        co2_percent: point.co2_percent,
        o2_percent: point.o2_percent,
        hc_ppm_hexane: point.hc_ppm,
        nox_ppm: None,
    }
}

fn judged(
    value: f64,
    expanded_uncertainty: f64,
    limit: Option<&Limit>,
    maker_least: Option<f64>,
    maker_most: Option<f64>,
) -> ValueJudged {
    let line = limit.and_then(Limit::line).cloned();
    let of_lines = |side: &Option<(f64, _)>| side.as_ref().map(|(number, _)| *number);
    let by_maker = maker_least.is_some() || maker_most.is_some();
    let (least, most) = match limit {
        _ if by_maker => (maker_least, maker_most),
        Some(limit) => (of_lines(&limit.least), of_lines(&limit.most)),
        None => (None, None),
    };
    let rule = line.as_ref().map_or(DecisionRule::Simple, |line| line.decision);
    let sum_rule = match rule {
        DecisionRule::Simple => Rule::Simple,
        DecisionRule::Guarded => Rule::Guarded,
    };
    let is_limited = least.is_some() || most.is_some();
    let (low, high) = (least.unwrap_or(f64::MIN), most.unwrap_or(f64::MAX));
    let verdict = decision::within(value, expanded_uncertainty, low, high, sum_rule).unwrap_or(Verdict::CannotTell);
    let is_ground = by_maker || limit.is_none_or(Limit::is_ground_for_a_pass);
    let is_unconfirmed = is_limited && verdict == Verdict::Pass && !is_ground;
    let verdict = if is_unconfirmed { Verdict::CannotTell } else { verdict };
    ValueJudged {
        value,
        expanded_uncertainty,
        least,
        most,
        limit: match line {
            _ if by_maker => LimitFrom::Maker,
            Some(line) => LimitFrom::Line(Box::new(line)),
            None => LimitFrom::Nothing,
        },
        is_unconfirmed,
        rule,
        verdict: is_limited.then_some(verdict),
    }
}
