-- When a birth or the end of a pregnancy was told, and by whom: it may be taken back, and what was let go of then is known.
alter table pregnancies add column told_at text;
alter table pregnancies add column told_by integer references accounts (id);

-- Somebody at the studio rang her after an early birth.
alter table pregnancies add column rung_at text check (rung_at is null or born_on is not null);
alter table pregnancies add column rung_by integer references accounts (id);

-- Letters and answers from before this day speak of an earlier pregnancy.
alter table pregnancies add column papers_from text check (papers_from is date(papers_from));

-- A loss after a birth is a record of its own, in place of the one with the birth.
alter table pregnancies add column instead_of integer references pregnancies (id);
