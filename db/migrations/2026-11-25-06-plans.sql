-- What a class teaches, movement by movement. A change is a new version; the old one stays, so that a session that was
-- taught keeps the plan in force when it began.
create table class_plans (
    id integer primary key,
    class_id integer not null references classes (id),
    version integer not null check (version >= 1),
    made_at text not null,
    made_by integer references accounts (id),
    unique (class_id, version)
) strict;

create table class_plan_items (
    plan_id integer not null references class_plans (id),
    position integer not null check (position >= 1),
    movement text not null check (length(movement) > 0),
    minutes integer not null check (minutes between 1 and 240),
    primary key (plan_id, position)
) strict, without rowid;

create trigger class_plans_are_kept before update on class_plans
begin
    select raise(abort, 'class-plans-are-never-rewritten');
end;

create trigger class_plan_items_are_kept before update on class_plan_items
begin
    select raise(abort, 'class-plans-are-never-rewritten');
end;
