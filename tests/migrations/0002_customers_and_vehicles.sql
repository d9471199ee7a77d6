-- One invented row for each table that this migration makes.
insert into customers (id, branch_id, name, search, created_at)
values ('00000000-0000-7000-8000-00000000c001', '00000000-0000-7000-8000-00000000b001', 'Ana Marrow', 'ana marrow', '2026-05-02 08:00:00.0Z');
insert into vehicles (id, branch_id, plate, plate_country, make, search, created_at)
values ('00000000-0000-7000-8000-00000000c101', '00000000-0000-7000-8000-00000000b001', 'NM 47 KTR', 'NM', 'Corvane', 'nm47ktr corvane', '2026-05-02 08:00:00.0Z');
insert into vehicle_plates (id, vehicle_id, plate, plate_country, from_on)
values ('00000000-0000-7000-8000-00000000c201', '00000000-0000-7000-8000-00000000c101', 'NM 47 KTR', 'NM', '2026-05-02');
insert into vehicle_people (id, vehicle_id, customer_id, role, from_on)
values ('00000000-0000-7000-8000-00000000c301', '00000000-0000-7000-8000-00000000c101', '00000000-0000-7000-8000-00000000c001', 'keeper', '2026-05-02');
insert into odometer_readings (id, vehicle_id, read_on, km, typed, person_id, recorded_at)
values ('00000000-0000-7000-8000-00000000c401', '00000000-0000-7000-8000-00000000c101', '2026-05-02', 84210, '84 210 km', '00000000-0000-7000-8000-00000000a001', '2026-05-02 08:00:00.0Z');
insert into notes (id, branch_id, customer_id, text, person_id, written_at)
values ('00000000-0000-7000-8000-00000000c501', '00000000-0000-7000-8000-00000000b001', '00000000-0000-7000-8000-00000000c001', 'Calls back after five.', '00000000-0000-7000-8000-00000000a001', '2026-05-02 08:00:00.0Z');
