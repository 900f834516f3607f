-- Who read or changed whose health record, and when. Each entry carries a keyed hash over itself and the one before, so
-- that a changed, dropped or slipped-in entry shows; audit_head holds the count and hash of the last, so that a cut end does.
create table audit (
    id integer primary key,
    at text not null,
    account_id integer,
    seen_as text not null check (seen_as in ('owner', 'reviewer', 'herself', 'instructor', 'frontDesk', 'program')),
    client_id integer not null,
    act text not null check (act in ('read', 'change')),
    kind text not null check (length(kind) > 0),
    session_id integer,
    hash text not null
) strict;

create index audit_by_client on audit (client_id, id);

create trigger audit_is_never_rewritten before update on audit
begin
    select raise(abort, 'audit-is-never-rewritten');
end;

create trigger audit_is_never_shortened before delete on audit
begin
    select raise(abort, 'audit-is-never-shortened');
end;

create table audit_head (
    id integer primary key check (id = 1),
    key text not null,
    entries integer not null check (entries >= 0),
    hash text not null,
    proof text not null
) strict;
