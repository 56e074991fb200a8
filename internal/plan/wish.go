package plan

// WishKind is what a grower asks of a drafted year. The list is closed.
type WishKind string

// The kinds of wish.
const (
	Pin    WishKind = "pin"    // a planting of the plan stays as it is
	Forbid WishKind = "forbid" // a crop does not come into a bed
	Hours  WishKind = "hours"  // so many hours of garden work a week at most
)

// Wish is one thing that is asked of every drafted year, until it is taken back.
type Wish struct {
	ID       string
	Kind     WishKind
	Planting string  // of a pin: id
	Crop     string  // of what is forbidden: id
	Bed      string  // of what is forbidden; empty: all beds
	Hours    float64 // a week, >= 0
}
