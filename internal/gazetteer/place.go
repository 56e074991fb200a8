package gazetteer

import "garner/internal/sun"

// Place is a station with monthly normals.
type Place struct {
	ID       string
	Name     string
	Country  string
	Location sun.Location
	Period   string // years its temperatures cover, such as 2003-2021
	Short    bool   // its means are of five to seven years: trust them to about 1 C
	Doubtful bool   // its height differs between two lists by over 150 m
}

// Match is a place that was found.
type Match struct {
	Place
	Called     string  // the other name it was found by; empty: its own
	Spelled    bool    // found by the nearest spelling, not by what was written
	DistanceKm float64 // from the point asked for [km]; 0 when found by name
	HigherM    float64 // height of the point asked for less the place's [m]; 0 when found by name
}
