package testdata

import (
	"fmt"
	"math"
	"reflect"
)

// WrongCalls calls fn with args and then with one or two of their numbers set to
// what cannot be or is far too large or small: NaN, infinity, -1, 0, 1e300 and
// the like; two at a time where there are at most twelve. Numbers are those of
// arguments, of the fields of structs and of the first element of slices. It
// fails the test when
//
//   - fn refuses the arguments as they are, or panics with others,
//   - an error comes with a figure that a caller might use: with an error, every
//     other result has to be zero, unless beside says that this error comes
//     beside its figure, as a warning does,
//   - a figure without an error is not a finite number.
//
// It returns how many calls were refused.
func WrongCalls(t interface {
	Helper()
	Errorf(format string, args ...any)
}, beside func(error) bool, name string, fn any, args ...any) int {
	t.Helper()
	f := reflect.ValueOf(fn)
	refused, failures := 0, 0
	fail := func(format string, a ...any) {
		t.Helper()
		if failures++; failures <= 3 {
			t.Errorf("%s: %s", name, fmt.Sprintf(format, a...))
		}
	}
	call := func(in []reflect.Value) (err error) {
		t.Helper()
		defer func() {
			if p := recover(); p != nil {
				fail("%v: panic: %v", shown(in), p)
			}
		}()
		var out []reflect.Value
		if f.Type().IsVariadic() {
			out = f.CallSlice(in)
		} else {
			out = f.Call(in)
		}
		err, _ = out[len(out)-1].Interface().(error)
		if err != nil {
			refused++
		}
		for _, v := range out[:len(out)-1] {
			switch {
			case err != nil && !v.IsZero() && !beside(err):
				fail("%v: %v comes with the error %v", shown(in), v.Interface(), err)
			case err == nil && !finite(v):
				fail("%v: %v without an error", shown(in), v.Interface())
			}
		}
		return err
	}
	fresh := func() ([]reflect.Value, []reflect.Value) {
		in, places := make([]reflect.Value, len(args)), []reflect.Value(nil)
		for i, a := range args {
			v := reflect.New(f.Type().In(i)).Elem()
			v.Set(clone(reflect.ValueOf(a).Convert(v.Type())))
			in[i] = v
			places = append(places, numbers(v)...)
		}
		return in, places
	}
	in, places := fresh()
	if err := call(in); err != nil {
		fail("%v: refused: %v", shown(in), err)
	}
	refused = 0
	for i := range places {
		for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1, 0, 9, 1e300, 1e-300, math.MaxFloat64} {
			in, places := fresh()
			if set(places[i], bad) {
				call(in)
			}
			for k := i + 1; k < len(places) && len(places) <= 12; k++ {
				for _, other := range []float64{1e300, 1e-300} {
					in, places := fresh()
					if set(places[i], bad) && set(places[k], other) {
						call(in)
					}
				}
			}
		}
	}
	return refused
}

// set gives a number a value; false when its type has no such value.
func set(v reflect.Value, x float64) bool {
	switch {
	case v.CanFloat():
		v.SetFloat(x)
	case math.Abs(x) > 1e9 || x != math.Trunc(x):
		return false
	case v.CanInt():
		v.SetInt(int64(x))
	case v.CanUint() && x >= 0:
		v.SetUint(uint64(x))
	default:
		return false
	}
	return true
}

// numbers lists the numbers in v that can be set.
func numbers(v reflect.Value) []reflect.Value {
	var list []reflect.Value
	switch {
	case (v.CanFloat() || v.CanInt() || v.CanUint()) && v.CanSet():
		return []reflect.Value{v}
	case v.Kind() == reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				list = append(list, numbers(v.Field(i))...)
			}
		}
	case v.Kind() == reflect.Slice && v.Len() > 0:
		return numbers(v.Index(0))
	}
	return list
}

// clone copies slices and what a pointer points to, so that a call changes
// nothing of the next.
func clone(v reflect.Value) reflect.Value {
	switch v.Kind() {
	case reflect.Slice:
		c := reflect.MakeSlice(v.Type(), v.Len(), v.Len())
		reflect.Copy(c, v)
		return c
	case reflect.Struct:
		c := reflect.New(v.Type()).Elem()
		c.Set(v)
		for i := range c.NumField() {
			if c.Field(i).CanSet() && c.Field(i).Kind() == reflect.Slice && !c.Field(i).IsNil() {
				c.Field(i).Set(clone(c.Field(i)))
			}
		}
		return c
	}
	return v
}

// finite reports whether all numbers in v are.
func finite(v reflect.Value) bool {
	switch v.Kind() {
	case reflect.Float64, reflect.Float32:
		return !math.IsNaN(v.Float()) && !math.IsInf(v.Float(), 0)
	case reflect.Struct:
		for i := range v.NumField() {
			if !finite(v.Field(i)) {
				return false
			}
		}
	case reflect.Slice:
		for i := range v.Len() {
			if !finite(v.Index(i)) {
				return false
			}
		}
	}
	return true
}

func shown(in []reflect.Value) []any {
	list := make([]any, len(in))
	for i, v := range in {
		list[i] = v.Interface()
	}
	return list
}
