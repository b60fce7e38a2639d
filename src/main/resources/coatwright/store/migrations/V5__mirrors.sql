-- Readings in the order they were committed, for mirrors; empty while none is set up. Entries and
-- predictions need no such list: their numbers are that order.
create table outbox (
  number integer primary key autoincrement,
  sensor integer not null,
  at_ms  integer not null,
  nth    integer not null
) strict;

create table mirror (
  name          text primary key,
  target        text not null,
  sent          integer not null default 0,
  too_old       integer not null default 0,
  history_sent  integer not null default 0,
  history_total integer not null default 0,
  caught_up_ms  integer not null
) strict, without rowid;

-- How far a mirror has come in one stream: what lies at or before this place is there. Of the
-- history, number is the sensor.
create table mirror_place (
  mirror text not null,
  stream text not null,
  number integer not null,
  at_ms  integer not null,
  nth    integer not null,
  primary key (mirror, stream)
) strict, without rowid;

-- Points a server refused for good, with its reason.
create table parked (
  number    integer primary key,
  mirror    text not null,
  parked_ms integer not null,
  line      text not null,
  reason    text not null
) strict;

create index parked_by_mirror on parked (mirror, number);
