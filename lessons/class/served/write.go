package served

import (
	"embed"
	"fmt"
	"html/template"
	"net/http"

	"scratchpass/content"
	"scratchpass/lessons/face/web"
)

//go:embed room.gohtml desk.gohtml wall.gohtml round.gohtml
var sources embed.FS

// templates reads the pages. They are part of the program, and a test reads them.
func templates(say func(string, ...any) string) *template.Template {
	return template.Must(template.New("room").Funcs(template.FuncMap{
		"printable": content.Printable, "say": say, "add": func(a, b int) int { return a + b }, "values": values, "asset": asset,
	}).ParseFS(sources, "*.gohtml"))
}

// values are named values for a template inside another.
func values(pairs ...any) map[string]any {
	all := map[string]any{}
	for i := 0; i+1 < len(pairs); i += 2 {
		all[fmt.Sprint(pairs[i])] = pairs[i+1]
	}
	return all
}

// write writes a page.
func (s *Server) write(w http.ResponseWriter, name string, data any) {
	s.writeAs(w, http.StatusOK, name, data)
}

// writeAs writes a page with a status.
func (s *Server) writeAs(w http.ResponseWriter, status int, name string, data any) {
	if err := web.Write(w, status, s.pages, name, data); err != nil {
		s.trouble(w, err)
	}
}
