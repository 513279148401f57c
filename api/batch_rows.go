package api

import (
	"slices"
	"strconv"
	"strings"
	"sync"
	"unicode/utf8"

	"creasefit/api/tell"
	"creasefit/internal/fault"
)

// tableOutput writes a table: every row begins with the cells of the request's
// row, as they came, its number, and what is wrong with it. Behind them stand the
// rows of the answer's own table, or the values that columns point to in one row.
type tableOutput struct {
	source  *tableSource
	style   tell.Style
	columns []string // pointers; none for the answer's own table
	behind  []string // the headings of what stands behind the problem
}

// begin writes the header. The answer's own table is that of the first line.
func (o *tableOutput) begin(dst []byte, first lineCall) []byte {
	switch {
	case o.columns != nil:
		o.behind = o.columns
	case first != nil && first.columns() != nil:
		o.behind = first.columns()
	default:
		o.behind = tell.MeasurementColumns
	}
	if o.source.order.bare {
		return dst
	}
	if o.source.dialect.marked {
		dst = append(dst, byteOrderMark...)
	}
	return o.style.AppendRow(dst, slices.Concat(o.source.header, []string{"line", "problem"}, o.behind)...)
}

func (o *tableOutput) join(dst []byte, _ bool, a []byte) []byte { return append(dst, a...) }

// lead is what a row begins with.
func (o *tableOutput) lead(l *line, problem string) []byte {
	cells := slices.Concat(l.cells, make([]string, max(0, len(o.source.header)-len(l.cells))), []string{strconv.Itoa(l.number), problem})
	return utf8.AppendRune(o.style.AppendCells(nil, cells...), o.style.Separator)
}

func (o *tableOutput) answer(dst []byte, l *line, call lineCall, work func([]byte, lineForm) ([]byte, *problem)) ([]byte, *problem) {
	if o.columns != nil {
		return o.wide(dst, l, work)
	}
	if !slices.Equal(call.columns(), o.behind) {
		return dst, problemOf(fault.Faults{{Code: fault.Conflict, Field: "call", Value: l.call, Detail: "its answer is no table like that of the first line",
			Hint: "point to what you want with columns=/words in the address, or send such lines in a batch of their own"}})
	}
	style := o.style
	style.Lead = string(o.lead(l, ""))
	return work(dst, lineForm{rows: true, table: true, style: style})
}

// scratches are reused between answers of which only some values are told.
var scratches = sync.Pool{New: func() any { return &answerBuffer{make([]byte, 0, 16<<10)} }}

// wide appends one row with the values that the columns point to. What this
// answer leaves out is an empty cell; what looks like a mistake is said beside the
// others.
func (o *tableOutput) wide(dst []byte, l *line, work func([]byte, lineForm) ([]byte, *problem)) ([]byte, *problem) {
	scratch := scratches.Get().(*answerBuffer)
	defer scratches.Put(scratch)
	var p *problem
	if scratch.bytes, p = work(scratch.bytes[:0], lineForm{table: true}); p != nil {
		return dst, p
	}
	values, wrong := make([][]byte, len(o.columns)), ""
	for i, pointer := range o.columns {
		value, f := find(scratch.bytes, pointer)
		if values[i] = value; value == nil && !isLeftOut(scratch.bytes, pointer, f) {
			f.Field = "columns"
			wrong = problemOf(fault.Faults{f}).cellLine()
		}
	}
	dst = append(dst, o.lead(l, wrong)...)
	for i, value := range values {
		if i > 0 {
			dst = utf8.AppendRune(dst, o.style.Separator)
		}
		if value != nil {
			dst = tell.AppendCell(dst, value, o.style)
		}
	}
	return append(dst, "\r\n"...), nil
}

// isLeftOut reports whether a pointer that leads nowhere may be right all the
// same: it leads beyond the end of a list, or to a member within one that there is
// and like none of its own, since answers leave out what is not known.
func isLeftOut(answer []byte, pointer string, f fault.Fault) bool {
	first, _, deeper := strings.Cut(pointer[1:], "/")
	outer, _ := find(answer, "/"+first)
	return f.Expected == "" || strings.HasPrefix(f.Expected, "one of 0") || deeper && outer != nil && f.Hint == ""
}

// problem appends a row with what is wrong.
func (o *tableOutput) problem(dst []byte, l *line, p *problem) []byte {
	dst = append(dst, o.lead(l, p.cellLine())...)
	return append(append(dst, strings.Repeat(string(o.style.Separator), len(o.behind)-1)...), "\r\n"...)
}

// end adds a row that says why the table is not whole.
func (o *tableOutput) end(dst []byte, count, _ int, why string) []byte {
	if why == "" {
		return dst
	}
	return o.problem(dst, &line{number: count + 1}, &problem{detail: why})
}
