package web

import "strings"

// blossomPosted keeps the stages of blossom that somebody saw today.
func blossomPosted(v *visit) error {
	if err := v.r.ParseForm(); err != nil {
		return err
	}
	stages := map[string]string{}
	for name, values := range v.r.PostForm {
		if id, ok := strings.CutPrefix(name, stageField); ok && len(values) == 1 {
			stages[id] = strings.TrimSpace(values[0])
		}
	}
	kept, err := v.office.TellBlossom(v.author(), stages)
	if err != nil {
		return err
	}
	v.kept(kept, "/frost#blossom")
	return nil
}
