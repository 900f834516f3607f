-- Calendar addresses: what a client's calendar may say, what tells sessions of two studios apart, and when a session
-- last changed (LAST-MODIFIED of RFC 5545 3.8.7.3).

-- The name of a class may tell how far along she is, and others may look at her calendar: it stands there only where she
-- wants it.
alter table feeds add column names_class integer not null default 0 check (names_class in (0, 1));

-- Goes into the name of every entry; drawn once and never changed, or every calendar would hold everything twice.
create table calendar_key (
    id integer primary key check (id = 1),
    key text not null check (length(key) = 32)
) strict;

insert into calendar_key (id, key) values (1, lower(hex(randomblob(16))));

create trigger calendar_key_stays before update on calendar_key
begin
    select raise(abort, 'calendar-key-is-never-changed');
end;

create trigger calendar_key_is_kept before delete on calendar_key
begin
    select raise(abort, 'calendar-key-is-never-changed');
end;

-- Whoever writes a session may say when; where nobody does, the database does.
alter table sessions add column changed_at text;
update sessions set changed_at = strftime('%Y-%m-%dT%H:%M:%fZ', 'now');

create trigger sessions_say_when_made after insert on sessions when new.changed_at is null
begin
    update sessions set changed_at = strftime('%Y-%m-%dT%H:%M:%fZ', 'now') where id = new.id;
end;

create trigger sessions_say_when_changed
after update of class_id, room_id, instructor_id, starts_at, ends_at, status on sessions
when new.changed_at is old.changed_at
 and (new.class_id is not old.class_id or new.room_id is not old.room_id or new.instructor_id is not old.instructor_id
   or new.starts_at is not old.starts_at or new.ends_at is not old.ends_at or new.status is not old.status)
begin
    update sessions set changed_at = strftime('%Y-%m-%dT%H:%M:%fZ', 'now') where id = new.id;
end;
