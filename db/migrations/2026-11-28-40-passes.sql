-- Passes: the kinds the studio sells, what was sold, and a ledger to which lines are only added. A balance is stored
-- nowhere: it is the sum of the lines.
create table pass_kinds (
    id integer primary key,
    name text not null check (length(name) between 1 and 80),
    form text not null check (form in ('classes', 'course', 'monthly', 'dropIn', 'trial')),
    -- Classes it gives; a course gives its sessions, a monthly pass counts none.
    credits integer check (credits between 1 and 500),
    -- Days it runs; a monthly pass runs a month, a course until its last session.
    runs_days integer check (runs_days between 1 and 1100),
    price integer not null check (price between 0 and 100000000),
    currency text not null check (length(currency) = 3),
    tax_per_mille integer not null check (tax_per_mille between 0 and 1000),
    -- After a birth what is left of it is good for every class.
    carries_over integer not null check (carries_over in (0, 1)),
    on_sale integer not null check (on_sale in (0, 1)),
    made_at text not null,
    made_by integer references accounts (id),
    check ((credits is null) = (form in ('course', 'monthly'))),
    check ((runs_days is null) = (form in ('course', 'monthly'))),
    check (form not in ('dropIn', 'trial') or credits = 1),
    check (form <> 'trial' or price = 0)
) strict;

create unique index pass_kinds_by_name on pass_kinds (lower(name)) where on_sale = 1;

-- Classes it is good for; none: every class.
create table pass_kind_classes (
    kind_id integer not null references pass_kinds (id),
    class_id integer not null references classes (id),
    primary key (kind_id, class_id)
) strict, without rowid;

create table pass_kind_sessions (
    kind_id integer not null references pass_kinds (id),
    session_id integer not null references sessions (id),
    primary key (kind_id, session_id)
) strict, without rowid;

-- Money taken (positive) and paid back (negative), by the day. No row leads to a client, so the books of a day stay what
-- they were when somebody is erased.
create table takings (
    id integer primary key,
    on_day text not null check (on_day is date(on_day)),
    kind_id integer not null references pass_kinds (id),
    name text not null check (length(name) > 0),
    paid_how text not null check (paid_how in ('cash', 'card', 'transfer', 'other')),
    gross integer not null check (gross <> 0),
    currency text not null check (length(currency) = 3),
    tax_per_mille integer not null check (tax_per_mille between 0 and 1000),
    tax integer not null check (abs(tax) <= abs(gross) and tax * gross >= 0),
    at text not null,
    by integer references accounts (id)
) strict;

create index takings_by_day on takings (on_day);

create trigger takings_are_kept before update on takings
begin
    select raise(abort, 'takings-are-never-rewritten');
end;

create trigger takings_stay before delete on takings
begin
    select raise(abort, 'takings-are-never-rewritten');
end;

-- What was sold, with the terms it had that day: what becomes of its kind later changes nothing of it.
create table passes (
    id integer primary key,
    client_id integer not null references clients (id),
    kind_id integer not null references pass_kinds (id),
    name text not null check (length(name) > 0),
    form text not null check (form in ('classes', 'course', 'monthly', 'dropIn', 'trial')),
    starts_on text not null check (starts_on is date(starts_on)),
    runs_days integer not null check (runs_days between 1 and 1500),
    carries_over integer not null check (carries_over in (0, 1)),
    price integer not null check (price >= 0),
    currency text not null check (length(currency) = 3),
    tax_per_mille integer not null check (tax_per_mille between 0 and 1000),
    -- Null when nothing was to be paid.
    paid_how text check (paid_how in ('cash', 'card', 'transfer', 'other')),
    taking_id integer unique references takings (id),
    sold_on text not null check (sold_on is date(sold_on)),
    sold_at text not null,
    sold_by integer references accounts (id),
    check ((paid_how is null) = (price = 0))
) strict;

create index passes_by_client on passes (client_id);
create unique index passes_trial_once on passes (client_id) where form = 'trial';

create table pass_classes (
    pass_id integer not null references passes (id),
    class_id integer not null references classes (id),
    primary key (pass_id, class_id)
) strict, without rowid;

create table pass_sessions (
    pass_id integer not null references passes (id),
    session_id integer not null references sessions (id),
    primary key (pass_id, session_id)
) strict, without rowid;

