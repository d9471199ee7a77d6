-- Parts that can be traced by serial and batch for the next twenty years, and the instruments whose word counts.
create table parts (
    id text primary key,
    branch_id text not null references branches (id),
    vehicle_id text not null references vehicles (id),
    fitted_in text not null references jobs (id),
    removed_in text references jobs (id),
    category text not null,
    maker text not null,
    type_name text not null,
    approval_mark text not null default '',
    approval_regulation text not null default '',
    component_class text not null default '',
    serial text not null default '',
    batch text not null default '',
    made_on text,
    made_precision text check (made_precision in ('day', 'month', 'year')),
    capacity_l real,
    test_pressure_kpa real,
    place text not null default '',
    fitted_on text not null,
    removed_on text,
    removed_reason text not null default '',
    -- A signatory's word that two parts share one mark and serial.
    shared_reason text not null default '',
    shared_by text references people (id),
    entered_by text not null references people (id),
    entered_at text not null,
    version integer not null default 1,
    check (removed_on is null or removed_on >= fitted_on)
) strict;
create index parts_by_vehicle on parts (vehicle_id, category);
create index parts_by_job on parts (fitted_in, category);
create index parts_by_removal on parts (removed_in);
create index parts_by_serial on parts (branch_id, serial, category);
create index parts_by_batch on parts (branch_id, batch);

create table instruments (
    id text primary key,
    branch_id text not null references branches (id),
    code text not null,
    kind text not null check (kind in ('pressure-gauge', 'thermometer', 'gas-analyser', 'leak-detector', 'foam',
        'compression-gauge', 'diagnostic-reader', 'other')),
    maker text not null default '',
    type_name text not null default '',
    serial text not null default '',
    resolution real,
    standard_uncertainty real,
    unit text not null default '',
    needs_daily_check integer not null default 0 check (needs_daily_check in (0, 1)),
    retired_on text,
    version integer not null default 1,
    unique (branch_id, code)
) strict;

create table instrument_certificates (
    id text primary key,
    instrument_id text not null references instruments (id),
    number text not null,
    laboratory text not null,
    calibrated_on text not null,
    due_on text not null,
    expanded_uncertainty real,
    coverage_factor real,
    attachment_id text references attachments (id),
    person_id text not null references people (id),
    recorded_at text not null,
    check (due_on > calibrated_on)
) strict;
create index instrument_certificates_by_instrument on instrument_certificates (instrument_id, calibrated_on);

create table instrument_checks (
    id text primary key,
    instrument_id text not null references instruments (id),
    checked_at text not null,
    has_passed integer not null check (has_passed in (0, 1)),
    as_found_error real,
    note text not null default '',
    person_id text not null references people (id),
    recorded_at text not null
) strict;
create index instrument_checks_by_instrument on instrument_checks (instrument_id, checked_at);

create table evidence_instruments (
    evidence_id text not null references evidence (id),
    instrument_id text not null references instruments (id),
    primary key (evidence_id, instrument_id)
) strict;
create index evidence_instruments_by_instrument on evidence_instruments (instrument_id);

create table findings (
    id text primary key,
    branch_id text not null references branches (id),
    job_id text references jobs (id),
    instrument_id text references instruments (id),
    source text not null,
    text text not null,
    opened_at text not null,
    opened_by text not null references people (id),
    decision text not null default '',
    decided_at text,
    decided_by text references people (id)
) strict;
create index findings_by_job on findings (job_id, opened_at);
create index findings_by_instrument on findings (instrument_id, opened_at);
create index findings_open on findings (branch_id, decided_at, opened_at);
