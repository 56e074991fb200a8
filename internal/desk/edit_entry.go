package desk

// Entry returns an entry by its id; nil when there is none.
func (o *Office) Entry(id string) (*KeptEntry, error) { return o.keeper.Entry(id) }
