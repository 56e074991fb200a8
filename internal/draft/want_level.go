package draft

import (
	"slices"

	"garner/internal/cal"
	"garner/internal/larder"
	"garner/internal/programme"
)

// What a portion that lacks costs by how much the household holds to it, by
// larder.Importance.Rank. judgement: a floor is worth five plates that were only
// wanted; what is nice to have gives way to any of them.
var rankCosts = [...]float64{5, 1, 0.3}

// boughtRank is the level of what may be bought.
const boughtRank = len(rankCosts)

// ranked is a course of weeks for each rank of importance, and one for what may be
// bought [kg].
type ranked [boughtRank + 1][]float64

// levels are what a party's wants come to: a level for each importance, the dearest
// first, and one that costs nothing of as much as may be bought. What is bought meets
// the dearest that lacks, so it is taken off the dearest level. A level that is empty
// in every week is left out.
func (b *builder) levels(p *party, wants []larder.Want) []programme.Level {
	var kg ranked
	for rank := range kg {
		kg[rank] = make([]float64, b.Weeks)
	}
	for _, r := range p.rows {
		b.addRow(&kg, r, wants)
	}
	for week, bought := range kg[boughtRank] {
		for rank := range rankCosts {
			off := min(bought, kg[rank][week])
			kg[rank][week], bought = kg[rank][week]-off, bought-off
		}
	}
	var out []programme.Level
	for rank, weeks := range kg {
		for week := range weeks {
			weeks[week] = roundKg(weeks[week])
		}
		if slices.Max(weeks) == 0 {
			continue
		}
		cost := 0.0
		if rank < boughtRank {
			cost = rankCosts[rank] / p.portionKg
		}
		out = append(out, programme.Level{PerWeek: weeks, Cost: roundCost(cost)})
	}
	return out
}

// addRow adds what is wanted of a row on each day, by who sits at the table, but
// nothing in gaps that are left; and what of it may be bought, at most all of it.
func (b *builder) addRow(kg *ranked, r row, wants []larder.Want) {
	for day := range 7 * b.Weeks {
		date := b.From + cal.Date(day)
		if b.left(r, date) {
			continue
		}
		share := b.atTable(date)
		wanted, bought := 0.0, 0.0
		for i := range wants {
			w := &wants[i]
			if rowOf(w.Vegetable, w.Group) != r || !w.InSeason(date) {
				continue
			}
			wanted, bought = wanted+share*w.KgPerWeek/7, bought+share*w.BuyKgPerWeek/7
			kg[w.Importance.Rank()][day/7] += share * w.KgPerWeek / 7
		}
		bought += share * b.boughtOn(r, date)
		kg[boughtRank][day/7] += min(wanted, bought)
	}
}

// boughtOn is what the purchases let be bought of a row on a day [kg].
func (b *builder) boughtOn(r row, date cal.Date) (kg float64) {
	for i := range b.Holding.Purchases {
		if p := &b.Holding.Purchases[i]; rowOf(p.Vegetable, p.Group) == r && p.Covers(date) {
			kg += p.KgPerWeek / 7
		}
	}
	return kg
}

// left tells whether a row's gap on a day is left as it is.
func (b *builder) left(r row, date cal.Date) bool {
	return slices.ContainsFunc(b.Holding.GapsLeft, func(l larder.GapLeft) bool {
		return rowOf(l.Vegetable, l.Group) == r && l.From <= date && date <= l.To
	})
}

// atTable is who sits at the table on a day, as a share of who usually do.
func (b *builder) atTable(date cal.Date) float64 {
	usual := b.Holding.Eaters
	if len(b.Holding.Visits) == 0 || !(usual > 0) {
		return 1
	}
	return max(0, larder.AtTable(usual, b.Holding.Visits, date)) / usual
}

// wanted is all that is wanted of a demand in a week [kg].
func wanted(d *programme.Demand, week int) float64 {
	sum := 0.0
	for i := range d.Levels {
		sum += d.Levels[i].PerWeek[week]
	}
	return sum
}
