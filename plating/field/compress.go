package field

import "math"

// A compressor builds blocks by adaptive cross approximation with partial
// pivoting of both layers side by side, then brings the rank down by a
// pivoted orthogonal factorisation.
//
// The rows of a block hold the single layer of all sources and after it the
// double layer, times a length of the block so that the two weigh alike. Both
// then share the columns, and a matrix product needs one pass.
type compressor struct {
	e        evaluator
	tol      float64
	us, vs   [][]float64 // columns over the points, rows over the sources
	used     []bool
	guess    []float64 // of the residual of each row, squared
	store    []float32 // the rest of the current chunk
	bytes    int64     // of all chunks
	w, q, rr []float64
}

// fill computes the data of one block. A block that does not compress is left dense.
func (c *compressor) fill(b *block, t *tree) {
	row, col := &t.nodes[b.row], &t.nodes[b.col]
	c.e.begin(row, col, b.double)
	if b.rank >= 0 && c.cross(row, col, b.double) {
		c.keep(b, row, col)
		return
	}
	c.dense(b, row, col)
}

func (c *compressor) dense(b *block, row, col *node) {
	m, n := row.hi-row.lo, col.hi-col.lo
	b.rank = -1
	width := n
	if b.double {
		width = 2 * n
	}
	b.data = c.take(m * width)
	c.w = grow(c.w, width)
	for i := range m {
		var k []float64
		if b.double {
			k = c.w[n:]
		}
		c.e.rowAt(row.lo+i, c.w[:n], k)
		for j, v := range c.w[:width] {
			b.data[i*width+j] = float32(v)
		}
	}
}

// take returns room for n numbers from the current chunk.
func (c *compressor) take(n int) []float32 {
	const chunk = 1 << 18
	if n > len(c.store) {
		size := max(n, chunk)
		c.store = make([]float32, size)
		c.bytes += int64(size) * 4
	}
	s := c.store[:n:n]
	c.store = c.store[n:]
	return s
}

// cross runs the cross approximation. It reports false where the block does
// not pay.
//
// A small pivot is no proof: the next row is chosen in the column of the last
// pivot, and rows that this column does not touch are never looked at. Where
// the double layer is zero on most rows (they lie in the plane of the sources)
// and not on a few, the single layer converges and the few rows keep an error
// that no tolerance takes away. So a block is taken for done only when suspects
// find no row any more that is off; the row that is off is the next pivot.
func (c *compressor) cross(row, col *node, double bool) bool {
	m, n := row.hi-row.lo, col.hi-col.lo
	width := n
	if double {
		width = 2 * n
	}
	scale := norm3(row.box, col.box)
	limit := max(1, m*width*3/(4*(m+width)))
	c.us, c.vs = c.us[:0], c.vs[:0]
	c.used = grow(c.used, m)
	clear(c.used)
	var total float64 // squared norm of the approximation
	next, checks := m/2, 0
	var doubtful []int // rows to look at before the block is done
	for rank := 0; ; {
		v := c.vector(&c.vs, width)
		c.residualRow(row.lo+next, next, n, scale, double, v)
		c.used[next] = true
		j, peak := largest(v)
		if rank > 0 {
			// A row that was not chosen by its size may show that all is well.
			if rest := sum2(v) * float64(m); checks > 0 && rest <= rowSlack*c.tol*c.tol*total || peak == 0 {
				c.vs = c.vs[:rank]
				if checks == 0 {
					checks = 1
					doubtful = c.suspects(row, col, scale, double)
				}
				if checks > len(doubtful) {
					return true
				}
				next = doubtful[checks-1]
				checks++
				continue
			}
		} else if peak == 0 {
			c.vs = c.vs[:0]
			if next = c.unused(checks); next < 0 {
				return false
			}
			continue
		}
		checks = 0
		if rank == limit {
			return false
		}
		inv := 1 / v[j]
		u := c.vector(&c.us, m)
		c.residualColumn(j, col.lo, n, scale, rank, u)
		for i := range u {
			u[i] *= inv
		}
		uu, vv := sum2(u), sum2(v)
		for l := range rank {
			total += 2 * dot(u, c.us[l]) * dot(v, c.vs[l])
		}
		total += uu * vv
		rank++
		next = -1
		best := -1.0
		for i, x := range u {
			if !c.used[i] && math.Abs(x) > best {
				next, best = i, math.Abs(x)
			}
		}
		if next < 0 {
			return true // every row has been met
		}
		if uu*vv <= c.tol*c.tol*total {
			if doubtful = c.suspects(row, col, scale, double); len(doubtful) == 0 {
				return true
			}
			checks = 2
			next = doubtful[0]
		}
	}
}

// rowSlack is the square of what a row may be off by, in mean rows of a block
// that is off by the tolerance. The rows that are looked at are the worst.
const rowSlack = 16

// Entries of each row that are looked at, and rows of which the whole is.
const (
	glances = 4
	looks   = 3
)

