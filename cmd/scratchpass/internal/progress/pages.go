package progress

import (
	"context"
	"net/url"

	"scratchpass/cmd/scratchpass/internal/cli"
	"scratchpass/lessons/face/web"
	"scratchpass/lessons/page"
	"scratchpass/lessons/progress"
	"scratchpass/lessons/record"
	"scratchpass/lessons/sitting"
)

// Pages are progress and what stands between the learner and the lathe as pages of a browser,
// with every list in full and the curve from day to day. Without a record there are none.
func Pages(r *cli.Run, s *sitting.Session, rec *record.Record) []web.Lookup {
	if rec == nil {
		return nil
	}
	made := func(path, label string, of func(v progress.View) (page.Page, error)) web.Lookup {
		return web.Lookup{Path: path, Label: s.Say(label), Make: func(context.Context, url.Values) (web.Looked, error) {
			l := web.Looked{Title: s.Say(label)}
			v, err := progress.ViewOf(s)
			if err != nil {
				return l, err
			}
			l.Body, err = of(v.Of(rec, rec.Learner))
			return l, err
		}}
	}
	return []web.Lookup{
		made("/progress", "web-look-progress", func(v progress.View) (page.Page, error) {
			return v.Page(r.Now(), true)
		}),
		made("/ready", "web-look-ready", func(v progress.View) (page.Page, error) {
			ready, err := v.Ready(r.Now())
			if err != nil {
				return nil, err
			}
			return ready.Whole(v.Speaker()), nil
		}),
	}
}
