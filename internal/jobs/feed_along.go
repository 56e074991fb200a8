package jobs

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/words"
)

// alongDays is how far a feed may be moved to go with a watering [d]. Judgement.
const alongDays = 3

// feedAlong gives feed with the water that a bed gets about the day on which it is due:
// what the feed is stirred into need not be given again. Of a feed's turns the nearest
// goes with a watering.
func (d *deriver) feedAlong() {
	for k := range d.out {
		water := &d.out[k]
		if water.Kind != Water {
			continue
		}
		nearest := map[string]int{}
		var order []string
		for i := range d.out {
			feed := &d.out[i]
			if feed.Kind != Feed || feed.PutOff.IsSet() || feed.Stop != water.Stop || d.apart(feed, water) > alongDays {
				continue
			}
			at, known := nearest[feed.Series]
			if !known {
				order = append(order, feed.Series)
			}
			if !known || d.apart(feed, water) < d.apart(&d.out[at], water) {
				nearest[feed.Series] = i
			}
		}
		for _, series := range order {
			d.stir(&d.out[nearest[series]], water)
		}
	}
	d.out = slices.DeleteFunc(d.out, func(j Job) bool { return j.Kind == Water && j.Amount.Litres < leastPouredL }) // the feed is all of it
}

// leastPouredL is the least that is left of a watering for it to be told [L]. Judgement.
const leastPouredL = 0.5

// apart is how many days lie between two jobs.
func (d *deriver) apart(a, b *Job) cal.Date {
	days := a.Due(d.Today) - b.Due(d.Today)
	return max(days, -days)
}

// stir brings feed to the day of a watering and takes its litres off it.
func (d *deriver) stir(feed, water *Job) {
	litres := min(feed.Amount.Litres, water.Amount.Litres)
	on := water.Due(d.Today)
	feed.Last += max(0, on-feed.Due(d.Today))
	feed.First, feed.Best = min(feed.First, on), on
	feed.Notes = append(feed.Notes, words.P("jobs.feed_with_water", words.Args{"litres": litres}))
	k := d.kinds[Water]
	_, times := d.allowed(k.tools, water.Stop.Site)
	water.Amount.Litres -= litres
	water.Minutes -= k.perL * litres * times
	*water = told(*water, "")
}
