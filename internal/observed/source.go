package observed

// The layouts of a forecast that is fetched.
const (
	DailyCSV = "csv"  // a daily record, as package station reads it
	MapJSON  = "json" // lists of values, found by a map
)

// Yes turns an address on; anything else leaves it off.
const Yes = "yes"

// Address is where a forecast is fetched from.
type Address struct {
	ID     string
	Site   string
	URL    string // http or https
	Layout string // DailyCSV or MapJSON
	Map    string // of MapJSON: where each quantity stands; empty: our own layout
	EveryH int    // hours from one fetch to the next
	On     string // Yes, or it is not fetched
}

// Sensor is one quantity of an instrument that sends by itself.
type Sensor struct {
	ID       string
	Name     string
	Site     string
	Bed      string // of a probe in a bed or an instrument under its cover; empty: in the open
	Topic    string // it is sent under
	Field    string // where the figure stands in what is sent; empty: what is sent is the figure
	Quantity string // a word of Quantities
	Unit     string // the figure is sent in; empty: the quantity's usual one
	Time     string // where the time stands in what is sent; empty: the time it came
}
