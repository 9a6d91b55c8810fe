package set

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"

	"scratchpass/content"
	"scratchpass/quiz/tasks"
)

const oneRoster = `"sourcedId","status","dateLastModified","enabledUser","orgSourcedIds","role","username","givenName","familyName"
"u1","active","2026-11-01","true","o1","student","ada","Ada","Brink"
"u2","active","2026-11-01","true","o1","teacher","tom","Tom","Teach"
"u3","tobedeleted","2026-11-01","true","o1","student","old","Old","One"
"u4","active","2026-11-01","false","o1","student","off","Off","Duty"
"u5","active","2026-11-01","true","o1","student","zoe","Zoë","Zander"
`

func TestRosters(t *testing.T) {
	for text, want := range map[string]string{
		"id,name\n1,Ada\n2,Ben\n":             "1 Ada, 2 Ben",
		"\ufeffID;Name\r\n1;Ada\r\n2;Ben\r\n": "1 Ada, 2 Ben",
		"name\nAda\n\nBen\n":                  "Ada Ada, Ben Ben",
		"name\tid\tgroup\nAda\t7\tx\n":        "7 Ada",
		oneRoster:                             "u1 Ada Brink, u5 Zoë Zander",
		"id,name\n1,\"Brink, Ada\"\n":         "1 Brink, Ada",
		"id,name\n1,A\x1b[2Jda\u202e\n":       "1 A [2Jda",
	} {
		all, err := ParseRoster("r.csv", []byte(text))
		var got []string
		for _, a := range all {
			got = append(got, a.ID+" "+a.Name)
		}
		if err != nil || strings.Join(got, ", ") != want {
			t.Errorf("%q: %q, %v", text, got, err)
		}
	}
	many := "id,name\n" + strings.Repeat(",x\n", 50)
	for text, want := range map[string]string{
		"":                        "r.csv is empty",
		"id,name\n":               "no apprentices below",
		"first,last\nAda,Brink\n": `the columns are "first, last": give id and name`,
		"id,name\n1,Ada\n1,Ben\n": `r.csv, row 3: "1" stands in row 2 already`,
		"id,name\nA,Ada\na,Ben\n": `r.csv, row 3: "a" stands in row 2 already`,
		"id,name\n,Ada\n":         "r.csv, row 2: no id",
		"id,name\n1,Ada,x\n":      "r.csv, row 2: 3 cells where there are 2 columns",
		"id,id\n1,2\n":            `the column "id" stands twice`,
		"id,name\n1,\"Ada\n":      "r.csv, row 2: \"Ada\\n\" has a line break in it; is a quotation mark not closed?",
		many:                      "and 30 more",
		"\xff\xfei\x00d":          "written in UTF-16, and not whole",
		"id,name\n1,J\x81rg\n":    "written in neither UTF-8, UTF-16 nor Windows-1252, so its letters would be lost",
		"id,name\n" + strings.Repeat("1,x\n", 20_001):    "more than 20000 rows",
		"id,name\n1," + strings.Repeat("x", 130):         "a name 120",
		strings.Replace(oneRoster, "student", "aide", 9): "no row has the role student",
	} {
		if _, err := ParseRoster("r.csv", []byte(text)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%.60q: %v, want %q", text, err, want)
		}
	}
}

