package api

import (
	"strings"

	"creasefit/internal/measure"
	"creasefit/internal/solve"
)

// appendCheck appends a check as JSON.
func appendCheck(dst []byte, c *solve.Check, x *answering) []byte {
	q := c.Request
	dst = append(append(append(dst, `{"kind":"`...), q.Kind.Name...), `","unit":"`...)
	dst = append(append(dst, q.Unit.String()...), `","given":`...)
	dst = x.appendGiven(dst)
	dst = appendBool(append(dst, `,"works":`...), c.Works)
	dst = appendString(append(dst, `,"words":`...), checkWords(c))
	dst = appendClosures(append(dst, `,"closures":`...), q.Ruler, c.Closures)
	dst = appendLimits(append(dst, `,"limits":`...), q.Ruler, c.Windows)
	dst = appendFits(append(dst, `,"fit":`...), q.Ruler, c.Fits)
	dst = appendProof(append(dst, `,"proof":`...), &c.Proof)
	dst = appendTexts(append(dst, `,"findings":`...), c.Findings)
	dst = appendChanges(append(dst, `,"mend":`...), q.Ruler, c.Mend)
	dst = appendGreatest(append(dst, `,"greatest":`...), q.Ruler, c.Greatest)
	dst = x.appendWarnings(append(dst, `,"warnings":`...), c.Warnings)
	dst = appendString(append(dst, `,"links":{"self":`...), string(x.Link(x.path)))
	return append(append(append(dst, `,"kind":"/v1/kinds/`...), q.Kind.Name...), `"}}`...)
}

// checkWords says in a sentence or two what a check comes to.
func checkWords(c *solve.Check) string {
	var fits []string
	for _, f := range c.Fits {
		fits = append(fits, f.Axis.String()+" "+f.Verdict)
	}
	contents := strings.Join(fits, ", ")
	switch {
	case c.Works:
		return "It closes, and the contents go in: " + contents + "."
	case c.Mended && len(c.Mend) > 0:
		return "It does not work as measured (" + contents + "). The smallest change that mends it is listed."
	default:
		return "It does not work as measured (" + contents + "), and no readings of this ruler near it would."
	}
}

// appendClosures appends what must add up and by how much it does not.
func appendClosures(dst []byte, step measure.Step, closures []solve.Closure) []byte {
	dst = append(dst, '[')
	for i, c := range closures {
		dst = appendString(append(comma(dst, i), `{"name":`...), c.Name)
		dst = append(appendExact(append(dst, `,"off":`...), step, c.Off), '}')
	}
	return append(dst, ']')
}

// appendLimits appends the limits that are no clearances.
func appendLimits(dst []byte, step measure.Step, windows []solve.Window) []byte {
	dst = append(dst, '[')
	for i, w := range windows {
		dst = appendString(append(comma(dst, i), `{"name":`...), w.Name)
		dst = appendRange(append(dst, `,"allowed":`...), step, w.Allowed.Min, w.Allowed.Max)
		dst = append(appendExact(append(dst, `,"value":`...), step, w.Value), '}')
	}
	return append(dst, ']')
}

// appendChanges appends the sizes to change.
func appendChanges(dst []byte, step measure.Step, changes []solve.Change) []byte {
	dst = append(dst, '[')
	for i, c := range changes {
		dst = appendString(append(comma(dst, i), `{"name":`...), c.Name)
		dst = appendExact(append(dst, `,"from":`...), step, c.From)
		dst = append(appendExact(append(dst, `,"to":`...), step, c.To), '}')
	}
	return append(dst, ']')
}

// appendGreatest appends the greatest contents, without the sizes that nothing
// bounds.
func appendGreatest(dst []byte, step measure.Step, g solve.Greatest) []byte {
	dst = append(dst, '{')
	from := len(dst)
	for _, side := range []struct {
		name string
		size measure.Length
	}{{"width", g.Width}, {"height", g.Height}, {"thickness", g.Thickness}} {
		if side.size.Sign() > 0 {
			dst = appendExact(appendMember(dst, from, side.name), step, side.size)
		}
	}
	return append(dst, '}')
}

// appendTexts appends a list of sentences.
func appendTexts(dst []byte, texts []string) []byte {
	dst = append(dst, '[')
	for i, text := range texts {
		dst = appendString(comma(dst, i), text)
	}
	return append(dst, ']')
}
