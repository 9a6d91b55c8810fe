package cli

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"scratchpass/content"
)

// NegativesAsArguments writes the minus of an argument such as -0.0015 as the
// mathematical sign, which every reader of numbers here takes for a minus and the
// command line does not take for an option.
func NegativesAsArguments(args []string) []string {
	out := make([]string, len(args))
	for i, arg := range args {
		out[i] = arg
		if rest, ok := strings.CutPrefix(arg, "-"); ok && rest != "" && strings.ContainsAny(rest[:1], ".0123456789") {
			out[i] = "\u2212" + rest
		}
	}
	return out
}

// NoArguments is cobra.NoArgs with an error that offers commands.
func NoArguments(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	var names []string
	for _, sub := range cmd.Commands() {
		names = append(names, sub.Name())
	}
	return Usagef("unknown command %q%s (scratchpass --help lists them)", args[0], content.DidYouMean(args[0], names))
}

// OneArgument wants one argument and says what it is.
func OneArgument(what string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		switch {
		case len(args) == 0:
			return Usagef("%s wants %s, and none was given (%s --help says more)", cmd.CommandPath(), what, cmd.CommandPath())
		case len(args) > 1:
			return Usagef("%s wants %s, got %d: %s", cmd.CommandPath(), what, len(args), fmt.Sprintf("%.60q", args))
		}
		return nil
	}
}

// OptionalArgument is the one argument that a command may have; empty when there is none.
func OptionalArgument(args []string) string {
	if len(args) == 0 {
		return ""
	}
	return args[0]
}
