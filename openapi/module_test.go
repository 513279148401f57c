package openapi_test

import (
	"bytes"
	"compress/gzip"
	"encoding/json"
	"log/slog"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api"
	"creasefit/internal/peer"
	"creasefit/openapi"
)

// TestModuleIsSmall: what a page loads is at most 6 kB on the way.
func TestModuleIsSmall(t *testing.T) {
	var packed bytes.Buffer
	w, err := gzip.NewWriterLevel(&packed, gzip.BestCompression)
	require.NoError(t, err)
	_, err = w.Write([]byte(openapi.Module))
	require.NoError(t, err)
	require.NoError(t, w.Close())
	assert.LessOrEqual(t, packed.Len(), 6000)
}

// moduleTrial asks a service through the module: a short request, a long one, a
// format, a problem, a list, a batch, a table, and one that is unchanged.
const moduleTrial = `
import assert from "node:assert/strict";
import { creasefit, CreasefitProblem } from "creasefit";

const asked = [];
const service = creasefit(process.env.SERVICE, { fetch: async (address, options) => {
  const response = await fetch(address, options);
  asked.push([options.method ?? "GET", response.status]);
  return response;
} });
const box = { width: "95 mm", height: "60 mm", thickness: "24 mm", caliper: "0.3 mm", fit: "easy", ruler: "1 mm" };
const sleeve = await service.solve("sleeve", box);
assert.equal(sleeve.pieces[0].scores[0].at.reading, "98 mm");
assert.deepEqual(await service.solve("sleeve", box), sleeve);
assert.deepEqual(asked, [["GET", 200], ["GET", 304]], "what is unchanged is not sent again");
assert.deepEqual((await service.solve("sleeve", box, { post: true })).pieces, sleeve.pieces);
assert.match(await service.solve("sleeve", box, { format: "csv" }), /^piece,what,name/);
assert.match(await service.drawing("sleeve", box), /^<svg /);
assert.ok((await service.drawing("sleeve", box, { format: "png" })) instanceof Blob);
const order = await service.yield({ unit: "in", sheet: "12x12", items: [{ blank: "8-1/4x1-3/4", count: 25 }] });
assert.equal(order.sheets, 4);
await assert.rejects(service.solve("sleeve", { widht: "95 mm" }), (problem) => problem instanceof CreasefitProblem && problem.status === 400 && problem.errors[0].hint === "did you mean width?");
assert.ok((await service.contents()).contents.length > 3);
assert.equal((await service.kind("tray")).name, "tray");
const answers = [];
for await (const answer of service.batch([{ id: "a", width: "90 mm" }, { id: "b", width: "oops" }], { call: "/v1/solve/band", thickness: "3 mm", caliper: "0.3 mm" })) answers.push(answer);
assert.deepEqual(answers.map(({ id, status }) => [id, status]), [["a", 200], ["b", 400]]);
assert.match(await service.table("sku,width\nx,90 mm\n", { call: "/v1/solve/band", thickness: "3 mm", caliper: "0.3 mm", columns: "/kind" }), /x,90 mm,1,,band/);

let busy = 2;
const patient = creasefit("http://nowhere.example", { fetch: async () => busy-- > 0
  ? new Response("{}", { status: 503, headers: { "Retry-After": "0.01", "Content-Type": "application/problem+json" } })
  : Response.json({ unit: "mm" }) });
assert.deepEqual(await patient.ruler({ length: "1 mm" }), { unit: "mm" });
busy = 9;
await assert.rejects(patient.ruler({ length: "2 mm" }), { status: 503 });
const gone = AbortSignal.abort(new Error("enough"));
await assert.rejects(service.solve("sleeve", box, { signal: gone }), { message: "enough" });
`

// TestModuleAsksEveryCall installs the folder as a package and runs a trial with it.
func TestModuleAsksEveryCall(t *testing.T) {
	folder := asPackage(t)
	server := httptest.NewServer(api.New(api.DefaultConfig(), slog.New(slog.DiscardHandler)).Handler())
	t.Cleanup(server.Close)
	require.NoError(t, os.WriteFile(filepath.Join(folder, "trial.mjs"), []byte(moduleTrial), 0o644))
	node := exec.Command(peer.Path(t, "node", "apt-get install -y nodejs"), "trial.mjs")
	node.Dir, node.Env = folder, append(os.Environ(), "SERVICE="+server.URL)
	output, err := node.CombinedOutput()
	require.NoError(t, err, "%s", output)
}

