package draw

import (
	"fmt"
	"math"
	"slices"

	"creasefit/internal/pattern"
)

// CutterOptions are how lines for a machine are laid out, in mm.
type CutterOptions struct {
	// Bed is the area that the machine reaches; zero for one as large as needed.
	Bed Point
	// Kerf is how much the tool takes away: outlines run half of it outside of
	// the paper that stays, so that the pieces keep their sizes.
	Kerf float64
	// Perforate cuts folds through in dashes of true length instead of scoring
	// them.
	Perforate bool
}

// CutterError says what a machine cannot do.
type CutterError struct {
	Kerf  bool // a detail is narrower than the kerf; else a piece is larger than the bed
	Piece string
	Size  float64 // of the detail, or of the piece's longest side, mm
}

// Error returns the sentence.
func (e *CutterError) Error() string {
	if e.Kerf {
		return fmt.Sprintf("draw: %s has a detail of %.2f mm that is narrower than the kerf", e.Piece, e.Size)
	}
	return fmt.Sprintf("draw: %s, %.1f mm long, is larger than the bed", e.Piece, e.Size)
}

// What stays free between pieces, and round all of them on the bed, in mm.
const (
	cutterGap = 3.0
	dashCut   = 2.0 // of a perforation
	dashTie   = 1.0
)

// NewCutter draws every copy of every piece of a pattern for a machine: lines
// in layers of what is done there, each of them once, nested on beds that stand
// side by side. Pieces of a pattern with several have their number as a mark;
// nothing else is written. The error is a CutterError.
func NewCutter(p *pattern.Pattern, o Options, how CutterOptions) (*Drawing, error) {
	l := o.layout(p)
	p = o.Whole(p)
	l.lettering = Lettering
	d := l.drawing(Cutter, p, o, nil)
	d.Description = l.describe(p)
	var sizes []Point
	var copies []Figure
	for i := range p.Pieces {
		f, err := l.machined(p, i, how)
		if err != nil {
			return nil, err
		}
		for range max(1, p.Pieces[i].Quantity) {
			copies, sizes = append(copies, f), append(sizes, Point{f.Box.Width() + cutterGap, f.Box.Height() + cutterGap})
		}
	}
	bed := how.Bed
	if bed.X <= 0 || bed.Y <= 0 {
		_, bed = Rows(sizes)
		bed = bed.add(Point{cutterGap, cutterGap})
	}
	spots, _, ok := Nest(sizes, Point{bed.X - cutterGap, bed.Y - cutterGap}, Point{})
	if !ok {
		return nil, tooLarge(copies, Point{bed.X - 2*cutterGap, bed.Y - 2*cutterGap})
	}
	l.beds(d, copies, spots, bed)
	d.again = func(float64) *Drawing { return d } // there are no letters
	return d, nil
}

// tooLarge names the first piece that lies on the bed neither way round.
func tooLarge(copies []Figure, bed Point) error {
	for i := range copies {
		w, h := copies[i].Box.Width(), copies[i].Box.Height()
		if max(w, h) > max(bed.X, bed.Y) || min(w, h) > min(bed.X, bed.Y) {
			return &CutterError{Piece: copies[i].Name, Size: max(w, h)}
		}
	}
	return &CutterError{Piece: copies[0].Name, Size: max(bed.X, bed.Y)}
}

// Rows lays rectangles out in rows, from the bottom up, that are about as wide as all
// are high, and says what all take up.
func Rows(sizes []Point) (at []Point, all Point) {
	area := 0.0
	for _, s := range sizes {
		all.X, area = max(all.X, s.X), area+s.X*s.Y
	}
	all.X = max(all.X, 1.2*math.Sqrt(area))
	next, row := Point{}, 0.0
	for _, s := range sizes {
		if next.X > 0 && next.X+s.X > all.X {
			next, row = Point{0, next.Y + row}, 0
		}
		at = append(at, next)
		next.X, row = next.X+s.X, max(row, s.Y)
	}
	return at, Point{all.X, next.Y + row}
}

// beds puts the copies onto their beds, one figure a bed.
func (l *layout) beds(d *Drawing, copies []Figure, spots []Spot, bed Point) {
	for i, s := range spots {
		for len(d.Figures) <= s.Area {
			at := Point{float64(len(d.Figures)) * (bed.X + cutterGap), 0}
			d.Figures = append(d.Figures, Figure{Name: l.say("bed"), Box: Box{High: bed}, Size: bed, At: at})
			d.Width, d.Height = at.X+bed.X, bed.Y
		}
		to, from := s.At.add(Point{cutterGap, cutterGap}), copies[i].Box
		bedFigure := &d.Figures[s.Area]
		for _, line := range copies[i].Lines {
			line.Path = slices.Clone(line.Path)
			for k := range line.Path {
				v := &line.Path[k]
				if s.Turned {
					v.Point = Point{to.X + from.High.Y - v.Y, to.Y + v.X - from.Low.X}
				} else {
					v.Point = Point{to.X + v.X - from.Low.X, to.Y + v.Y - from.Low.Y}
				}
			}
			bedFigure.Lines = append(bedFigure.Lines, line)
		}
	}
	for i := range d.Figures {
		lines := d.Figures[i].Lines
		slices.SortStableFunc(lines, func(a, b Line) int { return int(a.Layer) - int(b.Layer) })
	}
}

