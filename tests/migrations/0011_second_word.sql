-- An invented version of the shop's lines that two people put in force.
insert into rule_files (id, branch_id, name, text, sha256, from_on, person_id, recorded_at, second_person_id)
select '00000000-0000-7000-8000-000000003011', branch_id, name, text, sha256, '2026-05-09', person_id, recorded_at, person_id from rule_files where id = '00000000-0000-7000-8000-000000003001';
