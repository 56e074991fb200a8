package outlook

import (
	"slices"

	"garner/internal/larder"
)

// kitchen stands among the stores for the hours that preserving shares: what is
// preserved belongs together when they are limited. No store has a blank in its
// id.
const kitchen = "the kitchen"

// preserves tells whether what goes into a store takes of limited hours.
func (j *job) preserves(store string) bool {
	if j.Holding.KitchenH <= 0 || store == "" {
		return false
	}
	at := slices.IndexFunc(j.Holding.Stores, func(s larder.Store) bool { return s.ID == store })
	return at >= 0 && larder.Preserves(j.Holding.Stores[at].Method)
}
