package cli_test

import (
	"encoding/json"
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/rogpeppe/go-internal/testscript"

	"garner/internal/desk"
)

// commands are what transcripts may say beside testscript's own.
var commands = map[string]func(ts *testscript.TestScript, neg bool, args []string){
	"exits":  exits,
	"fields": fields,
	"length": length,
	"sums":   sums,
}

// exits runs garner and checks its exit code: exits CODE ARGUMENT...
func exits(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 1 {
		ts.Fatalf("usage: exits CODE ARGUMENT...")
	}
	err := ts.Exec("garner", args[1:]...)
	got := "0"
	if err != nil {
		got = strings.TrimPrefix(err.Error(), "exit status ")
	}
	if got != args[0] {
		ts.Fatalf("exit code %s, want %s", got, args[0])
	}
}

// fields checks the shape of the JSON last written: fields PATH NAME..., where
// PATH leads through objects by name and lists by number, . being the whole,
// and each NAME must be a field there. Further fields are allowed.
func fields(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: fields PATH NAME...")
	}
	object, ok := answer(ts, args[0]).(map[string]any)
	if !ok {
		ts.Fatalf("%s is no object", args[0])
	}
	for _, name := range args[1:] {
		if _, ok := object[name]; !ok {
			ts.Fatalf("%s has no field %s", args[0], name)
		}
	}
}

func follow(at any, path string) (any, error) {
	for _, step := range strings.FieldsFunc(path, func(r rune) bool { return r == '.' }) {
		switch v := at.(type) {
		case map[string]any:
			at = v[step]
		case []any:
			n, err := strconv.Atoi(step)
			if err != nil || n >= len(v) {
				return nil, fmt.Errorf("%s: a list of %d has no %s", path, len(v), step)
			}
			at = v[n]
		default:
			return nil, fmt.Errorf("%s: nothing at %s", path, step)
		}
	}
	return at, nil
}

// answer reads the JSON last written and follows a path into it.
func answer(ts *testscript.TestScript, path string) any {
	var whole any
	if err := json.Unmarshal([]byte(ts.ReadFile("stdout")), &whole); err != nil {
		ts.Fatalf("the answer is no JSON: %v", err)
	}
	at, err := follow(whole, path)
	if err != nil {
		ts.Fatalf("%v", err)
	}
	return at
}

// length checks how long a list of the JSON last written is: length PATH N.
func length(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: length PATH N")
	}
	list, ok := answer(ts, args[0]).([]any)
	if want := args[1]; !ok || strconv.Itoa(len(list)) != want {
		ts.Fatalf("%s has %d entries, want %s", args[0], len(list), want)
	}
}

// sums checks that in the table last written fresh + stored + short = want, for
// every vegetable and week.
func sums(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 0 {
		ts.Fatalf("usage: sums")
	}
	var table desk.OutlookResult
	if err := json.Unmarshal([]byte(ts.ReadFile("stdout")), &table); err != nil {
		ts.Fatalf("the answer is no table: %v", err)
	}
	for _, v := range table.Vegetables {
		for i, want := range v.WantKg {
			if got := v.FreshKg[i] + v.StoredKg[i] + v.ShortKg[i]; math.Abs(got-want) > 1e-6 {
				ts.Fatalf("%s, week %d: fresh + stored + short is %g, want %g", v.Name, i, got, want)
			}
		}
	}
}
