package advise

import (
	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/outlook"
	"garner/internal/plan"
	"garner/internal/words"
)

// Candidate is one crop that could fill a space, weighed.
type Candidate struct {
	Planting  plan.Planting // as it would stand in the plan; its weight holds under its id
	Crop      *crop.Crop
	Use       *crop.Use
	Odds      float64 // of a usable crop, 0-1
	Ready     Spread
	HeldD     float64 // it holds its ground within the table, mean over the futures [d]
	DropKg    float64 // drop in expected shortage over the whole table, all vegetables [kg]
	Drops     []outlook.Drop
	Fills     Fill      // where it helps its own vegetable most
	Last      cal.Date  // last sensible day to sow or plant; None: not known
	RaiseFrom cal.Date  // day to sow what is planted out; None: sown where it grows
	Late      bool      // too late to raise plants: they must be had
	SeedG     float64   // seed it takes [g]; 0: not sown, or not told
	Plants    float64   // plants, sets or tubers it takes; 0: sown
	Lot       *plan.Lot // what is on hand for it; nil: to be got
	Enough    bool      // the lot is enough
	Reason    words.Phrase
	Clash     *words.Phrase // why it should not come here
	Remarks   []words.Phrase
}

// Fill is the time in which a candidate mends a shortage.
type Fill struct {
	First, Last cal.Date // first and last day of the weeks
	Weeks       int
	ShortKg     float64 // what lacks a week in them now, mean [kg]
	LeftKg      float64 // what still lacks with it [kg]
}

// candidate puts together what is known of a weighed way.
func (a *Adviser) candidate(w *way, weight *outlook.Weight) Candidate {
	p := w.planting
	c := Candidate{Planting: p, Crop: w.crop, Use: w.use, DropKg: weight.DropKg, Drops: weight.Drops, Last: cal.None, RaiseFrom: cal.None, Lot: w.lot}
	for i := range weight.Fates {
		if f := &weight.Fates[i]; f.Planting == p.ID {
			c.Odds, c.Ready = a.oddsOf(f, w.use, &p), readyOf(f.Years, f.First)
			c.HeldD = a.Held(f, &p)
		}
	}
	c.need()
	if p.Method == plan.Plant || p.Method == plan.Cutting {
		c.RaiseFrom = p.Date - cal.Date(w.use.RaiseDays)
		c.Late = c.RaiseFrom < a.Today && (w.lot == nil || w.lot.Form != "plants")
	}
	if c.Lot == nil {
		c.Lot = a.onHand(&c)
	}
	c.Enough = c.Lot != nil && c.enough()
	c.Fills = a.fills(&c)
	if a.Clash != nil {
		c.Clash = a.Clash(&c.Planting)
	}
	return c
}

// Held is how long a planting that was weighed holds its ground within the table,
// mean over the futures [d].
func (a *Adviser) Held(f *outlook.Fate, p *plan.Planting) float64 {
	sum := 0.0
	for _, y := range f.Years {
		gone := a.Table.End()
		if y.Gone >= 0 {
			gone = min(gone, f.First+cal.Date(y.Gone)+1)
		}
		sum += float64(max(0, gone-p.Date))
	}
	return sum / float64(max(1, len(f.Years)))
}

// fills finds the weeks in which a candidate helps its vegetable most: those with
// at least a quarter of its best week's help.
func (a *Adviser) fills(c *Candidate) Fill {
	var f Fill
	for i := range c.Drops {
		d := &c.Drops[i]
		if d.Vegetable != c.Use.Vegetable {
			continue
		}
		best := 0.0
		for _, kg := range d.ByWeek {
			best = max(best, kg)
		}
		if best <= 0 {
			return f
		}
		short := a.weeklyShort(d.Vegetable)
		for k, kg := range d.ByWeek {
			if kg < best/4 {
				continue
			}
			if f.Weeks == 0 {
				f.First = a.Table.From + cal.Date(7*k)
			}
			f.Last = a.Table.From + cal.Date(7*k+6)
			f.Weeks++
			f.ShortKg += short[k]
			f.LeftKg += max(0, short[k]-kg)
		}
		f.ShortKg /= float64(max(1, f.Weeks))
		f.LeftKg /= float64(max(1, f.Weeks))
	}
	return f
}

// weeklyShort is a vegetable's expected shortage by week [kg].
func (a *Adviser) weeklyShort(vegetable string) []float64 {
	for i := range a.Table.Vegetables {
		if a.Table.Vegetables[i].Name == vegetable {
			w := a.Table.Weekly(i, false)
			return w.Short
		}
	}
	return make([]float64, a.Table.Weeks)
}
