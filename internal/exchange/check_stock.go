package exchange

import (
	"garner/internal/crop"
	"garner/internal/fault"
	"garner/internal/plan"
	"garner/internal/words"
)

// stock warns of planting stock that cannot be weighed, and of more plants left
// for seed than there are.
func (c *checker) stock(row int, book *crop.Book, p *plan.Planting) {
	k, known := book.Crop(p.Crop)
	if !known {
		return
	}
	u, err := k.Use(p.Use)
	if err != nil {
		return
	}
	if p.Stock == plan.OwnStock && u.StockKg(string(p.Method), p.AreaM2) <= 0 {
		c.warnings.add(fault.New(fault.Conflict, "exchange.stock_unweighed", words.Args{"crop": k.Name}).In(c.place("plantings", row, "stock")))
	}
	if plants := p.AreaM2 * u.PlantsPerM2(); p.SeedPlants > 0 && plants > 0 && p.SeedPlants > plants && p.InRowM == 0 && p.BetweenRowM == 0 {
		c.warnings.add(fault.New(fault.Conflict, "exchange.seed_plants_above", words.Args{"given": p.SeedPlants, "plants": plants}).In(c.place("plantings", row, "seed_plants")))
	}
}
