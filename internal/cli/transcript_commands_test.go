package cli_test

import (
	"encoding/json"
	"fmt"
	"strconv"
	"strings"

	"github.com/rogpeppe/go-internal/testscript"
)

// commands are what transcripts may say beside testscript's own.
var commands = map[string]func(ts *testscript.TestScript, neg bool, args []string){
	"exits":  exits,
	"fields": fields,
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
	var answer any
	if err := json.Unmarshal([]byte(ts.ReadFile("stdout")), &answer); err != nil {
		ts.Fatalf("the answer is no JSON: %v", err)
	}
	at, err := follow(answer, args[0])
	if err != nil {
		ts.Fatalf("%v", err)
	}
	object, ok := at.(map[string]any)
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
