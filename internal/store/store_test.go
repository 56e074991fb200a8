package store

import (
	"bytes"
	"errors"
	"io/fs"
	"os"
	"testing"

	"github.com/google/go-cmp/cmp"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/exchange"
	"garner/internal/fault"
	"garner/internal/journal"
	"garner/internal/sample"
	"garner/internal/words"
)

// What is kept is what was brought in, byte for byte, also after the end of the
// process.
func TestExportIsWhatWasImported(t *testing.T) {
	d := inFolder(t)
	s, o := begun(t, d)
	h, report := exchange.ReadFolder(os.DirFS("../exchange/testdata/hand"))
	if !report.OK() {
		t.Fatal(report.Faults)
	}
	want, err := exchange.Write(h)
	if err != nil {
		t.Fatal(err)
	}
	got, err := o.Export()
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	before := export(t, o)
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	again, err := d.Open("hand")
	if err != nil {
		t.Fatal(err)
	}
	defer again.Close()
	if !bytes.Equal(before, export(t, desk.NewOffice(again))) {
		t.Error("the holding was another after it was opened again")
	}
}

// Forty years of daily weather and a full plan go in and out the same.
func TestDemosComeOutAsTheyWentIn(t *testing.T) {
	for _, name := range []string{"", "south"} {
		files, err := sample.Files(name)
		if err != nil {
			t.Fatal(err)
		}
		s, err := inFolder(t).Create("demo")
		if err != nil {
			t.Fatal(err)
		}
		defer s.Close()
		o := desk.NewOffice(s)
		if report, err := o.Import(desk.Author{Entry: "first"}, files); err != nil || !report.OK() {
			t.Fatal(err, report.Faults)
		}
		got, err := o.Export()
		if err != nil {
			t.Fatal(err)
		}
		for file, content := range got {
			if want, err := fs.ReadFile(files, file); err != nil || !bytes.Equal(want, content) {
				t.Errorf("%s: %v", file, err)
			}
		}
	}
}

func TestAKnownKeyChangesNothing(t *testing.T) {
	s, _ := begun(t, inFolder(t))
	first, err := s.Append(bedEntry(1, nil, bedRow("new", "New")), 0)
	if err != nil {
		t.Fatal(err)
	}
	twice := bedEntry(1, nil, bedRow("new", "Otherwise"))
	twice.ID = "another id"
	second, err := s.Append(twice, 0)
	if err != nil || second != first {
		t.Fatalf("version %d, then %d, %v", first, second, err)
	}
	row, version, err := s.Row("beds", "new")
	if err != nil || version != first || row[2] != "New" {
		t.Errorf("row %v of version %d, %v", row, version, err)
	}
	same := bedEntry(1, bedRow("new", "New"), bedRow("new", "Newer"))
	same.Key = "another key"
	if _, err := s.Append(same, 0); fault.KindOf(err) != fault.Conflict {
		t.Errorf("an id used twice: %v", err)
	}
}

// Two tabs edit the same row: the second is refused with what stands, and
// nothing of its entry is written.
func TestAnEntryOverSomethingElseIsRefusedWhole(t *testing.T) {
	s, o := begun(t, inFolder(t))
	if _, err := s.Append(bedEntry(1, nil, bedRow("new", "New")), 0); err != nil {
		t.Fatal(err)
	}
	before := export(t, o)
	late := bedEntry(2, bedRow("new", "What I saw"), bedRow("new", "Mine"))
	late.Changes = append([]journal.Change{{Table: "beds", ID: "other", After: bedRow("other", "Other"), Place: 101}}, late.Changes...)
	_, err := s.Append(late, 0)
	var conflict *desk.Conflict
	if !errors.As(err, &conflict) || conflict.Stood[2] != "New" || conflict.Yours[2] != "Mine" || conflict.ID != "new" {
		t.Fatalf("%v, %+v", err, conflict)
	}
	if !bytes.Equal(before, export(t, o)) {
		t.Error("part of the entry was written")
	}
	if e, err := s.Entry("e2"); e != nil || err != nil {
		t.Errorf("the entry stands: %v, %v", e, err)
	}
}

