-- One invented row for each table that this migration makes.
insert into vehicle_labels (code, branch_id, vehicle_id, made_at, made_by)
select '4M7T-2K9Q-XW3H-8RDC', branch_id, vehicle_id, '2026-05-03 14:00:00.0Z', '00000000-0000-7000-8000-00000000a001'
from jobs limit 1;
