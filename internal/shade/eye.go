package shade

// eye is working space for one point on the ground after another.
type eye struct {
	seen     []sight
	changing []crossing // those seen in one direction that change with the leaf
}

// look gathers what stands between a point and the sky; false when nothing does.
func (e *eye) look(obstacles []obstacle, x, y float64) bool {
	e.seen = e.seen[:0]
	for i := range obstacles {
		if s, counts := obstacles[i].look(x, y); counts {
			e.seen = append(e.seen, s)
		}
	}
	return len(e.seen) > 0
}
