-- Stretches of time in which the machine's clock and its steady clock kept step. The difference of
-- the two is from_ms - steady_ms all through a stretch, so that a reading's steady time follows from
-- its own and the stretch. Within a stretch readings came in the order of their times; stretches
-- came in the order of their ids.
create table clock_stretch (
  id            integer primary key,
  boot          text not null,
  from_ms       integer not null,
  steady_ms     integer not null,
  trusted       integer not null,
  redated_by_ms integer
) strict;

alter table reading add column stretch integer;

-- Readings that came while nobody knew the date; at_ms is by the clock as it stood.
create table undated_reading (
  id      integer primary key,
  stretch integer not null,
  sensor  integer not null,
  manner  integer not null,
  at_ms   integer not null,
  temp    integer,
  rh      integer,
  surface integer,
  sent_temp    integer,
  sent_rh      integer,
  sent_surface integer
) strict;

create index undated_reading_by_stretch on undated_reading (stretch, id);

-- Signs of life: start, once an hour, stop. Between two hours without one nobody was listening.
create table beat (
  id      integer primary key,
  at_ms   integer not null,
  stretch integer not null,
  kind    text not null
) strict;

-- What a person who was away should know.
create table happening (
  id      integer primary key,
  at_ms   integer not null,
  stretch integer not null,
  kind    text not null,
  says    text not null
) strict;

create index happening_by_time on happening (at_ms);
