package ui

import (
	"context"
	"sync"

	"headland/typeset/order"
)

// told is what was found and is not yet shown.
type told struct {
	mutex  sync.Mutex
	found  []order.Found
	posted bool
}

// untilHalted is done when the worker is asked to stop. It says so by its error
// alone, for which it is asked again and again.
type untilHalted struct {
	context.Context
	worker *worker
}

// Err is not nil once the worker is to stop.
func (u untilHalted) Err() error {
	if u.worker.halt.Load() {
		return context.Canceled
	}
	return nil
}

// hear takes an order as it is found, on the worker's goroutine, and hands it to
// the window with those that come before the window has shown them.
func (f *foundOrders) hear(one order.Found) {
	f.told.mutex.Lock()
	defer f.told.mutex.Unlock()
	f.told.found = append(f.told.found, one)
	if !f.told.posted {
		f.told.posted = true
		f.w.worker.post(f.add)
	}
}
