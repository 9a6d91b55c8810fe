package set

import (
	"strings"
	"testing"
)

// Whatever a roster has in it, everyone in it has an id of their own and a name for one
// line, or the error says what is wrong.
func FuzzRoster(f *testing.F) {
	f.Add([]byte(oneRoster))
	f.Add([]byte("id,name\n1,Ada\n"))
	f.Add([]byte("\ufeffid;name\r\n1;\"Ada \"\"B\"\"\"\r\n"))
	f.Add([]byte("name\n\n"))
	f.Fuzz(func(t *testing.T, text []byte) {
		all, err := ParseRoster("r", text)
		if err != nil {
			if err.Error() == "" {
				t.Error("an error without words")
			}
			return
		}
		seen := map[string]bool{}
		for _, a := range all {
			if a.ID == "" || seen[a.ID] || strings.ContainsAny(a.ID+a.Name, "\x1b\r\n\u202e") {
				t.Errorf("%q: %+v", text, a)
			}
			seen[a.ID] = true
		}
	})
}
