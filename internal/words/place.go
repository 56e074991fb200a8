package words

// Spaced returns the catalogue with another space between numbers and their
// units; pages use one that does not break.
func (c *Catalogue) Spaced(space string) *Catalogue {
	own := &Catalogue{tag: c.tag, texts: c.texts}
	own.format = Formatter{catalogue: own, Space: space}
	return own
}

// Language returns the catalogue's language tag, as in the lang attribute of a
// page.
func (c *Catalogue) Language() string { return c.tag.String() }
