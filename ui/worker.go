package ui

import (
	"sync"
	"sync/atomic"
	"time"
)

// worker does one job at a time beside the window. What a job has to say comes
// back by post, on the window's goroutine.
type worker struct {
	post func(func())
	busy atomic.Bool
	halt atomic.Bool
	done sync.WaitGroup
}

// progress tells how far a job is; false from it asks the job to stop.
type progress = func(done, of int) bool

// tellEvery is how often a job's progress is told: more would only queue up.
const tellEvery = time.Second / 30

// begin starts a job; false while another runs. The job is told by the bool
// that it should stop. tell and end are called on the window's goroutine, end
// once, when the job is over.
func (w *worker) begin(job func(progress) error, tell func(done, of int), end func(error)) bool {
	if !w.busy.CompareAndSwap(false, true) {
		return false
	}
	w.halt.Store(false)
	w.done.Add(1)
	go w.work(job, tell, end)
	return true
}

func (w *worker) work(job func(progress) error, tell func(done, of int), end func(error)) {
	defer w.done.Done()
	var told time.Time
	err := job(func(done, of int) bool {
		if time.Since(told) >= tellEvery {
			told = time.Now()
			w.post(func() { tell(done, of) })
		}
		return !w.halt.Load()
	})
	w.busy.Store(false)
	w.post(func() { end(err) })
}

// after calls back on the window's goroutine once the time has passed.
func (w *worker) after(wait time.Duration, back func()) {
	time.AfterFunc(wait, func() { w.post(back) })
}

// cancel asks the job to stop.
func (w *worker) cancel() { w.halt.Store(true) }

// stop asks the job to stop and waits until it has.
func (w *worker) stop() {
	w.cancel()
	w.done.Wait()
}
