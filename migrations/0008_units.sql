-- The units a shop likes to read and write: pressure, temperature, power, length, volume, by their symbols. Everything
-- stays kept in kPa, °C, kW, mm and L; this is how it is shown.
alter table branches add column units text not null default 'kPa, °C, kW, mm, L';
