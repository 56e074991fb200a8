package desk

import (
	"math"

	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/holding"
	"garner/internal/outlook"
	"garner/internal/place"
	"garner/internal/watering"
	"garner/internal/words"
)

// ShortOptions ask who gets the water that is left.
type ShortOptions struct {
	Site  string  // "": the first with a planted bed
	LeftL float64 // litres; below 0: what the site's sources hold and give
	Days  int     // it must last; 0: two weeks
	Seed  uint64
}

// The days that water must last where nothing is told, and at most [d].
const (
	usualShortDays = 14
	mostShortDays  = 60
	mostLeftL      = 1e6
)

// ShortView is the order in which beds get the water.
type ShortView struct {
	Today    cal.Date       `json:"today"`
	Site     string         `json:"site"`
	SiteName string         `json:"-"`
	Days     int            `json:"days"`
	LeftL    float64        `json:"left_l"`
	Told     bool           `json:"left_told"` // the litres were asked with; else they are what the sources hold
	Endless  bool           `json:"not_short"` // a source without limit is open and no litres were told
	CanL     float64        `json:"can_l"`
	NeedL    float64        `json:"need_l"` // of all beds
	Turns    []WaterTurn    `json:"beds"`
	Sources  []SourceLeft   `json:"sources"`
	SpareL   float64        `json:"spare_l"` // left over when all have theirs
	Saves    float64        `json:"saves_portions"`
	AtStake  float64        `json:"at_stake_portions"`
	Sites    []place.Site   `json:"-"`
	Says     []words.Phrase `json:"-"`
}

// WaterTurn is a bed's turn.
type WaterTurn struct {
	Bed      string    `json:"bed"`
	Name     string    `json:"name"`
	NeedL    float64   `json:"need_l"`
	GetL     float64   `json:"get_l"`
	Cans     float64   `json:"get_cans"`
	AtStake  float64   `json:"at_stake_portions"` // lost at the table without any water
	Half     float64   `json:"half_portions"`     // lost with half of what it needs
	HalfL    float64   `json:"half_l"`            // which is so much
	Part     bool      `json:"part"`              // it gets less than it needs
	Saves    float64   `json:"saves_portions"`
	PerCan   float64   `json:"saves_portions_per_can"`
	Wants    *cal.Date `json:"wants"`
	Stage    string    `json:"stage,omitempty"`
	Planting string    `json:"planting,omitempty"`
	What     string    `json:"-"` // the planting in words
}

// SourceLeft is what a source can give in the days.
type SourceLeft struct {
	ID   string   `json:"id"`
	Name string   `json:"name"`
	Shut bool     `json:"shut"` // all the while
	L    *float64 `json:"l"`    // nil: not limited
}

// WaterShort works out who gets the water of a holding.
func WaterShort(h *holding.Holding, o ShortOptions) (*ShortView, error) {
	h, _ = withWeather(h)
	s, err := settingOf(h, OutlookOptions{Seed: o.Seed})
	if err != nil {
		return nil, err
	}
	m := memory()
	scales, err := outlook.NewScales(s, m)
	if err != nil {
		return nil, err
	}
	return shortView(&asked{holding: h, setting: s}, m, scales, o)
}

// WaterShort works out who gets the water of the holding as it stands.
func (o *Office) WaterShort(ask ShortOptions) (*ShortView, error) {
	a, err := o.askKnown()
	if err != nil {
		return nil, err
	}
	d := a.answer("water is short")
	d.Text(ask.Site)
	d.Float(ask.LeftL)
	d.Int(int64(ask.Days))
	name := d.Sum()
	if known, ok := o.views.shorts.get(name); ok {
		return known, nil
	}
	scales, err := o.scales(a)
	if err != nil {
		return nil, err
	}
	v, err := shortView(a, o.views.sky, scales, ask)
	if err == nil {
		o.views.shorts.keep(name, v)
	}
	return v, err
}

// scales are those of the holding as it stands.
func (o *Office) scales(a *asked) (*outlook.Scales, error) {
	o.computing.Lock()
	defer o.computing.Unlock()
	return outlook.NewScales(a.setting, o.memory)
}

