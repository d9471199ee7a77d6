//! Proofs of the calibration: warm, closed loop, clean, trims alike on both fuels.

use super::assess::Ground;
use super::line::Quantity;
use super::proof::{Place, Said, State, Why};
use crate::model::evidence::{EngineCalibration, Entry, Evidence};

fn calibration<'a>(ground: &'a Ground<'_>) -> Option<(&'a Entry, &'a EngineCalibration)> {
    ground.file.shown("engine-calibration", "", |body| match body {
        Evidence::EngineCalibration(one) => Some(one),
        _ => None,
    })
}

fn place(field: &'static str) -> Place {
    Place::Evidence("engine-calibration", "", field)
}

pub fn warm(ground: &Ground<'_>) -> Said {
    let Some((entry, one)) = calibration(ground) else {
        return Said::missing(place("coolant_c"));
    };
    if let Some(distrusted) = ground.distrust(entry) {
        return distrusted;
    }
    let file = ground.file;
    let on = (ground.day_of)(entry.measured_at);
    let asked = [
        (Quantity::CoolantC, one.coolant_c, "coolant_c", "engine-cold"),
        (Quantity::VaporiserC, one.vaporiser_c, "vaporiser_c", "vaporiser-cold"),
    ];
    for (quantity, got, field, key) in asked {
        let limit = ground.book.limit(quantity, &file.job, &file.vehicle, None, on);
        if let Some((least, _)) = limit.and_then(|limit| limit.least)
            && got < least
        {
            return Said::stops(
                Why::plain(key).quantity("got", got, 0, "°C").quantity("least", least, 0, "°C"),
                place(field),
            )
            .on(entry);
        }
    }
    Said::met(Why::plain("calibrated-warm").quantity("vaporiser", one.vaporiser_c, 0, "°C"), place("coolant_c"))
        .on(entry)
}

pub fn clean(ground: &Ground<'_>) -> Said {
    let Some((entry, one)) = calibration(ground) else {
        return Said::missing(place("was_closed_loop"));
    };
    if !one.was_closed_loop && ground.file.vehicle.is_closed_loop {
        return Said::stops(Why::plain("open-loop"), place("was_closed_loop")).on(entry);
    }
    if !one.fault_codes.is_empty() {
        return Said::stops(Why::plain("fault-codes").text("codes", &one.fault_codes), place("fault_codes")).on(entry);
    }
    Said::met(Why::plain("calibrated-clean"), place("was_closed_loop")).on(entry)
}

pub fn nozzle_adequate(ground: &Ground<'_>) -> Said {
    let Some((entry, one)) = calibration(ground) else {
        return Said::missing(place("is_nozzle_adequate"));
    };
    if !one.is_nozzle_adequate {
        return Said::stops(Why::plain("nozzle-must-change"), Place::Evidence("nozzle-sizing", "", "rated_power_kw"))
            .on(entry);
    }
    let fitted = ground.file.shown("cylinder-table", "", |body| match body {
        Evidence::CylinderTable(table) => Some(table),
        _ => None,
    });
    let sized = ground.file.shown("nozzle-sizing", "", |body| match body {
        Evidence::NozzleSizing(sheet) => Some(sheet),
        _ => None,
    });
    if let (Some((_, table)), Some((_, sheet))) = (fitted, sized)
        && let Some(chosen_mm) = sheet.chosen_mm
        && let Some(other) = table.rows.iter().find(|row| (row.nozzle_mm - chosen_mm).abs() > 0.005)
    {
        // What was reckoned and what was screwed in must be the same thing, or one of the two be said anew.
        let why = Why::plain("nozzle-differs")
            .quantity("fitted", other.nozzle_mm, 2, "mm")
            .quantity("chosen", chosen_mm, 2, "mm");
        return Said::stops(why, Place::Evidence("cylinder-table", "", "rows")).on(entry);
    }
    // What was driven says more than what was ticked.
    if let Some(against) = super::road::against_nozzle(ground) {
        return against;
    }
    Said::met(Why::plain("nozzle-adequate"), place("is_nozzle_adequate")).on(entry)
}

pub fn trims(ground: &Ground<'_>) -> Said {
    let place = Place::Evidence("trims", "", "points");
    let shown = ground.file.shown("trims", "", |body| match body {
        Evidence::Trims(one) => Some(one),
        _ => None,
    });
    let Some((entry, trims)) = shown else {
        return Said::missing(place);
    };
    let Some(worst) = trims.worst_percent() else {
        return Said::missing(place);
    };
    if let Some(distrusted) = ground.distrust(entry) {
        return distrusted;
    }
    let (file, on) = (ground.file, (ground.day_of)(entry.measured_at));
    let limit = ground.book.limit(Quantity::TrimDifferencePercent, &file.job, &file.vehicle, None, on);
    let beyond = limit.is_some_and(|limit| {
        limit.most.is_some_and(|(most, _)| worst > most) || limit.least.is_some_and(|(least, _)| worst < least)
    });
    let why = |key| Why::plain(key).number("worst", worst, 1);
    if beyond {
        return Said::stops(why("trims-apart"), place).on(entry);
    }
    Said::met(why("trims-alike"), place).on(entry)
}

pub fn after_drive(ground: &Ground<'_>) -> Said {
    let place = |field| Place::Evidence("after-drive", "", field);
    let shown = ground.file.shown("after-drive", "", |body| match body {
        Evidence::AfterDrive(one) => Some(one),
        _ => None,
    });
    let Some((entry, drive)) = shown else {
        return Said::missing(place("petrol_km"));
    };
    let (file, on) = (ground.file, (ground.day_of)(entry.measured_at));
    let limit = ground.book.limit(Quantity::AfterDriveKm, &file.job, &file.vehicle, None, on);
    if let Some((least, _)) = limit.and_then(|limit| limit.least)
        && drive.petrol_km.min(drive.gas_km) < least
    {
        let why = Why::plain("drive-short").number("got", drive.petrol_km.min(drive.gas_km), 0);
        return Said::new(State::Undecided, why.number("least", least, 0), place("petrol_km")).on(entry);
    }
    if !drive.fault_codes.is_empty() {
        let why = Why::plain("fault-codes").text("codes", &drive.fault_codes);
        return Said::stops(why, place("fault_codes")).on(entry);
    }
    let why = if drive.not_ready.is_empty() {
        Why::plain("ready-after-drive")
    } else {
        Why::plain("clean-after-drive").text("not_ready", &drive.not_ready)
    };
    Said::met(why, place("fault_codes")).on(entry)
}
