package pagemodel

import (
	"strings"
	"testing"
)

// TestItemsHaveIdentities holds that every item of all running orders has an
// identity of its own, which it keeps.
func TestItemsHaveIdentities(t *testing.T) {
	do := func(c *Collection, r Reading) *Collection {
		d, err := SetReading{r}.Apply(c)
		if err != nil {
			t.Fatal(err)
		}
		return d
	}
	c := do(testBook(), Reading{Name: "Thursday", Items: []Item{{Before: "One."}, {Before: "Two."}, {Before: "Three.", ID: 1 << 40}}})
	first := c.Readings()[0]
	if same := do(c, first); same != c {
		t.Error("the same running order changed the collection")
	}
	turned := first
	turned.Items = []Item{first.Items[2], first.Items[0], first.Items[0]}
	c = do(c, turned)
	copied := c.Readings()[0]
	copied.ID, copied.Name = 0, "Friday"
	c = do(c, copied)
	turned = c.Readings()[0]
	if turned.Items[0].ID != first.Items[2].ID || turned.Items[1].ID != first.Items[0].ID {
		t.Errorf("moved items became %+v", turned.Items)
	}
	seen := map[ItemID]bool{}
	for _, r := range c.Readings() {
		for _, item := range r.Items {
			if item.ID == 0 || seen[item.ID] || int64(item.ID) >= c.NextID() {
				t.Errorf("%s has an item with the identity %d; the next is %d", r.Name, item.ID, c.NextID())
			}
			seen[item.ID] = true
		}
	}
	if len(seen) != 6 {
		t.Errorf("there are %d items, want 6", len(seen))
	}
}

// TestReadingRefused holds what no running order can be.
func TestReadingRefused(t *testing.T) {
	c, err := SetReading{Reading{Name: "Thursday"}}.Apply(testBook())
	if err != nil {
		t.Fatal(err)
	}
	for _, test := range []struct {
		reading Reading
		words   string
	}{
		{Reading{Name: " \t"}, "needs a name"},
		{Reading{Name: "thursday "}, "already"},
		{Reading{Name: "Friday", ID: 9999}, "no longer in the file"},
		{Reading{Name: "Friday", Slot: -1}, "-1 seconds"},
		{Reading{Name: "Friday", Items: []Item{{Talk: -5, Before: "So."}}}, "-5 seconds"},
		{Reading{Name: "Friday", Items: []Item{{Talk: 5}}}, "nothing in it"},
	} {
		if _, err := (SetReading{test.reading}).Apply(c); err == nil || !strings.Contains(err.Error(), test.words) {
			t.Errorf("%+v: got %v, want %q", test.reading, err, test.words)
		}
	}
	if _, err := c.ReadingCalled("Friday"); err == nil || !strings.Contains(err.Error(), "one of Thursday") {
		t.Errorf("got %v", err)
	}
	if r, err := c.ReadingCalled(" THURSDAY"); err != nil || r.Name != "Thursday" {
		t.Errorf("got %+v, %v", r, err)
	}
}
