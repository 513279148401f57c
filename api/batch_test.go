package api

import (
	"bufio"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"runtime"
	"strings"
	"testing"
	"time"

	"github.com/labstack/echo/v4"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/ask"
	"creasefit/api/wire"
)

// batchLine is one answer of a batch.
type batchLine struct {
	Line    int             `json:"line"`
	ID      string          `json:"id"`
	Status  int             `json:"status"`
	Answer  json.RawMessage `json:"answer"`
	Problem *wire.Problem   `json:"problem"`
	Done    bool            `json:"done"`
	Count   int             `json:"count"`
	Failed  int             `json:"failed"`
}

// cardLine is a request of the slotted band for a batch, with the given width.
func cardLine(id int, width string) string {
	return fmt.Sprintf(`{"id":"p%d","call":"/v1/solve/slotted-band","unit":"in","width":"%s","thickness":0.09,"caliper":0.012}`, id, width)
}

func postBatch(t *testing.T, media, body string) answer {
	t.Helper()
	return call(t, shared(), http.MethodPost, "/v1/batch", body, "Content-Type", media)
}

// readLines decodes an answer of lines.
func readLines(t *testing.T, text string) []batchLine {
	t.Helper()
	var lines []batchLine
	for l := range strings.Lines(text) {
		var line batchLine
		require.NoError(t, json.Unmarshal([]byte(l), &line), l)
		lines = append(lines, line)
	}
	return lines
}

func TestBatchAnswersEveryLineInOrder(t *testing.T) {
	body := strings.Join([]string{
		cardLine(1, "3 1/2"), `{"id":"x","call":"/v1/solve/nothing"}`, "{broken", "", cardLine(4, "3 5/7"),
		`{"call":"/v1/ruler","length":["92.1 mm","1 in"]}`, `{"id":7,"call":"/v1/stock","grammage":270}`, `[1]`, cardLine(8, "4"),
	}, "\n")
	lines := readLines(t, postBatch(t, mediaLines, body).ok().Body.String())
	var statuses []int
	for i, l := range lines[:len(lines)-1] {
		assert.Equal(t, i+1, l.Line, "order kept")
		statuses = append(statuses, l.Status)
	}
	assert.Equal(t, []int{200, 404, 400, 400, 200, 200, 400, 200}, statuses)
	assert.Equal(t, "7", lines[5].ID, "an id passes through")
	assert.Contains(t, lines[1].Problem.Errors[0].Expected, "/v1/solve/")
	last := lines[len(lines)-1]
	assert.True(t, last.Done)
	assert.Equal(t, []int{8, 4}, []int{last.Count, last.Failed})
}

// TestBatchAnswersAsTheCallsDo names every calculation of the specification in
// a line, and compares its answer with that of a call of its own.
func TestBatchAnswersAsTheCallsDo(t *testing.T) {
	var body strings.Builder
	var alone []string
	for _, spec := range CallSpecs() {
		if spec.Body == "" {
			continue // a list, not a calculation
		}
		fmt.Fprintf(&body, "{\"call\":%q,%s\n", spec.Path, spec.Body[1:])
		path := spec.Path
		if strings.HasPrefix(path, "/v1/drawing/") {
			path += ".fold" // the one format of a drawing that is JSON
		}
		alone = append(alone, postJSON(t, path, spec.Body).ok().Body.String())
	}
	lines := readLines(t, postBatch(t, mediaLines, body.String()).ok().Body.String())
	require.Len(t, lines, len(alone)+1)
	for i, want := range alone {
		assert.JSONEq(t, want, string(lines[i].Answer))
	}
	assert.Equal(t, 0, lines[len(alone)].Failed)
}

// TestBatchKnowsEveryCalculation posts nothing to every path of the
// specification: those that take a body are calculations, and lines name them.
func TestBatchKnowsEveryCalculation(t *testing.T) {
	for _, spec := range CallSpecs() {
		_, known := shared().batches.lines[spec.Path]
		assert.Equal(t, spec.Body != "", known, spec.Path)
	}
}

// orderLine is an order of two blanks from sheets of the given size.
func orderLine(sheet string) string {
	return fmt.Sprintf(`{"id":"order","call":"/v1/yield","effort_ms":10000,"unit":"in","sheet":"%s","items":[{"blank":"8 1/4 x 1 3/4","count":25},{"blank":"3 x 2","count":40}]}`, sheet)
}

