package api

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"fmt"
	"image/png"
	"io"
	"net/http"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"creasefit/api/tell"
	"creasefit/internal/draw"
	"creasefit/internal/fault"
	"creasefit/internal/repertoire"
)

// checkFile checks that an answer is what its format promises.
var checkFile = map[tell.Format]func(*testing.T, []byte){
	tell.SVG: func(t *testing.T, body []byte) {
		var root struct {
			XMLName xml.Name
			Title   string `xml:"title"`
		}
		require.NoError(t, xml.Unmarshal(body, &root))
		assert.Equal(t, "svg", root.XMLName.Local)
		assert.NotEmpty(t, root.Title)
	},
	tell.PDF: func(t *testing.T, body []byte) { assert.True(t, bytes.HasPrefix(body, []byte("%PDF-"))) },
	tell.PNG: func(t *testing.T, body []byte) {
		picture, err := png.DecodeConfig(bytes.NewReader(body))
		require.NoError(t, err)
		assert.Equal(t, 800, picture.Width)
	},
	tell.DXF: func(t *testing.T, body []byte) {
		assert.Contains(t, string(body), "ENTITIES")
		assert.True(t, strings.HasSuffix(strings.TrimSpace(string(body)), "EOF"))
	},
	tell.FOLD: func(t *testing.T, body []byte) {
		var file struct {
			Spec  float64     `json:"file_spec"`
			Faces [][]float64 `json:"faces_vertices"`
		}
		require.NoError(t, json.Unmarshal(body, &file))
		assert.InDelta(t, 1.2, file.Spec, 1e-9)
	},
	tell.GLB: func(t *testing.T, body []byte) { assert.True(t, bytes.HasPrefix(body, []byte("glTF"))) },
}

func TestEveryKindIsDrawnInEveryFormat(t *testing.T) {
	for _, k := range repertoire.Kinds() {
		query, body := solveExample(k)
		for _, f := range drawingFormats {
			t.Run(k.Name+"/"+f.String(), func(t *testing.T) {
				a := get(t, "/v1/drawing/"+k.Name+"."+f.Extension()+"?"+query).ok()
				assert.Equal(t, f.Media(), a.Header().Get("Content-Type"))
				checkFile[f](t, a.Body.Bytes())
				posted := postJSON(t, "/v1/drawing/"+k.Name+"?format="+f.String(), body).ok()
				assert.Equal(t, a.Body.Bytes(), posted.Body.Bytes())
			})
		}
	}
}

// What can be made in two pieces is drawn so, glue on the laps and all.
func TestTwoPiecesAreDrawn(t *testing.T) {
	for _, k := range repertoire.Kinds() {
		option, ok := k.InTwoPieces()
		if !ok {
			continue
		}
		query := "?unit=in&width=3&height=5&thickness=1-1/2&caliper=0.012&ruler=1/64in&" + option.Name + "=" + option.Choice
		for _, f := range drawingFormats {
			a := get(t, "/v1/drawing/"+k.Name+"."+f.Extension()+query).ok()
			if f != tell.PNG { // as wide as it is high
				checkFile[f](t, a.Body.Bytes())
			}
		}
		picture := get(t, "/v1/drawing/"+k.Name+query).ok().Body.String()
		assert.Contains(t, picture, "glue: "+glueOfHalves[k.Name], k.Name)
		guide := get(t, "/v1/guide/"+k.Name+query+"&format=pdf").ok()
		checkFile[tell.PDF](t, guide.Body.Bytes())
	}
}

// glueOfHalves is an area that is glued to the other half, by kind.
var glueOfHalves = map[string]string{"sleeve": "second lap", "drawer-box": "second lap", "tuck-carton": "second lap", "gusset-bag": "second lap",
	"tray": "base lap", "lidded-box": "base lap"}

func TestDrawingOptions(t *testing.T) {
	light, dark := get(t, "/v1/drawing/slotted-band?"+cards).ok(), get(t, "/v1/drawing/slotted-band?"+cards+"&theme=dark").ok()
	assert.Equal(t, "image/svg+xml", light.Header().Get("Content-Type"), "an SVG unless asked for otherwise")
	assert.NotEqual(t, light.Body.String(), dark.Body.String())
	assert.NotEqual(t, light.Header().Get("ETag"), dark.Header().Get("ETag"))
	small := get(t, "/v1/drawing/slotted-band.png?"+cards+"&pixels=200").ok()
	picture, err := png.DecodeConfig(small.Body)
	require.NoError(t, err)
	assert.Equal(t, 200, picture.Width)
	letter, a4 := get(t, "/v1/drawing/slotted-band.pdf?"+cards).ok(), get(t, "/v1/drawing/slotted-band.pdf?"+cards+"&paper=a4").ok()
	assert.Contains(t, letter.Body.String(), "/MediaBox [0 0 612 792]")
	assert.Contains(t, a4.Body.String(), "/MediaBox [0 0 595.276 841.89]")
	flat, closed := get(t, "/v1/drawing/slotted-band.glb?"+cards+"&closed=0").ok(), get(t, "/v1/drawing/slotted-band.glb?"+cards).ok()
	assert.NotEqual(t, flat.Body.Bytes(), closed.Body.Bytes())
}

