package store

import (
	"bytes"
	"testing"

	"garner/internal/num"
)

func digest(n byte) num.Digest { return num.Digest{n} }

// What was longest unused goes first, and only when there is too much.
func TestResultsAreLetGoByLastUse(t *testing.T) {
	s, _ := begun(t, inFolder(t))
	kilobyte := func(n byte) []byte { return bytes.Repeat([]byte{n}, 1000) }
	has := func(n byte) bool {
		content, ok, err := s.Result(digest(n))
		if err != nil || ok && !bytes.Equal(content, kilobyte(n)) {
			t.Fatalf("result %d: %v", n, err)
		}
		return ok
	}
	for n := byte(1); n <= 3; n++ {
		if err := s.keep(digest(n), kilobyte(n), 3000); err != nil {
			t.Fatal(err)
		}
	}
	if !has(1) {
		t.Fatal("all three fit")
	}
	if err := s.keep(digest(4), kilobyte(4), 3000); err != nil {
		t.Fatal(err)
	}
	if has(2) || !has(1) || !has(3) || !has(4) {
		t.Errorf("kept 1 %v, 2 %v, 3 %v, 4 %v", has(1), has(2), has(3), has(4))
	}
	if err := s.keep(digest(5), make([]byte, 4000), 3000); err != nil {
		t.Fatal(err)
	}
	if _, ok, _ := s.Result(digest(5)); ok {
		t.Error("more than all the room was kept")
	}
	if !has(4) {
		t.Error("what does not fit pushed others out")
	}
}

// A result may be empty, and is kept again under the same name.
func TestResultsMayBeEmptyAndKeptTwice(t *testing.T) {
	s, _ := begun(t, inFolder(t))
	for range 2 {
		if err := s.Keep(digest(1), nil); err != nil {
			t.Fatal(err)
		}
	}
	if _, ok, err := s.Result(digest(1)); !ok || err != nil {
		t.Error(ok, err)
	}
}
