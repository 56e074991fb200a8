package outlook

import "sync"

// sums are a group's vegetables added up to weeks and woven to ribbons, made when
// they are first asked for. They live as long as the group's years, so that after
// an edit only what it touched is added up anew.
type sums struct {
	weekly  byVegetable[Weekly]
	ribbons byVegetable[Ribbon]
}

// byVegetable keeps one thing for each vegetable. It may be asked from many places
// at once.
type byVegetable[T any] struct {
	mu   sync.Mutex
	kept map[string]T
}

// of returns what is kept for a vegetable, made by make when it is not at hand.
func (b *byVegetable[T]) of(vegetable string, make func() T) T {
	b.mu.Lock()
	defer b.mu.Unlock()
	if known, ok := b.kept[vegetable]; ok {
		return known
	}
	if b.kept == nil {
		b.kept = map[string]T{}
	}
	made := make()
	b.kept[vegetable] = made
	return made
}
