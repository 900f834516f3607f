-- A message is claimed before it goes to the mail server and recorded after, so that a stop in between is seen at the
-- next start: claimed_at set and still waiting means that the answer never came. unanswered counts how often that was.
-- held_back says why a message waits although nothing went wrong.
alter table messages add column claimed_at text;
alter table messages add column unanswered integer not null default 0 check (unanswered >= 0);
alter table messages add column held_back text check (held_back in ('quiet', 'enough'));

create index messages_by_account on messages (account_id);

-- What becomes of a message is never undone by halves: only a waiting one is claimed.
create trigger messages_are_claimed_while_waiting before update of claimed_at, status on messages
when new.claimed_at is not null and new.status <> 'waiting'
begin
    select raise(abort, 'message-is-not-waiting');
end;

-- Kinds of message that somebody does without.
create table unwanted_messages (
    id integer primary key,
    client_id integer references clients (id),
    instructor_id integer references instructors (id),
    kind text not null check (length(kind) > 0),
    since text not null,
    by_link integer not null check (by_link in (0, 1)),
    check ((client_id is not null) + (instructor_id is not null) = 1)
) strict;

create unique index unwanted_by_client on unwanted_messages (client_id, kind) where client_id is not null;
create unique index unwanted_by_instructor on unwanted_messages (instructor_id, kind) where instructor_id is not null;

create trigger unwanted_messages_of_nobody_erased before insert on unwanted_messages
when (select erased_at from clients where id = new.client_id) is not null
begin
    select raise(abort, 'client-is-erased');
end;

create trigger erasing_takes_unwanted_messages before delete on erasing
begin
    select raise(abort, 'erasure-is-half-done')
     where exists (select 1 from unwanted_messages t where t.client_id = old.client_id);
end;
