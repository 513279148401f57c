package measure_test

import (
	"fmt"

	"creasefit/internal/measure"
)

func ExampleParse() {
	for _, text := range []string{"3 5/8 in", "3-5/8in", "9.21cm", "85,6mm"} {
		l, err := measure.Parse(text, measure.NoUnit, measure.ClearComma)
		fmt.Println(l.Nanometres(), err)
	}
	// Output:
	// 92075000 <nil>
	// 92075000 <nil>
	// 92100000 <nil>
	// 85600000 <nil>
}

func ExampleParseError() {
	_, err := measure.Parse("3 5/7 in", measure.NoUnit, measure.ClearComma)
	e := err.(*measure.ParseError)
	fmt.Println(e.Reason, "at", e.At)
	fmt.Println("try:", e.Hint)
	// Output:
	// denominator at 2
	// try: 3 23/32 in
}

func ExampleParseSize() {
	sheet, err := measure.ParseSize("8 1/2 x 11 in", measure.NoUnit, measure.ClearComma)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(sheet[0].Millimetres(), sheet[1].Millimetres())
	// Output: 215.9 279.4
}

func ExampleStep_Format() {
	eighth, _ := measure.ParseStep("1/8 in")
	half, _ := measure.ParseStep("0.5 mm")
	l := measure.MustParse("91.91 mm")
	fmt.Println(eighth.Format(eighth.Nearest(l)), "or", half.Format(half.Nearest(l)))
	fmt.Println(eighth.FormatURL(eighth.Up(l)))
	fmt.Println(eighth.Format(l))
	// Output:
	// 3 5/8 in or 92 mm
	// 3-5/8in
	// 91.91 mm
}

func ExampleLength_Rounded() {
	l := measure.MustParse("92.5 mm")
	fmt.Println(l.Inches(), l.Rounded(measure.Inch))
	// Output: 3.641732283464567 3.641732
}

func ExampleCoarsestMark() {
	step, ok := measure.CoarsestMark(measure.MustParse("3 3/4 in"), measure.Inch)
	fmt.Println(step, ok)
	// Output: 1/4 in true
}
