package cli_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"

	"garner/internal/cli"
)

// The transcripts in testdata run the program as a person would: real
// arguments, real files, exit codes and both outputs.

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"garner": func() { os.Exit(cli.Main("test")) },
	})
}

func TestTranscripts(t *testing.T) {
	hand, err := filepath.Abs("../exchange/testdata/hand")
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir: "testdata", Cmds: commands, RequireExplicitExec: true,
		Setup: func(env *testscript.Env) error {
			env.Setenv("HAND", hand) // a small holding written by hand
			env.Setenv("GARNER_DATA", filepath.Join(env.WorkDir, "kept"))
			return nil
		},
	})
}
