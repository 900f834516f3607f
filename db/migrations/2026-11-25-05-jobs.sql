-- One row a crossing, dated on the day it really happened under the due date in force.
create table stage_changes (
    pregnancy_id integer not null references pregnancies (id),
    stage text not null references stages (code),
    on_date text not null check (on_date is date(on_date)),
    primary key (pregnancy_id, stage)
) strict, without rowid;

create table moves (
    id integer primary key,
    client_id integer not null references clients (id),
    to_stage text not null references stages (code),
    crosses_on text not null check (crosses_on is date(crosses_on)),
    status text not null check (status in ('open', 'accepted', 'declined', 'lapsed')),
    made_at text not null,
    decided_at text,
    decided_by integer references accounts (id),
    reason text,
    check ((decided_at is null) = (status = 'open'))
) strict;

create unique index moves_open on moves (client_id) where status = 'open';

create table move_steps (
    move_id integer not null references moves (id),
    booking_id integer not null references bookings (id),
    to_session_id integer references sessions (id),
    primary key (move_id, booking_id)
) strict, without rowid;

create table flags (
    id integer primary key,
    subject text not null,
    kind text not null,
    severity text not null check (severity in ('info', 'attention', 'urgent')),
    client_id integer references clients (id),
    session_id integer references sessions (id),
    instructor_id integer references instructors (id),
    for_desk text not null,
    for_instructor text,
    since text not null check (since is date(since)),
    opened_at text not null,
    closed_at text
) strict;

create unique index flags_standing on flags (subject) where closed_at is null;
create index flags_by_client on flags (client_id) where closed_at is null;

create table flag_reads (
    flag_id integer not null references flags (id),
    account_id integer not null references accounts (id),
    at text not null,
    primary key (flag_id, account_id)
) strict, without rowid;

create table job_runs (
    id integer primary key,
    job text not null check (job in ('advance', 'moves', 'flags')),
    zone text not null,
    for_date text not null check (for_date is date(for_date)),
    ran_at text not null,
    by_hand integer not null check (by_hand in (0, 1)),
    changed integer not null check (changed >= 0),
    result text not null
) strict;

create index job_runs_latest on job_runs (job, zone, for_date);
