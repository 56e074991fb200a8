// Package cal holds calendar dates without a time zone: days counted from
// 1970-01-01 in the proleptic Gregorian calendar (ISO 8601).
//
// Daily weather, plantings and picks belong to a date, never to an instant, so
// nothing in here knows of clocks or zones. Weeks start on Monday.
package cal
