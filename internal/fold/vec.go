package fold

// What other packages reckon with points and directions.

// Plus returns a + b.
func (a Vec) Plus(b Vec) Vec { return a.add(b) }

// Minus returns a - b.
func (a Vec) Minus(b Vec) Vec { return a.sub(b) }

// Times returns a, f times as long.
func (a Vec) Times(f float64) Vec { return a.by(f) }

// Dot returns the inner product.
func (a Vec) Dot(b Vec) float64 { return a.dot(b) }

// Cross returns the cross product.
func (a Vec) Cross(b Vec) Vec { return a.cross(b) }

// Length returns the length of a.
func (a Vec) Length() float64 { return a.length() }
