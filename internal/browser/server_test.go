package browser_test

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"
)

// server is garner serving its pages.
type server struct {
	address string // without the last slash
	dir     string // its data directory
	command *exec.Cmd
	said    *safeBuffer
}

var addressSaid = regexp.MustCompile(`http://[^/\s]+/`)

// serveEmpty serves a data directory in which nothing is yet.
func serveEmpty(t *testing.T) *server {
	t.Helper()
	dir := t.TempDir()
	return serve(t, dir, "--data", dir)
}

// serveSample serves a copy of the demo holding of its own, for a test that writes.
func serveSample(t *testing.T) *server {
	t.Helper()
	return serveCopy(t, demo)
}

// serveCopy serves a copy of a data directory that was made ready once.
func serveCopy(t *testing.T, ready func() (string, error)) *server {
	t.Helper()
	slow(t)
	warm, err := ready()
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	if err := os.CopyFS(dir, os.DirFS(warm)); err != nil {
		t.Fatal(err)
	}
	return serve(t, dir, "--data", dir)
}

// serve runs garner until the test ends.
func serve(t *testing.T, dir string, arguments ...string) *server {
	t.Helper()
	slow(t)
	s, err := begin(dir, arguments...)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := s.end(); err != nil {
			t.Error(err)
		}
	})
	return s
}

// begin runs garner and waits for the address it tells.
func begin(dir string, arguments ...string) (*server, error) {
	s := &server{dir: dir, said: &safeBuffer{}}
	s.command = exec.Command(program, append([]string{"serve", "--address", "127.0.0.1:0"}, arguments...)...)
	s.command.Stderr = s.said
	out, err := s.command.StdoutPipe()
	if err != nil {
		return nil, err
	}
	if err := s.command.Start(); err != nil {
		return nil, err
	}
	address := make(chan string, 1)
	go func() {
		lines := bufio.NewScanner(out)
		for lines.Scan() {
			if at := addressSaid.FindString(lines.Text()); at != "" {
				address <- strings.TrimSuffix(at, "/")
			}
		}
	}()
	select {
	case s.address = <-address:
		return s, nil
	case <-time.After(patience):
		return nil, errors.Join(fmt.Errorf("garner serve told no address"), s.end())
	}
}

// end stops garner as an interrupt does. It must end well and have had nothing to say.
func (s *server) end() error {
	_ = s.command.Process.Signal(os.Interrupt)
	var wrong []error
	if err := s.command.Wait(); err != nil {
		wrong = append(wrong, fmt.Errorf("garner serve ended with %w", err))
	}
	if text := s.said.String(); text != "" {
		wrong = append(wrong, fmt.Errorf("garner serve wrote: %s", text))
	}
	return errors.Join(wrong...)
}

// safeBuffer may be written to and read at once.
type safeBuffer struct {
	mutex sync.Mutex
	text  bytes.Buffer
}

func (b *safeBuffer) Write(p []byte) (int, error) {
	b.mutex.Lock()
	defer b.mutex.Unlock()
	return b.text.Write(p)
}

func (b *safeBuffer) String() string {
	b.mutex.Lock()
	defer b.mutex.Unlock()
	return b.text.String()
}
