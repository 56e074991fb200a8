package jobs

import (
	"garner/internal/cal"
	"garner/internal/place"
	"garner/internal/soilcare"
	"garner/internal/words"
)

// orManure says that rotted manure may take the place of compost on a bed: where what
// stands there then and what follows is picked no sooner than raw manure asks (7 CFR
// 205.203, as soilcare has it: nobody knows how well it rotted), and no roots follow that
// fork in it.
func (d *deriver) orManure(bed *place.Bed, on cal.Date) ([]words.Phrase, error) {
	longest := 0
	for _, l := range d.byBed[bed.ID] {
		if l.end() < on || !l.use.Feeds() {
			continue
		}
		days, err := soilcare.HarvestAfter(l.crop.ID)
		if err != nil {
			return nil, err
		}
		longest = max(longest, days)
		picked := l.pick.mid
		if !l.pick.is() {
			picked = l.planted.mid // it may lie beyond what the table was asked for
		}
		forks, err := soilcare.Forks(l.crop.ID)
		if err != nil || forks && l.planted.mid >= on || picked < on+cal.Date(days) {
			return nil, err
		}
	}
	if longest == 0 {
		return nil, nil // nothing is planned there: nothing can be said
	}
	return []words.Phrase{words.P("jobs.or_manure", words.Args{"days": longest})}, nil
}
