//! A log thinned out to a picture's width while it goes by.
//!
//! Slices begin half a second wide; when there are too many, neighbours are joined and the width doubles.

use super::{Burned, SetAside, Strip, StripPoint};

/// Slices of a log at most.
const MOST: usize = 480;
/// Width of a slice at first, s.
const FIRST_S: f64 = 0.5;

/// Sums of one slice.
#[derive(Debug, Clone, Copy, Default)]
struct Slice {
    number: u32,
    in_range: u32,
    rpm: f64,
    load: f64,
    petrol_ms: f64,
    rows: u32,
    burned: [u32; 2],
    set_aside: [u32; SetAside::ALL.len()],
}

impl Slice {
    fn join(&mut self, other: &Self) {
        self.in_range += other.in_range;
        self.rpm += other.rpm;
        self.load += other.load;
        self.petrol_ms += other.petrol_ms;
        self.rows += other.rows;
        self.burned = [0, 1].map(|at| self.burned[at] + other.burned[at]);
        for (mine, more) in self.set_aside.iter_mut().zip(other.set_aside) {
            *mine += more;
        }
    }
}

/// What is shown of a row: engine speed, load, injection time.
pub(super) type Shown = (f64, f64, f64);

/// One log on its way.
pub(super) struct Slices {
    stated: Option<Burned>,
    width_s: f64,
    list: Vec<Slice>,
}

impl Slices {
    pub fn new(stated: Option<Burned>) -> Self {
        Self { stated, width_s: FIRST_S, list: Vec::new() }
    }

    pub fn push(&mut self, elapsed_s: f64, shown: Option<Shown>, burned: Option<Burned>, why: Option<SetAside>) {
        let slice = self.slice(elapsed_s);
        slice.rows += 1;
        if let Some((rpm, load, petrol_ms)) = shown {
            slice.in_range += 1;
            slice.rpm += rpm;
            slice.load += load;
            slice.petrol_ms += petrol_ms;
        }
        if let Some(burned) = burned {
            slice.burned[super::cells::side(burned)] += 1;
        }
        if let Some(why) = why {
            slice.set_aside[why as usize] += 1;
        }
    }

    fn slice(&mut self, elapsed_s: f64) -> &mut Slice {
        while elapsed_s / self.width_s >= MOST as f64 {
            self.halve();
        }
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "below the bound, from 0")]
        let number = (elapsed_s / self.width_s) as u32;
        if self.list.last().is_none_or(|last| last.number < number) {
            self.list.push(Slice { number, ..Slice::default() });
        }
        let at = self.list.len() - 1;
        &mut self.list[at]
    }

    fn halve(&mut self) {
        self.width_s *= 2.0;
        let mut halved: Vec<Slice> = Vec::with_capacity(MOST);
        for mut slice in self.list.drain(..) {
            slice.number /= 2;
            match halved.last_mut().filter(|last| last.number == slice.number) {
                Some(last) => last.join(&slice),
                None => halved.push(slice),
            }
        }
        self.list = halved;
    }

    pub fn finish(self) -> Strip {
        let width_s = self.width_s;
        let points = self.list.iter().filter(|slice| slice.in_range > 0).map(|slice| point(slice, width_s)).collect();
        Strip { burned: self.stated, points }
    }
}

fn point(slice: &Slice, width_s: f64) -> StripPoint {
    let n = f64::from(slice.in_range);
    let [petrol, gas] = slice.burned;
    let burned = (petrol + gas > 0).then_some(if gas > petrol { Burned::Gas } else { Burned::Petrol });
    let most = SetAside::ALL.into_iter().max_by_key(|why| slice.set_aside[*why as usize]);
    let is_most_set_aside = 2 * slice.set_aside.iter().sum::<u32>() > slice.rows;
    StripPoint {
        time_s: f64::from(slice.number) * width_s,
        rpm: slice.rpm / n,
        load: slice.load / n,
        petrol_ms: slice.petrol_ms / n,
        burned,
        set_aside: most.filter(|_| is_most_set_aside),
    }
}
