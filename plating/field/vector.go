package field

import "math"

// dot returns the scalar product. Four sums that do not wait for each other
// keep the processor busy; they are added in one order, so that the result is
// always the same.
func dot(a, b []float64) float64 {
	b = b[:len(a)]
	var s0, s1, s2, s3 float64
	i := 0
	for ; i+4 <= len(a); i += 4 {
		s0 += a[i] * b[i]
		s1 += a[i+1] * b[i+1]
		s2 += a[i+2] * b[i+2]
		s3 += a[i+3] * b[i+3]
	}
	for ; i < len(a); i++ {
		s0 += a[i] * b[i]
	}
	return s0 + s1 + (s2 + s3)
}

// sum2 returns the squared length.
func sum2(a []float64) float64 { return dot(a, a) }

// axpy adds s·x to y.
//
// With dot it is the whole arithmetic of the compression and of GMRES.
func axpy(s float64, x, y []float64) {
	y = y[:len(x)]
	for i, v := range x {
		y[i] += s * v
	}
}

// largest returns the place and the size of the largest entry.
func largest(v []float64) (at int, peak float64) {
	for j, x := range v {
		if a := math.Abs(x); a > peak {
			at, peak = j, a
		}
	}
	return at, peak
}

// orthonormal replaces the vectors by an orthonormal set and fills the
// triangular matrix r with old_l = Σ_{k≤l} r[k][l]·new_k. Twice is enough.
//
// Gram and Schmidt in the modified order, each vector against those before it.
// Rows of a cross approximation are often nearly parallel: what is left of one
// after the first pass has lost digits, and the second pass takes off what came
// back. A third would change nothing.
func orthonormal(v [][]float64, r []float64) {
	n := len(v)
	clear(r)
	for l := range v {
		// What is taken off is booked in r, both times.
		for range 2 {
			for k := range l {
				d := dot(v[k], v[l])
				r[k*n+l] += d
				axpy(-d, v[k], v[l])
			}
		}
		d := math.Sqrt(sum2(v[l]))
		r[l*n+l] = d
		if d > 0 {
			for i := range v[l] {
				v[l][i] /= d
			}
		}
	}
}

// pivoted factorises the columns w by Gram and Schmidt, the longest remainder
// first, until the remainder is below tol of the whole. It leaves the
// orthonormal columns in w[:rank] and returns coef with
// old_l ≈ Σ_k coef[k][l]·w_k.
//
// With the longest remainder first the columns come in order of what they add,
// as in a singular value decomposition but without its price. The squared norm
// of what is left is known at every step, Σ |rest_l|², and the loop ends when
// it falls below the tolerance: the rank is then the least that this order of
// columns can do with.
func pivoted(w [][]float64, tol float64, buf *[]float64) (rank int, coef []float64) {
	r := len(w)
	*buf = grow(*buf, r*r+2*r)
	coef = (*buf)[:r*r]
	rest := (*buf)[r*r : r*r+r]
	place := make([]int, r) // original number of the column now at each place
	clear(coef)
	var total float64
	for l := range w {
		rest[l] = sum2(w[l])
		total += rest[l]
		place[l] = l
	}
	for k := range r {
		// The longest remainder becomes the next column, and what is left of
		// all of them decides whether one is needed.
		best, left := k, 0.0
		for l := k; l < r; l++ {
			left += rest[l]
			if rest[l] > rest[best] {
				best = l
			}
		}
		if k > 0 && left <= tol*tol*total {
			return k, coef
		}
		w[k], w[best] = w[best], w[k]
		rest[k], rest[best] = rest[best], rest[k]
		place[k], place[best] = place[best], place[k]
		// The remainders were updated one column at a time, each with its
		// rounding; the chosen one is cleaned against all before it.
		for i := range k { // once more against those before
			d := dot(w[i], w[k])
			coef[i*r+place[k]] += d
			axpy(-d, w[i], w[k])
		}
		// Nothing is left: the columns depended on each other.
		d := math.Sqrt(sum2(w[k]))
		coef[k*r+place[k]] = d
		if d == 0 {
			return max(k, 1), coef
		}
		for i := range w[k] {
			w[k][i] /= d
		}
		for l := k + 1; l < r; l++ {
			d := dot(w[k], w[l])
			coef[k*r+place[l]] = d
			axpy(-d, w[k], w[l])
			rest[l] = sum2(w[l])
		}
	}
	return r, coef
}
