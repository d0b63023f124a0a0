package field

import (
	"context"
	"math"
)

// gmres solves A·x = b from x = 0 with the preconditioner on the right, so
// that the residual it watches is the true one. It restarts after some vectors
// and stops when the residual has fallen to tol of b.
func gmres(ctx context.Context, apply, precondition func(in, out []float64), b, x []float64, tol float64,
	most int) (steps int, rel float64, err error) {
	const restart = 100
	n := len(b)
	norm0 := math.Sqrt(sum2(b))
	clear(x)
	if norm0 == 0 {
		return 0, 0, nil
	}
	r, z := append([]float64(nil), b...), make([]float64, n)
	var basis [][]float64
	for {
		beta := math.Sqrt(sum2(r))
		if rel = beta / norm0; rel <= tol || steps >= most {
			return steps, rel, nil
		}
		basis = basis[:0]
		basis = append(basis, scaled(r, 1/beta))
		rhs := []float64{beta}
		var h rotated
		for k := 0; k < restart && steps < most; k++ {
			if err := ctx.Err(); err != nil {
				return steps, rel, err
			}
			steps++
			precondition(basis[k], z)
			w := make([]float64, n)
			apply(z, w)
			col := make([]float64, k+2)
			before := sum2(w)
			for range 2 {
				for i, v := range basis {
					d := dot(v, w)
					col[i] += d
					axpy(-d, v, w)
				}
				after := sum2(w)
				if after > 0.5*before { // little was taken off: no digits were lost
					break
				}
				before = after
			}
			col[k+1] = math.Sqrt(sum2(w))
			if col[k+1] > 0 {
				basis = append(basis, scaled(w, 1/col[k+1]))
			}
			rhs = h.add(col, rhs)
			if math.Abs(rhs[k+1]) <= tol*norm0 || len(basis) == k+1 {
				break
			}
		}
		y := h.solve(rhs)
		clear(r)
		for i, c := range y {
			axpy(c, basis[i], r)
		}
		precondition(r, z)
		axpy(1, z, x)
		if left := math.Abs(rhs[len(rhs)-1]); left <= tol*norm0 {
			return steps, left / norm0, nil // the caller looks at the true residual in any case
		}
		apply(x, r)
		for i := range r {
			r[i] = b[i] - r[i]
		}
		if now := math.Sqrt(sum2(r)); now > 0.9*beta { // no more to gain in these digits
			return steps, now / norm0, nil
		}
	}
}

func scaled(v []float64, s float64) []float64 {
	for i := range v {
		v[i] *= s
	}
	return append([]float64(nil), v...)
}

// rotated is the Hessenberg matrix of GMRES, made triangular by rotations as it grows.
type rotated struct {
	cols [][]float64
	c, s []float64
}

// add takes the next column and rotates it and the right-hand side.
func (h *rotated) add(col, rhs []float64) []float64 {
	k := len(h.cols)
	for i := range k {
		a, b := col[i], col[i+1]
		col[i], col[i+1] = h.c[i]*a+h.s[i]*b, h.c[i]*b-h.s[i]*a
	}
	c, s := 1.0, 0.0
	if d := math.Hypot(col[k], col[k+1]); d > 0 {
		c, s = col[k]/d, col[k+1]/d
		col[k], col[k+1] = d, 0
	}
	h.cols, h.c, h.s = append(h.cols, col), append(h.c, c), append(h.s, s)
	last := rhs[k]
	rhs[k] = c * last
	return append(rhs, -s*last)
}

// solve substitutes backwards.
func (h *rotated) solve(rhs []float64) []float64 {
	y := append([]float64(nil), rhs[:len(h.cols)]...)
	for i := len(y) - 1; i >= 0; i-- {
		if h.cols[i][i] == 0 {
			y[i] = 0
			continue
		}
		y[i] /= h.cols[i][i]
		for k := range i {
			y[k] -= h.cols[i][k] * y[i]
		}
	}
	return y
}
