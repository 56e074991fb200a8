package desk

import (
	"math"
	"slices"

	"garner/internal/cal"
	"garner/internal/outlook"
	"garner/internal/words"
)

// stock puts a vegetable in store into words.
func (n *namer) stock(t *outlook.Table, s *outlook.Stock) StockView {
	v := StockView{Vegetable: s.Vegetable, Plural: vegetablePlural(n.a.setting.Book, s.Vegetable), Out: oddsOfDays(s.Out)}
	var waits []int
	judged, met := 0, 0
	for f, a := range s.After {
		if !s.Out[f].IsSet() {
			v.Outlasts += 1 / float64(len(s.After))
		}
		if !a.Judged {
			continue
		}
		judged++
		if a.Met {
			met++
		} else {
			waits = append(waits, a.Wait)
		}
	}
	v.Judged = float64(judged) / float64(len(s.After))
	if judged > 0 {
		v.Meets = float64(met) / float64(judged)
	}
	v.WaitD = middleWait(waits)
	if v.Out.P50.IsSet() {
		v.Next = nextAfter(t, s.Vegetable, v.Out.P50+cal.Date(max(0, v.WaitD)))
		if v.Next != "" {
			v.NextName = n.planting(v.Next)
		}
	}
	for i := range s.Batches {
		line := n.batchLine(&s.Batches[i], s.Vegetable)
		v.Batches, v.Kg = append(v.Batches, line), v.Kg+line.Kg
	}
	slices.SortStableFunc(v.Batches, func(a, b BatchLine) int { return soonest(a.Good, b.Good) })
	v.Says = stockSays(&v)
	return v
}

// middleWait is the middle of some waits, one without end counting as longest.
func middleWait(waits []int) int {
	if len(waits) == 0 {
		return 0
	}
	slices.SortFunc(waits, func(a, b int) int {
		switch {
		case a == b:
			return 0
		case a == outlook.NoWait || b != outlook.NoWait && a > b:
			return 1
		}
		return -1
	})
	return waits[len(waits)/2]
}

// nextAfter is the planting that gives the most of a vegetable in the weeks after
// a day; empty when none gives any.
func nextAfter(t *outlook.Table, vegetable string, day cal.Date) string {
	from := max(0, int(day-t.From)/7)
	name, most := "", 0.0
	for _, s := range t.Sources(vegetable) {
		if s.Planting == "" {
			continue
		}
		kg := 0.0
		for k := from; k < min(t.Weeks, from+nextWeeks); k++ {
			kg += s.Fresh[k] + s.Stored[k]
		}
		if kg > most {
			name, most = s.Planting, kg
		}
	}
	return name
}

// nextWeeks is over how many weeks the next planting is looked for.
const nextWeeks = 4

func (n *namer) batchLine(b *outlook.BatchFate, vegetable string) BatchLine {
	v := BatchLine{ID: b.ID, Name: n.use(b.Crop, b.Use), Vegetable: vegetable, Store: b.Store, StoreName: n.store(b.Store), Crop: b.Crop, Use: b.Use,
		Kg: reckoned(b.ThereKg, b.Kg), Stored: b.Stored, Planting: b.Planting, Good: b.Good, Out: oddsOfDays(b.Out), EatenKg: b.EatenKg, LostKg: b.LostKg, SownKg: b.SownKg, LeftKg: b.LeftKg}
	if _, known := n.plantings[b.Planting]; known {
		v.PlantingName = n.planting(b.Planting)
	}
	for _, out := range b.Out {
		if out.IsSet() && out >= b.Good {
			v.Spoils += 1 / float64(len(b.Out))
		}
	}
	v.Spoils = min(1, v.Spoils)
	v.Says = batchSays(&v)
	return v
}

// reckoned is a weight as it is shown: as told, or to a tenth of a kilogram when it
// is only reckoned from what was told.
func reckoned(kg, told float64) float64 {
	if math.Abs(kg-told) < 1e-6*told {
		return told
	}
	return math.Round(kg*10) / 10
}

// batchSays says what becomes of a batch.
func batchSays(b *BatchLine) words.Phrase {
	args := words.Args{"good": b.Good, "out": b.Out.P50, "lost": b.LostKg}
	switch {
	case b.Kg < leastThere && b.Out.P50.IsSet():
		return words.P("desk.batch_gone", args)
	case b.isStock():
		return words.P("desk.batch_stock", args)
	case b.Spoils >= likelySpoiled:
		return words.P("desk.batch_spoils", args)
	case !b.Out.P50.IsSet():
		return words.P("desk.batch_outlasts", args)
	}
	return words.P("desk.batch_eaten", args)
}

// leastThere is how much of a batch is worth a word [kg].
const leastThere = 0.02

// leastStock is the share of a batch that is planted when none of it is eaten and it
// is planting stock; the rest is lost little by little until then. Judgement.
const leastStock = 0.25

// isStock tells whether a batch is planting stock rather than food.
func (b *BatchLine) isStock() bool {
	return b.EatenKg < leastThere && b.SownKg >= leastStock*b.Kg && b.SownKg > 0
}

// likelySpoiled is the share of futures from which a batch is said to go over.
const likelySpoiled = 0.5

// sureEnough is the share of futures from which a thing is told without odds.
const sureEnough = 0.95

// spreadTold is the spread either way from which it is told [d].
const spreadTold = 4

// stockSays says when a stock runs out and what follows.
func stockSays(v *StockView) []words.Phrase {
	if !v.Out.P50.IsSet() {
		return []words.Phrase{words.P("desk.stock_outlasts", nil)}
	}
	if v.Kg < leastThere {
		return []words.Phrase{words.P("desk.stock_gone", nil)}
	}
	args := words.Args{"out": v.Out.P50, "odds": v.Meets, "next": v.NextName, "wait": max(1, (v.WaitD+3)/7), "none": 1 - v.Meets}
	out := []words.Phrase{words.P("desk.stock_out", args)}
	if v.Out.P90.IsSet() && (v.Out.P90-v.Out.P10)/2 >= spreadTold {
		args["days"] = int(v.Out.P90-v.Out.P10) / 2
		out[0] = words.P("desk.stock_out_about", args)
	}
	how := "by"
	if v.NextName == "" {
		how = "plain"
	}
	switch {
	case v.Judged < 0.5:
		return append(out, words.P("desk.stock_unwanted", nil))
	case v.Meets >= sureEnough:
		return append(out, words.P("desk.stock_met_"+how, args))
	case v.WaitD == outlook.NoWait && v.Meets >= 0.5:
		return append(out, words.P("desk.stock_seldom", args))
	case v.WaitD == outlook.NoWait:
		return append(out, words.P("desk.stock_none", args))
	case v.Meets <= 1-sureEnough:
		return append(out, words.P("desk.stock_unmet_"+how, args))
	}
	return append(out, words.P("desk.stock_partly_"+how, args))
}

// eatSoon is how long before its end a batch is to be eaten first [d].
const eatSoon = 42

// eatFirst lists the batches that go over soon or before they are eaten.
func eatFirst(stocks []StockView, today cal.Date) []BatchLine {
	var out []BatchLine
	for i := range stocks {
		for _, b := range stocks[i].Batches {
			food := b.Kg >= leastThere && !b.isStock()
			if food && (b.Spoils >= likelySpoiled || b.Good.IsSet() && b.Good < today+eatSoon) {
				out = append(out, b)
			}
		}
	}
	slices.SortStableFunc(out, func(a, b BatchLine) int { return soonest(a.Good, b.Good) })
	return out
}
