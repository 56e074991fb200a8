package cli

import (
	"sort"

	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/words"
)

// checkFilesCommand checks the files of a holding and tells every fault at once.
type checkFilesCommand struct {
	Path    string `arg:"" optional:"" placeholder:"FOLDER|ZIP"`
	Holding string `placeholder:"FOLDER|ZIP|ID"`
	Sample  string `placeholder:"main|south"`
	JSON    bool   `name:"json"`
}

// checkAnswer is the JSON of a check.
type checkAnswer struct {
	OK       bool           `json:"ok"`
	Rows     map[string]int `json:"rows"`
	Faults   []faultRow     `json:"faults"`
	Warnings []faultRow     `json:"warnings"`
}

// Run checks the files. Faults make the command fail after they were told.
func (c *checkFilesCommand) Run(a *App) error {
	result, err := c.check(a)
	if err != nil {
		return err
	}
	if c.JSON {
		if err := a.json(checkAnswer{
			OK: result.OK, Rows: result.Rows,
			Faults: a.faultRows(result.Faults), Warnings: a.faultRows(result.Warnings),
		}); err != nil {
			return err
		}
	} else {
		a.showCheck(result)
	}
	if !result.OK {
		return failed(exitCodes[fault.Invalid])
	}
	return nil
}

// check looks at the folder or zip named, or at a demo holding.
func (c *checkFilesCommand) check(a *App) (*desk.CheckResult, error) {
	path := c.Path
	if path == "" {
		path = c.Holding
	}
	if c.Sample == "" && isPath(path) {
		return desk.CheckFiles(path)
	}
	h, err := holdingFlags{Holding: path, Sample: c.Sample}.open(a)
	if err != nil {
		return nil, err
	}
	return desk.CheckHolding(h)
}

// showCheck writes what is wrong, what is odd and how much was read.
func (a *App) showCheck(r *desk.CheckResult) {
	if len(r.Faults) > 0 {
		a.say(words.P("cli.check_faults", words.Args{"n": len(r.Faults)}))
		a.faultGrid(r.Faults).write(a)
	}
	if len(r.Warnings) > 0 {
		a.say(words.P("cli.check_warnings", words.Args{"n": len(r.Warnings)}))
		a.faultGrid(r.Warnings).write(a)
	}
	if r.OK {
		a.say(words.P("cli.check_ok", nil))
	}
	names := make([]string, 0, len(r.Rows))
	for name, rows := range r.Rows {
		if rows > 0 {
			names = append(names, name)
		}
	}
	sort.Strings(names)
	for _, name := range names {
		a.say(words.P("cli.check_rows", words.Args{"table": name, "n": r.Rows[name]}))
	}
}

// faultGrid lays out faults, each with its place.
func (a *App) faultGrid(list fault.List) *grid {
	g := &grid{}
	for _, f := range list {
		g.add("  "+a.where(f.At), a.Words.Text(f.Phrase))
	}
	return g
}

// failed is the exit code of a command that has already said why.
type failed int

func (failed) Error() string { return "failed" }
