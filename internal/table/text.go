package table

import (
	"bytes"
	"encoding/binary"
	"io"
	"unicode/utf16"
	"unicode/utf8"

	"garner/internal/fault"
	"garner/internal/words"
)

// headBytes are looked at before the rest of a file is read, so that a picture
// or an archive is turned away at once.
const headBytes = 4096

// readText returns the file as UTF-8 without a byte order mark.
func readText(r io.Reader, limit int64) ([]byte, *fault.Error) {
	if sized, ok := r.(interface{ Len() int }); ok && int64(sized.Len()) > limit {
		return nil, tooLarge(limit)
	}
	head := make([]byte, headBytes)
	n, err := io.ReadFull(r, head)
	head = head[:n]
	if err != nil && err != io.EOF && err != io.ErrUnexpectedEOF {
		return nil, unreadable(err)
	}
	if isBinary(head) {
		return nil, fault.New(fault.Invalid, "table.binary", nil)
	}
	var whole bytes.Buffer
	whole.Write(head)
	if _, err := whole.ReadFrom(io.LimitReader(r, limit+1-int64(n))); err != nil {
		return nil, unreadable(err)
	}
	if int64(whole.Len()) > limit {
		return nil, tooLarge(limit)
	}
	return decode(whole.Bytes())
}

func tooLarge(limit int64) *fault.Error {
	return fault.New(fault.Invalid, "table.too_large", words.Args{"limit": float64(limit) / 1e6})
}

func unreadable(err error) *fault.Error {
	f := fault.New(fault.Invalid, "table.unreadable", nil)
	f.Err = err
	return f
}

var (
	markUTF8     = []byte{0xEF, 0xBB, 0xBF}
	markUTF16Low = []byte{0xFF, 0xFE}
	markUTF16Big = []byte{0xFE, 0xFF}
)

// isBinary tells a file that is no text by its first bytes: a control character
// that no text holds, unless the file says that it is UTF-16.
func isBinary(head []byte) bool {
	if bytes.HasPrefix(head, markUTF16Low) || bytes.HasPrefix(head, markUTF16Big) {
		return false
	}
	for _, b := range head {
		if b < 0x20 && b != '\t' && b != '\n' && b != '\r' && b != '\f' && b != 0x1A {
			return true
		}
	}
	return false
}

func decode(raw []byte) ([]byte, *fault.Error) {
	switch {
	case bytes.HasPrefix(raw, markUTF16Low):
		raw = fromUTF16(raw[2:], binary.LittleEndian)
	case bytes.HasPrefix(raw, markUTF16Big):
		raw = fromUTF16(raw[2:], binary.BigEndian)
	default:
		raw = bytes.TrimPrefix(raw, markUTF8)
	}
	if bytes.IndexByte(raw, 0) >= 0 {
		return nil, fault.New(fault.Invalid, "table.binary", nil)
	}
	if !utf8.Valid(raw) {
		return nil, fault.New(fault.Invalid, "table.not_utf8", nil).In(fault.Place{Row: rowOfBadByte(raw)})
	}
	return unixLines(raw), nil
}

func fromUTF16(raw []byte, order binary.ByteOrder) []byte {
	units := make([]uint16, len(raw)/2)
	for i := range units {
		units[i] = order.Uint16(raw[2*i:])
	}
	return []byte(string(utf16.Decode(units)))
}

func rowOfBadByte(raw []byte) int {
	row := 1
	for len(raw) > 0 {
		r, size := utf8.DecodeRune(raw)
		if r == utf8.RuneError && size == 1 {
			break
		}
		if r == '\n' {
			row++
		}
		raw = raw[size:]
	}
	return row
}

// unixLines makes line ends of CR alone, which old spreadsheets write, readable.
// CRLF is left to the reader of cells.
func unixLines(raw []byte) []byte {
	if bytes.IndexByte(raw, '\n') < 0 {
		return bytes.ReplaceAll(raw, []byte{'\r'}, []byte{'\n'})
	}
	return raw
}
