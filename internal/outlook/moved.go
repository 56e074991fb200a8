package outlook

import (
	"garner/internal/cal"
	"garner/internal/num"
	"garner/internal/plan"
	"garner/internal/record"
	"garner/internal/season"
)

// moves knows which plantings are others lifted and set again.
type moves struct {
	byID map[string]*plan.Planting
	set  map[string]cal.Date // when a moved planting was set, by its own id
	gone map[string]cal.Date // when the last of a planting was lifted, by its id
}

// Lifted is the day on which the last of each planting that goes on elsewhere is
// lifted, by its id, as recorded or else as planned.
func Lifted(plantings []plan.Planting, records []record.Record) map[string]cal.Date {
	return movesOf(plantings, recorded(records)).gone
}

// movesOf finds what is lifted. Where records say that only a share was, as often
// as there are plantings of it elsewhere, the rest stays.
func movesOf(plantings []plan.Planting, done history) *moves {
	m := &moves{map[string]*plan.Planting{}, map[string]cal.Date{}, map[string]cal.Date{}}
	set := map[string]int{} // how many plantings elsewhere are of it
	for i := range plantings {
		m.byID[plantings[i].ID] = &plantings[i]
	}
	for i := range plantings {
		p := &plantings[i]
		if p.Relation != plan.Moved || m.byID[p.To] == nil {
			continue
		}
		on := p.Date
		if h := done.of(p.ID); h.planted.IsSet() {
			on = h.planted
		}
		m.set[p.ID] = on
		set[p.To]++
		if last, known := m.gone[p.To]; !known || on > last {
			m.gone[p.To] = on
		}
	}
	for id, times := range set {
		if times <= done.of(id).shares {
			delete(m.gone, id)
		}
	}
	return m
}

// clearing is the day by which a planting's ground must be free, and whether it
// is lifted then, to go on elsewhere.
func (j *job) clearing(p *plan.Planting) (on cal.Date, lifted bool) {
	on = p.ClearBy
	if h := j.done.of(p.ID); h.gone.IsSet() && (!on.IsSet() || h.gone <= on) {
		on, lifted = h.gone, h.lifted
	}
	if last, ok := j.moves.gone[p.ID]; ok && (!on.IsSet() || last <= on) {
		on, lifted = last, true
	}
	return on, lifted
}

// move is how a planting came to where it stands: the places before, in order.
type move struct {
	first  string // id of the planting it began as: its luck is drawn for that
	from   []*plan.Planting
	until  []cal.Date
	strips []season.Strip
}

// origin follows a planting back to where it was sown. The planting returned is
// the one given with the crop, use, variety, method, date and age of the one it
// began as; one that was not moved comes back as it is.
func (m *moves) origin(p *plan.Planting) (*plan.Planting, move) {
	way := move{first: p.ID, strips: strips(nil, p)}
	seen := map[string]bool{p.ID: true}
	at := p
	for at.Relation == plan.Moved {
		before := m.byID[at.To]
		if before == nil || seen[before.ID] {
			break
		}
		seen[before.ID] = true
		way.from = append([]*plan.Planting{before}, way.from...)
		way.until = append([]cal.Date{m.set[at.ID]}, way.until...)
		way.strips = strips(way.strips, before)
		at = before
	}
	if at == p {
		return p, way
	}
	way.first = at.ID
	whole := *p
	whole.Crop, whole.Use, whole.Variety, whole.Method = at.Crop, at.Use, at.Variety, at.Method
	whole.Date, whole.DateWithinD, whole.YearsOld = at.Date, at.DateWithinD, at.YearsOld
	return &whole, way
}

func strips(known []season.Strip, p *plan.Planting) []season.Strip {
	if p.StripShare > 0 && p.StripOn.IsSet() {
		known = append(known, season.Strip{On: p.StripOn, Share: p.StripShare})
	}
	return known
}

// here is the day from which it stands in its last place, given the day on which
// it went into the ground at first.
func (m *move) here(date cal.Date) cal.Date {
	if n := len(m.until); n > 0 {
		return max(date, m.until[n-1])
	}
	return date
}

// anew is the day and the age with which a perennial begins in its last place.
func (m *move) anew(date cal.Date, years int) (cal.Date, int) {
	on := m.here(date)
	return on, years + int(on-date)/365
}

// former is the own weather of a bed from which plantings were moved.
type former struct {
	site   *siteWork
	ground season.Ground
	start  int
	digest num.Digest
}

// stays are the times a planting of this bed spent in other beds. A perennial is
// taken as planted anew.
func (w *bedWork) stays(j *job, way move, use *prepared) ([]season.Stay, error) {
	if use.params.Perennial() {
		return nil, nil
	}
	var out []season.Stay
	for k, p := range way.from {
		at, known := j.formerOf(p.Bed, w.from)
		if !known {
			continue
		}
		spaced := *p
		first := way.from[0]
		spaced.Crop, spaced.Use, spaced.Variety, spaced.Method = first.Crop, first.Use, first.Variety, first.Method
		then, err := j.uses.of(&spaced, at.site.location.LatitudeDeg >= 0)
		if err != nil {
			return nil, err
		}
		out = append(out, season.Stay{Elsewhere: len(w.former), Until: way.until[k], Parameters: then.params})
		w.former = append(w.former, at)
	}
	return out, nil
}

// formerOf makes a bed's own weather ready from a day on.
func (j *job) formerOf(bed string, from cal.Date) (former, bool) {
	for _, b := range j.Holding.Beds {
		if site, ok := j.sites[b.Site]; ok && b.ID == bed {
			f := former{site: site, start: startIndex(int(from - j.first()))}
			ground, shade := j.groundOf(b, site)
			f.ground, f.digest = ground, digestGround(site, &ground, shade, f.start)
			return f, true
		}
	}
	return former{}, false
}

// digestMoves hashes what was done to a planting and where it stood before.
func (w *bedWork) digestMoves(d *num.Digester, p *season.Planting) {
	d.Int(int64(len(p.Strips)))
	for _, s := range p.Strips {
		d.Int(int64(s.On))
		d.Float(s.Share)
	}
	d.Int(int64(len(p.Stays)))
	for _, s := range p.Stays {
		d.Digest(w.former[s.Elsewhere].digest)
		d.Int(int64(s.Until))
		d.Float(s.Parameters.PlantsPerM2())
	}
	if p.Lifted {
		d.Text("lifted")
	}
}

// besides gives the own weather of the beds that plantings were moved from.
func (w *worker) besides(b *bedWork, f int) error {
	w.runner.Elsewhere = w.runner.Elsewhere[:0]
	for i := range b.former {
		o := &b.former[i]
		beside, err := w.beside(o.site, &o.ground, o.start, o.digest, f)
		if err != nil {
			return err
		}
		w.runner.Elsewhere = append(w.runner.Elsewhere, beside)
	}
	return nil
}
