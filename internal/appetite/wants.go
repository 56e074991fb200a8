package appetite

import (
	"math"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/larder"
)

// Household is who sits at the table.
type Household struct {
	Adults, Children int
	South            bool // south of the line, where seasons are half a year later
}

const (
	childShare     = 0.5       // what a child eats of an adult's portions // judgement
	sometimesShare = 1.0 / 3.0 // sometimes, of often // judgement
	// mostKgYear is the most that one eater is taken to eat in a year [kg]:
	// between what is bought in the UK, 90, and what is supplied in the USA, 174
	// (data/README.md). // judgement
	mostKgYear = 150.0
)

// Eaters counts the household's eaters, a child for a half.
func (h Household) Eaters() float64 {
	return float64(max(0, h.Adults)) + childShare*float64(max(0, h.Children))
}

// Wants returns what the household eats of each vegetable ticked, in the order
// in which they are offered. Without any ticks the usual ones are taken; a
// vegetable without a tick among others that have one is not eaten.
func Wants(b *crop.Book, h Household, ticks map[string]Tick) []larder.Want {
	eaters := h.Eaters()
	if eaters <= 0 {
		return nil
	}
	portions := portionsOf(b)
	var out []larder.Want
	yearKg := 0.0 // of one eater
	for _, v := range vegetables() {
		kg := portions[v.name].weightKg * v.portions * shareOf(&v, ticks)
		if kg <= 0 {
			continue
		}
		w := larder.Want{ID: "w-" + portions[v.name].crop, Vegetable: v.name, KgPerWeek: kg}
		w.From, w.To = v.season(h.South)
		yearKg += kg * weeks(w.From, w.To)
		out = append(out, w)
	}
	share := math.Min(1, mostKgYear/yearKg)
	for i := range out {
		out[i].KgPerWeek = rounded(out[i].KgPerWeek * share * eaters)
	}
	return out
}

// shareOf is how much of the portions of one who eats it often is eaten.
func shareOf(v *vegetable, ticks map[string]Tick) float64 {
	tick := ticks[v.name]
	if len(ticks) == 0 {
		tick = v.usual
	}
	switch tick {
	case Often:
		return 1
	case Sometimes:
		return sometimesShare
	}
	return 0
}

// rounded keeps amounts readable: to 0.05 kg from half a kilogram up, to 0.01
// below, and never to nothing.
func rounded(kg float64) float64 {
	if kg >= 0.5 {
		return math.Round(kg*20) / 20
	}
	return math.Max(0.01, math.Round(kg*100)/100)
}

// weeks is the length of a season [weeks].
func weeks(from, to cal.MonthDay) float64 {
	if from.Month == 0 {
		return 365.0 / 7
	}
	days := to.DayOfYear() - from.DayOfYear() + 1
	if days <= 0 {
		days += 365
	}
	return float64(days) / 7
}

// portion is one portion of a vegetable as it is picked.
type portion struct {
	crop     string
	plural   string
	weightKg float64
}

// portionsOf takes the portion of the common use of the first crop that is
// counted under each vegetable.
func portionsOf(b *crop.Book) map[string]portion {
	out := map[string]portion{}
	for _, c := range b.Crops() {
		if _, known := out[c.Vegetable]; known {
			continue
		}
		if u, err := c.Use(""); err == nil {
			out[c.Vegetable] = portion{crop: c.ID, plural: c.Plural, weightKg: u.PortionG / 1000}
		}
	}
	return out
}
