package cli

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"

	"scratchpass/content"
	"scratchpass/quiz/set"
)

// SecretUse is what a command needs the class secret for.
type SecretUse int

const (
	FindAgain SecretUse = iota // numbers that were made: it must be there
	MakeFirst                  // numbers that may be the first: it is made where there is none
)

// ClassSecret reads the class secret, or makes one and tells where.
func ClassSecret(told io.Writer, path string, use SecretUse, lib *content.Library) (set.Secret, error) {
	if path == "" {
		var err error
		if path, err = ConfigFile("class-secret"); err != nil {
			return nil, fmt.Errorf("no folder for the class secret: %w; give --secret FILE", err)
		}
	}
	if _, err := os.Stat(path); !errors.Is(err, fs.ErrNotExist) {
		s, err := set.ReadSecret(path)
		if err == nil {
			err = warnOfSecret(told, s, path, lib)
		}
		return s, err
	}
	if use != MakeFirst {
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

// warnOfSecret says what makes a secret easy to guess or to get. The numbers hang on it all
// the same: sheets may have been made with it.
func warnOfSecret(told io.Writer, s set.Secret, path string, lib *content.Library) error {
	flaws := s.Flaws(path)
	if len(flaws) == 0 {
		return nil
	}
	says, err := lib.Screens()
	for _, flaw := range flaws {
		fmt.Fprintln(told, content.FillPairs(says["set-secret-"+string(flaw)], "where", path))
	}
	return err
}
