package learner

import (
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/cmd/scratchpass/internal/codefile"
	"scratchpass/lessons/practice"
	"scratchpass/lessons/sitting"
	"scratchpass/quiz/files"
)

// readHandedOut reads the problem codes that are to be asked: arguments that are codes,
// or the lines of a file. There are none where tasks were named, or nothing.
func readHandedOut(args []string, file string) (h practice.HandedOut, err error) {
	for _, arg := range args {
		if strings.Contains(arg, "@") {
			h.Codes = append(h.Codes, arg)
		}
	}
	switch {
	case len(h.Codes) > 0 && len(h.Codes) < len(args):
		return h, cli.Usagef("give problem codes or tasks, not both: %q", args)
	case file == "":
		return h, nil
	case len(args) > 0:
		return h, cli.Usagef("--codes %q has the questions; leave out %q", file, args)
	}
	text, err := files.Read(file, files.MostWords)
	if err != nil {
		return h, err
	}
	q, err := codefile.Parse(file, text)
	if err != nil {
		return h, cli.UsageError(err)
	}
	if len(q.Codes) == 0 || len(q.Codes) > mostProblems {
		return h, cli.Usagef("%s has %d problem codes: give 1 to %d, one a line", file, len(q.Codes), mostProblems)
	}
	h.Codes, h.Sure = q.Codes, q.Sure
	return h, nil
}

// goOnWith takes up the answers that a file has of an earlier sitting. A file of other
// questions is someone else's.
func goOnWith(h *practice.HandedOut, given map[string]string, file string) error {
	h.Given = given
	for _, code := range slices.Sorted(maps.Keys(given)) {
		if !slices.Contains(h.Codes, code) {
			return cli.Usagef("%s has answers to other questions (%s): give another --out", file, code)
		}
	}
	return nil
}

// askHandedOut asks them.
func askHandedOut(w io.Writer, s *sitting.Session, h practice.HandedOut, out string) error {
	if len(h.Given) > 0 && !slices.ContainsFunc(h.Codes, func(code string) bool { _, done := h.Given[code]; return !done }) {
		fmt.Fprintln(w, s.Say("handed-all", "where", out))
		return nil
	}
	if err := run(s, h); err != nil {
		return err
	}
	if out != "" {
		fmt.Fprintln(w, s.Say("handed-kept", "where", out))
	}
	return nil
}
