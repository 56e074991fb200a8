package web

import (
	"bytes"
	"errors"
	"io"
	"mime/multipart"
	"net/http"

	"garner/internal/desk"
	"garner/internal/fault"
)

const (
	weatherFilesPath = "/weather/files"
	weatherLookPath  = "/weather/files/look"
	// keptInMemory is how much of an upload stays in memory [bytes]; the rest lies in
	// files of the system while it is read.
	keptInMemory = 16 << 20
	// mostTable is the largest table that waits for its column map [bytes].
	mostTable = 20 << 20
)

// lookAtWeather reads the files of a form and leads to what was found.
func lookAtWeather(v *visit) error {
	var over *http.MaxBytesError
	err := v.r.ParseMultipartForm(keptInMemory)
	switch {
	case errors.As(err, &over):
		return tooLarge()
	case err != nil:
		return formUnreadable()
	}
	defer v.r.MultipartForm.RemoveAll()
	f := &foundFiles{raw: map[int][]byte{}}
	if f.Token, err = v.entry(); err != nil {
		return err
	}
	for _, file := range v.r.MultipartForm.File["file"] {
		if file.Filename == "" && file.Size == 0 {
			continue
		}
		if err := v.lookAt(f, file); err != nil {
			return err
		}
	}
	if len(f.Found) == 0 {
		return v.showWeatherFiles(fault.List{fault.New(fault.Invalid, "web.weather_no_file", nil)})
	}
	v.found.put(f)
	v.moveTo(foundPath(f.Token))
	return nil
}

func foundPath(token string) string { return weatherFilesPath + "/found/" + token }

// lookAt reads one file; a table whose headings are not known waits as it is.
func (v *visit) lookAt(f *foundFiles, file *multipart.FileHeader) error {
	found, err := v.office.ReadWeather(desk.WeatherInput{Name: file.Filename, Open: func() (io.ReadCloser, error) { return file.Open() }}, desk.WeatherHow{})
	if err != nil {
		return err
	}
	if found.Headings != nil && file.Size <= mostTable {
		open, err := file.Open()
		if err != nil {
			return err
		}
		defer open.Close()
		if f.raw[len(f.Found)], err = io.ReadAll(open); err != nil {
			return err
		}
	}
	f.Found = append(f.Found, found)
	return nil
}

// readAgain reads the tables that wait once more: one of them may be known by now.
func (v *visit) readAgain(f *foundFiles) (*foundFiles, error) {
	token, err := v.entry()
	if err != nil {
		return nil, err
	}
	out := &foundFiles{Token: token, raw: map[int][]byte{}}
	for i, found := range f.Found {
		if raw, waits := f.raw[i]; waits {
			if found, err = v.office.ReadWeather(desk.WeatherInput{Name: found.File, Open: func() (io.ReadCloser, error) {
				return io.NopCloser(bytes.NewReader(raw)), nil
			}}, desk.WeatherHow{}); err != nil {
				return nil, err
			}
			if found.Headings != nil {
				out.raw[i] = raw
			}
		}
		out.Found = append(out.Found, found)
	}
	return out, nil
}