func shortView(a *asked, m *outlook.Memory, scales *outlook.Scales, o ShortOptions) (*ShortView, error) {
	if o.Days == 0 {
		o.Days = usualShortDays
	}
	if o.Days < 1 || o.Days > mostShortDays {
		return nil, fault.New(fault.OutOfRange, "desk.short_days", words.Args{"most": mostShortDays}).In(fault.Place{Column: "days"})
	}
	if o.LeftL > mostLeftL || math.IsNaN(o.LeftL) {
		return nil, fault.New(fault.OutOfRange, "desk.short_left", nil).In(fault.Place{Column: "left"})
	}
	v := &ShortView{Today: a.setting.Today, Days: o.Days, CanL: canOf(a.holding), Turns: []WaterTurn{}, Sources: []SourceLeft{}, Sites: a.holding.Sites}
	if err := v.chooseSite(a.holding, o.Site); err != nil || v.Site == "" {
		return v, err
	}
	v.sources(a.holding)
	left := o.LeftL
	if v.Told = left >= 0; !v.Told {
		left = v.LeftL
	}
	v.LeftL = left
	if v.Endless = v.Endless && !v.Told; v.Endless {
		left = mostLeftL
	}
	claims, err := watering.Claims(a.setting, m, watering.Scarce{Site: v.Site, Days: o.Days})
	if err != nil {
		return nil, err
	}
	stakes, err := stakesOf(a, scales, claims)
	if err != nil {
		return nil, err
	}
	v.share(a, watering.Share(stakes, left))
	return v, nil
}

func canOf(h *holding.Holding) float64 {
	if h.CanL > 0 {
		return h.CanL
	}
	return usualCanL
}

func (v *ShortView) chooseSite(h *holding.Holding, given string) error {
	for _, s := range h.Sites {
		if given == s.ID || given == "" && v.Site == "" && len(bedsOn(h, s.ID)) > 0 {
			v.Site, v.SiteName = s.ID, s.Name
		}
	}
	if given != "" && v.Site == "" {
		return fault.New(fault.NotFound, "desk.site_not_there", words.Args{"given": given})
	}
	return nil
}

// sources tells what each source of the site gives in the days, butts taken to be full.
func (v *ShortView) sources(h *holding.Holding) {
	for i := range h.Sources {
		w := &h.Sources[i]
		if w.Site != v.Site {
			continue
		}
		open := 0
		for d := range v.Days {
			if !w.ShutOn(v.Today + cal.Date(d)) {
				open++
			}
		}
		line := SourceLeft{ID: w.ID, Name: w.Name, Shut: open == 0}
		l := math.Inf(1)
		if w.HoldsL > 0 {
			l = w.HoldsL
		}
		if w.LPerWeek > 0 {
			l = min(l, w.LPerWeek*float64(open)/7)
		}
		switch {
		case open == 0:
			l = 0
			line.L = &l
		case math.IsInf(l, 1):
			v.Endless = true
		default:
			l = wholeL(l)
			line.L = &l
			v.LeftL += l
		}
		v.Sources = append(v.Sources, line)
	}
}

// share puts the turns into words and sums them.
func (v *ShortView) share(a *asked, turns []watering.Turn) {
	n := newNamer(a)
	got := 0.0
	for i := range turns {
		t := &turns[i]
		w := WaterTurn{Bed: t.Bed, Name: n.bed(t.Bed), NeedL: wholeL(t.NeedL), GetL: wholeL(t.GetL), Cans: CansOf(t.GetL, v.CanL),
			AtStake: tenthOf(t.Loses[0]), Half: tenthOf(t.Loses[1]), HalfL: wholeL(t.PartL[1]), Part: t.Part, Saves: tenthOf(t.Saves), Wants: dateOrNone(t.Wants), Stage: t.Stage, Planting: t.Planting}
		if t.NeedL > 0 {
			w.PerCan = tenthOf((t.Loses[0] - t.Loses[len(t.Loses)-1]) / t.NeedL * v.CanL)
		}
		if t.Planting != "" {
			p := n.plantings[t.Planting]
			w.What = n.use(p.Crop, p.Use)
		}
		v.Turns = append(v.Turns, w)
		v.NeedL += t.NeedL
		v.Saves += t.Saves
		v.AtStake += t.Loses[0]
		got += t.GetL
	}
	v.NeedL, v.Saves, v.AtStake = wholeL(v.NeedL), tenthOf(v.Saves), tenthOf(v.AtStake)
	if !v.Endless {
		v.SpareL = wholeL(max(0, v.LeftL-got))
	}
}
