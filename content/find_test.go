package content

import "testing"

// A word of several things finds the term of one, and one that is a term itself stays.
func TestTermsOfSeveral(t *testing.T) {
	terms, err := Shipped().Terms()
	if err != nil {
		t.Fatal(err)
	}
	for word, want := range map[string]string{"gibs": "gib", "Gibs": "gib", "gib": "gib", "crests": "crest"} {
		if found := FindTerms(terms, word); len(found) == 0 || found[0] != want {
			t.Errorf("%s finds %v, want %s first", word, found, want)
		}
	}
	if found := FindTerms(terms, "qwertys"); len(found) > 0 {
		t.Errorf("%v", found)
	}
}
