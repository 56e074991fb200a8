package crop

import "slices"

// Way returns how a use keeps by a method, with the humidity that it wants; false
// when the book knows no such way.
func (u *Use) Way(method string) (Storage, bool) {
	at := slices.IndexFunc(u.Storage, func(s Storage) bool { return s.Method == method })
	if at < 0 {
		return Storage{}, false
	}
	way := u.Storage[at]
	way.Humidity = u.StoreHumidity
	return way, true
}
