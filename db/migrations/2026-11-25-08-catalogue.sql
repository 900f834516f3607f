-- Rules the studio has put in force itself, by import. Nothing here is ever rewritten: the newest version is in force, and
-- going back is a new version with the texts of an older one. Without any version the program's own catalogue is in force.
create table catalogue_versions (
    id integer primary key,
    made_at text not null,
    made_by integer references accounts (id),
    why text not null check (length(why) <= 500),
    -- The program's own catalogue again; such a version has no files.
    own integer not null default 0 check (own in (0, 1)),
    back_to integer references catalogue_versions (id) check (back_to < id)
) strict;

create table catalogue_files (
    version_id integer not null references catalogue_versions (id),
    name text not null check (name like '%.csv'),
    text text not null,
    primary key (version_id, name)
) strict;

-- Every change of a policy. to_value is what holds from then on; by_default says that the studio follows the catalogue again.
create table policy_changes (
    id integer primary key,
    code text not null check (length(code) > 0),
    from_value text not null,
    to_value text not null check (to_value <> from_value),
    by_default integer not null check (by_default in (0, 1)),
    why text not null check (length(why) <= 500),
    made_at text not null,
    made_by integer references accounts (id)
) strict;

create trigger catalogue_versions_are_kept before update on catalogue_versions
begin
    select raise(abort, 'catalogue-versions-are-never-rewritten');
end;

create trigger catalogue_versions_stay before delete on catalogue_versions
begin
    select raise(abort, 'catalogue-versions-are-never-rewritten');
end;

create trigger catalogue_files_are_kept before update on catalogue_files
begin
    select raise(abort, 'catalogue-versions-are-never-rewritten');
end;

create trigger catalogue_files_stay before delete on catalogue_files
begin
    select raise(abort, 'catalogue-versions-are-never-rewritten');
end;

create trigger policy_changes_are_kept before update on policy_changes
begin
    select raise(abort, 'policy-changes-are-never-rewritten');
end;

create trigger policy_changes_stay before delete on policy_changes
begin
    select raise(abort, 'policy-changes-are-never-rewritten');
end;