// machined returns the lines of one copy of a piece: folds and glue first,
// inner cuts before the outline, so that the paper lies still.
func (l *layout) machined(p *pattern.Pattern, piece int, how CutterOptions) (Figure, error) {
	f := l.figure(&p.Pieces[piece], p.GluesOf(piece))
	f.fig.Box = Box{}
	var lines []Line
	for i := range f.mesh.Edges {
		e := &f.mesh.Edges[i]
		switch path := f.edgePath(e); {
		case (e.Role == Valley || e.Role == Mountain) && how.Perforate:
			lines = append(lines, dashed(path)...)
		case e.Role == Valley || e.Role == Mountain:
			lines = append(lines, Line{Layer: f.scored(e.Role, [...]Layer{ScorePath, ScorePath, HalfCutUnderPath, HalfCutPath}), Name: f.creaseName(e.Crease), Path: path})
		}
	}
	for i := range f.glues {
		if path := inset(vertices(f.glues[i].Area)); path != nil {
			lines = append(lines, Line{Layer: GluePath, Name: f.say(f.glues[i].Name), Path: path, Closed: true})
		}
	}
	for _, s := range f.slits() {
		lines = append(lines, Line{Layer: CutPath, Name: s.Name, Path: s.Path})
	}
	for k, c := range f.contours {
		path, narrow := offset(c, how.Kerf/2)
		if path == nil {
			return f.fig, &CutterError{Kerf: true, Piece: f.fig.Name, Size: narrow}
		}
		box := Around(Flatten(nil, path, true, 0.01))
		if f.fig.Box = f.fig.Box.join(box); k == 0 {
			f.fig.Box = box
		}
		lines = append(lines, Line{Layer: CutPath, Name: f.fig.Name, Path: path, Closed: true})
	}
	if len(p.Pieces) > 1 {
		lines = append(lines, f.numeral(piece+1)...)
	}
	f.fig.Lines = lines
	return f.fig, nil
}

// inset moves the line round a glue area inwards, by 1 mm or what it has room
// for, so that no line is there twice and no glue comes out at the edge.
func inset(path []Vertex) []Vertex {
	n := len(path)
	back := make([]Vertex, n)
	for i, v := range path { // an edge's bulge goes with its other end
		back[n-1-i].Point = v.Point
		back[(2*n-2-i)%n].Bulge = -v.Bulge
	}
	for _, by := range [...]float64{1, 0.5, 0.1} {
		if moved, _ := offset(back, by); moved != nil {
			return moved
		}
	}
	return nil
}

// dashed cuts a path into dashes; half a tie stays at both ends, so that no
// dash reaches an edge.
func dashed(path []Vertex) []Line {
	points := Flatten(nil, path, false, 0.001)
	long := 0.0
	for i := 1; i < len(points); i++ {
		long += points[i].sub(points[i-1]).length()
	}
	n := max(1, math.Round(long/(dashCut+dashTie)))
	cut, tie := long/n*dashCut/(dashCut+dashTie), long/n*dashTie/(dashCut+dashTie)
	var lines []Line
	for k := range int(n) {
		from := float64(k)*(cut+tie) + tie/2
		var part []Vertex
		for _, q := range stretch(points, from, from+cut) {
			part = append(part, Vertex{Point: q})
		}
		lines = append(lines, Line{Layer: PerforationPath, Path: part})
	}
	return lines
}

// stretch returns the part of a polyline between two distances along it.
func stretch(points []Point, from, to float64) []Point {
	var part []Point
	at := 0.0
	for i := 1; i < len(points); i++ {
		a, b := points[i-1], points[i]
		step := b.sub(a).length()
		low, high := max(from, at), min(to, at+step)
		if low < high {
			if len(part) == 0 {
				part = append(part, a.add(b.sub(a).by((low-at)/step)))
			}
			part = append(part, a.add(b.sub(a).by((high-at)/step)))
		}
		at += step
	}
	return part
}

// strokes of digits on a grid of 2 by 4, one line each from corner to corner.
var digitStrokes = [10][][]Point{
	{{{0, 0}, {2, 0}, {2, 4}, {0, 4}, {0, 0}}},
	{{{1, 0}, {1, 4}, {0, 3}}},
	{{{0, 4}, {2, 4}, {2, 2}, {0, 2}, {0, 0}, {2, 0}}},
	{{{0, 4}, {2, 4}, {2, 0}, {0, 0}}, {{0, 2}, {2, 2}}},
	{{{0, 4}, {0, 2}, {2, 2}}, {{2, 4}, {2, 0}}},
	{{{2, 4}, {0, 4}, {0, 2}, {2, 2}, {2, 0}, {0, 0}}},
	{{{2, 4}, {0, 4}, {0, 0}, {2, 0}, {2, 2}, {0, 2}}},
	{{{0, 4}, {2, 4}, {1, 0}}},
	{{{0, 0}, {2, 0}, {2, 4}, {0, 4}, {0, 0}}, {{0, 2}, {2, 2}}},
	{{{0, 0}, {2, 0}, {2, 4}, {0, 4}, {0, 2}, {2, 2}}},
}

// numeral marks a piece with its number, in the panel that stays still.
func (f *figure) numeral(n int) []Line {
	text := fmt.Sprint(n)
	at := f.room(f.piece.Root).inner().sub(Point{float64(len(text)) * 1.5, 2})
	var lines []Line
	for _, digit := range text {
		for _, stroke := range digitStrokes[digit-'0'] {
			path := make([]Vertex, len(stroke))
			for i, q := range stroke {
				path[i] = Vertex{Point: at.add(q)}
			}
			lines = append(lines, Line{Layer: MarkPath, Name: text, Path: path})
		}
		at.X += 3
	}
	return lines
}
