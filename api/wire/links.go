package wire

import (
	"encoding/json"
	"net/url"

	"creasefit/api/ask"
	"creasefit/internal/mail"
	"creasefit/internal/measure"
	"creasefit/internal/pattern"
	"creasefit/internal/sheet"
	"creasefit/internal/solve"
)

// Links lead on from a solution.
type Links struct {
	Self string `json:"self" validate:"required" example:"/v1/solve/slotted-band?unit=in"`
	Kind string `json:"kind" validate:"required" example:"/v1/kinds/slotted-band"`
	// Drawing and Guide are of the same request; a check has none.
	Drawing string `json:"drawing,omitempty" example:"/v1/drawing/slotted-band?unit=in"`
	Guide   string `json:"guide,omitempty" example:"/v1/guide/slotted-band?unit=in"`
	// Mail asks posts about the outside, without a mass: that of the contents is not known.
	Mail string `json:"mail,omitempty" example:"/v1/mail?unit=in&width=3-3/4in&height=5in&thickness=1/8in"`
	// Check judges the readings of the answer as they were cut, once those that came out otherwise are changed.
	Check string `json:"check,omitempty" example:"/v1/check/slotted-band?unit=in&blank=8-1/4inx1-3/4in"`
	// Yield is the cut plan of the pieces, if the request names a sheet.
	Yield string `json:"yield,omitempty" example:"/v1/yield?unit=in&sheet=letter&blank=8-1/4inx1-3/4in"`
}

// SelfLink is the canonical address of an answer.
type SelfLink struct {
	Self string `json:"self" validate:"required"`
}

// kindLinks lead on from what was solved of a kind, by name: to the drawing and
// the guide of the same request.
func kindLinks(kind string, a *Asked) Links {
	return Links{Self: a.Self, Kind: a.join("/v1/kinds/", kind), Drawing: a.join("/v1/drawing/", kind, a.Query), Guide: a.join("/v1/guide/", kind, a.Query)}
}

// solutionLinks lead on from a solution.
func solutionLinks(s *solve.Solution, a *Asked) Links {
	l := kindLinks(s.Request.Kind.Name, a)
	l.Mail = mailLink(a, s.Request.Unit, &s.Outside, s.MailTraits())
	l.Check = checkLink(s, a)
	if s.Yields != nil {
		l.Yield = yieldLink(s, a)
	}
	return l
}

// checkLink is the address of a check of what the answer says to set.
func checkLink(s *solve.Solution, a *Asked) string {
	own, unit := s.ReadOff(), s.Request.Unit
	finest := measure.Finest(unit)
	link := append(append(append(make([]byte, 0, 512), "/v1/check/"...), s.Request.Kind.Name...), a.Query...)
	for _, b := range own.Blanks {
		link = ask.AppendSize(append(link, "&blank="...), unit, b[0], b[1])
	}
	for _, list := range [...]struct {
		name  string
		sizes []measure.Length
	}{{"&marks=", own.Marks}, {"&rises=", own.Rises}, {"&depths=", own.Depths}} {
		for _, l := range list.sizes {
			link = finest.AppendURL(append(link, list.name...), l)
		}
	}
	return a.text(link)
}

// mailLink is the address of what posts make of the outside with what else is known
// of the piece. Its mass is left out: only that of the paper is known.
func mailLink(a *Asked, unit measure.Unit, o *solve.Outside, known mail.Trait) string {
	finest := measure.Finest(unit)
	link := append(append(make([]byte, 0, 128), "/v1/mail?unit="...), unit.String()...)
	link = finest.AppendURL(append(link, "&width="...), o.Width)
	link = finest.AppendURL(append(link, "&height="...), o.Height)
	link = finest.AppendURL(append(link, "&thickness="...), o.Thickness)
	for _, t := range [...]struct {
		trait mail.Trait
		name  string
	}{{mail.Rigid, "&rigid=yes"}, {mail.Uneven, "&uneven=yes"}, {mail.Box, "&box=yes"}} {
		if known&t.trait != 0 {
			link = append(link, t.name...)
		}
	}
	return a.text(link)
}

// linkedItem is a blank of an order as it stands in an address.
type linkedItem struct {
	Name  string `json:"name"`
	Blank string `json:"blank"`
	Count int    `json:"count"`
	Grain string `json:"grain,omitempty"`
}

// yieldLink is the address of the cut plan: as many as one sheet gives of a
// single piece, or one set of several.
func yieldLink(s *solve.Solution, a *Asked) string {
	link := string(a.AppendValue([]byte("/v1/yield?unit="+s.Request.Unit.String()+"&sheet="), "sheet"))
	if s.Request.Grain != sheet.AnySide {
		link += "&sheet_grain=" + s.Request.Grain.String()
	}
	link += "&ruler=" + s.Request.Ruler.FormatURL(s.Request.Ruler.Size())
	pieces := s.Pattern.Pieces
	for i := range pieces {
		item := linkedItem{pieces[i].Name, blankInLink(s, &pieces[i]), pieces[i].Quantity, ""}
		if s.Yields[i].Grain == solve.GrainAlong {
			item.Grain = solve.FoldSide(&pieces[i]).String()
		}
		if len(pieces) == 1 && item.Count == 1 {
			return link + item.single()
		}
		text, _ := json.Marshal(item) // texts and a number
		link += "&items=" + url.QueryEscape(string(text))
	}
	return link
}

// single is the only item of an order.
func (i linkedItem) single() string {
	names := "&name=" + url.QueryEscape(i.Name) + "&blank=" + i.Blank
	if i.Grain != "" {
		names += "&grain=" + i.Grain
	}
	return names
}

// blankInLink is the size of a piece's blank as it stands in an address.
func blankInLink(s *solve.Solution, p *pattern.Piece) string {
	finest := measure.Finest(s.Step.Unit())
	return finest.FormatURL(p.Width) + "x" + finest.FormatURL(p.Height)
}

// Yields is how the pieces come out of the request's sheet.
type Yields struct {
	Sheet  Blank        `json:"sheet" validate:"required"`
	Pieces []PieceYield `json:"pieces" validate:"required"`
}

// PieceYield is how one piece comes out of the sheet, in cuts from edge to
// edge. Of more than a hundred blanks the number is absent: the link counts
// them.
type PieceYield struct {
	Piece    string   `json:"piece" validate:"required" example:"band"`
	PerSheet *int     `json:"per_sheet,omitempty" example:"8"`
	Turned   *int     `json:"turned,omitempty" example:"2"` // so many lie with their width along the sheet's height
	Used     *float64 `json:"used,omitempty" example:"0.80"`
	Folds    string   `json:"folds,omitempty" validate:"omitempty,oneof=along across"` // how the main folds lie to the grain, if both are known
}

// yields is nil for a request without a sheet.
func yields(s *solve.Solution) *Yields {
	if s.Yields == nil {
		return nil
	}
	list := &Yields{Sheet: Blank{exact(s.Step, s.Request.SheetWidth), exact(s.Step, s.Request.SheetHeight)}}
	for i, y := range s.Yields {
		piece := PieceYield{Piece: s.Pattern.Pieces[i].Name, Folds: y.Grain.String()}
		if y.Counted {
			piece.PerSheet, piece.Turned, piece.Used = &y.PerSheet, &y.Turned, new(round(y.Used, 6))
		}
		list.Pieces = append(list.Pieces, piece)
	}
	return list
}
