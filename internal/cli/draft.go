package cli

import (
	"bytes"
	"errors"
	"math"
	"strings"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/words"
)

// draftCommand drafts a whole year.
type draftCommand struct {
	Seconds string   `placeholder:"S"`
	Steps   string   `placeholder:"N"`
	Seed    string   `placeholder:"S"`
	Pin     []string `placeholder:"PLANTING" sep:"none"`
	Forbid  []string `placeholder:"CROP[@BED]" sep:"none"`
	Hours   string   `placeholder:"H"`
	Without bool     `name:"without-wishes"`
	MPS     string   `name:"mps" placeholder:"FILE"`
	LP      string   `name:"lp" placeholder:"FILE"`

	Evaluate string `placeholder:"SOLUTION"`
	holdingFlags
	JSON bool `name:"json"`
}

// The longest search [s] and the most moves.
const (
	maxSeconds = 3600
	maxSteps   = 1_000_000_000
)

// Run asks the desk for the year and shows it.
func (c *draftCommand) Run(a *App) error {
	var f flags
	options := desk.DraftOptions{Seconds: f.above("--seconds", c.Seconds, maxSeconds), Steps: f.whole("--steps", c.Steps, 1, maxSteps, 0),
		Seed: f.seed(c.Seed), Pins: f.named("--pin", "cli.draft_pin_such", c.Pin), Forbids: c.forbids(&f), Hours: c.hours(&f), Alone: c.Without}
	if c.Evaluate != "" {
		file, err := open(c.Evaluate)
		if err != nil {
			return err
		}
		defer file.Close()
		options.Solution = file
	}
	var mps, lp bytes.Buffer
	if c.MPS != "" {
		options.MPS = &mps
	}
	if c.LP != "" {
		options.LP = &lp
	}
	v, err := ask(a, c.holdingFlags, &f, func(h *holding.Holding, progress reporter) (*desk.DraftView, error) {
		options.Progress = progress
		return desk.DraftYear(h, options)
	})
	if err != nil {
		return err
	}
	if err := errors.Join(writeAsked(c.MPS, &mps), writeAsked(c.LP, &lp)); err != nil {
		return err
	}
	if c.JSON {
		return a.json(a.draftAnswer(v))
	}
	a.showDraft(v)
	return nil
}

// writeAsked writes a file that was asked for.
func writeAsked(path string, content *bytes.Buffer) error {
	if path == "" {
		return nil
	}
	if err := writeWhole(path, content.Bytes()); err != nil {
		return unwritable(path, err)
	}
	return nil
}

// forbids reads crops that are not to come into a bed.
func (c *draftCommand) forbids(f *flags) []desk.DraftCrop {
	f.named("--forbid", "cli.draft_forbid_such", c.Forbid)
	var out []desk.DraftCrop
	for _, given := range c.Forbid {
		crop, bed, _ := strings.Cut(given, "@")
		out = append(out, desk.DraftCrop{Crop: crop, Bed: bed})
	}
	return out
}

// hours reads the hours of a week; nil when they are not told.
func (c *draftCommand) hours(f *flags) *float64 {
	if c.Hours == "" {
		return nil
	}
	hours, ok := decimal(c.Hours)
	if !ok || hours > hoursAWeek {
		f.refuse(fault.Invalid, words.P("cli.flag_hours", words.Args{"given": c.Hours}))
	}
	return &hours
}

// hoursAWeek is all the hours there are in a week.
const hoursAWeek = 168

// named refuses a flag that may be given again and was given with nothing.
func (f *flags) named(flag, what string, given []string) []string {
	for _, g := range given {
		if strings.TrimSpace(g) == "" {
			f.refuse(fault.Invalid, words.P("cli.flag_names_nothing", words.Args{"flag": flag, "what": words.P(what, nil)}))
		}
	}
	return given
}

// above reads a number above nothing; nothing gives 0.
func (f *flags) above(flag, given string, high float64) float64 {
	if given == "" {
		return 0
	}
	x, ok := decimal(given)
	if !ok || x <= 0 || x > high {
		f.refuse(fault.OutOfRange, words.P("cli.flag_above", words.Args{"flag": flag, "given": given, "high": high}))
	}
	return x
}

