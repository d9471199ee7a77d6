-- One invented row for each table that this migration makes.
insert into leak_runs (id, branch_id, job_id, section, set_up, started_at, started_by)
values ('00000000-0000-7000-8000-000000005001', '00000000-0000-7000-8000-00000000b001', '00000000-0000-7000-8000-000000001101', 'lpg-vapour', '{}', '2026-05-03 14:00:00.0Z', '00000000-0000-7000-8000-00000000a001');
insert into leak_readings (run_id, at, kpa, c, person_id)
values ('00000000-0000-7000-8000-000000005001', '2026-05-03 14:00:00.0Z', 401.3, 20.0, '00000000-0000-7000-8000-00000000a001');
