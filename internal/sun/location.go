package sun

// Location is a place on the globe.
type Location struct {
	LatitudeDeg  float64 // degrees, south negative, -66 to 66 in this tool
	LongitudeDeg float64 // degrees, west negative
	ElevationM   float64 // metres above the sea
}
