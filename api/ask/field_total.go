package ask

import (
	"strconv"

	"creasefit/internal/fault"
	"creasefit/internal/measure"
)

// Total is a field of a size of the contents: a length, or what several things or
// layers come to. Of named contents it may say how many there are of them.
type Total struct {
	Length
	more measure.Length // what is written of it beside
	them int64          // how often the named contents' size goes into it
}

func (t *Total) reset() {
	t.Length.reset()
	t.more, t.them = measure.Length{}, 0
}

func (t *Total) understand(r *Reading, f field) {
	total, err := measure.ParseTotal(f.text, r.named, r.decimal)
	if err != nil {
		r.reportParse(t.name(), f, err)
		return
	}
	if r.unit == measure.NoUnit {
		r.unit = total.Unit
	}
	t.Length.Length, t.more, t.them = total.Length, total.Length, total.Them
	if t.them == 0 {
		r.boundLength(t, f, total.Length)
	}
}

func (t *Total) appendURL(dst []byte, r *Reading, i int) []byte {
	if t.them == 0 {
		return t.Length.appendURL(dst, r, i)
	}
	dst = append(strconv.AppendInt(dst, t.them, 10), "+of+them"...)
	if t.more.Sign() > 0 {
		dst = measure.Finest(r.unit).AppendURL(append(dst, "+and+"...), t.more)
	}
	return dst
}

// many adds the size of as many of the named contents as there are, and says how
// many; none where the size says nothing of them. Where the contents are named, a
// width or height of another thing contradicts them.
func (t *Total) many(r *Reading, preset *Word, one measure.Length) int64 {
	n := t.name()
	switch {
	case t.them == 0:
		if t.Given && preset.Given && n.Name != "thickness" {
			r.rivals(t, preset, "the named contents have a "+n.Name+" of their own")
		}
		return 0
	case !preset.Given:
		r.conflict(t, "it is not said what there are several of", "name the contents, or write "+strconv.FormatInt(t.them, 10)+" of 60 mm")
	case one.IsZero():
		r.conflict(t, "the source of these contents states no "+n.Name, "write "+strconv.FormatInt(t.them, 10)+" of 1 mm")
	default:
		t.Length.Length = t.more.Add(one.Times(t.them))
		if all := t.Length.Length; all.Less(n.Least) || n.Greatest.Less(all) {
			r.Report(fault.Fault{Code: fault.OutOfRange, Field: n.Name, Value: t.Text, Detail: "all of them are larger than the greatest that is taken",
				Expected: n.expected(r.unit), Hint: "leave some of them out"}, "")
		}
	}
	return t.them
}
