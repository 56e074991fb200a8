package window

import (
	"garner/internal/cal"
	"garner/internal/climate"
	"garner/internal/cover"
	"garner/internal/sun"
)

// What is asked for unless said otherwise, and where generated weather begins.
const (
	UsualYears  = 60  // of generated weather
	UsualChance = 0.8 // of a usable crop
	FirstYear   = 2001
	UsualSeed   = uint64(1)
)

// GeneratedPlace is a place under years of weather drawn from monthly normals,
// with light the share (0-1) that reaches it. Normals the generator cannot use
// are refused.
func GeneratedPlace(site sun.Location, normals climate.Normals, seed uint64, years int, light float64, kind cover.Kind) (*Place, error) {
	generator, err := climate.NewGenerator(normals, site)
	if err != nil {
		return nil, err
	}
	first := cal.Of(FirstYear, 1, 1)
	span := int(cal.Of(FirstYear+years, 1, 1)-first) + RunOut
	return NewPlace(site, first, generator.Days(seed, 0, 0, first, span), light, kind)
}
