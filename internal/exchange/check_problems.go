package exchange

import (
	"garner/internal/fault"
	"garner/internal/rotation"
	"garner/internal/words"
)

// checkProblems warns of recorded diseases that the rotation does not know, with
// the nearest that it does: they are kept, but nothing follows from them.
func (c *checker) checkProblems() {
	for i, r := range c.h.Records {
		if r.Problem == "" {
			continue
		}
		_, nearest, known := rotation.Find(r.Problem)
		if known {
			continue
		}
		key, args := "exchange.problem_unknown", words.Args{"given": r.Problem}
		if nearest != "" {
			key, args["near"] = "exchange.problem_unknown_near", nearest
		}
		c.warnings.add(fault.New(fault.NotFound, key, args).In(c.place("records", i, "problem")))
	}
}
