package watering

import (
	"cmp"
	"slices"

	"garner/internal/cal"
	"garner/internal/outlook"
	"garner/internal/water"
)

// Scarce asks who gets the water when there is not enough.
type Scarce struct {
	Site  string  // whose water it is
	LeftL float64 // litres that are left
	Days  int     // that they must last, from today

	// Portions are what each planting is still expected to bring to the table; a
	// planting that is not in it brings nothing.
	Portions map[string]float64
}

// Turn is a bed in the order in which beds get water.
type Turn struct {
	Bed      string
	NeedL    float64  // that keeps it from want all the while, mean of the futures
	GetL     float64  // of what is left
	AtStake  float64  // portions that it loses without any water, mean of the futures
	Saves    float64  // portions that what it gets saves
	Wants    cal.Date // the first day of want without water, in the middle of the futures; None: it lasts
	Stage    string   // why: that of the planting which loses most
	Planting string   // the planting which loses most
}

// Short puts the planted beds of a site in the order in which a litre saves most at the
// table, and shares out what is left in that order: all that a bed needs before the next
// gets any. Beds that lose nothing come last, by the day on which they would want.
//
// What a planting loses is its response factor times the water it misses over the water
// of its season, weighed by its stage; one that is young is lost for good after days
// of full want (see lostDays). Kept: what is given never passes what is left or needed.
//
// Left out: what is lost after these days, and that a bed might do with half.
func Short(s outlook.Setting, m *outlook.Memory, ask Scarce) ([]Turn, error) {
	g, err := toldOf(s, m)
	if err != nil {
		return nil, err
	}
	weights, err := weightsOfStages()
	if err != nil {
		return nil, err
	}
	r := &rationing{setting: &s, ask: &ask, told: &g, weights: weights, beds: map[string]*claim{}}
	if err = outlook.Tracts(s, m, usualFutures, s.Today-pastDays, s.Today+max(seasonAhead, cal.Date(ask.Days)), r.see); err != nil {
		return nil, err
	}
	return r.turns(), nil
}

// seasonAhead is how far ahead a crop's season is followed for the water of all of it [d].
const seasonAhead = 150

// lostDays are the days of full want after which a young planting is gone. judgement:
// seedlings and plugs in dry ground hold out about a week.
const lostDays = 8

// claim gathers what a bed needs and loses, by future.
type claim struct {
	need, lost []float64
	wants      []cal.Date
	plantings  map[string]*loss
}

// loss is what one planting loses, summed over futures.
type loss struct {
	portions float64
	stages   map[string]float64
}

type rationing struct {
	setting *outlook.Setting
	ask     *Scarce
	told    *given
	weights map[string]float64
	beds    map[string]*claim
	course  course
}

func (r *rationing) see(t *outlook.Tract) error {
	if t.Bed.Site != r.ask.Site {
		return nil
	}
	c := &r.course
	if err := c.lay(t); err != nil {
		return err
	}
	today := c.at(r.setting.Today)
	if !stands(c, today) {
		return nil
	}
	into := r.beds[t.Bed.ID]
	if into == nil {
		n := min(usualFutures, r.setting.Years)
		into = &claim{need: make([]float64, n), lost: make([]float64, n), plantings: map[string]*loss{}}
		for range n {
			into.wants = append(into.wants, cal.None)
		}
		r.beds[t.Bed.ID] = into
	}
	b, _, _ := c.past(t, r.told, today)
	end := min(today+r.ask.Days, len(c.given))
	r.need(t, into, b, today, end)
	return r.lose(t, into, b, today, end)
}

// need adds the least that keeps a tract from want.
func (r *rationing) need(t *outlook.Tract, into *claim, b water.Balance, from, to int) {
	c := &r.course
	for i := from; i < to; i++ {
		g := c.given[i]
		mm := b.LeastMM(c.soil, &c.stands[i], &g)
		c.day(&b, i, mm)
		into.need[t.Future] += mm * c.areaM2[i]
	}
}

