create table clients (
    id integer primary key,
    account_id integer unique references accounts (id),
    name text not null check (length(name) > 0),
    called text not null check (length(called) > 0),
    phone text not null,
    email text not null,
    emergency_name text not null,
    emergency_phone text not null,
    home_location_id integer not null references locations (id),
    shares_conditions integer not null default 0 check (shares_conditions in (0, 1)),
    joined_at text not null,
    -- Name, called, e-mail and phone folded for the find box (no case, no accents, digits run together).
    search text not null
) strict;

create unique index clients_by_email on clients (lower(email)) where email <> '';

-- One row a pregnancy. Loss is ended_on; nothing else of it is kept here. gestational_day and stage are what the
-- nightly advance last set, for lists and counts; whatever depends on a session's date asks for that date instead.
create table pregnancies (
    id integer primary key,
    client_id integer not null references clients (id),
    is_current integer not null default 1 check (is_current in (0, 1)),
    due_date text check (due_date is date(due_date)),
    babies integer not null default 1 check (babies between 1 and 8),
    born_on text check (born_on is date(born_on)),
    birth_mode text check (birth_mode in ('vaginal', 'assisted', 'caesarean', 'unknown')),
    ended_on text check (ended_on is date(ended_on)),
    gestational_day integer,
    stage text references stages (code),
    advanced_on text check (advanced_on is date(advanced_on)),
    check (due_date is not null or born_on is not null),
    check (born_on is null or ended_on is null),
    check ((birth_mode is null) = (born_on is null)),
    check (ended_on is null or (stage is null and gestational_day is null))
) strict;

create unique index pregnancies_current on pregnancies (client_id) where is_current = 1;
create index pregnancies_by_client on pregnancies (client_id);

-- Everything that was given about the date, with who entered it and when.
create table dating_evidence (
    id integer primary key,
    pregnancy_id integer not null references pregnancies (id),
    kind text not null check (kind in ('lastPeriod', 'scan', 'transfer', 'stated')),
    day text not null check (day is date(day)),
    cycle_days integer,
    measured_days integer,
    embryo_days integer,
    entered_at text not null,
    entered_by integer references accounts (id),
    check (cycle_days is null or kind = 'lastPeriod'),
    check ((measured_days is not null) = (kind = 'scan')),
    check ((embryo_days is not null) = (kind = 'transfer'))
) strict;

create index dating_evidence_by_pregnancy on dating_evidence (pregnancy_id);

-- Every due date that was ever in force; the newest is.
create table due_dates (
    id integer primary key,
    pregnancy_id integer not null references pregnancies (id),
    due_date text not null check (due_date is date(due_date)),
    basis text not null check (basis in ('lastPeriod', 'scan', 'transfer', 'stated')),
    explanation text not null,
    entered_at text not null,
    entered_by integer references accounts (id)
) strict;

create index due_dates_by_pregnancy on due_dates (pregnancy_id, id);

create trigger due_dates_are_kept before update on due_dates
begin
    select raise(abort, 'due-dates-are-never-rewritten');
end;

create table client_factors (
    id integer primary key,
    client_id integer not null references clients (id),
    code text not null check (length(code) > 0),
    from_on text not null check (from_on is date(from_on)),
    to_on text check (to_on is date(to_on) and to_on >= from_on),
    entered_at text not null,
    entered_by integer references accounts (id)
) strict;

create index client_factors_by_client on client_factors (client_id);

create table letters (
    id integer primary key,
    client_id integer not null references clients (id),
    issued_by text not null check (length(issued_by) > 0),
    issued_on text not null check (issued_on is date(issued_on)),
    expires_on text not null check (expires_on is date(expires_on) and expires_on >= issued_on),
    withdrawn_at text,
    entered_at text not null,
    entered_by integer references accounts (id)
) strict;

create index letters_by_client on letters (client_id);

create table screenings (
    id integer primary key,
    client_id integer not null references clients (id),
    answered_on text not null check (answered_on is date(answered_on)),
    outcome text not null check (outcome in ('nothingFound', 'clearanceNeeded', 'noExercise')),
    entered_at text not null,
    entered_by integer references accounts (id)
) strict;

create index screenings_by_client on screenings (client_id, answered_on);

create table holds (
    id integer primary key,
    client_id integer not null references clients (id),
    from_on text not null check (from_on is date(from_on)),
    lifted_on text check (lifted_on is date(lifted_on) and lifted_on >= from_on),
    entered_at text not null,
    entered_by integer references accounts (id)
) strict;

create unique index holds_standing on holds (client_id) where lifted_on is null;
create index holds_by_client on holds (client_id);
