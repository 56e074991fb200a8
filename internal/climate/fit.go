package climate

import "garner/internal/sun"

// FitGenerator makes a generator from a record of ten or more years.
func FitGenerator(r *Record, loc sun.Location) (*Generator, error) {
	n, err := NormalsOf(r)
	if err != nil {
		return nil, err
	}
	return NewGenerator(n, loc)
}
