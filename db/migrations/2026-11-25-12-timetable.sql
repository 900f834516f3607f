-- The timetable as it is planned: series, closures, drafts of a term, what each instructor can and will teach, cover.

-- A series is an RFC 5545 recurrence rule with a start by the wall clock of the room's location, so that the hour stays
-- across daylight saving. Its sessions are rows of their own; series_on is the date the rule gave, wherever the session
-- was moved to since (the recurrence id).
create table series (
    id integer primary key,
    class_id integer not null references classes (id),
    room_id integer not null references rooms (id),
    instructor_id integer references instructors (id),
    seats integer not null check (seats between 1 and 200),
    minutes integer not null check (minutes between 5 and 240),
    starts_on text not null check (starts_on is date(starts_on)),
    starts_local text not null check (starts_local is strftime('%H:%M', starts_local)),
    rule text not null check (length(rule) > 0),
    -- Set when "from here on" was changed: the series this one goes on from.
    continues_id integer references series (id),
    made_at text not null,
    made_by integer references accounts (id)
) strict;

-- Dates the rule gives on which nothing is held, in the order of the calendar.
create table series_exceptions (
    series_id integer not null references series (id),
    on_date text not null check (on_date is date(on_date)),
    primary key (series_id, on_date)
) strict, without rowid;

alter table sessions add column series_id integer references series (id);
alter table sessions add column series_on text check (series_on is date(series_on));
-- How often time, place, instructor or status changed since it was first published (SEQUENCE of RFC 5545 3.8.7.4).
alter table sessions add column changes integer not null default 0 check (changes >= 0);

create unique index sessions_once_a_date on sessions (series_id, series_on) where series_id is not null;

create trigger sessions_count_changes
after update of class_id, room_id, instructor_id, starts_at, ends_at, status on sessions
when new.class_id is not old.class_id or new.room_id is not old.room_id or new.instructor_id is not old.instructor_id
  or new.starts_at is not old.starts_at or new.ends_at is not old.ends_at or new.status is not old.status
begin
    update sessions set changes = changes + 1 where id = new.id;
end;

-- Days on which a location is shut. A public holiday is one that the owner imported or typed as such.
create table closures (
    id integer primary key,
    location_id integer not null references locations (id),
    from_on text not null check (from_on is date(from_on)),
    to_on text not null check (to_on is date(to_on) and to_on >= from_on),
    kind text not null check (kind in ('closure', 'publicHoliday')),
    name text not null check (length(name) > 0),
    unique (location_id, from_on, name)
) strict;

-- Minutes from door to door; both directions are rows.
create table travel_times (
    from_location_id integer not null references locations (id),
    to_location_id integer not null references locations (id),
    minutes integer not null check (minutes between 1 and 600),
    primary key (from_location_id, to_location_id),
    check (from_location_id <> to_location_id)
) strict, without rowid;

-- Nobody teaches at two places without the time to go from one to the other.
create trigger sessions_no_haste_insert before insert on sessions
when new.status = 'open' and new.instructor_id is not null
begin
    select raise(abort, 'no-time-to-travel') where exists (
        select 1
          from sessions s
          join rooms r on r.id = s.room_id
          join rooms n on n.id = new.room_id
          join travel_times t on t.from_location_id = r.location_id and t.to_location_id = n.location_id
         where s.instructor_id = new.instructor_id and s.status = 'open' and s.ends_at <= new.starts_at
           and unixepoch(new.starts_at) - unixepoch(s.ends_at) < t.minutes * 60)
        or exists (
        select 1
          from sessions s
          join rooms r on r.id = s.room_id
          join rooms n on n.id = new.room_id
          join travel_times t on t.from_location_id = n.location_id and t.to_location_id = r.location_id
         where s.instructor_id = new.instructor_id and s.status = 'open' and s.starts_at >= new.ends_at
           and unixepoch(s.starts_at) - unixepoch(new.ends_at) < t.minutes * 60);
end;

create trigger sessions_no_haste_update
before update of room_id, instructor_id, starts_at, ends_at, status on sessions
when new.status = 'open' and new.instructor_id is not null
begin
    select raise(abort, 'no-time-to-travel') where exists (
        select 1
          from sessions s
          join rooms r on r.id = s.room_id
          join rooms n on n.id = new.room_id
          join travel_times t on t.from_location_id = r.location_id and t.to_location_id = n.location_id
         where s.id <> new.id and s.instructor_id = new.instructor_id and s.status = 'open' and s.ends_at <= new.starts_at
           and unixepoch(new.starts_at) - unixepoch(s.ends_at) < t.minutes * 60)
        or exists (
        select 1
          from sessions s
          join rooms r on r.id = s.room_id
          join rooms n on n.id = new.room_id
          join travel_times t on t.from_location_id = n.location_id and t.to_location_id = r.location_id
         where s.id <> new.id and s.instructor_id = new.instructor_id and s.status = 'open' and s.starts_at >= new.ends_at
           and unixepoch(s.starts_at) - unixepoch(new.ends_at) < t.minutes * 60);
end;

