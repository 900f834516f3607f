-- A warning sign on a later day is a hold of its own: a letter written between the two lifts the first and not the second.
drop index holds_standing;
create unique index holds_standing on holds (client_id, from_on) where lifted_on is null;

create index incidents_about on incidents (about_id);

-- Asked at the door only where somebody is at the door.
create trigger well_only_when_here before update of well_at, checked_in_at on bookings
when new.well_at is not null and new.checked_in_at is null
begin
    select raise(abort, 'well-only-when-here');
end;
