package words

// Phrase is a message not yet put into a language: a key of the catalogue and
// the values that go into it. The engine makes phrases; the command line and
// the pages turn them into text.
type Phrase struct {
	Key  string
	Args Args
}

// Args are the named values of a phrase.
type Args map[string]any

// P makes a phrase.
func P(key string, args Args) Phrase { return Phrase{Key: key, Args: args} }
