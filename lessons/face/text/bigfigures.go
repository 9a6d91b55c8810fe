package text

import "strings"

// bigFigures are figures five lines high, to be read from the back of a room.
var bigFigures = map[rune][5]string{
	'0': {"#####", "#   #", "#   #", "#   #", "#####"}, '1': {"  #  ", " ##  ", "  #  ", "  #  ", " ### "},
	'2': {"#####", "    #", "#####", "#    ", "#####"}, '3': {"#####", "    #", " ####", "    #", "#####"},
	'4': {"#   #", "#   #", "#####", "    #", "    #"}, '5': {"#####", "#    ", "#####", "    #", "#####"},
	'6': {"#####", "#    ", "#####", "#   #", "#####"}, '7': {"#####", "    #", "   # ", "  #  ", "  #  "},
	'8': {"#####", "#   #", "#####", "#   #", "#####"}, '9': {"#####", "#   #", "#####", "    #", "#####"},
	'.': {"  ", "  ", "  ", "  ", "##"}, ':': {"  ", "##", "  ", "##", "  "}, '-': {"   ", "   ", "###", "   ", "   "},
	'/': {"    #", "   # ", "  #  ", " #   ", "#    "}, ' ': {"   ", "   ", "   ", "   ", "   "},
}

// Big writes figures large; characters that have no large form are left out.
func Big(text string) string {
	var lines [5]strings.Builder
	for _, r := range text {
		figure, ok := bigFigures[r]
		if !ok {
			continue
		}
		for i := range lines {
			lines[i].WriteString(figure[i] + "  ")
		}
	}
	all := make([]string, len(lines))
	for i := range lines {
		all[i] = strings.TrimRight(lines[i].String(), " ")
	}
	return strings.Join(all, "\n")
}
