package station

import (
	"bytes"
	"regexp"
	"slices"
	"strings"

	"garner/internal/table"
)

// HeadBytes is how much of the beginning of a file is looked at.
const HeadBytes = 64 << 10

// The first lines by which formats are known.
var (
	ghcnLine    = regexp.MustCompile(`^[A-Z0-9_-]{11}\d{6}[A-Z0-9]{4}[ \d-]{5}`)
	ghcnRow     = regexp.MustCompile(`^"?[A-Z0-9_-]{11}"?,"?\d{8}"?,"?[A-Z0-9]{4}"?,`)
	isdLiteLine = regexp.MustCompile(`^\d{4} +\d{1,2} +\d{1,2} +\d{1,2}( +-?\d+){8} *$`)
)

// Recognise tells the format of a file from its beginning; "" where none is
// known. A file whose headings one of the maps explains is a mapped one.
func Recognise(head []byte, maps []ColumnMap) Format {
	if bytes.HasPrefix(head, []byte("SQLite format 3\x00")) {
		return ArchiveFile
	}
	line := firstLine(head)
	switch {
	case strings.HasPrefix(strings.ToUpper(line), "LOCATION,"):
		return EPW
	case ghcnLine.MatchString(line):
		return GHCNDaily
	case ghcnRow.MatchString(line):
		return GHCNStation
	case isdLiteLine.MatchString(line):
		return ISDLite
	}
	return byHeadings(Headings(head), maps)
}

// firstLine is the first line that is not blank.
func firstLine(head []byte) string {
	for line := range bytes.Lines(bytes.TrimPrefix(head, []byte("\ufeff"))) {
		if text := strings.TrimRight(string(line), "\r\n"); strings.TrimSpace(text) != "" {
			return text
		}
	}
	return ""
}

// Headings are the headings of a table from its beginning; nil where it is none.
func Headings(head []byte) []string {
	if cut := bytes.LastIndexByte(head, '\n'); cut >= 0 {
		head = head[:cut+1] // the last row may be half a row
	}
	t, err := table.Read(bytes.NewReader(head), "", HeadBytes+1)
	if err != nil {
		return nil
	}
	return t.Header
}

// byHeadings knows a table by its headings.
func byHeadings(headings []string, maps []ColumnMap) Format {
	if headings == nil {
		return ""
	}
	for i := range maps {
		if maps[i].fits(headings) {
			return MappedCSV
		}
	}
	t := &table.Table{Header: slices.Clone(headings)}
	rename(t)
	has := func(names ...string) bool {
		return !slices.ContainsFunc(names, func(name string) bool { return t.Column(name) < 0 })
	}
	switch {
	case has("dateTime", "usUnits", "interval"):
		return Archive
	case has("ID", "DATE", "ELEMENT"), has("STATION", "DATE", "TMAX"), has("STATION", "DATE", "PRCP"), has("STATION", "DATE", "TMIN"):
		return GHCNStation
	case has(columnTime, columnTemp):
		return HourlyCSV
	case has(columnDate, columnTMin, columnTMax):
		return DailyCSV
	}
	return ""
}
