//! The Peng-Robinson equation of state: fugacities for phase equilibria, and the gas derivatives from which the
//! propene ratio is made. SI inside; k_ij = 0.
//!
//! Source: D.-Y. Peng, D. B. Robinson, Ind. Eng. Chem. Fundam. 15 (1976) 59; ideal-gas heat capacities from Poling,
//! Prausnitz, O'Connell, The Properties of Gases and Liquids, 5th ed. 2001, appendix A.

use std::f64::consts::SQRT_2;

use super::{Composition, GAS_CONSTANT, NoRoot, roots};

/// Which root of the cubic.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Phase {
    /// The smallest root above the covolume.
    Liquid,
    /// The largest root.
    Gas,
}

/// Peng-Robinson of one mixture at one temperature.
#[derive(Debug, Clone)]
pub struct Cubic {
    temperature_k: f64,
    x: [f64; 9],
    /// sqrt(a_i), its first and second logarithmic derivative in T, b_i.
    pure: [Pure; 9],
    a: f64,
    b: f64,
}

#[derive(Debug, Clone, Copy, Default)]
struct Pure {
    root_a: f64,
    b: f64,
    /// a_i'/a_i
    slope: f64,
    /// a_i''/a_i - (a_i'/a_i)^2
    bend: f64,
}

/// What the gas root says.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GasRoot {
    /// Compressibility, dimensionless.
    pub z: f64,
    /// Molar heat capacity at constant pressure, J/(mol K).
    pub cp_j_mol_k: f64,
    /// Real isentropic exponent, dimensionless.
    pub kappa: f64,
}

impl Cubic {
    /// The mixture at a temperature (K, above zero).
    #[must_use]
    pub fn new(composition: &Composition, temperature_k: f64) -> Self {
        let t = temperature_k;
        let mut pure = [Pure::default(); 9];
        for component in super::substance::Component::ALL {
            let c = component.constants();
            let (tc, pc, w) = (c.critical_temperature_k, c.critical_pressure_kpa * 1e3, c.acentric_factor);
            let m = 0.374_64 + 1.542_26 * w - 0.269_92 * w * w;
            let s = 1.0 + m * (1.0 - (t / tc).sqrt());
            let a0 = 0.457_235_53 * (GAS_CONSTANT * tc).powi(2) / pc;
            let a = a0 * s * s;
            let first = -a0 * m * s / (t * tc).sqrt();
            let second = a0 * m * (1.0 + m) / (2.0 * t * (t * tc).sqrt());
            pure[component as usize] = Pure {
                root_a: a.sqrt(),
                b: 0.077_796_07 * GAS_CONSTANT * tc / pc,
                slope: first / a,
                bend: second / a - (first / a).powi(2),
            };
        }
        Self::of(*composition.mole(), t, &pure)
    }

    fn of(x: [f64; 9], temperature_k: f64, pure: &[Pure; 9]) -> Self {
        // With k_ij = 0 the double sum of sqrt(a_i a_j) is a square.
        let root: f64 = x.iter().zip(pure).map(|(x, p)| x * p.root_a).sum();
        let b = x.iter().zip(pure).map(|(x, p)| x * p.b).sum();
        Self { temperature_k, x, pure: *pure, a: root * root, b }
    }

    /// Another composition at the same temperature.
    #[must_use]
    pub fn with(&self, x: [f64; 9]) -> Self {
        Self::of(x, self.temperature_k, &self.pure)
    }

    /// Mole fractions.
    #[must_use]
    pub const fn mole(&self) -> &[f64; 9] {
        &self.x
    }

    /// Compressibility of a phase at `pressure_pa`.
    ///
    /// # Errors
    /// [`NoRoot`] when no root lies above the covolume.
    pub fn compressibility(&self, pressure_pa: f64, phase: Phase) -> Result<f64, NoRoot> {
        let rt = GAS_CONSTANT * self.temperature_k;
        let (a, b) = (self.a * pressure_pa / (rt * rt), self.b * pressure_pa / rt);
        let found = roots::cubic(b - 1.0, a - 3.0 * b * b - 2.0 * b, b * b * b + b * b - a * b);
        let mut fit = found.into_iter().filter(|z| *z > b);
        match phase {
            Phase::Liquid => fit.next(),
            Phase::Gas => fit.next_back(),
        }
        .ok_or(NoRoot { wanted: "compressibility" })
    }

