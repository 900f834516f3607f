-- A booking is a seat or a place on the waitlist. The order of the waitlist is the order of the ids.
create table bookings (
    id integer primary key,
    session_id integer not null references sessions (id),
    client_id integer not null references clients (id),
    status text not null check (status in ('booked', 'waiting', 'cancelled', 'released', 'moved')),
    made_at text not null,
    made_by integer references accounts (id),
    promoted_at text,
    ended_at text,
    ended_by integer references accounts (id),
    checked_in_at text,
    check ((ended_at is null) = (status in ('booked', 'waiting'))),
    check (checked_in_at is null or status = 'booked')
) strict;

create unique index bookings_once on bookings (session_id, client_id) where status in ('booked', 'waiting');
create index bookings_by_client on bookings (client_id, status);
create index bookings_by_session on bookings (session_id, status);

-- seats_taken is kept by the database itself, whoever writes; its check refuses the seat too many.
create trigger bookings_take_seat_insert after insert on bookings when new.status = 'booked'
begin
    update sessions set seats_taken = seats_taken + 1 where id = new.session_id;
end;

create trigger bookings_take_seat_update after update of status on bookings
when new.status = 'booked' and old.status <> 'booked'
begin
    update sessions set seats_taken = seats_taken + 1 where id = new.session_id;
end;

create trigger bookings_free_seat_update after update of status on bookings
when old.status = 'booked' and new.status <> 'booked'
begin
    update sessions set seats_taken = seats_taken - 1 where id = new.session_id;
end;

create trigger bookings_free_seat_delete after delete on bookings when old.status = 'booked'
begin
    update sessions set seats_taken = seats_taken - 1 where id = old.session_id;
end;

create trigger bookings_stay_put before update of session_id, client_id on bookings
begin
    select raise(abort, 'bookings-never-change-session-or-client');
end;

-- Nobody can be in two rooms at once.
create trigger bookings_no_overlap_insert before insert on bookings when new.status = 'booked'
begin
    select raise(abort, 'overlap') where exists (
        select 1
          from bookings b
          join sessions mine on mine.id = b.session_id
          join sessions wanted on wanted.id = new.session_id
         where b.client_id = new.client_id and b.status = 'booked' and b.session_id <> new.session_id
           and mine.starts_at < wanted.ends_at and mine.ends_at > wanted.starts_at);
end;

create trigger bookings_no_overlap_update before update of status on bookings
when new.status = 'booked' and old.status <> 'booked'
begin
    select raise(abort, 'overlap') where exists (
        select 1
          from bookings b
          join sessions mine on mine.id = b.session_id
          join sessions wanted on wanted.id = new.session_id
         where b.client_id = new.client_id and b.status = 'booked' and b.session_id <> new.session_id
           and mine.starts_at < wanted.ends_at and mine.ends_at > wanted.starts_at);
end;

-- What was answered to a request that carried an Idempotency-Key.
create table answered_requests (
    account_id integer not null references accounts (id),
    key text not null check (length(key) between 1 and 200),
    fingerprint text not null,
    status integer not null,
    body text not null,
    at text not null,
    primary key (account_id, key)
) strict, without rowid;
