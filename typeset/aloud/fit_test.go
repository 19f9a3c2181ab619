package aloud

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"headland/pagemodel"
)

// made are timings of made items read in a voice, each off by some part of itself
// (a normal deviate).
func made(n int, v pagemodel.Voice, part float64, seed uint64) []Observation {
	r := rand.New(rand.NewPCG(seed, 5))
	var all []Observation
	for range n {
		stanzas, deep, wide := 1+r.IntN(8), 1+r.IntN(7), 4+r.IntN(9)
		c := Counts{Lines: stanzas * deep, Stanzas: stanzas, Syllables: stanzas * deep * wide, Titled: r.IntN(4) > 0}
		c.RunOns = r.IntN(c.Lines - stanzas + 1)
		c.Ends = c.Lines - stanzas - c.RunOns
		switch r.IntN(3) {
		case 0:
			c.TalkWords = r.IntN(120)
		case 1:
			c.TalkGiven = float64(r.IntN(40))
		}
		seconds := c.In(v).Seconds
		all = append(all, Observation{Counts: c, Taken: seconds * (1 + part*r.NormFloat64())})
	}
	return all
}

// TestFitRecovers holds that constants that are known come out of made timings: a
// pace within 2 per cent where these are off by nothing or 1 per cent, within 6 where
// they are off by 5, and silences within these seconds. What is left of the
// difference is the hold of the voice before.
func TestFitRecovers(t *testing.T) {
	voices := []pagemodel.Voice{
		{Syllables: 150, LineEnd: 0.6, RunOn: 0.3, Stanza: 1.6, Title: 3.2, Words: 120},
		{Syllables: 240, LineEnd: 0.4, RunOn: 0.05, Stanza: 0.5, Title: 1, Words: 170},
		{Syllables: 200, LineEnd: 0.2, RunOn: 0.2, Stanza: 1.2, Title: 2.5, Words: 140},
	}
	for _, test := range []struct {
		timings                             int
		part, pace, line, runOn, wait, talk float64
	}{
		{60, 0, 0.02, 0.07, 0.07, 0.15, 0.02},
		{80, 0.01, 0.02, 0.08, 0.08, 0.2, 0.03},
		{240, 0.05, 0.06, 0.15, 0.15, 0.4, 0.08},
	} {
		for i, want := range voices {
			for seed := range uint64(5) {
				got, f := Fit(made(test.timings, want, test.part, seed), pagemodel.Voice{})
				name := fmt.Sprintf("%d timings off by %g, voice %d, seed %d", test.timings, test.part, i, seed)
				if !near(got.Syllables, want.Syllables, test.pace*want.Syllables) || !near(got.Words, want.Words, test.talk*want.Words) ||
					!near(got.LineEnd, want.LineEnd, test.line) || !near(got.RunOn, want.RunOn, test.runOn) ||
					!near(got.Stanza, want.Stanza, test.wait) || !near(got.Title, want.Title, 2*test.wait) {
					t.Errorf("%s: got %+v, want %+v", name, got, want)
				}
				if f.Timings != test.timings || len(f.Unheard)+len(f.Untold) > 0 || f.Is.Mean >= f.Was.Mean {
					t.Errorf("%s: %+v", name, f)
				}
			}
		}
	}
}

func near(a, b, within float64) bool { return math.Abs(a-b) <= within }

// TestFitOfFew holds that two timings move the pace and nothing else, towards what
// was timed, and say what they left.
func TestFitOfFew(t *testing.T) {
	usual := pagemodel.UsualVoice()
	slow := usual
	slow.Syllables = 150
	obs := made(2, slow, 0.02, 3)
	got, f := Fit(obs, usual)
	if got.Syllables > 165 || got.Syllables < 135 {
		t.Errorf("the pace is %.0f, want about 150", got.Syllables)
	}
	if got.Syllables = usual.Syllables; got != usual {
		t.Errorf("more than the pace was moved: %+v", got)
	}
	if left := len(f.Unheard) + len(f.Untold); left != int(constants)-1 || slices.Contains(f.Untold, Pace) {
		t.Errorf("left are %v and %v", f.Unheard, f.Untold)
	}
	if len(f.Off) != 2 || f.Is.Mean >= f.Was.Mean {
		t.Errorf("got %+v", f)
	}
}

