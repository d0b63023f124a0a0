package testdata

import "os"

// Slow reports whether the slow cases are to run too: LAYDOWN_SLOW is set in the
// environment, as .ci/run sets it.
func Slow() bool { return os.Getenv("LAYDOWN_SLOW") != "" }

// SlowOnly skips a test that takes long, unless the slow cases are to run.
func SlowOnly(t interface {
	Helper()
	Skip(args ...any)
}) {
	t.Helper()
	if !Slow() {
		t.Skip("slow: set LAYDOWN_SLOW=1 to run it")
	}
}
