package outlook

import (
	"garner/internal/cal"
	"garner/internal/num"
	"garner/internal/plan"
	"garner/internal/record"
	"garner/internal/season"
)

// losses are the records of what went of each planting. One that was moved as a
// whole is cleared, not lost.
type losses map[string][]record.Record

func lossesIn(records []record.Record) losses {
	out := losses{}
	for _, r := range records {
		if r.What == record.Died || r.What == record.Failing || r.What == record.Moved && r.Unit != "" {
			out[r.Planting] = append(out[r.Planting], r)
		}
	}
	return out
}

// of lists what was lost of a planting.
func (l losses) of(p *plan.Planting, use *prepared) []season.Loss {
	told := l[p.ID]
	if len(told) == 0 {
		return nil
	}
	var out []season.Loss
	for _, loss := range record.Losses(told, p.ID, p.AreaM2*use.use.PlantsPerM2()) {
		out = append(out, season.Loss{On: loss.On, Share: loss.Share})
	}
	return out
}

// endOf is the day a planting's ground is free, given the day it is cleared. One
// that was lost as a whole before that is not cleared any more: nothing of it is
// harvested on its last day.
func endOf(clear cal.Date, lost []season.Loss) (clears, free cal.Date) {
	if n := len(lost); n > 0 && lost[n-1].Share >= 1 {
		if on := lost[n-1].On; !clear.IsSet() || clear >= on {
			return cal.None, on
		}
	}
	return clear, clear
}

// digestLosses hashes what was lost of a planting.
func digestLosses(d *num.Digester, lost []season.Loss) {
	if len(lost) == 0 {
		return
	}
	d.Text("lost")
	d.Int(int64(len(lost)))
	for _, l := range lost {
		d.Int(int64(l.On))
		d.Float(l.Share)
	}
}
