package jobs

import (
	"slices"
	"strconv"
	"strings"

	"garner/internal/cal"
	"garner/internal/cover"
	"garner/internal/place"
	"garner/internal/record"
	"garner/internal/soilcare"
	"garner/internal/words"
)

// covers are laid and taken off as the plan has it.
func (d *deriver) covers() {
	for i := range d.Holding.Covers {
		s := &d.Holding.Covers[i]
		bed := d.beds[s.Bed]
		if bed == nil || s.Kind == cover.Open {
			continue
		}
		kind := Cover
		if s.Kind == cover.Mesh {
			kind = Net
		}
		d.laying(kind, s, bed, s.On)
		if s.Off.IsSet() {
			d.laying(Uncover, s, bed, s.Off)
		}
	}
}

// laying is a cover that goes on or comes off, unless it is recorded near that day.
func (d *deriver) laying(kind Kind, s *place.CoverSpell, bed *place.Bed, on cal.Date) {
	for _, r := range d.Holding.Records {
		if r.What == record.Covered && r.Bed == bed.ID && r.Date >= on-d.kinds[kind].before && r.Date <= on+d.kinds[kind].after {
			return
		}
	}
	j := begin(kind, "", string(kind)+":"+s.ID, d.stop(bed))
	j.Cover, j.Amount = s.ID, Amount{M2: bed.AreaM2(), RowM: bed.LengthM}
	j = d.day(j, on)
	j.Title = words.P("jobs.title_"+key(string(kind)), words.Args{"name": words.P("desk.value_covers.kind."+coverKey(s.Kind), nil), "area": bed.AreaM2()})
	d.once(why(j, "cover_"+onOff(kind), on))
}

// coverKey is a kind of cover as texts and ids are called by.
func coverKey(kind cover.Kind) string {
	return strings.NewReplacer(" + ", "_", " ", "_").Replace(string(kind))
}

func onOff(kind Kind) string {
	if kind == Uncover {
		return "off"
	}
	return "on"
}

// soil is the compost, manure and lime that are due.
func (d *deriver) soil() error {
	kinds := map[record.What]Kind{record.Composted: Compost, record.Manured: Manure, record.Limed: Lime}
	for i := range d.Holding.Beds {
		bed := &d.Holding.Beds[i]
		care, err := soilcare.Look(soilcare.Ground{Book: d.Book, Bed: *bed, South: d.south(bed.Site), Plantings: d.Plantings, Records: d.Holding.Records, Today: d.Today})
		if err != nil {
			return err
		}
		for _, due := range care.Due {
			kind, ok := kinds[due.What]
			if !ok {
				continue
			}
			j := d.day(begin(kind, "", string(kind)+":"+bed.ID, d.stop(bed)), d.dressOn(bed, due.Until))
			j.Turn = j.Best.Year()
			j.ID = j.Series + ":" + strconv.Itoa(j.Turn)
			j.Amount = Amount{M2: bed.AreaM2(), Litres: due.Litres, Kg: due.Kg}
			if due.Until.IsSet() {
				j.Last = due.Until
			}
			j = told(j, "")
			j.Why = due.Phrase
			j.Amount.Kg = 0 // spreading is counted by the area
			if t := d.answers.series(j.Series); !t.dropped && !t.done[j.Turn] {
				d.once(j)
			}
		}
	}
	return nil
}

// dressAhead is how long before a sowing or the last day a bed is dressed [d]; one
// that nothing is sown in waits for the end of winter. Judgement.
const dressAhead = 14

// lateWinter is the day of the year in the north by which a free bed is dressed.
const lateWinter = 59

// dressOn is the best day to dress a bed: before its next sowing.
func (d *deriver) dressOn(bed *place.Bed, until cal.Date) cal.Date {
	if until.IsSet() {
		return max(d.Today, until-dressAhead)
	}
	next := endless
	for _, l := range d.lives {
		if l.bed.ID == bed.ID && l.p.Date > d.Today+dressAhead {
			next = min(next, l.p.Date-dressAhead)
		}
	}
	end, _ := seasonIn(d.Today.Year(), lateWinter, lateWinter, d.south(bed.Site))
	if end < d.Today {
		end, _ = seasonIn(d.Today.Year()+1, lateWinter, lateWinter, d.south(bed.Site))
	}
	return min(next, end)
}

// grounds are the jobs that rules ask for beds, covers and sites.
func (d *deriver) grounds() {
	for i := range d.ground {
		r := &d.ground[i]
		switch r.at {
		case "bed":
			for k := range d.Holding.Beds {
				if b := &d.Holding.Beds[k]; names(r.beds, b.Kind) {
					d.around(r, b.ID, d.stop(b), b.AreaM2(), func(on cal.Date) bool { return d.standing(b.ID, on) })
				}
			}
		case "cover":
			d.houses(r)
		case "site":
			for k := range d.Holding.Sites {
				if k == 0 || r.every > 0 {
					d.around(r, d.Holding.Sites[k].ID, d.elsewhere(d.Holding.Sites[k].ID, AtSite), 0, nil)
				}
			}
		}
	}
}

// houses are covers that are aired: one job for all beds of a site that lie under a
// kind of them, at the first.
func (d *deriver) houses(r *groundRule) {
	type house struct {
		site string
		kind cover.Kind
	}
	seen := map[house]bool{}
	for _, b := range d.Holding.Beds {
		for _, s := range d.spells[b.ID] {
			h := house{b.Site, s.Kind}
			if seen[h] || !slices.Contains(r.covers, string(s.Kind)) {
				continue
			}
			seen[h] = true
			d.around(r, b.Site+":"+coverKey(s.Kind), d.stop(d.beds[b.ID]), 0, func(on cal.Date) bool { return d.aired(h.site, h.kind, on) })
		}
	}
}

// aired tells whether something stands under a kind of cover on a day.
func (d *deriver) aired(site string, kind cover.Kind, on cal.Date) bool {
	for _, b := range d.Holding.Beds {
		for _, s := range d.spells[b.ID] {
			if b.Site == site && s.Kind == kind && s.On <= on && (!s.Off.IsSet() || on < s.Off) && d.standing(b.ID, on) {
				return true
			}
		}
	}
	return false
}

// around makes the jobs of a rule over its season of each year.
func (d *deriver) around(r *groundRule, id string, at Stop, m2 float64, holds func(cal.Date) bool) {
	south := d.south(at.Site)
	j := begin(r.kind, r.id, r.id+":"+id, at)
	j.Amount.M2 = m2
	j = told(j, "")
	if r.every == 0 {
		d.yearly(j, r.from, r.to, south, func(next *Job) bool {
			*next = why(*next, r.why, next.Best)
			return holds == nil || holds(next.Best)
		})
		return
	}
	for year := d.Today.Year() - 1; year <= d.Until.Year(); year++ {
		first, last := seasonIn(year, r.from, r.to, south)
		if last < d.Today {
			continue
		}
		turns := j
		turns.Series = j.Series + ":" + strconv.Itoa(year)
		if d.answers.series(j.Series).dropped {
			return
		}
		d.repeat(turns, again{from: first, every: r.every, until: last, since: cal.None}, func(next *Job, on cal.Date) bool {
			*next = why(*next, r.why, on)
			return r.need == "any" || holds == nil || holds(on)
		})
	}
}

// taking is how long a planting is in the ground before it is worked round [d].
const taking = 10

// standing tells whether a bed has something to be worked round on a day.
func (d *deriver) standing(bed string, on cal.Date) bool {
	for _, l := range d.lives {
		if l.bed.ID == bed && l.planted.mid+taking <= on && on <= l.end() {
			return true
		}
	}
	return false
}
