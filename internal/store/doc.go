// Package store keeps holdings between runs: one SQLite database for each
// holding and one that lists them, in the data directory of the platform.
//
// Every change is an appended entry (package journal); the rows of the tables
// are what the entries come to and are written in the same transaction, so a
// holding is never half changed. Databases run in write-ahead mode with full
// synchronisation: what was acknowledged survives the end of the process and of
// the power. A database that is damaged, or was written by a later version of
// the program, is refused and left as it is.
//
// The holding as a value is built from the rows when it is asked for and kept
// in memory until the next entry; weather files are read once.
//
// Method: SQLite (https://sqlite.org), write-ahead log and "synchronous=FULL" as
// described in its documentation ("Write-Ahead Logging", "PRAGMA synchronous").
package store
