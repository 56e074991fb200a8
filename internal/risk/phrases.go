package risk

import (
	"strings"

	"garner/internal/words"
)

// Name is what the rule is called, with what it is about.
func (r *Rule) Name() words.Phrase { return words.P("risk.rule_"+key(r.ID), nil) }

// ProblemName is what a disease or pest is called, within a sentence.
func ProblemName(problem string) words.Phrase { return words.P("risk.problem_"+key(problem), nil) }

// Short is what the rule is called within a sentence; a rule that sums warmth for a
// pest is called by the pest.
func (r *Rule) Short() words.Phrase {
	if r.Pest() {
		return ProblemName(r.Problem)
	}
	return words.P("risk.short_"+key(r.ID), nil)
}

// Reads says what the rule looks at and when it fires.
func (r *Rule) Reads() words.Phrase {
	if forms[r.Form].byEvents {
		return words.P("risk.reads_degree_days", nil)
	}
	return words.P("risk.reads_"+key(r.ID), nil)
}

// Text is what growers do.
func (m Measure) Text() words.Phrase { return words.P("risk.do_"+m.ID, nil) }

// EventName says what a pest does.
func EventName(event string) words.Phrase { return words.P("risk.event_"+event, nil) }

// key writes an id as part of a catalogue key.
func key(id string) string { return strings.ReplaceAll(id, "-", "_") }
