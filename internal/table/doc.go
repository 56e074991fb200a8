// Package table reads the tables people keep in spreadsheets: text with a
// header row and cells between commas, semicolons or tabs.
//
// It accepts what spreadsheets write (a byte order mark, UTF-16, CRLF, quoted
// cells, decimal commas, a first line sep=;) and refuses early what is no table:
// a binary file, a file over the size limit, text that is not UTF-8. It knows
// nothing of what the columns mean. Rows are numbered as the spreadsheet numbers
// them: the header is row 1 and blank rows count.
//
// Format: RFC 4180, with the departures above.
package table
