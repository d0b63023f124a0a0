package field

import (
	"context"
	"sync"
	"sync/atomic"
)

// build computes all blocks with some goroutines. Each block depends on
// nothing but the panels, so the result is the same for any number of them.
//
// The workers take batches of blocks off one counter. A block near the diagonal
// takes much longer than one far from it, so that fixed shares would leave some
// waiting.
//
// The memory that the blocks hold is counted as it grows: the estimate before
// the run is an average, and a crowded body may need more. The run ends where
// the limit is reached.
func build(ctx context.Context, p *panels, t *tree, double, galerkin bool, tol float64, s *settings) (*operator,
	error) {
	op := &operator{t: t, double: double, tol: tol, blocks: t.partition(double)}
	var next, done, held atomic.Int64
	var wait sync.WaitGroup
	var mu sync.Mutex
	// Progress is told under a lock and never backwards: batches end in any
	// order.
	reported := 0
	most := s.limit - besides(p.len(), !double) // what the limit leaves for the blocks
	for range s.workers {
		wait.Add(1)
		go func() {
			defer wait.Done()
			// Each worker has a compressor of its own, with its chunks and
			// vectors.
			c := compressor{tol: tol, e: evaluator{p: p, galerkin: galerkin}}
			// Small enough to end within a few blocks of a cancelled context,
			// large enough that the counter costs nothing.
			const batch = 16
			for ctx.Err() == nil && held.Load() <= most {
				lo := int(next.Add(batch)) - batch
				if lo >= len(op.blocks) {
					break
				}
				before := c.bytes
				hi := min(lo+batch, len(op.blocks))
				for k := lo; k < hi; k++ {
					c.fill(&op.blocks[k], t)
				}
				held.Add(c.bytes - before)
				n := int(done.Add(int64(hi - lo)))
				if s.progress != nil {
					mu.Lock()
					if n > reported { // never backwards
						reported = n
						s.progress("operator", n, len(op.blocks))
					}
					mu.Unlock()
				}
			}
		}()
	}
	wait.Wait()
	op.bytes = held.Load()
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	if op.bytes > most { // that much and more: the rest was not computed
		return nil, &CostError{Cost: Cost{Unknowns: p.len(), Bytes: op.bytes + s.limit - most}, Limit: s.limit}
	}
	op.share(s.workers)
	return op, nil
}

// share divides the blocks among the workers of the product by their size.
//
// The shares are runs of neighbouring blocks, so that each worker reads its
// part of the memory in order. They depend on the number of workers, and with
// them the order of the sums: this is why another number gives other roundings.
func (op *operator) share(workers int) {
	var total int
	for k := range op.blocks {
		total += len(op.blocks[k].data)
	}
	// A share ends at the block where the running sum of the sizes passes its
	// part of the total; a worker may get none where blocks are few.
	n := op.t.nodes[0].hi
	op.sums = make([][]float64, workers)
	sum, w := 0, 1
	for k := range op.blocks {
		sum += len(op.blocks[k].data)
		for w < workers && sum >= total/workers*w {
			op.shares = append(op.shares, k+1)
			w++
		}
	}
	for len(op.shares) < workers {
		op.shares = append(op.shares, len(op.blocks))
	}
	op.shares[workers-1] = len(op.blocks)
	for w := range op.sums {
		op.sums[w] = make([]float64, n)
	}
}

// apply sets y = G·g + K·k, where k may be nil for an operator without double layer.
//
// Every worker adds into a vector of its own, and the vectors are added in one
// order. A vector for all, with locks or without, would give sums in the order
// in which the workers come by.
//
// This is where a large run spends half of its time: each number of the blocks
// is read once and used once.
func (op *operator) apply(g, k, y []float64) {
	var wait sync.WaitGroup
	lo := 0
	for w, hi := range op.shares {
		wait.Add(1)
		go func(blocks []block, y []float64) {
			defer wait.Done()
			clear(y)
			var t, z []float64
			for b := range blocks {
				t, z = op.applyBlock(&blocks[b], g, k, y, t, z)
			}
		}(op.blocks[lo:hi], op.sums[w])
		lo = hi
	}
	wait.Wait()
	// Added in the order of the workers, whichever was done first.
	copy(y, op.sums[0])
	for _, s := range op.sums[1:] { // always in this order
		axpy(1, s, y)
	}
}

// The two layers of a cluster are put behind each other, as the rows of a block
// have them.
func (op *operator) applyBlock(b *block, g, k, y, t, z []float64) (t2, z2 []float64) {
	row, col := &op.t.nodes[b.row], &op.t.nodes[b.col]
	m, n := row.hi-row.lo, col.hi-col.lo
	y = y[row.lo:row.hi]
	width := n
	x := g[col.lo:col.hi]
	if b.double {
		width = 2 * n
		z = grow(z, width)
		copy(z, x)
		copy(z[n:], k[col.lo:col.hi])
		x = z
	}
	// y += A·x, row by row.
	if b.rank < 0 {
		for i := range y {
			y[i] += dot32(b.data[i*width:(i+1)*width], x)
		}
		return t, z
	}
	// y += U·(Vᵀ·x): two thin products in place of a wide one.
	rank := int(b.rank)
	t = grow(t, rank)
	for r := range t {
		t[r] = dot32(b.data[rank*m+r*width:rank*m+(r+1)*width], x)
	}
	expand(b.data[:rank*m], t, y)
	return t, z
}

// dot32 sums in double precision; the factors alone are single.
//
// A sum in single precision would round at every one of its thousands of steps.
func dot32(a []float32, x []float64) float64 {
	x = x[:len(a)]
	// Four sums that do not wait for each other.
	var s0, s1, s2, s3 float64
	i := 0
	for ; i+4 <= len(a); i += 4 {
		s0 += float64(a[i]) * x[i]
		s1 += float64(a[i+1]) * x[i+1]
		s2 += float64(a[i+2]) * x[i+2]
		s3 += float64(a[i+3]) * x[i+3]
	}
	for ; i < len(a); i++ {
		s0 += float64(a[i]) * x[i]
	}
	return s0 + s1 + (s2 + s3)
}

// expand adds the columns u, times t, to y, four at a time.
//
// Four columns at a time read and write y once for all of them.
func expand(u []float32, t, y []float64) {
	m := len(y)
	for len(t) >= 4 {
		a, b, c, d := u[:m], u[m:2*m], u[2*m:3*m], u[3*m:4*m]
		ta, tb, tc, td := t[0], t[1], t[2], t[3]
		for i := range y {
			y[i] += float64(a[i])*ta + float64(b[i])*tb + (float64(c[i])*tc + float64(d[i])*td)
		}
		u, t = u[4*m:], t[4:]
	}
	for r, s := range t {
		for i, v := range u[r*m : (r+1)*m] {
			y[i] += float64(v) * s
		}
	}
}
