package oneroster_test

import (
	"archive/zip"
	"bytes"
	"maps"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
	"time"

	"scratchpass/lessons/school/oneroster"
	"scratchpass/quiz/set"
)

var day = time.Date(2026, 11, 27, 9, 0, 0, 0, time.UTC)

// bulk are files as a school gives them: of two classes, with people who are there no more.
func bulk() map[string]string {
	return map[string]string{
		"manifest.csv": "propertyName,value\nmanifest.version,1.0\noneroster.version,1.2\nfile.users,bulk\nfile.enrollments,bulk\nfile.orgs,absent\n",
		"users.csv": "\ufeffsourcedId,status,dateLastModified,enabledUser,username,givenName,familyName,preferredFirstName\r\n" +
			"u1,,,true,ada,Adelaide,Brook,Ada\r\n" + "u2,,,true,ben,Ben,\"Carr, jr\",\r\n" + "u3,,,false,cy,Cy,Dale,\r\n" + "u4,,,true,dee,Dee,Eaton,\r\n" + "u5,,,true,eve,Eve,Fox,\r\n" + "u6,,,true,fay,Fay,Gray,\r\n",
		"enrollments.csv": "sourcedId,status,dateLastModified,classSourcedId,schoolSourcedId,userSourcedId,role,primary,beginDate,endDate\n" +
			"e1,,,turning-1,s,u2,student,false,2026-09-01,2027-07-01\n" + "e2,,,turning-1,s,u1,student,false,,\n" + "e3,,,turning-1,s,u3,student,false,,\n" +
			"e4,,,turning-2,s,u4,student,false,,\n" + "e5,,,turning-1,s,u5,teacher,true,,\n" + "e6,,,turning-1,s,u4,student,false,2026-09-01,2026-11-27\n" +
			"e7,,,turning-1,s,u6,student,false,2026-11-28,\n" + "e8,tobedeleted,,turning-1,s,u6,student,false,,\n" + "e9,,,turning-1,s,u1,student,false,,\n" + "e10,odd,,turning-3,s,u1,janitor,false,soon,\n",
	}
}

