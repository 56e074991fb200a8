package desk

import (
	"garner/internal/outlook"
	"garner/internal/words"
)

// stockTold says what a planting claims of the own store, and how often that is
// lacking.
func stockTold(t *outlook.Table, planting string) []words.Phrase {
	claim, claims := t.StockClaim(planting)
	switch {
	case !claims:
		return nil
	case claim.Odds == 0:
		return []words.Phrase{words.P("desk.why_stock", words.Args{"kg": claim.Kg})}
	}
	return []words.Phrase{words.P("desk.why_stock_short", words.Args{"kg": claim.Kg, "odds": claim.Odds, "short": claim.Short / claim.Odds})}
}
