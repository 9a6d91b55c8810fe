package content_test

import (
	"regexp"
	"strings"
	"testing"

	"scratchpass/content"
	"scratchpass/quiz/figures"
)

// tradeWords are the long words that a lesson on threads can't do without; they are
// explained where they first stand, or in the glossary, and count as one syllable.
var tradeWords = regexp.MustCompile(`(?i)\b(compound|diameter|radius|carriage|spindle|thousandths?|micrometer|mandrel|designation|internal|external|tailstock|` +
	`headstock|clearance|allowance|tolerance|direction|indicator|millimetres?|instructor|degrees?|cosine|tangent|taper|metric|unified|` +
	`american|national|geometry|half-nut|half-nuts|idler|overhang|cylinder|chamfer|relief|designations?|parallel|multiply|divided?|division|divisions|acme)\b`)

var (
	notWords  = regexp.MustCompile(`\$\{[^}]*\}|[0-9]+(?:[./][0-9]+)*|[=+()"/]|\b[A-Za-z]\b`)
	sentences = regexp.MustCompile(`[.!?:;]+(?:\s|$)|\n`)
)

var vowels = regexp.MustCompile(`[aeiouy]+`)

// syllables counts the groups of vowels of a word; an e at the end is silent, except
// in -le, and so is that of most -ed.
func syllables(word string) int {
	word = strings.ToLower(strings.Trim(word, ",.'\"-"))
	n := len(vowels.FindAllString(word, -1))
	if strings.HasSuffix(word, "e") && !strings.HasSuffix(word, "le") || strings.HasSuffix(word, "ed") && !strings.HasSuffix(word, "ted") && !strings.HasSuffix(word, "ded") {
		n--
	}
	return max(1, n)
}

// grade is the Flesch-Kincaid grade of a text:
//
//	0.39 words/sentences + 11.8 syllables/words - 15.59
func grade(text string) (g float64, words int) {
	text = tradeWords.ReplaceAllString(notWords.ReplaceAllString(text, " "), "word")
	syllableCount, sentenceCount := 0, 0
	for _, s := range sentences.Split(text, -1) {
		fields := strings.Fields(s)
		if len(fields) < 2 {
			continue
		}
		sentenceCount++
		for _, w := range fields {
			words++
			syllableCount += syllables(w)
		}
	}
	if words == 0 {
		return 0, 0
	}
	return 0.39*float64(words)/float64(sentenceCount) + 11.8*float64(syllableCount)/float64(words) - 15.59, words
}

// Everything a learner reads stays within grade 7.
func TestReadingGrade(t *testing.T) {
	lib := content.Shipped()
	check := func(what, text string) {
		t.Helper()
		if g, n := grade(text); n >= 20 && g > 7 {
			t.Errorf("%s reads at grade %.1f (%d words)", what, g, n)
		}
	}
	for _, name := range lib.LessonNames() {
		l, err := lib.Lesson(name)
		if err != nil {
			t.Fatal(err)
		}
		text := l.Why + "\n"
		for _, p := range l.Parts {
			for _, b := range p.Explain {
				filled, err := figures.Fill(b.Text)
				if err != nil {
					t.Fatal(err)
				}
				text += filled + "\n"
			}
		}
		check("lesson "+name, text)
	}
	for _, name := range lib.TaskNames() {
		w, err := lib.Task(name)
		if err != nil {
			t.Fatal(err)
		}
		text := w.Hint + "\n" + w.AtTheLathe + "\n"
		for _, part := range []map[string]string{w.Slips, w.Because, w.Cases, w.Options} {
			for _, s := range part {
				text += s + "\n"
			}
		}
		check("task "+name, text)
		ask := ""
		for _, s := range w.Ask {
			ask += s + "\n"
		}
		check("questions of "+name, ask)
	}
	safety, err := lib.Safety()
	if err != nil {
		t.Fatal(err)
	}
	text := ""
	for _, c := range safety {
		text += c.Text + "\n"
	}
	check("cautions", text)
}

func TestGrade(t *testing.T) {
	easy, _ := grade("The cat sat on the mat. It was a big cat. The dog ran.")
	hard, _ := grade("Notwithstanding considerable organisational difficulties, interdisciplinary collaboration facilitated extraordinarily sophisticated methodological innovation.")
	if easy > 3 || hard < 15 {
		t.Errorf("easy %.1f, hard %.1f", easy, hard)
	}
}
