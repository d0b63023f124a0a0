package plating_test

import (
	"bytes"
	"errors"
	"flag"
	"fmt"
	"go/ast"
	"go/format"
	"go/parser"
	"go/token"
	"io"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/shopspring/decimal"
)

//go:generate go test -run Misuse -update-misuse .

var updateMisuse = flag.Bool("update-misuse", false, "write the table of exported functions anew")

// A misused is one exported function or method; a method takes its receiver first.
type misused struct {
	name string
	call any
}

// exported lists the exported functions and methods of the library as Go source,
// one expression each: a generic one with a type that fits.
func exported(t *testing.T) (imports, list, types []string) {
	seen := map[string]bool{}
	for _, root := range []string{"../units", "../faraday", "../alloys", "../plating"} {
		err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") ||
				strings.Contains(filepath.ToSlash(path), "/internal/") {
				return err
			}
			file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.SkipObjectResolution)
			if err != nil {
				return err
			}
			importPath := "example.com/laydown/" + strings.TrimPrefix(filepath.ToSlash(filepath.Dir(path)), "../")
			types = append(types, structsOf(file)...)
			for _, decl := range file.Decls {
				f, ok := decl.(*ast.FuncDecl)
				if !ok || !f.Name.IsExported() || f.Recv != nil && !ast.IsExported(receiverName(f)) {
					continue
				}
				if !seen[importPath] {
					seen[importPath] = true
					imports = append(imports, importPath)
				}
				list = append(list, expression(file.Name.Name, f))
			}
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	slices.Sort(imports)
	slices.Sort(list)
	slices.Sort(types)
	return imports, list, types
}

// structsOf lists the exported structs and words (small whole numbers) of a file as
// expressions of pointers to one each, a generic one with a type that fits.
func structsOf(file *ast.File) []string {
	var list []string
	for _, decl := range file.Decls {
		g, ok := decl.(*ast.GenDecl)
		if !ok || g.Tok != token.TYPE {
			continue
		}
		for _, spec := range g.Specs {
			typ := spec.(*ast.TypeSpec)
			_, is := typ.Type.(*ast.StructType)
			if id, named := typ.Type.(*ast.Ident); named && strings.HasPrefix(id.Name, "uint") {
				is = true
			}
			if !is || !typ.Name.IsExported() {
				continue
			}
			name := file.Name.Name + "." + typ.Name.Name
			if typ.TypeParams != nil {
				name += "[units.Length]"
			}
			list = append(list, "new("+name+")")
		}
	}
	return list
}

// receiverName is the type of a method, without star and type parameters.
func receiverName(f *ast.FuncDecl) string {
	typ := f.Recv.List[0].Type
	if star, ok := typ.(*ast.StarExpr); ok {
		typ = star.X
	}
	if index, ok := typ.(*ast.IndexExpr); ok {
		typ = index.X
	}
	if id, ok := typ.(*ast.Ident); ok {
		return id.Name
	}
	return ""
}

// expression names a function or method of a package.
func expression(pkg string, f *ast.FuncDecl) string {
	if f.Recv == nil {
		name := pkg + "." + f.Name.Name
		if f.Type.TypeParams != nil {
			fits := "units.Length"
			switch f.Type.TypeParams.List[0].Type.(type) {
			case *ast.UnaryExpr, *ast.BinaryExpr: // of words and flags, whole numbers
				fits = "plating.Role"
			}
			n := f.Type.TypeParams.NumFields()
			name += "[" + strings.TrimSuffix(strings.Repeat(fits+", ", n), ", ") + "]"
		}
		return name
	}
	typ, name := f.Recv.List[0].Type, pkg+"."+receiverName(f)
	star, pointer := typ.(*ast.StarExpr)
	if pointer {
		typ = star.X
	}
	if _, generic := typ.(*ast.IndexExpr); generic {
		name += "[units.Length]"
	}
	if pointer {
		name = "(*" + name + ")"
	}
	return name + "." + f.Name.Name
}

