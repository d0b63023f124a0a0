package field

import (
	"context"
	"math"
)

// gmres solves A·x = b from x = 0 with the preconditioner on the right, so that
// the residual it watches is the true one. It restarts after some vectors and
// stops when the residual has fallen to tol of b.
//
//	A·M⁻¹·z = b    x = M⁻¹·z
//
//	A    the Jacobian of the Newton step, known as a product with a vector only
//	M⁻¹  the preconditioner
//
// After k steps the answer is the one of the space spanned by b, A·M⁻¹·b, …,
// (A·M⁻¹)^(k-1)·b for which |b - A·x| is least. With orthonormal vectors q of
// that space
//
//	A·M⁻¹·Q_k = Q_(k+1)·H    |b - A·x| = |β·e₁ - H·y|
//
// H is a Hessenberg matrix, k+1 by k, and the least y follows from rotations
// that make it triangular. They give the norm of the residual at every step
// without forming x.
//
// Insulators and rate laws give equations of the second kind, which take few
// steps; primary electrodes give some of the first kind, where the
// preconditioner has to help. A few tens of steps do either way. Nothing in the
// method asks for symmetry, which the collocated equation does not have.
func gmres(ctx context.Context, apply, precondition func(in, out []float64), b, x []float64, tol float64,
	most int) (steps int, rel float64, err error) {
	// All vectors are kept for the orthogonalisation. A hundred of them at a
	// hundred thousand panels are 80 MB, and more than that is seldom needed.
	const restart = 100
	n := len(b)
	// The tolerance is relative to the right-hand side. A state that solves the
	// equations exactly needs no step.
	norm0 := math.Sqrt(sum2(b))
	clear(x)
	if norm0 == 0 {
		return 0, 0, nil
	}
	r, z := append([]float64(nil), b...), make([]float64, n)
	var basis [][]float64
	for {
		// Each round begins with the true residual, so that rounding does not
		// add up over restarts.
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
			// One step costs one product with the operator, which dwarfs all
			// else.
			precondition(basis[k], z)
			w := make([]float64, n)
			apply(z, w)
			col := make([]float64, k+2)
			// Gram and Schmidt, in the modified order. A vector that lies
			// almost in the span of the others loses its digits when that is
			// taken off; once more gives them back. Twice is enough.
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
			// A zero here says that the space holds the solution.
			if col[k+1] > 0 {
				basis = append(basis, scaled(w, 1/col[k+1]))
			}
			rhs = h.add(col, rhs)
			if math.Abs(rhs[k+1]) <= tol*norm0 || len(basis) == k+1 {
				break
			}
		}
		// The combination is formed once, at the end of the round, and
		// preconditioned as a whole: M⁻¹ is linear and need not be kept for
		// each vector.
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

// scaled returns a copy of v times s, and leaves v scaled too: callers are done
// with it.
func scaled(v []float64, s float64) []float64 {
	for i := range v {
		v[i] *= s
	}
	return append([]float64(nil), v...)
}

// rotated is the Hessenberg matrix of GMRES, made triangular by rotations as it
// grows. Column k has k+2 entries; the rotation k turns rows k and k+1 so that
// the lower one vanishes:
//
//	c = h_k/d    s = h_(k+1)/d    d = √(h_k² + h_(k+1)²)
type rotated struct {
	cols [][]float64
	c, s []float64
}

// add takes the next column and rotates it and the right-hand side.
//
// The right-hand side is turned along with it: its last entry then is the norm
// of the residual, with a sign.
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
//
// A zero on the diagonal is a direction that changes nothing; it gets none.
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
