package main

import (
	"encoding/json"
	"fmt"
	"strings"

	"example.com/laydown/plating/ledger"
)

// readEvent makes an event from a list as "charge=12 A·min, drag_out=4 mL". A
// piece without an equals sign belongs to the value before it, so that a reason
// may hold commas.
func readEvent(kind, list string) (ledger.Event, error) {
	fields := map[string]any{}
	last := ""
	for _, piece := range strings.Split(list, ",") {
		name, value, found := strings.Cut(piece, "=")
		switch name = strings.TrimSpace(name); {
		case !found && last == "":
			return nil, fmt.Errorf("-%s: %q has no equals sign; need a list of name=value", kind, strings.TrimSpace(piece))
		case !found:
			if text, ok := fields[last].(string); ok {
				fields[last] = text + "," + piece
			}
			continue
		case fields[name] != nil:
			return nil, fmt.Errorf("-%s: %q twice; need it once", kind, name)
		}
		last = name
		value = strings.TrimSpace(value)
		fields[name] = value
		if name == "reset" && (value == "true" || value == "false") {
			fields[name] = value == "true"
		}
	}
	text, err := json.Marshal(fields)
	if err != nil {
		return nil, fmt.Errorf("-%s: %w", kind, err)
	}
	switch kind {
	case "load":
		return event[ledger.Load](kind, text)
	case "addition":
		return event[ledger.Addition](kind, text)
	case "analysis":
		return event[ledger.Analysis](kind, text)
	case "evaporation":
		return event[ledger.Evaporation](kind, text)
	case "void":
		return event[ledger.Void](kind, text)
	}
	return event[ledger.Correction](kind, text)
}

func event[E ledger.Event](kind string, text []byte) (ledger.Event, error) {
	var e E
	if err := readObject(text, &e); err != nil {
		return nil, fmt.Errorf("-%s: %w", kind, err)
	}
	return e, nil
}
