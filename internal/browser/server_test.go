package browser_test

import (
	"bufio"
	"bytes"
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
}

var addressSaid = regexp.MustCompile(`http://[^/\s]+/`)

// serveEmpty serves a data directory in which nothing is yet.
func serveEmpty(t *testing.T) *server {
	t.Helper()
	dir := t.TempDir()
	return serve(t, dir, "--data", dir)
}

// serveSample serves a fresh copy of the demo holding.
func serveSample(t *testing.T) *server {
	t.Helper()
	return serve(t, "", "--sample=main")
}

// serve runs garner until the test ends.
func serve(t *testing.T, dir string, arguments ...string) *server {
	t.Helper()
	slow(t)
	said := &safeBuffer{}
	command := exec.Command(program, append([]string{"serve", "--address", "127.0.0.1:0"}, arguments...)...)
	command.Stderr = said
	out, err := command.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := command.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		_ = command.Process.Signal(os.Interrupt)
		if err := command.Wait(); err != nil {
			t.Errorf("garner serve ended with %v", err)
		}
		if text := said.String(); text != "" {
			t.Errorf("garner serve wrote: %s", text)
		}
	})
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
	case at := <-address:
		return &server{address: at, dir: dir}
	case <-time.After(patience):
		t.Fatalf("garner serve told no address; it wrote: %s", said)
		return nil
	}
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
