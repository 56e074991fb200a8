package jobs

import (
	"strconv"
	"strings"

	"garner/internal/cal"
	"garner/internal/plan"
	"garner/internal/words"
)

// own are the jobs of the grower's own.
func (d *deriver) own() {
	for i := range d.Holding.OwnJobs {
		o := &d.Holding.OwnJobs[i]
		j := begin(Own, "", "own:"+o.ID, d.ownStop(o))
		j.Planting, j.Who = o.Planting, Who(o.Who)
		j.Title = words.P("jobs.title_own", words.Args{"name": o.Name})
		if o.Minutes > 0 {
			j.Minutes = o.Minutes - d.kinds[Own].minutes
		}
		if o.EveryD == 0 {
			d.once(d.day(why(j, "own", o.Date), o.Date))
			continue
		}
		until := endless
		if o.Until.IsSet() {
			until = o.Until
		}
		d.repeat(j, again{from: o.Date, every: o.EveryD, until: until, since: cal.None}, func(next *Job, on cal.Date) bool {
			next.Why = words.P("jobs.why_own_again", words.Args{"days": o.EveryD})
			return true
		})
	}
}

func (d *deriver) ownStop(o *plan.OwnJob) Stop {
	bed := o.Bed
	for _, l := range d.lives {
		if bed == "" && o.Planting != "" && l.p.ID == o.Planting {
			bed = l.bed.ID
		}
	}
	if b := d.beds[bed]; b != nil {
		return d.stop(b)
	}
	return d.elsewhere(o.Site, AtSite)
}

// MayBeWater tells whether an id may be that of a watering, so that what the beds want
// need not be known to find any other job.
func MayBeWater(id string) bool { return strings.HasPrefix(id, string(Water)+":") }

// waterings are what the water balance asks for.
func (d *deriver) waterings() {
	for i := range d.Water {
		w := &d.Water[i]
		bed := d.beds[w.Bed]
		if bed == nil || w.Litres <= 0 {
			continue
		}
		j := begin(Water, "", "water:"+w.Bed, d.stop(bed))
		j.ID += ":" + strconv.Itoa(int(w.On)) // a bed is watered on one day once
		j.Amount.Litres = w.Litres
		j = d.day(told(j, ""), w.On)
		if w.Last.IsSet() {
			j.Last = w.Last
		}
		j.Why = w.Why
		d.once(j)
	}
}
