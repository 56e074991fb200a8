// Package fetch gets a forecast from an address: a conditional GET over http or
// https with limits of time and size. It keeps nothing and decides nothing; when
// to ask, and what becomes of the answer, is the desk's.
//
// It follows a redirect only within the same host, or from http to https of it:
// what is fetched is what the household told. Nothing of an address but its host
// is ever logged, since the rest may hold a key.
package fetch
