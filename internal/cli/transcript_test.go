package cli_test

import (
	"os"
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
	testscript.Run(t, testscript.Params{Dir: "testdata", Cmds: commands, RequireExplicitExec: true})
}
