package larder

import (
	"math"

	"garner/internal/labour"
)

// HoursPerKg returns the work in the kitchen that a method takes [h/kg], washing,
// cutting and blanching together; 0 where food is laid in as it is.
func HoursPerKg(method string) float64 { return labour.Preserve(method) }

// Preserves tells whether a method takes work in the kitchen.
func Preserves(method string) bool { return HoursPerKg(method) > 0 }

// withinHours is what of kg there is still time to prepare this week for a store.
func (s *Scratch) withinHours(store int32, kg float64) float64 {
	perKg := s.pantry.hoursPerKg[store]
	if s.pantry.in.KitchenHours <= 0 || perKg == 0 {
		return kg
	}
	return math.Min(kg, s.hoursLeft/perKg)
}

// work notes the time that a lot took in the kitchen.
func (s *Scratch) work(store int32, kg float64, out *Year) {
	hours := kg * s.pantry.hoursPerKg[store]
	s.hoursLeft = math.Max(0, s.hoursLeft-hours)
	out.Stores[store].KitchenHours += hours
}

// freshWeek gives the kitchen its hours at the start of each seven days.
func (s *Scratch) freshWeek(day int) {
	if day%7 == 0 {
		s.hoursLeft = s.pantry.in.KitchenHours
	}
}
