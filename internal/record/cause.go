package record

import "slices"

// OtherCause stands for all causes that are not in a list.
const OtherCause = "other"

// PlainCauses are what plants are lost to that stays in no ground, as the problem
// of a record names it.
func PlainCauses() []string { return slices.Clone(plainCauses) }

var plainCauses = []string{"slugs", "pigeons", "mice", "frost", "drought"}

// Plain tells whether a problem is a cause that stays in no ground.
func Plain(problem string) bool {
	return problem == OtherCause || slices.Contains(plainCauses, problem)
}
