-- What is to be told, written in the transaction of what it tells. facts is JSON that names class, place, time and
-- people; never anything of anybody's health. about makes a message this one and no other, so that a sweep that runs
-- again does not tell it again.
create table messages (
    id integer primary key,
    kind text not null check (length(kind) > 0),
    about text not null unique,
    client_id integer references clients (id),
    instructor_id integer references instructors (id),
    account_id integer references accounts (id),
    session_id integer references sessions (id),
    facts text not null check (json_valid(facts)),
    made_at text not null,
    not_before text not null,
    status text not null default 'waiting' check (status in ('waiting', 'sent', 'refused', 'dropped')),
    attempts integer not null default 0 check (attempts >= 0),
    tried_at text,
    ended_at text,
    last_answer text,
    -- Message-ID of RFC 5322, given once, so that a repeat is known as one.
    message_id text not null unique,
    check ((ended_at is null) = (status = 'waiting')),
    check ((client_id is not null) + (instructor_id is not null) + (account_id is not null) = 1)
) strict;

create index messages_waiting on messages (not_before) where status = 'waiting';
create index messages_by_client on messages (client_id);
create index messages_by_instructor on messages (instructor_id);

create trigger messages_are_kept before update of kind, about, client_id, instructor_id, account_id, session_id, facts, made_at, message_id
on messages
begin
    select raise(abort, 'messages-are-never-rewritten');
end;
