-- A qualification that was filed wrongly is withdrawn and filed again, so that only those that count are one of a kind and
-- day of issue.
create table qualifications_kept (
    id integer primary key,
    instructor_id integer not null references instructors (id),
    kind text not null check (length(kind) > 0),
    issued_on text not null check (issued_on is date(issued_on)),
    expires_on text not null check (expires_on is date(expires_on) and expires_on >= issued_on),
    -- The proof's file, sealed, by the random name it has on disk.
    proof_name text,
    proof_media_type text check (proof_media_type in ('application/pdf', 'image/jpeg', 'image/png')),
    withdrawn_at text,
    withdrawn_by integer references accounts (id),
    check ((proof_name is null) = (proof_media_type is null))
) strict;

insert into qualifications_kept (id, instructor_id, kind, issued_on, expires_on, proof_name, proof_media_type, withdrawn_at)
select id, instructor_id, kind, issued_on, expires_on, proof_name, proof_media_type, withdrawn_at from qualifications;

drop table qualifications;
alter table qualifications_kept rename to qualifications;

create unique index qualifications_once on qualifications (instructor_id, kind, issued_on) where withdrawn_at is null;
create index qualifications_by_instructor on qualifications (instructor_id, kind);

-- Whom a rate per head counts: people checked in, or people who had a seat, whether they came or not.
alter table pay_rates add column heads text
    check (heads in ('checkedIn', 'seatsTaken') and per = 'head' or heads is null and per <> 'head');
alter table pay_rates add column withdrawn_at text;
alter table pay_rates add column withdrawn_by integer references accounts (id);

-- What was agreed is never rewritten: a wrong rate is withdrawn, and another one entered.
create trigger pay_rates_are_kept
before update of instructor_id, class_id, per, amount, currency, from_on, made_at, made_by, heads on pay_rates
begin
    select raise(abort, 'pay-rates-are-never-rewritten');
end;

create trigger pay_rates_stay_withdrawn before update of withdrawn_at on pay_rates when old.withdrawn_at is not null
begin
    select raise(abort, 'pay-rates-are-never-rewritten');
end;

create trigger pay_rates_are_never_deleted before delete on pay_rates
begin
    select raise(abort, 'pay-rates-are-never-deleted');
end;
