-- The studio: places, staff, classes and the stage scheme in force (copied here from the catalogue at start,
-- so that the nightly advance is one statement).
create table studio (
    id integer primary key check (id = 1),
    name text not null check (length(name) > 0),
    demo_loaded_on text check (demo_loaded_on is date(demo_loaded_on))
) strict;

create table policies (
    code text primary key,
    value text not null,
    changed_at text not null,
    changed_by integer references accounts (id)
) strict, without rowid;

create table stages (
    code text primary key,
    name text not null,
    position integer not null unique,
    counts_from text not null check (counts_from in ('pregnancy', 'birth')),
    from_day integer not null check (from_day >= 0),
    to_day integer check (to_day >= from_day)
) strict, without rowid;

create table locations (
    id integer primary key,
    code text not null unique,
    name text not null check (length(name) > 0),
    zone text not null check (length(zone) > 0),
    emergency_number text not null check (length(emergency_number) > 0)
) strict;

create table rooms (
    id integer primary key,
    location_id integer not null references locations (id),
    name text not null check (length(name) > 0),
    seats integer not null check (seats between 1 and 200),
    unique (location_id, name)
) strict;

create table instructors (
    id integer primary key,
    account_id integer unique references accounts (id),
    name text not null check (length(name) > 0),
    called text not null check (length(called) > 0),
    email text not null,
    phone text not null
) strict;

create table qualifications (
    id integer primary key,
    instructor_id integer not null references instructors (id),
    kind text not null check (length(kind) > 0),
    issued_on text not null check (issued_on is date(issued_on)),
    expires_on text not null check (expires_on is date(expires_on) and expires_on >= issued_on),
    unique (instructor_id, kind, issued_on)
) strict;

create table classes (
    id integer primary key,
    code text not null unique,
    name text not null check (length(name) > 0),
    about text not null,
    minutes integer not null check (minutes between 5 and 240),
    effort integer not null check (effort between 0 and 10),
    needs_qualification text not null check (length(needs_qualification) > 0)
) strict;

create table class_stages (
    class_id integer not null references classes (id),
    stage text not null references stages (code),
    primary key (class_id, stage)
) strict, without rowid;

create table class_traits (
    class_id integer not null references classes (id),
    trait text not null check (length(trait) > 0),
    primary key (class_id, trait)
) strict, without rowid;

-- starts_at and ends_at are moments (UTC); on_date and starts_local are what the clock on the location's wall says.
create table sessions (
    id integer primary key,
    class_id integer not null references classes (id),
    room_id integer not null references rooms (id),
    instructor_id integer references instructors (id),
    starts_at text not null,
    ends_at text not null check (ends_at > starts_at),
    on_date text not null check (on_date is date(on_date)),
    starts_local text not null check (starts_local is strftime('%H:%M', starts_local)),
    seats integer not null check (seats between 1 and 200),
    seats_taken integer not null default 0 check (seats_taken between 0 and seats),
    status text not null default 'open' check (status in ('open', 'cancelled'))
) strict;

create index sessions_by_start on sessions (starts_at);
create index sessions_by_room on sessions (room_id, starts_at);
create index sessions_by_instructor on sessions (instructor_id, starts_at);

-- A room holds one session at a time, and so does an instructor.
create trigger sessions_no_clash_insert before insert on sessions when new.status = 'open'
begin
    select raise(abort, 'room-taken') where exists (
        select 1 from sessions s
         where s.room_id = new.room_id and s.status = 'open'
           and s.starts_at < new.ends_at and s.ends_at > new.starts_at);
    select raise(abort, 'instructor-taken') where exists (
        select 1 from sessions s
         where s.instructor_id = new.instructor_id and s.status = 'open'
           and s.starts_at < new.ends_at and s.ends_at > new.starts_at);
    select raise(abort, 'room-too-small') where new.seats > (select r.seats from rooms r where r.id = new.room_id);
end;

create trigger sessions_no_clash_update
before update of room_id, instructor_id, starts_at, ends_at, status, seats on sessions when new.status = 'open'
begin
    select raise(abort, 'room-taken') where exists (
        select 1 from sessions s
         where s.id <> new.id and s.room_id = new.room_id and s.status = 'open'
           and s.starts_at < new.ends_at and s.ends_at > new.starts_at);
    select raise(abort, 'instructor-taken') where exists (
        select 1 from sessions s
         where s.id <> new.id and s.instructor_id = new.instructor_id and s.status = 'open'
           and s.starts_at < new.ends_at and s.ends_at > new.starts_at);
    select raise(abort, 'room-too-small') where new.seats > (select r.seats from rooms r where r.id = new.room_id);
end;
