-- One invented row for each table that this migration makes.
insert into duties (id, branch_id, vehicle_id, job_id, line, kind, due_on, source, is_checked, made_at)
values ('00000000-0000-7000-8000-000000004001', '00000000-0000-7000-8000-00000000b001', '00000000-0000-7000-8000-00000000c101', '00000000-0000-7000-8000-000000001101', 'first-check', 'first-check', '2026-07-03', 'shop', 1, '2026-05-03 17:00:00.0Z');
insert into duty_calls (id, duty_id, outcome, person_id, at)
values ('00000000-0000-7000-8000-000000004101', '00000000-0000-7000-8000-000000004001', 'no-answer', '00000000-0000-7000-8000-00000000a001', '2026-07-20 10:00:00.0Z');
insert into messages (id, branch_id, kind, customer_id, vehicle_id, recipient, subject, body_text, not_before, made_at)
values ('00000000-0000-7000-8000-000000004201', '00000000-0000-7000-8000-00000000b001', 'reminder', '00000000-0000-7000-8000-00000000c001', '00000000-0000-7000-8000-00000000c101', 'ana@example.org', 'First check', 'It is due.', '2026-06-03 08:00:00.0Z', '2026-06-03 08:00:00.0Z');
insert into message_duties (message_id, duty_id, lead_days, recipient)
values ('00000000-0000-7000-8000-000000004201', '00000000-0000-7000-8000-000000004001', 30, 'ana@example.org');
insert into capability_links (token_sha256, branch_id, customer_id, vehicle_id, made_at, expires_on)
values ('e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855', '00000000-0000-7000-8000-00000000b001', '00000000-0000-7000-8000-00000000c001', '00000000-0000-7000-8000-00000000c101', '2026-06-03 08:00:00.0Z', '2026-09-01');
