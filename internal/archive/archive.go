package archive

import (
	"database/sql"
	"io"
	"math"
	"net/url"
	"os"
	"path/filepath"
	"strconv"
	"strings"

	_ "modernc.org/sqlite" // the driver

	"garner/internal/fault"
	"garner/internal/station"
	"garner/internal/words"
)

// MostBytes is the size of the largest file that is read: ten years of a row every
// five minutes.
const MostBytes = 2_000_000_000

// Read sums the rows of an archive that comes as a stream, by way of a file of its
// own, which goes again.
func Read(r io.Reader, name string, o station.Options) (*station.Found, error) {
	dir, err := os.MkdirTemp("", "garner-archive-")
	if err != nil {
		return nil, noRoom(name, err)
	}
	defer os.RemoveAll(dir)
	path := filepath.Join(dir, "archive.db")
	file, err := os.Create(path)
	if err != nil {
		return nil, noRoom(name, err)
	}
	n, err := io.Copy(file, io.LimitReader(r, MostBytes+1))
	if closed := file.Close(); err == nil {
		err = closed
	}
	switch {
	case err != nil:
		return nil, noRoom(name, err)
	case n > MostBytes:
		return nil, fault.New(fault.Invalid, "station.too_large", words.Args{"limit": MostBytes / 1_000_000}).In(fault.Place{File: name})
	}
	return Open(path, name, o)
}

func noRoom(name string, err error) *fault.Error {
	f := fault.New(fault.Storage, "archive.no_room", nil).In(fault.Place{File: name})
	f.Err = err
	return f
}

// Open sums the rows of an archive on the disk.
func Open(path, name string, o station.Options) (*station.Found, error) {
	db, err := sql.Open("sqlite", address(path))
	if err != nil {
		return nil, unreadable(name, err)
	}
	defer db.Close()
	columns, err := columnsOf(db)
	if err != nil {
		return nil, unreadable(name, err)
	}
	if missing := missingOf(columns); missing != "" {
		return nil, fault.New(fault.Invalid, "archive.no_table", words.Args{"column": missing}).In(fault.Place{File: name})
	}
	sums := station.NewArchiveSums(station.ArchiveFile, name, o)
	if err := each(db, columns, sums); err != nil {
		return nil, unreadable(name, err)
	}
	return sums.Found()
}

// address opens a file for reading only; without a log beside it, nothing is even
// locked.
func address(path string) string {
	full, err := filepath.Abs(path)
	if err != nil {
		full = path
	}
	query := "?mode=ro"
	if log, err := os.Stat(path + "-wal"); err != nil || log.Size() == 0 {
		query += "&immutable=1"
	}
	return "file:" + (&url.URL{Path: filepath.ToSlash(full)}).EscapedPath() + query
}

func unreadable(name string, err error) *fault.Error {
	f := fault.New(fault.Invalid, "archive.unreadable", nil).In(fault.Place{File: name})
	f.Err = err
	return f
}

// columnsOf are the columns of the table by their names in small letters.
func columnsOf(db *sql.DB) (map[string]bool, error) {
	rows, err := db.Query("SELECT lower(name) FROM pragma_table_info('archive')")
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	columns := map[string]bool{}
	for rows.Next() {
		var name string
		if err := rows.Scan(&name); err != nil {
			return nil, err
		}
		columns[name] = true
	}
	return columns, rows.Err()
}

// needed are how many of station.ArchiveColumns an archive cannot be without.
const needed = 4

func missingOf(columns map[string]bool) string {
	for _, name := range station.ArchiveColumns[:needed] {
		if !columns[strings.ToLower(name)] {
			return name
		}
	}
	return ""
}

// each gives every row, in order of time.
func each(db *sql.DB, columns map[string]bool, sums *station.ArchiveSums) error {
	var wanted []string
	for _, name := range station.ArchiveColumns {
		if columns[strings.ToLower(name)] {
			wanted = append(wanted, `"`+name+`"`)
		} else {
			wanted = append(wanted, "NULL")
		}
	}
	rows, err := db.Query(`SELECT ` + strings.Join(wanted, ", ") + ` FROM archive ORDER BY "dateTime"`)
	if err != nil {
		return err
	}
	defer rows.Close()
	cells := make([]any, len(station.ArchiveColumns))
	places := make([]any, len(cells))
	for i := range cells {
		places[i] = &cells[i]
	}
	for n := 1; rows.Next(); n++ {
		if err := rows.Scan(places...); err != nil {
			return err
		}
		add(sums, n, cells)
	}
	return rows.Err()
}

// add gives one row; a cell that is no number is told and not known.
func add(sums *station.ArchiveSums, row int, cells []any) {
	var v [8]float64
	for i, cell := range cells {
		n, ok := number(cell)
		if !ok {
			sums.NotANumber(row, station.ArchiveColumns[i], cell)
		}
		v[i] = n
	}
	sums.Add(&station.ArchiveRow{Row: row, At: v[0], Units: v[1], Minutes: v[2], TempC: v[3], HumidityPct: v[4],
		Rain: v[5], Wind: v[6], RadiationWM: v[7]})
}

func number(cell any) (float64, bool) {
	switch v := cell.(type) {
	case nil:
		return math.NaN(), true
	case int64:
		return float64(v), true
	case float64:
		return v, true
	case string:
		n, err := strconv.ParseFloat(strings.TrimSpace(v), 64)
		if err == nil && !math.IsInf(n, 0) {
			return n, true
		}
	}
	return math.NaN(), false
}
