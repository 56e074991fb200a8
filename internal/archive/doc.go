// Package archive reads the archive table of a home weather station from an
// SQLite file: a row an interval, its end in seconds since 1970, the system of its
// units, its length in minutes and what was measured. Package station makes days
// of the rows; this package only opens the file, which the engine may not.
//
// The file is never written. Where the station keeps a write-ahead log beside it,
// the log is read along with it.
//
// Format: the common open schema of such archives, from memory; the SQLite file
// format (sqlite.org).
package archive
