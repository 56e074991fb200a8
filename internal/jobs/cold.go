package jobs

import (
	"strconv"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/place"
	"garner/internal/words"
)

// What a frost does, as growth has it: plants are young for so many days; a week of cold
// nights hardens them; the first are lost a degree above what kills half of them.
const (
	youngDays    = 25
	hardenNights = 7
	hardenC      = 5.0
	damageAboveC = 1.0
)

// harm is the share of the futures in which the night after an evening hurts a planting
// under a cover. Nothing can be said where the weather is not told.
func (d *deriver) harm(l *life, evening cal.Date, under cover.Spell) float64 {
	s := d.skyOver(l.bed.Site)
	if l.use.Pattern == crop.Perennial || !s.knows(evening+1) || !s.knows(evening-hardenNights) {
		return 0
	}
	kill := l.use.KillC
	if evening-l.began() < youngDays {
		kill = l.use.KillYoungC
	}
	if s.share(evening+1, func(w *climate.Day) bool { return w.TMinC < kill+damageAboveC }) == 0 {
		return 0 // warm nights cost nothing
	}
	over, err := cover.Of(under)
	if err != nil {
		return 0
	}
	hurt := 0
	for f := range s.Futures {
		hard := 0.0
		for on := evening - hardenNights + 1; on <= evening; on++ {
			if s.under(over, f, on) < hardenC {
				hard += 1.0 / hardenNights
			}
		}
		if s.under(over, f, evening+1) < kill+hard*(l.use.KillHardenedC-l.use.KillC)+damageAboveC {
			hurt++
		}
	}
	return float64(hurt) / float64(len(s.Futures))
}

// under is the night of a day under a cover in a future [C].
func (s *Sky) under(over *cover.Cover, f int, on cal.Date) float64 {
	in := over.Under(s.Futures[f][on-s.First], s.AboveMJ[on-s.First])
	return in.TMinC
}

// began is the day from which leaves can be hurt.
func (l *life) began() cal.Date {
	if l.method == "seed" && l.emerged.is() {
		return l.emerged.mid
	}
	return l.planted.mid
}

// over is what lies over a bed on an evening.
func (d *deriver) over(bed string, evening cal.Date) cover.Spell {
	for _, s := range d.spells[bed] {
		if s.On <= evening && (!s.Off.IsSet() || evening < s.Off) {
			return s.Spell
		}
	}
	return cover.Spell{Kind: cover.Open}
}

// fleeced is what comes of laying fleece over what is there; false where none is laid.
func fleeced(under cover.Spell) (cover.Spell, bool) {
	switch under.Kind {
	case cover.Open, cover.Mesh:
		return cover.Spell{Kind: cover.Fleece}, true
	case cover.Tunnel:
		return cover.Spell{Kind: cover.TunnelInner}, true
	}
	return under, false
}

// nights are the beds that want a cover for some nights, and what is gathered before a
// night that no cover takes the harm out of.
func (d *deriver) nights() {
	for i := range d.Holding.Beds {
		d.night(&d.Holding.Beds[i])
	}
	for _, l := range d.lives {
		if evening := d.hardNight(l); evening.IsSet() && !l.lifted() {
			d.gather(l, evening)
		}
	}
}

// coldRun is a run of evenings on which something of a bed is at risk.
type coldRun struct {
	first, last cal.Date
	odds        float64
	areaM2      float64
	names       []string
}

