package cli

// How garner speaks at the prompt.
//
//   - Answers go to standard output, everything else to standard error, so that
//     an answer can be piped on.
//   - A mistake is one line that begins with "error:" and says what was given,
//     where, and what would be right. What to try next follows as "hint:" lines.
//     What is odd but accepted begins with "warning:".
//   - What is said is a sentence, or two: first what is wrong, then what to do.
//   - Several faults are told at once, each with its file, row and column.
//   - Commands, flags and names appear as they are typed.
//   - Odds are told as years in ten, dates as people write them, weights in the
//     unit a kitchen uses.
//   - No exclamation, no praise, no blame. Only our own mistakes are apologised
//     for, and those without a trace of the inside.

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"garner/internal/fault"
	"garner/internal/words"
)

// exitCodes is what each kind of fault leaves behind for a script.
var exitCodes = map[fault.Kind]int{
	fault.Internal:   1,
	fault.Invalid:    2,
	fault.Conflict:   2,
	fault.OutOfRange: 2,
	fault.NotFound:   3,
	fault.NoAnswer:   4,
	fault.Storage:    5,
}

// tell says an error on standard error and returns its exit code. An error that
// is none of ours is never shown: it gets a plain apology.
func (a *App) tell(err error) int {
	var list fault.List
	var one *fault.Error
	var use *usageError
	var said failed
	switch {
	case errors.As(err, &said):
		return int(said)
	case errors.As(err, &use):
		a.line("cli.error", use.phrase)
		a.line("cli.hint", words.P("cli.hint_help", words.Args{"command": use.command}))
		return exitCodes[fault.Invalid]
	case errors.As(err, &list) && len(list) > 0:
		a.tellList(list)
		return exitCodes[list[0].Kind]
	case errors.As(err, &one) && one.Kind != fault.Internal:
		a.line("cli.error", a.placed(one))
		return exitCodes[one.Kind]
	}
	a.apologise()
	if a.Inside {
		fmt.Fprintln(a.Stderr, err)
	}
	return exitCodes[fault.Internal]
}

// tellList says several faults, each on its line.
func (a *App) tellList(list fault.List) {
	if len(list) == 1 {
		a.line("cli.error", a.placed(list[0]))
		return
	}
	a.line("cli.error", words.P("cli.faults", words.Args{"n": len(list)}))
	for _, f := range list {
		fmt.Fprintf(a.Stderr, "  %s\n", a.placed(f))
	}
}

// mostWarnings is how many warnings are said before the rest are only counted.
const mostWarnings = 12

// warn says what is odd but was accepted, or was left out.
func (a *App) warn(list fault.List) {
	for i, f := range list {
		if i == mostWarnings {
			a.line("cli.warning", words.P("cli.more_warnings", words.Args{"n": len(list) - i}))
			return
		}
		a.line("cli.warning", a.placed(f))
	}
}

// apologise is all that is said of a mistake of our own.
func (a *App) apologise() {
	a.line("cli.error", words.P("cli.our_mistake", nil))
	a.line("cli.hint", words.P("cli.hint_our_mistake", nil))
}

// line writes one line to standard error; text is a phrase or a string.
func (a *App) line(key string, text any) {
	fmt.Fprintln(a.Stderr, a.Words.Text(words.P(key, words.Args{"text": text})))
}

// placed puts a fault into words with its place in the file before it.
func (a *App) placed(f *fault.Error) string {
	text := a.Words.Text(f.Phrase)
	where := a.where(f.At)
	if where == "" {
		return text
	}
	return a.Words.Text(words.P("cli.placed", words.Args{"where": where, "text": text}))
}

// where names file, row and column as far as they are known.
func (a *App) where(at fault.Place) string {
	var parts []string
	if at.File != "" {
		parts = append(parts, at.File)
	}
	if at.Row > 0 {
		parts = append(parts, a.Words.Text(words.P("cli.row", words.Args{"row": strconv.Itoa(at.Row)})))
	}
	if at.Column != "" {
		parts = append(parts, at.Column)
	}
	return strings.Join(parts, ", ")
}

// usageError is a command line that cannot be read.
type usageError struct {
	phrase  words.Phrase
	command string // the command whose help shows what it takes
}

func (e *usageError) Error() string { return e.phrase.Key }
