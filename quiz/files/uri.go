package files

import (
	"path/filepath"
	"strings"
)

// URI makes a path fit for a URI that begins with file:, as a database is given its file.
func URI(path string) string {
	return strings.NewReplacer("%", "%25", "?", "%3f", "#", "%23").Replace(filepath.ToSlash(path))
}
