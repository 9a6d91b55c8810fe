package web_test

import (
	"errors"
	"html"
	"net/http"
	"net/http/cookiejar"
	"net/http/httptest"
	"net/url"
	"regexp"
	"slices"
	"strings"
	"testing"

	"scratchpass/lessons/face/web"
	"scratchpass/lessons/internal/scripted"
	"scratchpass/lessons/page"
	"scratchpass/lessons/practice"
	"scratchpass/quiz/drawing"
	"scratchpass/quiz/machine"
	"scratchpass/quiz/problem"
	"scratchpass/quiz/tasks"
)

var words = web.Words{Lang: "en", Name: "Scratchpass", Send: "Mark it", GoOn: "Go on", None: "none of them", Gone: "open the link", Ended: "That is all."}

// browser is one cookie jar at a served talk.
type browser struct {
	t    *testing.T
	c    *http.Client
	base string
}

func serve(t *testing.T, talk *web.Talk) *browser {
	t.Helper()
	s := httptest.NewUnstartedServer(nil)
	s.Config.Handler = web.Handler(talk, web.Options{Key: "secret", Hosts: []string{s.Listener.Addr().String()}, Words: words})
	s.Start()
	t.Cleanup(s.Close)
	jar, _ := cookiejar.New(nil)
	return &browser{t, &http.Client{Jar: jar}, s.URL}
}

func (b *browser) get(path string) (int, string) {
	b.t.Helper()
	resp, err := b.c.Get(b.base + path)
	if err != nil {
		b.t.Fatal(err)
	}
	return resp.StatusCode, read(b.t, resp)
}

func read(t *testing.T, resp *http.Response) string {
	t.Helper()
	defer resp.Body.Close()
	var text strings.Builder
	buf := make([]byte, 4096)
	for {
		n, err := resp.Body.Read(buf)
		text.Write(buf[:n])
		if err != nil {
			return text.String()
		}
	}
}

func (b *browser) post(form url.Values) string {
	b.t.Helper()
	resp, err := b.c.PostForm(b.base+"/answer", form)
	if err != nil {
		b.t.Fatal(err)
	}
	return read(b.t, resp)
}

var prompt = regexp.MustCompile(`name="prompt" value="(\d+)"`)

// promptOf is the number of what a page asks.
func promptOf(t *testing.T, page string) string {
	t.Helper()
	m := prompt.FindStringSubmatch(page)
	if m == nil {
		t.Fatalf("nothing is asked:\n%s", page)
	}
	return m[1]
}

// A practice by browser: each answer counts once, however often it is sent, and the pages
// have what every face says.
func TestPracticeInABrowser(t *testing.T) {
	talk := web.NewTalk(t.Context())
	l := scripted.NewLearner(t, 4, machine.Imperial, nil)
	l.Session.Face = watched{talk, l, t}
	b := serve(t, talk)
	ended := make(chan error, 1)
	go func() {
		answers, err := l.Session.Run(practice.Practice{Tasks: []string{"compound-travel"}, Level: problem.NumbersGiven, Count: 2})
		talk.End()
		if err == nil && (len(answers) != 2 || !answers[0].Mark.Correct() || answers[1].Mark.Correct()) {
			err = errors.New("the answers are not those that were given")
		}
		ended <- err
	}()
	_, at := b.get("/?key=secret")
	n := promptOf(t, at)
	if !strings.Contains(at, "<svg") || !strings.Contains(at, `inputmode="decimal"`) {
		t.Errorf("no figure, or no field for a number:\n%s", at)
	}
	hinted := b.post(url.Values{"prompt": {n}, "sum": {"0.614 x 0.05"}})
	if !strings.Contains(hinted, "0.0307") {
		t.Error(hinted)
	}
	n = promptOf(t, hinted)
	for _, form := range []url.Values{{"prompt": {n}, "answer": {key(t, l)}}, {"prompt": {n}, "answer": {"9"}}} { // the second is too late
		at = b.post(form)
	}
	if !strings.Contains(at, "Right") || !strings.Contains(at, "Problem 2 of 2") {
		t.Errorf("after a right answer:\n%s", at)
	}
	b.post(url.Values{"prompt": {promptOf(t, at)}, "answer": {"0.9 in"}})
	if err := <-ended; err != nil {
		t.Error(err)
	}
	if _, at = b.get("/"); !strings.Contains(at, "Not right.") || !strings.Contains(at, words.Ended) {
		t.Errorf("at the end:\n%s", at)
	}
}

// key is the right answer to the problem at hand.
func key(t *testing.T, l *scripted.Learner) string {
	t.Helper()
	return scripted.Typed(l.Problem, l.Problem.Expected.Key)
}

// watched keeps the problem at hand while a talk shows it.
type watched struct {
	*web.Talk
	l *scripted.Learner
	t *testing.T
}

