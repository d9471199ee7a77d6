-- A paper that was lost is printed once more, the same bytes, and that is written down beside it: one kind of event more.
-- A check cannot be changed in place, so the table is made again with the rows it has.
create table paper_events_with_copies (
    id text primary key,
    paper_id text not null references papers (id),
    kind text not null check (kind in ('withdrawn', 'superseded', 'rests-on-corrected-evidence', 'review-opened',
        'review-closed', 'second-copy')),
    reason text not null,
    person_id text not null references people (id),
    at text not null,
    finding_id text references findings (id)
) strict;
insert into paper_events_with_copies (id, paper_id, kind, reason, person_id, at, finding_id)
select id, paper_id, kind, reason, person_id, at, finding_id
from paper_events;
drop table paper_events;
alter table paper_events_with_copies rename to paper_events;
create index paper_events_by_paper on paper_events (paper_id, at);
