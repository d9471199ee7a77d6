-- Estimates of a job. A saved estimate is a new version and is never changed; what the customer agreed to is one version
-- with its total. Money is whole minor units of one currency (ISO 4217). A deposit is taken back by a row that names it.
create table estimates (
    id text primary key,
    branch_id text not null references branches (id),
    job_id text not null references jobs (id),
    currency text not null check (length(currency) = 3),
    total_minor integer not null check (total_minor >= 0),
    valid_until_on text,
    note text not null default '',
    person_id text not null references people (id),
    written_at text not null,
    number integer not null check (number >= 1),
    unique (job_id, number)
) strict;

create table estimate_lines (
    estimate_id text not null references estimates (id),
    position integer not null check (position >= 0),
    what text not null,
    kind text not null check (kind in ('part', 'work', 'other', 'discount')),
    quantity_thousandths integer not null check (quantity_thousandths > 0),
    unit_price_minor integer not null check (unit_price_minor >= 0),
    amount_minor integer not null check (kind = 'discount' or amount_minor >= 0),
    primary key (estimate_id, position)
) strict;

create table estimate_agreements (
    estimate_id text primary key references estimates (id),
    amount_minor integer not null check (amount_minor >= 0),
    how text not null check (how in ('in-person', 'phone', 'writing')),
    agreed_by text not null,
    agreed_at text not null,
    person_id text not null references people (id),
    noted_at text not null
) strict;

create table deposits (
    id text primary key,
    branch_id text not null references branches (id),
    job_id text not null references jobs (id),
    currency text not null check (length(currency) = 3),
    amount_minor integer not null check (amount_minor > 0),
    paid_how text not null,
    received_on text not null,
    received_by text not null,
    person_id text not null references people (id),
    recorded_at text not null,
    reason text not null default '',
    takes_back_id text unique references deposits (id),
    check ((takes_back_id is null) = (reason = ''))
) strict;
create index deposits_by_job on deposits (job_id, recorded_at);
