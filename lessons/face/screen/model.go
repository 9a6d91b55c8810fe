package screen

import (
	tea "github.com/charmbracelet/bubbletea"

	"scratchpass/lessons/face/sheet"
	"scratchpass/lessons/page"
)

// Words are what the frame says.
type Words struct {
	Name   string // of the program, at the top
	More   string // there is more of the page below
	Menu   string // the keys of a menu
	Back   string // and of one whose last line leads back
	GoOn   string
	Answer string   // the keys of a line to type on
	Do     string   // of one whose words are done
	Beside []string // what may be typed there besides an answer
}

// asking is what the flow asks: the pages since the last answer, a prompt, and where
// the answer goes.
type asking struct {
	pages  page.Page
	prompt page.Prompt
	answer chan<- reply
}

type reply struct {
	text string
	err  error
}

// model is the screen: a line that says where one is, the sheet, what is asked, and a line
// with the keys that work now.
type model struct {
	theme         *theme
	words         Words
	columns, rows int
	sheet         sheet.Sheet
	waiting       []page.Page // steps that come after the one to be seen, which do not fit beside it
	asked         *asking     // nil between two questions
	now           page.Prompt // what is asked now: of a step that is not the last, to go on
	field         *field
	text          []string // the sheet, laid out
	pinned        pinned   // what stays over and under it
	from          int      // the first line of it that is seen
	picture       *player
	time          countdown
	said          string // while nothing is asked: what takes its time
}

func (m *model) Init() tea.Cmd { return nil }

func (m *model) Update(msg tea.Msg) (tea.Model, tea.Cmd) {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		m.columns, m.rows = msg.Width, msg.Height
		m.lay(true)
	case asking:
		m.said = ""
		m.ask(&msg)
	case page.Now:
		m.said = msg.Text
	case tea.KeyMsg:
		if msg.Type == tea.KeyCtrlZ {
			return m, tea.Suspend
		}
		if m.picture != nil {
			return m, m.picture.key(m, msg)
		}
		return m, m.key(msg)
	case play:
		m.picture = newPlayer(msg)
		return m, nextFrame()
	case countdown:
		m.time = msg
		if msg.says != nil {
			return m, msg.beat()
		}
		m.sheet.Where = page.Where{} // it said how much was left
	case second:
		if m.time.says != nil && m.time.ends.Equal(msg.ends) { // the header is drawn anew with every message
			return m, m.time.beat()
		}
	case frame:
		if m.picture != nil {
			return m, m.picture.tick(m, msg)
		}
	}
	return m, nil
}

// ask puts a question on the screen. Its steps are shown one after the other, as many at
// once as there is room for.
func (m *model) ask(q *asking) {
	m.asked = q
	m.waiting = sheet.Steps(q.pages)
	m.next()
}

// next shows the steps that fit.
func (m *model) next() {
	for n := 0; len(m.waiting) > 0; n++ {
		was := m.sheet
		m.sheet.Add(m.waiting[0])
		m.now = m.prompt(len(m.waiting) == 1)
		m.pin()
		if n > 0 && m.crowded(was) {
			m.sheet = was
			break
		}
		m.waiting = m.waiting[1:]
	}
	m.now = m.prompt(len(m.waiting) == 0)
	m.lay(false)
}

// crowded tells whether the last step does not fit beside those before it. A panel comes
// by itself after a page of another kind, and else always with what was done: that is its log.
func (m *model) crowded(was sheet.Sheet) bool {
	if m.sheet.Panel != nil {
		return was.Panel == nil && len(was.Fresh) > 0
	}
	return len(m.lines(m.sheet.All())) > m.room()
}

// prompt is the question, or the way on to the rest of it.
func (m *model) prompt(last bool) page.Prompt {
	if last {
		return m.asked.prompt
	}
	return page.Prompt{Takes: page.GoOn{}}
}

// lay makes the field, and finds where the sheet begins. again keeps what is typed and
// where it stands.
func (m *model) lay(again bool) {
	if m.asked == nil {
		return
	}
	m.pin()
	if !again || m.field == nil {
		m.field = newField(m.now, m.wide(), m.menuRows(), m.theme)
	}
	m.text = m.lines(m.sheet.All())
	fresh := len(m.lines(m.sheet.Fresh))
	if more := m.offered(); fresh+len(more) <= m.room() {
		m.text, fresh = append(m.text, more...), fresh+len(more)
	}
	all := len(m.text)
	switch room := m.room(); {
	case again:
		m.from = min(m.from, max(0, all-room))
	case all <= room:
		m.from = 0
	case fresh <= room:
		m.from = all - room
	default:
		m.from = min(len(m.lines(m.sheet.Old)), all)
	}
}

