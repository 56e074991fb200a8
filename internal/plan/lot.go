package plan

import "garner/internal/cal"

// Lot is seed or plants on hand, with which a hole can be filled.
type Lot struct {
	ID      string
	Form    string // seed, plants
	Crop    string
	Use     string // empty: any use of the crop
	Variety string
	Amount  float64
	Unit    string   // g, seeds, plants
	Since   cal.Date // harvested or bought, or sown; None: not known
}
