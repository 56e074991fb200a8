package draft

import (
	"garner/internal/cover"
	"garner/internal/crop"
	"garner/internal/labour"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/programme"
)

// A sowing is offered under a cover when it gives so much more, or is to be eaten so
// many weeks sooner, than in the open, or when it is not sown in the open at all.
// judgement: less is not worth a second way of growing the same.
const (
	muchMore = 1.2
	soonerBy = 2
)

// Sowings under covers are tried from so many weeks before the cover goes on, every
// other week. judgement: what is older by then stands the winter or does not.
const (
	beforeCover = 12
	coverEvery  = 2
)

// under are the profiles of a use on a kind of ground below a cover that gain by it,
// beside those without.
func (b *builder) under(k *kind, spell cover.Spell, c *crop.Crop, u *crop.Use, open []profile) ([]profile, error) {
	on, off := int(spell.On-b.From)/7, int(spell.Off-b.From)/7
	first, last := max(k.first, on-beforeCover), min(k.last, off-coverEvery)
	all, err := b.tried(k, c, u, []place.CoverSpell{{ID: "draft", Bed: k.bed, Spell: spell}}, func(method plan.Method, week int) bool {
		return first <= week && week <= last && week%coverEvery == 0 && (week >= on || !overBefore(open, method, week, int(spell.On-b.From)))
	})
	if err != nil {
		return nil, err
	}
	out := all[:0]
	for i := range all {
		if p := &all[i]; p.free > int(spell.On-b.From) && b.gains(p, open) {
			p.under = spell
			out = append(out, *p)
		}
	}
	return out, nil
}

// overBefore tells whether a sowing is over in the open before a day.
func overBefore(open []profile, method plan.Method, week, day int) bool {
	found := false
	for i := range open {
		if p := &open[i]; p.method == method && p.week == week {
			if p.free > day {
				return false
			}
			found = true
		}
	}
	return found
}

// gains tells whether a profile under a cover is worth offering beside those of the
// same start in the open.
func (b *builder) gains(p *profile, open []profile) bool {
	most, soonest, found := 0.0, float64(b.Weeks), false
	for i := range open {
		if o := &open[i]; o.method == p.method && o.week == p.week && o.store == p.store {
			found = true
			most, soonest = max(most, meanKg(o.lots)), min(soonest, b.meanFirst(o.lots))
		}
	}
	return !found || meanKg(p.lots) >= muchMore*most || b.meanFirst(p.lots) <= soonest-soonerBy
}

// meanKg is what lots weigh, mean over the futures.
func meanKg(lots [][]programme.Lot) float64 {
	sum := 0.0
	for _, future := range lots {
		for _, l := range future {
			sum += l.Kg
		}
	}
	return sum / float64(max(1, len(lots)))
}

// meanFirst is the week from which lots are good, mean over the futures; one that
// gives nothing counts as the end.
func (b *builder) meanFirst(lots [][]programme.Lot) float64 {
	sum := 0
	for _, future := range lots {
		first := b.Weeks
		for _, l := range future {
			first = min(first, l.First)
		}
		sum += first
	}
	return float64(sum) / float64(max(1, len(lots)))
}

// layingHours is the work of a cover over some ground [m2] in the week it goes on [h].
func layingHours(m2 float64) float64 { return labour.Cover() * m2 }
