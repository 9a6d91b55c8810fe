package set

// ParseAnswers reads answers without telling what was left out.
func ParseAnswers(file string, text []byte) ([]Given, error) { return parseAnswers(file, text, nil) }

// ParseRoster reads a roster without telling what was left out.
func ParseRoster(file string, text []byte) ([]Apprentice, error) {
	return parseRoster(file, text, nil)
}
