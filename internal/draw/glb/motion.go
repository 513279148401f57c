package glb

import (
	"math"
	"slices"
	"strconv"

	"creasefit/internal/assembly"
	"creasefit/internal/draw"
	"creasefit/internal/fold"
)

// The times of the animation in seconds: how long a step takes, and how long all
// stands still after it.
const (
	taking  = 1.6
	resting = 0.5
)

// poses is into how many parts of a step its poses are looked up; a step that is
// known by more of them is parted into as many, at most mostPoses.
const (
	poses     = 8
	mostPoses = 60
)

// clip is one step of the work in which something moves: where every joint is at
// equal times.
type clip struct {
	name    string
	step    *assembly.Step // nil for standing the thing up
	stances [][]stance     // by time, then by joint
	spans   [][2]float64   // by joint that hangs on nothing: how far what hangs on it reaches to the left and right
}

// clips plays the order of the work, and last stands the thing up.
func (s *skeleton) clips(order *assembly.Order, d *draw.Drawing) []clip {
	var all []clip
	for i := range order.Steps {
		step := &order.Steps[i]
		if len(step.Turns)+len(step.Travels) == 0 {
			continue
		}
		n := poses
		for _, t := range step.Turns {
			n = max(n, min(mostPoses, len(t.Path)-1))
		}
		c := clip{name: strconv.Itoa(i+1) + " " + d.Say(step.Do.String()), step: step, spans: slices.Repeat(nowhere, len(s.model.Plates)+2)}
		for k := range n + 1 {
			part := float64(k) / float64(n)
			frame := s.bent(order.Frame(i, part), i, part)
			c.stances = append(c.stances, s.stances(&frame, 0))
			s.reach(c.spans, &frame)
		}
		all = append(all, c)
	}
	s.apart(all)
	if len(all) > 0 && s.stands() {
		last := s.bent(order.Frame(len(order.Steps)-1, 1), -1, 0)
		all = append(all, clip{name: d.Say("stand it up"), stances: [][]stance{s.stances(&last, 0), s.stances(&last, 1)}})
	}
	smoothed(all)
	return all
}

// smoothed gives every rotation the sign that lies nearer to the one before.
func smoothed(clips []clip) {
	var before []stance
	for k := range clips {
		for _, now := range clips[k].stances {
			for i := range before {
				now[i].turn = now[i].turn.like(before[i].turn)
			}
			before = now
		}
	}
}

// at returns where everything is when so much of all clips is over: 0 before the
// first, 1 after the last.
func at(clips []clip, part float64) []stance {
	place := part * float64(len(clips))
	k := min(int(place), len(clips)-1)
	n := len(clips[k].stances) - 1
	return clips[k].stances[int(math.Round((place-float64(k))*float64(n)))]
}

// animate writes the whole of the work as one animation, and each clip as one of
// its own that says where everything is, so that it can be played alone. They
// share their keys.
func (s *scene) animate(title string, clips []clip, joints []int) {
	if len(clips) == 0 {
		return
	}
	whole, each := animation{Name: title}, make([]animation, len(clips))
	for k := range clips {
		each[k].Name = clips[k].name
	}
	for _, p := range properties {
		for i, node := range joints {
			t := newTrack(&p, clips, i)
			if t.still() {
				continue
			}
			offset, size := len(s.data), 4*len(t.keys[0])
			s.floats(slices.Concat(t.keys...))
			whole.add(&p, node, s.times(t.all()), s.output(p, offset, len(t.keys)))
			for k, times := range t.times {
				each[k].add(&p, node, s.times(times), s.output(p, offset, len(times)))
				offset += size * len(times)
			}
		}
	}
	s.Animations = append([]animation{whole}, each...)
}

func (a *animation) add(p *property, node, input, output int) {
	a.Channels = append(a.Channels, channel{len(a.Samplers), target{node, p.path}})
	a.Samplers = append(a.Samplers, sampler{input, output, p.between})
}

// property is what of a node is animated.
type property struct {
	path, between string
	kind          string // of the accessor
	of            func(*stance) []float64
	near          func(a, b, middle []float64, part float64) bool // middle lies between a and b as a player goes
}

var properties = [...]property{
	{"translation", "LINEAR", "VEC3", func(s *stance) []float64 { return s.shift[:] }, onLine},
	{"rotation", "LINEAR", "VEC4", func(s *stance) []float64 { return s.turn[:] }, onArc},
	{"scale", "STEP", "VEC3", (*stance).scale, func(a, _, middle []float64, _ float64) bool { return same(a, middle, 0) }},
}

