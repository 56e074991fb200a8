package exchange

import (
	"garner/internal/fault"
	"garner/internal/record"
	"garner/internal/risk"
	"garner/internal/rotation"
	"garner/internal/words"
)

// checkProblems warns of recorded diseases and pests that have no name, or one that
// neither the rotation nor a rule of risk knows, with the nearest that the rotation
// does: they are kept, but nothing follows from them. Plants may be lost to slugs as
// well, of which nothing need follow.
func (c *checker) checkProblems() {
	for i, r := range c.h.Records {
		if (r.What == record.Disease || r.What == record.Sighted) && r.Problem == "" {
			c.warnings.add(fault.New(fault.Invalid, "exchange.problem_blank", nil).In(c.place("records", i, "problem")))
		}
		if r.Problem == "" || r.What != record.Disease && record.Plain(r.Problem) {
			continue
		}
		_, nearest, known := rotation.Find(r.Problem)
		if known || risk.Known(r.Problem) {
			continue
		}
		key, args := "exchange.problem_unknown", words.Args{"given": r.Problem}
		if nearest != "" {
			key, args["near"] = "exchange.problem_unknown_near", nearest
		}
		c.warnings.add(fault.New(fault.NotFound, key, args).In(c.place("records", i, "problem")))
	}
}
