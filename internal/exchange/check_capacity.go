package exchange

import (
	"garner/internal/fault"
	"garner/internal/words"
)

// checkCapacity holds a store to one telling of how much it takes.
func (c *checker) checkCapacity(row int) {
	s := &c.h.Stores[row]
	columns := []string{"capacity_kg", "litres", "jars"}
	var told []string
	for i, v := range []float64{s.CapacityKg, s.Litres, s.Jars} {
		if v != 0 {
			told = append(told, columns[i])
		}
	}
	switch {
	case c.faulty("stores", row, columns...):
	case len(told) == 0:
		c.wrong("stores", row, "capacity_kg", fault.New(fault.Invalid, "exchange.capacity_untold", nil))
	case len(told) > 1:
		c.wrong("stores", row, told[1], fault.New(fault.Conflict, "exchange.capacity_twice", words.Args{"columns": told}))
	}
}
