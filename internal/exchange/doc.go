// Package exchange reads and writes a holding as open files: a folder or zip of
// plain CSV tables with a datapackage.json beside them, so that a grower can
// keep it in a spreadsheet and any other program can read it.
//
// What the tables and columns are stands once, in data/tables.json; the
// descriptor, the checks and docs/holding-files.md are made from it.
//
// Reading is lenient about how spreadsheets write (see package table) and about
// the order of columns, and strict about what is said: everything is checked
// first and all faults are told at once, each with file, row and column. With a
// fault there is no holding. Writing is canonical: what is written, read and
// written again is the same byte for byte. A number is written with the digits
// that give the same number back; a blank cell means none.
//
// Formats: Frictionless Data Package and Tabular Data Package version 1, Table
// Schema version 1, CSV Dialect version 1.2 (https://specs.frictionlessdata.io),
// RFC 4180. A datapackage.json that is read is not needed and not believed: the
// tables are known by their names.
//
// The package opens nothing itself: it is given an fs.FS or the bytes of a zip.
package exchange