// TestPropertyMisuse calls every exported function and method of the library with zero
// values, nil, NaN, infinities, numbers below zero and huge ones, texts and lists that
// do not fit: none panics, none runs on, and none returns a number that is no number
// without an error.
func TestPropertyMisuse(t *testing.T) {
	imports, want, types := exported(t)
	if *updateMisuse {
		var b strings.Builder
		b.WriteString("package plating_test\n\n// Code written by go generate; DO NOT EDIT.\n\nimport (\n")
		for _, p := range imports {
			fmt.Fprintf(&b, "%q\n", p)
		}
		b.WriteString(")\n\n// misuses are all exported functions and methods of the library.\nvar misuses = " +
			"[]misused{\n")
		for _, e := range want {
			fmt.Fprintf(&b, "{%q, %s},\n", e, e)
		}
		b.WriteString("}\n\n// values are one of each exported struct and word of the library.\nvar values = []any{\n")
		for _, e := range types {
			fmt.Fprintf(&b, "%s,\n", e)
		}
		b.WriteString("}\n")
		text, err := format.Source([]byte(b.String()))
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile("misuse_table_test.go", text, 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	have := make([]string, len(misuses))
	for i, m := range misuses {
		have[i] = m.name
	}
	if !slices.Equal(have, want) {
		for _, e := range want {
			if !slices.Contains(have, e) {
				t.Errorf("%s is not in the table; run go generate ./plating", e)
			}
		}
		t.Fatalf("%d functions in the table, %d in the source; run go generate ./plating", len(have), len(want))
	}
	for _, m := range misuses {
		misuse(t, m)
	}
}

// misuse calls one function in all its ways.
func misuse(t *testing.T, m misused) {
	f := reflect.ValueOf(m.call)
	typ := f.Type()
	choices := make([][]reflect.Value, typ.NumIn())
	most := 1
	for i := range choices {
		choices[i] = odd(typ.In(i), 0)
		most = max(most, len(choices[i]))
	}
	var ways [][]reflect.Value
	for k := range most { // all odd alike
		args := make([]reflect.Value, len(choices))
		for i, c := range choices {
			args[i] = c[k%len(c)]
		}
		ways = append(ways, args)
	}
	for i, c := range choices { // one odd, the others plain
		for _, v := range c {
			args := make([]reflect.Value, len(choices))
			for n := range args {
				args[n] = plainValue(typ.In(n), 0)
			}
			args[i] = v
			ways = append(ways, args)
		}
	}
	if text := marshalled(m.name, typ); text != nil { // what reads, into nil
		ways = append(ways, []reflect.Value{reflect.Zero(typ.In(0)), reflect.ValueOf(text)})
	}
	said := map[string]bool{}
	for _, args := range ways {
		if len(args) > 0 && noReceiver(m.name, typ, args[0]) {
			continue
		}
		done := make(chan string, 1)
		go func() { done <- outcome(f, args) }()
		select {
		case bad := <-done:
			if bad != "" && !said[bad] {
				said[bad] = true
				t.Errorf("%s(%s): %s", m.name, shown(args), bad)
			}
		case <-time.After(20 * time.Second):
			t.Errorf("%s(%s): no end after 20 s", m.name, shown(args))
			return
		}
	}
}

// marshalled returns what a method that reads text or JSON would read, nil when it is
// another method.
func marshalled(name string, typ reflect.Type) []byte {
	i := strings.LastIndex(name, ".Unmarshal")
	if i < 0 || typ.NumIn() != 2 {
		return nil
	}
	write := plainValue(typ.In(0), 0).MethodByName("Marshal" + name[i+len(".Unmarshal"):])
	if !write.IsValid() {
		return nil
	}
	text, _ := write.Call(nil)[0].Interface().([]byte)
	return text
}

// noReceiver reports a nil receiver of a method that has no error to return: there is no
// figure that would be right, least of all "no hazard", and so it stops as everywhere in Go.
func noReceiver(name string, typ reflect.Type, receiver reflect.Value) bool {
	if !strings.HasPrefix(name, "(*") || receiver.Kind() != reflect.Pointer || !receiver.IsNil() {
		return false
	}
	n := typ.NumOut()
	return n == 0 || strings.HasSuffix(name, ".Unwrap") || typ.Out(n-1) != reflect.TypeFor[error]()
}

// outcome calls a function and says what is wrong with how it ended.
func outcome(f reflect.Value, args []reflect.Value) (bad string) {
	defer func() {
		if r := recover(); r != nil {
			bad = fmt.Sprintf("panic: %v", r)
		}
	}()
	var out []reflect.Value
	if f.Type().IsVariadic() {
		out = f.CallSlice(args)
	} else {
		out = f.Call(args)
	}
	if n := len(out); n > 0 {
		if err, ok := out[n-1].Interface().(error); ok && err != nil {
			if text := err.Error(); text == "" || len(text) > 2000 {
				return fmt.Sprintf("an error of %d bytes", len(text))
			}
			return ""
		}
		if errorType := reflect.TypeFor[error](); f.Type().Out(n-1) == errorType {
			for _, v := range out[:n-1] {
				if v.Kind() == reflect.Float64 && math.IsNaN(v.Float()) {
					return "no number and no error"
				}
			}
		}
	}
	return ""
}

// shown writes arguments for a message.
func shown(args []reflect.Value) string {
	words := make([]string, len(args))
	for i, a := range args {
		text := fmt.Sprintf("%#v", a)
		if a.Kind() == reflect.Float64 {
			text = fmt.Sprint(a.Float())
		}
		if len(text) > 80 {
			text = text[:80] + "…"
		}
		words[i] = text
	}
	return strings.Join(words, ", ")
}

type failingReader struct{}

func (failingReader) Read([]byte) (int, error) { return 0, errors.New("cannot be read") }

// fixed are the odd values of types that reflection cannot make well.
var fixed = map[reflect.Type][]any{
	reflect.TypeFor[decimal.Decimal](): {decimal.Decimal{}, decimal.New(-1, 0), decimal.New(1, 2_000_000_000),
		decimal.New(1, -2_000_000_000), decimal.New(1, 40), decimal.New(7, -1)},
	reflect.TypeFor[time.Time](): {time.Time{}, time.Unix(math.MaxInt64, 0), time.Unix(1_700_000_000, 0)},
	reflect.TypeFor[io.Reader](): {nil, failingReader{}, bytes.NewReader(nil), strings.NewReader("{}"),
		strings.NewReader("\x00\xff")},
	reflect.TypeFor[io.Writer](): {nil, io.Discard},
	reflect.TypeFor[error]():     {nil, io.EOF},
	reflect.TypeFor[any]():       {nil, 1, "x"},
}

// plainValue is a value of a type that is as usual as may be: ones and short texts.
func plainValue(typ reflect.Type, depth int) reflect.Value { return filled(typ, 1, 1, "Au", 1, depth) }

// odd are the odd values of a type.
func odd(typ reflect.Type, depth int) []reflect.Value {
	list := []reflect.Value{reflect.Zero(typ)}
	if values, ok := fixed[typ]; ok {
		list = nil
		for _, v := range values {
			if v == nil {
				list = append(list, reflect.Zero(typ))
				continue
			}
			r := reflect.New(typ).Elem()
			r.Set(reflect.ValueOf(v))
			list = append(list, r)
		}
		return list
	}
	long := strings.Repeat("x", 5000)
	for _, c := range []struct {
		number float64
		whole  int64
		text   string
		length int
	}{
		{math.NaN(), -1, "", 1}, {math.Inf(1), math.MaxInt64, long, 1}, {math.Inf(-1), math.MinInt64, "\xff\x00", 2},
		{-1, -2, "-1", 3}, {1e308, math.MaxInt32, "NaN", 2}, {5e-324, 1, "1e999", 1}, {0, 0, "=1", 1}, {1, 1, "Au", 1},
		{1, 1_000_000_000, "Au", 0}, {0.5, 2, "1 mm", 2}, {0, 1, "Au", 2}, {1e-9, 255, "10 A", 3},
	} {
		list = append(list, filled(typ, c.number, c.whole, c.text, c.length, depth))
	}
	return list
}

// filled makes a value whose numbers, texts and lists are all alike.
func filled(typ reflect.Type, number float64, whole int64, text string, length, depth int) reflect.Value {
	v := reflect.New(typ).Elem()
	if values, ok := fixed[typ]; ok {
		if last := values[len(values)-1]; last != nil {
			v.Set(reflect.ValueOf(last))
		}
		return v
	}
	if depth > 6 {
		return v
	}
	deeper := func(t reflect.Type) reflect.Value { return filled(t, number, whole, text, length, depth+1) }
	switch typ.Kind() {
	case reflect.Float64, reflect.Float32:
		v.SetFloat(number)
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64:
		v.SetInt(whole)
	case reflect.Uint, reflect.Uint8, reflect.Uint16, reflect.Uint32, reflect.Uint64:
		v.SetUint(uint64(whole))
	case reflect.Bool:
		v.SetBool(whole%2 != 0)
	case reflect.String:
		v.SetString(text)
	case reflect.Pointer:
		if whole >= 0 {
			v.Set(reflect.New(typ.Elem()))
			v.Elem().Set(deeper(typ.Elem()))
		}
	case reflect.Slice:
		if typ.Elem().Kind() == reflect.Uint8 {
			v.SetBytes([]byte(text))
			break
		}
		v.Set(reflect.MakeSlice(typ, length, length))
		for i := range length {
			v.Index(i).Set(deeper(typ.Elem()))
		}
	case reflect.Array:
		for i := range v.Len() {
			v.Index(i).Set(deeper(typ.Elem()))
		}
	case reflect.Map:
		if length > 0 {
			v.Set(reflect.MakeMap(typ))
			v.SetMapIndex(deeper(typ.Key()), deeper(typ.Elem()))
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Field(i).CanSet() {
				v.Field(i).Set(deeper(typ.Field(i).Type))
			}
		}
	case reflect.Func:
		if length != 1 || whole < 0 {
			break // nil
		}
		v.Set(reflect.MakeFunc(typ, func([]reflect.Value) []reflect.Value {
			out := make([]reflect.Value, typ.NumOut())
			for i := range out {
				out[i] = deeper(typ.Out(i))
			}
			return out
		}))
	}
	return v
}
