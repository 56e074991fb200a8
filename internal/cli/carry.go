package cli

import (
	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/holding"
	"garner/internal/words"
)

// carryCommand shows next year, made from this one.
type carryCommand struct {
	Leave []string `placeholder:"PLANTING" sep:","`
	holdingFlags
	JSON bool `name:"json"`
}

// Run asks the desk for next year and shows what clashes or went wrong first.
func (c *carryCommand) Run(a *App) error {
	var f flags
	leave := map[string]bool{}
	for _, id := range c.Leave {
		leave[id] = true
	}
	v, err := ask(a, c.holdingFlags, &f, func(h *holding.Holding, _ reporter) (*desk.CarryView, error) {
		return desk.CarryForward(h, desk.CarryOptions{Leave: leave})
	})
	if err != nil {
		return err
	}
	if c.JSON {
		return a.json(a.carryAnswer(v))
	}
	a.showCarried(v)
	return nil
}

func (a *App) showCarried(v *desk.CarryView) {
	for _, p := range v.Lead {
		a.sentence(p)
	}
	if len(v.Wrong) > 0 {
		a.gap()
		a.say(words.P("cli.carry_wrong", nil))
	}
	for _, w := range v.Wrong {
		a.say(words.P("cli.carry_line", words.Args{"says": asSentence(a.Words.Text(w.Says))}))
		if len(w.Beds) > 0 {
			a.say(words.P("cli.carry_other", words.Args{"beds": w.Beds}))
		}
	}
	if len(v.Lines) == 0 {
		return
	}
	a.gap()
	rows := grid{right: []bool{false, false, true, false}}
	for _, l := range v.Lines {
		rows.add(a.Words.Format().Date(l.Date), l.Name, a.Words.Format().SquareMetres(l.AreaM2), l.BedName)
	}
	rows.write(a)
}

// carryAnswer is the JSON of next year.
type carryAnswer struct {
	Year     string          `json:"year"`
	Next     string          `json:"next"`
	Draft    string          `json:"draft"` // id of the plan it would be
	Base     string          `json:"base"`
	Sowings  []carriedRow    `json:"sowings"`
	Covers   []carriedCover  `json:"covers"`
	Planned  []string        `json:"planned"` // plantings of this year that next year has already
	Left     []string        `json:"left"`
	Troubles []carriedWrong  `json:"troubles"`
	Changes  []carriedChange `json:"changes"` // rows of changes.csv
}

// carriedRow is a sowing of next year.
type carriedRow struct {
	ID      string    `json:"id"`
	From    string    `json:"from"`
	Crop    string    `json:"crop"`
	Use     string    `json:"use"`
	FromBed string    `json:"from_bed"`
	Bed     string    `json:"bed"`
	Date    cal.Date  `json:"date"`
	ClearBy *cal.Date `json:"clear_by"`
	AreaM2  float64   `json:"area_m2"`
	LaterD  int       `json:"later_d"` // the grower's own shift, kept
}

// carriedCover is a cover of next year.
type carriedCover struct {
	ID   string   `json:"id"`
	Bed  string   `json:"bed"`
	Kind string   `json:"kind"`
	On   cal.Date `json:"on"`
	Off  cal.Date `json:"off"`
}

// carriedWrong is what clashes or went wrong.
type carriedWrong struct {
	Kind      string   `json:"kind"`
	Planting  string   `json:"planting"`
	Carried   string   `json:"carried"`
	Bed       string   `json:"bed"`
	Text      string   `json:"text"`
	OtherBeds []string `json:"other_beds"`
}

// carriedChange is a step of the draft.
type carriedChange struct {
	Order    int    `json:"order"`
	Action   string `json:"action"`
	Planting string `json:"planting"`
	Value    string `json:"value"`
}

func (a *App) carryAnswer(v *desk.CarryView) carryAnswer {
	r := carryAnswer{Year: v.Named, Next: v.Next, Draft: v.Draft.ID, Base: v.Base.ID, Sowings: []carriedRow{}, Covers: []carriedCover{},
		Planned: append([]string{}, v.Planned...), Left: append([]string{}, v.Left...), Troubles: []carriedWrong{}, Changes: []carriedChange{}}
	for _, l := range v.Lines {
		r.Sowings = append(r.Sowings, carriedRow{l.ID, l.From, l.Crop, l.Use, l.FromBed, l.Bed, l.Date, dated(l.ClearBy), l.AreaM2, l.LaterD})
	}
	for _, c := range v.Covers {
		r.Covers = append(r.Covers, carriedCover{c.ID, c.Bed, string(c.Kind), c.On, c.Off})
	}
	for _, w := range v.Wrong {
		r.Troubles = append(r.Troubles, carriedWrong{string(w.Kind), w.Planting, w.Carried, w.Bed, a.Words.Text(w.Says), append([]string{}, w.Others...)})
	}
	for _, c := range v.Steps() {
		r.Changes = append(r.Changes, carriedChange{c.Order, c.Action, c.Planting, c.Value})
	}
	return r
}
