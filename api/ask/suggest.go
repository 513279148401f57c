package ask

import (
	"net/url"
	"slices"
	"strings"
	"time"

	"creasefit/internal/enclosure"
	"creasefit/internal/fault"
	"creasefit/internal/mail"
	"creasefit/internal/solve"
)

// Suggest is a thing, and what is wished for of what goes round it.
type Suggest struct {
	Common
	Shape    Word
	Wish     Words
	Post     Word
	Class    Text
	Minutes  Number
	Pictures Word
	Language Word

	Request *solve.Request // of no kind yet
	Wishes  solve.Wishes
}

// suggestNames are the names that no kind knows.
var suggestNames = []string{"wish", "post", "class", "minutes", "pictures", "language"}

// CommonLink is the canonical address of a calculation of a kind with the names that
// it knows.
func (r *Reading) CommonLink(path string, k *enclosure.Kind) string {
	changed := *r
	changed.values = slices.Clone(r.values)
	names := suggestNames
	if !k.Rolls() {
		names = append(names[:len(names):len(names)], enclosure.Shape().Name)
	}
	for _, name := range names {
		if i, ok := r.table.index[name]; ok {
			changed.values[i] = slotOf(&Text{})
		}
	}
	link := changed.AppendQuery(append([]byte(path+k.Name), '?'), false)
	if k.Design != "" {
		link = append(link, "&design="+url.QueryEscape(k.Design)...)
	}
	return string(link)
}

func (q *Suggest) bind(b *Names) {
	q.Common.bindWith(b, sheetGrainName())
	shape := ownName(enclosure.Shape())
	shape.Help = "What the contents are: a box, or round as a jar is, as wide as thick. Kinds that can be are rolled round it then."
	b.bind(&q.Shape, shape)
	wishes := []string{string(solve.WishReusable), string(solve.WishNoGlue), string(solve.WishFewCuts), string(solve.WishOneSheet)}
	b.bind(&q.Wish, Name{Name: "wish", Most: 4, Example: "reusable", Choices: wishes,
		Help: "What is wished for, may be given several times: reusable, opens and closes without tearing; no-glue; few-cuts, the fewest " +
			"first; one-sheet, all of it out of one sheet. Kinds that do not keep a wish come later."})
	b.bind(&q.Post, Name{Name: "post", Choices: mail.Names(), Catalogue: "/v1/posts", Example: "us",
		Help: "The post that the finished piece should go by."})
	b.bind(&q.Class, Name{Name: "class", Example: "letter",
		Help: "The size class of the post that it should go as, or a cheaper one. Default: any."})
	b.bind(&q.Minutes, Name{Name: "minutes", Example: "10",
		Help: "How long cutting and scoring may take, at 40 seconds a stop and 15 a cut."}.numbers(0.5, 600))
	b.bind(&q.Pictures, picturesName("Adds a picture of each finished enclosure as SVG, for a light or a dark page."))
	b.bind(&q.Language, languageName("The language of the words, in pictures too. What is wrong with a kind that does not work stays English."))
}

// picturesName is the choice to have pictures in an answer.
func picturesName(help string) Name {
	return Name{Name: "pictures", Choices: []string{"no", themeLight, themeDark}, Example: themeLight, Default: Always("no"), Advanced: true, Help: help}
}

func (q *Suggest) settle(r *Reading) {
	q.Request = &solve.Request{}
	q.Contents.settle(r, q.Request)
	q.Contents.require(r, []string{"width"})
	q.Common.settle(r, q.Request)
	if q.Shape.Given {
		q.Request.Options = map[string]enclosure.Value{enclosure.Shape().Name: {Choice: q.Shape.Word}}
	}
	if q.Contents.roundOff(q.Request); q.Contents.Thickness.From == "width" {
		q.Contents.Thickness.Put(q.Request.Width) // links to kinds that roll nothing need it
	}
	wished := func(w solve.Wish) bool { return slices.Contains(q.Wish.Texts, string(w)) }
	q.Wishes = solve.Wishes{Reusable: wished(solve.WishReusable), NoGlue: wished(solve.WishNoGlue), FewCuts: wished(solve.WishFewCuts), OneSheet: wished(solve.WishOneSheet),
		Class: -1, Within: time.Duration(q.Minutes.Number * float64(time.Minute))}
	if q.Wishes.OneSheet && !q.Stock.Sheet.Given {
		r.missing(&q.Stock.Sheet, "one sheet of what size is not said", "add sheet=letter")
	}
	q.settlePost(r)
}

// settlePost settles the post and its class.
func (q *Suggest) settlePost(r *Reading) {
	posts := mail.Posts()
	if i := slices.IndexFunc(posts, func(p *mail.Post) bool { return p.Name == q.Post.Word }); i >= 0 {
		q.Wishes.Post = posts[i]
	}
	switch {
	case !q.Class.Given:
	case q.Wishes.Post == nil:
		r.missing(&q.Post, "the class of which post is not said", "add post=us")
	default:
		var names []string
		for _, c := range q.Wishes.Post.Classes {
			names = append(names, c.Name)
		}
		if q.Wishes.Class = slices.Index(names, q.Class.Text); q.Wishes.Class < 0 {
			f := fault.Fault{Code: fault.Unknown, Field: q.Class.name().Name, Value: q.Class.Text, Detail: "this post has no such class",
				Expected: "one of " + strings.Join(names, ", "), Hint: fault.Nearest(strings.ToLower(q.Class.Text), names)}
			r.Report(f, f.Hint)
		}
	}
}
