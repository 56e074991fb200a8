package archive_test

import (
	"bytes"
	"database/sql"
	"errors"
	"os"
	"path/filepath"
	"testing"
	"time"

	"garner/internal/archive"
	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/fault"
	"garner/internal/station"
)

// madeArchive is a made-up archive of two days in US units, a row every five
// minutes, in a file of its own; extra statements come last.
func madeArchive(t testing.TB, extra ...string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "made.sdb")
	db, err := sql.Open("sqlite", path)
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	statements := append([]string{`CREATE TABLE archive (dateTime INTEGER NOT NULL PRIMARY KEY, usUnits INTEGER NOT NULL, "interval" INTEGER NOT NULL,
		barometer REAL, outTemp REAL, outHumidity REAL, rain REAL, windSpeed REAL, radiation REAL)`,
		`WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i+1 FROM n WHERE i < 576)
		INSERT INTO archive SELECT 1780272000 + 300*i, 1, 5, 30, CASE WHEN i % 288 < 144 THEN 50 ELSE 68 END, 60, 0.01, 10, 100 FROM n`}, extra...)
	for _, s := range statements {
		if _, err := db.Exec(s); err != nil {
			t.Fatal(err)
		}
	}
	odd := filepath.Join(filepath.Dir(path), "home station #1.sdb") // an address must not be misread
	if err := os.Rename(path, odd); err != nil {
		t.Fatal(err)
	}
	return odd
}

// 1780272000 is 1 June 2026, 00:00 UTC. 50 F is 10 C, 68 F 20 C, 288 hundredths
// of an inch 73.152 mm.
func TestOpen(t *testing.T) {
	path := madeArchive(t)
	before, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	f, err := archive.Open(path, "home.sdb", station.Options{})
	if err != nil || f.Rows != 576 || len(f.Days.Days) != 2 || len(f.Refused)+len(f.Warnings) > 0 {
		t.Fatalf("%+v, %v", f, err)
	}
	o := f.Days.Days[0]
	if o.Date != cal.Of(2026, 6, 1) || o.TMinC != climate.Is(10) || o.TMaxC != climate.Is(20) || o.RainMM != climate.Is(73.152) || o.RadiationMJ != climate.Is(8.64) {
		t.Errorf("%+v", o)
	}
	if after, err := os.ReadFile(path); err != nil || !bytes.Equal(before, after) {
		t.Errorf("the file was written: %v", err)
	}
	if left, err := os.ReadDir(filepath.Dir(path)); err != nil || len(left) != 1 {
		t.Errorf("%v beside it, %v", left, err)
	}
}

// The same as a stream, and with a write-ahead log that is still open.
func TestStreamAndLog(t *testing.T) {
	path := madeArchive(t)
	file, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	if f, err := archive.Read(file, "home.sdb", station.Options{}); err != nil || len(f.Days.Days) != 2 {
		t.Errorf("%+v, %v", f, err)
	}
	plain := filepath.Join(filepath.Dir(path), "plain.sdb")
	if err := os.Rename(path, plain); err != nil {
		t.Fatal(err)
	}
	db, err := sql.Open("sqlite", plain)
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	for _, s := range []string{"PRAGMA journal_mode = wal", "UPDATE archive SET outTemp = 59"} {
		if _, err := db.Exec(s); err != nil {
			t.Fatal(err)
		}
	}
	if f, err := archive.Open(plain, "home.sdb", station.Options{}); err != nil || f.Days.Days[0].TMaxC != climate.Is(15) {
		t.Errorf("%+v, %v", f, err)
	}
}

func TestFaults(t *testing.T) {
	path := madeArchive(t, "UPDATE archive SET usUnits = 3, outTemp = 'warm' WHERE dateTime = 1780272300", "UPDATE archive SET outTemp = NULL WHERE dateTime = 1780272600")
	f, err := archive.Open(path, "home.sdb", station.Options{})
	if err != nil || len(f.Refused) != 2 || f.Refused[0].At != (fault.Place{File: "home.sdb", Row: 1, Column: "outTemp"}) || f.Refused[1].Phrase.Key != "station.archive_units" {
		t.Errorf("%v, %v", f.Refused, err)
	}
	for _, c := range []struct {
		made string
		want string
	}{{madeArchive(t, "ALTER TABLE archive RENAME TO other"), "archive.no_table"}, {madeArchive(t, `ALTER TABLE archive DROP COLUMN outTemp`), "archive.no_table"}} {
		var e *fault.Error
		if _, err := archive.Open(c.made, "home.sdb", station.Options{}); !errors.As(err, &e) || e.Phrase.Key != c.want {
			t.Errorf("%v, not %s", err, c.want)
		}
	}
	whole, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	for _, raw := range [][]byte{nil, []byte("SQLite format 3\x00 and no more"), append(bytes.Clone(whole[:100]), make([]byte, len(whole)-100)...), whole[:5000]} {
		var e *fault.Error
		if _, err := archive.Read(bytes.NewReader(raw), "broken.sdb", station.Options{}); !errors.As(err, &e) {
			t.Errorf("%d bytes: %v", len(raw), err)
		}
	}
}

// Whatever stands in the file, it is told as a fault or read.
func FuzzRead(f *testing.F) {
	whole, err := os.ReadFile(madeArchive(f))
	if err != nil {
		f.Fatal(err)
	}
	f.Add(whole)
	f.Fuzz(func(t *testing.T, raw []byte) {
		var one *fault.Error
		var many fault.List
		if _, err := archive.Read(bytes.NewReader(raw), "f.sdb", station.Options{}); err != nil && !errors.As(err, &one) && !errors.As(err, &many) {
			t.Error(err)
		}
	})
}

// A year of a row every five minutes.
func BenchmarkOpenAYear(b *testing.B) {
	path := madeArchive(b, `WITH RECURSIVE n(i) AS (SELECT 577 UNION ALL SELECT i+1 FROM n WHERE i < 105120)
		INSERT INTO archive SELECT 1780272000 + 300*i, 1, 5, 30, 60 + i % 288 / 30, 60, 0.01, 10, 100 FROM n`)
	zone, err := time.LoadLocation("Europe/London")
	if err != nil {
		b.Fatal(err)
	}
	clock := func(at int64) int64 { _, ahead := time.Unix(at, 0).In(zone).Zone(); return int64(ahead) }
	for b.Loop() {
		if f, err := archive.Open(path, "home.sdb", station.Options{Clock: clock}); err != nil || len(f.Days.Days) < 364 {
			b.Fatal(err)
		}
	}
}