    /// Natural logarithm of each component's fugacity coefficient.
    ///
    /// # Errors
    /// As [`Cubic::compressibility`].
    pub fn ln_phi(&self, pressure_pa: f64, phase: Phase) -> Result<[f64; 9], NoRoot> {
        let z = self.compressibility(pressure_pa, phase)?;
        let rt = GAS_CONSTANT * self.temperature_k;
        let (a, b) = (self.a * pressure_pa / (rt * rt), self.b * pressure_pa / rt);
        let log = ((z + (1.0 + SQRT_2) * b) / (z + (1.0 - SQRT_2) * b)).ln();
        Ok(self.pure.map(|p| {
            let ratio = p.b / self.b;
            // sum_j x_j a_ij / a = sqrt(a_i) / sqrt(a) when k_ij = 0
            let pull = 2.0 * p.root_a / self.a.sqrt() - ratio;
            ratio * (z - 1.0) - (z - b).ln() - a / (2.0 * SQRT_2 * b) * pull * log
        }))
    }

    /// Compressibility, heat capacity and isentropic exponent of the gas at `pressure_pa`.
    ///
    /// # Errors
    /// As [`Cubic::compressibility`].
    pub fn gas(&self, pressure_pa: f64) -> Result<GasRoot, NoRoot> {
        let (t, a, b) = (self.temperature_k, self.a, self.b);
        let z = self.compressibility(pressure_pa, Phase::Gas)?;
        let v = z * GAS_CONSTANT * t / pressure_pa;
        let q = v * v + 2.0 * b * v - b * b;
        let (first, second) = self.attraction_derivatives();
        let dp_dt = GAS_CONSTANT / (v - b) - first / q;
        let dp_dv = -GAS_CONSTANT * t / (v - b).powi(2) + a * (2.0 * v + 2.0 * b) / (q * q);
        let integral = ((v + (1.0 + SQRT_2) * b) / (v + (1.0 - SQRT_2) * b)).ln() / (2.0 * SQRT_2 * b);
        let cv = self.ideal_heat_capacity() - GAS_CONSTANT + t * second * integral;
        let cp = cv - t * dp_dt * dp_dt / dp_dv;
        Ok(GasRoot { z, cp_j_mol_k: cp, kappa: -(cp / cv) * dp_dv * v / pressure_pa })
    }

    /// da/dT and d2a/dT2 of the mixture.
    fn attraction_derivatives(&self) -> (f64, f64) {
        let (mut first, mut second) = (0.0, 0.0);
        for (xi, i) in self.x.iter().zip(&self.pure) {
            for (xj, j) in self.x.iter().zip(&self.pure) {
                let a_ij = xi * xj * i.root_a * j.root_a;
                let f = i.slope + j.slope;
                first += a_ij * f / 2.0;
                second += a_ij * (f * f / 4.0 + f64::midpoint(i.bend, j.bend));
            }
        }
        (first, second)
    }

    /// cp of the ideal gas, J/(mol K); polynomials fitted for 50 to 1000 K.
    fn ideal_heat_capacity(&self) -> f64 {
        let t = self.temperature_k;
        let powers = [1.0, 1e-3 * t, 1e-5 * t * t, 1e-8 * t.powi(3), 1e-11 * t.powi(4)];
        let mut sum = 0.0;
        for (component, x) in super::substance::Component::ALL.into_iter().zip(self.x) {
            let c = component.constants().heat_capacity;
            sum += x * c.iter().zip(powers).map(|(c, power)| c * power).sum::<f64>();
        }
        sum * GAS_CONSTANT
    }
}
