-- One invented row for each table that this migration makes.
insert into branches (id, name, country, time_zone, currency, language, paper_size)
values ('00000000-0000-7000-8000-00000000b001', 'Saltmarsh Autogas', 'NM', 'Europe/Lisbon', 'EUR', 'en', 'a4');
insert into people (id, name, initials, sign_in_name)
values ('00000000-0000-7000-8000-00000000a001', 'Ilse Harrow', 'IH', 'ilse');
insert into person_roles (person_id, branch_id, role, began_at)
values ('00000000-0000-7000-8000-00000000a001', '00000000-0000-7000-8000-00000000b001', 'manager', '2026-05-01 08:00:00.0Z');
insert into signatory_grants (person_id, branch_id, authorisation_number, expires_on, began_at)
values ('00000000-0000-7000-8000-00000000a001', '00000000-0000-7000-8000-00000000b001', 'NM-7', '2027-12-31', '2026-05-01 08:00:00.0Z');
insert into devices (id, branch_id, name, token_hash, enrolled_by, enrolled_at)
values ('00000000-0000-7000-8000-00000000d001', '00000000-0000-7000-8000-00000000b001', 'Tablet by the lift', zeroblob(32), '00000000-0000-7000-8000-00000000a001', '2026-05-01 08:00:00.0Z');
insert into sessions (id, token_hash, person_id, branch_id, device_id, began_at, seen_at, ends_at)
values ('00000000-0000-7000-8000-00000000e001', zeroblob(32), '00000000-0000-7000-8000-00000000a001', '00000000-0000-7000-8000-00000000b001', '00000000-0000-7000-8000-00000000d001', '2026-05-01 08:00:00.0Z', '2026-05-01 08:00:00.0Z', '2026-05-01 20:00:00.0Z');
insert into sign_in_failures (subject, failures, last_at, free_at)
values ('name:ilse', 2, '2026-05-01 08:00:00.0Z', '2026-05-01 08:00:00.0Z');
insert into set_up_codes (code_hash, made_at, expires_at, used_at)
values (zeroblob(32), '2026-05-01 08:00:00.0Z', '2026-05-01 09:00:00.0Z', '2026-05-01 08:10:00.0Z');
insert into audit (sequence, at, branch_id, person_id, actor, deed, subject_kind, subject_id, body, previous_hash, hash)
values (1, '2026-05-01 08:10:00.0Z', '00000000-0000-7000-8000-00000000b001', '00000000-0000-7000-8000-00000000a001', 'Ilse Harrow', 'signed-in', 'person', '00000000-0000-7000-8000-00000000a001', '{}', zeroblob(32), zeroblob(32));
insert into sends (actor, key, deed, answer, at)
values ('00000000-0000-7000-8000-00000000a001', '00000000-0000-7000-8000-00000000f001', 'signed-in', 'null', '2026-05-01 08:10:00.0Z');
insert into settings (branch_id, name, value, changed_at, changed_by)
values ('00000000-0000-7000-8000-00000000b001', 'four-eyes', 'yes', '2026-05-01 08:10:00.0Z', '00000000-0000-7000-8000-00000000a001');
