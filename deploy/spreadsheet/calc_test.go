package main

import (
	"context"
	"encoding/csv"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"creasefit/internal/peer"
)

// office runs LibreOffice with a profile of its own, in which documents of one
// folder may fetch.
type office struct {
	t               *testing.T
	program, folder string
	profile         string
}

// newOffice prepares a profile that trusts the folder, of somebody who writes
// numbers as the locale does.
func newOffice(t *testing.T, folder, locale string) *office {
	o := &office{t: t, program: peer.Path(t, "soffice", "apt-get install -y libreoffice-calc"), folder: folder, profile: t.TempDir()}
	o.write("user/registrymodifications.xcu", fmt.Sprintf(settings, folder, locale))
	o.run("--terminate_after_init")
	o.write("user/basic/Standard/script.xlb", library)
	o.write("user/basic/Standard/Conv.xba", macro)
	return o
}

// settings let documents of a folder refresh what they fetch without asking,
// and name the locale.
const settings = `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry" xmlns:xs="http://www.w3.org/2001/XMLSchema" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">
<item oor:path="/org.openoffice.Office.Common/Security/Scripting"><prop oor:name="SecureURL" oor:op="fuse"><value><it>file://%s</it></value></prop></item>
<item oor:path="/org.openoffice.Office.Calc/Content/Update"><prop oor:name="Link" oor:op="fuse"><value>0</value></prop></item>
<item oor:path="/org.openoffice.Setup/L10N"><prop oor:name="ooSetupSystemLocale" oor:op="fuse"><value>%s</value></prop></item>
</oor:items>
`

const library = `<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE library:library PUBLIC "-//OpenOffice.org//DTD OfficeDocument 1.0//EN" "library.dtd">
<library:library xmlns:library="http://openoffice.org/2000/library" library:name="Standard" library:readonly="false" library:passwordprotected="false">
 <library:element library:name="Conv"/>
</library:library>
`

// macro loads a document with its links updated, recalculates it and stores
// it as CSV: converting alone never fetches.
const macro = `<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE script:module PUBLIC "-//OpenOffice.org//DTD OfficeDocument 1.0//EN" "module.dtd">
<script:module xmlns:script="http://openoffice.org/2000/script" script:name="Conv" script:language="StarBasic">
Sub Main(sIn As String, sOut As String)
  Dim a(1) As New com.sun.star.beans.PropertyValue
  Dim o(1) As New com.sun.star.beans.PropertyValue
  Dim d As Object
  a(0).Name = &quot;Hidden&quot;
  a(0).Value = True
  a(1).Name = &quot;UpdateDocMode&quot;
  a(1).Value = 3
  d = StarDesktop.loadComponentFromURL(ConvertToURL(sIn), &quot;_blank&quot;, 0, a())
  Wait 200
  d.calculateAll()
  o(0).Name = &quot;FilterName&quot;
  o(0).Value = &quot;Text - txt - csv (StarCalc)&quot;
  o(1).Name = &quot;FilterOptions&quot;
  o(1).Value = &quot;44,34,76,1,,0,false,true,false&quot;
  d.storeToURL(ConvertToURL(sOut), o())
  d.close(True)
  StarDesktop.terminate()
End Sub
</script:module>
`

func (o *office) write(name, text string) {
	path := filepath.Join(o.profile, name)
	require.NoError(o.t, os.MkdirAll(filepath.Dir(path), 0o755))
	require.NoError(o.t, os.WriteFile(path, []byte(text), 0o644))
}

func (o *office) run(arguments ...string) {
	ctx, cancel := context.WithTimeout(context.Background(), 2*time.Minute)
	defer cancel()
	arguments = append([]string{"-env:UserInstallation=file://" + o.profile, "--headless", "--norestore"}, arguments...)
	command := exec.CommandContext(ctx, o.program, arguments...)
	command.SysProcAttr = &syscall.SysProcAttr{Setpgid: true} // the program starts another one, which would outlive it
	command.Cancel = func() error { return syscall.Kill(-command.Process.Pid, syscall.SIGKILL) }
	output, err := command.CombinedOutput()
	require.NoError(o.t, err, "%s", output)
}

// convert turns a document of the folder into another format.
func (o *office) convert(path, extension string, how ...string) string {
	o.run(append(how, "--convert-to", extension, "--outdir", o.folder, path)...)
	return strings.TrimSuffix(path, filepath.Ext(path)) + "." + extension
}

// recalculate returns the cells of a document after it has fetched.
func (o *office) recalculate(path string) [][]string {
	out := path + ".csv"
	o.run(fmt.Sprintf("macro:///Standard.Conv.Main(%q,%q)", path, out))
	file, err := os.Open(out)
	require.NoError(o.t, err)
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	require.NoError(o.t, err)
	return rows
}
