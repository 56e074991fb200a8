package cli

import (
	"bytes"
	"regexp"
	"strings"
	"testing"

	"garner/internal/words"
)

// asTyped are the parts of a page that are typed, not read, and so stay the same
// in every language: flags, placeholders and the names of commands.
var asTyped = regexp.MustCompile(`^(--[a-z-]+|[A-Z|,@\[\].a-z-]*[A-Z|][A-Z|,@\[\].a-z-]*|serve|outlook|grow|window|weather|show|ground|free|shade|advise|draft|keep-or-clear|describe|generate|check|check-files|import|export|completion|version|mend|compare|carry-forward|larder|risk|et0|water|jobs|\d+)$`)

// inPseudo runs garner in the invented language of the tests and returns what
// was said outside the catalogue's brackets.
func inPseudo(args ...string) (outside []string, said string) {
	var out, err bytes.Buffer
	app := &App{Stdout: &out, Stderr: &err, Words: words.Pseudo(), Version: "1"}
	app.Run(args)
	said = out.String() + err.String()
	depth, plain := 0, strings.Builder{}
	for _, r := range said {
		switch {
		case r == '⟦':
			depth++
		case r == '⟧':
			depth--
			plain.WriteByte(' ')
		case depth == 0:
			plain.WriteRune(r)
		}
	}
	return strings.Fields(plain.String()), said
}

func TestEveryWordComesFromTheCatalogue(t *testing.T) {
	for _, line := range []string{
		"", "help outlook", "help grow", "help window", "help weather", "help weather show", "weather --sample --site nowhere", "help weather describe",
		"help weather generate", "help weather import", "help ground", "help ground free", "help ground shade", "help advise", "help draft", "help keep-or-clear", "help check", "help check-files", "help import", "help export", "help completion", "help version", "help mend", "help compare", "help carry-forward", "help larder", "help risk", "help et0", "help water", "help jobs", "jobs --sample --week --days 3", "jobs --sample --hours none",
		"grow", "outlook", "ground free --sample --from 2027-05-01 --until 2027-04-01", "ground shade --sample=north", "advise --sample --bed nowhere", "draft --sample --seconds many", "advise --sample --bed h9 --area none", "keep-or-clear pot-26 --sample --years 2", "window --site 99,999,9", "outlook --sample --years many", "version", "risk --rule huttun", "risk --rule leek-moth --wetness dry", "mend --sample", "mend --sample --crop carrot --years none", "mend --sample --crop kumquat --years 2", "compare p2027 nothing --sample", "carry-forward --sample --leave nothing", "et0 missing.csv --site 51,0,0", "water --sample --away soon", "et0 x.csv --wind-height tall",
		"window --crop carrot --site 51,0,0 --normals missing.csv", "check --section nothing", "weather import none.csv --data nowhere", "serve --sample --watch nowhere",
	} {
		outside, said := inPseudo(strings.Fields(line)...)
		if !strings.Contains(said, "⟦") {
			t.Errorf("garner %s said nothing from the catalogue: %q", line, said)
		}
		for _, word := range outside {
			if !asTyped.MatchString(word) {
				t.Errorf("garner %s said %q outside the catalogue", line, word)
			}
		}
	}
}

// Each command and each flag says what it is for.
func TestEveryCommandHasHelp(t *testing.T) {
	app := &App{Words: words.English()}
	parser, err := app.parser(func(int) {})
	if err != nil {
		t.Fatal(err)
	}
	for _, node := range parser.Model.Leaves(true) {
		key := helpKey(node)
		if !app.Words.Has(key) {
			t.Errorf("%s has no help", node.FullPath())
		}
		for _, flag := range node.Flags {
			if name := "flag." + flagKey(flag.Name); !app.Words.Has(key+"."+name) && !app.Words.Has(helpTexts+name) {
				t.Errorf("%s: --%s has no help", node.FullPath(), flag.Name)
			}
		}
	}
}

// bomb is an output that fails in the worst way.
type bomb struct{}

func (bomb) Write([]byte) (int, error) { panic("the inside of garner") }

func TestAPanicEndsInAnApology(t *testing.T) {
	var err bytes.Buffer
	app := &App{Stdout: bomb{}, Stderr: &err, Words: words.English()}
	if code := app.Run([]string{"version"}); code != 1 {
		t.Errorf("exit code %d, want 1", code)
	}
	if said := err.String(); !strings.HasPrefix(said, "error: Garner made a mistake of its own") ||
		strings.Contains(said, "inside") {
		t.Errorf("it said %q", said)
	}
}
