package verify

import (
	"fmt"
	"reflect"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/internal/measure"
	"creasefit/internal/sheet"
	"creasefit/internal/sheet/sheettest"
)

// leaves calls each with every number, truth and length below a value, and the name of
// its field; undo puts it back.
func leaves(v reflect.Value, name string, each func(name string, change func() (undo func()))) {
	switch {
	case v.Type() == reflect.TypeFor[measure.Length]():
		each(name, func() func() {
			before := v.Interface().(measure.Length)
			v.Set(reflect.ValueOf(before.Add(measure.Sixtyfourths(4))))
			return func() { v.Set(reflect.ValueOf(before)) }
		})
	case v.Kind() == reflect.Pointer && !v.IsNil():
		leaves(v.Elem(), name, each)
	case v.Kind() == reflect.Slice:
		for i := range v.Len() {
			leaves(v.Index(i), name, each)
		}
	case v.Kind() == reflect.Struct:
		for i := range v.NumField() {
			leaves(v.Field(i), fmt.Sprint(v.Type().Name(), ".", v.Type().Field(i).Name), each)
		}
	case v.Kind() == reflect.Bool:
		each(name, func() func() {
			v.SetBool(!v.Bool())
			return func() { v.SetBool(!v.Bool()) }
		})
	case v.CanInt():
		each(name, func() func() { v.SetInt(v.Int() + 1); return func() { v.SetInt(v.Int() - 1) } })
	case v.CanUint():
		each(name, func() func() { v.SetUint(1 - v.Uint()); return func() { v.SetUint(1 - v.Uint()) } })
	case v.CanFloat():
		each(name, func() func() { before := v.Float(); v.SetFloat(before + 1); return func() { v.SetFloat(before) } })
	}
}

// unverified are the fields that may change unseen, and why.
var unverified = map[string]string{
	"Answer.Settled": "says what more time would do",
	"Answer.Proven":  "where nothing is counted, whether the grid was fine enough",
	"Step.Turned":    "a part that is halved is measured from either end",
	"Node.At":        "of a leaf, which has no cut", "Node.Cut": "of a leaf, which has no cut",
	"Node.Item": "of a cut, which is no blank", "Node.Turned": "of a cut, which is no blank",
	"Step.Parts": "a part may have any number, here in all steps at once", "Step.Rest": "a part may have any number, here in all steps at once",
}

// richOrders have together all that an order may have.
func richOrders(t *testing.T) map[string]sheet.Order {
	in := func(text string) measure.Length { return sheettest.Inches(t, text) }
	orders := map[string]sheet.Order{"tea": sheettest.TeaOrder(t), "market": marketOrder(t), "papers": sheettest.TeaOrder(t), "one": sheettest.TeaOrder(t), "mix": sheettest.TeaOrder(t)}
	tea := orders["tea"]
	tea.Margin, tea.Kerf, tea.Sheets[0].Price = in("1/4"), in("1/16"), 3
	orders["tea"] = tea
	papers := orders["papers"]
	papers.Minimize, papers.Sheets = sheet.LeastCost, []sheet.Stock{
		{Width: in("12"), Height: in("12"), Grain: sheet.AlongHeight, Paper: "kraft", Price: 35},
		{Width: in("9"), Height: in("12"), Paper: "ivory", Price: 50}, {Width: in("6"), Height: in("9"), Paper: "ivory", Available: 2, Offcut: true},
	}
	for i, paper := range []string{"kraft", "kraft", "ivory"} {
		papers.Items[i].Paper = paper
	}
	papers.Items[2].Spares, papers.Items[2].Priority = 2, 1
	orders["papers"] = papers
	for _, name := range []string{"one", "mix"} {
		o := orders[name]
		for i := range o.Items {
			o.Items[i].Count = 0
		}
		orders[name] = o
	}
	one := orders["one"]
	one.Items = one.Items[:1]
	orders["one"] = one
	return orders
}

// Every number, truth and length of an answer is changed alone: the verifier sees all
// but those that are listed above, which it does not see somewhere.
func TestEveryFieldIsVerified(t *testing.T) {
	unseen := map[string]bool{}
	for order, o := range richOrders(t) {
		a := planned(t, o)
		changed := 0
		leaves(reflect.ValueOf(&a).Elem(), "Answer", func(name string, change func() func()) {
			changed++
			undo := change()
			if Plan(o, a) == nil {
				unseen[name] = true
				assert.NotEmpty(t, unverified[name], "%s of %s was changed and nobody saw it", name, order)
			}
			undo()
		})
		require.NoError(t, Plan(o, a), "all changes are undone")
		assert.Greater(t, changed, 100, order)
	}
	assert.Len(t, unseen, len(unverified), "a field that is seen by now is off the list: %v", unseen)
}

// Every entry of every list of an answer is left out and, alone, given twice: the verifier
// sees it, but for warnings, which say what no cut does.
func TestEveryEntryIsVerified(t *testing.T) {
	for order, o := range richOrders(t) {
		a := planned(t, o)
		lists := 0
		entries(reflect.ValueOf(&a).Elem(), "Answer", func(name string, list reflect.Value) {
			whole := list.Interface()
			for i := range list.Len() {
				lists++
				list.Set(reflect.AppendSlice(list.Slice3(0, i, i), list.Slice(i+1, list.Len())))
				assert.Error(t, Plan(o, a), "%s of %s without entry %d", name, order, i)
				list.Set(reflect.ValueOf(whole))
				list.Set(reflect.Append(list.Slice3(0, list.Len(), list.Len()), list.Index(i)))
				assert.Error(t, Plan(o, a), "%s of %s with entry %d twice", name, order, i)
				list.Set(reflect.ValueOf(whole))
			}
		})
		require.NoError(t, Plan(o, a), "all changes are undone")
		assert.Greater(t, lists, 30, order)
	}
}

// entries calls each with every list below a value, and its name.
func entries(v reflect.Value, name string, each func(name string, list reflect.Value)) {
	switch {
	case v.Kind() == reflect.Slice:
		each(name, v)
		for i := range v.Len() {
			entries(v.Index(i), name, each)
		}
	case v.Kind() == reflect.Struct && v.Type() != reflect.TypeFor[measure.Length]():
		for i := range v.NumField() {
			entries(v.Field(i), fmt.Sprint(v.Type().Name(), ".", v.Type().Field(i).Name), each)
		}
	}
}
