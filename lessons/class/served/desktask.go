package served

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"scratchpass/calc"
	"scratchpass/content"
)

// mostMeant is how many tasks are told that may be meant.
const mostMeant = 5

// taskMeant is the task that was typed: by its name or its title, or by a part of either that no
// other task has. An error says which are near.
func (s *Server) taskMeant(typed string) (string, error) {
	said := strings.ToLower(strings.Join(strings.Fields(typed), " "))
	if said == "" {
		return "", errors.New("no task was given: give its name, such as compound-travel, or a part of its title")
	}
	var names, titles []string
	var part []taskName
	for _, t := range s.tasks() {
		title := strings.ToLower(t.Title)
		if said == t.Name || said == title {
			return t.Name, nil
		}
		if strings.Contains(title, said) || strings.Contains(t.Name, strings.ReplaceAll(said, " ", "-")) {
			part = append(part, t)
		}
		names, titles = append(names, t.Name), append(titles, title)
	}
	switch {
	case slices.Contains(s.o.Session.Tasks.Names(), said): // its words can't be read: asking it says why
		return said, nil
	case len(part) == 1:
		return part[0].Name, nil
	case len(part) > 1:
		var all []string
		for _, t := range part[:min(mostMeant, len(part))] {
			all = append(all, t.Title)
		}
		if more := len(part) - mostMeant; more > 0 {
			all = append(all, fmt.Sprintf("and %d more", more))
		}
		return "", fmt.Errorf("%s is a part of several titles; give more of one: %s", calc.Quoted(typed), strings.Join(all, "; "))
	}
	near := content.DidYouMean(said, names)
	if near == "" {
		near = content.DidYouMean(said, titles)
	}
	if near == "" {
		near = ": give a name such as compound-travel, or a part of a title"
	}
	return "", fmt.Errorf("no task is called %s%s", calc.Quoted(typed), near)
}
