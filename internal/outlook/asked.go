package outlook

import (
	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/num"
	"garner/internal/place"
	"garner/internal/season"
	"garner/internal/words"
)

// Asked is what the air asks of a bed's ground in the year ahead, by month,
// January first: reference evapotranspiration [mm in the month] under the bed's
// covers, as expected over the futures.
type Asked struct {
	Bed    string
	MM     [12]float64 // in the bed's own light
	OpenMM [12]float64 // in full light: nothing round it, nothing taken by its light share
}

const (
	// askedDays is the length of the year ahead, in whole weeks [d].
	askedDays = 52 * 7

	// askedFutures is how many of the futures are looked at. Months differ by a
	// tenth or so from year to year, so that the mean of twenty is good to a few
	// per cent.
	askedFutures = 20
)

// AskedOfBeds works out what the air asks of every bed of a holding, planted or
// not, in the year from the table's first day on, under the first of the table's
// own futures. The table must run for a year or more.
func AskedOfBeds(s Setting, m *Memory) ([]Asked, error) {
	m.mu.Lock()
	defer m.mu.Unlock()
	m.begin()
	defer m.tidy()
	j := &job{Setting: s}
	if err := j.laySites(m); err != nil {
		return nil, err
	}
	a := asking{job: j, known: map[num.Digest][12]float64{}}
	out := make([]Asked, len(s.Holding.Beds))
	for i, b := range s.Holding.Beds {
		if err := a.bed(&out[i], b); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// asking works out the months of ground, each kind of ground once.
type asking struct {
	job   *job
	known map[num.Digest][12]float64
	space []float64
}

func (a *asking) bed(out *Asked, b place.Bed) (err error) {
	site, ok := a.job.sites[b.Site]
	if !ok {
		return fault.New(fault.NotFound, "outlook.site_unknown", words.Args{"bed": b.ID, "site": b.Site})
	}
	ground, shade := a.job.groundOf(b, site)
	open := season.Ground{Light: 1, Spells: ground.Spells}
	out.Bed = b.ID
	if out.MM, err = a.months(site, &ground, shade); err != nil {
		return err
	}
	out.OpenMM, err = a.months(site, &open, num.Digest{})
	return err
}

// months returns what is asked of ground by month, the mean over the futures.
func (a *asking) months(site *siteWork, g *season.Ground, shade num.Digest) (mm [12]float64, err error) {
	name := digestGround(site, g, shade, 0)
	if known, ok := a.known[name]; ok {
		return known, nil
	}
	if err := site.years.prepare(); err != nil {
		return mm, err
	}
	from := int(a.job.From - a.job.first())
	to := from + min(askedDays, a.job.Days())
	var days [12]float64
	for f := range min(askedFutures, a.job.Years) {
		if a.space, err = g.Reference(site.sky, site.years.of(f), from, to, a.space); err != nil {
			return mm, err
		}
		for i, asked := range a.space {
			month := (a.job.From + cal.Date(i)).Month() - 1
			mm[month] += asked
			days[month]++
		}
	}
	for month := range mm {
		mm[month] *= float64(cal.DaysInMonth(month+1)) / max(1, days[month])
	}
	a.known[name] = mm
	return mm, nil
}
