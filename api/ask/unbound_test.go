package ask

import (
	"reflect"
	"strings"
)

// unbound lists the fields of a request that have no name.
func unbound(request any) []string {
	var list []string
	findUnbound(&list, "", reflect.ValueOf(request))
	return list
}

func findUnbound(list *[]string, path string, v reflect.Value) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() && strings.HasPrefix(v.Type().Elem().String(), "ask.") {
			findUnbound(list, path, v.Elem())
		}
	case reflect.Array:
		for i := range v.Len() {
			findUnbound(list, path, v.Index(i))
		}
	case reflect.Struct:
		if !strings.HasPrefix(v.Type().String(), "ask.") {
			return
		}
		if v.CanAddr() {
			if field, ok := v.Addr().Interface().(value); ok {
				if field.field().table == nil {
					*list = append(*list, path)
				}
				return
			}
		}
		for i := range v.NumField() {
			if f := v.Type().Field(i); f.IsExported() {
				findUnbound(list, path+"."+f.Name, v.Field(i))
			}
		}
	}
}
