-- The code on a vehicle's label: it opens the public page with the next dates and the shop. One for each vehicle and
-- branch, for as long as the label may hang there.
create table vehicle_labels (
    code text primary key,
    branch_id text not null references branches (id),
    vehicle_id text not null references vehicles (id),
    made_at text not null,
    made_by text not null references people (id),
    unique (branch_id, vehicle_id)
) strict;
