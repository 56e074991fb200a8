package store

import (
	"bytes"
	"fmt"
	"testing"

	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/num"
)

// limit lets the database grow by no more than a few pages, as a full disk does.
func limit(t *testing.T, s *Store, more int) {
	t.Helper()
	var pages int
	if err := s.db.write.QueryRow("PRAGMA page_count").Scan(&pages); err != nil {
		t.Fatal(err)
	}
	if _, err := s.db.write.Exec(fmt.Sprintf("PRAGMA max_page_count = %d", pages+more)); err != nil {
		t.Fatal(err)
	}
}

// On a full disk an entry is refused with a plain fault, nothing of it is
// written, and what stands can still be read.
func TestAFullDiskLeavesNothingHalfWritten(t *testing.T) {
	s, o := begun(t, inFolder(t))
	limit(t, s, 2)
	before := export(t, o)
	long := string(bytes.Repeat([]byte("long "), 10_000))
	e := bedEntry(1, nil, bedRow("new", "New"))
	e.Changes = append(e.Changes, bedEntry(2, nil, bedRow("other", long)).Changes...)
	e.Changes[1].ID = "other"
	_, err := s.Append(e, 0)
	full, ok := err.(*fault.Error)
	if !ok || full.Kind != fault.Storage || full.Phrase.Key != "store.full" {
		t.Fatalf("got %v", err)
	}
	if !bytes.Equal(before, export(t, o)) {
		t.Error("part of the entry was written")
	}
	checkReplay(t, s)
	if _, err := s.Append(bedEntry(3, nil, bedRow("new", "New")), 0); err != nil {
		t.Errorf("a short entry no longer fits: %v", err)
	}
	if err := s.Keep(num.Digest{1}, make([]byte, 1<<20)); fault.KindOf(err) != fault.Storage {
		t.Errorf("a result on a full disk: %v", err)
	}
}

// An import that does not fit changes nothing.
func TestAnImportThatDoesNotFitChangesNothing(t *testing.T) {
	d := inFolder(t)
	s, err := d.Create("small")
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	limit(t, s, 1)
	h, err := desk.Sample("")
	if err != nil {
		t.Fatal(err)
	}
	o := desk.NewOffice(s)
	if err := o.Begin(desk.Author{Entry: "first"}, h); fault.KindOf(err) != fault.Storage {
		t.Fatalf("got %v", err)
	}
	if _, err := o.Holding(); fault.KindOf(err) != fault.NotFound {
		t.Errorf("half a holding stands: %v", err)
	}
}
