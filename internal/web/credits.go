package web

// credits shows whose figures the program stands on.
func credits(v *visit) error { return v.show(page{Name: "credits"}) }
