package ui

import "headland/pagemodel"

// markWords notes the words of each version that the other does not have, in
// order; false where all are alike.
func (d *versionDiff) markWords() bool {
	var all [2][]lineWord
	for side := range all {
		d.differ[side] = make([]map[[2]int]bool, len(d.lines[side]))
		for i, l := range d.lines[side] {
			d.differ[side][i] = map[[2]int]bool{}
			for _, w := range pagemodel.Words(l.Text()) {
				all[side] = append(all[side], lineWord{i, [2]int{w.Start, w.End}, l.Text()[w.Start:w.End]})
			}
		}
	}
	shared := sharedWords(all[0], all[1])
	any := false
	for side := range all {
		for i, w := range all[side] {
			if !shared[side][i] {
				d.differ[side][w.line][w.at] = true
				any = true
			}
		}
	}
	return any
}

// lineWord is a word of one of several lines.
type lineWord struct {
	line int
	at   [2]int // from byte to byte of the line
	text string
}

// sharedWords are the words that two texts share in one order, as many as there
// can be (the longest common subsequence).
func sharedWords(a, b []lineWord) [2][]bool {
	most := make([][]int, len(a)+1)
	for i := range most {
		most[i] = make([]int, len(b)+1)
	}
	for i := len(a) - 1; i >= 0; i-- {
		for j := len(b) - 1; j >= 0; j-- {
			most[i][j] = max(most[i+1][j], most[i][j+1])
			if a[i].text == b[j].text {
				most[i][j] = most[i+1][j+1] + 1
			}
		}
	}
	shared := [2][]bool{make([]bool, len(a)), make([]bool, len(b))}
	for i, j := 0, 0; i < len(a) && j < len(b); {
		switch {
		case a[i].text == b[j].text:
			shared[0][i], shared[1][j] = true, true
			i, j = i+1, j+1
		case most[i+1][j] >= most[i][j+1]:
			i++
		default:
			j++
		}
	}
	return shared
}
