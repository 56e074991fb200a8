package draw

// taken is an upright box on a drawing that words or things take up [px].
type taken struct{ left, top, right, bottom float64 }

func (t taken) meets(o taken) bool {
	return t.left < o.right && o.left < t.right && t.top < o.bottom && o.top < t.bottom
}

func (t taken) meetsAny(others []taken) bool {
	for _, o := range others {
		if t.meets(o) {
			return true
		}
	}
	return false
}

// plates are the places that words take up in a drawing.
type plates []taken

// take sets a place aside when it meets no other.
func (b *plates) take(n taken) bool {
	if n.meetsAny(*b) {
		return false
	}
	*b = append(*b, n)
	return true
}