create table pass_entries (
    id integer primary key,
    pass_id integer not null references passes (id),
    kind text not null check (kind in ('sold', 'spent', 'returned', 'goodwill', 'refunded')),
    credits integer not null,
    booking_id integer references bookings (id),
    -- Why a credit came back. What excused somebody is not kept here.
    why text check (why in ('inTime', 'excused', 'studio')),
    -- In the studio's words, sealed.
    reason text,
    taking_id integer unique references takings (id),
    at text not null,
    by integer references accounts (id),
    check ((booking_id is not null) = (kind in ('spent', 'returned'))),
    check ((why is not null) = (kind = 'returned')),
    check ((reason is not null) = (kind in ('goodwill', 'refunded'))),
    check (taking_id is null or kind = 'refunded'),
    check (case kind when 'sold' then credits >= 0 when 'spent' then credits in (-1, 0)
                     when 'returned' then credits in (0, 1) when 'goodwill' then credits > 0
                     else credits <= 0 end)
) strict;

create index pass_entries_by_pass on pass_entries (pass_id);
-- A pass is sold once; a booking spends one credit and gives it back once.
create unique index pass_entries_sold_once on pass_entries (pass_id) where kind = 'sold';
create unique index pass_entries_spent_once on pass_entries (booking_id) where kind = 'spent';
create unique index pass_entries_returned_once on pass_entries (booking_id) where kind = 'returned';

create trigger pass_entries_add_up before insert on pass_entries
begin
    select raise(abort, 'credit-below-zero')
     where new.credits + (select coalesce(sum(e.credits), 0) from pass_entries e where e.pass_id = new.pass_id) < 0;
    select raise(abort, 'monthly-counts-no-credits')
     where new.credits <> 0 and (select form from passes where id = new.pass_id) = 'monthly';
    select raise(abort, 'nothing-was-spent')
     where new.kind = 'returned'
       and not exists (select 1 from pass_entries e
                        where e.pass_id = new.pass_id and e.booking_id = new.booking_id and e.kind = 'spent'
                          and e.credits = -new.credits);
    select raise(abort, 'pass-of-somebody-else')
     where new.booking_id is not null
       and (select client_id from bookings where id = new.booking_id)
           is not (select client_id from passes where id = new.pass_id);
end;

-- The reason alone may be written again, when the key that seals it is replaced.
create trigger pass_entries_are_kept
before update of id, pass_id, kind, credits, booking_id, why, taking_id, at, by on pass_entries
begin
    select raise(abort, 'passes-are-never-rewritten');
end;

create trigger passes_are_kept before update on passes
begin
    select raise(abort, 'passes-are-never-rewritten');
end;

create trigger pass_classes_are_kept before update on pass_classes
begin
    select raise(abort, 'passes-are-never-rewritten');
end;

create trigger pass_sessions_are_kept before update on pass_sessions
begin
    select raise(abort, 'passes-are-never-rewritten');
end;

create trigger passes_of_nobody_erased before insert on passes
when (select erased_at from clients where id = new.client_id) is not null
begin
    select raise(abort, 'client-is-erased');
end;

-- What is never rewritten is never taken away either, but through the door.
create trigger passes_stay before delete on passes
when not exists (select 1 from erasing e where e.client_id = old.client_id)
begin
    select raise(abort, 'passes-are-never-rewritten');
end;

create trigger pass_entries_stay before delete on pass_entries
when not exists (select 1 from erasing e join passes p on p.client_id = e.client_id where p.id = old.pass_id)
begin
    select raise(abort, 'passes-are-never-rewritten');
end;

create trigger pass_classes_stay before delete on pass_classes
when not exists (select 1 from erasing e join passes p on p.client_id = e.client_id where p.id = old.pass_id)
begin
    select raise(abort, 'passes-are-never-rewritten');
end;

create trigger pass_sessions_stay before delete on pass_sessions
when not exists (select 1 from erasing e join passes p on p.client_id = e.client_id where p.id = old.pass_id)
begin
    select raise(abort, 'passes-are-never-rewritten');
end;

create trigger erasing_takes_passes before delete on erasing
begin
    select raise(abort, 'erasure-is-half-done')
     where exists (select 1 from passes t where t.client_id = old.client_id);
end;
