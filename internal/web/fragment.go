package web

import (
	"bytes"
	"net/http"
)

// fragmentHeader asks for the parts of a page alone, to take the place of those
// that are on the screen.
const fragmentHeader = "X-Fragment"

// showPart answers with a page, or with its main part alone where that is asked
// for.
func (v *visit) showPart(p page) error {
	if v.r.Header.Get(fragmentHeader) == "" {
		return v.show(p)
	}
	body, err := v.pages.renderPart(p)
	if err != nil {
		return err
	}
	v.w.Header().Set("Cache-Control", "no-store")
	send(v.w, v.r, max(p.Status, http.StatusOK), "text/html; charset=utf-8", body)
	return nil
}

// renderPart sets a page's main part without the layout.
func (p *pages) renderPart(shown page) ([]byte, error) {
	var b bytes.Buffer
	if err := p.byName[shown.Name].ExecuteTemplate(&b, "main", shown.Body); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}
