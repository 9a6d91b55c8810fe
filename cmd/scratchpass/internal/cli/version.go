package cli

import "runtime/debug"

// released is the version of a package or an archive, which its maker has the linker write
// here. It is empty for what is built by hand.
var released string

// Version is what --version says.
func Version() string { return version(released, debug.ReadBuildInfo) }

// version is the version of the package, or what Go knows of the
// checkout that it was installed from, which is the commit. `go run` and a folder without
// its history know of none.
func version(released string, built func() (*debug.BuildInfo, bool)) string {
	if released != "" {
		return released
	}
	if info, ok := built(); ok && info.Main.Version != "" && info.Main.Version != "(devel)" {
		return info.Main.Version
	}
	return "development"
}
