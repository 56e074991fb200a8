package cli

import (
	"bytes"
	"errors"
	"fmt"
	"strings"
	"testing"

	"garner/internal/fault"
	"garner/internal/words"
)

func TestErrorsAreToldAndLeaveTheirCode(t *testing.T) {
	missing := fault.New(fault.NotFound, "cli.file_missing", words.Args{"file": "a.csv"})
	placed := fault.New(fault.Invalid, "cli.flag_needed", words.Args{"flag": "crop"}).
		In(fault.Place{File: "plantings.csv", Row: 12, Column: "crop"})
	for _, tc := range []struct {
		name string
		err  error
		code int
		want string
	}{
		{"one fault", missing, 3, "error: There is no file a.csv.\n"},
		{"a fault with its place", placed, 2, "error: plantings.csv, row 12, crop: crop is missing.\n"},
		{"a fault inside another error", fmt.Errorf("reading: %w", missing), 3, "error: There is no file a.csv.\n"},
		{"several", fault.List{placed, missing}, 2,
			"error: 2 faults\n  plantings.csv, row 12, crop: crop is missing.\n  There is no file a.csv.\n"},
		{"no answer", fault.New(fault.NoAnswer, "cli.file_missing", words.Args{"file": "b"}), 4, "error: There is no file b.\n"},
		{"ours", fault.New(fault.Internal, "cli.file_missing", words.Args{"file": "secret"}), 1, "error: Garner made a mistake"},
		{"none of ours", errors.New("slice bounds out of range"), 1, "error: Garner made a mistake"},
		{"said already", failed(2), 2, ""},
	} {
		var err bytes.Buffer
		code := (&App{Stderr: &err, Words: words.English()}).tell(tc.err)
		if code != tc.code {
			t.Errorf("%s: exit code %d, want %d", tc.name, code, tc.code)
		}
		said := err.String()
		if !strings.HasPrefix(said, tc.want) || strings.Contains(said, "secret") || strings.Contains(said, "bounds") {
			t.Errorf("%s: said %q, want %q", tc.name, said, tc.want)
		}
	}
}

func TestEveryKindOfFaultHasAnExitCode(t *testing.T) {
	for kind := fault.Invalid; kind <= fault.Internal; kind++ {
		if code := exitCodes[kind]; code < 1 || code > 4 {
			t.Errorf("kind %d leaves with %d", kind, code)
		}
	}
}

func TestManyWarningsAreCounted(t *testing.T) {
	var err bytes.Buffer
	var list fault.List
	for range mostWarnings + 30 {
		list = append(list, fault.New(fault.Invalid, "cli.file_missing", words.Args{"file": "x"}))
	}
	(&App{Stderr: &err, Words: words.English()}).warn(list)
	if said := err.String(); strings.Count(said, "\n") != mostWarnings+1 || !strings.Contains(said, "30 more") {
		t.Errorf("said %q", said)
	}
}

func TestTheInsideIsShownToWhoeverAsks(t *testing.T) {
	var err bytes.Buffer
	app := &App{Stderr: &err, Words: words.English(), Inside: true}
	app.tell(errors.New("slice bounds out of range"))
	if !strings.Contains(err.String(), "slice bounds out of range") {
		t.Errorf("said %q", err.String())
	}
}

// A text that begins with a letter of more than one byte gets its capital whole, and
// nothing is nothing.
func TestCapitals(t *testing.T) {
	for text, want := range map[string]string{"": "", "kale.": "Kale", "école?": "École", "**x**": "**x**"} {
		if got := asSentence(text); got != want {
			t.Errorf("%q becomes %q", text, got)
		}
	}
}
