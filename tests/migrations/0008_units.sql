-- A branch that reads in other units; no table is new.
update branches set units = 'bar, °C, kW, mm, L' where id = '00000000-0000-7000-8000-00000000b001';
