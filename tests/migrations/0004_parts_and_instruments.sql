-- One invented row for each table that this migration makes.
insert into parts (id, branch_id, vehicle_id, fitted_in, category, maker, type_name, serial, fitted_on, entered_by, entered_at)
values ('00000000-0000-7000-8000-000000002001', '00000000-0000-7000-8000-00000000b001', '00000000-0000-7000-8000-00000000c101', '00000000-0000-7000-8000-000000001101', 'container', 'Tarnwell', 'T-60', '4711', '2026-05-03', '00000000-0000-7000-8000-00000000a001', '2026-05-03 11:00:00.0Z');
insert into instruments (id, branch_id, code, kind)
values ('00000000-0000-7000-8000-000000002101', '00000000-0000-7000-8000-00000000b001', 'G-03', 'pressure-gauge');
insert into instrument_certificates (id, instrument_id, number, laboratory, calibrated_on, due_on, person_id, recorded_at)
values ('00000000-0000-7000-8000-000000002201', '00000000-0000-7000-8000-000000002101', 'K-1', 'Harbour Laboratory', '2026-01-10', '2027-01-10', '00000000-0000-7000-8000-00000000a001', '2026-05-01 08:00:00.0Z');
insert into instrument_checks (id, instrument_id, checked_at, has_passed, person_id, recorded_at)
values ('00000000-0000-7000-8000-000000002301', '00000000-0000-7000-8000-000000002101', '2026-05-03 07:50:00.0Z', 1, '00000000-0000-7000-8000-00000000a001', '2026-05-03 07:50:00.0Z');
insert into evidence_instruments (evidence_id, instrument_id)
values ('00000000-0000-7000-8000-000000001501', '00000000-0000-7000-8000-000000002101');
insert into findings (id, branch_id, job_id, source, text, opened_at, opened_by)
values ('00000000-0000-7000-8000-000000002401', '00000000-0000-7000-8000-00000000b001', '00000000-0000-7000-8000-000000001101', 'after-drive', 'P0171', '2026-05-03 15:00:00.0Z', '00000000-0000-7000-8000-00000000a001');
