package onscreen

import (
	"fmt"
	"image"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"
)

// The figures below compare the program with the bare window, by turns in one
// run, so that both meet the same machine.

// BenchmarkMotionToPixel takes a line's rule by the hand and measures the time
// from a motion of the mouse until the page on the screen is what it is to be,
// for motions one at a time and for the last of eight in a burst. It is held
// against two bare windows that fill a picture of a page's size on each motion:
// x_sheet where there is nothing else, x_like where there is what any window
// with a book on a desk has, a ground and another page.
func BenchmarkMotionToPixel(b *testing.B) {
	for name, motions := range map[string]int{"single": 1, "burst": 8} {
		b.Run(name, func(b *testing.B) { motionToPixel(b, motions) })
	}
}

// rounds and samples are how many times the two windows take turns, and how
// many motions each is measured for at a turn.
const (
	rounds  = 3
	samples = 80
)

func motionToPixel(b *testing.B, motions int) {
	s := openScreen(b)
	var ours, sheet, like []time.Duration
	for range rounds {
		ours = append(ours, dragFigures(b, s, motions)...)
		sheet = append(sheet, bareFigures(b, s, "sheet", motions)...)
		like = append(like, bareFigures(b, s, "page", motions)...)
	}
	for b.Loop() {
		// Measured above: what a run takes is no figure of the program's.
	}
	b.ReportMetric(0, "ns/op")
	b.ReportMetric(milliseconds(p95(ours)), "ms_p95")
	b.ReportMetric(milliseconds(p95(sheet)), "ms_p95_sheet")
	b.ReportMetric(float64(p95(ours))/float64(p95(sheet)), "x_sheet")
	b.ReportMetric(float64(p95(ours))/float64(p95(like)), "x_like")
}

// dragFigures drags the end of a line of the demo to and fro.
func dragFigures(b *testing.B, s *screen, motions int) []time.Duration {
	home := b.TempDir()
	book := demoBook(b, home)
	p := start(b, s, home, headland, book.path)
	defer p.kill()
	l := book.find(b, s)
	line := book.lineEnding(b, lineEnd)
	from, to := dragOf(book, l, line.Page, line.Ref)
	s.drag(from, to)
	defer s.release()
	return s.toAndFro(b, to, to.Sub(image.Pt(int(60*l.scale), 0)), l.about(from), motions)
}

// bareFigures drags to and fro in the bare window.
func bareFigures(b *testing.B, s *screen, window string, motions int) []time.Duration {
	p := start(b, s, b.TempDir(), bare, window)
	defer p.kill()
	left, right := image.Pt(800, 400), image.Pt(1100, 400)
	eventually(b, "the bare page", func() bool { return s.isGrey(left) })
	s.drag(left.Sub(image.Pt(20, 0)), left)
	defer s.release()
	return s.toAndFro(b, left, right, image.Rect(760, 300, 1160, 480), motions)
}

// isGrey says that a pixel is the light grey of the bare page.
func (s *screen) isGrey(at image.Point) bool {
	data, err := s.pixels(image.Rectangle{Min: at, Max: at.Add(image.Pt(1, 1))})
	return err == nil && rgba(data).R == 240 && rgba(data).B == 240
}

// toAndFro moves the hand between two places and measures, for each, from the
// last motion sent until a part of the screen looks as it does at rest there.
func (s *screen) toAndFro(b *testing.B, here, there image.Point, part image.Rectangle, motions int) []time.Duration {
	places := [2]image.Point{here, there}
	var looks [2]string
	for i := range places {
		s.move(places[i])
		looks[i] = s.settle(b, part)
	}
	if looks[0] == looks[1] {
		b.Fatal("the screen looks the same wherever the hand is")
	}
	var took []time.Duration
	for i := range samples {
		from, to := places[(i+1)%2], places[i%2]
		// Not in step with the screen's own beat of 60 a second.
		time.Sleep(time.Duration(40+7*i%23) * time.Millisecond)
		for n := 1; n < motions; n++ {
			s.fake(6, 0, from.Add(to.Sub(from).Mul(n).Div(motions)))
		}
		s.move(to)
		took = append(took, s.until(b, part, looks[i%2]))
	}
	return took
}

// until waits, without a pause, for a part of the screen to look as it should.
func (s *screen) until(b *testing.B, part image.Rectangle, look string) time.Duration {
	begun := time.Now()
	for s.look(part) != look {
		if time.Since(begun) > patience {
			b.Fatal("the screen did not follow the hand")
		}
	}
	return time.Since(begun)
}

