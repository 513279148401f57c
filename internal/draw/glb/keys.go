package glb

import (
	"encoding/binary"
	"math"
)

func (s *scene) floats(values []float64) {
	for _, v := range values {
		s.data = binary.LittleEndian.AppendUint32(s.data, math.Float32bits(tidy(v)))
	}
}

// output is the accessor of some keys of a property that begin at an offset.
func (s *scene) output(p property, offset, count int) int {
	return s.add(accessor{View: keyView, Offset: offset, Component: float, Count: count, Type: p.kind})
}

// times returns the accessor of times, which many tracks have in common.
func (s *scene) times(at []float64) int {
	begin := len(s.data)
	s.floats(at)
	key := string(s.data[begin:])
	if known, ok := s.known[key]; ok {
		s.data = s.data[:begin]
		return known
	}
	s.known[key] = s.add(accessor{View: keyView, Offset: begin, Component: float, Count: len(at), Type: "SCALAR",
		Min: []number{number(at[0])}, Max: []number{number(at[len(at)-1])}})
	return s.known[key]
}