// In OneRoster 1.2 the roles stand in a file of their own, beside the users.
func TestRostersWithRolesBeside(t *testing.T) {
	dir := t.TempDir()
	users := filepath.Join(dir, "users.csv")
	write := func(name, text string) {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	write("users.csv", "sourcedId,status,dateLastModified,enabledUser,username,userIds,givenName,familyName\n"+
		"u1,,,true,ada,,Ada,Brink\nu2,,,true,tom,,Tom,Teach\nu3,,,true,old,,Old,One\nu4,,,false,off,,Off,Duty\nu5,,,true,zoe,,Zoë,Zander\n")
	for roles, want := range map[string]string{
		"": "put its roles.csv beside it",
		"sourcedId,status,dateLastModified,userSourcedId,roleType,role,beginDate,endDate,orgSourcedId,userProfileSourcedId\n" +
			"r1,,,u1,primary,student,,,o1,\nr2,,,u2,primary,teacher,,,o1,\nr3,tobedeleted,,u3,primary,student,,,o1,\nr4,,,u4,primary,student,,,o1,\n" +
			"r5,,,u5,primary,teacher,,,o1,\nr6,,,u5,secondary,student,,,o1,\n": "u1 Ada Brink, u5 Zoë Zander",
		"sourcedId,userSourcedId\nr1,u1\n":              "has userSourcedId and role",
		"sourcedId,userSourcedId,role\nr1,u2,teacher\n": "no row has the role student",
		"\xff": "roles.csv",
	} {
		if roles != "" {
			write(rolesFile, roles)
		}
		all, err := ReadRoster(users, nil)
		var got []string
		for _, a := range all {
			got = append(got, a.ID+" "+a.Name)
		}
		if err != nil {
			got = []string{err.Error()}
		}
		if !strings.Contains(strings.Join(got, ", "), want) {
			t.Errorf("%q: %q, want %q", roles, got, want)
		}
		_ = os.Remove(filepath.Join(dir, rolesFile))
	}
}

// No cell is a formula to a spreadsheet, wherever that parts cells; numbers and texts stay.
func TestSafeCells(t *testing.T) {
	for cell, want := range map[string]string{
		"": "", "Ada": "Ada", "-0.5": "-0.5", "+3": "+3", "29-1/2": "29-1/2", "a=b": "a=b", "x; -3": "x; -3", "1;-0.5": "1;-0.5",
		"|x": "'|x", "-cmd": "'-cmd", "=1+1": "'=1+1", "+1+1": "'+1+1", "-1+1": "'-1+1", "@SUM(1)": "'@SUM(1)", "|cmd": "'|cmd", "%0": "'%0", "-": "'-",
		"\t=1": "'\t'=1", "\r=1": "'\r'=1", "＝1+1": "'＝1+1", "＠x": "'＠x",
		"x;=1+1": "x;'=1+1", "x\t@y": "x\t'@y", "a\n=2": "a\n'=2", ";=1": ";'=1", "x;=1;y;=2": "x;'=1;y;'=2", "=1;": "'=1;",
	} {
		if got := Safe(cell); got != want {
			t.Errorf("%q: %q, want %q", cell, got, want)
		}
	}
}

func TestAnswerFiles(t *testing.T) {
	for text, want := range map[string]string{
		"code,item,answer\nk7f2qxm,1,0.05 in\nK7F-2QXM,2,\n":        "K7F-2QXM 1 0.05 in, K7F-2QXM 2 ",
		"code,item,answer,sure\nK7F-2QXM,1,0.05,Bet\n":              "K7F-2QXM 1 0.05",
		"name,code,1,2\nAda,K7F-2QXM,0.05,3\nBen,ABC-2345,0.06\n":   "K7F-2QXM 1 0.05, K7F-2QXM 2 3, ABC-2345 1 0.06, ABC-2345 2 ",
		"code,item,answer\nK7F-2QXM,1,0.05\"\n,,\n":                 "K7F-2QXM 1 0.05\"",
		"code\t1\t2\t3\nK7F-2QXM\t\t0.06\t0.07\n":                   "K7F-2QXM 1 , K7F-2QXM 2 0.06, K7F-2QXM 3 0.07",
		"code,1,2,,\nK7F-2QXM,,0.06,,,,\n":                          "K7F-2QXM 1 , K7F-2QXM 2 0.06",
		"code,1,1 sure\nK7F-2QXM,0.06,a guess\n":                    "K7F-2QXM 1 0.06",
		"code;1;2\nK7F-2QXM;0,05;=1+1\n":                            "K7F-2QXM 1 0,05, K7F-2QXM 2 =1+1",
		"{\"code\":\"single-depth@1-7f3a\",\"given\":\"0.05\"}\n\n": "single-depth@1-7f3a 0 0.05",
	} {
		all, err := ParseAnswers("a.csv", []byte(text))
		var got []string
		for _, g := range all {
			got = append(got, fmt.Sprint(g.Code, " ", g.Item, " ", g.Text))
		}
		if err != nil || strings.Join(got, ", ") != want {
			t.Errorf("%q: %q, %v", text, got, err)
		}
	}
	for text, want := range map[string]string{
		"":                               "a.csv is empty",
		"name,1,2\nAda,1,2\n":            "give code, item, answer",
		"code,answer\nK,1\n":             "beside code give 1, 2, 3",
		"code,1,01\nK,1,2\n":             `the columns "1" and "01" are one`,
		"code,1,2.\nK,1,2\n":             `the column "2." is not known`,
		"code,1,1 sure\nK,1,very\n":      `a.csv, row 2: 1 sure "very": give guess, fairly, bet or nothing`,
		"code,1\nK,1,2\n":                "a.csv, row 2: 3 cells where there are 2 columns",
		"code,item,answer\nK,one,1\n":    `a.csv, row 2: item "one": give the number of a question`,
		"code,item,answer\nK,0,1\n":      `a.csv, row 2: item "0"`,
		"code,item,answer,sure\nK,1,1,y": `a.csv, row 2: sure "y": give guess, fairly, bet or nothing`,
		"{\"code\":1}\n":                 "a.csv, row 1: this is no line of an answer file",
		"{}\n{\"code\":\"x\",\"given\":\"\",\"certainty\":\"very\"}": "a.csv, row 2",
	} {
		if _, err := ParseAnswers("a.csv", []byte(text)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %q", text, err, want)
		}
	}
	// What is wrong in the longest file is told in a few lines, and a longer one is not read.
	for rows, want := range map[int]string{MostAnswers: "and 249980 more", MostAnswers + 1: "more than 250000 rows"} {
		long := "code,item,answer\n" + strings.Repeat("K7F-2QXM,x,1\n", rows)
		if _, err := ParseAnswers("a.csv", []byte(long)); err == nil || !strings.Contains(err.Error(), want) || len(err.Error()) > 4000 {
			t.Errorf("%d rows: %.300v", rows, err)
		}
	}
}

// The interval by formula against the exact test that it comes from: at its ends the
// share seen lies just 1.96 standard errors away. And it covers as it should.
func TestWilson(t *testing.T) {
	for n := 1; n <= 60; n++ {
		for right := 0; right <= n; right++ {
			low, high := Wilson(right, n)
			p := float64(right) / float64(n)
			for _, end := range []float64{low, high} {
				if end < 1e-12 || end > 1-1e-12 {
					continue
				}
				if z := math.Abs(p-end) / math.Sqrt(end*(1-end)/float64(n)); math.Abs(z-z95) > 1e-9 {
					t.Fatalf("%d of %d: the end %v lies %v standard errors away", right, n, end, z)
				}
			}
		}
	}
	if z := distuv.UnitNormal.Quantile(0.975); math.Abs(z-z95) > 1e-12 {
		t.Errorf("the deviate is %v", z)
	}
	covered := 0.0
	truth := distuv.Binomial{N: 24, P: 0.7}
	for right := 0; right <= 24; right++ {
		if low, high := Wilson(right, 24); low <= 0.7 && 0.7 <= high {
			covered += truth.Prob(float64(right))
		}
	}
	if covered < 0.92 || covered > 0.98 {
		t.Errorf("it covers %v", covered)
	}
}

// Alpha of whole points is KR-20, worked out another way.
func TestAlphaIsKR20(t *testing.T) {
	const people, questions = 40, 5
	items := make([][]float64, questions)
	total := make([]float64, people)
	for i := range questions {
		for j := range people {
			x := 0.0
			if (j*7+i*3)%11 < 4+i+j%3 {
				x = 1
			}
			items[i], total[j] = append(items[i], x), total[j]+x
		}
	}
	got, ok := alpha(items, total)
	mean, square, pq := 0.0, 0.0, 0.0
	for _, x := range total {
		mean, square = mean+x/people, square+x*x/people
	}
	for _, item := range items {
		p := 0.0
		for _, x := range item {
			p += x / people
		}
		pq += p * (1 - p)
	}
	want := questions / (questions - 1.0) * (1 - pq/(square-mean*mean))
	if !ok || math.Abs(got-want) > 1e-12 {
		t.Errorf("%v %v, want %v", got, ok, want)
	}
	if _, ok := discrimination(items[0][:20], total[:20]); ok {
		t.Error("20 sheets tell something")
	}
}

func FuzzBlueprint(f *testing.F) {
	for name, text := range content.Examples() {
		if strings.HasSuffix(name, ".yaml") {
			f.Add(text)
		}
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		b, err := ParseBlueprint("b", text, tasks.Set{}, noLathe)
		if err == nil && (b.Items() < 1 || b.Items() > mostItems || b.Points() < 0) {
			t.Errorf("%q: %d questions, %v points", text, b.Items(), b.Points())
		}
	})
}

func FuzzRosterAndAnswers(f *testing.F) {
	f.Add([]byte(oneRoster))
	f.Add([]byte("id,name\n1,Ada\n"))
	f.Add([]byte("code,item,answer,sure\nK7F-2QXM,1,0.05,bet\n"))
	f.Add([]byte("{\"code\":\"single-depth@1-7f3a\",\"given\":\"0.05\"}"))
	f.Fuzz(func(t *testing.T, text []byte) {
		all, err := ParseRoster("r", text)
		if err == nil && len(all) == 0 {
			t.Errorf("%q: no one, and no error", text)
		}
		answers, err := ParseAnswers("a", text)
		for _, g := range answers {
			if err == nil && (g.Code == "" && g.Item == 0 || strings.ContainsAny(g.Text, "\x1b\n\r")) {
				t.Errorf("%q: %+v", text, g)
			}
		}
	})
}
