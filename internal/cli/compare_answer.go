package cli

import (
	"strconv"

	"garner/internal/cal"
	"garner/internal/desk"
	"garner/internal/plan"
)

// comparison gathers both plans for the JSON.
func (a *App) comparison(v *desk.CompareView) comparison {
	c := comparison{Holding: v.Holding, From: v.From, Years: v.Years, Seed: v.Seed, A: comparedPlanOf(v.A, &v.Comparison.A, v.SumA),
		B: comparedPlanOf(v.B, &v.Comparison.B, v.SumB), Difference: comparedSum(v.Comparison.Differs), Says: []string{}}
	for k := range v.Weeks {
		c.Weeks = append(c.Weeks, v.From+cal.Date(7*k))
	}
	for i := range v.Vegetables {
		g := &v.Vegetables[i]
		c.Vegetables = append(c.Vegetables, comparedVegetable{g.Name, g.Want, comparedCourse{g.A.Eaten, g.A.Short, g.A.Over}, comparedCourse{g.B.Eaten, g.B.Short, g.B.Over}})
	}
	for _, p := range v.Lead {
		c.Says = append(c.Says, a.Words.Text(p))
	}
	for _, d := range v.Differs {
		c.Says = append(c.Says, a.Words.Text(d.Says))
	}
	return c
}

func comparedPlanOf(p plan.Plan, c *desk.CompareCourse, s desk.CompareSum) comparedPlan {
	return comparedPlan{ID: p.ID, Name: p.Name, WantKg: c.Want, EatenKg: c.Eaten, ShortKg: c.Short, OverKg: c.Over, Gaps: c.Gaps, Gluts: c.Gluts,
		GroundM2: c.Ground, WaterL: c.Water, GardenH: c.Garden, KitchenH: c.Kitchen, Sum: comparedSum(s)}
}

func seedText(seed uint64) string { return strconv.FormatUint(seed, 10) }
