package store

import (
	"errors"
	"io/fs"
	"syscall"

	"modernc.org/sqlite"
	sqlite3 "modernc.org/sqlite/lib"

	"garner/internal/fault"
	"garner/internal/words"
)

// unusable turns an error of the database or its file into what a person should
// be told. Faults pass unchanged.
func unusable(path string, err error) error {
	var own *fault.Error
	var many fault.List
	if err == nil || errors.As(err, &own) || errors.As(err, &many) {
		return err
	}
	kind, key := fault.Storage, "store.unusable"
	switch code := codeOf(err); {
	case code == sqlite3.SQLITE_FULL || errors.Is(err, syscall.ENOSPC):
		key = "store.full"
	case code == sqlite3.SQLITE_CORRUPT || code == sqlite3.SQLITE_NOTADB:
		return damaged(path, err)
	case code == sqlite3.SQLITE_BUSY || code == sqlite3.SQLITE_LOCKED:
		key = "store.busy"
	case errors.Is(err, fs.ErrNotExist):
		kind, key = fault.NotFound, "store.missing"
	case code == sqlite3.SQLITE_READONLY || code == sqlite3.SQLITE_PERM || errors.Is(err, fs.ErrPermission):
		key = "store.forbidden"
	}
	return &fault.Error{Kind: kind, Phrase: words.P(key, words.Args{"path": path}), Err: err}
}

// damaged says that a file is not the database it should be.
func damaged(path string, err error) error {
	return &fault.Error{Kind: fault.Storage, Phrase: words.P("store.damaged", words.Args{"path": path}), Err: err}
}

// codeOf is SQLite's primary result code, 0 when the error is not its own.
func codeOf(err error) int {
	var e *sqlite.Error
	if !errors.As(err, &e) {
		return 0
	}
	return e.Code() & 0xff
}

// ours is a mistake of the program.
func ours(err error) error {
	return &fault.Error{Kind: fault.Internal, Phrase: words.P("store.internal", nil), Err: err}
}