// zipped writes files as a zip, and returns where it is.
func zipped(t testing.TB, files map[string]string) string {
	t.Helper()
	var b bytes.Buffer
	z := zip.NewWriter(&b)
	for name, text := range files {
		w, err := z.Create(name)
		if err == nil {
			_, err = w.Write([]byte(text))
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	path := filepath.Join(t.TempDir(), "lists.zip")
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, b.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// Students of a class are those who are in it on the day, once each, in a folder as in a zip.
func TestReadBulk(t *testing.T) {
	want := []set.Apprentice{{ID: "u2", Name: "Ben Carr, jr"}, {ID: "u1", Name: "Ada Brook"}}
	dir := t.TempDir()
	for name, text := range bulk() {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	for _, path := range []string{dir, zipped(t, bulk())} {
		people, err := oneroster.ReadBulk(path, "turning-1", day)
		if err != nil || !reflect.DeepEqual(people, want) || !oneroster.IsBulk(path) {
			t.Error(path, people, err)
		}
	}
	for at, n := range map[string]int{"2026-08-31": 1, "2026-09-01": 3, "2026-11-26": 3, "2026-11-27": 2, "2026-11-28": 3, "2027-06-30": 3, "2027-07-01": 2} {
		when, err := time.Parse(time.DateOnly, at)
		if err != nil {
			t.Fatal(err)
		}
		if people, err := oneroster.ReadBulk(dir, "turning-1", when); err != nil || len(people) != n {
			t.Error(at, people, err)
		}
	}
	if oneroster.IsBulk(filepath.Join(dir, "users.csv")) || oneroster.IsBulk("nowhere.csv") {
		t.Error("a file is no folder")
	}
}

// What is wrong with files is told with where it is and what stands there.
func TestBadBulk(t *testing.T) {
	const manifest, users, enrollments = "manifest.csv", "users.csv", "enrollments.csv"
	for _, row := range []struct{ file, from, to, want string }{
		{manifest, "oneroster.version,1.2", "oneroster.version,2.0", `manifest.csv, row 3: oneroster.version is "2.0": give files of 1.1 or 1.2`},
		{manifest, "oneroster.version,1.2\n", "", `manifest.csv: oneroster.version is "": give files`},
		{manifest, "file.users,bulk", "file.users,delta", `manifest.csv, row 4: file.users is "delta": give the whole file (bulk)`},
		{manifest, "file.enrollments,bulk\n", "", `manifest.csv: file.enrollments is "": give the whole file`},
		{manifest, "propertyName,value", "property,value", `manifest.csv: the columns are "property, value": propertyName is missing`},
		{manifest, "manifest.version,1.0", "manifest.version", `manifest.csv, row 2: it has 1 cells, and the names of the columns are 2: "manifest.version"`},
		{enrollments, "turning-1,s,u2,student", "turning-1,s,u2,studnet", `enrollments.csv, row 2: there is no role "studnet": give one of administrator,`},
		{enrollments, "2026-09-01,2027-07-01", "1 Sept 2026,2027-07-01", `enrollments.csv, row 2: the beginDate "1 Sept 2026": give a day such as 2026-09-01`},
		{enrollments, "2026-09-01,2027-07-01", ",2027-13-01", `enrollments.csv, row 2: the endDate "2027-13-01"`},
		{enrollments, "e2,,", "e2,gone,", `enrollments.csv, row 3: there is no status "gone": give active or tobedeleted`},
		{enrollments, "s,u2,", "s,u9,", `enrollments.csv, row 2: no row of users.csv has the sourcedId "u9"`},
		{enrollments, "turning-1", "turning-9", `enrollments.csv: no row has the classSourcedId "turning-1"`},
		{enrollments, "u2,student", "u2,teacher", ""},
		{enrollments, "student", "teacher", `enrollments.csv: the class "turning-1" has no student on 2026-11-27`},
		{enrollments, "classSourcedId", "class", "classSourcedId is missing"},
		{users, "ada,Adelaide,Brook,Ada", "ada,,,", `users.csv, row 2: sourcedId "u1": no name`},
		{users, "givenName", "given", "givenName is missing"},
		{users, "Adelaide", "Ad\xff", "users.csv, row 2: it is not in UTF-8"},
		{users, `"Carr, jr"`, `"Carr`, `users.csv: it can't be read: `},
		{users, ",true,", ",false,", "users.csv: nobody of the class is active"},
	} {
		files := bulk()
		if !strings.Contains(files[row.file], row.from) {
			t.Error("no ", row.from)
		}
		files[row.file] = strings.ReplaceAll(files[row.file], row.from, row.to)
		_, err := oneroster.ReadBulk(zipped(t, files), "turning-1", day)
		if row.want == "" && err != nil || row.want != "" && (err == nil || !strings.Contains(err.Error(), row.want)) {
			t.Errorf("%s %s: %v", row.file, row.to, err)
		}
	}
	none := bulk()
	delete(none, users)
	for name, row := range map[string]struct{ path, class, want string }{
		"no class": {zipped(t, bulk()), "", "has several classes: give the sourcedId of one as class"},
		"no file":  {zipped(t, none), "turning-1", "it has no users.csv (at the top, not in a folder)"},
		"no zip":   {filepath.Join(t.TempDir(), "nowhere.zip"), "turning-1", "nowhere.zip"},
		"empty":    {zipped(t, map[string]string{manifest: ""}), "turning-1", "manifest.csv: it is empty"},
		"a bomb":   {zipped(t, map[string]string{manifest: strings.Repeat("x", 33<<20)}), "turning-1", "manifest.csv: it has more than 32 MB"},
	} {
		if _, err := oneroster.ReadBulk(row.path, row.class, day); err == nil || !strings.Contains(err.Error(), row.want) {
			t.Error(name, err)
		}
	}
	text := filepath.Join(t.TempDir(), "text.zip")
	if err := os.WriteFile(text, []byte("no zip"), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := oneroster.ReadBulk(text, "turning-1", day); err == nil || !strings.Contains(err.Error(), "it is no zip that can be read") {
		t.Error(err)
	}
}

func FuzzBulk(f *testing.F) {
	good := bulk()
	f.Add(good["manifest.csv"], good["users.csv"], good["enrollments.csv"])
	f.Add(good["manifest.csv"], "sourcedId,givenName,familyName\nu1,\"A\nB\",\u202e\n", "classSourcedId,userSourcedId,role\nturning-1,u1,student\n")
	f.Fuzz(func(t *testing.T, manifest, users, enrollments string) {
		files := map[string]string{"manifest.csv": manifest, "users.csv": users, "enrollments.csv": enrollments}
		people, err := oneroster.Files(maps.Clone(files), "turning-1", day)
		if err == nil && len(people) == 0 {
			t.Error("a list of nobody")
		}
		seen := map[string]bool{}
		for _, p := range people {
			if key := strings.ToLower(p.ID); err == nil && (key == "" || seen[key] || p.Name == "" || strings.ContainsAny(p.ID+p.Name, "\n\x00\u202e")) {
				t.Errorf("%q is on the list", p)
			} else {
				seen[key] = true
			}
		}
	})
}
