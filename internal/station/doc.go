// Package station reads and writes the files of weather that people have: a
// daily record, an hourly one and a table of monthly normals, as plain CSV.
//
// A daily record has the columns date, tmin_c, tmax_c and, where known, rain_mm,
// sun_h, rad_mj_m2, rh_pct, dew_c and wind_ms, in any order. Values that cannot
// be are refused with their row and column and the rest is kept. An hourly record
// has time, temp_c and, where known, rh_pct, rain_mm and wind_ms; gaps, hours that
// come twice, jumps and signs of another unit are told at their rows. Normals have
// month, tmin_c, tmax_c, rain_mm and, where known, sun_h (mean hours a day),
// rad_mj_m2 (a day), rh_pct and wind_ms; any fault refuses the whole table, and
// all faults are told at once.
package station
