// Package deploy_test holds what is deployed to the tools that read it.
package deploy_test

import (
	"bytes"
	"encoding/json"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	apps "k8s.io/api/apps/v1"
	autoscaling "k8s.io/api/autoscaling/v2"
	core "k8s.io/api/core/v1"
	network "k8s.io/api/networking/v1"
	policy "k8s.io/api/policy/v1"
	"sigs.k8s.io/yaml"

	"creasefit/api/edge"
	"creasefit/internal/peer"
)

// read returns a file of this folder.
func read(t *testing.T, name string) []byte {
	t.Helper()
	text, err := os.ReadFile(name)
	require.NoError(t, err)
	return text
}

// TestKubernetesObjectsAreWhatTheyShouldBe decodes each strictly into the type
// of the Kubernetes API, so that a misspelt member is a fault, and holds them
// to each other: names, labels and ports.
func TestKubernetesObjectsAreWhatTheyShouldBe(t *testing.T) {
	decode := func(name string, into any) {
		require.NoError(t, yaml.UnmarshalStrict(read(t, "kubernetes/"+name), into), name)
	}
	var d apps.Deployment
	var s core.Service
	var h autoscaling.HorizontalPodAutoscaler
	var b policy.PodDisruptionBudget
	var n network.NetworkPolicy
	decode("deployment.yaml", &d)
	decode("service.yaml", &s)
	decode("autoscaler.yaml", &h)
	decode("disruption.yaml", &b)
	decode("network.yaml", &n)
	pod := d.Spec.Template
	assert.Equal(t, d.Spec.Selector.MatchLabels, pod.Labels)
	for what, labels := range map[string]map[string]string{"service": s.Spec.Selector, "budget": b.Spec.Selector.MatchLabels, "policy": n.Spec.PodSelector.MatchLabels} {
		assert.Equal(t, pod.Labels, labels, what)
	}
	assert.Equal(t, d.Name, h.Spec.ScaleTargetRef.Name)
	assert.Less(t, b.Spec.MinAvailable.IntValue(), int(*d.Spec.Replicas))
	assert.GreaterOrEqual(t, *h.Spec.MinReplicas, *d.Spec.Replicas)
	c := pod.Spec.Containers[0]
	assert.False(t, *pod.Spec.EnableServiceLinks, "CREASEFIT_SERVICE_HOST would be a misspelt setting")
	assert.Equal(t, "/readyz", c.ReadinessProbe.HTTPGet.Path)
	assert.Equal(t, "/livez", c.LivenessProbe.HTTPGet.Path)
	assert.True(t, *c.SecurityContext.ReadOnlyRootFilesystem)
	var environ []string
	for _, e := range c.Env {
		environ = append(environ, e.Name+"="+e.Value)
	}
	config, err := edge.ReadConfig(environ)
	require.NoError(t, err)
	grace := float64(*pod.Spec.TerminationGracePeriodSeconds)
	assert.Greater(t, grace, (config.DrainDelay+config.DrainTimeout).Seconds()+config.DrainTimeout.Seconds()/2, "the pod is given the time that draining takes")
	listed := regexp.MustCompile(`\w+\.yaml`).FindAllString(string(regexp.MustCompile(`resources: \[.*\]`).Find(read(t, "kubernetes/kustomization.yaml"))), -1)
	files, err := filepath.Glob("kubernetes/*.yaml")
	require.NoError(t, err)
	assert.Len(t, listed, len(files)-1, "every object is listed")
}

// TestNginxTakesItsConfiguration asks nginx itself.
func TestNginxTakesItsConfiguration(t *testing.T) {
	program := peer.Path(t, "nginx", "apt-get install nginx-light")
	folder := t.TempDir()
	configure(t, folder, "127.0.0.1:18080", "127.0.0.1:18081", "127.0.0.1:18082", "127.0.0.1:18083")
	output, err := exec.Command(program, "-t", "-p", folder, "-c", "nginx.conf").CombinedOutput()
	assert.NoError(t, err, string(output))
}

// TestSystemdTakesItsUnit asks systemd itself, with a program that is there.
func TestSystemdTakesItsUnit(t *testing.T) {
	program := peer.Path(t, "systemd-analyze", "apt-get install systemd")
	path := filepath.Join(t.TempDir(), "creasefit.service")
	unit := strings.ReplaceAll(string(read(t, "systemd/creasefit.service")), "/usr/local/bin/creasefit", "/bin/true")
	require.NoError(t, os.WriteFile(path, []byte(unit), 0o600))
	output, err := exec.Command(program, "verify", "--man=no", path).CombinedOutput()
	assert.NoError(t, err, string(output))
	assert.NotContains(t, string(output), "creasefit.service:", "nothing to complain of")
}

// TestAlertsAlert asks promtool whether the rules are right and whether they
// speak up when they should.
func TestAlertsAlert(t *testing.T) {
	program := peer.Path(t, "promtool", "apt-get install prometheus")
	for _, arguments := range [][]string{{"check", "rules", "prometheus/alerts.yaml"}, {"test", "rules", "prometheus/alerts_test.yaml"}} {
		output, err := exec.Command(program, arguments...).CombinedOutput()
		assert.NoError(t, err, string(output))
	}
}

// TestDashboardAndAlertsAskForWhatThereIs: every name of a metric is one that
// the service tells.
func TestDashboardAndAlertsAskForWhatThereIs(t *testing.T) {
	lane := edge.NewLane("cheap", 1, 0, 1)
	m := edge.NewMetrics("0", "0", lane)
	m.Count("/", "", 200, 1)
	m.Remembered(true)
	w := httptest.NewRecorder()
	m.Handler().ServeHTTP(w, httptest.NewRequest(http.MethodGet, "/metrics", nil))
	told := w.Body.Bytes()
	assert.True(t, json.Valid(read(t, "prometheus/dashboard.json")))
	for _, name := range []string{"prometheus/dashboard.json", "prometheus/alerts.yaml"} {
		names := regexp.MustCompile(`(creasefit|process)_[a-z_]+`).FindAll(read(t, name), -1)
		assert.NotEmpty(t, names)
		for _, metric := range names {
			assert.True(t, bytes.Contains(told, metric), "%s in %s", metric, name)
		}
	}
}

// TestComposeSetsWhatThereIs holds the settings of the composition to those of
// the service.
func TestComposeSetsWhatThereIs(t *testing.T) {
	var composition struct {
		Common struct {
			Environment map[string]string `json:"environment"`
		} `json:"x-creasefit"`
		Services map[string]any `json:"services"`
	}
	require.NoError(t, yaml.Unmarshal(read(t, "compose.yaml"), &composition))
	assert.Len(t, composition.Services, 4)
	var environ []string
	for name, value := range composition.Common.Environment {
		environ = append(environ, name+"="+value)
	}
	require.Len(t, environ, 3)
	_, err := edge.ReadConfig(environ)
	assert.NoError(t, err)
}
