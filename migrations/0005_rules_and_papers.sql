-- The shop's own rule lines, and what the shop has signed. An issued paper is frozen; what happens to it later is a
-- dated row beside it.
create table rule_files (
    id text primary key,
    branch_id text not null references branches (id),
    name text not null,
    text text not null,
    sha256 text not null,
    from_on text not null,
    person_id text not null references people (id),
    recorded_at text not null
) strict;
create index rule_files_by_name on rule_files (branch_id, name, from_on);

create table signing_keys (
    id text primary key,
    public_key text not null,
    signed_by text references signing_keys (id),
    endorsement text not null default '',
    in_force_from text not null,
    distrusted_after text
) strict;

create table papers (
    id text primary key,
    branch_id text not null references branches (id),
    series text not null,
    number text not null,
    kind text not null,
    job_id text not null references jobs (id),
    vehicle_id text not null references vehicles (id),
    content blob not null,
    personal text not null,
    signature blob not null,
    key_id text not null references signing_keys (id),
    previous_sha256 text not null default '',
    code text not null unique,
    pdf_sha256 text not null,
    supersedes_id text references papers (id),
    issued_by text not null references people (id),
    issued_at text not null,
    unique (branch_id, series, number)
) strict;
create index papers_by_job on papers (job_id, issued_at);
create index papers_by_vehicle on papers (vehicle_id, issued_at);
create index papers_by_time on papers (branch_id, issued_at);
create unique index papers_superseded_once on papers (supersedes_id) where supersedes_id is not null;
create trigger papers_are_frozen before update of series, number, kind, job_id, vehicle_id, content, signature, key_id,
    previous_sha256, code, pdf_sha256, supersedes_id, issued_by, issued_at on papers
begin select raise(abort, 'an issued paper is never edited'); end;
create trigger papers_are_kept before delete on papers
begin select raise(abort, 'an issued paper is never deleted'); end;

create table paper_events (
    id text primary key,
    paper_id text not null references papers (id),
    kind text not null check (kind in ('withdrawn', 'superseded', 'rests-on-corrected-evidence', 'review-opened',
        'review-closed')),
    reason text not null,
    person_id text not null references people (id),
    at text not null
) strict;
create index paper_events_by_paper on paper_events (paper_id, at);
