package jobs

import (
	"strconv"

	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/frost"
	"garner/internal/growth"
)

// hardenNights is for how many nights before a night hardening is followed, from none [d]:
// a week of cold nights hardens in full, and mild ones undo it sooner.
const hardenNights = 14

// harm is the share of the futures in which the night after an evening hurts a planting
// under a cover. Nothing can be said where the weather is not told.
func (d *deriver) harm(l *life, evening cal.Date, over *cover.Cover) float64 {
	s := d.skyOver(l.bed.Site)
	if l.use.Pattern == crop.Perennial || !s.knows(evening+1) || over == nil {
		return 0
	}
	age := int(evening - l.began())
	tender := frost.HurtBelowC(l.use, age, 0)
	if s.share(evening+1, func(w *climate.Day) bool { return w.TMinC < tender }) == 0 {
		return 0 // warm nights cost nothing
	}
	hurt := 0
	for f := range s.Futures {
		hard := 0.0
		for on := max(s.First, evening-hardenNights+1); on <= evening; on++ {
			hard = growth.Hardened(hard, s.under(over, f, on))
		}
		if s.under(over, f, evening+1) < frost.HurtBelowC(l.use, age, hard) {
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

// coverOver is the cover that lies over a bed on an evening; nil where its kind is not known.
func (d *deriver) coverOver(bed string, evening cal.Date) *cover.Cover {
	over, err := cover.Of(d.over(bed, evening))
	if err != nil {
		return nil
	}
	return over
}

// gathers takes what is ready before a night that no cover takes the harm out of.
func (d *deriver) gathers() {
	for _, l := range d.lives {
		if evening := d.hardNight(l); evening.IsSet() && !l.lifted() {
			d.gather(l, evening)
		}
	}
}

// open tells whether leaves of a planting are there on an evening.
func (l *life) open(evening cal.Date) bool {
	return !l.ended && l.began() <= evening && evening <= l.end()
}

// hardNight is the first evening of those looked at that is likely to hurt a planting
// even under the best that may be laid; None: there is none.
func (d *deriver) hardNight(l *life) cal.Date {
	for evening := d.Today; evening < d.Today+cal.Date(d.limits.nights); evening++ {
		if !l.open(evening) {
			continue
		}
		if d.harm(l, evening, d.warmest(l.bed.ID, evening)) >= d.limits.hard {
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
	j.Odds = d.harm(l, evening, d.coverOver(l.bed.ID, evening))
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
		if d.harm(&young, evening, d.coverOver(l.bed.ID, evening)) >= d.limits.risk {
			day = evening + 1
		}
	}
	return day
}

// settleNights is for how many nights from planting out frost is looked at before
// plants are set out. Judgement.
const settleNights = 4
