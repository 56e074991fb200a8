package web

import (
	"strconv"

	"garner/internal/words"
)

// removeBody asks before a row is removed, and says what hangs on it.
type removeBody struct {
	Name       string
	Path, Back string
	Hidden     []hiddenField
	Hangs      []hangLine
}

// hangLine is a row that leans on the one removed.
type hangLine struct {
	Name string
	Path string // of its page, empty when it has none
	Says words.Phrase
}

// askRemove shows what removing a row comes to.
func (v *visit) askRemove(f *rowForm, id string) error {
	row, err := v.office.Row(f.table, id)
	if err != nil {
		return err
	}
	hangs, err := v.office.Hangs(f.table, id)
	if err != nil {
		return err
	}
	h, err := v.office.Holding()
	if err != nil {
		return err
	}
	entry, err := v.entry()
	if err != nil {
		return err
	}
	b := removeBody{Name: v.rowName(f, row, h), Path: rowPath(f, id) + "/remove", Back: f.after(v, row.Cells),
		Hidden: []hiddenField{{"entry", entry}, {"base", strconv.FormatInt(row.Version, 10)}}}
	if len(hangs) > 0 {
		b.Hidden = append(b.Hidden, hiddenField{"with", "1"})
	}
	if b.Back = v.linkBack(b.Back); v.query("back") != "" {
		b.Hidden = append(b.Hidden, hiddenField{"back", b.Back})
	}
	for _, c := range f.carried {
		b.Hidden = append(b.Hidden, hiddenField{c, row.Cells[c]})
	}
	for _, g := range hangs {
		says := words.P("web.hangs_stays", nil)
		if g.Goes {
			says = words.P("web.hangs_goes", nil)
		}
		b.Hangs = append(b.Hangs, hangLine{Name: v.sentence(g.Name), Path: pageOf(g.Table, g.ID), Says: says})
	}
	return v.show(page{Name: "remove", Nav: f.nav, Body: b})
}

// pageOf is the page of a row, empty when it has none.
func pageOf(table, id string) string {
	switch table {
	case "plantings":
		return plantingPath(id)
	case "beds":
		return bedPath(id)
	case "stores":
		return storePath(id)
	}
	return ""
}

// removeRow removes a row, with what hangs on it when that was said.
func (v *visit) removeRow(f *rowForm, id string) error {
	base, err := v.base()
	if err != nil {
		return err
	}
	kept, err := v.office.Remove(v.author(), f.table, id, base, v.field("with") != "")
	if err != nil {
		return err
	}
	carried := map[string]string{}
	for _, c := range f.carried {
		carried[c] = v.field(c)
	}
	v.kept(kept, v.back(f.after(v, carried)))
	return nil
}
