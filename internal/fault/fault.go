// Package fault is the one kind of error that reaches a person: what kind it
// is, where it is (file, row, column) and a phrase that says what was given and
// what would be right.
package fault

import (
	"errors"
	"fmt"
	"sort"
	"strings"

	"garner/internal/words"
)

// Kind sorts faults; the command line maps it to an exit code, the pages to a
// status.
type Kind int

// The kinds of fault.
const (
	Invalid    Kind = iota + 1 // what was given cannot be right
	NotFound                   // what was named does not exist
	Conflict                   // two things that cannot both be
	OutOfRange                 // a value beyond what the models hold for
	NoAnswer                   // nature has no answer here
	Internal                   // our own mistake
	Storage                    // what is kept cannot be read or written: a full disk, a damaged file
)

// Place says where in a person's input the fault lies. Row counts from 1 with
// the header as row 1; 0 means the whole file.
type Place struct {
	File   string `json:"file,omitempty"`
	Row    int    `json:"row,omitempty"`
	Column string `json:"column,omitempty"`
}

// Error is a fault with its phrase.
type Error struct {
	Kind   Kind
	At     Place
	Phrase words.Phrase
	Err    error // the cause for the log, may be nil
}

// New makes a fault without a place.
func New(kind Kind, key string, args words.Args) *Error {
	return &Error{Kind: kind, Phrase: words.P(key, args)}
}

// In returns a copy of the fault with its place.
func (e *Error) In(at Place) *Error { c := *e; c.At = at; return &c }

// Error gives a plain reading for logs and tests: place, key and values. People
// are shown the phrase in words.
func (e *Error) Error() string {
	var b strings.Builder
	if e.At.File != "" {
		fmt.Fprintf(&b, "%s:%d:%s: ", e.At.File, e.At.Row, e.At.Column)
	}
	b.WriteString(e.Phrase.Key)
	keys := make([]string, 0, len(e.Phrase.Args))
	for k := range e.Phrase.Args {
		keys = append(keys, k)
	}
	sort.Strings(keys)
	for _, k := range keys {
		fmt.Fprintf(&b, " %s=%v", k, e.Phrase.Args[k])
	}
	if e.Err != nil {
		fmt.Fprintf(&b, ": %v", e.Err)
	}
	return b.String()
}

// Unwrap returns the cause.
func (e *Error) Unwrap() error { return e.Err }

// List is several faults told at once.
type List []*Error

// Error reads all faults, one a line.
func (l List) Error() string {
	lines := make([]string, len(l))
	for i, e := range l {
		lines[i] = e.Error()
	}
	return strings.Join(lines, "\n")
}

// KindOf returns the kind of an error, Internal when it is none of ours.
func KindOf(err error) Kind {
	var one *Error
	if errors.As(err, &one) {
		return one.Kind
	}
	var many List
	if errors.As(err, &many) && len(many) > 0 {
		return many[0].Kind
	}
	return Internal
}
