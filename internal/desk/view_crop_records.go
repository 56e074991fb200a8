package desk

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/holding"
	"garner/internal/plan"
	"garner/internal/record"
)

// RecordsView is what a household wrote down of a crop.
type RecordsView struct {
	Records   int            // of its plantings, of all kinds
	Plantings []RecordedLine // with at least one record, the newest first
	Days      Between        // from going into the ground to the first pick
	YieldKgM2 Between        // picked in all from a square metre, of plantings that are over
}

// Between is the range of a figure over some plantings.
type Between struct {
	Least, Most float64
	Of          int // plantings; 0: nothing is known
}

func (b *Between) add(v float64) {
	if b.Of == 0 || v < b.Least {
		b.Least = v
	}
	if b.Of == 0 || v > b.Most {
		b.Most = v
	}
	b.Of++
}

// RecordedLine is one planting as it was recorded.
type RecordedLine struct {
	ID, Label, Bed string
	Date           cal.Date
	Emerged        cal.Date // None: not recorded
	First, Last    cal.Date // pick; None: not recorded
	PickedKg       float64
	KgM2           float64 // 0: nothing was weighed
	Over           bool    // cleared, or its last pick was recorded
	Records        int
}

// recordedOf gathers the records of a crop's plantings in the plan in force.
func recordedOf(h *holding.Holding, id string) RecordsView {
	var v RecordsView
	list, _ := plan.Resolve(h.Plans, h.Plantings, h.Changes, h.Plan)
	n := newNamer(&asked{holding: h})
	for i := range list {
		p := &list[i]
		if p.Crop != id {
			continue
		}
		line := recordedLine(h, p)
		if line.Records == 0 {
			continue
		}
		line.Bed = n.bed(p.Bed)
		v.Records += line.Records
		v.Plantings = append(v.Plantings, line)
		if line.First.IsSet() {
			v.Days.add(float64(line.First - line.Date))
		}
		if line.Over && line.KgM2 > 0 {
			v.YieldKgM2.add(line.KgM2)
		}
	}
	slices.SortStableFunc(v.Plantings, func(a, b RecordedLine) int { return int(b.Date - a.Date) })
	return v
}

func recordedLine(h *holding.Holding, p *plan.Planting) RecordedLine {
	l := RecordedLine{ID: p.ID, Label: p.Use, Date: p.Date, Emerged: cal.None, First: cal.None, Last: cal.None}
	for _, r := range h.Records {
		if r.Planting != p.ID {
			continue
		}
		l.Records++
		switch r.What {
		case record.Planted:
			l.Date = r.Date
		case record.Emerged:
			l.Emerged = r.Date
		case record.FirstPick, record.Picked, record.LastPick:
			if !l.First.IsSet() || r.Date < l.First {
				l.First = r.Date
			}
			l.Last = max(l.Last, r.Date)
			if r.Unit == "kg" {
				l.PickedKg += r.Value
			}
		}
		l.Over = l.Over || r.What == record.Cleared || r.What == record.LastPick
	}
	if p.AreaM2 > 0 {
		l.KgM2 = l.PickedKg / p.AreaM2
	}
	return l
}
