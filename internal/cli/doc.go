// Package cli is garner at the prompt: it reads what was asked, asks the desk
// and says the answer in words, in a table or as JSON.
//
// One command is one file. No command computes anything of the garden, and no
// text is written here: texts come from the catalogue (words), figures through
// its formatter. The shape of the JSON is documented in docs/commands.md and
// kept stable.
package cli
