-- Searches for the best way to staff a term. What was asked and what was found are kept as the words they had then; a
-- draft made of it lives its own life in drafts.
create table assignment_runs (
    id integer primary key,
    from_on text not null check (from_on is date(from_on)),
    to_on text not null check (to_on is date(to_on) and to_on >= from_on),
    asked text not null check (json_valid(asked)),
    status text not null default 'running'
        check (status in ('running', 'finished', 'outOfTime', 'cancelled', 'cutOff', 'failed')),
    result text check (json_valid(result)),
    made_at text not null,
    made_by integer references accounts (id),
    ended_at text,
    discarded_at text,
    draft_id integer references drafts (id),
    check ((ended_at is null) = (status = 'running')),
    check (draft_id is null or discarded_at is null)
) strict;

-- One at a time.
create unique index assignment_runs_one on assignment_runs (status) where status = 'running';
