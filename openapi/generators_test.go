package openapi_test

import (
	"encoding/json"
	"fmt"
	"log/slog"
	"maps"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	_ "github.com/oapi-codegen/runtime" // the stock client needs it
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api"
	"creasefit/internal/peer"
	"creasefit/openapi"
)

// live is a running service for generated clients.
func live(t *testing.T) string {
	t.Helper()
	service := httptest.NewServer(api.New(api.DefaultConfig(), slog.New(slog.DiscardHandler)).Handler())
	t.Cleanup(service.Close)
	return service.URL
}

// run runs a program in a folder and returns what it writes.
func run(t *testing.T, folder, program string, arguments ...string) string {
	t.Helper()
	command := exec.Command(program, arguments...)
	command.Dir = folder
	output, err := command.CombinedOutput()
	require.NoError(t, err, "%s %v: %s", program, arguments, output)
	return string(output)
}

// strip is how long the strip of the band is that generated clients ask for: the
// first answer of the README.
const strip = "8 1/4 in\n"

// typeScript is a program that asks for a band; what comes before and how the
// call is written depends on the client. An unknown member must not compile.
const typeScript = `declare const process: { argv: string[] };
%s
async function main() {
  const { data, error } = await %s {
    body: { unit: "in", width: "3 1/2", thickness: "0.09", caliper: "0.012", fit: "snug", ruler: "1/8 in" },
  });
  if (!data) throw new Error(JSON.stringify(error));
  const reading: string = data.pieces[0].blank.width.reading;
  console.log(reading);
  // @ts-expect-error there is no such member
  data.pieces[0].blank.girth;
}
main();
`

// TestTypeScriptClients lets two generators write clients from the document for
// generators, compiles them strictly, and calls the service with both.
func TestTypeScriptClients(t *testing.T) {
	if testing.Short() {
		t.Skip("generators and compilers")
	}
	node := peer.Path(t, "node", "apt-get install nodejs npm")
	modules := peer.Modules(t, "openapi-typescript@7.13.0", "openapi-fetch@0.17.0", "@hey-api/openapi-ts@0.99.0", "typescript@5.9.3")
	folder, base := t.TempDir(), live(t)
	require.NoError(t, os.Symlink(modules, filepath.Join(folder, "node_modules")))
	for name, text := range map[string]string{
		"openapi.json": string(openapi.Text()),
		"fetch.ts": fmt.Sprintf(typeScript, `import createClient from "openapi-fetch";
import type { paths } from "./types";
const client = createClient<paths>({ baseUrl: process.argv[2] });`, `client.POST("/v1/solve/slotted-band",`),
		"sdk.ts": fmt.Sprintf(typeScript, `import { client } from "./generated/client.gen";
import { solveSlottedBand } from "./generated";
client.setConfig({ baseUrl: process.argv[2] });`, "solveSlottedBand("),
	} {
		require.NoError(t, os.WriteFile(filepath.Join(folder, name), []byte(text), 0o600))
	}
	program := func(path string) string { return filepath.Join(modules, path) }
	run(t, folder, node, program("openapi-typescript/bin/cli.js"), "openapi.json", "-o", "types.ts")
	run(t, folder, node, program("@hey-api/openapi-ts/bin/run.js"), "-i", "openapi.json", "-o", "generated")
	run(t, folder, node, program("typescript/bin/tsc"), "--strict", "--skipLibCheck", "--target", "es2022", "--lib", "es2022,dom,dom.iterable",
		"--module", "commonjs", "--moduleResolution", "node10", "--outDir", "out", "fetch.ts", "sdk.ts")
	for _, client := range []string{"out/fetch.js", "out/sdk.js"} {
		assert.Equal(t, strip, run(t, folder, node, client, base), client)
	}
}

// ofOneKind is the document for generators with the calls of one kind: the whole
// of it is compiled in a minute by one of the generators.
func ofOneKind(t *testing.T, kind string) []byte {
	t.Helper()
	var spec map[string]any
	require.NoError(t, json.Unmarshal(openapi.Text(), &spec))
	maps.DeleteFunc(spec["paths"].(map[string]any), func(path string, _ any) bool { return !strings.HasSuffix(path, "/"+kind) })
	openapi.Prune(spec)
	text, err := json.Marshal(spec)
	require.NoError(t, err)
	return text
}

