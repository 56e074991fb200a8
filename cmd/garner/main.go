// Garner shows a household's table of home-grown vegetables a year ahead.
package main

import (
	"os"
	_ "time/tzdata" // a holding's zone is known on any machine

	"garner/internal/cli"
)

// version is set when the program is built by make.
var version = "unreleased"

func main() { os.Exit(cli.Main(version)) }