// track is the keys of one property of one node.
type track struct {
	times [][]float64 // by clip, from its beginning
	keys  [][]float64 // of all clips
}

func newTrack(p *property, clips []clip, joint int) *track {
	t := &track{}
	for k := range clips {
		values := make([][]float64, len(clips[k].stances))
		for i := range values {
			values[i] = p.of(&clips[k].stances[i][joint])
		}
		var times []float64
		for _, i := range needed(p, values) {
			times = append(times, taking*float64(i)/float64(len(values)-1))
			t.keys = append(t.keys, values[i])
		}
		t.times = append(t.times, times)
	}
	return t
}

// needed returns which of the values a player needs to find the others.
func needed(p *property, values [][]float64) []int {
	last := len(values) - 1
	kept := []int{0}
	for from := 0; from < last; {
		to := from + 1
		for to < last && p.reaches(values, from, to+1) {
			to++
		}
		kept = append(kept, to)
		from = to
	}
	if len(kept) == 2 && same(values[0], values[last], 0) {
		return kept[:1]
	}
	return kept
}

// reaches reports whether all values from one to another lie between them.
func (p *property) reaches(values [][]float64, from, to int) bool {
	for i := from + 1; i < to; i++ {
		if !p.near(values[from], values[to], values[i], float64(i-from)/float64(to-from)) {
			return false
		}
	}
	return true
}

// still reports whether the property never changes.
func (t *track) still() bool {
	return !slices.ContainsFunc(t.keys, func(k []float64) bool { return !same(k, t.keys[0], 1e-6) })
}

// all returns the times of all keys when the clips are played one after another.
func (t *track) all() []float64 {
	var all []float64
	for k, times := range t.times {
		for _, at := range times {
			all = append(all, at+float64(k)*(taking+resting))
		}
	}
	return all
}

func same(a, b []float64, by float64) bool {
	for i := range a {
		if math.Abs(a[i]-b[i]) > by {
			return false
		}
	}
	return true
}

// exact is how far a value may be from where a player finds it, in mm and in
// parts of a rotation.
const exact = 1e-4

// onLine reports whether a place lies on the way from one to another.
func onLine(a, b, middle []float64, part float64) bool {
	for i := range a {
		if math.Abs(a[i]+(b[i]-a[i])*part-middle[i]) > exact {
			return false
		}
	}
	return true
}

// onArc reports whether a rotation lies on the shortest way from one to another
// (Shoemake, 1985), which must be plain: no longer than a third of a turn.
func onArc(a, b, middle []float64, part float64) bool {
	cos := 0.0
	for i := range a {
		cos += a[i] * b[i]
	}
	half := math.Acos(max(-1, min(1, cos)))
	if half > math.Pi/3 {
		return false
	}
	from, to := 1-part, part
	if half > 1e-9 {
		from, to = math.Sin(from*half)/math.Sin(half), math.Sin(to*half)/math.Sin(half)
	}
	for i := range a {
		if math.Abs(a[i]*from+b[i]*to-middle[i]) > exact*1e-2 {
			return false
		}
	}
	return true
}

// quaternion is a rotation: x, y, z and w, as the format has it.
type quaternion [4]float64

// rotation returns the quaternion that turns the axes onto the given ones
// (Shepperd, 1978).
func rotation(x, y, z fold.Vec) quaternion {
	trace := x[0] + y[1] + z[2]
	switch {
	case trace > 0:
		s := 2 * math.Sqrt(1+trace)
		return quaternion{(y[2] - z[1]) / s, (z[0] - x[2]) / s, (x[1] - y[0]) / s, s / 4}
	case x[0] >= y[1] && x[0] >= z[2]:
		s := 2 * math.Sqrt(1+x[0]-y[1]-z[2])
		return quaternion{s / 4, (y[0] + x[1]) / s, (z[0] + x[2]) / s, (y[2] - z[1]) / s}
	case y[1] >= z[2]:
		s := 2 * math.Sqrt(1+y[1]-x[0]-z[2])
		return quaternion{(y[0] + x[1]) / s, s / 4, (z[1] + y[2]) / s, (z[0] - x[2]) / s}
	default:
		s := 2 * math.Sqrt(1+z[2]-x[0]-y[1])
		return quaternion{(z[0] + x[2]) / s, (z[1] + y[2]) / s, s / 4, (x[1] - y[0]) / s}
	}
}

// like returns the same rotation, of its two signs the one nearer to another.
func (q quaternion) like(r quaternion) quaternion {
	if q[0]*r[0]+q[1]*r[1]+q[2]*r[2]+q[3]*r[3] < 0 {
		return quaternion{-q[0], -q[1], -q[2], -q[3]}
	}
	return q
}