-- A draft of some weeks: a copy of the sessions in them, changed as a whole and published as a whole. based_on is the
-- count of changes of the session when it was copied, so that publishing sees what happened to it meanwhile.
create table drafts (
    id integer primary key,
    name text not null check (length(name) > 0),
    from_on text not null check (from_on is date(from_on)),
    to_on text not null check (to_on is date(to_on) and to_on >= from_on),
    origin text not null check (origin in ('hand', 'assignment')),
    status text not null default 'open' check (status in ('open', 'published', 'discarded')),
    version integer not null default 1 check (version >= 1),
    made_at text not null,
    made_by integer references accounts (id),
    ended_at text,
    ended_by integer references accounts (id),
    check ((ended_at is null) = (status = 'open'))
) strict;

create table draft_sessions (
    id integer primary key,
    draft_id integer not null references drafts (id),
    session_id integer references sessions (id),
    based_on integer check (based_on >= 0),
    series_id integer references series (id),
    series_on text check (series_on is date(series_on)),
    class_id integer not null references classes (id),
    room_id integer not null references rooms (id),
    instructor_id integer references instructors (id),
    on_date text not null check (on_date is date(on_date)),
    starts_local text not null check (starts_local is strftime('%H:%M', starts_local)),
    minutes integer not null check (minutes between 5 and 240),
    seats integer not null check (seats between 1 and 200),
    is_held integer not null default 1 check (is_held in (0, 1)),
    check ((session_id is null) = (based_on is null))
) strict;

create unique index draft_sessions_once on draft_sessions (draft_id, session_id) where session_id is not null;
create index draft_sessions_by_draft on draft_sessions (draft_id, on_date);

-- What the owner knows of an instructor's working time. Null means that no bound was set.
alter table instructors add column weekly_minutes_most integer check (weekly_minutes_most between 0 and 10080);
alter table instructors add column rest_minutes_least integer check (rest_minutes_least between 0 and 1440);
alter table instructors add column left_on text check (left_on is date(left_on));

-- By the wall clock of the location where she would teach; without any row she can be asked for any hour.
create table availability (
    id integer primary key,
    instructor_id integer not null references instructors (id),
    weekday integer not null check (weekday between 1 and 7),
    from_local text not null check (from_local is strftime('%H:%M', from_local)),
    to_local text not null check (to_local is strftime('%H:%M', to_local) and to_local > from_local),
    location_id integer references locations (id),
    unique (instructor_id, weekday, from_local, location_id)
) strict;

-- Days away, first and last included. Why is nobody's business here.
create table leave (
    id integer primary key,
    instructor_id integer not null references instructors (id),
    from_on text not null check (from_on is date(from_on)),
    to_on text not null check (to_on is date(to_on) and to_on >= from_on),
    entered_at text not null,
    entered_by integer references accounts (id),
    withdrawn_at text
) strict;

create index leave_by_instructor on leave (instructor_id, from_on);

-- What she likes to teach and does not: a wish, never a rule. value is a class code, a location code, a weekday 1 to 7,
-- or morning (before 12:00), afternoon, evening (from 17:00).
create table teaching_wishes (
    instructor_id integer not null references instructors (id),
    kind text not null check (kind in ('class', 'location', 'weekday', 'partOfDay')),
    value text not null check (length(value) > 0),
    weight integer not null check (weight between -2 and 2 and weight <> 0),
    primary key (instructor_id, kind, value)
) strict, without rowid;

-- What is paid for a session: the newest rate on its date, the most particular first (instructor and class, instructor,
-- class, anybody). Money in the smallest unit of the currency (ISO 4217).
create table pay_rates (
    id integer primary key,
    instructor_id integer references instructors (id),
    class_id integer references classes (id),
    per text not null check (per in ('session', 'head', 'hour')),
    amount integer not null check (amount >= 0),
    currency text not null check (length(currency) = 3 and currency = upper(currency)),
    from_on text not null check (from_on is date(from_on)),
    made_at text not null,
    made_by integer references accounts (id)
) strict;

alter table qualifications add column proof_name text;
alter table qualifications add column proof_media_type text
    check (proof_media_type in ('application/pdf', 'image/jpeg', 'image/png'));
alter table qualifications add column withdrawn_at text;

create table cover_requests (
    id integer primary key,
    session_id integer not null references sessions (id),
    -- Who cannot teach it.
    instructor_id integer not null references instructors (id),
    status text not null default 'open' check (status in ('open', 'covered', 'withdrawn', 'lapsed')),
    asked_at text not null,
    asked_by integer references accounts (id),
    covered_by integer references instructors (id),
    settled_at text,
    settled_by integer references accounts (id),
    check ((settled_at is null) = (status = 'open')),
    check ((covered_by is null) = (status <> 'covered'))
) strict;

create unique index cover_requests_open on cover_requests (session_id) where status = 'open';

-- What a colleague answered when asked; the newest counts.
create table cover_answers (
    request_id integer not null references cover_requests (id),
    instructor_id integer not null references instructors (id),
    answer text not null check (answer in ('can', 'cannot')),
    at text not null,
    primary key (request_id, instructor_id)
) strict, without rowid;

-- A private calendar address. Only a digest of its token is kept: who reads the database cannot read a calendar by it.
create table feeds (
    id integer primary key,
    account_id integer not null references accounts (id),
    reads text not null check (reads in ('instructor', 'client')),
    token_digest text not null unique,
    made_at text not null,
    revoked_at text
) strict;

create unique index feeds_standing on feeds (account_id, reads) where revoked_at is null;