func TestDrawingSpeaksALanguage(t *testing.T) {
	for language, words := range map[string][]string{"en": {"<title", ">Slotted belly band<", "towards you 180°", " in</text>"}, "de": {">Bauchbinde mit Steckschlitzen<", "auf dich zu 180°", " Zoll</text>"}} {
		picture := get(t, "/v1/drawing/slotted-band?"+cards+"&language="+language).ok().Body.String()
		for _, word := range append(words, `lang="`+language+`"`) {
			assert.Contains(t, picture, word)
		}
	}
	usual, english := get(t, "/v1/drawing/slotted-band?"+cards).ok(), get(t, "/v1/drawing/slotted-band?language=en&"+cards).ok()
	assert.Equal(t, usual.Body.String(), english.Body.String())
}

func TestDrawingNamesWhatIsWrong(t *testing.T) {
	for query, field := range map[string]string{
		"&pixels=10": "pixels", "&language=xx": "language", "&theme=blue": "theme", "&closed=2": "closed", "&format=doc": "format", "&paper=2x2in": "paper", "&pick=/unit": "pick",
	} {
		p := get(t, "/v1/drawing/slotted-band?"+cards+query).problem(http.StatusBadRequest)
		assert.Equal(t, field, p.Errors[0].Name)
	}
}

func TestViews(t *testing.T) {
	const tray = "unit=mm&width=60&height=40&thickness=12&caliper=0.4"
	template := get(t, "/v1/drawing/lidded-box.svg?"+tray+"&view=template").ok().Body.String()
	assert.Contains(t, template, "make 1")
	assert.NotContains(t, template, "score 1</text>", "no readings")
	pdf := get(t, "/v1/drawing/lidded-box.pdf?"+tray+"&view=template&paper=a4").ok().Body.Bytes()
	assert.Equal(t, 1, bytes.Count(pdf, []byte("<</Type /Page /")), "tray and lid are nested on one page")

	cutter := get(t, "/v1/drawing/lidded-box.svg?"+tray+"&view=cutter&bed=300x200mm&kerf=0.2&folds=perforate").ok().Body.String()
	for _, group := range []string{`id="cut"`, `id="perforate"`, `id="mark"`, `id="glue"`, `width="300mm" height="200mm"`} {
		assert.Contains(t, cutter, group)
	}
	assert.NotContains(t, cutter, "<text")
	assert.NotContains(t, cutter, `id="score"`)

	small := get(t, "/v1/drawing/lidded-box.svg?"+tray+"&view=cutter&bed=60x60mm").problem(http.StatusUnprocessableEntity)
	assert.Equal(t, "bed", small.Errors[0].Name)
	wide := get(t, "/v1/drawing/slotted-band.svg?unit=mm&width=60&height=40&thickness=12&caliper=0.4&view=everything").problem(http.StatusBadRequest)
	assert.Contains(t, wide.Errors[0].Expected, "template")
}

// Every step of a box has its picture, with words; what is beyond the last one
// is refused with the number that there is.
func TestStepPictures(t *testing.T) {
	const box = "/v1/drawing/lidded-box.svg?unit=mm&width=60&height=40&thickness=12&caliper=0.4&view=step&picture="
	for n := 1; ; n++ {
		a := get(t, box+strconv.Itoa(n))
		if a.Code != http.StatusOK {
			p := a.problem(http.StatusBadRequest)
			assert.Equal(t, "picture", p.Errors[0].Name)
			assert.Equal(t, strconv.Itoa(n-1), p.Errors[0].Hint)
			assert.Greater(t, n, 8)
			break
		}
		checkFile[tell.SVG](t, a.Body.Bytes())
		assert.Contains(t, a.Body.String(), "<desc")
	}
	german := get(t, box+"4&language=de").ok().Body.String()
	assert.Contains(t, german, "auf dich zu")
	get(t, strings.Replace(box, ".svg", ".png", 1)+"4").ok()
}

// What a machine cannot do is told by the name that would change it, with a size that is
// none too small: rounded up to a hundredth of a millimetre.
func TestMachinesSayWhatTheyCannotDo(t *testing.T) {
	for _, c := range []struct {
		cannot              draw.CutterError
		field, detail, hint string
	}{
		{draw.CutterError{Kerf: true, Piece: "band", Size: 0.121}, "kerf", "band has a detail of 0.13 mm that", "leave kerf out"},
		{draw.CutterError{Kerf: true, Piece: "band", Size: 0.5}, "kerf", "band has a detail of 0.5 mm that", "leave kerf out"},
		{draw.CutterError{Piece: "lid", Size: 312.3401}, "bed", "lid, 312.35 mm at its longest,", "leave bed out"},
		{draw.CutterError{Piece: "lid", Size: 312}, "bed", "lid, 312 mm at its longest,", "leave bed out"},
	} {
		err := cutterFault(fmt.Errorf("laying out: %w", &c.cannot))
		f, ok := err.(fault.Fault)
		require.True(t, ok, err)
		assert.Equal(t, fault.Impossible, f.Code)
		assert.Equal(t, c.field, f.Field)
		assert.Contains(t, f.Detail, c.detail)
		assert.Contains(t, f.Hint, c.hint)
	}
	assert.NoError(t, cutterFault(nil))
	assert.Equal(t, io.EOF, cutterFault(io.EOF), "what is not about the machine stays what it is")
}
