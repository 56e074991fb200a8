package outlook

import "garner/internal/num"

// VegetableName names all that the weeks of one vegetable of the table depend
// on. Where two tables give a vegetable the same name its weeks are the same.
func (t *Table) VegetableName(vegetable int) (num.Digest, bool) {
	name := t.Vegetables[vegetable].Name
	for _, g := range t.groups {
		for i, v := range g.rows() {
			if v != name {
				continue
			}
			d := num.NewDigester("weeks")
			d.Digest(g.digest)
			d.Int(int64(i))
			d.Int(int64(t.From))
			d.Int(int64(t.Weeks))
			return d.Sum(), true
		}
	}
	return num.Digest{}, false
}
