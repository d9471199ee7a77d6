-- One invented row for each table that this migration makes.
insert into recalls (id, branch_id, recalled_by, document, dated_on, category, batch, remedy, recorded_by, recorded_at)
values ('00000000-0000-7000-8000-000000009001', '00000000-0000-7000-8000-00000000b001', 'Tarnwell', 'TW-7', '2026-05-01', 'container', 'B-7', 'Drive on petrol', '00000000-0000-7000-8000-00000000a001', '2026-05-04 08:00:00.0Z');
insert into recall_letters (recall_id, vehicle_id, message_id)
select '00000000-0000-7000-8000-000000009001', '00000000-0000-7000-8000-00000000c101', id from messages limit 1;
insert into doubts (finding_id, cause, found_at, recall_id)
values ('00000000-0000-7000-8000-000000002401', 'recall', '2026-05-04 08:00:00.0Z', '00000000-0000-7000-8000-000000009001');
insert into as_found_errors (finding_id, quantity, reads_high_by, how_known, person_id, entered_at)
values ('00000000-0000-7000-8000-000000002401', 'pressure-kpa', 0.5, 'Certificate K-2', '00000000-0000-7000-8000-00000000a001', '2026-05-04 08:00:00.0Z');
insert into paper_decisions (id, finding_id, paper_id, decision, reason, content, signature, key_id, person_id, at)
values ('00000000-0000-7000-8000-000000009101', '00000000-0000-7000-8000-000000002401', '00000000-0000-7000-8000-000000003101', 'stands', 'Looked at', x'7b7d', zeroblob(64), 'k1', '00000000-0000-7000-8000-00000000a001', '2026-05-04 09:00:00.0Z');
