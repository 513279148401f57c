package enclosure

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
)

// MostPath is how many characters the path of an outline may have.
const MostPath = 2000

// pathFault is what is wrong with a path, and where.
type pathFault struct {
	at   int // the character, from 1
	what string
}

func (f *pathFault) Error() string { return fmt.Sprintf("at character %d %s", f.at, f.what) }

// pathReader reads one closed outline, written in the grammar of path data (W3C,
// Scalable Vector Graphics 2, section 9.3).
type pathReader struct {
	text    string
	next    int
	curves  []curve
	now     xy
	start   xy
	control xy   // of the curve before, for a smooth one after it
	before  byte // the command before, in capitals
	closed  bool
}

// numbersOf is how many numbers a command takes each time.
var numbersOf = map[byte]int{'M': 2, 'L': 2, 'H': 1, 'V': 1, 'C': 6, 'S': 4, 'Q': 4, 'T': 2, 'A': 7, 'Z': 0}

// readPath returns the curves of one outline, which ends where it begins.
func readPath(text string) ([]curve, error) {
	r := &pathReader{text: text}
	if len(text) > MostPath {
		return nil, &pathFault{MostPath + 1, "it is longer than " + strconv.Itoa(MostPath) + " characters"}
	}
	for r.spaces(); r.next < len(text); r.spaces() {
		if err := r.command(); err != nil {
			return nil, err
		}
	}
	switch {
	case len(r.curves) == 0:
		return nil, r.wrong("no line is drawn")
	case r.now != r.start && !r.closed:
		r.line(r.start)
	}
	return r.curves, nil
}

func (r *pathReader) wrong(what string) *pathFault { return &pathFault{r.next + 1, what} }

// spaces skips white space.
func (r *pathReader) spaces() {
	r.next = len(r.text) - len(strings.TrimLeft(r.text[r.next:], " \t\r\n\f"))
}

// numeral is a number of the grammar, at the beginning of a text.
var numeral = regexp.MustCompile(`^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?`)

// command reads a command with all its numbers.
func (r *pathReader) command() error {
	letter := r.text[r.next]
	name := letter &^ 0x20
	n, known := numbersOf[name]
	switch {
	case !known:
		return r.wrong("stands " + strconv.QuoteRune([]rune(r.text[r.next:])[0]) + ", which is none of M L H V C S Q T A Z or a number too many")
	case r.before == 0 && name != 'M':
		return r.wrong("the outline must begin with M")
	case r.before != 0 && name == 'M' || r.closed:
		return r.wrong("a second outline begins; an ornament has one")
	}
	relative := letter != name
	r.next++
	if name == 'Z' {
		r.closed, r.before = true, name
		r.line(r.start)
		return nil
	}
	for first := true; first || r.more(); first = false {
		numbers, err := r.numbers(name, n, first)
		if err != nil {
			return err
		}
		r.draw(name, relative, numbers)
		if r.before = name; name == 'M' {
			name = 'L'
		}
	}
	return nil
}

// more reports whether further numbers follow for the same command.
func (r *pathReader) more() bool {
	at := r.next
	r.spaces()
	if r.next < len(r.text) && strings.IndexByte(",+-.0123456789", r.text[r.next]) >= 0 {
		return true
	}
	r.next = at
	return false
}

// numbers reads so many numbers, with white space or one comma between them.
func (r *pathReader) numbers(name byte, n int, first bool) ([]float64, error) {
	numbers := make([]float64, n)
	for i := range numbers {
		r.spaces()
		if comma := r.next < len(r.text) && r.text[r.next] == ','; comma && (i > 0 || !first) {
			r.next++
			r.spaces()
		}
		long := len(numeral.FindString(r.text[r.next:]))
		if name == 'A' && (i == 3 || i == 4) && r.next < len(r.text) && (r.text[r.next] == '0' || r.text[r.next] == '1') {
			long = 1 // flags need nothing between them
		}
		value, err := strconv.ParseFloat(r.text[r.next:r.next+long], 64)
		if long == 0 || err != nil || math.Abs(value) > 1e6 {
			return nil, r.wrong(fmt.Sprintf("a number from -1000000 to 1000000 is missing, number %d of the %d that %c takes", i+1, n, name))
		}
		if name == 'A' && (i == 3 || i == 4) && value != 0 && value != 1 {
			return nil, r.wrong("a flag of an arc must be 0 or 1")
		}
		numbers[i] = value
		r.next += long
	}
	return numbers, nil
}
