-- The bay plan, the job file and everything recorded in it. Evidence is never overwritten: a correction is a new row
-- that names the row it replaces and says why, and a row can be replaced once only, which is also what finds two
-- people saving over each other.
create table bays (
    id text primary key,
    branch_id text not null references branches (id),
    name text not null,
    ended_on text,
    unique (branch_id, name)
) strict;

create table jobs (
    id text primary key,
    branch_id text not null references branches (id),
    number text not null,
    kind text not null check (kind in ('conversion', 'inspection', 'repair', 'exchange', 'after-accident',
        'comeback', 'removal')),
    fuel text not null check (fuel in ('lpg', 'cng')),
    system_kind text not null check (system_kind in ('vapour-injection', 'liquid-injection', 'mixer')),
    vehicle_id text not null references vehicles (id),
    keeper_id text not null references customers (id),
    bay_id text references bays (id),
    comes_back_from text references jobs (id),
    is_low_pressure_only integer not null default 0 check (is_low_pressure_only in (0, 1)),
    reported_faults text not null default '',
    state text not null default 'open' check (state in ('open', 'held', 'handed-over', 'released', 'cancelled')),
    ended_reason text not null default '',
    is_gas_shut_off integer check (is_gas_shut_off in (0, 1)),
    opened_at text not null,
    opened_by text not null references people (id),
    ended_at text,
    ended_by text references people (id),
    version integer not null default 1,
    unique (branch_id, number)
) strict;
create index jobs_by_state on jobs (branch_id, state, opened_at);
create index jobs_by_vehicle on jobs (vehicle_id, opened_at);

create table bookings (
    id text primary key,
    branch_id text not null references branches (id),
    bay_id text not null references bays (id),
    starts_at text not null,
    ends_at text not null,
    name text not null,
    phone text not null,
    plate text not null default '',
    job_kind text not null,
    note text not null default '',
    state text not null default 'expected' check (state in ('expected', 'arrived', 'did-not-come', 'cancelled')),
    doubled_reason text not null default '',
    job_id text references jobs (id),
    made_by text not null references people (id),
    made_at text not null,
    version integer not null default 1,
    check (ends_at > starts_at)
) strict;
create index bookings_by_day on bookings (branch_id, starts_at);
create index bookings_by_bay on bookings (bay_id, starts_at);

create table number_series (
    branch_id text not null references branches (id),
    series text not null,
    next integer not null check (next > 0),
    primary key (branch_id, series)
) strict;

create table holds (
    id text primary key,
    job_id text not null references jobs (id),
    reason text not null,
    began_at text not null,
    began_by text not null references people (id),
    ended_at text,
    ended_by text references people (id)
) strict;
create index holds_by_job on holds (job_id, began_at);
create unique index holds_one_open on holds (job_id) where ended_at is null;

create table attachments (
    id text primary key,
    branch_id text not null references branches (id),
    job_id text references jobs (id),
    vehicle_id text references vehicles (id),
    slot text not null,
    sha256 text not null,
    media_type text not null,
    name text not null,
    bytes integer not null check (bytes > 0),
    width integer,
    height integer,
    captured_at text,
    recorded_at text not null,
    person_id text not null references people (id)
) strict;
create index attachments_by_job on attachments (job_id, slot);
create index attachments_by_sha256 on attachments (sha256);

create table evidence (
    id text primary key,
    branch_id text not null references branches (id),
    job_id text not null references jobs (id),
    kind text not null,
    subject text not null default '',
    body text not null,
    measured_at text not null,
    recorded_at text not null,
    person_id text not null references people (id),
    replaces_id text references evidence (id),
    replaces_reason text not null default '',
    check (replaces_id is null or replaces_reason <> '')
) strict;
create index evidence_by_job on evidence (job_id, kind, subject, recorded_at);
-- One first entry for each thing shown, and one successor for each entry: what makes a stale save visible.
create unique index evidence_first on evidence (job_id, kind, subject) where replaces_id is null;
create unique index evidence_successor on evidence (replaces_id) where replaces_id is not null;
create trigger evidence_is_kept before update on evidence
begin select raise(abort, 'evidence is never overwritten'); end;
create trigger evidence_is_never_deleted before delete on evidence
begin select raise(abort, 'evidence is never deleted'); end;

create table evidence_attachments (
    evidence_id text not null references evidence (id),
    attachment_id text not null references attachments (id),
    primary key (evidence_id, attachment_id)
) strict;

create table waivers (
    id text primary key,
    job_id text not null references jobs (id),
    proof text not null,
    kind text not null check (kind in ('waived', 'not-applicable')),
    reason text not null check (length(reason) > 0),
    person_id text not null references people (id),
    at text not null,
    ended_at text,
    ended_by text references people (id)
) strict;
create index waivers_by_job on waivers (job_id, proof);
create unique index waivers_one_open on waivers (job_id, proof) where ended_at is null;
