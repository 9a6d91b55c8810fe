package answer_test

import (
	"testing"

	"scratchpass/quiz/answer"
	"scratchpass/quiz/machine"
)

// What is typed oddly is read where it can mean one thing, and only there.
func TestReadOddAnswers(t *testing.T) {
	kind := func(k answer.Kind) *answer.Expected {
		return &answer.Expected{Kind: k, Options: []string{"a", "b", "c", "d"}, Key: answer.OptionsResponse("a")}
	}
	rpm := machine.Unit{Name: "rpm", Factor: 1}
	for _, c := range []struct {
		e    *answer.Expected
		want map[string]string
	}{
		{in(machine.InchUnit), map[string]string{
			"= 0.0556": "0.0556", "=0.0556 in": "0.0556 in", "= 1/18 = 0.0556": "0.0556", "\uff10.\uff10\uff15\uff15\uff16": "0.0556", "\uff10\uff0c\uff10\uff15": "0.05",
			"\uff10\uff0e\uff10\uff15\uff49\uff4e": "0.05 in", "\u2248 0.05": "0.05", "1,234.5": "1234.5", "1.234,5": "1234.5", "1,234,567": "1.23457e+06", "12,345.6 in": "12345.6 in",
			"=1+1": "want-in", "=": "want-in", "1,500": "want-in", "-1,500": "want-in", "1.500": "1.5", "1,23,456": "want-in", "0,123.4": "want-in", "1,234.5.6": "want-in", "1,2345.6": "want-in",
			"1,234,56": "want-in", "= a = 2": "want-in",
		}},
		{in(rpm), map[string]string{"1,500": "1500", "1,500 rpm": "1500 rpm", "1.500": "1.5", "1,50": "1.5"}},
		{kind(answer.Choice), map[string]string{
			"option 3": "options c", "Option 3.": "options c", "line 2": "options b", "no. 2": "options b", "no 2": "options b", "No.2": "options b", "nr. 2": "options b", "#2": "options b", "number 4": "options d",
			"\uff12": "options b", "(\uff12)": "options b", "option 5": "want-choice n=4", "no": "want-choice n=4", "not 2": "want-choice n=4", "no mark 2": "want-choice n=4", "option 2 or 3": "want-choice n=4", "line": "want-choice n=4",
		}},
		{kind(answer.Several), map[string]string{
			"lines 2 and 4": "options b d", "line 2, line 4": "options b d", "no. 2, no. 4": "options b d", "options 1-3": "options a b c", "\uff12\uff0c\uff14": "options b d", "marks 1 to 3": "options a b c",
			"1, 3, no 2": "want-several", "1 3 not 2": "want-several", "no marks": "options", "all but line 2": "want-several", "no mark 2": "want-several",
		}},
		{kind(answer.Order), map[string]string{
			"step 4, step 2, step 1, step 3": "options d b a c", "\uff14\uff12\uff11\uff13": "options d b a c", "no. 4 no. 2 no. 1 no. 3": "options d b a c", "step 4, step 2": "want-order example=2 1 3 4",
		}},
	} {
		for text, want := range c.want {
			if got := understood(c.e, text); got != want {
				t.Errorf("%s %q: %s, want %s", c.e.Kind.Name(), text, got, want)
			}
		}
	}
}

// A comma before decimals shows as many of them as a point does.
func TestDecimalsAfterAComma(t *testing.T) {
	e := inches(0.0556)
	if point, comma := e.Mark("0.0556"), e.Mark("0,0556"); comma.Verdict != answer.Right || comma.Response.Coarse != point.Response.Coarse || !e.Mark("0,06").Response.Coarse {
		t.Errorf("%+v, %+v", point, comma)
	}
}

// What can't be read is quoted as it was typed.
func TestUnreadIsQuotedAsTyped(t *testing.T) {
	if m := in(machine.InchUnit).Mark("\uff46\uff4f\uff4f"); m.Unread == nil || m.Unread.Got != "\uff46\uff4f\uff4f" {
		t.Errorf("%+v", m.Unread)
	}
}
