package setup_test

import (
	"io"
	"reflect"
	"testing"

	"example.org/packcheck/setup"
)

// Whoever builds upon the package may hold a zero value: none of its methods panics.
func TestZeroValuesDoNotPanic(t *testing.T) {
	for _, zero := range []any{&setup.Parts{}, &setup.World{}, &setup.Setup{}, &setup.Figure{}} {
		v := reflect.ValueOf(zero)
		for i := range v.NumMethod() {
			name := v.Type().Elem().Name() + "." + v.Type().Method(i).Name
			args := make([]reflect.Value, v.Method(i).Type().NumIn())
			for k := range args {
				in := v.Method(i).Type().In(k)
				switch in {
				case reflect.TypeFor[setup.Pick]():
					args[k] = reflect.ValueOf(setup.Pick(setup.Likely))
				case reflect.TypeFor[*setup.Parts](), reflect.TypeFor[*setup.World](), reflect.TypeFor[*setup.Figure](), reflect.TypeFor[*setup.Setup]():
					args[k] = reflect.New(in.Elem())
				case reflect.TypeFor[io.Writer]():
					args[k] = reflect.ValueOf(io.Discard)
				default:
					args[k] = reflect.Zero(in)
				}
			}
			func() {
				defer func() {
					if p := recover(); p != nil {
						t.Errorf("%s panics: %v", name, p)
					}
				}()
				v.Method(i).Call(args)
			}()
		}
	}
}
