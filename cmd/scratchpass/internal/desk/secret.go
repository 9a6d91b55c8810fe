package desk

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/content"
	"scratchpass/quiz/set"
)

// secretUse is what a command needs the class secret for.
type secretUse int

const (
	findAgain secretUse = iota // numbers that were made: it must be there
	makeFirst                  // numbers that may be the first: it is made where there is none
)

// classSecret reads the class secret, or makes one and tells where.
func classSecret(told io.Writer, path string, use secretUse, lib *content.Library) (set.Secret, error) {
	if path == "" {
		var err error
		if path, err = cli.ConfigFile("class-secret"); err != nil {
			return nil, fmt.Errorf("no folder for the class secret: %w; give --secret FILE", err)
		}
	}
	if _, err := os.Stat(path); !errors.Is(err, fs.ErrNotExist) {
		return set.ReadSecret(path)
	}
	if use != makeFirst {
		return nil, fmt.Errorf("there is no class secret at %q: give --secret FILE, the one that the sheets were made with", path)
	}
	s, err := set.NewSecret(path)
	if err != nil {
		return nil, err
	}
	says, err := lib.Screens()
	if err == nil {
		fmt.Fprintln(told, content.FillPairs(says["set-secret-made"], "where", path))
	}
	return s, err
}