// wide is how wide text may be, and margin how far from the left it stands.
func (m *model) wide() int   { return max(20, min(m.columns-2, broad)) }
func (m *model) margin() int { return max(0, (m.columns-m.wide())/2) }

// framed tells whether the window is high enough for lines between the frame and the
// sheet.
func (m *model) framed() bool { return m.rows >= 16 }

// frame is how many lines the frame takes, and menuRows how many a menu may take.
func (m *model) frame() int {
	if m.framed() {
		return 4
	}
	return 2
}

func (m *model) menuRows() int { return max(4, m.rows/2) }

// room is how many lines of the sheet are seen.
func (m *model) room() int {
	taken := m.frame() + len(m.pinned.over) + len(m.pinned.under)
	ask := len(asked(m.now, min(m.wide(), widest)))
	switch takes := m.now.Takes.(type) {
	case page.GoOn:
	case page.Menu:
		ask += min(len(takes.Options), m.menuRows()) + 1
	default:
		ask += 2
	}
	return max(3, m.rows-taken-ask)
}

// lines lays pages out. What the frame says is left out.
func (m *model) lines(p page.Page) []string {
	return layout{m.wide(), m.room(), m.theme}.page(sheet.Body(p, m.sheet.Title))
}

// more tells whether lines of the sheet are still below.
func (m *model) more() bool { return m.from+m.room() < len(m.text) }

// key is a key while something is asked; any other is lost on purpose: it was meant for
// what has gone by.
func (m *model) key(k tea.KeyMsg) tea.Cmd {
	if k.Type == tea.KeyCtrlC || k.Type == tea.KeyEsc && !m.back() {
		return m.done(reply{err: page.ErrStopped})
	}
	if m.asked == nil {
		return nil
	}
	page := m.room() - 1
	switch k.Type {
	case tea.KeyPgDown:
		m.scroll(page)
		return nil
	case tea.KeyPgUp:
		m.scroll(-page)
		return nil
	case tea.KeyUp, tea.KeyDown:
		if m.field.choice == nil { // of a wheel, too: a terminal sends arrows for it
			m.scroll(map[tea.KeyType]int{tea.KeyUp: -1, tea.KeyDown: 1}[k.Type])
			return nil
		}
	case tea.KeyEsc:
		return m.goBack()
	case tea.KeyEnter:
		if m.more() && (m.field.input == nil || m.field.value() == "") {
			m.scroll(page)
			return nil
		}
		if len(m.waiting) > 0 {
			m.sheet.Read(m.now, "")
			m.next()
			return nil
		}
		return m.done(reply{text: m.field.value()})
	}
	return m.field.key(k)
}

// back tells whether Esc leads back: to the last line of a menu, to the question that this
// one is inside of, or from a page to the panel whose place it has taken.
func (m *model) back() bool {
	if m.asked == nil {
		return false
	}
	if len(m.waiting) > 0 {
		return m.sheet.Panel != nil || sheet.IsBench(m.waiting[len(m.waiting)-1])
	}
	switch takes := m.now.Takes.(type) {
	case page.Menu:
		return takes.Back
	case page.Words:
		return takes.Back != ""
	}
	return false
}

// goBack is Esc where it leads back.
func (m *model) goBack() tea.Cmd {
	if last := len(m.waiting) - 1; last >= 0 { // over all that is still to be read
		m.sheet.Read(m.now, "")
		for _, p := range m.waiting[:last] {
			m.sheet.Add(p)
			m.sheet.Read(m.now, "")
		}
		m.waiting = m.waiting[last:]
		m.next()
		return nil
	}
	if words, ok := m.now.Takes.(page.Words); ok {
		return m.done(reply{text: words.Back})
	}
	m.field.goTo(len(m.now.Options()))
	return m.done(reply{text: m.field.value()})
}

func (m *model) scroll(by int) {
	m.from = max(0, min(m.from+by, len(m.text)-m.room()))
}

// done gives the answer to the flow. What stands there stays until the next question.
func (m *model) done(r reply) tea.Cmd {
	if m.asked == nil {
		return nil
	}
	echo := ""
	if m.field != nil && r.err == nil {
		echo = sheet.Echo(m.asked.prompt, m.field.value())
	}
	m.asked.answer <- r // it has room for one
	m.sheet.Read(m.asked.prompt, echo)
	m.asked, m.field, m.waiting = nil, nil, nil
	return nil
}
