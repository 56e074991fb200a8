package jobs

import (
	"cmp"
	"slices"
	"strconv"

	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/frost"
	"garner/internal/place"
	"garner/internal/words"
)

// coldRun is a run of evenings on which something of a bed is at risk that more cover
// would help.
type coldRun struct {
	bed         *place.Bed
	first, last cal.Date
	odds        float64
	areaM2      float64
	names       []string
}

// nightCovers asks for a cover over the beds that want one for some nights. What is owned
// is shared out to those at the greatest risk first.
func (d *deriver) nightCovers() {
	var runs []coldRun
	for i := range d.Holding.Beds {
		if run, found := d.coldRun(&d.Holding.Beds[i]); found {
			runs = append(runs, run)
		}
	}
	slices.SortStableFunc(runs, func(a, b coldRun) int { return cmp.Compare(b.odds, a.odds) })
	laid := slices.Clone(d.Holding.Covers)
	for i := range runs {
		if lay := d.protect(&runs[i], laid); lay != nil {
			t := frost.Trial(runs[i].bed.ID, runs[i].first, lay.Spell)
			t.Off = runs[i].last + 1
			laid = append(laid, t)
		}
	}
}

// coldRun is the first run of evenings that may hurt something of a bed.
func (d *deriver) coldRun(b *place.Bed) (run coldRun, found bool) {
	for evening := d.Today; evening < d.Today+cal.Date(d.limits.nights); evening++ {
		odds, areaM2, names := d.atRisk(b, evening)
		switch {
		case len(names) > 0 && !found:
			run, found = coldRun{b, evening, evening, odds, areaM2, names}, true
		case len(names) > 0:
			run.last, run.odds = evening, max(run.odds, odds)
		case found:
			return run, true
		}
	}
	return run, found
}

// protect asks for a cover over a bed for a run of evenings, and returns what is laid of
// what the household owns; nil: none of it, and old sheets have to do.
func (d *deriver) protect(run *coldRun, laid []place.CoverSpell) *frost.Way {
	j := begin(Protect, "", "protect:"+run.bed.ID, d.stop(run.bed))
	if t := d.answers.series(j.Series); t.dropped || t.lastOn.IsSet() && t.lastOn >= run.first-leftOn {
		return nil // what was laid lately lies there still
	}
	lay := d.owned(run, laid)
	j.Turn = int(run.first)
	j.ID += ":" + strconv.Itoa(j.Turn)
	j.Amount.M2 = min(run.bed.AreaM2(), run.areaM2)
	j = told(d.day(j, run.first), "")
	j.Odds, j.Forecast = run.odds, true
	j.Why = words.P("jobs.why_frost_night", words.Args{"date": run.first, "odds": run.odds, "crops": run.names, "nights": int(run.last-run.first) + 1})
	if lay != nil {
		j.Lay = lay.Lay
	}
	j.Unowned = lay == nil && len(d.Holding.Gear) > 0
	d.once(j)
	return lay
}

// owned is the cover that helps a bed most in its first night, of those that are owned, fit
// and are free; nil: none is.
func (d *deriver) owned(run *coldRun, laid []place.CoverSpell) *frost.Way {
	ways, err := frost.Ways(d.lies(run.bed.ID, run.first))
	if err != nil {
		return nil
	}
	var best *frost.Way
	least := d.risks(run.bed, run.first, d.coverOver(run.bed.ID, run.first))
	for i := range ways {
		w := &ways[i]
		odds := d.risks(run.bed, run.first, w.Cover)
		if odds >= least {
			continue
		}
		if free, err := frost.Free(d.Holding, run.bed.ID, run.first, w.Spell, laid); err == nil && free {
			best, least = w, odds
		}
	}
	return best
}

// risks are the odds of the planting that is most at risk on an evening under a cover.
func (d *deriver) risks(b *place.Bed, evening cal.Date, over *cover.Cover) (odds float64) {
	for _, l := range d.byBed[b.ID] {
		if l.open(evening) {
			odds = max(odds, d.harm(l, evening, over))
		}
	}
	return odds
}

// leftOn is for how long a cover that was laid for a night is taken to lie there [d].
// Judgement.
const leftOn = 4

// sheet is what is laid where nothing better is told of: fleece, or old sheets, which are
// taken to be as warm.
const sheet = cover.Fleece

// lies is what a cover for the night is laid over; mesh comes off for it.
func (d *deriver) lies(bed string, evening cal.Date) cover.Spell {
	if under := d.over(bed, evening); under.Kind != cover.Mesh {
		return under
	}
	return cover.Spell{Kind: cover.Open}
}

// sheeted is what comes of laying fleece or sheets over a bed on an evening; nil where none
// can be laid.
func (d *deriver) sheeted(bed string, evening cal.Date) *cover.Cover {
	ways, err := frost.Ways(d.lies(bed, evening))
	if err != nil {
		return nil
	}
	for _, w := range ways {
		if w.Lay == sheet {
			return w.Cover
		}
	}
	return nil
}

// warmest is the warmest that a bed may lie under on an evening: sheets, where they can be
// laid.
func (d *deriver) warmest(bed string, evening cal.Date) *cover.Cover {
	if over := d.sheeted(bed, evening); over != nil {
		return over
	}
	return d.coverOver(bed, evening)
}

// atRisk tells what an evening may hurt on a bed under its own cover, and what of it
// a sheet would help.
func (d *deriver) atRisk(b *place.Bed, evening cal.Date) (odds, areaM2 float64, names []string) {
	under, more := d.coverOver(b.ID, evening), d.sheeted(b.ID, evening)
	if more == nil {
		return 0, 0, nil
	}
	for _, l := range d.byBed[b.ID] {
		if !l.open(evening) {
			continue
		}
		if share := d.harm(l, evening, under); share >= d.limits.risk && d.harm(l, evening, more) < share {
			odds, areaM2, names = max(odds, share), areaM2+l.p.AreaM2, append(names, l.name)
		}
	}
	return odds, areaM2, names
}
