package api

import (
	"net/http"
	"strconv"

	"creasefit/api/tell"
)

// batchOutput writes the answers of a batch.
type batchOutput interface {
	// begin begins the whole; first is the call of the first line, nil if it has
	// none.
	begin(dst []byte, first lineCall) []byte
	// join puts the next answer behind those before it.
	join(dst []byte, first bool, a []byte) []byte
	// answer appends one answer, which work appends in a form.
	answer(dst []byte, l *line, call lineCall, work func(dst []byte, as lineForm) ([]byte, *problem)) ([]byte, *problem)
	// problem appends what is wrong with a line.
	problem(dst []byte, l *line, p *problem) []byte
	// end says that this is all, or why it is not.
	end(dst []byte, count, failed int, why string) []byte
}

// jsonAnswer writes the answer to a line as an object.
type jsonAnswer struct{}

func (jsonAnswer) answer(dst []byte, l *line, _ lineCall, work func([]byte, lineForm) ([]byte, *problem)) ([]byte, *problem) {
	dst = strconv.AppendInt(appendLineHead(dst, l), http.StatusOK, 10)
	dst, p := work(append(dst, `,"answer":`...), lineForm{})
	return append(dst, '}'), p
}

func (jsonAnswer) problem(dst []byte, l *line, p *problem) []byte {
	dst = strconv.AppendInt(appendLineHead(dst, l), int64(p.kind.status), 10)
	return append(tell.AppendJSON(append(dst, `,"problem":`...), p.answer()), '}')
}

// appendLineHead appends the beginning of an answer up to its status.
func appendLineHead(dst []byte, l *line) []byte {
	dst = strconv.AppendInt(append(dst, `{"line":`...), int64(l.number), 10)
	if l.id != "" {
		dst = tell.AppendString(append(dst, `,"id":`...), l.id)
	}
	return append(dst, `,"status":`...)
}

// lineOutput writes one answer a line, and at the end how many there were.
type lineOutput struct{ jsonAnswer }

func (lineOutput) begin(dst []byte, _ lineCall) []byte { return dst }

func (lineOutput) join(dst []byte, _ bool, a []byte) []byte { return append(append(dst, a...), '\n') }

func (lineOutput) end(dst []byte, count, failed int, why string) []byte {
	dst = strconv.AppendBool(append(dst, `{"done":`...), why == "")
	dst = strconv.AppendInt(append(dst, `,"count":`...), int64(count), 10)
	dst = strconv.AppendInt(append(dst, `,"failed":`...), int64(failed), 10)
	if why != "" {
		dst = tell.AppendString(append(dst, `,"why":`...), why)
	}
	return append(dst, "}\n"...)
}

// arrayOutput writes the answers as one JSON array.
type arrayOutput struct{ jsonAnswer }

func (arrayOutput) begin(dst []byte, _ lineCall) []byte { return append(dst, '[') }

func (arrayOutput) join(dst []byte, first bool, a []byte) []byte {
	if !first {
		dst = append(dst, ',')
	}
	return append(dst, a...)
}

// end cuts an array off that is not whole: it has no place to say so.
func (arrayOutput) end(dst []byte, _, _ int, why string) []byte {
	if why != "" {
		panic(http.ErrAbortHandler)
	}
	return append(dst, ']')
}
