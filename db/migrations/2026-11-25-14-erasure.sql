-- Erasing what is held about a client.
--
-- Her row in clients stays as an empty shell: seats taken in past sessions and entries of the audit name a client by
-- number, and a number that names nobody keeps them true without giving anybody away. Whatever must be kept for a time is
-- taken out of the tables the program works with and put, sealed, into set_apart: no list, job or flag can come across
-- it, whatever is written later.
--
-- The audit is not opened. Its entries hold numbers, a kind and a moment, never a name or a word of health; they are the
-- proof that her wish was carried out, and taking some away would break the chain for everybody else's.
alter table clients add column erased_at text;
alter table accounts add column closed_at text;

-- One row a wish or an erasure; a wish may be taken back until it is carried out.
create table erasures (
    id integer primary key,
    client_id integer not null references clients (id),
    asked_at text,
    asked_by integer references accounts (id),
    withdrawn_at text,
    done_at text,
    done_by integer references accounts (id),
    entries integer check (entries >= 0),
    files integer check (files >= 0),
    check ((asked_at is null) = (asked_by is null)),
    check (asked_at is not null or done_at is not null),
    check (withdrawn_at is null or (asked_at is not null and done_at is null)),
    check ((done_at is null) = (done_by is null) and (done_at is null) = (entries is null)
           and (done_at is null) = (files is null))
) strict;

create unique index erasures_once on erasures (client_id) where withdrawn_at is null;

create trigger erasures_are_kept before update on erasures
when old.done_at is not null or old.withdrawn_at is not null
     or old.client_id is not new.client_id or old.asked_at is not new.asked_at or old.asked_by is not new.asked_by
begin
    select raise(abort, 'erasures-are-never-rewritten');
end;

create trigger erasures_stay before delete on erasures
begin
    select raise(abort, 'erasures-are-never-rewritten');
end;

-- What must be kept of somebody erased, and the last day of it. After that day the record goes; that it was there stays.
create table set_apart (
    id integer primary key,
    erasure_id integer not null references erasures (id),
    part text not null check (part in ('health', 'incidents', 'contact')),
    last_day text not null check (last_day is date(last_day)),
    record text,
    erased_at text,
    unique (erasure_id, part),
    check ((record is null) = (erased_at is not null))
) strict;

create trigger set_apart_is_kept before update of erasure_id, part, last_day, erased_at on set_apart
when old.erasure_id is not new.erasure_id or old.part is not new.part or old.last_day is not new.last_day
     or old.erased_at is not null
begin
    select raise(abort, 'set-apart-is-never-rewritten');
end;

create trigger set_apart_stays before delete on set_apart
begin
    select raise(abort, 'set-apart-is-never-rewritten');
end;

create table set_apart_files (
    file_name text primary key,
    set_apart_id integer not null references set_apart (id),
    letter_id integer not null,
    media_type text not null check (media_type in ('application/pdf', 'image/jpeg', 'image/png')),
    unique (set_apart_id, letter_id)
) strict, without rowid;

-- A record that is gone has no files left.
create trigger set_apart_goes_whole before update of record on set_apart when new.record is null
begin
    select raise(abort, 'set-apart-has-files') where exists (
        select 1 from set_apart_files f where f.set_apart_id = new.id);
end;

-- Files to take from the disk, which no transaction can do: noted in the transaction that lets go of them, crossed out
-- once they are gone.
create table files_to_remove (
    file_name text primary key,
    noted_at text not null
) strict, without rowid;

-- The door. A row in erasing opens what is otherwise never taken away, for one client. It cannot outlive its
-- transaction: must_end points at a row that can never be, which is looked at when the transaction ends.
create table erasing_ends (
    id integer primary key check (id < 0 and id > 0)
) strict;

create table erasing (
    id integer primary key check (id = 1),
    client_id integer not null references clients (id),
    must_end integer not null default 1 references erasing_ends (id) deferrable initially deferred
) strict;

create trigger erasing_stays_with_one before update on erasing
begin
    select raise(abort, 'erasing-stays-with-one');
end;

-- Closing it looks whether everything is gone: an erasure is never half done.
create trigger erasing_is_whole before delete on erasing
begin
    select raise(abort, 'erasure-is-half-done')
     where not exists (select 1 from clients c
                        where c.id = old.client_id and c.erased_at is not null and c.account_id is null
                          and c.phone = '' and c.email = '' and c.emergency_name = '' and c.emergency_phone = ''
                          and c.search = '' and c.born_on is null)
        or not exists (select 1 from erasures e where e.client_id = old.client_id and e.done_at is not null)
        or exists (select 1 from pregnancies t where t.client_id = old.client_id)
        or exists (select 1 from client_factors t where t.client_id = old.client_id)
        or exists (select 1 from letters t where t.client_id = old.client_id)
        or exists (select 1 from screenings t where t.client_id = old.client_id)
        or exists (select 1 from screening_drafts t where t.client_id = old.client_id)
        or exists (select 1 from nothing_changed t where t.client_id = old.client_id)
        or exists (select 1 from holds t where t.client_id = old.client_id)
        or exists (select 1 from bookings t where t.client_id = old.client_id
                      and (t.status <> 'booked' or t.made_by is not null or t.well_at is not null))
        or exists (select 1 from moves t where t.client_id = old.client_id)
        or exists (select 1 from flags t where t.client_id = old.client_id)
        or exists (select 1 from class_notes t where t.client_id = old.client_id)
        or exists (select 1 from incidents t where t.client_id = old.client_id)
        or exists (select 1 from messages t where t.client_id = old.client_id);
