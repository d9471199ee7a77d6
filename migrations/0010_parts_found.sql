-- Inspections look at systems that others fitted: a part may be found on the vehicle, not fitted here. What a plate says
-- about the life of a vessel, and where a vessel went that was taken off, stand with the part.
alter table parts add column origin text not null default 'fitted' check (origin in ('fitted', 'found'));
alter table parts add column working_pressure_kpa real;
alter table parts add column last_tested_on text;
alter table parts add column end_of_life_on text;
alter table parts add column whereabouts text not null default '';
