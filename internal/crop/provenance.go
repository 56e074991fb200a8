package crop

import "maps"

// Tally counts the numbers of a crop by how they came about. A number that
// several uses share counts once.
type Tally struct {
	Crop      string         // id
	Marks     map[string]int // the crop's own numbers and those it borrowed, by mark
	Inherited int            // numbers from the defaults of its group, its class or the book
}

// Own returns how many numbers are not inherited.
func (t Tally) Own() int {
	sum := 0
	for n := range maps.Values(t.Marks) {
		sum += n
	}
	return sum
}

// Share returns the share of the crop's own numbers that have the mark, 0 to 1;
// 0 when it has none.
func (t Tally) Share(mark string) float64 {
	if t.Own() == 0 {
		return 0
	}
	return float64(t.Marks[mark]) / float64(t.Own())
}

// Provenance counts where the numbers of each crop come from, in the order of
// Crops.
func Provenance(b *Book) []Tally {
	list := make([]Tally, len(b.crops))
	for i, c := range b.crops {
		list[i] = tally(c)
	}
	return list
}

func tally(c *Crop) Tally {
	t := Tally{Crop: c.ID, Marks: map[string]int{}}
	type number struct {
		parameter int
		fact      Fact
	}
	counted := map[number]bool{}
	for _, u := range c.Uses {
		for i, fact := range u.resolved.facts {
			if fact == nil || counted[number{i, *fact}] {
				continue
			}
			counted[number{i, *fact}] = true
			if u.resolved.from[i] != (scope{}) {
				t.Inherited++
			} else {
				t.Marks[fact.Mark]++
			}
		}
	}
	return t
}