// suspects returns the rows that the approximation seems to miss most, of those
// not met yet. Every row is judged by a few of its entries, which costs what a
// few columns cost: the step from column to column has no divisor in common with
// their number, so that all columns come up too. The row nearest to the sources,
// where the entries vary most, is always one of them.
func (c *compressor) suspects(row, col *node, scale float64, double bool) []int {
	m, n := row.hi-row.lo, col.hi-col.lo
	rank := len(c.us)
	c.guess = grow(c.guess, m)
	clear(c.guess)
	step := max(1, int(0.618*float64(n)))
	for gcd(step, n) != 1 {
		step++
	}
	near, least := -1, math.Inf(1)
	j := n / 3
	for i := range m {
		if c.used[i] {
			c.guess[i] = -1
			continue
		}
		for range glances {
			j = (j + step) % n
			g, k := c.e.both(row.lo+i, col.lo+j)
			for l := range rank {
				g -= c.us[l][i] * c.vs[l][j]
			}
			c.guess[i] += g * g
			if double {
				k *= scale
				for l := range rank {
					k -= c.us[l][i] * c.vs[l][n+j]
				}
				c.guess[i] += k * k
			}
		}
		if d := col.box.distance2(c.e.p.at[row.lo+i]); d < least {
			near, least = i, d
		}
	}
	var out []int
	for range looks {
		at, most := -1, -1.0
		for i, x := range c.guess {
			if x > most {
				at, most = i, x
			}
		}
		if at < 0 || most < 0 {
			break
		}
		out = append(out, at)
		c.guess[at] = -1
	}
	if near >= 0 && c.guess[near] >= 0 {
		out = append(out, near)
	}
	return out
}

func gcd(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// norm3 returns the length by which the double layer of a block is multiplied.
func norm3(a, b box3) float64 {
	return max(a.distance(b), 0.25*(a.diam()+b.diam()))
}

// vector appends room for n numbers to a list and returns it, reusing old memory.
func (c *compressor) vector(list *[][]float64, n int) []float64 {
	l := *list
	if len(l) < cap(l) {
		l = l[:len(l)+1]
	} else {
		l = append(l, nil)
	}
	k := len(l) - 1
	l[k] = grow(l[k], n)
	*list = l
	return l[k]
}

// residualRow sets v to the row of the block less that of the approximation.
func (c *compressor) residualRow(i, local, n int, scale float64, double bool, v []float64) {
	var k []float64
	if double {
		k = v[n:]
	}
	c.e.rowAt(i, v[:n], k)
	for j := range k {
		k[j] *= scale
	}
	for l := range c.vs[:len(c.vs)-1] {
		axpy(-c.us[l][local], c.vs[l], v)
	}
}

func (c *compressor) residualColumn(j, lo, n int, scale float64, rank int, u []float64) {
	if j < n {
		c.e.columnAt(lo+j, false, u)
	} else {
		c.e.columnAt(lo+j-n, true, u)
		for i := range u {
			u[i] *= scale
		}
	}
	for l := range rank {
		axpy(-c.vs[l][j], c.us[l], u)
	}
}

// unused returns a row that has not been met, spread by k; -1 if there is none.
func (c *compressor) unused(k int) int {
	m := len(c.used)
	start := (k*7919 + 31*k*k) % m
	for i := range m {
		if r := (start + i) % m; !c.used[r] {
			return r
		}
	}
	return -1
}

// keep factorises anew, cuts the rank to the tolerance and stores the factors.
func (c *compressor) keep(b *block, row, col *node) {
	m, n := row.hi-row.lo, col.hi-col.lo
	r := len(c.us)
	v := c.vs[:r]
	c.rr = grow(c.rr, r*r)
	orthonormal(v, c.rr) // v_l = Σ_{k≤l} rr[k][l] q_k
	// A = Σ u_l v_lᵀ = Σ_k w_k q_kᵀ with w_k = Σ_{l≥k} rr[k][l] u_l, formed in place.
	for k := range r {
		w := c.us[k]
		d := c.rr[k*r+k]
		for i := range w {
			w[i] *= d
		}
		for l := k + 1; l < r; l++ {
			axpy(c.rr[k*r+l], c.us[l], w)
		}
	}
	rank, coef := pivoted(c.us[:r], c.tol, &c.q)
	width := len(v[0])
	scale := norm3(row.box, col.box)
	b.rank = int32(rank)
	if rank*(m+width) >= m*width {
		c.dense(b, row, col)
		return
	}
	b.data = c.take(rank * (m + width))
	c.w = grow(c.w, width)
	for k := range rank {
		out := b.data[k*m : (k+1)*m]
		for i, x := range c.us[k] {
			out[i] = float32(x)
		}
		w := c.w
		clear(w)
		for l := range r {
			if x := coef[k*r+l]; x != 0 {
				axpy(x, v[l], w)
			}
		}
		if b.double {
			for j := n; j < width; j++ {
				w[j] /= scale
			}
		}
		out = b.data[rank*m+k*width : rank*m+(k+1)*width]
		for j, x := range w {
			out[j] = float32(x)
		}
	}
}
