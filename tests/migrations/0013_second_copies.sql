-- One invented row for what this migration takes more.
insert into paper_events (id, paper_id, kind, reason, person_id, at)
values ('00000000-0000-7000-8000-000000013001', '00000000-0000-7000-8000-000000003101', 'second-copy', 'Lost in the post', '00000000-0000-7000-8000-00000000a001', '2026-05-20 08:00:00.0Z');
