-- What was seen of one person in one class. Nothing is rewritten: a change is a new version, and a note that is taken
-- back keeps its words here, where nobody reads them any more. The pregnancy it was written in is kept with it, so that
-- after a loss no later roster brings it up again.
create table class_notes (
    id integer primary key,
    session_id integer not null references sessions (id),
    client_id integer not null references clients (id),
    pregnancy_id integer references pregnancies (id),
    written_by integer not null references accounts (id),
    withdrawn_at text,
    withdrawn_by integer references accounts (id),
    check ((withdrawn_at is null) = (withdrawn_by is null))
) strict;

-- A writer has one standing note about a person in a class.
create unique index class_notes_standing on class_notes (session_id, client_id, written_by) where withdrawn_at is null;
create index class_notes_by_client on class_notes (client_id);

create table class_note_versions (
    id integer primary key,
    note_id integer not null references class_notes (id),
    version integer not null check (version >= 1),
    text text not null check (length(trim(text)) > 0),
    written_at text not null,
    unique (note_id, version)
) strict;

create trigger class_notes_stay_put before update of session_id, client_id, pregnancy_id, written_by on class_notes
begin
    select raise(abort, 'class-notes-never-change-hands');
end;

create trigger class_notes_stay_withdrawn before update on class_notes when old.withdrawn_at is not null
begin
    select raise(abort, 'class-notes-stay-withdrawn');
end;

-- The words are sealed, and may be sealed anew with a newer key; nothing else ever changes.
create trigger class_note_versions_are_kept
before update of note_id, version, written_at on class_note_versions
begin
    select raise(abort, 'class-notes-are-never-rewritten');
end;

create trigger class_note_versions_are_not_removed before delete on class_note_versions
begin
    select raise(abort, 'class-notes-are-never-rewritten');
end;
