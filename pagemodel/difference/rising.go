package difference

import "slices"

// rising are the indexes of a longest rising run of the numbers, not necessarily
// next to each other.
func rising(numbers []int) []int {
	var ends []int // ends[k]: index of the least number that ends a run of k+1
	before := make([]int, len(numbers))
	for i, n := range numbers {
		k, _ := slices.BinarySearchFunc(ends, n, func(e, n int) int { return numbers[e] - n })
		before[i] = -1
		if k > 0 {
			before[i] = ends[k-1]
		}
		if k == len(ends) {
			ends = append(ends, i)
		} else {
			ends[k] = i
		}
	}
	if len(ends) == 0 {
		return nil
	}
	run := make([]int, len(ends))
	for k, i := len(ends)-1, ends[len(ends)-1]; k >= 0; k, i = k-1, before[i] {
		run[k] = i
	}
	return run
}
