//! A line judged: drop and velocity against what is usual, and the least bore that would do.

use serde::{Deserialize, Serialize};

use super::{BASIS, Carries, Drop, Hose, hose};
use crate::calc::{Error, NoRoot, roots};

/// Mean drop of a gas hose that is usually not passed, kPa (common practice).
pub const MOST_DROP_KPA: f64 = 2.0;
/// Mean velocity in a gas hose up to which nobody asks, m/s (common practice, 30 to 40).
pub const USUAL_VELOCITY_M_S: f64 = 30.0;
/// Mean velocity in a gas hose that is usually not passed, m/s (common practice, 30 to 40).
pub const MOST_VELOCITY_M_S: f64 = 40.0;
/// Velocity heads of fittings taken when none are given (common practice, 1 to 2).
pub const USUAL_HEADS: f64 = 1.5;

/// Which line it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Line {
    /// The one hose from vaporiser or regulator to the rail.
    RailSupply,
    /// From the injectors to one engine cylinder.
    Branch,
    /// From the container to the vaporiser; LPG only.
    Liquid,
}

/// A line asked for.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LineAsked {
    /// Which.
    pub line: Line,
    /// Bore, length, flow and what is in it.
    pub hose: Hose,
    /// Share of the time in which an injector is open at rated power; flow in a branch peaks by as much. None when not
    /// known.
    pub duty: Option<f64>,
}

/// How a line stands to what is usual.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Fit {
    /// Drop and velocity within.
    WideEnough,
    /// Between the two usual velocities, or the drop too near its limit for its uncertainty.
    Near,
    /// Drop or velocity beyond.
    TooNarrow,
    /// No usual limit is known for a liquid line; drop and velocity stand as they are.
    NotJudged,
}

/// A line.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct LineFound {
    /// Drop, velocity and what lies between.
    pub drop: Drop,
    /// Velocity while an injector is open, m/s; branches with a known duty only.
    pub peak_velocity_m_s: Option<f64>,
    /// How it stands.
    pub fit: Fit,
    /// Least bore at which it would be wide enough, mm; gas only; none when no bore up to 100 mm does.
    pub least_bore_mm: Option<f64>,
}

/// Reckons and judges a line.
///
/// Wide enough while the drop with twice its uncertainty stays within 2 kPa and the velocity within 30 m/s; too narrow
/// when the drop less that is beyond, or the velocity above 40 m/s.
///
/// # Errors
/// As [`hose`].
///
/// # Source
/// Those of [`hose`]; the limits are common practice.
pub fn line(asked: &LineAsked) -> Result<LineFound, Error> {
    let drop = hose(&asked.hose)?;
    let is_gas = asked.hose.carries == Carries::Gas;
    let duty = asked.duty.filter(|duty| *duty > 0.0 && *duty <= 1.0);
    Ok(LineFound {
        drop,
        peak_velocity_m_s: duty.filter(|_| asked.line == Line::Branch).map(|duty| drop.velocity_m_s / duty),
        fit: if is_gas { fit(&drop) } else { Fit::NotJudged },
        least_bore_mm: if is_gas { least_bore_mm(&asked.hose) } else { None },
    })
}

fn fit(drop: &Drop) -> Fit {
    let guard = 2.0 * BASIS.relative_uncertainty.unwrap_or(0.0);
    let (kpa, velocity) = (drop.drop_kpa, drop.velocity_m_s);
    match () {
        () if kpa * (1.0 - guard) > MOST_DROP_KPA || velocity > MOST_VELOCITY_M_S => Fit::TooNarrow,
        () if kpa * (1.0 + guard) <= MOST_DROP_KPA && velocity <= USUAL_VELOCITY_M_S => Fit::WideEnough,
        () => Fit::Near,
    }
}

/// Drop and velocity both fall as the bore grows, so what is missing crosses zero once.
fn least_bore_mm(asked: &Hose) -> Option<f64> {
    let guard = 1.0 + 2.0 * BASIS.relative_uncertainty.unwrap_or(0.0);
    let none = Error::NoRoot(NoRoot { wanted: "bore_mm" });
    let missing = |bore_mm: f64| match hose(&Hose { bore_mm, ..*asked }) {
        Ok(drop) => {
            let by_drop = drop.drop_kpa * guard / MOST_DROP_KPA;
            Ok(by_drop.max(drop.velocity_m_s / USUAL_VELOCITY_M_S) - 1.0)
        }
        // So narrow that constant density no longer holds: far too narrow.
        Err(Error::Outside(outside)) if outside.quantity == "flow_g_s" => Ok(1e3),
        Err(other) => Err(other),
    };
    roots::try_bisect(1.0, 100.0, 1e-3, missing, none).ok()
}
