package main

import (
	"net/http/httptest"
	"net/url"
	"strings"
)

// batchExamples is a request in each of the forms that a batch takes.
var batchExamples = map[string]string{
	"application/x-ndjson": `{"id":"card","call":"/v1/solve/slotted-band","unit":"in","width":"3 1/2","thickness":0.09,"caliper":0.012,"show":"step"}` + "\n" +
		`{"id":"mark","call":"/v1/ruler","length":"92.1 mm","show":"unit"}` + "\n" +
		`{"id":"order","call":"/v1/yield","unit":"in","sheet":"12 x 12","items":[{"name":"band","blank":"8 1/4 x 1 3/4","count":25}],"show":"sheets,proven"}` + "\n",
	"application/json": `[{"id":"mark","call":"/v1/ruler","length":"92.1 mm","show":"unit"}]`,
	"text/csv": "id,call,unit,width,thickness,caliper,sheet,blank,count\r\ncard,/v1/solve/band,in,3-1/2,0.09,0.012,,,\r\n" +
		"sleeve,/v1/solve/sleeve,in,3-1/2,0.5,0.012,,,\r\n",
	"text/tab-separated-values": "sku\ttitle\tcall\tunit\twidth\tthickness\tcaliper\r\nT-1\tTasting cards\t/v1/solve/band\tmm\t89,5\t2,5\t0,3\r\n",
}

// batchNames are values of the names that a batch takes in its address.
var batchNames = map[string]string{"call": "/v1/solve", "kind": "slotted-band", "columns": "/pieces/0/blank/width/reading,/sure/chance", "header": "0"}

// describeBatch adds the forms of a batch, each with an example and its real
// answer.
func (p *patch) describeBatch() {
	post := p.paths["/v1/batch"].(object)["post"].(object)
	for _, parameter := range asList(post["parameters"]) {
		q := parameter.(object)
		q["example"] = batchNames[q["name"].(string)]
	}
	body := post["requestBody"].(object)["content"].(object)
	answers := post["responses"].(object)["200"].(object)["content"].(object)
	clear(body)
	clear(answers)
	for media, example := range batchExamples {
		schema := object{"type": "string"}
		if isJSON(media) {
			schema = object{"type": "array", "items": object{"type": "object", "additionalProperties": true}}
		}
		r := httptest.NewRequest("POST", "/v1/batch", strings.NewReader(example))
		r.Header.Set("Content-Type", media)
		asked := any(example)
		if isJSON(media) {
			asked = decoded([]byte(example))
		}
		body[media] = object{"schema": schema, "example": asked}
		answers[media] = object{"schema": schema, "example": p.send(r, media)}
	}
	body["text/plain"] = body["application/x-ndjson"]
	p.describeAddress(p.paths["/v1/batch"].(object)["get"].(object))
}

// describeAddress adds values of the names of a batch in an address, and its answer.
func (p *patch) describeAddress(get object) {
	lines := []string{`{"id":"size","call":"solve","show":"step"}`, `{"id":"fold","call":"solve","show":"sure","fit":"loose"}`}
	for _, parameter := range asList(get["parameters"]) {
		q := parameter.(object)
		if q["name"] == "lines" {
			q["example"] = lines
		} else {
			q["example"] = strings.TrimPrefix(batchNames[q["name"].(string)], "/v1/")
		}
	}
	names := url.Values{"lines": lines, "kind": {"slotted-band"}, "contents": {"tasting-cards"}, "stock": {"index-110"}}
	answer := p.send(httptest.NewRequest("GET", "/v1/batch?"+names.Encode(), nil), "application/x-ndjson")
	success := get["responses"].(object)["200"].(object)
	success["content"] = object{"application/x-ndjson": object{"schema": object{"type": "string"}, "example": answer}}
	p.named["/v1/batch"] = true
	responses := get["responses"].(object)
	responses["200"], responses["304"] = p.share("responses", "AnswerInAddress", "/v1/batch", success), object{"description": "Not Modified"}
}
