package jobs

import (
	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/holding"
	"garner/internal/outlook"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/words"
)

// Question is what jobs are asked for.
type Question struct {
	Holding   *holding.Holding
	Book      *crop.Book // with the holding's own numbers
	Table     *outlook.Table
	Plantings []plan.Planting // of the plan in force, with its changes made
	Today     cal.Date
	Until     cal.Date   // the day after the last
	Water     []Watering // what the beds need, from the water balance
	Skies     []Sky      // the weather of the days round today, from a week before it

	// LastDay tells the last sensible day to sow or plant what the plan has; where it
	// tells none, and where it is nil, the last day of the kind of work counts.
	LastDay func(*plan.Planting) (cal.Date, bool)
}

// Watering is water that a bed needs.
type Watering struct {
	Bed    string
	On     cal.Date
	Last   cal.Date // the day from which its crops suffer
	Litres float64
	Why    words.Phrase
}

// deriver holds what jobs are derived from.
type deriver struct {
	*Question
	*facts
	beds    map[string]*place.Bed
	sites   map[string]int // place of a site in the holding, by id
	spells  map[string][]place.CoverSpell
	lives   []*life
	byBed   map[string][]*life
	fresh   map[string][]float64 // eaten fresh, by planting and week of the table [kg]
	answers answers
	out     []Job
}

// Derive returns the jobs that are due from today until a day, along the walking
// route. What is overdue and still makes sense is among them. The error is of the
// package's own data.
func Derive(q Question) ([]Job, error) {
	f, err := known()
	if err != nil {
		return nil, err
	}
	d := &deriver{Question: &q, facts: f, beds: map[string]*place.Bed{}, sites: map[string]int{},
		spells: map[string][]place.CoverSpell{}, byBed: map[string][]*life{}, fresh: freshOf(q.Table), answers: answersOf(q.Holding.Answers)}
	for i := range q.Holding.Sites {
		d.sites[q.Holding.Sites[i].ID] = i
	}
	for i := range q.Holding.Beds {
		b := &q.Holding.Beds[i]
		d.beds[b.ID] = b
		d.spells[b.ID] = place.CoversOf(q.Holding.Covers, b.ID)
	}
	d.lay()
	for _, l := range d.lives {
		d.starts(l)
		d.harvests(l)
		d.cares(l)
	}
	d.covers()
	d.nightCovers()
	d.gathers()
	d.waste()
	if err := d.soil(); err != nil {
		return nil, err
	}
	d.grounds()
	d.stores()
	d.waterings()
	d.own()
	d.feedAlong()
	d.walk(d.out)
	for i := range d.out {
		d.out[i].Part = part(&d.out[i])
	}
	return d.out, nil
}

// freshOf is what is eaten fresh of each planting, by week [kg].
func freshOf(t *outlook.Table) map[string][]float64 {
	out := map[string][]float64{}
	for i := range t.Vegetables {
		for _, s := range t.Sources(t.Vegetables[i].Name) {
			if s.Planting == "" {
				continue
			}
			if out[s.Planting] == nil {
				out[s.Planting] = make([]float64, t.Weeks)
			}
			for w, kg := range s.Fresh {
				out[s.Planting][w] += kg // a group's row tells what it eats, a vegetable's the rest
			}
		}
	}
	return out
}

// emit takes a job in when it is due in time and still makes sense.
func (d *deriver) emit(j Job) {
	if j.PutOff.IsSet() {
		j.Best = max(j.Best, j.PutOff)
		j.Last = max(j.Last, j.Best)
	}
	k := d.kinds[j.Kind]
	if k.barred != "" && d.bars(j.Stop.Site, k.barred) {
		j.Kind = k.instead
		k = d.kinds[j.Kind]
		j = told(j, j.name)
	}
	if j.Last < d.Today {
		return
	}
	d.fair(&j, &k)
	if j.Due(d.Today) >= d.Until {
		return
	}
	d.reckon(&j, &k)
	j.Round, j.asked, j.rank = k.round, k.asked, k.rank
	d.out = append(d.out, j)
}

// reckon works out a job's minutes and who can do it with what.
func (d *deriver) reckon(j *Job, k *kindFacts) {
	if k.litresM2 > 0 && j.Amount.Litres == 0 {
		j.Amount.Litres = k.litresM2 * j.Amount.M2
		*j = told(*j, j.name)
	}
	minutes := k.minutes + k.perKg*j.Amount.Kg + k.perL*j.Amount.Litres
	if j.byRow {
		minutes += k.perM * j.Amount.RowM
	} else {
		minutes += k.perM2*j.Amount.M2 + k.perPlant*j.Amount.Plants
	}
	times := 1.0
	j.Tools, times = d.allowed(k.tools, j.Stop.Site)
	j.Minutes += minutes * times
	if j.Who == "" {
		j.Who = k.who
	}
}

// day fills a job's days round its best one, as its kind has it.
func (d *deriver) day(j Job, best cal.Date) Job {
	k := d.kinds[j.Kind]
	j.First, j.Best, j.Last = best-k.before, best, best+k.after
	return j
}

// begin is a job of a kind at a place.
func begin(kind Kind, rule, series string, at Stop) Job {
	return Job{ID: series, Series: series, Kind: kind, Rule: rule, Stop: at, Odds: 1, First: cal.None, Best: cal.None, Last: cal.None, PutOff: cal.None}
}

// once takes in a job that comes once.
func (d *deriver) once(j Job) {
	t := d.answers.of(j.ID)
	if t.finished {
		return
	}
	j.PutOff = t.putOff[0]
	if _, put := t.putOff[0]; !put {
		j.PutOff = cal.None
	}
	d.emit(j)
}
