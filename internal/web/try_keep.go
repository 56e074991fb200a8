package web

import (
	"net/url"
	"strings"

	"garner/internal/desk"
	"garner/internal/fault"
	"garner/internal/journal"
)

// keepTried writes what was tried into the plan in force, as one entry that can
// be taken back.
func keepTried(v *visit) error {
	tried, faults := readTried(url.Values{tryName: v.r.PostForm[tryName]})
	if len(faults) > 0 {
		return faults
	}
	if len(tried) == 0 {
		return fault.New(fault.Invalid, "web.try_nothing", nil)
	}
	by := v.author()
	if err := v.office.KeepTry(by, tried); err != nil {
		return err
	}
	v.kept(&desk.KeptEntry{Entry: journal.Entry{ID: by.Entry}}, withoutTried(v.back("/")))
	return nil
}

// withoutTried is an address without what it tries.
func withoutTried(address string) string {
	path, query, found := strings.Cut(address, "?")
	values, err := url.ParseQuery(query)
	if !found || err != nil {
		return path
	}
	values.Del(tryName)
	if len(values) == 0 {
		return path
	}
	return path + "?" + values.Encode()
}