// goClient is a generator of clients in Go, how it is run, and a program that
// asks for a band with its client.
type goClient struct {
	tool, program string
	document      func(*testing.T) []byte
	arguments     func(document, folder string) []string
}

var goClients = map[string]goClient{
	"stock": {tool: "oapi-codegen", document: func(*testing.T) []byte { return openapi.Text() },
		arguments: func(document, folder string) []string {
			return []string{"-generate", "types,client", "-package", "generated", "-o", folder + "/client.go", document}
		},
		program: `	c, err := generated.NewClientWithResponses(os.Args[1])
	check(err)
	a, err := c.SolveSlottedBandWithResponse(context.Background(), generated.SolveSlottedBandJSONRequestBody{
		Unit: generated.UnitValueIn, Width: "3 1/2", Thickness: "0.09", Caliper: "0.012", Fit: "snug", Ruler: "1/8 in"})
	check(err)
	fmt.Println(a.JSON200.Pieces[0].Blank.Width.Reading)`},
	"ogen": {tool: "ogen", document: func(t *testing.T) []byte { return ofOneKind(t, "slotted-band") },
		arguments: func(document, folder string) []string {
			return []string{"--config", filepath.Dir(document) + "/ogen.yaml", "--target", folder, "--package", "generated", document}
		},
		program: `	c, err := generated.NewClient(os.Args[1])
	check(err)
	text := generated.NewOptString
	a, err := c.SolveSlottedBand(context.Background(), generated.NewOptRequestSolveSlottedBand(generated.RequestSolveSlottedBand{
		Unit: generated.NewOptUnitValue(generated.UnitValueIn), Width: text("3 1/2"), Thickness: text("0.09"), Caliper: text("0.012"),
		Fit: generated.NewOptFitValue(generated.FitValueSnug), Ruler: text("1/8 in")}))
	check(err)
	fmt.Println(a.(*generated.AnswerSolutionHeaders).Response.Pieces[0].Blank.Width.Reading)`},
}

// goProgram is what both programs have in common.
const goProgram = `package main

import (
	"context"
	"fmt"
	"os"

	"creasefit/openapi/generated"
)

func check(err error) {
	if err != nil {
		fmt.Println(err)
		os.Exit(1)
	}
}

func main() {
%s
}
`

// TestGoClients does the same in Go, with the templates that the generators come
// with. What they write is laid over the module, where what it needs is known.
func TestGoClients(t *testing.T) {
	if testing.Short() {
		t.Skip("generators and compilers")
	}
	root, err := filepath.Abs("..")
	require.NoError(t, err)
	for name, g := range goClients {
		t.Run(name, func(t *testing.T) {
			folder := t.TempDir()
			write := func(name string, text []byte) string {
				file := filepath.Join(folder, name)
				require.NoError(t, os.WriteFile(file, text, 0o600))
				return file
			}
			document := write("openapi.json", g.document(t))
			write("ogen.yaml", []byte("generator:\n  features:\n    disable_all: true\n    enable: [paths/client]\n"))
			generated := filepath.Join(folder, "generated")
			require.NoError(t, os.Mkdir(generated, 0o700))
			run(t, root, "go", append([]string{"tool", g.tool}, g.arguments(document, generated)...)...)
			files, err := filepath.Glob(generated + "/*.go")
			require.NoError(t, err)
			laid := map[string]string{filepath.Join(root, "openapi", "generatedmain", "main.go"): write("main.go", fmt.Appendf(nil, goProgram, g.program))}
			for _, file := range files {
				laid[filepath.Join(root, "openapi", "generated", filepath.Base(file))] = file
			}
			overlay, err := json.Marshal(map[string]any{"Replace": laid})
			require.NoError(t, err)
			program := filepath.Join(folder, "program")
			run(t, root, "go", "build", "-overlay", write("overlay.json", overlay), "-o", program, "./openapi/generatedmain")
			assert.Equal(t, strip, run(t, folder, program, live(t)))
		})
	}
}
