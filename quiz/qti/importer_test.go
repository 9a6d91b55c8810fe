package qti

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
)

// tree is a document as an importer reads it, its names those of version 2.1.
type tree struct {
	name  string
	space string
	attrs map[string]string
	kids  []*tree
	text  string // of the element and all below it
}

// deepest is how far elements may stand in one another: ours do ten deep.
const deepest = 100

// readTree reads a document. What is no one whole element is an error.
func readTree(data []byte) (*tree, error) {
	decoder := xml.NewDecoder(bytes.NewReader(data))
	stack := []*tree{{}}
	for {
		token, err := decoder.Token()
		switch {
		case errors.Is(err, io.EOF) && len(stack[0].kids) == 1 && stack[0].text == "":
			return stack[0].kids[0], nil
		case errors.Is(err, io.EOF):
			return nil, fmt.Errorf("%d elements stand alone, with the text %.40q between them", len(stack[0].kids), stack[0].text)
		case err != nil:
			return nil, err
		}
		switch token := token.(type) {
		case xml.StartElement:
			if len(stack) > deepest {
				return nil, fmt.Errorf("elements stand more than %d deep", deepest)
			}
			n := &tree{name: plain(token.Name.Local), space: token.Name.Space, attrs: map[string]string{}}
			for _, a := range token.Attr {
				n.attrs[plain(a.Name.Local)] = a.Value
			}
			top := stack[len(stack)-1]
			top.kids = append(top.kids, n)
			stack = append(stack, n)
		case xml.EndElement:
			stack = stack[:len(stack)-1]
		case xml.CharData:
			if strings.TrimSpace(string(token)) == "" { // between elements
				continue
			}
			for _, n := range stack[min(1, len(stack)-1):] {
				n.text += string(token)
			}
		}
	}
}

// plain is the name of version 2.1.
func plain(name string) string {
	words := strings.Split(strings.TrimPrefix(name, "qti-"), "-")
	for i, word := range words[1:] {
		if word != "" {
			words[1+i] = strings.ToUpper(word[:1]) + word[1:]
		}
	}
	return strings.Join(words, "")
}

func (n *tree) all(name string) []*tree {
	var found []*tree
	if n.name == name {
		found = append(found, n)
	}
	for _, k := range n.kids {
		found = append(found, k.all(name)...)
	}
	return found
}

func (n *tree) kid(name string) *tree {
	for _, k := range n.kids {
		if k.name == name {
			return k
		}
	}
	return nil
}

// most is the size of a file in a package that is still read.
const most = 1 << 22

// unpack reads the files of a package. The manifest must list them all and no others,
// and each must be one whole document.
func unpack(data []byte) (names []string, files map[string][]byte, err error) {
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return nil, nil, err
	}
	files = map[string][]byte{}
	for _, f := range z.File {
		if files[f.Name] != nil {
			return nil, nil, fmt.Errorf("two files are called %q", f.Name)
		}
		if files[f.Name], err = readFile(f); err != nil {
			return nil, nil, fmt.Errorf("%q: %w", f.Name, err)
		}
		if _, err := readTree(files[f.Name]); err != nil {
			return nil, nil, fmt.Errorf("%q: %w", f.Name, err)
		}
		names = append(names, f.Name)
	}
	if files[manifestFile] == nil {
		return nil, nil, errors.New("there is no manifest")
	}
	manifest, err := readTree(files[manifestFile])
	if err != nil {
		return nil, nil, err
	}
	listed := []string{manifestFile}
	for _, f := range manifest.all("file") {
		listed = append(listed, f.attrs["href"])
	}
	if there := slices.Sorted(slices.Values(names)); !slices.Equal(there, slices.Sorted(slices.Values(listed))) {
		return nil, nil, fmt.Errorf("the files are %.200q, listed are %.200q", there, listed)
	}
	return names, files, nil
}

func readFile(f *zip.File) ([]byte, error) {
	r, err := f.Open()
	if err != nil {
		return nil, err
	}
	defer r.Close()
	data, err := io.ReadAll(io.LimitReader(r, most+1))
	if err == nil && len(data) > most {
		err = fmt.Errorf("more than %d bytes", most)
	}
	return data, err
}
