package figures

import (
	"flag"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"scratchpass/content"
)

var update = flag.Bool("update", false, "write the list in content/README.md anew")

// What is asked for comes out as calc has it; a hand calculation stands beside each.
func TestFigure(t *testing.T) {
	for asked, want := range map[string]string{
		"pitch 8":                        "0.1250",
		"pitch 8, 3 places":              "0.125",
		"pitch 1-8":                      "0.1250",
		"pitch 11.5":                     "0.0870", // 1 / 11.5 = 0.086957
		"pitch 1.5mm":                    "0.0591", // 1.5 / 25.4 = 0.059055
		"pitch 0.2in, 1 place":           "0.2",
		"tpi 2mm":                        "12.7",
		"nominal 10-24":                  "0.1900", // 0.060 + 10 x 0.013
		"nominal M12x1.75, 3 places":     "0.472",  // 12 / 25.4
		"starts M33xL6-P2":               "3",
		"lead 8 2":                       "0.2500",
		"pitch-of-lead 0.5 2":            "0.2500",
		"mm 4in":                         "101.600",
		"threads-in 4in 1.5mm":           "67.7333", // 101.6 / 1.5
		"number-adds 4":                  "0.052",
		"factor external, 6 places":      "0.613435",
		"factor percent":                 "1.0825",
		"factor percent-old, 3 places":   "1.299",
		"depth 1-8":                      "0.0767", // 0.613435 / 8
		"minor 1-8":                      "0.8466",
		"pitch-diameter-over 10 8":       "0.0072", // 2 x (0.757772 - 0.866025 / 8 - 0.613435) / 10
		"bore 1-8":                       "0.8647",
		"lead-angle 1-8, 2 places":       "2.48", // atan(0.125 / (3.141593 x 0.918810))
		"lead-angle 1-8 2, 2 places":     "4.95",
		"wire-lead 1-8 2, 5 places":      "0.00041", // 0.072169 x 0.866025 / 0.577350 x tan(4.9508)^2 / 2
		"compound-travel 8 30":           "0.0885",  // 0.076679 / 0.866025
		"time-for-gap 0.2 90 10":         "1.33",
		"marks-that-fit 0.5in 8 16 8":    "4",
		"threads-between 13 8 16 8 4":    "13",
		"driver-on-127 1.5mm 8":          "60",
		"slow-speed stainless":           "40",
		"fast-speed aluminium":           "300",
		"passes 0.0600 0.0150":           "16",
		"even-load 0.0600 4 16":          "0.0300",
		"equal-feeds 0.0600 4 16":        "0.0150",
		"left-on 0.0050 0.3 1, 5 places": "0.00045",
		"engagement-over M12x1.75":       "6",
		"engagement-to M12x1.75":         "18",
		"plating-growth 0.0003":          "0.0012", // 2 x 0.0003 / sin 30
		"nut-travel 0.25 3":              "0.7500",
		"draw-out-room 0.05 10 1.5":      "0.2000", // 0.05 + 1.5 x 0.1
		"whitworth-depth 14":             "0.0457", // 2/3 x 0.960491 / 14
		"read-out 0.75 0.0613":           "0.6274", // 0.75 - 0.1226
		"acme-depth 12":                  "0.0467", // 0.083333 / 2 + 0.005
		"acme-tip-less 12":               "0.0026",
		"acme-pitch-diameter 1 5":        "0.9000",
		"pipe-e1 1/2":                    "0.7784",
		"pipe-tpi 1-1/4":                 "11.5",
		"pipe-angle":                     "1.7899",
		"set-over 16":                    "0.5000",
		"formula pitch-diameter":         "D - 0.649519 x P",
		"formula pitch-diameter D=nominal_size P=pitch, 4 places": "nominal size - 0.6495 x pitch",
		"formula thread-slope l=lead 3.14159265=pi":               "atan(lead / (pi x E))",
		"formula turning-speed, 4 places":                         "12 x V / (3.1416 x D)",
	} {
		if got, err := Figure(asked); err != nil || got != want {
			t.Errorf("${%s} = %q, want %q (%v)", asked, got, want, err)
		}
	}
}

// What can't be given is an error that quotes it and says what would work.
func TestWhatCannotBeGiven(t *testing.T) {
	for asked, want := range map[string]string{
		"":                         `${}: the name is missing: write one of acme-allowance, `,
		"ptich 8":                  `${ptich 8}: no figure is called "ptich"; they are acme-allowance, `,
		"pitch":                    "${pitch}: write it as ${pitch THREAD}, such as ${pitch 8}",
		"pitch 8 9":                "write it as ${pitch THREAD}",
		"lead-angle 1-8 2 3":       "write it as ${lead-angle NAME [STARTS]}",
		"pitch eight":              `can't read "eight": give threads per inch such as 8`,
		"pitch 800":                "threads per inch 800: give 1 to 100",
		"pitch 8, three places":    `can't read "three places" behind the comma: write the decimals, 0 to 8`,
		"pitch 8, 9 places":        "0 to 8",
		"pitch 8,":                 `can't read "" behind the comma`,
		"minor 8":                  `"8": not a thread: give a thread such as`,
		"lead 8 2.5":               `can't count "2.5": give a whole number such as 2`,
		"lead 8 1e300":             `can't read "1e300"`,
		"lead 8 20":                "starts 20: give 1 to 12",
		"pitch-diameter-over 10 0": "part of the pitch 0: give 4 to 100",
		"even-load 0.06 17 16":     "pass 17: give 1 to 16",
		"equal-feeds 0.06 17 16":   `pass "17": give 1 to 16`,
		"factor externl":           `no factor is called "externl"; they are bore, external`,
		"pipe-e0 5/8":              `no pipe size is called "5/8"; they are 1/8, 1/4`,
		"formula":                  "write the formula's name behind it; the formulas are acme-allowance-2g, ",
		"formula depth":            `no formula is called "depth"; they are acme-allowance-2g, `,
		"formula pitch-of-tpi P=p": `no "P" stands in 1 / n`,
		"formula pitch-of-tpi n":   `can't read "n": write the symbol, =, and the word for it, such as P=pitch`,
		"set-over -3":              "distance between centres -3.0000 in: give",
		"compound-travel 8 80":     "compound angle from the cross-slide line 80: give 0 to 60",
	} {
		if got, err := Figure(asked); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("${%s}: %q, %v, want %q in it", asked, got, err, want)
		}
	}
}

