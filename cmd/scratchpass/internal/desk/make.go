package desk

import (
	"cmp"
	"context"
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/quiz/set"
)

// makeFlags are how sheets are asked for.
type makeFlags struct {
	class      classFlags
	to         outFlags
	choiceOnly bool
}

func makeCommand(r *cli.Run) *cobra.Command {
	var f makeFlags
	cmd := &cobra.Command{
		Use:   "make BLUEPRINT",
		Short: "Make the sheets of a set: each apprentice has their own numbers",
		Args:  cli.OneArgument("a blueprint"),
		RunE: func(cmd *cobra.Command, args []string) error {
			formats, err := readFormats(f.to.formats, formatCodes, formatFields, formatQTI3, formatQTI2, formatCC)
			if err != nil {
				return err
			}
			ctx := r.UntilStopped(cmd.Context())
			d, err := openDesk(ctx, r, args[0], &f.class, cli.MakeFirst)
			if err != nil {
				return err
			}
			return d.makeSet(ctx, formats, f)
		},
	}
	f.class.addTo(cmd)
	f.to.addTo(cmd, "pdf, html, text, codes (for the screen), fields (an HTML file each, to fill in), qti3, qti2, cc (for a learning system)")
	cmd.Flags().BoolVar(&f.choiceOnly, "choice-only", false, "QTI with single choice alone, for importers that take nothing else")
	return cmd
}

// makeSet makes sheets, or packages for a learning system: never both in one folder, and
// neither where a key is.
func (d *desk) makeSet(ctx context.Context, formats []string, f makeFlags) error {
	lms, what := isPackage(formats[0]), "-sheets"
	if lms {
		what = "-package"
	}
	dir := cmp.Or(f.to.dir, d.maker.Blueprint.Set+what)
	if err := d.mend(dir); err != nil {
		return err
	}
	if holds(dir, keyFiles, feedbackFiles, markFiles) {
		return cli.Usagef("%s has a key in it; a key never travels with its sheets: give another --out", dir)
	}
	if slices.ContainsFunc(formats, func(f string) bool { return isPackage(f) != lms }) {
		packages := slices.DeleteFunc(slices.Clone(formats), func(f string) bool { return !isPackage(f) })
		sheets := slices.DeleteFunc(slices.Clone(formats), isPackage)
		return cli.Usagef("a package holds all right answers, so it never lies beside sheets: make it by itself, with --format %s and another --out, and the sheets with --format %s", strings.Join(packages, ","), strings.Join(sheets, ","))
	}
	out := d.stage(dir)
	defer out.Rollback()
	var same *set.SameAnswers
	var err error
	if lms {
		same, err = d.writePackages(ctx, out, formats, f.choiceOnly)
	} else {
		same, err = d.writeSheets(ctx, out, formats)
	}
	if err != nil {
		return err
	}
	if err := d.keep(out, f.to.replace, sheetFiles, codeFiles, packageFiles); err != nil {
		return err
	}
	if lms {
		fmt.Fprintln(d.run.Err, d.say("set-qti-key"))
	}
	for _, n := range same.Shared() {
		fmt.Fprintln(d.run.Err, d.say("set-same", "n", n))
	}
	if n, answers, sheets := same.Fewest(); sheets > 1 {
		fmt.Fprintln(d.run.Err, d.say("set-fewest", "n", n, "answers", answers, "sheets", sheets))
	}
	return d.done("set-made", len(d.class), dir)
}
