package cli

import (
	"bufio"
	"fmt"
	"io"
	"os"
	"runtime/debug"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/alecthomas/kong"

	"garner/internal/fault"
	"garner/internal/words"
)

// App is garner at one prompt: where it writes, in which language, and what it
// knows of the terminal.
type App struct {
	Stdout   io.Writer
	Stderr   io.Writer
	Terminal bool // standard error is a terminal: progress may be shown
	Words    *words.Catalogue
	Version  string
	Inside   bool // show what went wrong inside as well, for whoever mends it

	DataDir func() (string, error) // where holdings are kept; nil: the platform's own place
}

// insideVariable is the variable of the environment that asks to see the inside
// of our own mistakes.
const insideVariable = "GARNER_INSIDE"

// grammar is the command line as a whole. Its texts are in the
// catalogue; see help.go.
type grammar struct {
	Serve      serveCommand      `cmd:""`
	Outlook    outlookCommand    `cmd:""`
	Grow       growCommand       `cmd:""`
	Window     windowCommand     `cmd:""`
	Weather    weatherCommands   `cmd:""`
	Ground     groundCommands    `cmd:""`
	Advise     adviseCommand     `cmd:""`
	Larder     larderCommand     `cmd:""`
	Jobs       jobsCommand       `cmd:""`
	Keep       keepCommand       `cmd:"" name:"keep-or-clear"`
	Draft      draftCommand      `cmd:""`
	Mend       mendCommand       `cmd:""`
	Risk       riskCommand       `cmd:""`
	Compare    compareCommand    `cmd:""`
	Carry      carryCommand      `cmd:"" name:"carry-forward"`
	Water      waterCommand      `cmd:""`
	ET0        et0Command        `cmd:"" name:"et0"`
	Check      checkCommand      `cmd:""`
	CheckFiles checkFilesCommand `cmd:"" name:"check-files"`
	Import     importCommand     `cmd:""`
	Export     exportCommand     `cmd:""`
	Completion completionCommand `cmd:""`
	Version    versionCommand    `cmd:""`
	Complete   completeCommand   `cmd:"" name:"complete-line" hidden:"" passthrough:""`
}

type weatherCommands struct {
	Show     weatherShowCommand   `cmd:"" default:"withargs"`
	Describe describeCommand      `cmd:""`
	Generate generateCommand      `cmd:""`
	Import   weatherImportCommand `cmd:""`
}

// Main runs garner with the arguments of the process and returns its exit code.
func Main(version string) int {
	out := bufio.NewWriterSize(os.Stdout, 1<<16)
	app := &App{
		Stdout: out, Stderr: os.Stderr, Terminal: isTerminal(os.Stderr),
		Words: words.English(), Version: version, Inside: os.Getenv(insideVariable) != "",
	}
	code := app.Run(os.Args[1:])
	if err := out.Flush(); err != nil && code == 0 {
		return app.tell(err)
	}
	return code
}

// Run runs one command line and returns its exit code. No panic gets past it.
func (a *App) Run(args []string) (code int) {
	defer func() {
		if cause := recover(); cause != nil {
			a.apologise()
			if a.Inside {
				fmt.Fprintf(a.Stderr, "%v\n%s", cause, debug.Stack())
			}
			code = exitCodes[fault.Internal]
		}
	}()
	ctx, helped, err := a.parse(tidy(args))
	if helped {
		return 0
	}
	if err != nil {
		return a.tell(err)
	}
	if err := ctx.Run(a); err != nil {
		return a.tell(err)
	}
	return 0
}

// parse reads the arguments; helped is true when they asked for help, which has
// then been given.
func (a *App) parse(args []string) (ctx *kong.Context, helped bool, err error) {
	parser, err := a.parser(func(int) { helped = true })
	if err != nil {
		return nil, false, err
	}
	ctx, err = parser.Parse(args)
	if helped {
		return nil, true, nil
	}
	if err != nil {
		return nil, false, &usageError{
			phrase:  words.P("cli.usage", words.Args{"problem": asSentence(err.Error())}),
			command: commandNamed(parser.Model.Node, args),
		}
	}
	return ctx, false, nil
}

func (a *App) parser(exit func(int)) (*kong.Kong, error) {
	return kong.New(&grammar{},
		kong.Name("garner"),
		kong.Writers(a.Stdout, a.Stderr),
		kong.Exit(exit),
		kong.Help(a.helpPage),
	)
}

// asSentence begins what the parser said as a sentence; its end is the text's.
func asSentence(problem string) string {
	return capital(strings.TrimSuffix(strings.TrimSuffix(problem, "."), "?"))
}

// sentence says a phrase with a capital at its beginning.
func (a *App) sentence(p words.Phrase) {
	a.say(words.P("cli.sentence", words.Args{"text": capital(a.Words.Text(p))}))
}

// capital gives a text a capital at its beginning.
func capital(text string) string {
	first, size := utf8.DecodeRuneInString(text)
	if size == 0 {
		return ""
	}
	return string(unicode.ToUpper(first)) + text[size:]
}

// commandNamed returns the command that the leading words of the arguments name,
// so that a hint can point at the right help.
func commandNamed(node *kong.Node, args []string) string {
	named := "garner"
	for _, arg := range args {
		if node = child(node, arg); node == nil {
			break
		}
		named += " " + arg
	}
	return named
}

// isTerminal tells whether a file is a terminal or the like.
func isTerminal(f *os.File) bool {
	info, err := f.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}
