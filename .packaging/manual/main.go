// This main stands in place of cmd/scratchpass/main.go while packages are made (go run
// -overlay, see .packaging/make). It writes the program's manual page and its completions
// into the folder it is given, from the same command tree that --help is printed from.
//
// The page is written here and not by cobra's generator of manuals: that one goes through
// Markdown, which would run the tables in help texts together and bring three modules more
// into go.mod.
package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"time"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"scratchpass/cmd/scratchpass/internal/cli"
)

func main() {
	if err := write(os.Args[1], os.Args[2]); err != nil {
		fmt.Fprintln(os.Stderr, "manual:", err)
		os.Exit(1)
	}
}

// write writes all into a folder; day is the day of the manual page, such as 2026-11-27.
func write(dir, day string) error {
	root := rootCommand(cli.New(strings.NewReader(""), io.Discard, io.Discard), nil)
	root.InitDefaultHelpCmd()
	root.InitDefaultCompletionCmd()
	return errors.Join(
		file(dir, "scratchpass.1", func(w io.Writer) error { return page(w, root, day) }),
		file(dir, "scratchpass.bash", func(w io.Writer) error { return root.GenBashCompletionV2(w, true) }),
		file(dir, "_scratchpass", root.GenZshCompletion),
		file(dir, "scratchpass.fish", func(w io.Writer) error { return root.GenFishCompletion(w, true) }),
		file(dir, "scratchpass.ps1", root.GenPowerShellCompletionWithDesc),
	)
}

func file(dir, name string, fill func(io.Writer) error) error {
	f, err := os.Create(filepath.Join(dir, name))
	if err != nil {
		return err
	}
	return errors.Join(fill(f), f.Close())
}

// page is the one manual page: the program, what all commands share, then each command.
func page(w io.Writer, root *cobra.Command, day string) error {
	if _, err := time.Parse(time.DateOnly, day); err != nil {
		return err
	}
	var b strings.Builder
	fmt.Fprintf(&b, ".TH SCRATCHPASS 1 %s \"scratchpass %s\"\n", day, plain(root.Version))
	fmt.Fprintf(&b, ".SH NAME\nscratchpass \\- %s\n", plain(root.Short))
	b.WriteString(".SH SYNOPSIS\n.B scratchpass\n.RI [ command ]\n.RI [ option .\\|.\\|.]\n.SH DESCRIPTION\n")
	prose(&b, root.Long)
	b.WriteString(".SH OPTIONS\n")
	root.InitDefaultHelpFlag()
	root.InitDefaultVersionFlag()
	options(&b, root.LocalNonPersistentFlags())
	b.WriteString(".SS Options of every command\n")
	options(&b, root.PersistentFlags())
	b.WriteString(".SH COMMANDS\n")
	for _, c := range root.Commands() {
		command(&b, c)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

func command(b *strings.Builder, c *cobra.Command) {
	if c.Hidden || c.Deprecated != "" {
		return
	}
	fmt.Fprintf(b, ".SS %s\n", plain(strings.TrimPrefix(c.CommandPath(), c.Root().Name()+" ")))
	if c.Runnable() {
		fmt.Fprintf(b, ".B %s\n.PP\n", plain(c.UseLine()))
	}
	if len(c.Aliases) > 0 {
		fmt.Fprintf(b, "Also called: %s\n.PP\n", plain(strings.Join(c.Aliases, ", ")))
	}
	text := c.Long
	if text == "" {
		text = c.Short
	}
	prose(b, text)
	options(b, c.LocalNonPersistentFlags())
	options(b, c.PersistentFlags())
	if c.Example != "" {
		b.WriteString(".PP\n")
		asIs(b, c.Example)
	}
	for _, below := range c.Commands() {
		command(b, below)
	}
}

// options are those of a command with their values, as --help words them.
func options(b *strings.Builder, flags *pflag.FlagSet) {
	flags.VisitAll(func(f *pflag.Flag) {
		if f.Hidden || f.Deprecated != "" || f.Name == "help" {
			return
		}
		value, usage := pflag.UnquoteUsage(f)
		b.WriteString(".TP\n")
		if f.Shorthand != "" {
			fmt.Fprintf(b, "\\fB\\-%s\\fR, ", f.Shorthand)
		}
		fmt.Fprintf(b, "\\fB\\-\\-%s\\fR", plain(f.Name))
		if value != "" {
			fmt.Fprintf(b, " \\fI%s\\fR", plain(value))
		}
		fmt.Fprintf(b, "\n%s", plain(usage))
		if d := f.DefValue; d != "" && d != "0" && d != "false" && d != "[]" && d != "0s" {
			if f.Value.Type() == "string" {
				d = strconv.Quote(d)
			}
			fmt.Fprintf(b, " (default %s)", plain(d))
		}
		b.WriteString("\n")
	})
}

// prose is text in paragraphs. One with lines that are set in, or hold a table, stays as it is.
func prose(b *strings.Builder, text string) {
	for part := range strings.SplitSeq(strings.Trim(text, "\n"), "\n\n") {
		b.WriteString(".PP\n")
		if strings.HasPrefix(part, " ") || strings.Contains(part, "\n ") || strings.Contains(part, "  ") {
			asIs(b, part)
			continue
		}
		for line := range strings.Lines(part) {
			fmt.Fprintln(b, plain(strings.TrimSpace(line)))
		}
	}
}

func asIs(b *strings.Builder, text string) {
	b.WriteString(".nf\n")
	for line := range strings.SplitSeq(text, "\n") {
		fmt.Fprintln(b, plain(line))
	}
	b.WriteString(".fi\n")
}

// plain is text in which roff finds nothing to do.
func plain(text string) string {
	text = strings.NewReplacer(`\`, `\e`, "-", `\-`, "'", `\(aq`, "`", `\(ga`, "^", `\(ha`, "~", `\(ti`).Replace(text)
	if strings.HasPrefix(text, ".") {
		return `\&` + text
	}
	return text
}
