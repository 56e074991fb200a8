package internal_test

import (
	"bytes"
	"os"
	"testing"
)

func countLines(t *testing.T, name string) int {
	t.Helper()
	raw, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return bytes.Count(raw, []byte("\n"))
}
