package difference

import (
	"reflect"
	"testing"

	"headland/pagemodel"
)

// TestEveryDesignFieldIsTold changes each number, word and yes or no of a design
// and sees that it is told.
func TestEveryDesignFieldIsTold(t *testing.T) {
	c, _ := poemOf([]string{salt})
	told := func(name string, d pagemodel.Design) {
		if reflect.DeepEqual(valuesOf(designValues, c.Design()), valuesOf(designValues, d)) {
			t.Errorf("nothing is told of the design’s %s", name)
		}
	}
	d := c.Design()
	altered(reflect.ValueOf(&d).Elem(), "", func(name string) { told(name, d) })
	h := pagemodel.PoemHead{}
	altered(reflect.ValueOf(&h).Elem(), "", func(name string) {
		values := reflect.DeepEqual(valuesOf(poemValues, pagemodel.PoemHead{}), valuesOf(poemValues, h))
		entry := pagemodel.Entry{Poem: pagemodel.NewPoem(1, h, []pagemodel.Part{pagemodel.NewPart("", nil)})}
		plain := pagemodel.Entry{Poem: pagemodel.NewPoem(1, pagemodel.PoemHead{}, []pagemodel.Part{pagemodel.NewPart("", nil)})}
		if values && reflect.DeepEqual(fieldTexts(entry), fieldTexts(plain)) {
			t.Errorf("nothing is told of a head’s %s", name)
		}
	})
}

// altered gives each field of a struct another value, calls back, and gives it its
// own again.
func altered(v reflect.Value, name string, then func(name string)) {
	old := reflect.New(v.Type()).Elem()
	old.Set(v)
	defer v.Set(old)
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			altered(v.Field(i), v.Type().Field(i).Name, then)
		}
		return
	case reflect.Int, reflect.Int32:
		v.SetInt(v.Int() + 1)
	case reflect.String:
		v.SetString(v.String() + " other")
	case reflect.Bool:
		v.SetBool(!v.Bool())
	case reflect.Slice:
		v.Set(reflect.Append(v, reflect.ValueOf("more")))
	}
	then(name)
}
