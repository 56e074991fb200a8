package jobs

import (
	"garner/internal/cal"
	"garner/internal/record"
)

// dryFeedDays is how long a dry feed lasts [d]. Common practice, no source: four weeks and
// more by the label.
const dryFeedDays = 28

// fed is how often a planting was fed by the records of it and of its bed since it stands,
// and from when on the days to its next feed count; None: never. A dry feed lasts longer
// than what is stirred into water, which comes every so many days.
func (d *deriver) fed(l *life, every int) (times int, since cal.Date) {
	since = cal.None
	for i := range d.Holding.Records {
		r := &d.Holding.Records[i]
		if !fedAt(r, l) {
			continue
		}
		times++
		on := r.Date
		if r.Unit == record.KgUnit {
			on += cal.Date(max(0, dryFeedDays-every))
		}
		if !since.IsSet() || on > since {
			since = on
		}
	}
	return times, since
}

// fedIn tells whether a planting was fed within a season.
func (d *deriver) fedIn(l *life, first, last cal.Date) bool {
	for i := range d.Holding.Records {
		if r := &d.Holding.Records[i]; fedAt(r, l) && first <= r.Date && r.Date <= last {
			return true
		}
	}
	return false
}

// fedAt tells whether a record is of feed that a planting was given.
func fedAt(r *record.Record, l *life) bool {
	if r.What != record.Fed {
		return false
	}
	return r.Planting == l.p.ID || r.Planting == "" && r.Bed == l.p.Bed && l.planted.is() && r.Date >= l.planted.mid
}
