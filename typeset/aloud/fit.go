package aloud

import (
	"math"

	"headland/pagemodel"
)

// Fitness says how well a voice fits what was timed.
type Fitness struct {
	Timings int        // that were gone by
	Passed  int        // timings that were passed over, as nobody reads so fast or so slowly
	Was     Miss       // of the voice before, for the timings that were gone by
	Is      Miss       // of the voice that was worked out, likewise
	Off     []float64  // of the voice before, for each observation: seconds reckoned less taken
	Unheard []Constant // nothing that was timed has to do with them; they were left as they were
	Untold  []Constant // there are too few timings to tell them from the rest, or they always come together; likewise left
}

// Miss is how far off reckoned times are, in seconds.
type Miss struct {
	Mean  float64 `json:"mean_s"`  // of an item, either way
	Worst float64 `json:"worst_s"` // item, either way
	Total float64 `json:"total_s"` // reckoned less taken, of all together
}

// What the fit takes for granted, our own choice throughout.
const (
	// A timing may be off by half a second of the hand and by one part in
	// twenty-five of itself.
	handSeconds = 0.5
	ownPart     = 0.04

	// toldFrom is how much of what was not known of a constant the timings must
	// take away (as a share of its variance) for it to be moved.
	toldFrom = 0.5

	// timingsEach is how many timings there must be for each constant that is
	// moved; one is moved by any.
	timingsEach = 5

	// timesOff is how many times longer or shorter than the present voice reckons a
	// timing may be: what is further off was leafed past, or the reader was called
	// away. It is passed over as long as othersEach others are left for each that
	// is; else it is the voice that is far off.
	timesOff   = 3.0
	othersEach = 2
)

// spreads is how far from the present voice a constant may well lie: a pace by
// three parts in ten, silences by so many seconds.
func spreads(rates vector) vector {
	return vector{
		Pace: 0.3 * rates[Pace], LineEnd: 0.3, RunOn: 0.2, StanzaEnd: 0.6,
		TitleTime: 1.5, TalkPace: 0.3 * rates[TalkPace],
	}
}

// Fit works out the voice that comes nearest to what was timed: by least squares,
// weighted by how exact a timing can be and held to the present voice (ridge
// regression: A. Hoerl and R. Kennard, Technometrics 12, 1970; from memory), with
// no silence below 0. Where the timings don't tell a constant from the others it
// stays as it is, the pace last of all; with a few timings only the pace moves.
// Observations without a time are passed over, and so are times that can't be a
// reading's. It depends on nothing else.
func Fit(obs []Observation, from pagemodel.Voice) (pagemodel.Voice, Fitness) {
	var f Fitness
	for _, o := range obs {
		f.Off = append(f.Off, off(o, from))
	}
	obs = timedOf(obs)
	read := readOf(obs, from)
	f.Passed, obs = len(obs)-len(read), read
	p := problemOf(obs, ratesOf(from))
	f.Timings, f.Was = p.timings, MissOf(obs, from)
	f.Unheard = p.leaveUnheard()
	f.Untold = p.leaveUntold()
	v, rates := orUsual(from), p.rates()
	for _, k := range p.moved {
		v = withRate(v, k, rates[k])
	}
	f.Is = MissOf(obs, v)
	return v, f
}

// timedOf are the observations that have a time.
func timedOf(obs []Observation) (timed []Observation) {
	for _, o := range obs {
		if o.Taken > 0 {
			timed = append(timed, o)
		}
	}
	return timed
}

// readOf are the timings that lie near enough to what a voice reckons to be of a
// reading; all of them where too few do.
func readOf(timed []Observation, v pagemodel.Voice) (read []Observation) {
	for _, o := range timed {
		if s := o.In(v).Seconds; o.Taken*timesOff >= s && o.Taken <= s*timesOff {
			read = append(read, o)
		}
	}
	if len(read) < othersEach*(len(timed)-len(read)) {
		return timed
	}
	return read
}

// MissOf is how far off a voice is for what was timed.
func MissOf(obs []Observation, v pagemodel.Voice) Miss {
	var m Miss
	n := 0
	for _, o := range obs {
		if o.Taken <= 0 {
			continue
		}
		n++
		d := off(o, v)
		m.Mean += math.Abs(d)
		m.Worst = max(m.Worst, math.Abs(d))
		m.Total += d
	}
	m.Mean /= float64(max(n, 1))
	return m
}

// off is what a voice reckons for an item less what it took; 0 without a time.
func off(o Observation, v pagemodel.Voice) float64 {
	if o.Taken <= 0 {
		return 0
	}
	return o.In(v).Seconds - o.Taken
}
