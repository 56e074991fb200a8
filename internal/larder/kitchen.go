package larder

import (
	_ "embed"
	"encoding/csv"
	"math"
	"strconv"
	"strings"
)

// kitchenCSV holds the work of preserving: method, hours_per_kg, source, mark,
// note.
//
//go:embed data/kitchen.csv
var kitchenCSV string

// kitchenHours is the work of a method in the kitchen [h/kg]; none: nothing worth
// counting.
var kitchenHours = readKitchen(kitchenCSV)

func readKitchen(text string) map[string]float64 {
	rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
	if err != nil {
		// The file is part of the program and every test reads it.
		panic("larder: data/kitchen.csv: " + err.Error())
	}
	out := map[string]float64{}
	for _, row := range rows[1:] {
		hours, err := strconv.ParseFloat(row[1], 64)
		if err != nil || !(hours > 0) {
			panic("larder: data/kitchen.csv: " + row[1])
		}
		out[row[0]] = hours
	}
	return out
}

// HoursPerKg returns the work in the kitchen that a method takes [h/kg], washing,
// cutting and blanching together; 0 where food is laid in as it is.
func HoursPerKg(method string) float64 { return kitchenHours[method] }

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
