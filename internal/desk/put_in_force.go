package desk

// PutInForce makes a plan, by its id or name, the one that the table shows.
func (o *Office) PutInForce(by Author, name string) (*KeptEntry, error) {
	h, err := o.Holding()
	if err != nil {
		return nil, err
	}
	p, err := namedPlan(h, name)
	if err != nil {
		return nil, err
	}
	row, err := o.Row("holding", h.ID)
	if err != nil {
		return nil, err
	}
	return o.Save(by, "holding", h.ID, map[string]string{"plan": p.ID}, row.Version)
}
