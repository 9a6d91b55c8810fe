package web_test

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/chromedp/chromedp"
)

// pictureFolder names in the environment a folder for pictures of the pages, at the sizes that
// they are made for. Without it none are made.
const pictureFolder = "SCRATCHPASS_PICTURES"

// pictures keeps pictures of the page that is open.
func pictures(t *testing.T, ctx context.Context, name string) {
	t.Helper()
	folder := os.Getenv(pictureFolder)
	if folder == "" {
		return
	}
	for _, size := range [][2]int64{{360, 740}, {1024, 768}, {1440, 900}} {
		if err := chromedp.Do(ctx, chromedp.EmulateViewport(size[0], size[1])); err != nil {
			t.Fatal(err)
		}
		picture, err := chromedp.Run(ctx, chromedp.FullScreenshot(90))
		if err != nil {
			t.Fatal(err)
		}
		file := filepath.Join(folder, fmt.Sprintf("%s-%dx%d.png", name, size[0], size[1]))
		if err := os.WriteFile(file, picture, 0o600); err != nil {
			t.Fatal(err)
		}
	}
}