// TestBatchPlansOrders mixes orders with other lines: each keeps its place and
// its own faults.
func TestBatchPlansOrders(t *testing.T) {
	lines := readLines(t, postBatch(t, mediaLines, strings.Join([]string{
		cardLine(1, "4"), orderLine("12 x 12"), cardLine(3, "5"), orderLine("8 x 8"),
		strings.Replace(orderLine("12 x 12"), `"unit"`, `"format":"svg","unit"`, 1), `{"call":"/v1/drawing/band","format":"png","unit":"in","width":3,"thickness":0.1,"caliper":0.01}`,
	}, "\n")).ok().Body.String())
	var statuses []int
	for _, l := range lines[:len(lines)-1] {
		statuses = append(statuses, l.Status)
	}
	assert.Equal(t, []int{200, 200, 200, 400, 200, 400}, statuses)
	var plan wire.Yield
	require.NoError(t, json.Unmarshal(lines[1].Answer, &plan))
	assert.Positive(t, plan.Sheets)
	assert.Equal(t, "items[0].blank", lines[3].Problem.Errors[0].Name)
	assert.Contains(t, string(lines[4].Answer), `"\u003csvg `)
	assert.Equal(t, "format", lines[5].Problem.Errors[0].Name)
}

// TestBatchDraws: a drawing in a line is that of the call alone, as text; a page of
// another origin may send lines as plain text.
func TestBatchDraws(t *testing.T) {
	const names = `"unit":"in","width":3,"thickness":0.1,"caliper":0.01,"theme":"dark"}`
	alone := postJSON(t, "/v1/drawing/band", `{"format":"svg",`+names).ok().Body.String()
	for _, media := range []string{mediaLines, "text/plain;charset=UTF-8"} {
		lines := readLines(t, postBatch(t, media, `{"call":"/v1/drawing/band","format":"svg",`+names).ok().Body.String())
		var drawn string
		require.NoError(t, json.Unmarshal(lines[0].Answer, &drawn))
		assert.Equal(t, alone, drawn, media)
	}
	table := postBatch(t, "text/csv", "call,format,unit,width,thickness,caliper\n/v1/drawing/band,svg,in,3,0.1,0.01\n").ok().Body.String()
	assert.Contains(t, table, "format", "a table takes no pictures")
	assert.NotContains(t, table, "<svg")
}

// longCall is a calculation that takes its time.
type longCall struct{}

func (longCall) words() []string   { return nil }
func (longCall) columns() []string { return nil }
func (longCall) lasting() bool     { return true }

func (longCall) appendAnswer(_ *host, _ echo.Context, _ func(*ask.Reading), _ lineForm, dst []byte) ([]byte, *problem) {
	time.Sleep(flushTime)
	return append(dst, "{}"...), nil
}

// TestBatchDoesNotHoldAnswersBack works on a line and on many that take long:
// each processor takes no second long one before what is ready is sent.
func TestBatchDoesNotHoldAnswersBack(t *testing.T) {
	s := quiet()
	s.batches.lines["/v1/long"] = longCall{}
	b := &batch{batches: s.batches, c: s.echo.NewContext(newRequest(http.MethodPost, "/v1/batch", "", nil), nil), output: lineOutput{}}
	body := cardLine(1, "4") + "\n" + strings.Repeat(`{"call":"/v1/long"}`+"\n", 100)
	lines, _, err := (&lineSource{in: bufio.NewReader(strings.NewReader(body)), usual: usualLine{s.batches, &batchOrder{}}}).chunk(nil)
	require.NoError(t, err)
	done := b.work(lines)
	assert.GreaterOrEqual(t, done, 1)
	assert.LessOrEqual(t, done, 1+runtime.GOMAXPROCS(0))
	for i := range done {
		assert.Contains(t, string(b.answers[i].bytes), fmt.Sprintf(`{"line":%d,`, i+1))
	}
}

func TestBatchOfAnArray(t *testing.T) {
	a := postBatch(t, "application/json", "["+cardLine(1, "3 1/2")+","+cardLine(2, "-1")+"]").ok()
	var answers []batchLine
	require.NoError(t, json.Unmarshal(a.Body.Bytes(), &answers))
	require.Len(t, answers, 2)
	assert.Equal(t, []int{200, 400}, []int{answers[0].Status, answers[1].Status})
	many := "[" + strings.Repeat(`{},`, mostArray) + "{}]"
	assert.Equal(t, "too-many", postBatch(t, "application/json", many).problem(http.StatusBadRequest).Errors[0].Code)
	postBatch(t, "application/json", `{"call":"/v1/ruler"}`).problem(http.StatusBadRequest)
	postBatch(t, "text/html", "x").problem(http.StatusUnsupportedMediaType)
}