func TestAnEntryOverAnotherVersionIsRefused(t *testing.T) {
	s, _ := begun(t, inFolder(t))
	if _, err := s.Append(bedEntry(1, nil, bedRow("new", "New")), 1); err != nil {
		t.Fatal(err)
	}
	if _, err := s.Append(bedEntry(2, bedRow("new", "New"), nil), 1); !errors.Is(err, desk.ErrMoved) {
		t.Error(err)
	}
}

// A holding given out is not changed by later entries, and what is kept in
// memory is not given out when another process wrote.
func TestHoldingsGivenOutStayAsTheyAre(t *testing.T) {
	d := inFolder(t)
	s, _ := begun(t, d)
	other, err := d.Open("hand")
	if err != nil {
		t.Fatal(err)
	}
	defer other.Close()
	old, _, err := s.Holding()
	if err != nil {
		t.Fatal(err)
	}
	beds := len(old.Beds)
	if _, err := other.Append(bedEntry(1, nil, bedRow("new", "New")), 0); err != nil {
		t.Fatal(err)
	}
	now, version, err := s.Holding()
	if err != nil || version != 2 || len(now.Beds) != beds+1 || len(old.Beds) != beds {
		t.Errorf("version %d with %d beds, before %d, %v", version, len(now.Beds), len(old.Beds), err)
	}
	if old.Weather[0].Normals != now.Weather[0].Normals {
		t.Error("the weather was read again")
	}
}

func TestPhrasesComeBackAsTheyWere(t *testing.T) {
	p := words.P("journal.undone", words.Args{"what": words.P("a.b", nil), "day": cal.Of(2027, 6, 20), "yearly": cal.MonthDay{Month: 3, Day: 1},
		"n": 3.5, "text": "x", "list": []any{"a", words.P("c.d", words.Args{"on": true})}})
	got, err := unpackPhrase(packPhrase(p))
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(p, got); diff != "" {
		t.Error(diff)
	}
}

// Columns that were added since a row was written are blank in it.
func TestRowsOutliveTheirColumns(t *testing.T) {
	written := pack([]string{"id", "gone", "name"}, journal.Row{"b1", "x", "Bed"}).(string)
	row, err := unpack([]string{"id", "new", "name"}, written)
	if err != nil || !same(row, journal.Row{"b1", "", "Bed"}) {
		t.Errorf("%v, %v", row, err)
	}
}

// The rows are what the entries come to: replayed from the first, they are the
// same.
func TestRowsAreWhatTheEntriesComeTo(t *testing.T) {
	s, o := begun(t, inFolder(t))
	for n, step := range [][2]journal.Row{{nil, bedRow("new", "New")}, {bedRow("new", "New"), bedRow("new", "Newer")}, {bedRow("new", "Newer"), nil}} {
		if _, err := s.Append(bedEntry(n, step[0], step[1]), 0); err != nil {
			t.Fatal(err)
		}
	}
	checkReplay(t, s)
	if _, err := o.Undo(desk.Author{Entry: "undo"}, "e2"); err != nil {
		t.Fatal(err)
	}
	checkReplay(t, s)
}

// checkReplay makes all entries again, from nothing.
func checkReplay(t *testing.T, s *Store) {
	t.Helper()
	now, err := s.readAll()
	if err != nil {
		t.Fatal(err)
	}
	replayed := &standing{rows: map[string][]desk.KeptRow{}}
	entries, err := s.Entries(0, 1<<20)
	if err != nil {
		t.Fatal(err)
	}
	for i := len(entries) - 1; i >= 0; i-- {
		replayed.version = entries[i].Version
		for _, c := range entries[i].Changes {
			replayed.change(c)
		}
	}
	for table, rows := range replayed.rows {
		if len(rows) == 0 {
			delete(replayed.rows, table)
		}
	}
	if diff := cmp.Diff(now.rows, replayed.rows); diff != "" {
		t.Error(diff)
	}
}
