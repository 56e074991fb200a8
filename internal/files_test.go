package internal_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// root is where the documents are, seen from this folder.
const root = ".."

func countLines(t *testing.T, name string) int {
	t.Helper()
	raw, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return strings.Count(string(raw), "\n")
}

func read(t *testing.T, name string) string {
	t.Helper()
	raw, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return string(raw)
}

// documents returns every page written for readers.
func documents(t *testing.T) []string {
	t.Helper()
	names, err := filepath.Glob(filepath.Join(root, "*.md"))
	if err != nil {
		t.Fatal(err)
	}
	for _, pattern := range []string{"docs/*.md", "docs/*/*.md"} {
		more, err := filepath.Glob(filepath.Join(root, pattern))
		if err != nil {
			t.Fatal(err)
		}
		names = append(names, more...)
	}
	return names
}

// keepBlock compares the part of a document between the marks of a name with
// what it should be, or writes it there when asked to.
func keepBlock(t *testing.T, document, name, content string) {
	t.Helper()
	path := filepath.Join(root, document)
	text := read(t, path)
	begin, end := "<!-- begin "+name+" -->\n", "<!-- end "+name+" -->"
	before, rest, opened := strings.Cut(text, begin)
	old, after, closed := strings.Cut(rest, end)
	if !opened || !closed {
		t.Fatalf("%s has no marks for %q", document, name)
	}
	if content == old {
		return
	}
	if !*update {
		t.Fatalf("%s is behind on %q; make docs writes it anew", document, name)
	}
	if err := os.WriteFile(path, []byte(before+begin+content+end+after), 0o644); err != nil {
		t.Fatal(err)
	}
}

// fence sets a text as it stands in a Markdown page.
func fence(text string) string { return "```\n" + strings.TrimRight(text, "\n") + "\n```\n" }

// cell sets a text as a cell of a Markdown table.
func cell(text string) string { return strings.ReplaceAll(text, "|", "\\|") }
