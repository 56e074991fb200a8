// Package calendar writes whole days with something to be done as an iCalendar file
// (RFC 5545), for phones and other calendars to follow.
//
// An event keeps its UID from one file to the next, so that a calendar moves it and
// never has it twice. Days have no time zone. Lines are folded at 75 octets between
// characters, texts escaped, and control characters left out.
//
// Left out: alarms, rules of recurrence (each turn is an event of its own, since turns
// move with the weather and with what was done) and the reading of such files.
package calendar
