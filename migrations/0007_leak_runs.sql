-- Pressure-decay tests that run: start and every reading by the server's clock, so that a reload, another tablet or a
-- restart loses nothing. A run ends as evidence or given up; one at most is open for a section of a job.
create table leak_runs (
    id text primary key,
    branch_id text not null references branches (id),
    job_id text not null references jobs (id),
    section text not null check (section in ('lpg-liquid', 'lpg-vapour', 'cng-high', 'cng-low')),
    set_up text not null,
    started_at text not null,
    started_by text not null references people (id),
    ended_at text,
    evidence_id text references evidence (id),
    check (evidence_id is null or ended_at is not null)
) strict;
create index leak_runs_by_job on leak_runs (job_id, section, started_at);
create unique index leak_runs_one_open on leak_runs (job_id, section) where ended_at is null;

create table leak_readings (
    run_id text not null references leak_runs (id),
    at text not null,
    kpa real not null,
    c real not null,
    person_id text not null references people (id),
    primary key (run_id, at)
) strict;