// TestFitOfNothing holds that a voice stays as it is without timings, and that one
// nonsensical timing does not lead to nonsense.
func TestFitOfNothing(t *testing.T) {
	own := pagemodel.Voice{Syllables: 201, LineEnd: 0.5, RunOn: 0.1, Stanza: 1, Title: 3, Words: 131}
	for _, obs := range [][]Observation{nil, {{Counts: Counts{Syllables: 100, Lines: 10, Ends: 10}}}} {
		got, f := Fit(obs, own)
		if got != own || f.Timings != 0 || len(f.Unheard) != int(constants) || f.Was != (Miss{}) || f.Is != (Miss{}) {
			t.Errorf("got %+v, %+v", got, f)
		}
	}
	if got, _ := Fit(nil, pagemodel.Voice{}); got != pagemodel.UsualVoice() {
		t.Errorf("the zero voice became %+v", got)
	}
	c := Counts{Syllables: 100, Lines: 10, Ends: 9, Stanzas: 1}
	for _, taken := range []float64{0.001, 1e7} {
		got, _ := Fit([]Observation{{Counts: c, Taken: taken}}, own)
		if _, err := (pagemodel.SetVoice{Voice: got}).Apply(newShelf().Collection()); err != nil {
			t.Errorf("%g s for a poem: %v", taken, err)
		}
	}
}

// TestFitPassesOver holds that timings that can't be of a reading change nothing in
// the voice that comes of the others, and that where they are not few it is the voice
// that is taken to be far off.
func TestFitPassesOver(t *testing.T) {
	usual := pagemodel.UsualVoice()
	slow := usual
	slow.Syllables = 160
	good := made(12, slow, 0.01, 4)
	want, clean := Fit(good, usual)
	c := Counts{Syllables: 400, Lines: 40, Ends: 30, RunOns: 5, Stanzas: 5}
	s := c.In(usual).Seconds
	bad := []Observation{{Counts: c, Taken: 2}, {Counts: c, Taken: s / 3.01}, {Counts: c, Taken: s * 3.01}}
	got, f := Fit(slices.Concat(bad[:2], good, bad[2:]), usual)
	if got != want || f.Timings != 12 || f.Passed != 3 || f.Was != clean.Was || f.Is != clean.Is || len(f.Off) != 15 {
		t.Errorf("got %+v, %+v, want %+v, %+v", got, f, want, clean)
	}
	near := []Observation{{Counts: c, Taken: s / 2.99}, {Counts: c, Taken: s * 2.99}}
	if _, f := Fit(append(near, good...), usual); f.Passed != 0 || f.Timings != 14 {
		t.Errorf("within three times, %d are passed over", f.Passed)
	}
	for others, passed := range map[int]int{1: 0, 2: 1} {
		if _, f := Fit(append(bad[:1:1], good[:others]...), usual); f.Passed != passed || f.Timings != others+1-passed {
			t.Errorf("of %d timings %d are passed over, want %d", others+1, f.Passed, passed)
		}
	}
}

// TestFitUntold holds that constants that always come together can't be told
// apart: with a title to each one of one stanza, one of the two is left.
func TestFitUntold(t *testing.T) {
	usual := pagemodel.UsualVoice()
	slow := usual
	slow.Title, slow.Stanza = 4, 2
	var obs []Observation
	for i := range 40 {
		c := Counts{Syllables: 80 + 7*i, Lines: 12, Ends: i % 9, RunOns: 11 - i%9, Stanzas: 1, Titled: true}
		obs = append(obs, Observation{Counts: c, Taken: c.In(slow).Seconds})
	}
	got, f := Fit(obs, usual)
	if !slices.Contains(f.Untold, StanzaEnd) || !slices.Equal(f.Unheard, []Constant{TalkPace}) || got.Stanza != usual.Stanza || got.Words != usual.Words {
		t.Errorf("got %+v, untold %v, unheard %v", got, f.Untold, f.Unheard)
	}
	if f.Is.Mean > 0.5 || f.Was.Mean < 2 {
		t.Errorf("off by %+v, then %+v", f.Was, f.Is)
	}
}