// night asks for a cover over a bed from the first evening that may hurt something.
func (d *deriver) night(b *place.Bed) {
	run := coldRun{first: cal.None, last: cal.None}
	for evening := d.Today; evening < d.Today+cal.Date(d.limits.nights); evening++ {
		odds, areaM2, names := d.atRisk(b, evening)
		switch {
		case len(names) > 0 && !run.first.IsSet():
			run = coldRun{evening, evening, odds, areaM2, names}
		case len(names) > 0:
			run.last, run.odds = evening, max(run.odds, odds)
		case run.first.IsSet():
			evening = d.Today + cal.Date(d.limits.nights) // the run is over
		}
	}
	if !run.first.IsSet() {
		return
	}
	j := begin(Protect, "", "protect:"+b.ID, d.stop(b))
	if t := d.answers.series(j.Series); t.dropped || t.lastOn.IsSet() && t.lastOn >= run.first-leftOn {
		return // what was laid lately lies there still
	}
	j.Turn = int(run.first)
	j.ID += ":" + strconv.Itoa(j.Turn)
	j.Amount.M2 = min(b.AreaM2(), run.areaM2)
	j = told(d.day(j, run.first), "")
	j.Odds, j.Forecast = run.odds, true
	j.Why = words.P("jobs.why_frost_night", words.Args{"date": run.first, "odds": run.odds, "crops": run.names, "nights": int(run.last-run.first) + 1})
	d.once(j)
}

// leftOn is for how long a cover that was laid for a night is taken to lie there [d].
// Judgement.
const leftOn = 4

// atRisk tells what an evening may hurt on a bed under its own cover, and what of it
// fleece would help.
func (d *deriver) atRisk(b *place.Bed, evening cal.Date) (odds, areaM2 float64, names []string) {
	under := d.over(b.ID, evening)
	more, can := fleeced(under)
	if !can {
		return 0, 0, nil
	}
	for _, l := range d.lives {
		if l.bed.ID != b.ID || !l.open(evening) {
			continue
		}
		if share := d.harm(l, evening, under); share >= d.limits.risk && d.harm(l, evening, more) < share {
			odds, areaM2, names = max(odds, share), areaM2+l.p.AreaM2, append(names, l.name)
		}
	}
	return odds, areaM2, names
}

// open tells whether leaves of a planting are there on an evening.
func (l *life) open(evening cal.Date) bool {
	return !l.ended && l.began() <= evening && evening <= l.end()
}

// hardNight is the first evening of those looked at that is likely to hurt a planting
// even under fleece; None: there is none.
func (d *deriver) hardNight(l *life) cal.Date {
	for evening := d.Today; evening < d.Today+cal.Date(d.limits.nights); evening++ {
		if !l.open(evening) {
			continue
		}
		best, _ := fleeced(d.over(l.bed.ID, evening))
		if d.harm(l, evening, best) >= d.limits.hard {
			return evening
		}
	}
	return cal.None
}

// beforeFrost is for how long what ripens after a killing night is counted to what is
// gathered before it: what is nearly ripe ripens on a sill [d]. Judgement.
const beforeFrost = 7

// gather takes what is ready before the night that kills it.
func (d *deriver) gather(l *life, evening cal.Date) {
	if !l.use.Feeds() {
		return
	}
	kg := l.food.stands(evening)
	if l.flows {
		kg = l.food.between(evening-aWeek/2, evening+beforeFrost)
	}
	if kg < worthPicking {
		return
	}
	j := begin(Pick, "", "gather:"+l.p.ID, d.stop(l.bed))
	j.Planting, j.Turn = l.p.ID, int(evening)
	j.ID += ":" + strconv.Itoa(j.Turn)
	j.Amount.Kg = kg
	j = titled(d.day(j, evening), "gather", l.name)
	j.First, j.Last = d.Today, evening
	j.Odds = d.harm(l, evening, d.over(l.bed.ID, evening))
	j.SpoilKg = kg * j.Odds
	d.once(why(j, "hard_night", evening))
}

// later is the first day from one on after which no night of those looked at is likely to
// hurt plants that are set out; the day itself where nothing is told.
func (d *deriver) later(l *life, from cal.Date) cal.Date {
	day := max(from, d.Today)
	young := *l
	for evening := day; evening < d.Today+cal.Date(d.limits.nights) && evening < day+settleNights; evening++ {
		young.planted = on(evening)
		if d.harm(&young, evening, d.over(l.bed.ID, evening)) >= d.limits.risk {
			day = evening + 1
		}
	}
	return day
}

// settleNights is for how many nights from planting out frost is looked at before
// plants are set out. Judgement.
const settleNights = 4
