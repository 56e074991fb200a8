package outlook

import "garner/internal/cal"

// Rain returns the rain in the open of each site [mm] on the days from first up to end,
// under the first futures of the table: what fell, the forecast, and then other years. It
// is by site, future and day.
func Rain(s Setting, m *Memory, futures int, first, end cal.Date) (map[string][][]float64, error) {
	m.mu.Lock()
	defer m.mu.Unlock()
	m.begin()
	defer m.tidy()
	j := &job{Setting: s}
	if err := j.laySites(m); err != nil {
		return nil, err
	}
	from, to := max(0, int(first-j.first())), min(j.span(), int(end-j.first()))
	out := map[string][][]float64{}
	for id, site := range j.sites {
		if err := site.years.prepare(); err != nil {
			return nil, err
		}
		for f := range min(futures, j.Years) {
			days := make([]float64, 0, to-from)
			for _, d := range site.years.of(f)[from:to] {
				days = append(days, d.RainMM)
			}
			out[id] = append(out[id], days)
		}
	}
	return out, nil
}
