package solve

import (
	"fmt"
	"slices"
	"strings"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
)

// Measurements is what somebody read off a ruler or found on a page, for all
// pieces in their order.
type Measurements struct {
	Blanks  [][2]measure.Length // width and height of each piece
	Marks   []measure.Length    // the scores across the width, from the left
	Rises   []measure.Length    // the scores across the height, from the bottom
	Corners [][2]measure.Length // of the outlines of pieces that are not their whole blank, from the left and the bottom; may be none
	Depths  []measure.Length    // the slits and other sizes that lie on no edge, as far as no corner shows them
}

// ReadOff returns what somebody would read off the solution's pieces.
func (s *Solution) ReadOff() *Measurements {
	own := &Measurements{Blanks: make([][2]measure.Length, len(s.Pattern.Pieces))}
	for i := range s.Pattern.Pieces {
		own.Blanks[i] = [2]measure.Length{s.Pattern.Pieces[i].Width, s.Pattern.Pieces[i].Height}
	}
	var space [64]bool
	inStrip := append(space[:0], make([]bool, len(s.sizes))...)
	for _, strip := range s.plan.Strips {
		list := &own.Marks
		if strip.Across == pattern.Height {
			list = &own.Rises
		}
		*list = slices.Grow(*list, len(strip.Readings))
		var at measure.Length
		for i, reading := range strip.Readings {
			inStrip[reading] = true
			if at = at.Add(s.sizes[reading]); i < len(strip.Readings)-1 {
				*list = append(*list, at.Add(strip.Made(i)))
			}
		}
	}
	for i, size := range s.sizes {
		if !inStrip[i] {
			own.Depths = append(own.Depths, size)
		}
	}
	return own
}

// measure plans the request with the sizes that the measurements give to it,
// and returns them by reading.
func (r *Request) measure(own *Measurements) (*enclosure.Plan, []measure.Length, error) {
	plan, err := r.planned()
	if err != nil {
		return nil, nil, err
	}
	sizes, err := own.sizes(plan)
	if err != nil {
		return nil, nil, err
	}
	if r.Options, err = r.taken(plan, sizes); err != nil {
		return nil, nil, err
	}
	plan, err = r.planned()
	return plan, sizes, err
}

// taken returns the request's options with those that fix a reading taken from
// the measurements. An option that says something else is a conflict.
func (r *Request) taken(plan *enclosure.Plan, sizes []measure.Length) (map[string]enclosure.Value, error) {
	options := r.given()
	var faults fault.Faults
	seen := map[string]bool{}
	for i, name := range plan.Sources {
		if name == "" || seen[name] {
			continue
		}
		seen[name] = true
		if given, ok := r.Options[name]; ok && given.Length != sizes[i] && !r.measured[name] {
			faults = append(faults, fault.Fault{
				Code: fault.Conflict, Field: name, Value: given.Length.Plain(r.Unit),
				Detail: "the measurements say " + sizes[i].Plain(r.Unit), Hint: "leave " + name + " out: it is read off the measurements",
			})
		}
		options[name] = enclosure.Value{Length: sizes[i]}
	}
	r.measured = seen
	return options, faults.Err()
}

// sizes deals the measurements out to the readings. A reading that lies on
// several edges is taken from the first.
func (own *Measurements) sizes(plan *enclosure.Plan) ([]measure.Length, error) {
	sizes := make([]measure.Length, len(plan.Problem.Readings))
	placed := make([]bool, len(sizes))
	deal := dealer{own: own, sizes: sizes, placed: placed}
	deal.countBlanks(plan)
	for i := range plan.Strips {
		deal.strip(&plan.Strips[i])
	}
	if len(own.Corners) > 0 {
		deal.outline(plan, own.Corners)
	}
	var names []string
	for i, reading := range plan.Problem.Readings {
		if !placed[i] {
			names = append(names, reading.Name)
			sizes[i] = deal.next(&deal.depths, own.Depths)
		}
	}
	deal.leftOver("marks", deal.marks, len(own.Marks), "scores across the width, from the left")
	deal.leftOver("rises", deal.rises, len(own.Rises), "scores across the height, from the bottom")
	deal.leftOver("depths", deal.depths, len(own.Depths), further(names, len(own.Corners) > 0))
	return sizes, deal.faults.Err()
}

// further says which sizes are asked for that lie on no edge, and that the outline
// would do where it was not measured.
func further(names []string, corners bool) string {
	if len(names) == 0 {
		return "further sizes"
	}
	text := "further sizes: " + strings.Join(names, ", ")
	if !corners {
		text += "; or the corners of the outline, which show what is no cut of its own"
	}
	return text
}

// dealer walks through the measurements as the strips ask for them.
type dealer struct {
	own                  *Measurements
	sizes                []measure.Length
	placed               []bool
	marks, rises, depths int
	short                bool // some list was shorter than what was asked of it
	faults               fault.Faults
}

// countBlanks asks for one blank a piece.
func (d *dealer) countBlanks(plan *enclosure.Plan) {
	pieces := 0
	for _, s := range plan.Strips {
		pieces = max(pieces, s.Piece+1)
	}
	d.leftOver("blank", pieces, len(d.own.Blanks), "blanks, each width x height")
}

// strip turns the marks along one edge into the sizes between them.
func (d *dealer) strip(s *enclosure.Strip) {
	end, used, list, field := measure.Length{}, &d.marks, d.own.Marks, "marks"
	if s.Piece < len(d.own.Blanks) {
		end = d.own.Blanks[s.Piece][0]
	}
	if s.Across == pattern.Height {
		used, list, field = &d.rises, d.own.Rises, "rises"
		if s.Piece < len(d.own.Blanks) {
			end = d.own.Blanks[s.Piece][1]
		}
	}
	var from measure.Length
	for i, reading := range s.Readings {
		to := end
		if i < len(s.Readings)-1 {
			to = d.next(used, list).Sub(s.Made(i))
		}
		d.place(reading, to.Sub(from), field)
		if slices.Contains(s.Readings[:i], reading) && d.sizes[reading] != to.Sub(from) {
			d.wrong(field, "panels that must be equally wide are not", "a box with equal sides closes only if the marks are equally far apart")
		}
		from = to
	}
}

// place settles a reading; the first place counts.
func (d *dealer) place(reading int, size measure.Length, field string) {
	if size.Sign() <= 0 {
		d.wrong(field, "the marks must go up from the edge to the end of the blank", "measure all of them from the left or the bottom edge")
	}
	if !d.placed[reading] {
		d.placed[reading], d.sizes[reading] = true, size
	}
}

// wrong complains, once, of measurements that cannot be: of none where some are missing,
// whose places are empty.
func (d *dealer) wrong(field, detail, hint string) {
	if len(d.faults) == 0 && !d.short {
		d.faults = append(d.faults, fault.Fault{Code: fault.Impossible, Field: field, Detail: detail, Hint: hint})
	}
}

// next takes the next measurement of a list, zero once there are none.
func (d *dealer) next(used *int, list []measure.Length) measure.Length {
	*used++
	if *used > len(list) {
		d.short = true
		return measure.Length{}
	}
	return list[*used-1]
}

// leftOver complains of a list that is longer or shorter than it must be.
func (d *dealer) leftOver(field string, want, got int, what string) {
	if want == got {
		return
	}
	d.faults = append(d.faults, fault.Fault{
		Code: fault.Missing, Field: field, Detail: fmt.Sprintf("%d given where this construction has %d", got, want),
		Expected: fmt.Sprintf("%d %s", want, what), Hint: "GET the solution of this kind to see which sizes it has",
	})
}
