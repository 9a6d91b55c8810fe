package rehearse

import (
	"github.com/spf13/cobra"

	"scratchpass/content"
	"scratchpass/quiz/bench"
	"scratchpass/quiz/machine"
)

// jobFlags are the sizes of a job that may be given on the command line, instead of or
// on top of a job that is written down.
type jobFlags struct{ w content.Job }

// jobFlag is one size of a job as a flag.
type jobFlag struct {
	name string
	size *string
	help string
}

// flagsOf are the sizes of a job that may be given, always in the same order.
func flagsOf(w *content.Job) []jobFlag {
	return []jobFlag{
		{"thread", &w.Thread, "`THREAD` to cut, such as \"3/4-10 UNC-2A\""},
		{"side", &w.Side, "external or internal, where the class does not tell"},
		{"material", &w.Material, "what the work is made of: mild-steel, alloy-steel, stainless, brass, aluminium or cast-iron"},
		{"blank", &w.Blank, "`SIZE` of the blank, with its unit"},
		{"bore", &w.Bore, "`SIZE` of the bore"},
		{"length", &w.Length, "`SIZE`: how long the thread is"},
		{"end", &w.End, "what lies behind the thread: shoulder, bottom or chuck"},
		{"gap", &w.Gap, "`SIZE` of the clear run from the end of the thread to that"},
		{"shank", &w.Shank, "`SIZE`: diameter of what lies behind the thread, where it is no usual relief"},
		{"towards", &w.Towards, "headstock or tailstock: the way of the tool in the cut"},
		{"hold", &w.Hold, "chuck or centres"},
		{"stands-out", &w.StandsOut, "`SIZE`: how far the work stands out of the jaws, or the bar out of its holder"},
		{"bar", &w.Bar, "`SIZE` of the boring bar"},
		{"reach", &w.Reach, "`SIZE`: how far the tool stands out of the bar"},
		{"flat", &w.Flat, "`SIZE` of the flat on the tip of the tool"},
		{"taper", &w.Taper, "of a taper pipe thread: attachment, or none where the lathe has none"},
		{"ahead", &w.Ahead, "`SIZE`: how far tool, bar or holder stand ahead of the tip"},
		{"spindle-nose", &w.Nose, "screwed or locked, where the job tells it and not the lathe"},
		{"nose", &w.Round, "`SIZE`: radius of a round tip, instead of a flat"},
	}
}

func (j *jobFlags) addTo(cmd *cobra.Command) {
	for _, flag := range flagsOf(&j.w) {
		cmd.Flags().StringVar(flag.size, flag.name, "", flag.help)
	}
}

// ownJob reports whether the sizes tell a job of their own: it has its own thread.
func (j *jobFlags) ownJob() bool { return j.w.Thread != "" }

// over puts what the flags say over a job that is written down. A job of its own
// that leaves sizes out gets usual ones.
func (j *jobFlags) over(base content.Job, own machine.Lathe) content.Job {
	out := base
	if j.ownJob() { // another thread: the sizes of the old one say nothing
		out = content.Job{Title: j.w.Thread, Story: base.Story, Lathe: base.Lathe}
	}
	if j.w.Round != "" {
		out.Flat = ""
	}
	into := flagsOf(&out)
	for i, flag := range flagsOf(&j.w) {
		if *flag.size != "" {
			*into[i].size = *flag.size
		}
	}
	return bench.Usual(out, own)
}
