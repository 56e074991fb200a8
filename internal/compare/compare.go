package compare

import (
	"garner/internal/cal"
	"garner/internal/fault"
)

// Comparison is two plans side by side. What differs is B less A.
type Comparison struct {
	From       cal.Date // Monday
	Weeks      int
	Years      int
	Vegetables []Vegetable // in the order of the first table, then those only in the second
	A, B       Course
	SumA, SumB Sum
	Differs    Sum
}

// Vegetable is one vegetable under both plans.
type Vegetable struct {
	Name       string
	Want       []float64 // by week [kg]
	A, B       VegetableCourse
	SumA, SumB VegetableSum
	Differs    VegetableSum
}

// Of compares two plans. The error is a fault of kind Conflict where the tables are
// not of the same days, futures and seed.
func Of(a, b Side) (*Comparison, error) {
	if a.Table.From != b.Table.From || a.Table.Weeks != b.Table.Weeks || a.Table.Years != b.Table.Years || a.Table.Seed != b.Table.Seed {
		return nil, fault.New(fault.Conflict, "compare.other_futures", nil)
	}
	c := &Comparison{From: a.Table.From, Weeks: a.Table.Weeks, Years: a.Table.Years}
	var ofA, ofB map[string]VegetableCourse
	var wantsA, wantsB map[string][]float64
	c.A, ofA, wantsA = course(a)
	c.B, ofB, wantsB = course(b)
	for _, v := range a.Table.Vegetables {
		c.add(v.Name, wantsA[v.Name], ofA, ofB)
	}
	for _, v := range b.Table.Vegetables {
		if _, both := ofA[v.Name]; !both {
			c.add(v.Name, wantsB[v.Name], ofA, ofB)
		}
	}
	c.SumA, c.SumB = c.A.sum(), c.B.sum()
	c.Differs = c.SumB.less(c.SumA)
	return c, nil
}

// add compares one vegetable. A plan that does not give it at all, and of which
// none is wanted, has nothing of it in every week.
func (c *Comparison) add(name string, want []float64, ofA, ofB map[string]VegetableCourse) {
	v := Vegetable{Name: name, Want: want, A: c.orNothing(ofA[name]), B: c.orNothing(ofB[name])}
	v.SumA, v.SumB = v.A.sum(), v.B.sum()
	v.Differs = v.SumB.less(v.SumA)
	c.Vegetables = append(c.Vegetables, v)
}

func (c *Comparison) orNothing(v VegetableCourse) VegetableCourse {
	if v.Eaten != nil {
		return v
	}
	return VegetableCourse{Eaten: make([]float64, c.Weeks), Short: make([]float64, c.Weeks), Over: make([]float64, c.Weeks),
		Gap: make([]bool, c.Weeks), Glut: make([]bool, c.Weeks)}
}
