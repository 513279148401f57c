// Command creasefit serves the API. Every setting is an environment variable
// CREASEFIT_*; without any it listens on 127.0.0.1:8080, and for operators on
// 127.0.0.1:8081. What else it does it says when it is asked for help.
//
// It computes nothing itself.
package main

import (
	"fmt"
	"io"
	"os"
)

const usage = `creasefit                serves, with the settings CREASEFIT_* of the environment
creasefit check-config   says everything that is wrong with the settings, and nothing else
creasefit healthcheck    asks the running service whether it is ready, for containers without a shell
creasefit key NAME       makes an API key: the key for its holder, the line for CREASEFIT_KEYS_FILE
creasefit version        says which build this is
`

func main() {
	if err := run(os.Args[1:], os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, "creasefit:", err)
		os.Exit(1)
	}
}

// run does what the arguments say.
func run(arguments []string, out io.Writer) error {
	if len(arguments) == 0 {
		return serve(out)
	}
	switch command := arguments[0]; {
	case command == "check-config" && len(arguments) == 1:
		return checkConfig(out)
	case command == "healthcheck" && len(arguments) == 1:
		return healthcheck(out)
	case command == "version" && len(arguments) == 1:
		return version(out)
	case command == "key" && len(arguments) == 2:
		return newKey(out, arguments[1])
	case command == "help" || command == "-h" || command == "--help":
		_, err := io.WriteString(out, usage)
		return err
	default:
		return fmt.Errorf("no such command:\n%s", usage)
	}
}
