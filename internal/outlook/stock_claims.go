package outlook

import (
	"garner/internal/crop"
	"garner/internal/larder"
	"garner/internal/num"
	"garner/internal/plan"
)

// claims are the plantings to come whose planting stock is held back from a
// store of the group's vegetables.
func (j *job) claims(in map[string]bool) []larder.Claim {
	var out []larder.Claim
	for _, b := range j.beds {
		for i := range b.plantings {
			p, u := &b.plantings[i], b.uses[i].use
			if p.Stock != plan.OwnStock || !in[u.Vegetable] || p.Date < j.Today || j.done.of(p.ID).planted.IsSet() {
				continue
			}
			out = append(out, larder.Claim{Planting: p.ID, Crop: u.Crop, Use: u.Name, Commonest: j.commonest(u), Day: p.Date,
				Kg: u.StockKg(string(p.Method), p.AreaM2)})
		}
	}
	return out
}

// commonest tells whether a use is the one that a blank means.
func (j *job) commonest(u *crop.Use) bool {
	c, known := j.Book.Crop(u.Crop)
	if !known {
		return false
	}
	usual, err := c.Use("")
	return err == nil && usual.Name == u.Name
}

// StockClaim is what a planting claims of the own store, and what it gets [kg].
type StockClaim struct {
	Kg    float64 // wanted
	Short float64 // not there, mean over the futures
	Odds  float64 // share of futures in which something is lacking
}

// StockClaim returns what a planting claims; false when it claims nothing within
// the table.
func (t *Table) StockClaim(planting string) (StockClaim, bool) {
	for _, g := range t.groups {
		for i, c := range g.setting.Claims {
			if c.Planting == planting {
				return g.stockClaim(i), true
			}
		}
	}
	return StockClaim{}, false
}

func (g *groupWork) stockClaim(i int) StockClaim {
	out := StockClaim{Kg: g.setting.Claims[i].Kg}
	for _, y := range g.result.years {
		out.Short += y.Claims[i].ShortKg / float64(len(g.result.years))
		if y.Claims[i].ShortKg > leastStockShort*out.Kg {
			out.Odds += 1 / float64(len(g.result.years))
		}
	}
	return out
}

// leastStockShort is the share of a claim whose lack is worth telling.
const leastStockShort = 0.01

// digestClaims hashes what is held back.
func digestClaims(d *num.Digester, claims []larder.Claim) {
	for _, c := range claims {
		d.Text("claim")
		d.Text(c.Planting + "/" + c.Crop + "/" + c.Use)
		d.Int(int64(c.Day))
		d.Float(c.Kg)
	}
}

// eatenShare is what of a planting is eaten: all but the plants left for seed.
func eatenShare(p *plan.Planting, use *prepared) float64 {
	if p.SeedPlants <= 0 {
		return 1
	}
	plants := p.AreaM2 * use.use.PlantsPerM2()
	if plants <= p.SeedPlants {
		return 0
	}
	return 1 - p.SeedPlants/plants
}

// eaten is a course of which only a share is eaten.
func eaten(course []float32, share float64) []float32 {
	if share == 1 || len(course) == 0 {
		return course
	}
	out := make([]float32, len(course))
	for i, kg := range course {
		out[i] = kg * float32(share)
	}
	return out
}
