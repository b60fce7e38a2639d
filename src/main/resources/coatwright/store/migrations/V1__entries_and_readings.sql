-- The journal. An entry is written once; a correction is another entry.
create table entry (
  number     integer primary key,
  kind       text not null,
  at         text not null,
  written_at text not null,
  who        text,
  part       text,
  jar        text,
  body       text not null
) strict;

create trigger entry_is_never_altered before update on entry
begin
  select raise(abort, 'an entry is never altered; strike it out');
end;

create trigger entry_is_never_deleted before delete on entry
begin
  select raise(abort, 'an entry is never deleted; strike it out');
end;

-- Who speaks, and where it stood when it spoke.
create table sensor (
  id     integer primary key,
  source text not null,
  sensor text not null,
  role   text not null,
  room   text not null,
  part   text not null,
  unique (source, sensor, role, room, part)
) strict;

-- How well it spoke: standard uncertainties and flags (words with a blank between).
create table manner (
  id                integer primary key,
  temperature_error real not null,
  rh_error          real not null,
  flags             text not null,
  unique (temperature_error, rh_error, flags)
) strict;

-- Temperatures in millionths of a degree Celsius, humidity in millionths of a per cent.
-- nth tells apart two different readings of one sensor in the same millisecond.
create table reading (
  sensor  integer not null,
  at_ms   integer not null,
  nth     integer not null,
  manner  integer not null,
  temp    integer,
  rh      integer,
  surface integer,
  primary key (sensor, at_ms, nth)
) strict, without rowid;

-- Sum, count, least and greatest; vapour pressure in thousandths of a pascal.
create table roll_up (
  every_s     integer not null,
  sensor      integer not null,
  from_s      integer not null,
  temp_sum    integer, temp_count    integer, temp_min    integer, temp_max    integer,
  rh_sum      integer, rh_count      integer, rh_min      integer, rh_max      integer,
  vapour_sum  integer, vapour_count  integer, vapour_min  integer, vapour_max  integer,
  surface_sum integer, surface_count integer, surface_min integer, surface_max integer,
  primary key (every_s, sensor, from_s)
) strict, without rowid;

-- Payloads as they came.
create table raw_text (
  id         integer primary key,
  source     text not null,
  channel    text not null,
  arrived_ms integer not null,
  text       text not null,
  verdict    text not null,
  reason     text
) strict;

create index raw_text_by_source on raw_text (source, id);
