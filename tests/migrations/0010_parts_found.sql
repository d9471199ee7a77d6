-- A cylinder that another shop fitted, with what its plate says.
insert into parts (id, branch_id, vehicle_id, fitted_in, category, maker, type_name, serial, fitted_on, entered_by, entered_at,
    origin, working_pressure_kpa, last_tested_on, end_of_life_on)
select '00000000-0000-7000-8000-000000006001', branch_id, vehicle_id, id, 'cylinder', 'Dunmere', 'type 1', 'CY-1', '2026-05-03',
    opened_by, '2026-05-03 09:00:00.0Z', 'found', 20000.0, '2024-05-31', '2040-05-31'
from jobs
limit 1;