// BenchmarkStart measures from starting the program until its first spread is
// on the screen, against the empty window's first picture.
func BenchmarkStart(b *testing.B) {
	s := openScreen(b)
	home := b.TempDir()
	book := demoBook(b, home)
	ours := func() time.Duration {
		return s.startTime(b, home, headland, func() bool {
			top, bottom := paperRun(s, s.size.X/2+s.size.X/44)
			return bottom-top > s.size.Y/2
		}, book.path)
	}
	theirs := func() time.Duration {
		return s.startTime(b, home, bare, func() bool {
			data, err := s.pixels(image.Rect(700, 450, 701, 451))
			return err == nil && rgba(data).G == 255
		}, "empty")
	}
	ours() // the first starts fill the caches of both
	theirs()
	var a, c []time.Duration
	for range 7 {
		a, c = append(a, ours()), append(c, theirs())
	}
	for b.Loop() {
		// Measured above.
	}
	b.ReportMetric(0, "ns/op")
	b.ReportMetric(milliseconds(median(a)), "ms_start")
	b.ReportMetric(milliseconds(median(c)), "ms_start_bare")
	b.ReportMetric(float64(median(a))/float64(median(c)), "x_bare")
}

// startTime starts a program, waits until what it should show is there, and
// ends it.
func (s *screen) startTime(b *testing.B, home, pkg string, shown func() bool, args ...string) time.Duration {
	b.Helper()
	build(b, pkg)
	begun := time.Now()
	p := run(b, s, home, pkg, args...)
	defer p.kill()
	for !shown() {
		if time.Since(begun) > patience {
			b.Fatalf("%s showed nothing", pkg)
		}
		time.Sleep(time.Millisecond)
	}
	took := time.Since(begun)
	p.kill()
	eventually(b, "the screen to be empty again", func() bool { return !shown() })
	return took
}

// BenchmarkMemory measures the most memory that the program has held with the
// demo open and a line dragged, above what the empty window holds.
func BenchmarkMemory(b *testing.B) {
	s := openScreen(b)
	var ours, theirs []int
	for range 3 {
		ours, theirs = append(ours, memoryOfDemo(b, s)), append(theirs, memoryOfBare(b, s))
	}
	for b.Loop() {
		// Measured above.
	}
	slices.Sort(ours)
	slices.Sort(theirs)
	b.ReportMetric(0, "ns/op")
	b.ReportMetric(float64(ours[1])/1024, "MB_peak")
	b.ReportMetric(float64(theirs[1])/1024, "MB_peak_bare")
	b.ReportMetric(float64(ours[1]-theirs[1])/1024, "MB_above_bare")
}

func memoryOfDemo(b *testing.B, s *screen) int {
	home := b.TempDir()
	book := demoBook(b, home)
	p := start(b, s, home, headland, book.path)
	defer p.kill()
	l := book.find(b, s)
	line := book.lineEnding(b, lineEnd)
	s.drag(dragOf(book, l, line.Page, line.Ref))
	defer s.release()
	s.settle(b, image.Rectangle{Max: s.size})
	return peakMemory(b, p.cmd.Process.Pid)
}

func memoryOfBare(b *testing.B, s *screen) int {
	p := start(b, s, b.TempDir(), bare, "empty")
	defer p.kill()
	s.settle(b, image.Rectangle{Max: s.size})
	return peakMemory(b, p.cmd.Process.Pid)
}

// peakMemory is the most that a process has held in memory, in KB: VmHWM of
// Linux's proc(5).
func peakMemory(b *testing.B, pid int) int {
	b.Helper()
	data, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", pid))
	if err != nil {
		b.Fatal(err)
	}
	for line := range strings.Lines(string(data)) {
		if rest, ok := strings.CutPrefix(line, "VmHWM:"); ok {
			n, err := strconv.Atoi(strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(rest), "kB")))
			if err != nil {
				b.Fatal(err)
			}
			return n
		}
	}
	b.Fatal("the system does not say how much memory a process has held")
	return 0
}

func milliseconds(d time.Duration) float64 { return float64(d.Microseconds()) / 1000 }

func median(d []time.Duration) time.Duration { return share(d, 50) }

func p95(d []time.Duration) time.Duration { return share(d, 95) }

// share is the duration that so many of a hundred do not exceed.
func share(d []time.Duration, percent int) time.Duration {
	d = slices.Sorted(slices.Values(d))
	return d[min(len(d)-1, len(d)*percent/100)]
}