// TestFitInBounds holds of any timings that the voice is one that may be set, that
// it fits no worse by the measure of the fit than the one before, and that what was
// left is as it was.
func TestFitInBounds(t *testing.T) {
	c := newShelf().Collection()
	observation := rapid.Custom(func(t *rapid.T) Observation {
		n := func(name string, to int) int { return rapid.IntRange(0, to).Draw(t, name) }
		return Observation{Taken: float64(n("ms", 600_000)) / 1000, Counts: Counts{
			Syllables: n("syllables", 900), Ends: n("ends", 60), RunOns: n("run-ons", 60), Stanzas: n("stanzas", 20),
			Titled: n("titled", 1) == 1, TalkWords: n("talk", 200), TalkGiven: float64(n("given", 60)),
		}}
	})
	rapid.Check(t, func(t *rapid.T) {
		obs := rapid.SliceOfN(observation, 0, 40).Draw(t, "timings")
		from := pagemodel.UsualVoice()
		got, f := Fit(obs, from)
		if _, err := (pagemodel.SetVoice{Voice: got}).Apply(c); err != nil {
			t.Fatal(err)
		}
		read := readOf(timedOf(obs), from)
		if was, is := loss(read, from, from), loss(read, got, from); is > was*(1+1e-9) {
			t.Fatalf("the loss is %g and was %g", is, was)
		}
		for _, k := range append(f.Unheard, f.Untold...) {
			if ratesOf(got)[k] != ratesOf(from)[k] {
				t.Fatalf("%v was left and is moved", k)
			}
		}
	})
}

// loss is what the fit makes least, written out.
func loss(obs []Observation, v, from pagemodel.Voice) (sum float64) {
	for _, o := range obs {
		if o.Taken > 0 {
			sum += math.Pow(off(o, v)/(handSeconds+ownPart*o.Taken), 2)
		}
	}
	now, was := ratesOf(v), ratesOf(from)
	for k, spread := range spreads(was) {
		sum += math.Pow((now[k]-was[k])/spread, 2)
	}
	return sum
}

// TestFitIsLeast holds that no small step from the voice that was worked out makes
// the loss less, so that it is the least there is: the loss is convex.
func TestFitIsLeast(t *testing.T) {
	from := pagemodel.UsualVoice()
	for seed := range uint64(20) {
		voice := pagemodel.Voice{Syllables: 220, LineEnd: 0.05, RunOn: 0, Stanza: 0.3, Title: 0.4, Words: 150}
		obs := made(60, voice, 0.05, seed)
		got, f := Fit(obs, from)
		least := loss(obs, got, from)
		for k := range constants {
			for _, step := range []float64{-1e-4, 1e-4} {
				rate := ratesOf(got)[k] + step
				if rate < limits[k][0] || slices.Contains(f.Untold, k) {
					continue
				}
				if l := loss(obs, withRate(got, k, rate), from); l < least {
					t.Errorf("seed %d: %v changed by %g makes the loss %g of %g", seed, k, step, l, least)
				}
			}
		}
	}
}

// TestMiss holds how far off is counted, by hand.
func TestMiss(t *testing.T) {
	v := pagemodel.Voice{Syllables: 60, Words: 60}
	obs := []Observation{{Counts: Counts{Syllables: 10}, Taken: 12}, {Counts: Counts{Syllables: 20}, Taken: 15}, {Counts: Counts{Syllables: 20}}}
	if got := MissOf(obs, v); got != (Miss{Mean: 3.5, Worst: 5, Total: 3}) {
		t.Errorf("got %+v", got)
	}
	if _, f := Fit(obs, v); !slices.Equal(f.Off, []float64{-2, 5, 0}) || f.Was != MissOf(obs, v) {
		t.Errorf("got %+v", f)
	}
}
