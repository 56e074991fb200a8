package crop

// drySeed is the dry share of its weight above which what is eaten is the seed
// itself, as it is sown: dry beans and peas have 0.86 and more, nothing that is
// eaten fresh has half of it.
const drySeed = 0.7

// StockKg returns the planting stock for an area of ground [m2 to kg]: sets,
// cloves and tubers, or dry seed sown in rows, of what is eaten; 0 when the book
// does not tell, and for what is raised, bought as plants or sown from other seed
// than is eaten.
func (u *Use) StockKg(method string, areaM2 float64) float64 {
	if method == "" && len(u.Methods) > 0 {
		method = u.Methods[0]
	}
	switch {
	case method == Set:
		return areaM2 * u.PlantsPerM2() * u.SetG / 1000
	case method == Seed && u.DryMatter >= drySeed && u.SeedsPerGram > 0 && u.BetweenRowM > 0:
		return areaM2 / u.BetweenRowM * u.SowPerM / u.SeedsPerGram / 1000
	}
	return 0
}
