//! The sums, held against published values and independent references.
#![expect(clippy::unwrap_used, reason = "functions beside the tests may stop them; the lint's exception misses those")]

mod approval_mark;
mod calculator;
mod cases;
mod composition;
mod container;
mod contract;
mod contract_ranges;
mod contract_refuses;
mod cylinder;
mod decision;
mod due;
mod economy;
mod fuel;
mod gas;
mod gas_side;
mod heat;
mod hostile;
mod lambda;
mod leak;
mod leak_plan;
mod leak_units;
mod liquid;
mod logs;
mod logs_hostile;
mod nozzle;
mod properties;
mod reference;
mod road;
mod road_by_hand;
mod road_generator;
mod road_written;
mod robust;
mod uncertainty;
mod vin;
mod worked;
