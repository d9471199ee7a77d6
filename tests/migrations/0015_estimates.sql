-- One invented row for each table that this migration makes.
insert into estimates (id, branch_id, job_id, number, currency, total_minor, valid_until_on, note, person_id, written_at)
values ('00000000-0000-7000-8000-000000015001', '00000000-0000-7000-8000-00000000b001', '00000000-0000-7000-8000-000000001101', 1, 'EUR', 148000, '2026-06-03', 'Tax included', '00000000-0000-7000-8000-00000000a001', '2026-05-03 08:30:00.0Z');
insert into estimate_lines (estimate_id, position, what, kind, quantity_thousandths, unit_price_minor, amount_minor)
values ('00000000-0000-7000-8000-000000015001', 0, 'Container, 54 L', 'part', 1000, 148000, 148000);
insert into estimate_agreements (estimate_id, amount_minor, how, agreed_by, agreed_at, person_id, noted_at)
values ('00000000-0000-7000-8000-000000015001', 148000, 'phone', 'Ana Marrow', '2026-05-03 09:00:00.0Z', '00000000-0000-7000-8000-00000000a001', '2026-05-03 09:05:00.0Z');
insert into deposits (id, branch_id, job_id, currency, amount_minor, paid_how, received_on, received_by, person_id, recorded_at)
values ('00000000-0000-7000-8000-000000015101', '00000000-0000-7000-8000-00000000b001', '00000000-0000-7000-8000-000000001101', 'EUR', 50000, 'cash', '2026-05-03', 'Ilse Brandt', '00000000-0000-7000-8000-00000000a001', '2026-05-03 09:10:00.0Z');
