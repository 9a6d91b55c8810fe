package cli

import (
	"os"
	"strconv"
	"strings"

	"github.com/muesli/termenv"

	"scratchpass/lessons/face/screen"
)

// Look is what the terminal can show. Where COLORFGBG does not tell the background the
// terminal is asked, except one inside another: that may not answer.
func (r *Run) Look() screen.Look {
	out, ok := terminalFile(r.Out)
	if !ok || dumb() {
		return screen.Look{Profile: termenv.Ascii}
	}
	look := screen.Look{Profile: termenv.NewOutput(out).EnvColorProfile()}
	if look.Profile == termenv.Ascii {
		return look
	}
	if look.Ground = groundOf(os.Getenv("COLORFGBG")); look.Ground == screen.UnknownGround && !inside(os.Getenv("TERM")) {
		look.Ground = screen.Light
		if termenv.NewOutput(out).HasDarkBackground() {
			look.Ground = screen.Dark
		}
	}
	return look
}

// groundOf reads COLORFGBG, such as 15;0 or 0;default;15: its last part is the background,
// of the sixteen colours of which 7 and those from 9 on are light.
func groundOf(colours string) screen.Ground {
	parts := strings.Split(colours, ";")
	n, err := strconv.Atoi(parts[len(parts)-1])
	switch {
	case len(parts) < 2 || err != nil || n < 0 || n > 15:
		return screen.UnknownGround
	case n == 7 || n > 8:
		return screen.Light
	}
	return screen.Dark
}

// inside tells a terminal that runs inside another.
func inside(term string) bool {
	return strings.HasPrefix(term, "screen") || strings.HasPrefix(term, "tmux") || term == "linux"
}
