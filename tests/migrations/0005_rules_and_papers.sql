-- One invented row for each table that this migration makes.
insert into rule_files (id, branch_id, name, text, sha256, from_on, person_id, recorded_at)
values ('00000000-0000-7000-8000-000000003001', '00000000-0000-7000-8000-00000000b001', 'shop', 'name = "shop"', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855', '2026-05-01', '00000000-0000-7000-8000-00000000a001', '2026-05-01 08:00:00.0Z');
insert into signing_keys (id, public_key, in_force_from)
values ('k1', 'AAAA', '2026-05-01 08:00:00.0Z');
insert into papers (id, branch_id, series, number, kind, job_id, vehicle_id, content, personal, signature, key_id, code, pdf_sha256, issued_by, issued_at)
values ('00000000-0000-7000-8000-000000003101', '00000000-0000-7000-8000-00000000b001', 'conversion', 'C-2026-0001', 'conversion', '00000000-0000-7000-8000-000000001101', '00000000-0000-7000-8000-00000000c101', x'7b7d', '{}', zeroblob(64), 'k1', '0000-0000-0000-0001', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855', '00000000-0000-7000-8000-00000000a001', '2026-05-03 16:00:00.0Z');
insert into paper_events (id, paper_id, kind, reason, person_id, at)
values ('00000000-0000-7000-8000-000000003201', '00000000-0000-7000-8000-000000003101', 'withdrawn', 'Wrong vehicle', '00000000-0000-7000-8000-00000000a001', '2026-05-03 17:00:00.0Z');
