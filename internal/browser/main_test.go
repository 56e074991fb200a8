package browser_test

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

var (
	update   = flag.Bool("update", false, "write what was measured into docs/performance.md")
	pictures = flag.Bool("pictures", false, "take the pictures of the pages into docs/pictures")
)

// root is the top of the source tree, as seen from this package.
const root = "../.."

// program is the built garner, and oneBrowser the browser whose tabs the tests
// open; every tab has its own cookies and its own storage.
var (
	program    string
	oneBrowser context.Context
)

func TestMain(m *testing.M) {
	flag.Parse()
	code, err := run(m)
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		code = 1
	}
	os.Exit(code)
}

// run builds the program and starts the browser around the tests.
func run(m *testing.M) (int, error) {
	if testing.Short() {
		return m.Run(), nil
	}
	if _, err := os.Stat(filepath.Join(root, "internal/web/dist/main.js")); err != nil {
		return 0, errors.New("the script of the pages is not built: make web")
	}
	dir, err := os.MkdirTemp("", "garner-browser-")
	if err != nil {
		return 0, err
	}
	defer os.RemoveAll(dir)
	program = filepath.Join(dir, "garner")
	build := exec.Command("go", "build", "-o", program, "garner/cmd/garner")
	if out, err := build.CombinedOutput(); err != nil {
		return 0, fmt.Errorf("garner does not build: %w\n%s", err, out)
	}
	path, err := browserPath()
	if err != nil {
		return 0, err
	}
	allocated, stop := chromedp.NewExecAllocator(context.Background(), browserOptions(path, filepath.Join(dir, "browser"))...)
	defer stop()
	started, end := chromedp.NewContext(allocated)
	defer end()
	if err := chromedp.Do(started); err != nil {
		return 0, fmt.Errorf("%s does not start: %w", path, err)
	}
	oneBrowser = started
	code := m.Run()
	return code, endShared()
}

// browserPath finds the browser as make test does; what it says when there is
// none tells what to install.
func browserPath() (string, error) {
	find := exec.Command("sh", filepath.Join(root, "tools/browser.sh"))
	var said strings.Builder
	find.Stderr = &said
	out, err := find.Output()
	if err != nil {
		return "", errors.New(strings.TrimSpace(said.String()))
	}
	return strings.TrimSpace(string(out)), nil
}

// browserOptions keep the browser to itself: a fresh profile, nothing fetched
// that a test did not ask for. The sandbox does not work for root.
func browserOptions(path, profile string) []chromedp.ExecAllocatorOption {
	options := append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(path), chromedp.UserDataDir(profile), chromedp.DisableGPU,
		chromedp.Flag("disable-quic", true), chromedp.Flag("disable-component-update", true),
		chromedp.Flag("lang", "en-GB"))
	if os.Geteuid() == 0 {
		options = append(options, chromedp.NoSandbox)
	}
	return options
}

// slow leaves a test out of a short run.
func slow(t *testing.T) {
	t.Helper()
	if testing.Short() {
		t.Skip("runs a browser")
	}
}

// beside lets a test run beside others, each with its own tab.
func beside(t *testing.T) {
	t.Helper()
	slow(t)
	t.Parallel()
}
