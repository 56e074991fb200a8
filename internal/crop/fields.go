package crop

import (
	"reflect"
	"strconv"
	"strings"
)

// field is a place in Use that a parameter fills.
type field struct {
	index []int
	item  int // of an array, else -1
}

// useFields returns the places of Use by parameter name: the fact tags, and
// age_yield_0 to age_yield_5 for the array.
func useFields() map[string]field {
	fields := map[string]field{}
	t := reflect.TypeFor[Use]()
	for i := range t.NumField() {
		f := t.Field(i)
		if name, ok := f.Tag.Lookup("fact"); ok {
			fields[name] = field{f.Index, -1}
		}
		if f.Type.Kind() == reflect.Array {
			for k := range f.Type.Len() {
				fields[snake(f.Name)+"_"+strconv.Itoa(k)] = field{f.Index, k}
			}
		}
	}
	return fields
}

// snake turns AgeYield into age_yield.
func snake(name string) string {
	var b strings.Builder
	for i, r := range name {
		if r >= 'A' && r <= 'Z' {
			if i > 0 {
				b.WriteByte('_')
			}
			r += 'a' - 'A'
		}
		b.WriteRune(r)
	}
	return b.String()
}
