package field

import "math"

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

func sum2(a []float64) float64 { return dot(a, a) }

// axpy adds s·x to y.
func axpy(s float64, x, y []float64) {
	y = y[:len(x)]
	for i, v := range x {
		y[i] += s * v
	}
}

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
func orthonormal(v [][]float64, r []float64) {
	n := len(v)
	clear(r)
	for l := range v {
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
		for i := range k { // once more against those before
			d := dot(w[i], w[k])
			coef[i*r+place[k]] += d
			axpy(-d, w[i], w[k])
		}
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
