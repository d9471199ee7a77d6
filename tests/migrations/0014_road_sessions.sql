-- One invented row for each table that this migration makes.
insert into road_matches (branch_id, source_key, matched, person_id, at)
values ('00000000-0000-7000-8000-00000000b001', 'time rpm inj', '{}', '00000000-0000-7000-8000-00000000a001', '2026-05-03 15:00:00.0Z');
insert into road_sessions (id, branch_id, job_id, phase, driven_at, recorded_at, person_id)
values ('00000000-0000-7000-8000-000000014001', '00000000-0000-7000-8000-00000000b001', '00000000-0000-7000-8000-000000001101', 'before', '2026-05-03 14:30:00.0Z', '2026-05-03 15:00:00.0Z', '00000000-0000-7000-8000-00000000a001');
insert into road_logs (session_id, position, attachment_id, stated)
values ('00000000-0000-7000-8000-000000014001', 0, '00000000-0000-7000-8000-000000001401', 'petrol');