// draftAnswer is the JSON of a drafted year.
type draftAnswer struct {
	Objective float64        `json:"objective"`
	Bound     *float64       `json:"bound"` // null: none is known
	Unsown    float64        `json:"unsown"`
	Solver    *float64       `json:"solver_objective"` // null: no solution was judged, or it told none
	Broken    []string       `json:"broken"`
	From      cal.Date       `json:"from"`
	Weeks     int            `json:"weeks"`
	Futures   int            `json:"futures"`
	Seed      uint64         `json:"seed"`
	Steps     int            `json:"steps"`
	Sowings   int            `json:"sowings"`
	Kept      int            `json:"kept"`
	ShareNow  float64        `json:"home_grown_share_now"`
	ShareThen float64        `json:"home_grown_share"`
	Plantings []draftPlanted `json:"plantings"`
	Wishes    []string       `json:"wishes"` // that were heeded: kept, then asked for this once
	Covers    []draftCover   `json:"covers"`
	Notes     []string       `json:"notes"`
}

// draftCover is a cover that a draft lays over a bed.
type draftCover struct {
	Bed  string   `json:"bed"`
	Kind string   `json:"kind"`
	On   cal.Date `json:"on"`
	Off  cal.Date `json:"off"`
}

// draftPlanted is one planting of a draft as the JSON shows it.
type draftPlanted struct {
	Planting map[string]string `json:"planting"` // its row of plantings.csv
	Odds     float64           `json:"odds"`
	Again    bool              `json:"family_again"` // its family stands on some of this ground twice
	Reason   string            `json:"reason"`
}

func (a *App) draftAnswer(v *desk.DraftView) draftAnswer {
	r := draftAnswer{Objective: v.Objective, Unsown: v.Unsown, From: v.From, Weeks: v.Weeks, Futures: v.Futures, Seed: v.Seed, Steps: v.Steps,
		Sowings: v.Sowings, Kept: v.Kept, ShareNow: v.ShareNow, ShareThen: v.ShareThen, Plantings: []draftPlanted{}, Wishes: []string{}, Covers: []draftCover{}, Notes: []string{}}
	if !math.IsInf(v.Bound, 0) {
		r.Bound = &v.Bound
	}
	r.Solver, r.Broken = v.Solver, []string{}
	for _, b := range v.Broken {
		r.Broken = append(r.Broken, a.Words.Text(b))
	}
	for i := range v.Rows {
		r.Plantings = append(r.Plantings, draftPlanted{v.Rows[i].Cells, v.Rows[i].Odds, v.Rows[i].Again, a.Words.Text(v.Rows[i].Says)})
	}
	for _, w := range v.Wishes {
		r.Wishes = append(r.Wishes, a.Words.Text(w))
	}
	for _, c := range v.Covers {
		r.Covers = append(r.Covers, draftCover{c.Bed, string(c.Kind), c.On, c.Off})
	}
	for _, n := range v.Notes {
		r.Notes = append(r.Notes, a.Words.Text(n))
	}
	return r
}

// showDraft writes a drafted year bed by bed.
func (a *App) showDraft(v *desk.DraftView) {
	if len(v.Broken) > 0 {
		a.say(words.P("cli.draft_broken", words.Args{"objective": v.Objective, "n": len(v.Broken)}))
		for _, b := range v.Broken {
			a.say(words.P("cli.list_item", words.Args{"text": b}))
		}
		return
	}
	a.say(words.P("cli.draft_title", words.Args{"from": v.From, "weeks": v.Weeks, "futures": v.Futures, "n": len(v.Rows), "kept": v.Kept}))
	a.say(words.P("cli.draft_share", words.Args{"now": v.ShareNow, "then": v.ShareThen}))
	a.say(words.P("cli.draft_short", words.Args{"now": v.ShortNow, "then": v.ShortThen}))
	a.say(desk.Better(v.Objective, v.Bound))
	for _, n := range v.Notes {
		a.say(n)
	}
	if len(v.Wishes) > 0 {
		a.say(words.P("cli.draft_wishes", words.Args{"n": len(v.Wishes)}))
		for _, w := range v.Wishes {
			a.say(words.P("cli.list_item", words.Args{"text": w}))
		}
	}
	bed := ""
	for i := range v.Rows {
		r := &v.Rows[i]
		if r.BedName != bed {
			bed = r.BedName
			a.gap()
			a.say(words.P("cli.draft_bed", words.Args{"bed": bed}))
		}
		a.say(words.P("cli.draft_row", words.Args{"date": r.Date, "name": r.Name, "how": words.P("cli.draft_"+r.Method, nil), "area": r.AreaM2}))
		a.say(words.P("cli.draft_why", words.Args{"why": r.Says}))
		if r.Under.Key != "" {
			a.say(words.P("cli.draft_why", words.Args{"why": r.Under}))
		}
		if r.Again {
			a.say(words.P("cli.draft_again", nil))
		}
	}
}
