// Package peer finds the outside programs that tests check the project
// against, and runs scripts in Node.js. It is imported by tests only.
package peer

import (
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// Path returns where the program is. When it is missing the test is skipped
// with the command that installs it, or fails if CREASEFIT_PEERS=require.
func Path(t testing.TB, program, install string) string {
	t.Helper()
	path, err := exec.LookPath(program)
	if err != nil {
		missing(t, program, install)
	}
	return path
}

// missing skips or fails the test for what is not installed.
func missing(t testing.TB, what, install string) {
	t.Helper()
	if os.Getenv("CREASEFIT_PEERS") == "require" {
		t.Fatalf("%s is required here and missing; install it with: %s", what, install)
	}
	t.Skipf("%s is not installed; install it with: %s", what, install)
}

// Modules returns the folder of modules of Node.js that are installed for all
// users. Each of those named, such as axe-core@4.14.1, is there in that version.
func Modules(t testing.TB, modules ...string) string {
	t.Helper()
	npm := Path(t, "npm", "apt-get install nodejs npm")
	root, err := exec.Command(npm, "root", "--global").Output()
	if err != nil {
		t.Fatalf("npm root --global: %v", err)
	}
	folder := strings.TrimSpace(string(root))
	for _, module := range modules {
		at := strings.LastIndexByte(module, '@')
		var found struct{ Version string }
		text, err := os.ReadFile(filepath.Join(folder, module[:at], "package.json"))
		if err == nil {
			err = json.Unmarshal(text, &found)
		}
		if err != nil || found.Version != module[at+1:] {
			missing(t, "the module "+module, "npm install --global "+module)
		}
	}
	return folder
}

// Node runs a script in Node.js that may require a module, and returns what it
// writes.
func Node(t testing.TB, module, script string, input []byte) []byte {
	t.Helper()
	node := Path(t, "node", "apt-get install nodejs npm")
	run := exec.Command(node, "-e", script)
	run.Env, run.Stdin = append(os.Environ(), "NODE_PATH="+Modules(t, module)), bytes.NewReader(input)
	var out, wrong bytes.Buffer
	run.Stdout, run.Stderr = &out, &wrong
	if err := run.Run(); err != nil {
		t.Fatalf("node: %v: %s", err, wrong.String())
	}
	return out.Bytes()
}
