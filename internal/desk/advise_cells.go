package desk

import (
	"slices"
	"strings"

	"garner/internal/exchange"
	"garner/internal/holding"
	"garner/internal/plan"
)

// plantingCells is a planting as its row of plantings.csv.
func plantingCells(p *plan.Planting) map[string]string {
	h := holding.Holding{Plantings: []plan.Planting{*p}}
	return cellsOf(exchange.Columns("plantings"), exchange.Rows(&h)["plantings"][0])
}

// TryCandidate is the change that tries a candidate in the plan.
func (c *CandidateView) TryCandidate() plan.Change { return addedBy(c.Cells) }

// addedBy is the change that adds a row of plantings.csv.
func addedBy(cells map[string]string) plan.Change {
	var list []string
	for _, name := range plan.Fields() {
		if value := cells[name]; value != "" {
			list = append(list, name+"="+value)
		}
	}
	return plan.Change{Action: "add", Planting: cells["id"], Value: strings.Join(list, ";")}
}

// Accept makes a candidate a planting of the plan in force, in one entry. Only
// the columns of a candidate are taken.
func (o *Office) Accept(by Author, cells map[string]string) (*KeptEntry, error) {
	own := map[string]string{}
	for _, name := range append(slices.Clone(candidateColumns), "id") {
		if value := cells[name]; value != "" {
			own[name] = value
		}
	}
	h, err := o.Holding()
	if err != nil {
		return nil, err
	}
	own["plan"] = h.Plan
	return o.Save(by, "plantings", "", own, 0)
}

// candidateColumns are the columns that a candidate fills beside its id and plan.
var candidateColumns = []string{"bed", "crop", "use", "variety", "method", "date", "area_m2", "clear_by", "store"}
