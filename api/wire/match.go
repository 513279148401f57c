package wire

import (
	"errors"

	"creasefit/internal/fault"
	"creasefit/internal/measure"
	"creasefit/internal/solve"
)

// Matches is the answer of /v1/match.
type Matches struct {
	Unit   string   `json:"unit" validate:"required,oneof=in mm" example:"mm"`
	Count  int      `json:"count" validate:"required" example:"40"` // of all pairs
	Fits   int      `json:"fits" validate:"required" example:"3"`   // how many of them go together
	Ranked []Ranked `json:"ranked" validate:"required"`             // the best first
	// List is the name of the holders, to be sent instead of them as long as they
	// are remembered.
	List string `json:"list" validate:"required" example:"0f4a53e3a1c0b7d2"`
}

// Ranked is a holder of one thing, or a thing in one holder.
type Ranked struct {
	ID      string      `json:"id" validate:"required" example:"sleeve-4"`
	Fits    bool        `json:"fits" validate:"required"`
	Verdict string      `json:"verdict" validate:"required,oneof=snug easy loose slack tight refused" example:"easy"` // of the axis with the least room
	Room    []MatchRoom `json:"room" validate:"required"`
	Chance  float64     `json:"chance" validate:"required,min=0,max=1" example:"0.98"` // that it goes in
	Turned  bool        `json:"turned,omitempty"`                                      // with its width along the holder's height
	Why     []string    `json:"why" validate:"required"`                               // what keeps it out
}

// MatchRoom is how much longer the holder is than the thing.
type MatchRoom struct {
	Axis    string `json:"axis" validate:"required,oneof=width height thickness diagonal"`
	Between string `json:"between,omitempty" example:"lid over tray"` // two pieces of the holder
	Left    Length `json:"left" validate:"required"`                  // below zero by how much it is too short
}

// OfMatch is one pair.
func OfMatch(id string, m *solve.Match, unit measure.Unit) Ranked {
	r := Ranked{ID: id, Fits: m.Fits, Verdict: m.Verdict, Chance: round(m.Chance, 4), Turned: m.Turned, Why: append([]string(nil), m.Against...)}
	for _, room := range m.Rooms {
		left := exactIn(unit, room.Left)
		r.Room = append(r.Room, MatchRoom{room.Axis.String(), room.Between, left})
		if room.Left.Sign() < 0 {
			r.Why = append(r.Why, room.Left.Neg().Decimal(unit, 4)+" too little along the "+room.Axis.String())
		}
	}
	if m.Refused != nil {
		r.Verdict = "refused"
		var faults fault.Faults
		if errors.As(m.Refused, &faults) {
			r.Why = Each(faults, fault.Fault.Error)
		} else {
			r.Why = append(r.Why, m.Refused.Error())
		}
	}
	return r
}
