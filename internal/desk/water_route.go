package desk

import (
	"cmp"
	"slices"

	"garner/internal/holding"
	"garner/internal/place"
)

// alongTheRoute are the beds in walking order.
func alongTheRoute(h *holding.Holding) []place.Bed {
	beds := slices.Clone(h.Beds)
	slices.SortStableFunc(beds, func(a, b place.Bed) int { return cmp.Compare(a.Order, b.Order) })
	return beds
}

// sortFeeds puts first what is due first, and then what comes first on the route.
func sortFeeds(rows []FeedRow, at map[string]int) {
	slices.SortStableFunc(rows, func(a, b FeedRow) int {
		if by := cmp.Compare(a.Due, b.Due); by != 0 {
			return by
		}
		return cmp.Compare(at[a.Bed], at[b.Bed])
	})
}
