package cli

import (
	"bufio"
	"io"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"garner/internal/words"
)

// The sample is served until an interrupt, and its folder goes with it.
func TestServeAnswersUntilInterrupted(t *testing.T) {
	t.Setenv("TMPDIR", t.TempDir())
	said, out := io.Pipe()
	done := make(chan int, 1)
	app := &App{Stdout: out, Stderr: io.Discard, Words: words.English(), Version: "test"}
	go func() { done <- app.Run([]string{"serve", "--sample", "--address", "127.0.0.1:0"}) }()
	line, err := bufio.NewReader(said).ReadString('\n')
	if err != nil {
		t.Fatal(err)
	}
	go func() { _, _ = io.Copy(io.Discard, said) }()
	_, rest, _ := strings.Cut(line, "http://")
	address, _, ok := strings.Cut(rest, "/")
	if !ok {
		t.Fatalf("no address in %q", line)
	}
	answer, err := http.Get("http://" + address + "/plantings")
	if err != nil {
		t.Fatal(err)
	}
	page, err := io.ReadAll(answer.Body)
	answer.Body.Close()
	if err != nil || answer.StatusCode != http.StatusOK || !strings.Contains(string(page), "Home 1") {
		t.Errorf("got %d, %v", answer.StatusCode, err)
	}
	http.DefaultClient.CloseIdleConnections()
	self, err := os.FindProcess(os.Getpid())
	if err != nil {
		t.Fatal(err)
	}
	if err := self.Signal(syscall.SIGINT); err != nil {
		t.Fatal(err)
	}
	if code := <-done; code != 0 {
		t.Errorf("left with %d", code)
	}
	left, err := filepath.Glob(filepath.Join(os.TempDir(), "garner-sample-*"))
	if err != nil || len(left) != 0 {
		t.Errorf("left behind: %v", left)
	}
}