end;

create trigger clients_are_erased_in_whole before update of erased_at on clients
when old.erased_at is not new.erased_at
     and not exists (select 1 from erasing e where e.client_id = old.id)
begin
    select raise(abort, 'erasing-is-closed');
end;

create trigger clients_erased_stay_empty before update on clients
when old.erased_at is not null and not exists (select 1 from erasing e where e.client_id = old.id)
begin
    select raise(abort, 'client-is-erased');
end;

create trigger set_apart_while_erasing before insert on set_apart
when not exists (select 1 from erasing g join erasures e on e.client_id = g.client_id where e.id = new.erasure_id)
begin
    select raise(abort, 'erasing-is-closed');
end;

-- Nothing is ever filed about somebody who was erased.
create trigger pregnancies_of_nobody_erased before insert on pregnancies
when (select erased_at from clients where id = new.client_id) is not null
begin
    select raise(abort, 'client-is-erased');
end;

create trigger client_factors_of_nobody_erased before insert on client_factors
when (select erased_at from clients where id = new.client_id) is not null
begin
    select raise(abort, 'client-is-erased');
end;

create trigger letters_of_nobody_erased before insert on letters
when (select erased_at from clients where id = new.client_id) is not null
begin
    select raise(abort, 'client-is-erased');
end;

create trigger screenings_of_nobody_erased before insert on screenings
when (select erased_at from clients where id = new.client_id) is not null
begin
    select raise(abort, 'client-is-erased');
end;

create trigger screening_drafts_of_nobody_erased before insert on screening_drafts
when (select erased_at from clients where id = new.client_id) is not null
begin
    select raise(abort, 'client-is-erased');
end;

create trigger nothing_changed_of_nobody_erased before insert on nothing_changed
when (select erased_at from clients where id = new.client_id) is not null
begin
    select raise(abort, 'client-is-erased');
end;

create trigger holds_of_nobody_erased before insert on holds
when (select erased_at from clients where id = new.client_id) is not null
begin
    select raise(abort, 'client-is-erased');
end;

create trigger bookings_of_nobody_erased before insert on bookings
when (select erased_at from clients where id = new.client_id) is not null
begin
    select raise(abort, 'client-is-erased');
end;

create trigger moves_of_nobody_erased before insert on moves
when (select erased_at from clients where id = new.client_id) is not null
begin
    select raise(abort, 'client-is-erased');
end;

create trigger flags_of_nobody_erased before insert on flags
when (select erased_at from clients where id = new.client_id) is not null
begin
    select raise(abort, 'client-is-erased');
end;

create trigger class_notes_of_nobody_erased before insert on class_notes
when (select erased_at from clients where id = new.client_id) is not null
begin
    select raise(abort, 'client-is-erased');
end;

create trigger incidents_of_nobody_erased before insert on incidents
when (select erased_at from clients where id = new.client_id) is not null
begin
    select raise(abort, 'client-is-erased');
end;

create trigger messages_of_nobody_erased before insert on messages
when (select erased_at from clients where id = new.client_id) is not null
begin
    select raise(abort, 'client-is-erased');
end;

-- What is never rewritten is never taken away either, but through the door.
create trigger due_dates_stay before delete on due_dates
when not exists (select 1 from erasing e join pregnancies p on p.client_id = e.client_id where p.id = old.pregnancy_id)
begin
    select raise(abort, 'due-dates-are-never-rewritten');
end;

create trigger screenings_stay before delete on screenings
when not exists (select 1 from erasing e where e.client_id = old.client_id)
begin
    select raise(abort, 'screenings-are-never-rewritten');
end;

create trigger incidents_stay before delete on incidents
when not exists (select 1 from erasing e where e.client_id = old.client_id)
begin
    select raise(abort, 'incidents-are-never-rewritten');
end;

create trigger class_notes_stay before delete on class_notes
when not exists (select 1 from erasing e where e.client_id = old.client_id)
begin
    select raise(abort, 'class-notes-are-never-rewritten');
end;

drop trigger class_note_versions_are_not_removed;
create trigger class_note_versions_are_not_removed before delete on class_note_versions
when not exists (select 1 from erasing e join class_notes n on n.client_id = e.client_id where n.id = old.note_id)
begin
    select raise(abort, 'class-notes-are-never-rewritten');
end;

-- A seat that was taken stays taken, as what it was.
create trigger bookings_keep_their_seat before delete on bookings
when old.status = 'booked' and exists (select 1 from erasing e where e.client_id = old.client_id)
begin
    select raise(abort, 'seats-taken-stay');
end;

-- Another nightly job.
create table new_job_runs (
    id integer primary key,
    job text not null check (job in ('advance', 'moves', 'flags', 'erase')),
    zone text not null,
    for_date text not null check (for_date is date(for_date)),
    ran_at text not null,
    by_hand integer not null check (by_hand in (0, 1)),
    changed integer not null check (changed >= 0),
    result text not null
) strict;

insert into new_job_runs select id, job, zone, for_date, ran_at, by_hand, changed, result from job_runs;
drop table job_runs;
alter table new_job_runs rename to job_runs;
create index job_runs_latest on job_runs (job, zone, for_date);
