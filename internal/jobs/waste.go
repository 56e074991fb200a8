package jobs

import (
	"garner/internal/record"
	"garner/internal/words"
)

// freshWaste is for how long after it was seen a disease makes work of what it killed
// [d]. Judgement.
const freshWaste = 28

// waste is what was sick and must not go on the heap: it is burnt, or where the site
// allows no fire taken away.
func (d *deriver) waste() {
	for i := range d.Holding.Records {
		r := &d.Holding.Records[i]
		if !sick(r) || r.Date > d.Today || r.Date+freshWaste < d.Today {
			continue
		}
		bed := d.beds[r.Bed]
		m2 := 0.0
		for _, l := range d.lives {
			if r.Planting != "" && l.p.ID == r.Planting {
				bed, m2 = l.bed, l.p.AreaM2
			}
		}
		if bed == nil {
			continue
		}
		j := begin(Burn, "", "burn:"+r.ID, d.stop(bed))
		j.Planting, j.Amount.M2 = r.Planting, m2
		j = told(d.day(j, r.Date+1), "")
		j.Why = words.P("jobs.why_sick", words.Args{"date": r.Date})
		d.once(j)
	}
}

// sick tells whether a record is of a disease or pest that lives on in what it killed.
func sick(r *record.Record) bool {
	switch r.What {
	case record.Disease:
		return true
	case record.Died, record.Failing:
		return r.Problem != "" && !record.Plain(r.Problem)
	}
	return false
}
