-- A line of the shop that asks less than the sets below it needs two people: who wrote it, and who signed beside.
alter table rule_files add column second_person_id text references people (id);