// TestBatchRefusesLongLines sends a line and a row that no limit but the
// batch's own would end.
func TestBatchRefusesLongLines(t *testing.T) {
	long := strings.Repeat("x", 3*mostLine)
	lines := readLines(t, postBatch(t, mediaLines, `{"call":"`+long+"\"}\n"+cardLine(2, "4")).ok().Body.String())
	assert.Equal(t, []int{413, 200}, []int{lines[0].Status, lines[1].Status})
	table := postBatch(t, mediaCSV, "id,call\r\n1,\""+long+"\"\r\n").ok().Body.String()
	assert.Contains(t, table, "more than 65536 bytes")
}

// TestBatchAnswersWhileItReads sends a line and waits for its answer before it
// sends the next one.
func TestBatchAnswersWhileItReads(t *testing.T) {
	url := listen(t, shared().Handler())
	reader, writer := io.Pipe()
	request, err := http.NewRequestWithContext(context.Background(), http.MethodPost, url+"/v1/batch", reader)
	require.NoError(t, err)
	request.Header.Set("Content-Type", mediaLines)
	go func() { _, _ = io.WriteString(writer, cardLine(0, "4")+"\n") }()
	response, err := http.DefaultClient.Do(request)
	require.NoError(t, err)
	defer response.Body.Close()
	answers := bufio.NewReader(response.Body)
	for i := range 3 {
		text, err := answers.ReadString('\n')
		require.NoError(t, err)
		assert.Contains(t, text, fmt.Sprintf(`"id":"p%d","status":200`, i))
		_, err = io.WriteString(writer, cardLine(i+1, "4")+"\n")
		require.NoError(t, err)
	}
	require.NoError(t, writer.Close())
	rest, err := io.ReadAll(answers)
	require.NoError(t, err)
	assert.Contains(t, string(rest), `"done":true,"count":4,"failed":0`)
}

// TestBatchStopsWhenTheCallerIsGone hangs up in the middle.
func TestBatchStopsWhenTheCallerIsGone(t *testing.T) {
	s := quiet()
	url := listen(t, s.Handler())
	ctx, cancel := context.WithCancel(context.Background())
	reader, writer := io.Pipe()
	defer writer.Close()
	request, err := http.NewRequestWithContext(ctx, http.MethodPost, url+"/v1/batch", reader)
	require.NoError(t, err)
	request.Header.Set("Content-Type", mediaLines)
	go func() { _, _ = io.WriteString(writer, cardLine(0, "4")+"\n") }()
	response, err := http.DefaultClient.Do(request)
	require.NoError(t, err)
	_, err = bufio.NewReader(response.Body).ReadString('\n')
	require.NoError(t, err)
	cancel()
	response.Body.Close()
	assert.Eventually(t, func() bool { return s.cheap.State().Free == freeCheap() && runningBatches() == 0 }, 5*time.Second, 10*time.Millisecond)
}

// runningBatches counts the goroutines that run a batch.
func runningBatches() int {
	stacks := make([]byte, 1<<20)
	return strings.Count(string(stacks[:runtime.Stack(stacks, true)]), "(*batch).run(")
}

// BenchmarkBatch measures lines a second of a batch over loopback beside what
// reading, solving and writing the same lines takes in the process, both on
// all processors, in turns.
func BenchmarkBatch(b *testing.B) {
	s := quiet()
	url := listen(b, s.Handler())
	const lines = 2000
	var body strings.Builder
	for i := range lines {
		body.WriteString(cardLine(i, fmt.Sprintf("%d %d/8", 3+i%5, i%7+1)) + "\n")
	}
	var alone, streamed spent
	for b.Loop() {
		alone.add(func() { solveAlone(s, body.String()) })
		streamed.add(func() {
			response, err := http.Post(url+"/v1/batch", mediaLines, strings.NewReader(body.String()))
			require.NoError(b, err)
			_, err = io.Copy(io.Discard, response.Body)
			require.NoError(b, err)
			response.Body.Close()
		})
	}
	b.ReportMetric(alone.wall/streamed.wall, "batch-of-alone")
	b.ReportMetric(float64(b.N*lines)/streamed.wall, "lines/s")
}

// solveAlone answers the lines in the process, without HTTP.
func solveAlone(s *Service, body string) {
	b := &batch{batches: s.batches, c: s.echo.NewContext(newRequest(http.MethodPost, "/v1/batch", "", nil), nil), output: lineOutput{}}
	source := &lineSource{in: bufio.NewReaderSize(strings.NewReader(body), mostLine), usual: usualLine{s.batches, &batchOrder{}}}
	for more := true; more; {
		var lines []line
		lines, more, _ = source.chunk(nil)
		for rest := lines; len(rest) > 0; rest = rest[b.work(rest):] {
		}
	}
}
