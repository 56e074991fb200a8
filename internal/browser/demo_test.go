package browser_test

import (
	"errors"
	"fmt"
	"io"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
)

// The table of the demo takes seconds to compute. It is computed once, into a data
// directory that no test opens: those that write get a copy of it, and those that
// only look share one server.
var (
	demo     = sync.OnceValues(makeDemo)
	lookedAt = sync.OnceValues(shareDemo)
	shared   *server // once a test has looked
)

// makeDemo takes the demo in by its form and returns its data directory.
func makeDemo() (string, error) {
	dir := filepath.Join(filepath.Dir(program), "demo")
	s, err := begin(dir, "--data", dir)
	if err != nil {
		return "", err
	}
	taken, err := http.Post(s.address+"/start/sample", "application/x-www-form-urlencoded", nil)
	if err == nil { // it leads to the table, which is thereby computed and kept
		taken.Body.Close()
		if taken.Request.URL.Path != "/" || taken.StatusCode != http.StatusOK {
			err = fmt.Errorf("the demo is not taken in: %s at %s", taken.Status, taken.Request.URL.Path)
		}
	}
	return dir, errors.Join(err, s.end())
}

// shareDemo serves the demo until all tests are done.
func shareDemo() (*server, error) {
	warm, err := demo()
	if err != nil {
		return nil, err
	}
	dir := filepath.Join(filepath.Dir(program), "looked-at")
	if err := os.CopyFS(dir, os.DirFS(warm)); err != nil {
		return nil, err
	}
	shared, err = begin(dir, "--data", dir)
	return shared, err
}

// lookAtSample is a server of the demo for a test that writes nothing. Others look
// at it at the same time.
func lookAtSample(t *testing.T) *server {
	t.Helper()
	slow(t)
	s, err := lookedAt()
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// endShared ends the server that was shared, and tells when a test wrote to it.
func endShared() error {
	if shared == nil {
		return nil
	}
	wrote, err := entries(shared)
	if err == nil && wrote != 1 {
		err = fmt.Errorf("a test wrote to the demo that others look at: its history has %d entries, not the one of taking it in", wrote)
	}
	return errors.Join(err, shared.end())
}

// entries counts the entries of a server's history.
func entries(s *server) (int, error) {
	page, err := http.Get(s.address + "/history")
	if err != nil {
		return 0, err
	}
	defer page.Body.Close()
	text, err := io.ReadAll(page.Body)
	return strings.Count(string(text), `class="what"`), err
}
