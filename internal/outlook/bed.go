package outlook

import (
	"sort"

	"garner/internal/cal"
	"garner/internal/fault"
	"garner/internal/ground"
	"garner/internal/growth"
	"garner/internal/num"
	"garner/internal/place"
	"garner/internal/plan"
	"garner/internal/season"
	"garner/internal/words"
)

// bedWork is one bed, or one part of it, made ready for the day loop.
type bedWork struct {
	id        string
	site      *siteWork
	place     place.Bed
	bed       season.Bed
	plantings []plan.Planting // in the order of bed.Plantings
	uses      []*prepared
	rough     []roughness // what is told only roughly, in the order of bed.Plantings
	from      cal.Date    // first day any of its plantings is in the ground
	start     int         // day index from which its own weather is built
	shade     num.Digest  // of what stands round it; zero: nothing
	ground    num.Digest  // of light, shade, covers and start: beds alike share their weather
	digest    num.Digest
	result    *bedResult
	former    []former // beds from which its plantings were moved here
	missing   bool     // the result must be computed
	fair      bool     // its plantings have the mean luck of their uses
}

// bedResult holds a bed's outcomes: by future, then by planting.
type bedResult struct{ years [][]season.Outcome }

// layBeds gathers the plantings of each bed.
func (j *job) layBeds() error {
	byBed := map[string][]plan.Planting{}
	for _, p := range j.plantings {
		byBed[p.Bed] = append(byBed[p.Bed], p)
	}
	j.done = recorded(j.Holding.Records)
	j.moves = movesOf(j.plantings, j.done)
	j.lost = lossesIn(j.Holding.Records)
	for _, b := range j.Holding.Beds {
		here := byBed[b.ID]
		delete(byBed, b.ID)
		if len(here) == 0 {
			continue
		}
		w, err := j.layBed(b, here)
		if err != nil {
			return err
		}
		for _, part := range w.parts() {
			part.name(j)
			j.beds = append(j.beds, part)
		}
	}
	for _, left := range byBed {
		return fault.New(fault.NotFound, "outlook.bed_unknown", words.Args{"planting": left[0].ID, "bed": left[0].Bed})
	}
	return nil
}

func (j *job) layBed(b place.Bed, here []plan.Planting) (*bedWork, error) {
	site, ok := j.sites[b.Site]
	if !ok {
		return nil, fault.New(fault.NotFound, "outlook.site_unknown", words.Args{"bed": b.ID, "site": b.Site})
	}
	w := &bedWork{id: b.ID, site: site, place: b, from: j.end()}
	w.bed.Ground, w.shade = j.groundOf(b, site)
	sort.SliceStable(here, func(a, c int) bool { return here[a].Date < here[c].Date })
	for i := range here {
		if err := w.add(j, &here[i]); err != nil {
			return nil, err
		}
	}
	w.pair()
	return w, nil
}

// add puts one planting on the bed, unless its time cannot touch the table.
func (w *bedWork) add(j *job, p *plan.Planting) error {
	northern := w.site.location.LatitudeDeg >= 0
	p, move := j.moves.origin(p)
	use, err := j.uses.of(p, northern)
	if err != nil {
		return err
	}
	date, years := p.Date, int(p.YearsOld)
	began := j.done.of(move.first)
	if began.planted.IsSet() {
		date = began.planted
	}
	rough := roughnessOf(p, began)
	if use.params.Perennial() {
		date, years = move.anew(date, years)
	}
	if use.params.Perennial() && date < j.From-perennialLookBack {
		date, years = pickUp(date, years, j.From)
		rough.days = 0
	}
	lost := j.lost.of(p, use)
	clear, lifted := j.clearing(p)
	clear, free := endOf(clear, lost)
	if date >= j.end() || date < j.From-lookBack || (free.IsSet() && free <= max(j.From, move.here(date))) {
		return nil
	}
	rough.earliest = int(j.first() - date)
	w.from = min(w.from, max(j.first(), date-cal.Date(rough.days)))
	stays, err := w.stays(j, move, use)
	if err != nil {
		return err
	}
	w.rough = append(w.rough, rough)
	w.plantings = append(w.plantings, *p)
	w.uses = append(w.uses, use)
	w.bed.Plantings = append(w.bed.Plantings, season.Planting{
		ID: move.first, Parameters: use.params, Date: date, AreaM2: p.AreaM2, ClearBy: clear,
		YearsOld: years, Shares: -1, Soil: ground.WeightFactor(w.place.Soil), Losses: lost,
		Strips: move.strips, Stays: stays, Lifted: lifted && clear.IsSet(),
	})
	return nil
}

// pickUp moves the start of an old perennial to shortly before the table, older
// by the years gone by.
func pickUp(date cal.Date, years int, from cal.Date) (cal.Date, int) {
	for date < from-perennialLookBack {
		date += 365
		years++
	}
	return date, years
}

// name hashes what the bed's outcomes depend on.
func (w *bedWork) name(j *job) {
	w.start = startIndex(int(w.from - j.first()))
	w.ground = digestGround(w.site, &w.bed.Ground, w.shade, w.start)
	d := num.NewDigester("bed")
	d.Digest(w.ground)
	d.Int(int64(j.Years))
	for i := range w.bed.Plantings {
		p := &w.bed.Plantings[i]
		d.Text(p.ID)
		d.Digest(w.uses[i].digest)
		d.Int(int64(p.Parameters.Start))
		d.Int(int64(p.Date))
		d.Int(int64(p.ClearBy))
		d.Int(int64(p.YearsOld))
		d.Int(int64(p.Shares))
		d.Float(p.Beneath)
		d.Float(p.AreaM2)
		d.Float(p.Soil)
		w.digestMoves(d, p)
		digestLosses(d, p.Losses)
		d.Int(int64(w.rough[i].days))
		d.Float(w.rough[i].area)
	}
	w.digest = d.Sum()
}

// quarter is the step to which the start of a bed's own weather is rounded
// down, so that beds can share it [d].
const quarter = 91

func startIndex(from int) int { return max(0, from/quarter*quarter) }

// draws are the luck of a bed's plantings in one future. Weight luck is half
// shared by all plantings of a crop in a year (a slug year is one for the whole
// garden) and half each planting's own. What is told roughly is drawn last, so
// that a planting told exactly has the luck it always had.
func (w *bedWork) draws(seed uint64, future int, out []growth.Draw) []growth.Draw {
	out = out[:0]
	for i := range w.bed.Plantings {
		p := &w.bed.Plantings[i]
		if w.fair {
			out = append(out, growth.Fair(w.uses[i].use))
			continue
		}
		own := num.Keyed(seed, uint64(future), w.site.key, num.Key(p.ID))
		shared := num.Keyed(seed, uint64(future), num.Key(w.uses[i].use.Crop), uint64(p.Date.Year()))
		d := growth.Drawn(w.uses[i].use, &shared, &own)
		d.Shift, d.AreaOff = w.rough[i].draw(&own)
		out = append(out, d)
	}
	return out
}
