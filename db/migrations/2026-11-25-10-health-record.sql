-- What the health record holds in words or codes is sealed by the program (Data/Seal.cs), so a check on such a column is
-- the program's too. Dates stay readable: the nightly sweep counts by them.
alter table clients add column born_on text;

-- Answers are kept as given, with the version of the questions they answer; null when only the outcome was recorded.
create table new_screenings (
    id integer primary key,
    client_id integer not null references clients (id),
    answered_on text not null check (answered_on is date(answered_on)),
    outcome text not null check (length(outcome) > 0),
    answers text,
    questions_version integer,
    entered_at text not null,
    entered_by integer references accounts (id),
    check ((answers is null) = (questions_version is null))
) strict;

insert into new_screenings (id, client_id, answered_on, outcome, entered_at, entered_by)
select id, client_id, answered_on, outcome, entered_at, entered_by from screenings;
drop table screenings;
alter table new_screenings rename to screenings;
create index screenings_by_client on screenings (client_id, answered_on);

create trigger screenings_are_kept before update of client_id, answered_on, questions_version, entered_at on screenings
begin
    select raise(abort, 'screenings-are-never-rewritten');
end;

-- What she has answered so far; gone once she has sent it.
create table screening_drafts (
    id integer primary key,
    client_id integer not null unique references clients (id),
    answers text not null,
    questions_version integer not null,
    saved_at text not null
) strict;

-- Asked before the first class of a week: she said that nothing had changed.
create table nothing_changed (
    client_id integer not null references clients (id),
    on_date text not null check (on_date is date(on_date)),
    entered_at text not null,
    primary key (client_id, on_date)
) strict, without rowid;

-- What she told in a screening, so that a later one can end it; a factor that staff entered is not hers to end by an answer.
alter table client_factors add column screening_id integer references screenings (id);

-- A letter waits until a reviewer has read it; it counts only then.
create table new_letters (
    id integer primary key,
    client_id integer not null references clients (id),
    state text not null check (state in ('waiting', 'counts', 'refused')),
    issued_by text,
    issued_on text check (issued_on is date(issued_on)),
    expires_on text check (expires_on is date(expires_on) and expires_on >= issued_on),
    restrictions text,
    replaces_earlier integer not null default 0 check (replaces_earlier in (0, 1)),
    refused_because text,
    on_paper integer not null default 0 check (on_paper in (0, 1)),
    file_name text unique,
    media_type text check (media_type in ('application/pdf', 'image/jpeg', 'image/png')),
    file_bytes integer check (file_bytes > 0),
    entered_at text not null,
    entered_by integer references accounts (id),
    reviewed_at text,
    reviewed_by integer references accounts (id),
    withdrawn_at text,
    withdrawn_by integer references accounts (id),
    check ((file_name is null) = (media_type is null) and (file_name is null) = (file_bytes is null)),
    check (file_name is not null or on_paper = 1),
    check ((state = 'waiting') = (reviewed_at is null)),
    check (state <> 'counts' or (issued_by is not null and issued_on is not null and expires_on is not null)),
    check ((state = 'refused') = (refused_because is not null))
) strict;

insert into new_letters (id, client_id, state, issued_by, issued_on, expires_on, on_paper, entered_at, entered_by,
                         reviewed_at, reviewed_by, withdrawn_at)
select id, client_id, 'counts', issued_by, issued_on, expires_on, 1, entered_at, entered_by, entered_at, entered_by,
       withdrawn_at
  from letters;
drop table letters;
alter table new_letters rename to letters;
create index letters_by_client on letters (client_id);
create index letters_waiting on letters (state) where state = 'waiting';

-- What happened at the door or in class. An entry is never rewritten; what is learned later is another entry about it.
create table incidents (
    id integer primary key,
    client_id integer not null references clients (id),
    session_id integer references sessions (id),
    about_id integer references incidents (id),
    raised_at text not null,
    raised_by integer references accounts (id),
    signs text not null,
    happened text not null,
    done text not null
) strict;

create index incidents_by_client on incidents (client_id);
create index incidents_by_session on incidents (session_id);

-- The words may be sealed anew with a newer key; nothing else ever changes.
create trigger incidents_are_kept
before update of client_id, session_id, about_id, raised_at, raised_by on incidents
begin
    select raise(abort, 'incidents-are-never-rewritten');
end;

alter table holds add column incident_id integer references incidents (id);

-- One tap at the door: all well, on which session.
alter table bookings add column well_at text;

-- Who may read clearance letters is a role of its own.
create table new_account_roles (
    account_id integer not null references accounts (id) on delete cascade,
    role text not null check (role in ('owner', 'reviewer', 'frontDesk', 'instructor', 'client')),
    primary key (account_id, role)
) strict, without rowid;

insert into new_account_roles (account_id, role) select account_id, role from account_roles;
drop table account_roles;
alter table new_account_roles rename to account_roles;