func TestFill(t *testing.T) {
	got, err := Fill("At 8: ${pitch 8}.\nAt 1-8: ${depth 1-8}, not $5 and not {that}.\n")
	if want := "At 8: 0.1250.\nAt 1-8: 0.0767, not $5 and not {that}.\n"; got != want || err != nil {
		t.Errorf("%q, %v", got, err)
	}
	got, err = Fill("${ptich 8}, ${pitch 8} and ${pitch\n8}")
	if got != "${ptich 8}, 0.1250 and ${pitch\n8}" || err == nil || !strings.Contains(err.Error(), `"${pitch" is not closed`) || !strings.Contains(err.Error(), "ptich") {
		t.Errorf("%q, %v", got, err)
	}
}

// Every shipped lesson can be filled.
func TestLessonsCanBeFilled(t *testing.T) {
	lib := content.Shipped()
	filled := 0
	for _, name := range lib.LessonNames() {
		l, err := lib.Lesson(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range l.Parts {
			for _, b := range p.Explain {
				text, err := Fill(b.Text)
				if err != nil {
					t.Errorf("%s: %v", name, err)
				}
				if text != b.Text {
					filled++
				}
			}
		}
	}
	if filled < 50 {
		t.Errorf("only %d texts ask for figures: the test looks in the wrong place", filled)
	}
}

// Every formula of calc can be asked for, by its own name.
func TestFormulasAreThoseOfCalc(t *testing.T) {
	texts := map[string]string{}
	files, err := filepath.Glob("../../calc/*.go")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range file.Decls {
			g, ok := d.(*ast.GenDecl)
			if !ok || g.Tok != token.VAR {
				continue
			}
			for _, s := range g.Specs {
				v := s.(*ast.ValueSpec)
				if lit, ok := only(v.Values).(*ast.CompositeLit); ok {
					if index, ok := lit.Type.(*ast.IndexExpr); ok && fmt.Sprint(index.X) == "Formula" {
						texts[strings.ToLower(v.Names[0].Name)], _ = strconv.Unquote(lit.Elts[0].(*ast.BasicLit).Value)
					}
				}
			}
		}
	}
	for name, text := range formulas {
		if key := strings.ReplaceAll(name, "-", ""); texts[key] != text {
			t.Errorf("%s is %q, calc has %q", name, text, texts[key])
		} else {
			delete(texts, key)
		}
	}
	for name := range texts {
		t.Errorf("the formula %s of calc can't be asked for", name)
	}
}

func only(values []ast.Expr) ast.Expr {
	if len(values) == 1 {
		return values[0]
	}
	return nil
}

// The list in content/README.md is the one here.
func TestReadme(t *testing.T) {
	const file, begin, end = "../../content/README.md", "<!-- figures: made by go test ./quiz/figures -update -->\n", "<!-- end of figures -->\n"
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	before, rest, ok := strings.Cut(string(text), begin)
	_, after, ok2 := strings.Cut(rest, end)
	if !ok || !ok2 {
		t.Fatalf("%s has no place for the figures: write\n%s%s", file, begin, end)
	}
	want := before + begin + list(t) + end + after
	if *update {
		if err := os.WriteFile(file, []byte(want), 0o644); err != nil {
			t.Fatal(err)
		}
	} else if string(text) != want {
		t.Errorf("%s tells other figures than there are: go test ./quiz/figures -update", file)
	}
}

// list writes all that can be asked for.
func list(t *testing.T) string {
	t.Helper()
	var b strings.Builder
	give := func(asked string) string {
		text, err := Figure(asked)
		if err != nil {
			t.Error(err)
		}
		return text
	}
	b.WriteString("\n| figure | gives | example |\n|---|---|---|\n")
	for _, f := range figures {
		fmt.Fprintf(&b, "| `%s` | %s | `${%s}` is %s |\n", f.usage, f.gives, f.example, give(f.example))
	}
	b.WriteString("\n| factor | x pitch |\n|---|---|\n")
	for _, name := range sortedKeys(factors()) {
		fmt.Fprintf(&b, "| `%s` | %s |\n", name, give("factor "+name+", 6 places"))
	}
	b.WriteString("\n| formula | text |\n|---|---|\n")
	for _, name := range sortedKeys(formulas) {
		fmt.Fprintf(&b, "| `%s` | %s |\n", name, give("formula "+name))
	}
	b.WriteString("\n")
	return b.String()
}

// Whatever a lesson asks for, it gets a text or an error and never a number that is none.
func FuzzFigure(f *testing.F) {
	for _, fig := range figures {
		f.Add(fig.example)
	}
	f.Add("formula thread-slope l=lead 3.14159265=pi, 4 places")
	f.Fuzz(func(t *testing.T, asked string) {
		if text, err := Figure(asked); err == nil && (text == "" || strings.Contains(text, "NaN") && !strings.Contains(asked, "NaN")) {
			t.Errorf("${%s} = %q", asked, text)
		}
	})
}
