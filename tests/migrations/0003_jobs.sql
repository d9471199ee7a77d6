-- One invented row for each table that this migration makes.
insert into bays (id, branch_id, name)
values ('00000000-0000-7000-8000-000000001001', '00000000-0000-7000-8000-00000000b001', 'Bay 1');
insert into jobs (id, branch_id, number, kind, fuel, system_kind, vehicle_id, keeper_id, bay_id, opened_at, opened_by)
values ('00000000-0000-7000-8000-000000001101', '00000000-0000-7000-8000-00000000b001', 'J-2026-0001', 'conversion', 'lpg', 'vapour-injection', '00000000-0000-7000-8000-00000000c101', '00000000-0000-7000-8000-00000000c001', '00000000-0000-7000-8000-000000001001', '2026-05-03 08:00:00.0Z', '00000000-0000-7000-8000-00000000a001');
insert into bookings (id, branch_id, bay_id, starts_at, ends_at, name, phone, job_kind, state, job_id, made_by, made_at)
values ('00000000-0000-7000-8000-000000001201', '00000000-0000-7000-8000-00000000b001', '00000000-0000-7000-8000-000000001001', '2026-05-03 08:00:00.0Z', '2026-05-03 16:00:00.0Z', 'Ana Marrow', '0555 0142', 'conversion', 'arrived', '00000000-0000-7000-8000-000000001101', '00000000-0000-7000-8000-00000000a001', '2026-05-02 08:00:00.0Z');
insert into number_series (branch_id, series, next)
values ('00000000-0000-7000-8000-00000000b001', 'job', 2);
insert into holds (id, job_id, reason, began_at, began_by, ended_at, ended_by)
values ('00000000-0000-7000-8000-000000001301', '00000000-0000-7000-8000-000000001101', 'A part is missing', '2026-05-03 09:00:00.0Z', '00000000-0000-7000-8000-00000000a001', '2026-05-03 10:00:00.0Z', '00000000-0000-7000-8000-00000000a001');
insert into attachments (id, branch_id, job_id, slot, sha256, media_type, name, bytes, recorded_at, person_id)
values ('00000000-0000-7000-8000-000000001401', '00000000-0000-7000-8000-00000000b001', '00000000-0000-7000-8000-000000001101', 'odometer', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855', 'image/png', 'odometer.png', 10, '2026-05-03 08:10:00.0Z', '00000000-0000-7000-8000-00000000a001');
insert into evidence (id, branch_id, job_id, kind, body, measured_at, recorded_at, person_id)
values ('00000000-0000-7000-8000-000000001501', '00000000-0000-7000-8000-00000000b001', '00000000-0000-7000-8000-000000001101', 'level-sensing', '{"how":"sender","is_routine_explained":false}', '2026-05-03 08:10:00.0Z', '2026-05-03 08:10:00.0Z', '00000000-0000-7000-8000-00000000a001');
insert into evidence_attachments (evidence_id, attachment_id)
values ('00000000-0000-7000-8000-000000001501', '00000000-0000-7000-8000-000000001401');
insert into waivers (id, job_id, proof, kind, reason, person_id, at)
values ('00000000-0000-7000-8000-000000001601', '00000000-0000-7000-8000-000000001101', 'odometer', 'waived', 'The instrument cluster is away for repair', '00000000-0000-7000-8000-00000000a001', '2026-05-03 08:20:00.0Z');
