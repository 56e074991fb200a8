package cli

import (
	"embed"
	"fmt"
	"io"
	"sort"
	"strings"

	"github.com/alecthomas/kong"

	"garner/internal/desk"
)

//go:embed shells
var shells embed.FS

var shellNames = []string{"bash", "zsh", "fish"}

// completeName is the hidden command that the shells ask.
const completeName = "complete-line"

// completionCommand writes the script that lets a shell complete garner's
// commands, flags and closed lists.
type completionCommand struct {
	Shell string `arg:"" placeholder:"bash|zsh|fish"`
}

// Run writes the script of the shell named.
func (c *completionCommand) Run(a *App) error {
	var f flags
	shell := f.oneOf("SHELL", c.Shell, shellNames)
	if err := f.err(); err != nil {
		return err
	}
	script, err := shells.ReadFile("shells/garner." + shell)
	if err != nil {
		return err
	}
	_, err = a.Stdout.Write(script)
	return err
}

// completeCommand writes what may come next, one a line. Its words are those of
// the line so far without garner itself; the last one is being typed.
type completeCommand struct {
	Words []string `arg:"" optional:""`
}

// Run writes the candidates.
func (c *completeCommand) Run(a *App) error {
	parser, err := a.parser(func(int) {})
	if err != nil {
		return err
	}
	given := c.Words
	if len(given) > 0 && given[0] == "--" {
		given = given[1:]
	}
	writeCandidates(a.Stdout, candidates(parser.Model.Node, given))
	return nil
}

func writeCandidates(w io.Writer, names []string) {
	sort.Strings(names)
	for _, name := range names {
		fmt.Fprintln(w, name)
	}
}

// candidates returns what may stand in place of the last word.
func candidates(node *kong.Node, given []string) []string {
	last, before := "", ""
	if len(given) > 0 {
		last = given[len(given)-1]
	}
	if len(given) > 1 {
		before = given[len(given)-2]
	}
	for _, word := range given[:max(0, len(given)-1)] {
		if next := child(node, word); next != nil {
			node = next
		}
	}
	names := closedList(before)
	if names == nil && strings.HasPrefix(last, "-") {
		names = flagNames(node)
	} else if names == nil {
		names = childNames(node)
	}
	var fit []string
	for _, name := range names {
		name = strings.ReplaceAll(name, " ", "-")
		if strings.HasPrefix(name, last) {
			fit = append(fit, name)
		}
	}
	return fit
}

// closedList returns the values that may follow a word, nil when it has none.
func closedList(before string) []string {
	switch before {
	case "--cover":
		return covers()
	case "--method":
		return methods
	case "--section":
		return desk.BoardSections()
	case "completion":
		return shellNames
	}
	return nil
}

func flagNames(node *kong.Node) []string {
	var names []string
	for _, group := range node.AllFlags(true) {
		for _, flag := range group {
			names = append(names, "--"+flag.Name)
		}
	}
	return names
}

func childNames(node *kong.Node) []string {
	var names []string
	for _, c := range node.Children {
		if !c.Hidden {
			names = append(names, c.Name)
		}
	}
	return names
}

func child(node *kong.Node, name string) *kong.Node {
	for _, c := range node.Children {
		if c.Name == name && !c.Hidden {
			return c
		}
	}
	return nil
}
