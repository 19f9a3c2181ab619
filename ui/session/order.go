package session

import (
	"context"

	"headland/typeset"
	"headland/typeset/echoes"
	"headland/typeset/order"
)

// Toll is what the order of the book that is shown costs.
func (s *Session) Toll() order.Toll { return order.TollOf(s.Setting()) }

// OrderSearch is a search for another order of the committed book. It reads nothing
// of the session, so it may be run on another goroutine.
type OrderSearch struct{ of *typeset.Setting }

// OrderSearch makes a search. Nothing is ever applied by it.
func (s *Session) OrderSearch() OrderSearch { return OrderSearch{s.committed} }

// Run looks until ctx is done or nothing better can be: see [order.Search].
func (o OrderSearch) Run(ctx context.Context, conditions []order.Condition, found func(order.Found)) error {
	return order.Search(ctx, o.of, conditions, found)
}

// SearchOrder is a search that is run at once.
func (s *Session) SearchOrder(ctx context.Context, conditions []order.Condition, found func(order.Found)) error {
	return s.OrderSearch().Run(ctx, conditions, found)
}

// Echoes are what comes back in the book that is shown.
func (s *Session) Echoes() []echoes.Echo { return s.echoes.Of(s.Setting()) }
