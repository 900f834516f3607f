-- Who may sign in. A person may hold several roles.
create table accounts (
    id integer primary key,
    email text not null check (length(email) between 3 and 254),
    normalized_email text not null unique,
    name text not null check (length(name) > 0),
    password_hash text,
    security_stamp text not null,
    lockout_until text,
    failed_count integer not null default 0 check (failed_count >= 0),
    is_demo integer not null default 0 check (is_demo in (0, 1)),
    made_at text not null
) strict;

create table account_roles (
    account_id integer not null references accounts (id) on delete cascade,
    role text not null check (role in ('owner', 'frontDesk', 'instructor', 'client')),
    primary key (account_id, role)
) strict, without rowid;
