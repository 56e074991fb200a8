package desk

import (
	"runtime"
	"sync"

	"garner/internal/cal"
	"garner/internal/exchange"
	"garner/internal/holding"
	"garner/internal/larder"
	"garner/internal/outlook"
	"garner/internal/words"
)

// OutlookOptions say which table is wanted.
type OutlookOptions struct {
	From     cal.Date              // first day; its week's Monday begins the table; None: the holding's today
	Weeks    int                   // number of weeks, 0: 78
	Years    int                   // futures, 0: 200
	Seed     uint64                // of the random streams
	Members  bool                  // keep every future
	Workers  int                   // 0: as many as there are processors
	Progress func(done, total int) // may be nil
}

// OutlookResult is the table a year ahead.
type OutlookResult struct {
	Holding        string           `json:"holding"`
	From           cal.Date         `json:"from"`
	Years          int              `json:"years"`
	Seed           uint64           `json:"seed"`
	Weeks          []cal.Date       `json:"weeks"`
	Vegetables     []VegetableTable `json:"vegetables"`
	Share          []float64        `json:"share"`
	HomeGrownShare float64          `json:"home_grown_share"`
	Thin           []ThinPlate      `json:"thin"`
	CannotGrow     []Barren         `json:"cannot_grow"` // what is wanted and no bed can grow
	Lead           words.Phrase     `json:"-"`           // what is first to be told: of the plate
	OddWants       []words.Phrase   `json:"-"`           // wants that are hardly meant as they are told
}

// ThinPlate is a run of weeks in which the plate is thin, the one in which most
// lacks first.
type ThinPlate struct {
	First cal.Date `json:"first"`
	Last  cal.Date `json:"last"`
	Share float64  `json:"share"`
	On    []string `json:"on"`    // what is on it, the heaviest first
	Lacks []string `json:"lacks"` // what is not
}

// VegetableTable is one vegetable by week [kg], means over the futures unless
// named otherwise.
type VegetableTable struct {
	Name       string            `json:"name"`
	Importance larder.Importance `json:"importance,omitempty"`
	WantKg     []float64         `json:"want_kg"`
	FreshKg    []float64         `json:"fresh_kg"`
	StoredKg   []float64         `json:"stored_kg"`
	BoughtKg   []float64         `json:"bought_kg,omitempty"` // of what lacks; left out where none may be
	ShortKg    []float64         `json:"short_kg"`
	OverKg     []float64         `json:"over_kg"`
	ShortKgP10 []float64         `json:"short_kg_p10"`
	ShortKgP50 []float64         `json:"short_kg_p50"`
	ShortKgP90 []float64         `json:"short_kg_p90"`
	GapChance  []float64         `json:"gap_chance"`
	Members    []VegetableMember `json:"members,omitempty"`
}

// VegetableMember is one vegetable by week under one future [kg].
type VegetableMember struct {
	FreshKg  []float64 `json:"fresh_kg"`
	StoredKg []float64 `json:"stored_kg"`
	ShortKg  []float64 `json:"short_kg"`
	OverKg   []float64 `json:"over_kg"`
}

// The table's usual length and number of futures.
const (
	usualWeeks = 78
	usualYears = 200
)

// memory keeps results between tables of one process.
var memory = sync.OnceValue(outlook.NewMemory)

// Outlook computes a holding's table a year ahead.
func Outlook(h *holding.Holding, o OutlookOptions) (*OutlookResult, error) {
	setting, err := settingOf(h, o)
	if err != nil {
		return nil, err
	}
	t, err := outlook.Compute(setting, memory())
	if err != nil {
		return nil, err
	}
	s := t.Summarise(o.Members)
	r := &OutlookResult{Holding: h.Name, From: t.From, Years: t.Years, Seed: t.Seed,
		Share: s.Share, HomeGrownShare: s.Year, Thin: []ThinPlate{}}
	for k := 0; k < t.Weeks; k++ {
		r.Weeks = append(r.Weeks, t.From+cal.Date(7*k))
	}
	for i := range s.Vegetables {
		r.Vegetables = append(r.Vegetables, vegetableTable(&s.Vegetables[i]))
	}
	for _, thin := range s.ThinTimes(t.From) {
		r.Thin = append(r.Thin, ThinPlate{First: thin.First, Last: thin.Last, Share: thin.Share, On: thin.On, Lacks: thin.Lacks})
	}
	r.Lead = lead(setting.Book, t, s)
	return r, r.warn(h)
}

// Table computes a holding's table with every future kept.
func Table(h *holding.Holding, o OutlookOptions) (*outlook.Table, error) {
	s, err := settingOf(h, o)
	if err != nil {
		return nil, err
	}
	return outlook.Compute(s, memory())
}

// settingOf fills in what the options leave open.
func settingOf(h *holding.Holding, o OutlookOptions) (outlook.Setting, error) {
	b, err := bookOf(h)
	if err != nil {
		return outlook.Setting{}, err
	}
	now, err := today(h)
	if err != nil {
		return outlook.Setting{}, err
	}
	s := outlook.Setting{Holding: h, Book: b, Today: now, From: now.Monday(), Weeks: o.Weeks, Years: o.Years,
		Seed: o.Seed, Workers: o.Workers, Progress: o.Progress}
	if o.From.IsSet() && o.From != 0 {
		s.From = o.From.Monday()
	}
	if s.Weeks == 0 {
		s.Weeks = usualWeeks
	}
	if s.Years == 0 {
		s.Years = usualYears
	}
	if s.Workers == 0 {
		s.Workers = runtime.GOMAXPROCS(0)
	}
	return s, nil
}

func vegetableTable(w *outlook.Weekly) VegetableTable {
	t := VegetableTable{Name: w.Name, Importance: w.Importance, BoughtKg: w.Bought, WantKg: w.Want, FreshKg: w.Fresh, StoredKg: w.Stored, ShortKg: w.Short, OverKg: w.Over,
		ShortKgP10: w.ShortP10, ShortKgP50: w.ShortP50, ShortKgP90: w.ShortP90, GapChance: w.GapChance}
	for _, m := range w.Members {
		t.Members = append(t.Members, VegetableMember{FreshKg: m.Fresh, StoredKg: m.Stored, ShortKg: m.Short, OverKg: m.Over})
	}
	return t
}

// warn tells what is wrong with the wants though they may stand.
func (r *OutlookResult) warn(h *holding.Holding) error {
	found, err := barrenOf(h)
	if err != nil {
		return err
	}
	r.CannotGrow = append([]Barren{}, found...)
	for _, odd := range exchange.OddWants(h) {
		w := &h.Wants[odd.Row]
		name := w.Vegetable
		for _, g := range h.Groups {
			if g.ID == w.Group {
				name = g.Name
			}
		}
		r.OddWants = append(r.OddWants, words.P("desk.want_odd", words.Args{"vegetable": name, "says": odd.Says}))
	}
	return nil
}