// TestModuleReadme runs the example of the package.
func TestModuleReadme(t *testing.T) {
	text, err := os.ReadFile("module/README.md")
	require.NoError(t, err)
	example := regexp.MustCompile("(?s)```js\n(.*?)```\n\n```text\n(.*?)```").FindSubmatch(text)
	require.Len(t, example, 3)
	folder := asPackage(t)
	server := httptest.NewServer(api.New(api.DefaultConfig(), slog.New(slog.DiscardHandler)).Handler())
	t.Cleanup(server.Close)
	script := bytes.ReplaceAll(example[1], []byte("http://127.0.0.1:8080"), []byte(server.URL))
	require.NoError(t, os.WriteFile(filepath.Join(folder, "example.mjs"), script, 0o644))
	node := exec.Command(peer.Path(t, "node", "apt-get install -y nodejs"), "example.mjs")
	node.Dir = folder
	output, err := node.CombinedOutput()
	require.NoError(t, err, "%s", output)
	assert.Equal(t, string(example[2]), string(output))
}

// typesTrial uses the types as a program does; what is wrong is marked so.
const typesTrial = `
import { creasefit, type Solution } from "creasefit";
const service = creasefit("http://127.0.0.1:8080");
const sleeve: Solution = await service.solve("sleeve", { width: "95 mm", height: "60 mm", thickness: "24 mm", caliper: "0.3 mm" });
const reading: string = sleeve.pieces[0]!.scores[0]!.at.reading;
const chance: number = sleeve.sure.chance;
const sheets: number = (await service.yield({ unit: "in", sheet: [{ size: "12x12" }], items: [{ blank: "3x4", count: 25 }] })).sheets;
const picture: string | Blob = await service.drawing("band", { width: "95 mm", thickness: "24 mm", caliper: "0.3 mm", view: "template" }, { format: "png" });
for await (const answer of service.batch([{ call: "/v1/ruler", length: "1 in" }])) void [answer.status, reading, chance, sheets, picture];
// @ts-expect-error there is no such kind
await service.solve("slieve", {});
// @ts-expect-error a sleeve has no such name
await service.solve("sleeve", { widht: "95 mm" });
// @ts-expect-error there is no such fit
await service.solve("sleeve", { fit: "tight" });
`

// TestModuleTypes compiles a program that uses the types.
func TestModuleTypes(t *testing.T) {
	modules := peer.Modules(t)
	compiler := filepath.Join(modules, "typescript", "bin", "tsc")
	if _, err := os.Stat(compiler); err != nil {
		t.Skip("typescript is not installed; install it with: npm install --global typescript")
	}
	folder := asPackage(t)
	require.NoError(t, os.WriteFile(filepath.Join(folder, "trial.mts"), []byte(typesTrial), 0o644))
	tsc := exec.Command(peer.Path(t, "node", "apt-get install -y nodejs"), compiler, "--noEmit", "--strict", "--target", "es2022", "--module", "nodenext", "--lib", "es2022,dom,dom.iterable,dom.asynciterable", "trial.mts")
	tsc.Dir = folder
	output, err := tsc.CombinedOutput()
	require.NoError(t, err, "%s", output)
}

// asPackage installs the module in a folder of its own.
func asPackage(t *testing.T) string {
	folder := t.TempDir()
	into := filepath.Join(folder, "node_modules", "creasefit")
	require.NoError(t, os.MkdirAll(into, 0o755))
	var manifest struct{ Files []string }
	text, err := os.ReadFile("module/package.json")
	require.NoError(t, err)
	require.NoError(t, json.Unmarshal(text, &manifest))
	for _, name := range append(manifest.Files, "package.json") {
		content, err := os.ReadFile(filepath.Join("module", name))
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(filepath.Join(into, name), content, 0o644))
	}
	return folder
}
