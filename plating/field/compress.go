package field

import "math"

// A compressor builds blocks by adaptive cross approximation with partial
// pivoting of both layers side by side, then brings the rank down by a pivoted
// orthogonal factorisation.
//
// A cross is a row and a column of a matrix. With the remainder R of a block A,
// which begins as A itself, one step takes
//
//	v = R[i, :]    u = R[:, j]/R[i, j]    R ← R - u·vᵀ
//
// for a pivot row i and the column j where |v| is largest. Then row i and
// column j of R are zero, and after r steps A ≈ Σ u_l·v_lᵀ. Only the rows and
// columns of the crosses are ever computed, r·(m + n) entries of m·n: that is
// where the time goes down from the square of the number of panels. The pivot
// of the next step is the row in which the last column u is largest, since R is
// likely to be large there still.
//
// The rows of a block hold the single layer of all sources and after it the
// double layer, times a length of the block so that the two weigh alike. Both
// then share the columns, and a matrix product needs one pass.
type compressor struct {
	// e computes the entries that are asked for.
	e   evaluator
	tol float64
	// us and vs are the crosses so far: columns over the points, rows over the
	// sources.
	us, vs [][]float64
	// used marks the rows that have been a pivot or were found to be zero.
	used []bool
	// guess is what a few entries of each row say of its remainder, squared.
	guess []float64
	// store is the rest of the current chunk of memory.
	store []float32
	// bytes counts all chunks.
	bytes    int64
	w, q, rr []float64
}

// fill computes the data of one block. A block that does not compress, since
// its panels are few or lie too near, is left dense: that is always right, and
// only costs memory.
func (c *compressor) fill(b *block, t *tree) {
	row, col := &t.nodes[b.row], &t.nodes[b.col]
	c.e.begin(row, col, b.double)
	if b.rank >= 0 && c.cross(row, col, b.double) {
		c.keep(b, row, col)
		return
	}
	c.dense(b, row, col)
}

// dense computes every entry of a block.
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

// take returns room for n numbers from the current chunk. Blocks are many and
// mostly small, and chunks of a megabyte spare the collector an object for
// each.
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
	// The crosses go on until three quarters of what the dense block would
	// take: beyond that nothing is saved.
	limit := max(1, m*width*3/(4*(m+width)))
	c.us, c.vs = c.us[:0], c.vs[:0]
	c.used = grow(c.used, m)
	clear(c.used)
	// total is the squared norm of the approximation, Σ_kl (u_k·u_l)(v_k·v_l),
	// kept up to date by each cross. The remainder is measured against it, for
	// the norm of the block itself is not known.
	var total float64
	// The first row is any row. Checks is 0 while crosses are taken and counts
	// the doubtful rows once the block seems done.
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
			// A first row of zeros says nothing of the others: look for one that is
			// not. Where there is none the block is zero, and dense blocks of zeros
			// are rare enough.
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
		// The row stays as it is and the column is divided by the pivot, so
		// that the column is 1 at its pivot and the rows carry the size.
		inv := 1 / v[j]
		u := c.vector(&c.us, m)
		c.residualColumn(j, col.lo, n, scale, rank, u)
		for i := range u {
			u[i] *= inv
		}
		// |Σ + u·vᵀ|² = |Σ|² + 2·Σ_l (u·u_l)(v·v_l) + |u|²|v|²
		uu, vv := sum2(u), sum2(v)
		for l := range rank {
			total += 2 * dot(u, c.us[l]) * dot(v, c.vs[l])
		}
		total += uu * vv
		rank++
		// The next pivot row is where the new column is largest, of the rows
		// that have not been met.
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
		// The last cross is below the tolerance of the whole. With a smooth
		// kernel the next ones are smaller still, so that the remainder is
		// about as large as this one; what the pivots may have passed by is
		// looked for among all rows.
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
	// The golden section of the number of columns, moved until it has no
	// divisor in common with it: entries of neighbouring rows are then spread
	// over all columns.
	step := max(1, int(0.618*float64(n)))
	for gcd(step, n) != 1 {
		step++
	}
	// The row nearest to the sources is remembered on the way.
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

// gcd returns the greatest common divisor.
func gcd(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// norm3 returns the length by which the double layer of a block is multiplied.
// Its kernel falls with the square of the distance, that of the single layer
// with the first power, so that a distance makes them alike: the gap between
// the clusters, or where that is small a share of their sizes.
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
//
// The remainder is never stored. A row of it is the row of the block, computed
// anew, less the crosses that are known there.
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

// residualColumn sets u to a column of the remainder; columns from n on are
// those of the double layer.
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
//
// The rows are tried in an order without a pattern of the mesh, which would
// lead from one zero row to the next.
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
//
//	A ≈ U·Vᵀ    V = Q·R    A ≈ (U·Rᵀ)·Qᵀ = W·Qᵀ
//
// Pivots give more crosses than the block needs: they stop on the safe side,
// and crosses are not orthogonal to each other. With Q orthonormal, the columns
// of W weigh as much as the block does in their direction. [pivoted] takes them
// in order of weight and stops at the tolerance, and what it leaves is known in
// the true norm of the block.
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
	// W ≈ P·C with the orthonormal columns P; then A ≈ P·(C·Qᵀ), and the rows
	// stored are those of C·Qᵀ.
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
		// The double layer gets its own size back.
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
