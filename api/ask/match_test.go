package ask

import "testing"

func TestEveryNameOfAMatch(t *testing.T) {
	recall := func(list string) ([]string, bool) {
		return []string{`{"id":"b","width":"4 in"}`}, list == "0123456789abcdef"
	}
	come := func(q *Match) any {
		return struct {
			What       []NamedThing
			Into       []Holder
			Turn, Only string
			Top        int
		}{q.What, q.Into, q.Turn.Word, q.Only.Word, q.Top.Count()}
	}
	const holder = `{"id":"a","width":"4 in"}`
	thing := func(path, value string) map[string]string {
		return map[string]string{"What[0].Thing." + path: nm(value)}
	}
	checkEffects(t, NewMatch(recall, "json"), "unit=in&width=3in&height=4in&thickness=1in&holders="+holder, come, []effect{
		{"unit", "mm", "", "", nil},
		{"contents", "id-1", "", "width height thickness", map[string]string{"What[0].Thing.Width": nm("85.6 mm"), "What[0].Thing.Height": nm("53.98 mm"), "What[0].Thing.Thickness": nm("0.76 mm"),
			"What[0].Thing.ThicknessTolerance.Low": "*", "What[0].Thing.ThicknessTolerance.High": "*"}},
		{"width", "2 in", "", "", thing("Width", "2 in")},
		{"height", "2 in", "", "", thing("Height", "2 in")},
		{"thickness", "2 in", "", "", thing("Thickness", "2 in")},
		{"contents_tolerance", "-0.03 in", "", "", map[string]string{"What[0].Thing.SizeTolerance.Low": nm("0.03 in"), "What[0].Thing.ThicknessTolerance.Low": nm("0.03 in")}},
		{"things", `{"id":"c","width":"5 in","height":"4 in","thickness":"1 in"}`, "", "width height thickness", map[string]string{"What[0].ID": "c", "What[0].Thing.Width": nm("5 in")}},
		{"holders", `{"id":"a","width":"5 in"}`, "", "", map[string]string{"Into[0].Inside.Width": nm("5 in")}},
		{"holders", `{"id":"x","width":"4 in","height":"5 in","thickness":"2 in","tolerance":"0.1 in"}`, "", "", map[string]string{"Into[0].ID": "x", "Into[0].Inside.Height": nm("5 in"),
			"Into[0].Inside.Thickness": nm("2 in"), "Into[0].Inside.Tolerance.Low": nm("0.1 in"), "Into[0].Inside.Tolerance.High": nm("0.1 in")}},
		{"list", "0123456789abcdef", "", "holders", map[string]string{"Into[0].ID": "b"}},
		{"turn", "yes", "", "", map[string]string{"Turn": "yes"}},
		{"only", "fits", "", "", map[string]string{"Only": "fits"}},
		{"top", "3", "", "", map[string]string{"Top": "3"}},
	})
}
