-- One more nightly job: laying out series.
create table new_job_runs (
    id integer primary key,
    job text not null check (job in ('advance', 'timetable', 'moves', 'flags', 'erase')),
    zone text not null,
    for_date text not null check (for_date is date(for_date)),
    ran_at text not null,
    by_hand integer not null check (by_hand in (0, 1)),
    changed integer not null check (changed >= 0),
    result text not null
) strict;

insert into new_job_runs select id, job, zone, for_date, ran_at, by_hand, changed, result from job_runs;
drop table job_runs;
alter table new_job_runs rename to job_runs;
create index job_runs_latest on job_runs (job, zone, for_date);
