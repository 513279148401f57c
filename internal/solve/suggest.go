package solve

import (
	"cmp"
	"context"
	"slices"
	"time"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/mail"
	"creasefit/internal/pattern"
)

// Wishes are what is wanted of an enclosure beside its fit. None of them keeps
// a kind out: those that keep more of them come first.
type Wishes struct {
	Reusable bool // it opens and closes without tearing or glue
	NoGlue   bool
	FewCuts  bool // the fewest cuts and scores first
	OneSheet bool // all of it comes out of one sheet of the request
	Post     *mail.Post
	Class    int           // of the post: this one or a cheaper one; -1 for any
	Within   time.Duration // for cutting and scoring; zero for no wish
}

// Wish names a wish on the wire.
type Wish string

// The wishes.
const (
	WishReusable Wish = "reusable"
	WishNoGlue   Wish = "no-glue"
	WishFewCuts  Wish = "few-cuts"
	WishOneSheet Wish = "one-sheet"
	WishMail     Wish = "mail"
	WishMinutes  Wish = "minutes"
)

// How long a hand takes to set a stop and to make one cut or score at it: from
// memory of bench work, to compare kinds by and for no wage.
const (
	settingTime = 40 * time.Second
	strokeTime  = 15 * time.Second
)

// Suggestion is what one kind comes to for a thing.
type Suggestion struct {
	Kind     *enclosure.Kind
	Solution *Solution    // nil if it does not work
	Why      fault.Faults // if it does not
	Missed   []Wish       // that it does not keep
	Strokes  int          // cuts and scores in all
	Work     time.Duration
	Sheets   int             // that one of it takes; zero if no sheet is named or it comes out of none
	Post     *mail.Judgement // nil unless a post was named
}

// Suggest asks some kinds about the contents, the paper and the tools of a
// request and puts those that suit best first: those that work; of these, those
// that keep the most wishes, that come out of the sheet, that are sure to go in;
// then those of the least work, and of the least paper. The error is the context's.
func Suggest(ctx context.Context, kinds []*enclosure.Kind, base *Request, w *Wishes) ([]Suggestion, error) {
	list := make([]Suggestion, len(kinds))
	for i, k := range kinds {
		r := *base
		if r.Kind = k; !k.Rolls() {
			r.Options = nil // they say no more than the shape of the contents
		}
		list[i].Kind = k
		if err := list[i].ask(ctx, &r, w); err != nil {
			return nil, err
		}
	}
	slices.SortStableFunc(list, func(a, b Suggestion) int { return a.compare(&b, w) })
	return list, nil
}

// ask solves for one kind. What keeps it from working is what a solve says.
func (g *Suggestion) ask(ctx context.Context, r *Request, w *Wishes) error {
	g.Why = r.unknown()
	if len(g.Why) > 0 {
		return nil
	}
	s, err := Solve(ctx, r)
	if err != nil {
		return g.Why.Add(err)
	}
	g.Solution = s
	for _, set := range s.Settings() {
		g.Strokes += len(set.Serves)
		g.Work += settingTime + strokeTime*time.Duration(len(set.Serves))
	}
	if w.Post != nil {
		piece := s.Mailed()
		g.Post = new(w.Post.Judge(&piece))
	}
	g.Sheets = s.SheetsForOne()
	g.Missed = g.misses(w)
	return nil
}

// unknown reports the sizes that the kind needs and the request does not have.
func (r *Request) unknown() fault.Faults {
	var faults fault.Faults
	for _, need := range r.Kind.Needs {
		if r.size(need).IsZero() {
			faults = append(faults, fault.Fault{Code: fault.Missing, Field: need, Detail: "the " + need + " of the contents is needed",
				Hint: "give " + need + ", or contents by name"})
		}
	}
	return faults
}

// misses lists the wishes that a kind which works does not keep.
func (g *Suggestion) misses(w *Wishes) []Wish {
	var missed []Wish
	miss := func(wish Wish, asked, kept bool) {
		if asked && !kept {
			missed = append(missed, wish)
		}
	}
	miss(WishReusable, w.Reusable, !g.Kind.Sealed)
	miss(WishNoGlue, w.NoGlue, !g.glued())
	miss(WishOneSheet, w.OneSheet, g.Sheets == 1)
	miss(WishMail, w.Post != nil, g.Post != nil && g.Post.Class != nil && (w.Class < 0 || g.class() <= w.Class))
	miss(WishMinutes, w.Within > 0, g.Work <= w.Within)
	return missed
}

// class is the place of the class that takes the piece among those of its post.
func (g *Suggestion) class() int {
	return slices.IndexFunc(g.Post.Post.Classes, func(c mail.Class) bool { return c.Name == g.Post.Class.Name })
}

// glued reports whether anything is glued.
func (g *Suggestion) glued() bool {
	p := &g.Solution.Pattern
	return len(p.Bonds) > 0 || slices.ContainsFunc(p.Pieces, func(q pattern.Piece) bool { return len(q.Glues) > 0 })
}

// Glued reports whether anything of a kind that works is glued.
func (g *Suggestion) Glued() bool { return g.Solution != nil && g.glued() }

// Beyond reports whether a blank is larger than the sheet of the request.
func (g *Suggestion) Beyond() bool {
	return g.Sheets == 0 && !g.Solution.Request.SheetWidth.IsZero()
}

// paper is the area of all blanks in square millimetres.
func (g *Suggestion) paper() float64 {
	var sum float64
	for i := range g.Solution.Pattern.Pieces {
		p := &g.Solution.Pattern.Pieces[i]
		sum += float64(p.Quantity) * area(p.Width, p.Height)
	}
	return sum
}

// doubtful counts how far a chance is from sure: 0 from the chance on that needs
// no warning, 1 from nine in ten, 2 from two in three, else 3.
func (g *Suggestion) doubtful() int {
	chance := g.Solution.Sure.Chance
	for i, least := range [...]float64{g.Solution.Request.enough(), 0.9, 2.0 / 3} {
		if chance >= least {
			return i
		}
	}
	return 3
}

// compare puts the kind that suits better first.
func (g *Suggestion) compare(o *Suggestion, w *Wishes) int {
	if g.Solution == nil || o.Solution == nil {
		return cmp.Compare(boolean(g.Solution == nil), boolean(o.Solution == nil))
	}
	work := cmp.Compare(g.Strokes, o.Strokes)
	if !w.FewCuts {
		work = 0
	}
	return cmp.Or(
		cmp.Compare(len(g.Missed), len(o.Missed)),
		cmp.Compare(boolean(g.Beyond()), boolean(o.Beyond())),
		cmp.Compare(boolean(g.inside()), boolean(o.inside())),
		work,
		cmp.Compare(g.doubtful(), o.doubtful()),
		cmp.Compare(g.Work, o.Work),
		cmp.Compare(g.paper(), o.paper()),
	)
}

// boolean is 1 for true, so that what is false comes first.
func boolean(b bool) int {
	if b {
		return 1
	}
	return 0
}

// inside reports whether it goes into what it is made for, not round it.
func (g *Suggestion) inside() bool { return g.Solution.Pattern.Cavity.Into }
