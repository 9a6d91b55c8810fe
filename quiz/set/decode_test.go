package set

import "testing"

// Of Windows-1252 the letters that Latin-1 has not, and the five bytes that are none.
func TestWindows1252(t *testing.T) {
	if plain, whole := windows1252([]byte("\x80 \x8a\x9f \x93J\xf6rg\x94 \x96 \xbd\"")); !whole || string(plain) != "€ ŠŸ “Jörg” – ½\"" {
		t.Errorf("%q", plain)
	}
	none := 0
	for b := range 256 {
		if _, whole := windows1252([]byte{byte(b)}); !whole {
			none++
		}
	}
	if none != 5 {
		t.Errorf("%d bytes are no letter, want 5", none)
	}
}
