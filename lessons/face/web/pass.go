package web

import (
	"encoding/json"
	"math"

	"scratchpass/lessons/page"
)

// The numbers of a pass as static/pass.js reads them.
type (
	passJSON struct {
		Dial        *dialJSON `json:"dial,omitempty"`
		From        float64   `json:"from"`
		To          float64   `json:"to"`
		Tool        float64   `json:"tool"`
		Ends        float64   `json:"ends"`
		WaySeconds  float64   `json:"waySeconds"`
		Past        float64   `json:"past"`
		NutSeconds  float64   `json:"nutSeconds"`
		Slack       float64   `json:"slack"`
		ThreadShare float64   `json:"threadShare"`
		Closed      bool      `json:"closed"`
		Keeps       bool      `json:"keeps"`
		Clear       bool      `json:"clear"`
		Fails       bool      `json:"fails"`
		Says        saysJSON  `json:"says"`
	}
	dialJSON struct {
		X       float64 `json:"x"`
		Y       float64 `json:"y"`
		Marks   int     `json:"marks"`
		At      float64 `json:"at"`
		Seconds float64 `json:"seconds"`
	}
	saysJSON struct {
		Start    string `json:"start"`
		Close    string `json:"close"`
		OutOpen  string `json:"outOpen"`
		OutStop  string `json:"outStop"`
		Mark     string `json:"mark"`
		Between  string `json:"between"`
		Closed   string `json:"closed"`
		Opened   string `json:"opened"`
		Dropping string `json:"dropping"`
	}
)

// course is a pass for the script, as JSON in an attribute: no script stands in a page.
func course(t page.Timed) (string, error) {
	p := passJSON{From: t.Way.From, To: t.Way.To, Tool: t.Way.Tool, Ends: t.Way.ThreadEnds, WaySeconds: t.Way.Seconds,
		Past: t.Nut.Past, NutSeconds: t.Nut.Seconds, Slack: t.Nut.Slack, ThreadShare: t.Nut.Share,
		Closed: t.Closed, Keeps: t.Keeps, Clear: t.Clear, Fails: t.Fails,
		Says: saysJSON{t.Says.Start, t.Says.Close, t.Says.OutOpen, t.Says.OutStop, t.Says.Mark, t.Says.Between, t.Says.Closed, t.Says.Opened, t.Says.Dropping}}
	if d := t.Dial; d != nil {
		p.Dial = &dialJSON{d.Middle.X, d.Face.Height - d.Middle.Y, d.Marks, math.Mod(d.At, float64(d.Marks)), d.Seconds} // on a page y grows downwards
	}
	text, err := json.Marshal(p)
	return string(text), err
}
