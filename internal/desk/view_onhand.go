package desk

import (
	"cmp"
	"math"
	"slices"

	"garner/internal/cal"
	"garner/internal/crop"
	"garner/internal/plan"
)

// LotView is a lot of seed or plants on hand.
type LotView struct {
	plan.Lot
	Name     string  // what it is: "leeks", with its variety
	EnoughM2 float64 // ground it sows or plants; 0: not known
	GoodTo   int     // last year the seed is likely to come up well; 0: not known
	Old      bool    // that year is over
}

// OnHandView returns the seed and plants on hand, by name.
func (o *Office) OnHandView() ([]LotView, error) {
	a, err := o.ask(nil)
	if err != nil {
		return nil, err
	}
	n := newNamer(a)
	var out []LotView
	for _, lot := range a.holding.OnHand {
		v := LotView{Lot: lot, Name: n.use(lot.Crop, lot.Use)}
		if lot.Use == "" {
			if c, ok := a.setting.Book.Crop(lot.Crop); ok {
				v.Name = c.Plural
			}
		}
		if variety, ok := n.varieties[lot.Variety]; ok {
			v.Name += ", " + variety.Name
		}
		if _, u, err := useOf(a.setting.Book, lot.Crop, lot.Use); err == nil {
			v.EnoughM2 = enough(&lot, u)
			v.age(u, a.setting.Today)
		}
		out = append(out, v)
	}
	slices.SortStableFunc(out, func(a, b LotView) int { return cmp.Or(cmp.Compare(a.Form, b.Form), cmp.Compare(a.Name, b.Name)) })
	return out, nil
}

// enough is the ground a lot sows or plants at the book's distances [m2].
func enough(lot *plan.Lot, u *crop.Use) float64 {
	if lot.Amount <= 0 || u.InRowM <= 0 || u.BetweenRowM <= 0 {
		return 0
	}
	switch {
	case lot.Unit == "plants":
		return lot.Amount / u.PlantsPerM2()
	case u.SowPerM <= 0:
		return 0
	case lot.Unit == "seeds":
		return lot.Amount / u.SowPerM * u.BetweenRowM
	case SeedG(u, 1) > 0:
		return lot.Amount / SeedG(u, 1)
	}
	return 0
}

// age fills in how long seed is good for.
func (v *LotView) age(u *crop.Use, today cal.Date) {
	if v.Form != "seed" || v.Unit == "plants" || !v.Since.IsSet() || u.SeedLifeYears <= 0 {
		return
	}
	v.GoodTo = v.Since.Year() + int(math.Floor(u.SeedLifeYears))
	v.Old = today.Year() > v.GoodTo
}

// CropNames are the crops of the book, by name.
func CropNames() ([]CropName, error) {
	b, err := book()
	if err != nil {
		return nil, err
	}
	var out []CropName
	for _, c := range b.Crops() {
		out = append(out, CropName{c.ID, c.Plural})
	}
	return out, nil
}
