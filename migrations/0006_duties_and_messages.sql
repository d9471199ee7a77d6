-- What falls due and every message the shop owes somebody. The primary key of `message_duties` is what keeps a
-- reminder from going out twice for one duty and lead time, whatever crashes in between.
create table duties (
    id text primary key,
    branch_id text not null references branches (id),
    vehicle_id text not null references vehicles (id),
    job_id text references jobs (id),
    part_id text references parts (id),
    line text not null,
    kind text not null,
    due_on text not null,
    due_km integer,
    decided_by text not null default 'date' check (decided_by in ('date', 'distance')),
    source text not null,
    is_checked integer not null check (is_checked in (0, 1)),
    made_at text not null,
    closed_at text,
    closed_how text check (closed_how in ('job', 'elsewhere', 'scrapped', 'exported', 'stolen', 'gas-removed',
        'replaced')),
    closed_note text not null default '',
    closed_by text references people (id),
    closed_job_id text references jobs (id)
) strict;
create index duties_by_date on duties (branch_id, closed_at, due_on);
create index duties_by_vehicle on duties (vehicle_id, due_on);
create unique index duties_once on duties (vehicle_id, line, due_on, coalesce(part_id, ''));

-- What the desk tried after the reminders; a duty stays on the call list until it is closed.
create table duty_calls (
    id text primary key,
    duty_id text not null references duties (id),
    outcome text not null check (outcome in ('will-come', 'reached', 'no-answer', 'left-word', 'wrong-number',
        'letter-returned', 'refuses')),
    note text not null default '',
    person_id text not null references people (id),
    at text not null
) strict;
create index duty_calls_by_duty on duty_calls (duty_id, at);

create table messages (
    id text primary key,
    branch_id text not null references branches (id),
    kind text not null,
    customer_id text references customers (id),
    vehicle_id text references vehicles (id),
    recipient text not null,
    language text not null default 'en',
    subject text not null,
    body_text text not null,
    body_html text not null default '',
    calendar text not null default '',
    unsubscribe_sha256 text not null default '',
    state text not null default 'waiting' check (state in ('waiting', 'sending', 'sent', 'unknown', 'failed',
        'held', 'letter', 'dropped')),
    -- Why it is held: a run far above the usual, or somebody's hand.
    held_because text not null default 'no' check (held_because in ('no', 'many', 'hand')),
    attempts integer not null default 0,
    not_before text not null,
    leased_until text,
    last_error text not null default '',
    -- The other side refused the address for good; two of these mark it as bad.
    is_refused integer not null default 0 check (is_refused in (0, 1)),
    made_at text not null,
    sent_at text
) strict;
create index messages_by_state on messages (branch_id, state, not_before);
create index messages_by_customer on messages (customer_id, made_at);

create table message_duties (
    message_id text not null references messages (id),
    duty_id text not null references duties (id),
    lead_days integer not null,
    recipient text not null,
    primary key (duty_id, lead_days, recipient)
) strict;
-- `recipient` is the customer, not the address: a corrected address must not bring the same reminder again.
create index message_duties_by_message on message_duties (message_id);

create table capability_links (
    token_sha256 text primary key,
    branch_id text not null references branches (id),
    customer_id text not null references customers (id),
    vehicle_id text not null references vehicles (id),
    made_at text not null,
    expires_on text not null,
    ended_at text
) strict;
create index capability_links_by_customer on capability_links (customer_id, vehicle_id);
