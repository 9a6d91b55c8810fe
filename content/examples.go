package content

import "embed"

//go:embed sets/*.yaml sets/*.csv
var examples embed.FS

// Examples are example blueprints and a roster, by file name: for an instructor to
// change into their own.
func Examples() map[string][]byte {
	files := map[string][]byte{}
	entries, err := examples.ReadDir("sets")
	if err != nil {
		panic("content: the examples are part of the program: " + err.Error())
	}
	for _, e := range entries {
		text, err := examples.ReadFile("sets/" + e.Name())
		if err != nil {
			panic("content: the examples are part of the program: " + err.Error())
		}
		files[e.Name()] = text
	}
	return files
}
