-- Predictions that moved, with what they were and why.
create table prediction (
  number    integer primary key,
  part      text not null,
  milestone text not null,
  made_at   text not null,
  body      text not null
) strict;

create index prediction_by_milestone on prediction (part, milestone, number);

-- Warnings; to_ms is empty while one lasts.
create table warning (
  id      text primary key,
  from_ms integer not null,
  to_ms   integer,
  body    text not null
) strict, without rowid;

create index warning_by_start on warning (from_ms);
