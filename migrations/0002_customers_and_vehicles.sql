-- Who comes to the shop and what they drive. A vehicle outlives its owners and its plates, so both are dated rows
-- beside it, never columns overwritten. `search` holds the words of a row folded in Rust (case, accents), because
-- the two engines fold differently.
create table customers (
    id text primary key,
    branch_id text not null references branches (id),
    name text not null check (length(name) between 1 and 200),
    name_in_latin text not null default '',
    address text not null default '',
    phone text not null default '',
    mail text not null default '',
    mail_state text not null default 'good' check (mail_state in ('good', 'bad')),
    language text not null default 'en',
    reminder_basis text not null default 'none' check (reminder_basis in ('consent', 'contract', 'none')),
    reminder_basis_on text,
    search text not null,
    created_at text not null,
    version integer not null default 1
) strict;
create index customers_by_name on customers (branch_id, search);
create index customers_by_phone on customers (branch_id, phone);
create index customers_by_mail on customers (branch_id, mail);

create table vehicles (
    id text primary key,
    branch_id text not null references branches (id),
    plate text not null default '',
    plate_country text not null default '',
    vin text not null default '',
    chassis_number text not null default '',
    category text not null default 'M1' check (category in ('M1', 'M2', 'M3', 'N1', 'N2', 'N3', 'other')),
    make text not null,
    model text not null default '',
    first_registered_on text,
    engine_code text not null default '',
    engine_number text not null default '',
    displacement_cm3 integer check (displacement_cm3 between 50 and 30000),
    engine_cylinders integer check (engine_cylinders between 1 and 12),
    rated_power_kw real check (rated_power_kw > 0),
    rated_rpm integer check (rated_rpm between 500 and 20000),
    aspiration text not null default 'natural' check (aspiration in ('natural', 'boosted')),
    boost_kpa real check (boost_kpa between 0 and 300),
    petrol_injection text not null default 'port'
        check (petrol_injection in ('port', 'direct', 'single-point', 'carburettor')),
    injector_connector text not null default '',
    control_pin text not null default '',
    gross_mass_kg integer,
    rear_axle_reserve_kg integer,
    has_catalyst integer not null default 1 check (has_catalyst in (0, 1)),
    is_closed_loop integer not null default 1 check (is_closed_loop in (0, 1)),
    maker_idle_co_percent real,
    maker_raised_co_percent real,
    maker_lambda_least real,
    maker_lambda_most real,
    emission_class text not null default '',
    obd_standard text not null default '',
    has_start_stop integer not null default 0 check (has_start_stop in (0, 1)),
    is_hybrid integer not null default 0 check (is_hybrid in (0, 1)),
    odometer_unit text not null default 'km' check (odometer_unit in ('km', 'mi')),
    search text not null,
    created_at text not null,
    version integer not null default 1
) strict;
create index vehicles_by_plate on vehicles (branch_id, plate);
create index vehicles_by_vin on vehicles (branch_id, vin);
create index vehicles_by_search on vehicles (branch_id, search);

create table vehicle_plates (
    id text primary key,
    vehicle_id text not null references vehicles (id),
    plate text not null,
    plate_country text not null,
    from_on text not null,
    to_on text
) strict;
create index vehicle_plates_by_vehicle on vehicle_plates (vehicle_id, from_on);
create index vehicle_plates_by_plate on vehicle_plates (plate);

create table vehicle_people (
    id text primary key,
    vehicle_id text not null references vehicles (id),
    customer_id text not null references customers (id),
    role text not null check (role in ('owner', 'keeper', 'payer', 'contact')),
    from_on text not null,
    to_on text,
    check (to_on is null or to_on >= from_on)
) strict;
create index vehicle_people_by_vehicle on vehicle_people (vehicle_id, role, from_on);
create index vehicle_people_by_customer on vehicle_people (customer_id, from_on);

create table odometer_readings (
    id text primary key,
    vehicle_id text not null references vehicles (id),
    job_id text,
    read_on text not null,
    km integer not null check (km between 0 and 9999999),
    typed text not null,
    -- Why a reading is lower than, or far above, the one before: asked, never refused.
    explained text not null default 'plain'
        check (explained in ('plain', 'typing-error-before', 'replaced', 'was-miles', 'as-read')),
    person_id text not null references people (id),
    recorded_at text not null
) strict;
create index odometer_readings_by_vehicle on odometer_readings (vehicle_id, read_on);

create table notes (
    id text primary key,
    branch_id text not null references branches (id),
    customer_id text references customers (id),
    vehicle_id text references vehicles (id),
    job_id text,
    text text not null,
    person_id text not null references people (id),
    written_at text not null,
    check ((customer_id is not null) + (vehicle_id is not null) + (job_id is not null) = 1)
) strict;
create index notes_by_customer on notes (customer_id, written_at);
create index notes_by_vehicle on notes (vehicle_id, written_at);
create index notes_by_job on notes (job_id, written_at);
