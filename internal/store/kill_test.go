package store

import (
	"bufio"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"garner/internal/journal"
)

// writerVariable makes this test's program a writer in the data directory named.
const writerVariable = "GARNER_TEST_WRITER"

func TestMain(m *testing.M) {
	if dir := os.Getenv(writerVariable); dir != "" {
		writeForEver(dir)
		return
	}
	os.Exit(m.Run())
}

// writeForEver makes entries, one after another, and says the number of each
// once it was acknowledged.
func writeForEver(dir string) {
	d, err := Folder(dir)
	if err != nil {
		fmt.Println(err)
		return
	}
	s, err := d.Open("hand")
	if err != nil {
		fmt.Println(err)
		return
	}
	before, start, err := s.Row("beds", "new")
	if err != nil {
		fmt.Println(err)
		return
	}
	for n := int(start) + 1; ; n++ {
		after := bedRow("new", strconv.Itoa(n))
		e := bedEntry(n, before, after)
		// A few more rows, so that there is something to be half done.
		for k := range 5 {
			id := fmt.Sprintf("n%d-%d", n, k)
			e.Changes = append(e.Changes, journal.Change{Table: "beds", ID: id, After: bedRow(id, "x"), Place: float64(1000*n + k)})
		}
		version, err := s.Append(e, 0)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(version, n)
		before = after
	}
}

// A process that is killed in the middle of writing loses nothing it
// acknowledged, and leaves nothing half done.
func TestKilledWritersLoseNothing(t *testing.T) {
	d := inFolder(t)
	s, _ := begun(t, d)
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	for round := range 10 {
		version, n := writeAndKill(t, d.dir, time.Duration(5+7*round)*time.Millisecond)
		s, err := d.Open("hand")
		if err != nil {
			t.Fatal(err)
		}
		e, err := s.Entry(fmt.Sprintf("e%d", n))
		if err != nil || e == nil || e.Version != version {
			t.Fatalf("round %d: entry %d was acknowledged as version %d and is %v, %v", round, n, version, e, err)
		}
		checkReplay(t, s)
		if _, _, err := s.Holding(); err != nil {
			t.Error(err)
		}
		if err := s.Close(); err != nil {
			t.Fatal(err)
		}
	}
}

// writeAndKill lets another process write, kills it a moment after its first
// entry and returns the last entry it acknowledged.
func writeAndKill(t *testing.T, dir string, moment time.Duration) (version int64, n int) {
	t.Helper()
	program, err := filepath.Abs(os.Args[0])
	if err != nil {
		t.Fatal(err)
	}
	writer := exec.Command(program)
	writer.Env = append(os.Environ(), writerVariable+"="+dir)
	out, err := writer.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := writer.Start(); err != nil {
		t.Fatal(err)
	}
	lines := bufio.NewScanner(out)
	killed := false
	for lines.Scan() {
		if !killed {
			killed = true
			time.AfterFunc(moment, func() { writer.Process.Kill() })
		}
		first, second, _ := strings.Cut(lines.Text(), " ")
		v, err := strconv.ParseInt(first, 10, 64)
		if err != nil {
			writer.Process.Kill()
			t.Fatalf("the writer said %q", lines.Text())
		}
		version = v
		n, _ = strconv.Atoi(second)
	}
	writer.Wait()
	if version == 0 {
		t.Fatal("the writer said nothing")
	}
	return version, n
}
