package aloud

// matrix has a row and a column for each constant.
type matrix [constants][constants]float64

// inverse is the inverse of the rows and columns of some constants, 0 elsewhere, by
// Gauss and Jordan's elimination. It is for positive definite matrices, which need
// no pivots.
func (m matrix) inverse(of []Constant) matrix {
	var inv matrix
	for _, k := range of {
		inv[k][k] = 1
	}
	for _, k := range of {
		by := m[k][k]
		for _, j := range of {
			m[k][j], inv[k][j] = m[k][j]/by, inv[k][j]/by
		}
		for _, i := range of {
			times := m[i][k]
			if i == k {
				continue
			}
			for _, j := range of {
				m[i][j] -= times * m[k][j]
				inv[i][j] -= times * inv[k][j]
			}
		}
	}
	return inv
}
