package desk

import (
	"garner/internal/words"
)

// WeatherKeeper keeps what comes by itself: forecasts fetched and figures sent.
// None of it is an entry. Package store satisfies it; a keeper that does not keeps
// nothing of the kind.
type WeatherKeeper interface {
	// KeepMeasured keeps figures in one transaction: when it returns they are on
	// the disk. Rises of totals are worked out on the way.
	KeepMeasured(figures []Measured, refused []RefusedMessage) error
	// MeasuredHours returns what an instrument sent from an hour on, in order.
	MeasuredHours(sensor string, from int64) ([]MeasuredHour, error)
	// Heard returns the state of an instrument; nil when it was never heard.
	Heard(sensor string) (*Heard, error)
	// Fetched returns what was fetched from an address; nil when nothing ever was.
	Fetched(address string) (*FetchedForecast, error)
	KeepFetched(f FetchedForecast) error
}

// Measured is one figure an instrument sent, in our unit.
type Measured struct {
	Sensor string
	At     int64 // seconds since 1970
	Value  float64
	How    Gather
}

// Gather says what the figures of an hour come to.
type Gather int

// The ways of gathering.
const (
	Means  Gather = iota // least, most and mean
	Parts                // each figure is a part of the sum
	Totals               // a total that only rises: its steps are the sum
)

// RefusedMessage is a message of an instrument that could not be read.
type RefusedMessage struct {
	Sensor string
	At     int64
	Why    words.Phrase
}

// MeasuredHour is what an instrument sent within an hour.
type MeasuredHour struct {
	Hour                     int64 // since 1970 in UTC
	N                        int
	Total, Least, Most, Rise float64
	Last                     float64
}

// Heard is the state of an instrument.
type Heard struct {
	Value   float64
	At      int64 // seconds since 1970; 0: never a figure
	Refused int
	Why     *words.Phrase // of the last message refused
}

// FetchedForecast is the last forecast of an address.
type FetchedForecast struct {
	Address, URL  string
	Body          []byte
	Tag, Modified string
	GotAt         int64 // seconds since 1970; 0: never
	TriedAt       int64
	Failures      int // in a row
	Why           *words.Phrase
}
