-- Cover can also be asked for a session that nobody was to teach: then nobody stands as the one who cannot.
create table cover_requests_next (
    id integer primary key,
    session_id integer not null references sessions (id),
    -- Who cannot teach it; null when nobody was to.
    instructor_id integer references instructors (id),
    status text not null default 'open' check (status in ('open', 'covered', 'withdrawn', 'lapsed')),
    asked_at text not null,
    asked_by integer references accounts (id),
    covered_by integer references instructors (id),
    settled_at text,
    settled_by integer references accounts (id),
    check ((settled_at is null) = (status = 'open')),
    check ((covered_by is null) = (status <> 'covered')),
    check (covered_by is not instructor_id or covered_by is null)
) strict;

create table cover_answers_next (
    request_id integer not null references cover_requests_next (id),
    instructor_id integer not null references instructors (id),
    answer text not null check (answer in ('can', 'cannot')),
    at text not null,
    primary key (request_id, instructor_id)
) strict, without rowid;

insert into cover_requests_next select id, session_id, instructor_id, status, asked_at, asked_by, covered_by, settled_at, settled_by
  from cover_requests;
insert into cover_answers_next select request_id, instructor_id, answer, at from cover_answers;
drop table cover_answers;
drop table cover_requests;
alter table cover_requests_next rename to cover_requests;
alter table cover_answers_next rename to cover_answers;

create unique index cover_requests_open on cover_requests (session_id) where status = 'open';
create index cover_requests_by_taker on cover_requests (covered_by, settled_at) where status = 'covered';