func (w watched) Show(p page.Page) error {
	for _, b := range p {
		if q, ok := b.(page.Question); ok {
			asked, err := (tasks.Set{}).FromCode(q.Code)
			if err != nil {
				w.t.Error(err)
			}
			w.l.Problem = asked
		}
	}
	return w.Talk.Show(p)
}

// The words of a page are those of every other face.
func TestWordsAreThoseOfEveryFace(t *testing.T) {
	figure := page.Figure{Caption: "Drawing: a curve", Pictures: []drawing.Drawing{drawing.Curve("", []float64{1, 2}, 0, 0)}, Twin: "It goes up."}
	p := page.Page{
		page.Heading{Text: "Part 1"}, page.Paragraph{Text: "One & <two>.\nThree."}, page.Item{Text: "item"}, page.Item{Text: "inner", Inner: true}, page.Aside{Text: "aside"},
		page.Question{Text: "Told.\nHow far?", Lines: []string{"one", "two"}},
		page.Verdict{Text: "Not right.", Given: "You gave 1.", Answer: "The answer is 2."}, page.Mistake{Text: "Crash."}, page.Caution{Text: "CAUTION: stop."},
		page.Givens{{Label: "Pitch", Symbol: "P", Value: "0.1", Unit: "in"}},
		page.Working{{Symbol: "P", Line: "P = 1 / n", Means: "     P: pitch"}, {Symbol: "h", Blank: true}}, page.Sequence{"close", "open"},
		figure, page.Meter{Done: 1, Of: 2, Text: "1 of 2 shown"}, page.Moves{"one move"}, page.Log{Text: "as it was"},
		page.Table{Columns: []string{"who", "right"}, Rows: [][]string{{"Ada", "1"}}}, page.Columns{Head: "a b", Rows: []page.ColumnRow{{Row: "1 2", Sentence: "a 1, b 2"}}},
	}
	for _, block := range p {
		var out strings.Builder
		if err := web.Render(&out, web.View{Body: page.Page{block}}, words); err != nil {
			t.Fatal(err)
		}
		text := out.String()
		text = text[strings.Index(text, `<main id="main">`):strings.Index(text, words.Gone)]
		text = regexp.MustCompile(`(?s)<svg.*?</svg>`).ReplaceAllString(text, "")
		text = strings.Join(strings.Fields(html.UnescapeString(regexp.MustCompile(`<[^>]*>`).ReplaceAllString(text, " "))), " ")
		for _, word := range strings.Fields(scripted.Words(page.Page{block})) {
			if word = strings.Trim(word, "-),;:"); !strings.Contains(text, word) && word != "1" && word != "2" {
				t.Errorf("%T: %q is not on the page: %q", block, word, text)
			}
		}
	}
}

// Who has no key, comes by another name or from another site gets nothing; nor can a page
// be framed or run a script of others.
func TestGuards(t *testing.T) {
	talk := web.NewTalk(t.Context())
	go func() { _, _ = talk.Ask(page.Prompt{Text: "?", Takes: page.Words{}}) }()
	b := serve(t, talk)
	for _, path := range []string{"/", "/?key=wrong", "/?key="} {
		if code, text := b.get(path); code != http.StatusForbidden || !strings.Contains(text, words.Gone) {
			t.Errorf("%s: %d %s", path, code, text)
		}
	}
	if code, _ := b.get("/static/style.css"); code != http.StatusOK {
		t.Errorf("the style: %d", code)
	}
	code, text := b.get("/?key=secret")
	if code != http.StatusOK || strings.Contains(text, "secret") {
		t.Errorf("with the key: %d\n%s", code, text)
	}
	for name, change := range map[string]func(*http.Request){
		"another host": func(r *http.Request) { r.Host = "evil.example" },
		"another site": func(r *http.Request) { r.Header.Set("Origin", "https://evil.example") },
		"cross-site":   func(r *http.Request) { r.Header.Set("Sec-Fetch-Site", "cross-site") },
	} {
		r, _ := http.NewRequest(http.MethodPost, b.base+"/answer", strings.NewReader("prompt=1&answer=x"))
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
		change(r)
		resp, err := b.c.Do(r)
		if err != nil {
			t.Fatal(err)
		}
		if resp.StatusCode < 400 {
			t.Errorf("%s: %d", name, resp.StatusCode)
		}
		resp.Body.Close()
	}
	resp, err := b.c.Get(b.base + "/")
	if err != nil {
		t.Fatal(err)
	}
	defer resp.Body.Close()
	csp := resp.Header.Get("Content-Security-Policy")
	for _, want := range []string{"default-src 'none'", "frame-ancestors 'none'", "script-src 'self'"} {
		if !strings.Contains(csp, want) {
			t.Errorf("the policy %q lacks %q", csp, want)
		}
	}
	if !slices.Contains(resp.Header["Cache-Control"], "no-store") {
		t.Error("a page may be kept")
	}
}