// lose adds what the plantings of a tract lose without any water.
func (r *rationing) lose(t *outlook.Tract, into *claim, b water.Balance, from, to int) error {
	c := &r.course
	missed := make([]float64, len(t.Growing)) // weighed [mm]
	dead := make([]float64, len(t.Growing))   // days of full want while young
	stages := make([]map[string]float64, len(t.Growing))
	for i := from; i < to; i++ {
		f := c.day(&b, i, 0)
		if f.Stress >= 1 {
			continue
		}
		into.wants[t.Future] = sooner(into.wants[t.Future], c.date(i))
		short := (1 - f.Stress) * c.stands[i].Basal * c.given[i].ReferenceMM
		for k := range t.Growing {
			stage := stageOf(t.Growing[k].Use, &t.Growing[k].Days[i])
			if stage == "" || !t.Growing[k].Days[i].There {
				continue
			}
			if stage == "young" {
				dead[k] += 1 - f.Stress
			}
			weighed := short * r.weights[stage]
			missed[k] += weighed
			if stages[k] == nil {
				stages[k] = map[string]float64{}
			}
			stages[k][stage] += weighed
		}
	}
	return r.book(t, into, missed, dead, stages)
}

// book turns what was missed into portions.
func (r *rationing) book(t *outlook.Tract, into *claim, missed, dead []float64, stages []map[string]float64) error {
	for k := range t.Growing {
		p := &t.Growing[k]
		season := seasonMM(&r.course, p)
		if missed[k] <= 0 || season <= 0 {
			continue
		}
		response, err := water.ResponseOf(p.Use.Crop)
		if err != nil {
			return err
		}
		share := min(1, water.YieldLost(1-min(1, missed[k]/season), response)+dead[k]/lostDays)
		portions := share * r.ask.Portions[p.Planting.ID]
		into.lost[t.Future] += portions
		l := into.plantings[p.Planting.ID]
		if l == nil {
			l = &loss{stages: map[string]float64{}}
			into.plantings[p.Planting.ID] = l
		}
		l.portions += portions
		for stage, weighed := range stages[k] {
			l.stages[stage] += weighed
		}
	}
	return nil
}

// seasonMM is the water that a planting's leaves ask for in all the days that are looked
// at [mm].
func seasonMM(c *course, p *outlook.Growing) (mm float64) {
	for i := range c.given {
		if p.Days[i].There {
			mm += c.stands[i].Basal * c.given[i].ReferenceMM
		}
	}
	return mm
}

// turns puts the beds in order and shares out what is left.
func (r *rationing) turns() []Turn {
	var out []Turn
	for i := range r.setting.Holding.Beds {
		id := r.setting.Holding.Beds[i].ID
		c := r.beds[id]
		if c == nil {
			continue
		}
		t := Turn{Bed: id, NeedL: mean(c.need), AtStake: mean(c.lost), Wants: dateQuantile(c.wants, 0.5)}
		t.Planting, t.Stage = c.most()
		out = append(out, t)
	}
	slices.SortStableFunc(out, byWorth)
	left := r.ask.LeftL
	for i := range out {
		t := &out[i]
		if t.AtStake <= 0 || t.NeedL <= 0 {
			continue
		}
		t.GetL = min(left, t.NeedL)
		left -= t.GetL
		t.Saves = t.AtStake * t.GetL / t.NeedL
	}
	return out
}

// byWorth puts first what saves most with a litre, then what would want soonest.
func byWorth(a, b Turn) int {
	if by := cmp.Compare(b.perLitre(), a.perLitre()); by != 0 {
		return by
	}
	switch {
	case a.Wants == b.Wants:
		return 0
	case sooner(a.Wants, b.Wants) == a.Wants:
		return -1
	}
	return 1
}

func (t *Turn) perLitre() float64 {
	if t.NeedL <= 0 {
		return 0
	}
	return t.AtStake / t.NeedL
}

// most is the planting that loses most, and the stage at which it does.
func (c *claim) most() (planting, stage string) {
	portions, weighed := 0.0, 0.0
	for id, l := range c.plantings {
		if l.portions > portions || l.portions == portions && id < planting {
			planting, portions = id, l.portions
		}
	}
	if planting == "" {
		return "", ""
	}
	for name, w := range c.plantings[planting].stages {
		if w > weighed || w == weighed && name < stage {
			stage, weighed = name, w
		}
	}
	return planting, stage
}

func mean(values []float64) (sum float64) {
	for _, v := range values {
		sum += v
	}
	return sum / float64(max(1, len(values)))
}
