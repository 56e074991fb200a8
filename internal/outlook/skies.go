package outlook

import (
	"garner/internal/cal"
	"garner/internal/climate"
)

// OpenDays is the open weather of a site over a run of days under one future. What it
// points to is not to be changed.
type OpenDays struct {
	Site    string
	Future  int
	First   cal.Date
	Days    []climate.Day
	AboveMJ []float64 // radiation above the air [MJ/m2]
}

// Skies shows the open weather of every site on the days from first up to end, under
// the first futures of the table.
func Skies(s Setting, m *Memory, futures int, first, end cal.Date, each func(*OpenDays) error) error {
	m.mu.Lock()
	defer m.mu.Unlock()
	m.begin()
	defer m.tidy()
	j := &job{Setting: s}
	defer func() { m.forget(j) }()
	if err := j.lay(m); err != nil {
		return err
	}
	from := max(0, int(first-j.first()))
	to := max(from, min(j.span(), int(end-j.first())))
	for _, site := range s.Holding.Sites {
		w := j.sites[site.ID]
		if err := w.years.prepare(); err != nil {
			return err
		}
		for f := range min(futures, j.Years) {
			if err := safely(f, func(f int) error {
				return each(&OpenDays{Site: site.ID, Future: f, First: j.first() + cal.Date(from),
					Days: w.years.of(f)[from:to], AboveMJ: w.sky.ExtraterrestrialMJ[from:to]})
			}); err != nil {
				return err
			}
		}
	}
	return nil
}
