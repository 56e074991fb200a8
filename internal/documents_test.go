package internal_test

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"runtime"
	"strings"
	"testing"

	"garner/internal/cli"
	"garner/internal/crop"
	"garner/internal/words"
)

// The parts of the documents that come from data and from the program stand
// between marks and are kept true here; make docs writes them anew.
var update = flag.Bool("update", false, "write the documents anew")

func TestDocumentOfSources(t *testing.T) {
	var b strings.Builder
	b.WriteString("| key | work | terms |\n| --- | --- | --- |\n")
	for _, s := range book(t).Sources() {
		work := cell(s.Citation)
		if s.URL != "" {
			work = fmt.Sprintf("[%s](%s)", work, s.URL)
		}
		fmt.Fprintf(&b, "| %s | %s | %s |\n", s.Key, work, cell(s.Terms))
	}
	keepBlock(t, "docs/sources.md", "crop book", b.String())
}

func TestDocumentOfProvenance(t *testing.T) {
	var b strings.Builder
	b.WriteString("| crop | seen | memory | fitted | borrowed | judgement | inherited |\n| --- | --- | --- | --- | --- | --- | --- |\n")
	for _, c := range crop.Provenance(book(t)) {
		fmt.Fprintf(&b, "| %s |", c.Crop)
		for _, mark := range []string{"seen", "memory", "fitted", "borrowed", "judgement"} {
			fmt.Fprintf(&b, " %d |", c.Marks[mark])
		}
		fmt.Fprintf(&b, " %d |\n", c.Inherited)
	}
	keepBlock(t, "docs/sources.md", "crop provenance", b.String())
}

func TestDocumentOfSymbols(t *testing.T) {
	var b strings.Builder
	b.WriteString("| name | unit | from | to | meaning |\n| --- | --- | --- | --- | --- |\n")
	for _, p := range book(t).Parameters() {
		fmt.Fprintf(&b, "| %s | %s | %g | %g | %s |\n", p.Name, p.Unit, p.Min, p.Max, cell(p.Meaning))
	}
	keepBlock(t, "docs/symbols.md", "crop parameters", b.String())
}

func TestDocumentOfCommands(t *testing.T) {
	commands := 0
	for _, command := range commandsOf(t) {
		within := commandsOf(t, command)
		if len(within) == 0 {
			within = []string{""}
		}
		for _, sub := range within {
			name := strings.TrimSpace(command + " " + sub)
			keepBlock(t, "docs/commands.md", name, fence(help(t, strings.Fields(name)...)))
			commands++
		}
	}
	if commands < 20 {
		t.Errorf("only %d commands were found", commands)
	}
}

// help is the help page of a command.
func help(t *testing.T, command ...string) string {
	t.Helper()
	page, code := garner(append([]string{"help"}, command...)...)
	if code != 0 {
		t.Fatalf("garner help %v left with %d", command, code)
	}
	return page
}

// listed finds a command in the list of a help page.
var listed = regexp.MustCompile(`(?m)^  ([a-z][a-z0-9-]*)  +\S`)

// commandsOf are the commands that the help page of one, or of garner itself, lists.
func commandsOf(t *testing.T, command ...string) (names []string) {
	t.Helper()
	_, list, _ := strings.Cut(help(t, command...), "\nCommands\n")
	list, _, _ = strings.Cut(list, "\n\n")
	for _, m := range listed.FindAllStringSubmatch(list, -1) {
		names = append(names, m[1])
	}
	return names
}

// The picture in the README is what make run prints. It is compared on one
// architecture only: elsewhere the last bits of a sum may tip a sign.
func TestDocumentOfTheTable(t *testing.T) {
	if runtime.GOARCH != "amd64" {
		t.Skip("the picture was made on amd64")
	}
	if testing.Short() {
		t.Skip("the table takes a second")
	}
	page, code := garner("outlook", "--sample")
	if code != 0 {
		t.Fatalf("garner outlook --sample left with %d: %s", code, page)
	}
	keepBlock(t, "README.md", "table", fence(page))
}

// link finds the target of a Markdown link.
var link = regexp.MustCompile(`\]\(([^)\s]+)\)`)

func TestDocumentsLinkToWhatIsThere(t *testing.T) {
	for _, name := range documents(t) {
		for _, m := range link.FindAllStringSubmatch(read(t, name), -1) {
			target, _, _ := strings.Cut(m[1], "#")
			if target == "" || strings.Contains(target, "://") {
				continue
			}
			if _, err := os.Stat(filepath.Join(filepath.Dir(name), target)); err != nil {
				t.Errorf("%s links to %s, which is not there", name, m[1])
			}
		}
	}
}

// named finds the tests, benchmarks and fuzz targets that a document names, as
// `package: TestName`.
var named = regexp.MustCompile("`([a-z/]+): ((?:Test|Fuzz|Benchmark|Example)[A-Za-z0-9_]+)`")

func TestDocumentsNameTestsThatAreThere(t *testing.T) {
	for _, name := range documents(t) {
		for _, m := range named.FindAllStringSubmatch(read(t, name), -1) {
			if !hasTest(t, m[1], m[2]) {
				t.Errorf("%s names %s in package %s, which is not there", name, m[2], m[1])
			}
		}
	}
}

func hasTest(t *testing.T, pkg, name string) bool {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(pkg, "*_test.go"))
	if pkg == "internal" {
		files, err = filepath.Glob("*_test.go")
	}
	if err != nil {
		t.Fatal(err)
	}
	for _, file := range files {
		raw, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if bytes.Contains(raw, []byte("func "+name+"(")) {
			return true
		}
	}
	return false
}

// garner runs the program and returns all it said and its exit code.
func garner(args ...string) (string, int) {
	var out bytes.Buffer
	app := &cli.App{Stdout: &out, Stderr: &out, Words: words.English(), Version: "unreleased"}
	code := app.Run(args)
	return out.String(), code
}

func book(t *testing.T) *crop.Book {
	t.Helper()
	b, err := crop.Load()
	if err != nil {
		t.Fatal(err)
	}
	return b
}
