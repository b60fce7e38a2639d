-- The numbers as the sensor sent them, in millionths, where a correction or a clipping changed any;
-- empty where the reading stands as it came.
alter table reading add column sent_temp integer;
alter table reading add column sent_rh integer;
alter table reading add column sent_surface integer;
