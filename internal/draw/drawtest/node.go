package drawtest

import (
	"bytes"
	"os"
	"os/exec"
	"strings"
	"testing"
)

// Node runs a script in Node.js that may require a module installed for all
// users, and returns what it writes. found tells where a program is: it skips
// or fails the test when it is missing.
func Node(t *testing.T, found func(t testing.TB, program, install string) string, module, script string, input []byte) []byte {
	t.Helper()
	node := found(t, "node", "apt-get install nodejs npm")
	npm := found(t, "npm", "apt-get install nodejs npm")
	root, err := exec.Command(npm, "root", "--global").Output()
	if err != nil {
		t.Fatalf("npm root --global: %v", err)
	}
	environment := append(os.Environ(), "NODE_PATH="+strings.TrimSpace(string(root)))
	probe := exec.Command(node, "-e", "require('"+module[:strings.LastIndex(module, "@")]+"')")
	probe.Env = environment
	if probe.Run() != nil {
		const install = "the module %s is not installed; install it with: npm install --global %s"
		if os.Getenv("CREASEFIT_PEERS") == "require" {
			t.Fatalf(install, module, module)
		}
		t.Skipf(install, module, module)
	}
	run := exec.Command(node, "-e", script)
	run.Env, run.Stdin = environment, bytes.NewReader(input)
	var out, wrong bytes.Buffer
	run.Stdout, run.Stderr = &out, &wrong
	if err := run.Run(); err != nil {
		t.Fatalf("node: %v: %s", err, wrong.String())
	}
	return out.Bytes()
}
