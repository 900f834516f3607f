-- Why a change of the timetable let a seat go, and when somebody looked after her since.
alter table bookings add column let_go text check (let_go in ('calledOff', 'overlap'));
alter table bookings add column seen_to_at text;

create index bookings_let_go on bookings (let_go) where let_go is not null and seen_to_at is null;

-- A session that is moved takes nobody into two rooms at once.
create trigger sessions_no_overlap_update before update of starts_at, ends_at, status on sessions when new.status = 'open'
begin
    select raise(abort, 'overlap') where exists (
        select 1
          from bookings mine
          join bookings other on other.client_id = mine.client_id and other.status = 'booked'
                             and other.session_id <> mine.session_id
          join sessions s on s.id = other.session_id
         where mine.session_id = new.id and mine.status = 'booked' and s.status = 'open'
           and s.starts_at < new.ends_at and s.ends_at > new.starts_at);
end;
