package watering

import (
	"garner/internal/cal"
	"garner/internal/outlook"
	"garner/internal/water"
)

// Scarce asks who gets the water when there is not enough.
type Scarce struct {
	Site string // whose water it is
	Days int    // that it must last, from today
}

// Parts are the shares of its need that a bed is tried with.
var Parts = [...]float64{0, 0.5, 1}

// Claim is what a bed needs in the days, and what its plantings lose without it.
type Claim struct {
	Bed      string
	NeedL    float64                        // that keeps it from want all the while, mean of the futures
	PartL    [len(Parts)]float64            // that each part of it comes to: on every day that share of what is due
	Lost     [len(Parts)]map[string]float64 // share of what each planting is still to bring that is lost, 0-1, mean of the futures
	Wants    cal.Date                       // the first day of want without water, in the middle of the futures; None: it lasts
	Stage    string                         // that of the planting which loses most without any
	Planting string                         // the planting which loses most
}

// Claims works out what the planted beds of a site need and lose, in the order of the
// holding. What a loss is worth is the table's to say; see Share.
//
// What a planting loses is its response factor times the water it misses over the water
// of its season, weighed by its stage; one that is young is lost for good after days
// of full want (see lostDays).
//
// Left out: what is lost after these days.
func Claims(s outlook.Setting, m *outlook.Memory, ask Scarce) ([]Claim, error) {
	g, err := toldOf(s, m)
	if err != nil {
		return nil, err
	}
	weights, err := weightsOfStages()
	if err != nil {
		return nil, err
	}
	r := &rationing{setting: &s, ask: &ask, told: &g, weights: weights, beds: map[string]*claim{}}
	inTurn := s
	inTurn.Workers = 1 // losses are summed over futures, always in the same order
	if err = outlook.Tracts(inTurn, m, usualFutures, s.Today-pastDays, s.Today+max(seasonAhead, cal.Date(ask.Days)), func() func(*outlook.Tract) error { return r.see }); err != nil {
		return nil, err
	}
	return r.claims(), nil
}

// seasonAhead is how far ahead a crop's season is followed for the water of all of it [d].
const seasonAhead = 150

// lostDays are the days of full want after which a young planting is gone. judgement:
// seedlings and plugs in dry ground hold out about a week.
const lostDays = 8

// claim gathers what a bed needs and loses.
type claim struct {
	needL  float64
	partL  [len(Parts)]float64
	lost   [len(Parts)]map[string]float64
	wants  []cal.Date
	stages map[string]map[string]float64 // by planting and stage [mm, weighed]
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
		into = &claim{stages: map[string]map[string]float64{}}
		for k := range into.lost {
			into.lost[k] = map[string]float64{}
		}
		for range r.futures() {
			into.wants = append(into.wants, cal.None)
		}
		r.beds[t.Bed.ID] = into
	}
	b, _ := c.past(t, r.told, today)
	end := min(today+r.ask.Days, len(c.given))
	for k, part := range Parts {
		if err := r.lose(t, into, b, k, part, today, end); err != nil {
			return err
		}
	}
	return nil
}

func (r *rationing) futures() int { return min(usualFutures, r.setting.Years) }

// lose adds what a tract is given and its plantings lose on a part of what it needs.
func (r *rationing) lose(t *outlook.Tract, into *claim, b water.Balance, k int, part float64, from, to int) error {
	c := &r.course
	missed := make([]float64, len(t.Growing)) // weighed [mm]
	dead := make([]float64, len(t.Growing))   // days of full want while young
	given := 0.0
	for i := from; i < to; i++ {
		g := c.given[i]
		mm := part * b.LeastMM(c.soil, &c.stands[i], &g)
		f := c.day(&b, i, mm)
		given += mm * c.areaM2[i]
		if f.Stress >= 1 {
			continue
		}
		if part == 0 {
			into.wants[t.Future] = sooner(into.wants[t.Future], c.date(i))
		}
		short := (1 - f.Stress) * c.stands[i].Basal * c.given[i].ReferenceMM
		for p := range t.Growing {
			stage := stageOf(t.Growing[p].Use, &t.Growing[p].Days[i])
			if stage == "" || !t.Growing[p].Days[i].There {
				continue
			}
			if stage == "young" {
				dead[p] += 1 - f.Stress
			}
			weighed := short * r.weights[stage]
			missed[p] += weighed
			if part == 0 {
				into.at(t.Growing[p].Planting.ID, stage, weighed)
			}
		}
	}
	into.partL[k] += given / float64(r.futures())
	if part == 1 {
		into.needL = into.partL[k]
	}
	return r.book(t, into.lost[k], missed, dead)
}

func (c *claim) at(planting, stage string, weighed float64) {
	if c.stages[planting] == nil {
		c.stages[planting] = map[string]float64{}
	}
	c.stages[planting][stage] += weighed
}

// book turns what was missed into shares lost.
func (r *rationing) book(t *outlook.Tract, into map[string]float64, missed, dead []float64) error {
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
		into[p.Planting.ID] += share / float64(r.futures())
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

func (r *rationing) claims() []Claim {
	var out []Claim
	for i := range r.setting.Holding.Beds {
		id := r.setting.Holding.Beds[i].ID
		c := r.beds[id]
		if c == nil {
			continue
		}
		t := Claim{Bed: id, NeedL: c.needL, PartL: c.partL, Lost: c.lost, Wants: dateQuantile(c.wants, 0.5)}
		t.Planting, t.Stage = c.most()
		out = append(out, t)
	}
	return out
}

// most is the planting that loses most, and the stage at which it does.
func (c *claim) most() (planting, stage string) {
	share, weighed := 0.0, 0.0
	for id, l := range c.lost[0] {
		if l > share || l == share && id < planting {
			planting, share = id, l
		}
	}
	for name, w := range c.stages[planting] {
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
