-- Who works here, in which branch, as what; how they show who they are; and the log of what they did. Roles and
-- authorisations are dated rows, because a paper signed years ago must still name the standing of that day. The log
-- is a chain: each line holds the hash of the line before it, and triggers refuse to change or drop a line.
create table branches (
    id text primary key,
    name text not null check (length(name) between 1 and 200),
    address text not null default '',
    phone text not null default '',
    mail text not null default '',
    licence_number text not null default '',
    licence_expires_on text,
    country text not null check (length(country) = 2),
    time_zone text not null,
    currency text not null check (length(currency) = 3),
    language text not null,
    paper_size text not null check (paper_size in ('a4', 'letter')),
    version integer not null default 1
) strict;

create table people (
    id text primary key,
    name text not null check (length(name) between 1 and 200),
    initials text not null check (length(initials) between 1 and 8),
    sign_in_name text not null check (length(sign_in_name) between 1 and 100),
    mail text not null default '',
    language text not null default '',
    password_phc text,
    pin_phc text,
    sees_contacts integer not null default 0 check (sees_contacts in (0, 1)),
    ended_on text,
    version integer not null default 1
) strict;
create unique index people_sign_in_name on people (sign_in_name);

create table person_roles (
    person_id text not null references people (id),
    branch_id text not null references branches (id),
    role text not null check (role in ('manager', 'desk', 'technician', 'auditor')),
    began_at text not null,
    ended_at text,
    primary key (person_id, branch_id, role, began_at)
) strict;
create unique index person_roles_now on person_roles (person_id, branch_id, role) where ended_at is null;

create table signatory_grants (
    person_id text not null references people (id),
    branch_id text not null references branches (id),
    authorisation_number text not null check (length(authorisation_number) between 1 and 100),
    expires_on text not null,
    began_at text not null,
    ended_at text,
    primary key (person_id, branch_id, began_at)
) strict;
create unique index signatory_grants_now on signatory_grants (person_id, branch_id) where ended_at is null;

create table devices (
    id text primary key,
    branch_id text not null references branches (id),
    name text not null check (length(name) between 1 and 100),
    token_hash blob not null check (length(token_hash) = 32),
    enrolled_by text not null references people (id),
    enrolled_at text not null,
    ended_at text
) strict;
create unique index devices_token_hash on devices (token_hash);

create table sessions (
    id text primary key,
    token_hash blob not null check (length(token_hash) = 32),
    person_id text not null references people (id),
    branch_id text not null references branches (id),
    device_id text references devices (id),
    began_at text not null,
    seen_at text not null,
    ends_at text not null,
    ended_at text,
    address text not null default '',
    agent text not null default ''
) strict;
create unique index sessions_token_hash on sessions (token_hash);
create index sessions_by_person on sessions (person_id, ended_at);

create table sign_in_failures (
    subject text primary key,
    failures integer not null check (failures > 0),
    last_at text not null,
    free_at text not null
) strict;

create table set_up_codes (
    code_hash blob primary key check (length(code_hash) = 32),
    person_id text references people (id),
    made_at text not null,
    expires_at text not null,
    used_at text
) strict;

create table audit (
    sequence integer primary key,
    at text not null,
    branch_id text references branches (id),
    person_id text references people (id),
    actor text not null,
    deed text not null,
    subject_kind text not null,
    subject_id text not null,
    body text not null,
    previous_hash blob not null check (length(previous_hash) = 32),
    hash blob not null check (length(hash) = 32)
) strict;
create index audit_by_subject on audit (subject_kind, subject_id, sequence);
create index audit_by_person on audit (person_id, sequence);
create trigger audit_is_never_changed before update on audit begin
    select raise(abort, 'an audit line is never changed');
end;
create trigger audit_is_never_dropped before delete on audit begin
    select raise(abort, 'an audit line is never dropped');
end;

create table sends (
    actor text not null,
    key text not null check (length(key) between 8 and 100),
    deed text not null,
    answer text not null,
    at text not null,
    primary key (actor, key)
) strict;
create index sends_by_age on sends (at);

create table settings (
    branch_id text not null references branches (id),
    name text not null check (length(name) between 1 and 100),
    value text not null,
    changed_at text not null,
    changed_by text not null references people (id),
    primary key (branch_id, name)
) strict;
