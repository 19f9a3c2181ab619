package aloud

import (
	"cmp"
	"math"
	"slices"
)

// problem is a least-squares problem about how far each constant is to move, in
// units of its spread. To be made least is half of move·normal·move, less
// toward·move; without timings, normal is 1 on its diagonal.
type problem struct {
	timings       int
	now, spread   vector
	normal        matrix
	toward        vector
	least, utmost vector // of the moves
	moved         []Constant
}

// problemOf sets up the problem from timings and a present voice's rates.
func problemOf(timed []Observation, now vector) *problem {
	p := &problem{now: now, spread: spreads(now)}
	for k := range constants {
		p.normal[k][k] = 1
		p.moved = append(p.moved, k)
		p.least[k], p.utmost[k] = (limits[k][0]-now[k])/p.spread[k], (limits[k][1]-now[k])/p.spread[k]
	}
	for _, o := range timed {
		p.add(o)
	}
	return p
}

// limits of the rates: those that a voice may have, in seconds.
var limits = [constants][2]float64{
	Pace: {60.0 / 1000, 60.0 / 30}, LineEnd: {0, 60}, RunOn: {0, 60}, StanzaEnd: {0, 60},
	TitleTime: {0, 60}, TalkPace: {60.0 / 600, 60.0 / 20},
}

// add adds the equation of one timing.
func (p *problem) add(o Observation) {
	p.timings++
	counts := o.vector()
	inexact := handSeconds + ownPart*o.Taken
	wanting := (o.Taken - o.TalkGiven - p.now.times(counts)) / inexact
	var x vector
	for k := range x {
		x[k] = counts[k] * p.spread[k] / inexact
	}
	for k := range x {
		p.toward[k] += x[k] * wanting
		for j := range x {
			p.normal[k][j] += x[k] * x[j]
		}
	}
}

// leaveUnheard takes out of the problem what no timing has to do with.
func (p *problem) leaveUnheard() (left []Constant) {
	for k := range constants {
		if p.normal[k][k] == 1 {
			left = append(left, k)
			p.leave(k)
		}
	}
	return left
}

// leaveUntold takes out, one by one, what the timings tell least of, until all
// that is left is told and there are timings enough for it.
func (p *problem) leaveUntold() (left []Constant) {
	for len(p.moved) > 1 {
		unknown := p.normal.inverse(p.moved)
		least := slices.MaxFunc(p.besidesPace(), func(a, b Constant) int { return cmp.Compare(unknown[a][a], unknown[b][b]) })
		if unknown[least][least] <= 1-toldFrom && len(p.moved) <= max(1, p.timings/timingsEach) {
			break
		}
		left = append(left, least)
		p.leave(least)
	}
	slices.Sort(left)
	return left
}

// besidesPace are the constants to be moved but the pace, or the pace where it is
// the only one.
func (p *problem) besidesPace() []Constant {
	if p.moved[0] == Pace && len(p.moved) > 1 {
		return p.moved[1:]
	}
	return p.moved
}

func (p *problem) leave(k Constant) {
	p.moved = slices.DeleteFunc(p.moved, func(m Constant) bool { return m == k })
}

// rates solves the problem by descent along one constant after another, each held
// within its limits: the problem is convex, so this comes to the one solution.
func (p *problem) rates() vector {
	var move vector
	for step := math.Inf(1); step > 1e-9; {
		step = 0
		for _, k := range p.moved {
			pull := p.toward[k]
			for _, j := range p.moved {
				pull -= p.normal[k][j] * move[j]
			}
			to := min(max(move[k]+pull/p.normal[k][k], p.least[k]), p.utmost[k])
			step = max(step, math.Abs(to-move[k]))
			move[k] = to
		}
	}
	rates := p.now
	for _, k := range p.moved {
		rates[k] = min(max(rates[k]+move[k]*p.spread[k], limits[k][0]), limits[k][1])
	}
	return rates
}
