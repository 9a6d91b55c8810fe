package quiz

// choice is one of several options.
type choice struct{}

var _ Kind = choice{}

func (choice) Name() string { return "choice" }

func (choice) Read(a *Answer, text string) (Reply, error) {
	key, ok := a.pick(text)
	if !ok {
		return Reply{}, unread(text, "the number of one line, "+a.numbers())
	}
	return Reply{Keys: []string{key}}, nil
}

func (choice) Same(_ *Answer, x, y Reply, _ float64) bool {
	return len(x.Keys) == 1 && len(y.Keys) == 1 && x.Keys[0] == y.Keys[0]
}

func (choice) Show(a *Answer, r Reply) string { return a.number(r.Keys[0]) }
