package cli

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"github.com/alecthomas/kong"

	"garner/internal/words"
)

// helpWidth is the widest line of a help page.
const helpWidth = 96

// helpPage writes the help of the command asked about. Its texts are in the
// catalogue: cli.help.<command> in one line, .usage, .more and .examples, each
// flag under cli.help.flag.<name>, or cli.help.<command>.flag.<name> where a
// command means something of its own by it.
func (a *App) helpPage(_ kong.HelpOptions, ctx *kong.Context) error {
	node := askedAbout(ctx)
	key := helpKey(node)
	a.helpText(key, "")
	a.helpBlock("cli.help_usage", key+".usage")
	a.helpText(key+".more", "\n")
	a.helpCommands(node)
	a.helpFlags(node, key)
	a.helpBlock("cli.help_examples", key+".examples")
	return nil
}

// askedAbout returns the command whose help is wanted.
func askedAbout(ctx *kong.Context) *kong.Node {
	for i := len(ctx.Path) - 1; i >= 0; i-- {
		if command := ctx.Path[i].Command; command != nil {
			return command
		}
	}
	return ctx.Model.Node
}

// helpTexts is where the texts of the help pages begin in the catalogue.
const helpTexts = "cli.help."

// helpKey is where the texts of a command are.
func helpKey(node *kong.Node) string {
	switch {
	case node.Parent == nil:
		return helpTexts + "garner"
	case node.Parent.Parent == nil:
		return helpTexts + flagKey(node.Name)
	}
	return helpKey(node.Parent) + "." + flagKey(node.Name)
}

// flagKey writes a flag's or command's name as part of a catalogue key.
func flagKey(name string) string { return strings.ReplaceAll(name, "-", "_") }

// helpText writes a text in lines that fit.
func (a *App) helpText(key, before string) {
	if !a.Words.Has(key) {
		return
	}
	fmt.Fprint(a.Stdout, before)
	for _, paragraph := range strings.Split(a.head(key), "\n") {
		for _, line := range wrap(paragraph, helpWidth) {
			fmt.Fprintln(a.Stdout, line)
		}
	}
}

// helpBlock writes a text as it stands, indented under a heading.
func (a *App) helpBlock(heading, key string) {
	if !a.Words.Has(key) {
		return
	}
	fmt.Fprintf(a.Stdout, "\n%s\n", a.head(heading))
	for _, line := range strings.Split(a.head(key), "\n") {
		fmt.Fprintf(a.Stdout, "  %s\n", line)
	}
}

func (a *App) helpCommands(node *kong.Node) {
	var rows [][2]string
	for _, c := range node.Children {
		if !c.Hidden {
			rows = append(rows, [2]string{c.Name, a.help(helpKey(c))})
		}
	}
	a.helpRows("cli.help_commands", rows)
}

func (a *App) helpFlags(node *kong.Node, key string) {
	var rows [][2]string
	for _, argument := range node.Positional {
		rows = append(rows, [2]string{argument.Tag.PlaceHolder, a.flagHelp(key, "argument."+flagKey(argument.Name))})
	}
	for _, flag := range node.Flags {
		if flag.Name == "help" {
			continue
		}
		name := "--" + flag.Name
		if !flag.IsBool() {
			name += " " + flag.FormatPlaceHolder()
		}
		rows = append(rows, [2]string{name, a.flagHelp(key, "flag."+flagKey(flag.Name))})
	}
	rows = append(rows, [2]string{"--help", a.help(helpTexts + "flag.help")}) // last, wherever it was declared
	a.helpRows("cli.help_flags", rows)
}

// helpRows writes names and their texts in two columns under a heading.
func (a *App) helpRows(heading string, rows [][2]string) {
	if len(rows) == 0 {
		return
	}
	width := 0
	for _, r := range rows {
		width = max(width, utf8.RuneCountInString(r[0]))
	}
	fmt.Fprintf(a.Stdout, "\n%s\n", a.head(heading))
	for _, r := range rows {
		name := r[0]
		for _, line := range wrap(r[1], helpWidth-width-4) {
			fmt.Fprintf(a.Stdout, "  %s  %s\n", padded(name, width), line)
			name = ""
		}
	}
}

// flagHelp prefers a command's own text over the one all commands share.
func (a *App) flagHelp(key, name string) string {
	if own := key + "." + name; a.Words.Has(own) {
		return a.help(own)
	}
	return a.help(helpTexts + name)
}

// help returns a text of the help, its key when there is none.
func (a *App) help(key string) string { return a.Words.Text(words.P(key, nil)) }

// wrap breaks a text between words into lines of at most width letters.
func wrap(text string, width int) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		if line != "" && utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) > width {
			lines = append(lines, line)
			line = ""
		}
		if line != "" {
			line += " "
		}
		line += word
	}
	return append(lines, line)
}
