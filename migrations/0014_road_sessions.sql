-- Logs of a drive on both fuels: which columns of a source are what (said once, remembered for the branch), and what a
-- drive came to. A drive changes until it is accepted: columns are matched, the comparison is made. Then it is evidence,
-- and only the evidence counts.
create table road_matches (
    branch_id text not null references branches (id),
    source_key text not null,
    matched text not null,
    person_id text not null references people (id),
    at text not null,
    primary key (branch_id, source_key)
) strict;

create table road_sessions (
    id text primary key,
    branch_id text not null references branches (id),
    job_id text not null references jobs (id),
    phase text not null check (phase in ('before', 'after')),
    driven_at text not null,
    recorded_at text not null,
    person_id text not null references people (id),
    comparison text,
    matched_by text references people (id),
    matched_at text,
    evidence_id text references evidence (id),
    version integer not null default 1,
    check (evidence_id is null or comparison is not null)
) strict;
create index road_sessions_by_job on road_sessions (job_id, recorded_at);

create table road_logs (
    session_id text not null references road_sessions (id),
    position integer not null check (position in (0, 1)),
    attachment_id text not null references attachments (id),
    stated text check (stated in ('petrol', 'gas')),
    matched text,
    primary key (session_id, position)
) strict;
