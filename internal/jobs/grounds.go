package jobs

import (
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

// soil is the compost and lime that are due.
func (d *deriver) soil() error {
	kinds := map[record.What]Kind{record.Composted: Compost, record.Limed: Lime}
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
			j := begin(kind, "", string(kind)+":"+bed.ID, d.stop(bed))
			from, last := d.dressing(bed, due.Until)
			j.First, j.Best, j.Last, j.Season = from, dressBest(from, last, d.Today), last, true
			j.Turn = from.Year()
			j.ID = j.Series + ":" + strconv.Itoa(j.Turn)
			j.Amount = Amount{M2: bed.AreaM2(), Litres: due.Litres, Kg: due.Kg}
			j = told(j, "")
			j.Why = due.Phrase
			if kind == Compost {
				note, err := d.orManure(bed, j.Due(d.Today))
				if err != nil {
					return err
				}
				j.Notes = append(j.Notes, note...)
			}
			if t := d.answers.series(j.Series); !t.dropped && !t.done[j.Turn] {
				d.once(j)
			}
		}
	}
	return nil
}

// grounds are the jobs that rules ask for beds, covers and sites.
func (d *deriver) grounds() {
	for i := range d.ground {
		r := &d.ground[i]
		switch r.at {
		case "bed":
			for k := range d.Holding.Beds {
				if b := &d.Holding.Beds[k]; names(r.beds, b.Kind) {
					d.around(r, b.ID, d.stop(b), b.AreaM2(), func(_ *Job, on cal.Date) bool { return r.need == "any" || d.standing(b.ID, on) })
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

// around makes the jobs of a rule over its season of each year. Fill may refuse a turn.
func (d *deriver) around(r *groundRule, id string, at Stop, m2 float64, fill func(*Job, cal.Date) bool) {
	south := d.south(at.Site)
	j := begin(r.kind, r.id, r.id+":"+id, at)
	j.Amount.M2 = m2
	j = told(j, "")
	if r.every == 0 {
		d.yearly(j, r.from, r.to, south, func(next *Job) bool {
			*next = why(*next, r.why, next.Best)
			return fill == nil || fill(next, next.Best)
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
			return fill == nil || fill(next, on)
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
