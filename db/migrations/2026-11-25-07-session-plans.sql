-- Another plan for one session only, in versions of its own; a version may also say that the session follows its class
-- again. The newest one counts, whatever becomes of the class's plan meanwhile.
create table session_plans (
    id integer primary key,
    session_id integer not null references sessions (id),
    version integer not null check (version >= 1),
    follows_class integer not null check (follows_class in (0, 1)),
    made_at text not null,
    made_by integer references accounts (id),
    unique (session_id, version)
) strict;

create table session_plan_items (
    plan_id integer not null references session_plans (id),
    position integer not null check (position >= 1),
    movement text not null check (length(movement) > 0),
    minutes integer not null check (minutes between 1 and 240),
    primary key (plan_id, position)
) strict, without rowid;

create trigger session_plans_are_kept before update on session_plans
begin
    select raise(abort, 'session-plans-are-never-rewritten');
end;

create trigger session_plan_items_are_kept before update on session_plan_items
begin
    select raise(abort, 'session-plans-are-never-rewritten');
end;

create trigger session_plans_that_follow_are_empty before insert on session_plan_items
when (select follows_class from session_plans where id = new.plan_id) = 1
begin
    select raise(abort, 'session-follows-its-class');
end;

-- What is never rewritten is never taken away either.
create trigger class_plans_stay before delete on class_plans
begin
    select raise(abort, 'class-plans-are-never-rewritten');
end;

create trigger class_plan_items_stay before delete on class_plan_items
begin
    select raise(abort, 'class-plans-are-never-rewritten');
end;

create trigger session_plans_stay before delete on session_plans
begin
    select raise(abort, 'session-plans-are-never-rewritten');
end;

create trigger session_plan_items_stay before delete on session_plan_items
begin
    select raise(abort, 'session-plans-are-never-rewritten');
end;
