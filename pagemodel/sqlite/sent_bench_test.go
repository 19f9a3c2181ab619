package sqlite

import (
	"strconv"
	"testing"
	"time"

	"headland/pagemodel"
)

// BenchmarkMarkSent measures the marking of a book of ten thousand lines, each
// with its place, against one edit of the same book: x_edit is the ratio of
// their medians.
func BenchmarkMarkSent(b *testing.B) {
	s, err := Create(newPath(b), bookOf(400, 7))
	if err != nil {
		b.Fatal(err)
	}
	defer s.Close()
	places := placesOf(s.Collection())
	var rounds, edits []time.Duration
	n := 0
	for b.Loop() {
		n++
		start := time.Now()
		mustDo(b, s, titled("draft "+strconv.Itoa(n)))
		between := time.Now()
		if _, err := s.MarkSent(pagemodel.MarkSent{Name: strconv.Itoa(n)}, places); err != nil {
			b.Fatal(err)
		}
		edits, rounds = append(edits, between.Sub(start)), append(rounds, time.Since(between))
	}
	b.ReportMetric(float64(len(places)), "lines")
	b.ReportMetric(float64(median(rounds))/float64(median(edits)), "x_edit")
	b.ReportMetric(float64(median(rounds).Microseconds()), "us/round")
}

// BenchmarkSent measures the reading of a round after five hundred edits, of
// poems here and there, against the opening of the book: x_open is the ratio of
// their medians.
func BenchmarkSent(b *testing.B) {
	path := newPath(b)
	s, err := Create(path, bookOf(400, 7))
	if err != nil {
		b.Fatal(err)
	}
	r, _ := mustMark(b, s, "first proofs")
	refs := firstLines(s.Collection())
	for n := range 500 {
		mustDo(b, s, pagemodel.Retype{LineRef: refs[n*7%len(refs)], Text: "draft " + strconv.Itoa(n)})
	}
	var opens, sents []time.Duration
	for b.Loop() {
		mustClose(b, s)
		start := time.Now()
		if s, err = Open(path); err != nil {
			b.Fatal(err)
		}
		between := time.Now()
		if _, _, err := s.Sent(r.ID); err != nil {
			b.Fatal(err)
		}
		opens, sents = append(opens, between.Sub(start)), append(sents, time.Since(between))
	}
	mustClose(b, s)
	b.ReportMetric(float64(median(sents))/float64(median(opens)), "x_open")
	b.ReportMetric(float64(median(sents).Microseconds()), "us/sent")
}

// BenchmarkPoemStates measures the reading of five hundred states of one poem.
func BenchmarkPoemStates(b *testing.B) {
	s, err := Create(newPath(b), bookOf(400, 7))
	if err != nil {
		b.Fatal(err)
	}
	defer s.Close()
	ref := firstLines(s.Collection())[0]
	for n := range 500 {
		mustDo(b, s, pagemodel.Retype{LineRef: ref, Text: "draft " + strconv.Itoa(n)})
	}
	for b.Loop() {
		if states, err := s.PoemStates(ref.Poem); err != nil || len(states) != 501 {
			b.Fatal(len(states), err)
		}
	}
}
