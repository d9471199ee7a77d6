-- What a finding puts in doubt, what each paper that rests on it was decided to be, and recalls of parts. Rows of
-- evidence stay as they are: results are reckoned anew from them each time they are looked at.
create table recalls (
    id text primary key,
    branch_id text not null references branches (id),
    -- Who recalled, by which document of which day.
    recalled_by text not null,
    document text not null,
    dated_on text not null,
    -- What is recalled; empty means any.
    category text not null,
    maker text not null default '',
    type_name text not null default '',
    batch text not null default '',
    serial_from text not null default '',
    serial_to text not null default '',
    -- What the keeper is to do, in words for the letter.
    remedy text not null,
    recorded_by text not null references people (id),
    recorded_at text not null
) strict;
create index recalls_by_branch on recalls (branch_id, category, recorded_at);

-- One letter a vehicle and recall, whatever is pressed twice.
create table recall_letters (
    recall_id text not null references recalls (id),
    vehicle_id text not null references vehicles (id),
    message_id text not null references messages (id),
    primary key (recall_id, vehicle_id)
) strict;

create table doubts (
    finding_id text primary key references findings (id),
    cause text not null check (cause in ('instrument', 'evidence', 'recall', 'rule-line')),
    -- When it was found wrong; what was measured before, back to the last time it was known to be right, is suspect.
    found_at text not null,
    -- A beginning that somebody stated instead, and why.
    stated_from text,
    stated_reason text not null default '',
    instrument_id text references instruments (id),
    -- The entry that corrects another.
    evidence_id text references evidence (id),
    recall_id text references recalls (id),
    rule_line text not null default '',
    rule_from_on text,
    check (stated_from is null or stated_reason <> '')
) strict;
create index doubts_by_recall on doubts (recall_id);

-- The error as found, one row a quantity. A later entry stands in the place of all earlier ones.
create table as_found_errors (
    finding_id text not null references findings (id),
    quantity text not null check (quantity in ('pressure-kpa', 'pressure-percent', 'temperature-k', 'co-percent',
        'co2-percent', 'o2-percent', 'hc-ppm')),
    reads_high_by real not null,
    how_known text not null,
    person_id text not null references people (id),
    entered_at text not null,
    primary key (finding_id, entered_at, quantity)
) strict;

-- What a signatory decided of a paper, signed over canonical bytes. The last one counts; none is changed.
create table paper_decisions (
    id text primary key,
    finding_id text not null references findings (id),
    paper_id text not null references papers (id),
    decision text not null check (decision in ('stands', 're-test', 'withdrawn')),
    reason text not null check (length(reason) > 0),
    content blob not null,
    signature blob not null,
    key_id text not null references signing_keys (id),
    message_id text references messages (id),
    booking_id text references bookings (id),
    person_id text not null references people (id),
    at text not null
) strict;
create index paper_decisions_by_finding on paper_decisions (finding_id, at);
create index paper_decisions_by_paper on paper_decisions (paper_id, at);
create trigger paper_decisions_are_kept before update on paper_decisions
begin select raise(abort, 'a signed decision is never changed'); end;
create trigger paper_decisions_are_never_deleted before delete on paper_decisions
begin select raise(abort, 'a signed decision is never deleted'); end;

-- Which finding brought a paper under review: two at once end apart.
alter table paper_events add column finding_id text references findings (id);
