package lookup

import (
	_ "embed"
	"fmt"
	"io"
	"runtime"
	"strings"

	"github.com/spf13/cobra"

	"scratchpass/cmd/scratchpass/internal/cli"
)

// notices are the licences of all that is compiled into the program, on any system. They
// are written by .ci/notices, and looked at only when they are asked for.
//
//go:embed notices.txt
var notices string

// noticesDocument is what is compiled in, as JSON shows it.
type noticesDocument struct {
	Notices []noticeDocument `json:"notices"`
}

// noticeDocument is one thing that is compiled in, as JSON shows it.
type noticeDocument struct {
	Name    string `json:"name"`
	Version string `json:"version"`
	Licence string `json:"licence"`
	Text    string `json:"text"`
}

func noticesCommand(r *cli.Run) *cobra.Command {
	return &cobra.Command{
		Use:   "notices",
		Short: "What this program is built from, and under which licences",
		Args:  cli.NoArguments,
		RunE: func(*cobra.Command, []string) error {
			docs := splitNotices(notices)
			if r.JSON {
				return r.PrintJSON(noticesDocument{docs})
			}
			return printNotices(r.Out, docs)
		},
	}
}

// noticeHeading begins the line in front of each text; name, version and licence follow.
const noticeHeading = "### "

// splitNotices takes the file of all notices apart. What has no version of its own is of
// the Go that the program was built with.
func splitNotices(file string) []noticeDocument {
	docs := []noticeDocument{}
	for part := range strings.SplitSeq("\n"+file, "\n"+noticeHeading) {
		head, text, _ := strings.Cut(part, "\n")
		fields := strings.Split(head, "\t")
		if len(fields) != 3 {
			continue // in front of the first
		}
		if fields[1] == "-" {
			fields[1] = runtime.Version()
		}
		docs = append(docs, noticeDocument{fields[0], fields[1], fields[2], strings.Trim(text, "\n")})
	}
	return docs
}

func printNotices(w io.Writer, docs []noticeDocument) error {
	for _, d := range docs {
		if _, err := fmt.Fprintf(w, "%s %s: %s\n", d.Name, d.Version, d.Licence); err != nil {
			return err
		}
	}
	for _, d := range docs {
		head := d.Name + " " + d.Version
		if _, err := fmt.Fprintf(w, "\n%s\n%s\n\n%s\n", head, strings.Repeat("=", len([]rune(head))), d.Text); err != nil {
			return err
		}
	}
	return nil
}
