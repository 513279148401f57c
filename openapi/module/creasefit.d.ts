// Creasefit 0.1.0: the types of creasefit.js. Made from the specification.

export type Adapted = {
  "now": Solution;
  /** every size, before and after */
  "sizes": Array<SizeBeside>;
  /** choices that were read off the measurements */
  "style": Array<StyleRead>;
  /** the measured pattern with what it was made for */
  "was": Check;
  "words": string;
};
/** The side that the lines of the address run along, for posts whose rules ask. Default: the longer one. */
export type AddressAlongValue = "width" | "height";
export type Alternative = {
  /** Chance is that of all together; absent unless the request wants a chance. */
  "chance"?: number;
  "fit": Array<Fit>;
  "gain": string;
  "link": string;
  "step": string;
};
/** Circumscribed: the walls touch the circle of round contents, width across, or with a height the circle through the corners of a rectangle. Inscribed: the corners touch the circle through those of contents with as many sides, width from corner to corner. Default: circumscribed. */
export type AroundValue = "circumscribed" | "inscribed";
/** How high the band is. Default: 1 1/2 in on inch rulers, 40 mm on millimetre rulers. From 5 to 1000 mm. */
export type BandHeightValue = string;
/** How far the flaps of the front and of the gussets reach under the base. Default: 1/4 in on inch rulers, 5 mm on millimetre rulers. From 3 to 300 mm. */
export type BaseFlapValue = string;
export type BasisWeight = {
  "basis": string;
  "grade": string;
  "pounds": number;
};
/** Mass of a ream of the grade's basis size, in pounds; needs grade. */
export type BasisWeightValue = number;
/** The area that a cutting machine reaches; of the view cutter. Default: as large as needed. From 20 to 5000 mm. Names are listed at /v1/sheets/sizes. */
export type BedValue = string;
export type BenchList = {
  "benches": Array<BenchPreset>;
};
export type BenchPreset = {
  "cut_tolerance": Length;
  "name": string;
  /** the bench as names, exactly */
  "query": string;
  "score_tolerance": Length;
  "source": string;
  "title": string;
};
/** How the paper is cut and scored; says how exact that is. Default: hand. */
export type BenchValue = "hand" | "trimmer" | "plotter";
/** How the paper is cut and scored, for what was not measured. Default: hand. */
export type BenchValueCalibrate = "hand" | "trimmer" | "plotter";
export type Blank = {
  "height": Length;
  "width": Length;
};
/** Width and height of each piece's blank, in the order of the solution's pieces. From 1 to 5000 mm. */
export type BlankValue = string;
/** Width and height of the blank. From 1 to 10000 mm. */
export type BlankValueYield = string;
/** Thickness of that block. From 0.1 to 1000 mm. */
export type BlockThicknessValue = string;
/** How far each size of the block may be off, plus or minus. Default: 0.002 in on inch rulers, 0.05 mm on millimetre rulers. From 0 to 10 mm. */
export type BlockToleranceValue = string;
/** Width of the block that a strip is wound round. From 2 to 1000 mm. */
export type BlockWidthValue = string;
/** Caliper from which the stock does not give way: edges are trimmed instead of pressed in, scores cut half through, and what folds flat is refused. Default: 0.8 mm. From 0.01 to 10 mm. */
export type BoardFromValue = string;
/** How far up the bottom panel comes; as far as the overlap asks for if not given. From 5 to 1000 mm. */
export type BottomPanelValue = string;
export type Bound = {
  "in"?: number;
  "mm"?: number;
  "number"?: number;
};
/** It is a box, hinged or not. Default: no. */
export type BoxValue = "no" | "yes";
export type Calibration = {
  /** of a wetted sheet */
  "growth": Array<CalibrationGrew>;
  /** how each came about */
  "how": Array<CalibrationHow>;
  "links": CalibrationLinks;
  /** what to mend before measuring again */
  "notes": Array<string>;
  /** the same for an address: the text to keep */
  "query": string;
  "unit": "in" | "mm";
  /** names for the next request */
  "use": CalibrationUse;
  "words": string;
};
export type CalibrationGrew = {
  "confidence": number;
  "greatest": number;
  "least": number;
  "name": "wet_along" | "wet_across";
  "percent": number;
};
export type CalibrationHow = {
  /** that it lies between these */
  "confidence"?: number;
  "estimate": Length;
  "from": string;
  "greatest"?: Length;
  /** none where it is no measurement */
  "least"?: Length;
  "name": string;
};
export type CalibrationLinks = {
  /** what the names are of use for */
  "kinds": string;
  "self": string;
  /** the test sheet to make and measure */
  "sheet": string;
};
export type CalibrationUse = {
  "caliper"?: string;
  "caliper_tolerance"?: string;
  "cut_tolerance"?: string;
  "fold_allowance"?: string;
  "score_tolerance"?: string;
};
/** How far the caliper of the pack may be off, plus or minus. Default: what the named stock states, else 7 % of the caliper. From 0 to 2 mm. */
export type CaliperToleranceValue = string;
/** Thickness of one sheet of the paper. From 0.01 to 5 mm. */
export type CaliperValue = string;
/** Thickness of one sheet, if it is known and not to be measured. From 0.01 to 5 mm. */
export type CaliperValueCalibrate = string;
/** Thickness of one sheet. From 0.01 to 5 mm. */
export type CaliperValueStock = string;
/** It is a card without an envelope, unfolded or folded. Default: no. */
export type CardValue = "no" | "single" | "folded";
export type Cause = {
  /** of a stop, or of a line made at it */
  "at"?: Length;
  "cause": "cut-stop" | "score-stop" | "one-cut" | "one-score" | "caliper" | "fold";
  /** the same in standard deviations */
  "deviations": number;
  /** more than stated; less if negative */
  "off": Length;
  "words": string;
};
export type ChainLink = {
  /** what the layer goes round, along its own axes */
  "contents": SureSizes;
  "fit": Array<Fit>;
  "layer": string;
  /** of the layer when it is closed */
  "outside": SureSizes;
};
export type Change = {
  "from": Length;
  "name": string;
  "to": Length;
};
export type Check = {
  "closures": Array<Closure>;
  /** what the fold proof says against it */
  "findings": Array<string>;
  "fit": Array<Fit>;
  "given": Record<string, Given>;
  "greatest": Greatest;
  "kind": string;
  /** of the folded piece, if it was measured */
  "learned"?: Learned;
  "limits": Array<Limit>;
  "links": Links;
  /** the smallest change that mends it */
  "mend": Array<Change>;
  "proof": Proof;
  /** that all of it goes together */
  "sure": Sure;
  "unit": "in" | "mm";
  "warnings": Array<Warning>;
  "words": string;
  /** all adds up, closes and holds the contents */
  "works": boolean;
};
/** It is closed with a clasp, a string or a button. Default: no. */
export type ClaspValue = "no" | "yes";
/** The size class of the post that it should go as, or a cheaper one. Default: any. */
export type ClassValue = string;
/** The greatest clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
export type ClearanceMaxValue = string;
/** The least clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
export type ClearanceMinValue = string;
/** How much of the work is done where the model stands at rest: 0 flat, 1 finished; of GLB, whose animations play the work. Default: 1. */
export type ClosedValue = number;
/** How far the closing flap comes down, measured in its middle. Default: 1 1/2 in on inch rulers, 40 mm on millimetre rulers. From 5 to 1000 mm. */
export type ClosingFlapValue = string;
export type Closure = {
  "name": string;
  "off": Length;
};
/** How wide column 1 is, to the middle of its strips; a share of what is left if not given. From 5 to 1000 mm. */
export type Column1Value = string;
/** How wide column 2 is, to the middle of its strips; a share of what is left if not given. From 5 to 1000 mm. */
export type Column2Value = string;
/** How wide column 3 is, to the middle of its strips; a share of what is left if not given. From 5 to 1000 mm. */
export type Column3Value = string;
/** How wide column 4 is, to the middle of its strips; a share of what is left if not given. From 5 to 1000 mm. */
export type Column4Value = string;
/** How wide column 5 is, to the middle of its strips; a share of what is left if not given. From 5 to 1000 mm. */
export type Column5Value = string;
/** How wide column 6 is, to the middle of its strips; a share of what is left if not given. From 5 to 1000 mm. */
export type Column6Value = string;
/** How wide column 7 is, to the middle of its strips; a share of what is left if not given. From 5 to 1000 mm. */
export type Column7Value = string;
/** How wide column 8 is, to the middle of its strips; a share of what is left if not given. From 5 to 1000 mm. */
export type Column8Value = string;
/** How wide every column but the last is, to the middle of its strip; all the same if not given. From 5 to 1000 mm. */
export type ColumnWidthValue = string;
/** How many cells lie along the width. Default: 3. */
export type ColumnsValue = number;
export type ContentsList = {
  "contents": Array<ContentsPreset>;
};
export type ContentsPreset = {
  "height": Length;
  /** made up for the examples */
  "invented": boolean;
  "name": string;
  /** how far the side that differs more is off */
  "off"?: Length;
  "size_tolerance"?: Length;
  "source": string;
  /** none: the request must say */
  "thickness"?: Length;
  "thickness_tolerance"?: Length;
  "title": string;
  /** its width is compared with the height asked for */
  "turned"?: boolean;
  "width": Length;
};
/** How much the contents vary in every direction, plus or minus, or one way alone, such as -1/8 for what only shrinks. Default: what the named contents state, else nothing. From 0 to 10 mm. */
export type ContentsToleranceValue = string;
/** What goes inside, by name, instead of width and height. Names are listed at /v1/contents. */
export type ContentsValue = "id-1" | "id-2" | "id-3" | "id-000" | "business-card-eu" | "business-card-us" | "photo-2r" | "photo-3r" | "photo-4r" | "photo-5r" | "photo-6r" | "photo-8r" | "photo-10r" | "sheet-a4" | "sheet-a5" | "sheet-a6" | "sheet-a7" | "envelope-c4" | "envelope-c5" | "envelope-c6" | "envelope-c7" | "envelope-c6-c5" | "envelope-c7-c6" | "envelope-dl" | "envelope-b4" | "envelope-b5" | "envelope-b6" | "envelope-us-a1" | "envelope-us-a2" | "envelope-us-a6" | "envelope-us-a7" | "envelope-us-a8" | "envelope-us-a9" | "envelope-us-a10" | "envelope-us-6-1-4" | "envelope-us-6-3-4" | "envelope-us-7" | "envelope-us-monarch" | "envelope-us-8-5-8" | "envelope-us-9" | "envelope-us-10" | "envelope-us-11" | "envelope-us-12" | "envelope-us-14" | "envelope-us-16" | "envelope-us-coin-1" | "envelope-us-coin-3" | "envelope-us-coin-4" | "envelope-us-coin-5" | "envelope-us-coin-6" | "envelope-us-coin-7" | "tasting-cards" | "tea-sachets" | "tea-tin" | "honey-jar";
export type Corner = {
  /** of the edge that leaves it: the tangent of a quarter of its angle, negative to the left; none for a straight one */
  "bulge"?: number;
  /** 0 is the outer edge; 1 and on are openings and further parts */
  "ring"?: number;
  /** Where says what crosses there, for a place that lies on no mark. */
  "where"?: string;
  "x": Length;
  "y": Length;
};
/** Whether the corner tabs are glued inside or outside the side walls. Default: inside. */
export type CornersValue = "inside" | "outside";
/** How many are wanted. Default: as many as one sheet gives. */
export type CountValue = number;
export type Cut = {
  /** where it lies, if on no score, from the left or the bottom */
  "at"?: Length;
  "depth": Length;
  "from": "top" | "bottom" | "left" | "right";
  "kind": "slit" | "slot" | "notch" | "window" | "relief";
  /** of a slit inside the blank; depth is how far it lies from the edge, at its middle */
  "long"?: Length;
  "name": string;
  /** the score that it lies on */
  "on"?: string;
  /** zero for a slit */
  "width": Length;
};
/** The stop that strips were cut at, set anew for each. From 2 to 5000 mm. */
export type CutAtValue = string;
export type CutNode = {
  "at"?: Length;
  "cut"?: "width" | "height";
  "high"?: CutNode;
  "item"?: string;
  "low"?: CutNode;
  /** the item's place in items, from 0 */
  "number"?: number;
  "offcut"?: boolean;
  "turned"?: boolean;
};
export type CutPart = {
  "item"?: string;
  /** the item's place in items, from 0 */
  "number"?: number;
  "offcut"?: boolean;
  "part": number;
  "turned"?: boolean;
};
export type CutPlan = {
  "offcuts": Array<SheetPart>;
  /** what becomes of each part that the settings leave */
  "parts": Array<CutPart>;
  "placed": Array<Placed>;
  /** the same steps in numbers */
  "settings": Array<Setting>;
  "sheet": SheetSize;
  /** what to do, in words */
  "steps": Array<string>;
  "times": number;
  "tree": CutNode;
  /** where the tree starts, from the sheet's lower left corner */
  "usable": SheetPart;
};
/** Error of one cut, plus or minus, instead of the bench's. From 0 to 10 mm. */
export type CutToleranceValue = string;
/** How wide each of them is; five or more, ten are better. From 0.1 to 5000 mm. */
export type CutsValue = string;
/** How high the walls are; up to 1/4 in (6 mm) more than the contents if not given. From 5 to 500 mm. */
export type DepthValue = string;
/** The sizes that lie on no edge, such as the depth of each slit or the lap; may be given several times. Those that the outline shows are left out beside it. From 0 to 5000 mm. */
export type DepthsValue = string;
export type Design = {
  "design": Record<string, unknown>;
  "help": string;
  /** of the catalogue, that it describes */
  "kind"?: string;
  "links": DesignLinks;
  "name": string;
  "title": string;
};
export type DesignLinks = {
  "self": string;
  /** by POST, with the design beside the names of every kind */
  "solve": string;
};
export type DesignList = {
  "designs": Array<Design>;
};
/** What is to be made, described: its sizes, its pieces with their panels, and what meets what. */
export type DesignValue = Record<string, unknown>;
/** How long each dust flap is; shorter than the default if there is no room for that. Default: 1/2 in on inch rulers, 15 mm on millimetre rulers. From 3 to 300 mm. */
export type DustFlapValue = string;
/** How long to look for a proof that no plan needs less, in milliseconds. Default: 500. */
export type EffortMsValue = number;
export type Fit = {
  "axis": "width" | "height" | "thickness" | "diagonal";
  /** which pieces, if not the contents and what holds them */
  "between"?: string;
  /** that it goes in */
  "chance": number;
  "nominal": Length;
  /** root-sum-square of the errors, three standard deviations */
  "rss": Array<Length>;
  "verdict": "tight" | "snug" | "easy" | "loose" | "slack";
  /** the clearance that was asked for */
  "window": Array<Length>;
  "worst_case": Array<Length>;
};
/** The clearance wanted: snug 0 to 1/16 in (1.5 mm), easy to 1/8 in (3 mm), loose to 1/4 in (6 mm). Default: easy. */
export type FitValue = "snug" | "easy" | "loose";
/** How far in the far corners of an angled closing flap lie, each. Default: 1 in on inch rulers, 25 mm on millimetre rulers. From 1 to 500 mm. */
export type FlapInsetValue = string;
/** Shape of the closing flap. Default: square. */
export type FlapValue = "square" | "angled" | "pointed";
/** What one fold takes up beside the caliper, half of it from each of its panels; negative where folds bulge. /v1/calibrate measures it. Default: 0. From 0 to 2 mm. */
export type FoldAllowanceValue = string;
/** Folded at the side, at the top, as a gate of two panels, in three as a letter, or to and fro. Default: side. */
export type FoldValue = "side" | "tent" | "gate" | "letter" | "accordion";
/** How far apart the walls of each such strip stand inside when it is folded up square; five or more, ten are better. From 0.1 to 5000 mm. */
export type FoldedInsideValue = string;
/** What the machine does to folds: score them, or cut them through in dashes of 2 mm; of the view cutter. Default: score. */
export type FoldsValue = "score" | "perforate";
/** How long the slits at both ends of a tuck flap's score are, whose corners then catch on the dust flaps; none if not given. From 1 to 100 mm. */
export type FrictionSlitValue = string;
/** Gap between the two panels of a gate; about 1/8 in (3 mm) if not given. From 0 to 500 mm. */
export type GapValue = string;
export type Given = {
  /** where it comes from, if not from the request */
  "from"?: "contents" | "stock" | "grammage" | "default";
  /** of a length */
  "in"?: number;
  /** of a length */
  "mm"?: number;
  /** as given, or as filled in */
  "text": string;
};
/** The family of papers that the basis weight belongs to. */
export type GradeValue = "bond" | "cover" | "text" | "index" | "bristol" | "tag" | "blotting" | "blanks" | "paperboard";
/** The side of the sheet that the grain runs along. */
export type GrainValue = "width" | "height";
/** The side of the blank that the grain must run along; any lets it be turned. Default: any. */
export type GrainValueYield = "any" | "width" | "height";
/** Mass of the paper in g/m2. Without a caliper the caliper is estimated from it. */
export type GrammageValue = number;
/** Mass in g/m2. */
export type GrammageValueStock = number;
export type Greatest = {
  "height"?: Length;
  "thickness"?: Length;
  "width"?: Length;
};
export type Guide = {
  "cautions"?: Array<string>;
  "cut_list"?: Array<GuideBlank>;
  /** how it fits, and what makes it tighter or looser */
  "fit_notes"?: Array<string>;
  /** the kind's name on the wire */
  "kind"?: string;
  "labels"?: GuideLabels;
  /** BCP 47: "en", "de" */
  "language"?: string;
  "materials"?: Array<GuideItem>;
  "steps"?: Array<GuideStep>;
  /** one paragraph: what it is and for which contents */
  "summary"?: string;
  "title"?: string;
  "tools"?: Array<GuideItem>;
  /** of the solution */
  "warnings"?: Array<GuideWarning>;
};
export type GuideBlank = {
  "height"?: GuideNumber;
  "piece"?: string;
  "quantity"?: number;
  "width"?: GuideNumber;
};
export type GuideItem = {
  "numbers"?: Array<GuideNumber>;
  "text"?: string;
};
export type GuideLabels = {
  "cautions"?: string;
  "cut_list"?: string;
  "figure"?: string;
  "fit_notes"?: string;
  "height"?: string;
  "materials"?: string;
  "piece"?: string;
  "quantity"?: string;
  "steps"?: string;
  "tools"?: string;
  "warnings"?: string;
  "width"?: string;
};
export type GuideNumber = {
  "in"?: number;
  "mm"?: number;
  /** the part it belongs to */
  "of"?: string;
  /** as it is written */
  "text"?: string;
  /** "at", "width", "depth", ... */
  "what"?: string;
};
export type GuideStage = "cut" | "score" | "slit" | "fold" | "glue" | "close" | "dress";
export type GuideStep = {
  /** what to look out for when the lines are done */
  "after"?: string;
  "lines"?: Array<string>;
  "numbers"?: Array<GuideNumber>;
  /** the steps of the order of work that it tells, counted as those of the solution's order */
  "order"?: Array<number>;
  /** SVG of each of these, if asked for */
  "pictures"?: Array<string>;
  "stage"?: GuideStage;
  "text": string;
  "title"?: string;
};
export type GuideWarning = {
  "code"?: string;
  "text"?: string;
};
/** Two scores at the bottom and the sides; auto makes them for contents over 1/8 in (3 mm). Default: auto. */
export type GussetValue = "auto" | "no" | "yes";
/** How far the bag stands above the contents, at least. Default: 2 in on inch rulers, 50 mm on millimetre rulers. From 10 to 1000 mm. */
export type HeadroomValue = string;
/** Height of the contents. From 3 to 2000 mm. */
export type HeightValue = string;
/** Height of the finished piece, outside. Which of the sizes is the longest does not matter. From 1 to 3000 mm. */
export type HeightValueMail = string;
/** What the thing may go into: at most 10000. In CSV a row a holder, with these names as its header. */
export type HoldersValue = {
  /** Thickness of one sheet of the paper. From 0.01 to 5 mm. */
  "caliper"?: string;
  /** Height of the contents. From 3 to 2000 mm. */
  "height"?: string;
  /** What the holder is called in the answer. */
  "id"?: string;
  /** What to make; its other names are those of /v1/solve/{kind}. */
  "kind"?: "slotted-band" | "band" | "sleeve" | "envelope" | "diagonal-envelope" | "pocket" | "folded-card" | "slipcase" | "mat-stack" | "tuck-carton" | "gusset-bag" | "pillow-pack" | "tray" | "lidded-box" | "prism-box" | "drawer-box" | "dividers" | "own";
  /** Thickness of the contents in all. From 0.01 to 500 mm. */
  "thickness"?: string;
  /** How much every size of the inside varies. Default: nothing. From 0 to 10 mm. */
  "tolerance"?: string;
  /** The unit of numbers without one, and of the answer. There is no default: give it, or write the unit with the lengths. */
  "unit"?: "in" | "mm";
  /** Width of the contents. Of several things it is 3 of 60 mm + 4 mm; of contents by name, 3 of them. From 3 to 2000 mm. */
  "width"?: string;
};
/** The height inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
export type InsideHeightValue = string;
/** The thickness inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
export type InsideThicknessValue = string;
/** The width inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
export type InsideWidthValue = string;
export type Invalid = {
  "code": string;
  "detail"?: string;
  "expected"?: string;
  "hint"?: string;
  "name"?: string;
  /** as given, cut at 64 characters */
  "value"?: string;
};
/** The blanks wanted, or enclosures of which every piece is wanted. For a single one blank, count and grain can be given instead. */
export type ItemsValue = {
  /** Width and height of the blank. From 1 to 10000 mm. */
  "blank"?: string;
  /** How many are wanted. May be left out if the kind is one piece: as many as one sheet gives. */
  "count"?: number;
  /** The side of the blank that the grain must run along; any lets it be turned. Default: any. */
  "grain"?: "any" | "width" | "height";
  /** What to make; its other names are those of /v1/solve/{kind}. */
  "kind"?: "slotted-band" | "band" | "sleeve" | "envelope" | "diagonal-envelope" | "pocket" | "folded-card" | "slipcase" | "mat-stack" | "tuck-carton" | "gusset-bag" | "pillow-pack" | "tray" | "lidded-box" | "prism-box" | "drawer-box" | "dividers" | "own";
  /** What the blank is called in the plan. */
  "name"?: string;
  /** The paper that it is cut from: one that a sheet names. */
  "paper"?: string;
  /** When it is cut: 1 first. Default: after all that have one. */
  "priority"?: number;
  /** So many more than count, for trials. Default: none. */
  "spares"?: number;
};
/** One piece that closes with a lap, or two halves with a lap each for a wrap that is larger than the sheet. Default: one-piece. */
export type JoinValue = "one-piece" | "two-pieces";
/** One piece, or two halves that lap across the base for what is larger than the sheet. Default: one-piece. */
export type JoinValueSolve = "one-piece" | "two-pieces";
/** How much the machine's tool takes away: outlines run half of it outside; of the view cutter. Default: 0 in on inch rulers, 0 mm on millimetre rulers. From 0 to 3 mm. */
export type KerfValue = string;
/** What a cut takes away; a trimmer takes nothing. Default: 0 in on inch rulers, 0 mm on millimetre rulers. From 0 to 20 mm. */
export type KerfValueYield = string;
export type Kind = {
  "help": string;
  "links": KindLinks;
  "name": string;
  /** sizes of the contents that it cannot do without */
  "needs": Array<string>;
  "parameters": Array<Parameter>;
  "title": string;
};
export type KindLinks = {
  "self": string;
  "solve": string;
};
export type KindList = {
  /** of several kinds */
  "assemblies": Array<KindSummary>;
  "kinds": Array<KindSummary>;
};
export type KindSummary = {
  "help": string;
  "link": string;
  "name": string;
  "title": string;
};
/** The language of the guide. Default: en. */
export type LanguageValue = "en" | "de";
/** The language of the words on the test sheet. Default: en. */
export type LanguageValueCalibrate = "en" | "de";
/** The language of the words in the drawing. Default: en. */
export type LanguageValueDrawing = "en" | "de";
/** The language of the words. Names of classes, and sources, stay as they are. Default: en. */
export type LanguageValueMail = "en" | "de";
/** The language of the words, in pictures too. What is wrong with a kind that does not work stays English. Default: en. */
export type LanguageValueSuggest = "en" | "de";
/** The language of the words of a plan. Default: en. */
export type LanguageValueYield = "en" | "de";
/** How far the outer end goes over the inner one, where the glue is. Default: 1/2 in on inch rulers, 15 mm on millimetre rulers. From 3 to 300 mm. */
export type LapValue = string;
/** How wide the lap is that is glued inside the sleeve's front. Default: 1/2 in on inch rulers, 15 mm on millimetre rulers. From 3 to 300 mm. */
export type LapValueDrawerBox = string;
/** How wide the glue laps and the flaps are; the plainest width that there is room for if not given. From 3 to 300 mm. */
export type LapValuePrismBox = string;
/** How wide the laps are that are glued inside the front. Default: 1/2 in on inch rulers, 15 mm on millimetre rulers. From 3 to 300 mm. */
export type LapValueSlipcase = string;
/** How wide the lap is that is glued inside the front. Default: 1/2 in on inch rulers, 15 mm on millimetre rulers. From 3 to 300 mm. */
export type LapValueSolve = string;
/** How far the halves of a box in two pieces lap. Default: 1 in on inch rulers, 25 mm on millimetre rulers. From 5 to 300 mm. */
export type LapValueTray = string;
/** How wide the glue lap is. Default: 1/2 in on inch rulers, 15 mm on millimetre rulers. From 3 to 300 mm. */
export type LapValueTuckCarton = string;
export type LayerCheck = {
  "closures": Array<Closure>;
  /** what the fold proof says against it */
  "findings": Array<string>;
  "fit": Array<Fit>;
  "given": Record<string, Given>;
  "greatest": Greatest;
  "kind": string;
  /** of the folded piece, if it was measured */
  "learned"?: Learned;
  "limits": Array<Limit>;
  "links": Links;
  /** the smallest change that mends it */
  "mend": Array<Change>;
  /** its kind, numbered where one comes again */
  "name": string;
  "proof": Proof;
  /** that all of it goes together */
  "sure": Sure;
  "unit": "in" | "mm";
  "warnings": Array<Warning>;
  "words": string;
  /** all adds up, closes and holds the contents */
  "works": boolean;
};
/** How many layers lie on the card. Default: 2. */
export type LayersValue = number;
/** The enclosures, the innermost first: a kind by name, or with names of its own. What a layer does not say is taken from beside the layers. */
export type LayersValueSolve = {
  /** Thickness of one sheet of the paper. From 0.01 to 5 mm. */
  "caliper"?: string;
  /** The greatest clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_max"?: string;
  /** The least clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_min"?: string;
  /** The clearance wanted: snug 0 to 1/16 in (1.5 mm), easy to 1/8 in (3 mm), loose to 1/4 in (6 mm). Default: easy. */
  "fit"?: "snug" | "easy" | "loose";
  /** The side of the sheet that the grain runs along. */
  "grain"?: "width" | "height";
  /** Mass of the paper in g/m2. Without a caliper the caliper is estimated from it. */
  "grammage"?: number;
  /** What to make; its other names are those of /v1/solve/{kind}. */
  "kind"?: "slotted-band" | "band" | "sleeve" | "envelope" | "diagonal-envelope" | "pocket" | "folded-card" | "slipcase" | "mat-stack" | "tuck-carton" | "gusset-bag" | "pillow-pack" | "tray" | "lidded-box" | "prism-box" | "drawer-box" | "dividers" | "own";
  /** The sheet that blanks are cut from: a size, or a name. From 10 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "sheet"?: string;
  /** Force all readings onto multiples of this mark. Default: the coarsest that fits. */
  "step"?: string;
  /** The paper, by name, instead of its caliper. Names are listed at /v1/stocks. */
  "stock"?: "offset-40" | "offset-50" | "offset-60" | "offset-70" | "offset-80" | "recycled-offset-40" | "recycled-offset-45" | "recycled-offset-50" | "recycled-offset-60" | "gloss-book-38" | "high-bulk-writing-17.5" | "high-bulk-writing-21" | "index-90" | "index-110" | "index-140" | "index-170" | "folder-105" | "folder-150" | "folder-165" | "folder-250" | "coated-cover-8pt" | "coated-cover-10pt" | "coated-cover-12pt" | "coated-cover-15pt" | "coated-cover-24pt" | "cast-coated-cover-10pt" | "display-board-18pt" | "display-board-30pt" | "display-board-48pt" | "cover-65" | "cover-80" | "cover-90" | "cover-100" | "cover-105" | "cover-120";
  /** How what is inside is turned first: no, a quarter (width and height change places), onto its edge (height and thickness) or its end (width and thickness). Default: no. */
  "turned"?: "no" | "quarter" | "edge" | "end";
};
export type Learned = {
  /** the likeliest first */
  "causes": Array<Cause>;
  /** Chance is how often a piece made as stated comes out as far off as this, or farther. */
  "chance": number;
  /** the smallest change that leaves the wanted clearances */
  "mend": Array<Change>;
  "query": string;
  /** names for the next request */
  "use": CalibrationUse;
  "words": string;
};
export type Length = {
  /** on an endlessly fine ruler */
  "exact_mm": number;
  /** the same in inches, rounded to a millionth */
  "in": number;
  /** the same in millimetres, exact */
  "mm": number;
  /** reading minus ideal */
  "off_mm": number;
  /** so many thicknesses of the stock beyond the reading, short of it if negative: in and mm have them in */
  "papers"?: number;
  /** what to set on the ruler */
  "reading": string;
};
/** The length; may be given up to 50 times, in JSON as a list. From 0 to 100000 mm. */
export type LengthValue = string;
/** How high the walls of the lid are; as high as those of the tray or a little less if not given. From 5 to 500 mm. */
export type LidDepthValue = string;
/** How the lid goes over the tray: the clearance between them along the width and the height; auto is the closest of the others that goes together 95 times in 100 with this bench, or as often as wanted_chance says. Default: auto. */
export type LidFitValue = "auto" | "snug" | "easy" | "loose";
/** How the lid goes over the tray: the clearance between them from side to side; auto is what the ruler gives from snug to loose, nearest to easy. Default: auto. */
export type LidFitValueSolve = "auto" | "snug" | "easy" | "loose";
export type Limit = {
  "allowed": Array<Length>;
  "name": string;
  "value": Length;
};
export type Limits = {
  /** of one answer */
  "answer_bytes": number;
  /** in a JSON array */
  "batch_array_requests": number;
  /** of a table, and of pointers in columns */
  "batch_columns": number;
  /** of one line or row of a batch, of which there may be any number */
  "batch_line_bytes": number;
  /** of a table that its separator, encoding and decimal mark are found out from */
  "batch_sample_bytes": number;
  "body_bytes": number;
  "errors_at_once": number;
  "json_depth": number;
  "names": number;
  /** of one drawing */
  "pdf_pages": number;
  /** orders, PDFs and PNGs worked on at once */
  "planning": number;
  "request_ms": number;
  "ruler_lengths": number;
  "running": number;
  "solve_ms": number;
  /** batches at once */
  "streams": number;
  "url_bytes": number;
  "value_characters": number;
  "waiting": number;
  "yield_body_bytes": number;
  "yield_effort_ms": number;
  "yield_items": number;
  /** blanks of one sheet in an order without counts */
  "yield_listed": number;
  "yield_pieces": number;
  /** blanks that a plan lists one by one */
  "yield_placed": number;
};
export type Links = {
  /** Check judges the readings of the answer as they were cut, once those that came out otherwise are changed. */
  "check"?: string;
  /** Drawing and Guide are of the same request; a check has none. */
  "drawing"?: string;
  "guide"?: string;
  "kind": string;
  /** Mail asks posts about the outside, without a mass: that of the contents is not known. */
  "mail"?: string;
  "self": string;
  /** Yield is the cut plan of the pieces, if the request names a sheet. */
  "yield"?: string;
};
/** The name that an answer gave to its holders, instead of sending them again; they are asked for again once they are forgotten. */
export type ListValue = string;
/** Relative humidity in percent where the piece is made; with used_at, clearances are those where it is used, since sheets grow 0.1 to 0.2 % along and 0.2 to 0.4 % across the grain from 33 to 66 %. */
export type MadeAtValue = number;
/** The caliper that the measured pattern was made for. Default: that of the new one. From 0.01 to 5 mm. */
export type MadeForCaliperValue = string;
/** The height that the measured pattern was made for. Default: that of the new one. From 3 to 2000 mm. */
export type MadeForHeightValue = string;
/** The thickness that the measured pattern was made for. Default: that of the new one. From 0.01 to 500 mm. */
export type MadeForThicknessValue = string;
/** The width that the measured pattern was made for. Default: that of the new one. From 3 to 2000 mm. */
export type MadeForWidthValue = string;
export type Mail = {
  "advice": string;
  "given": Record<string, Given>;
  "links": MailLinks;
  "posts": Array<PostVerdict>;
  "unit": "in" | "mm";
  /** all in one line */
  "words": string;
};
export type MailAmount = {
  "g"?: number;
  "in"?: number;
  "mm"?: number;
  "oz"?: number;
  "ratio"?: number;
  "text": string;
};
export type MailDue = {
  /** else it depends on what is unsure or disputed */
  "certain": boolean;
  "name": string;
  "reasons": Array<MailReason>;
};
export type MailLimit = {
  "at": MailAmount;
  "bound": "least" | "greatest";
  /** else it keeps nothing out */
  "confirmed": boolean;
  /** why */
  "doubt"?: string;
  /** between at and this it is disputed */
  "grace"?: MailAmount;
  /** the bound itself is taken */
  "inclusive": boolean;
  "of": "length" | "height" | "longer-side" | "shorter-side" | "thickness" | "sum" | "mass" | "ratio";
  "source": string;
  /** it is waived for what is within all of these */
  "unless"?: Array<MailLimit>;
};
export type MailLinks = {
  /** the tables */
  "posts": string;
  "self": string;
};
export type MailNotIn = {
  "class": string;
  "reasons": Array<MailReason>;
  "title": string;
};
export type MailReason = {
  "detail": string;
  /** none: it is no matter of size or mass */
  "limit"?: MailStanding;
  "source": string;
};
export type MailStanding = {
  "at": MailAmount;
  "bound": "least" | "greatest";
  /** else it keeps nothing out */
  "confirmed": boolean;
  "detail": string;
  /** why */
  "doubt"?: string;
  /** between at and this it is disputed */
  "grace"?: MailAmount;
  /** the bound itself is taken */
  "inclusive": boolean;
  /** below nothing: so much beyond it */
  "left"?: MailAmount;
  "of": "length" | "height" | "longer-side" | "shorter-side" | "thickness" | "sum" | "mass" | "ratio";
  "source": string;
  "state": "inside" | "unknown" | "unsure" | "disputed" | "outside";
  /** it is waived for what is within all of these */
  "unless"?: Array<MailLimit>;
  /** of the piece, if it is known */
  "value"?: MailAmount;
};
/** Trimmed off every side of a sheet first. Default: 0 in on inch rulers, 0 mm on millimetre rulers. From 0 to 500 mm. */
export type MarginValue = string;
/** How far apart two marks on a sheet were, both ways, before it was wetted or dried. From 1 to 20000 mm. */
export type MarkedValue = string;
/** Where each score across the width lies, from the left, piece after piece; may be given several times. From 0 to 5000 mm. */
export type MarksValue = string;
/** Mass in ounces instead of grams. */
export type MassOzValue = number;
/** How much the mass varies, plus or minus, in grams. Default: nothing. */
export type MassToleranceValue = number;
/** Mass in grams, with everything inside. Without it the answer says what it may be. */
export type MassValue = number;
export type MatchRoom = {
  "axis": "width" | "height" | "thickness" | "diagonal";
  /** two pieces of the holder */
  "between"?: string;
  /** below zero by how much it is too short */
  "left": Length;
};
export type Matches = {
  /** of all pairs */
  "count": number;
  /** how many of them go together */
  "fits": number;
  /** List is the name of the holders, to be sent instead of them as long as they are remembered. */
  "list": string;
  /** the best first */
  "ranked": Array<Ranked>;
  "unit": "in" | "mm";
};
/** How far from the left edge of the front the two ends meet; in the middle if not given. From 3 to 2000 mm. */
export type MeetingValue = string;
/** How high the pack is in the middle, centre to centre of the stock; the next half inch or 10 mm over one and a quarter of the thickness and an eighth of the width if not given. From 3 to 500 mm. */
export type MiddleHeightValue = string;
/** What to keep small: the number of sheets, or the sum of their prices. Default: sheets. */
export type MinimizeValue = "sheets" | "cost";
/** How long cutting and scoring may take, at 40 seconds a stop and 15 a cut. */
export type MinutesValue = number;
/** What the blank is called in the plan. */
export type NameValue = string;
/** Which faces the notch is cut in. Default: both. */
export type NotchFacesValue = "both" | "front";
/** Radius of a half-round thumb notch in the middle of the open edge; none if not given. From 3 to 300 mm. */
export type NotchValue = string;
/** An offcut is usable if neither side is shorter. Default: 2 in on inch rulers, 50 mm on millimetre rulers. From 0 to 10000 mm. */
export type OffcutLeastValue = string;
/** fits leaves out what does not go together. Default: all. */
export type OnlyValue = "all" | "fits";
/** Which way the contents slide in: along their width or along their height. Default: side. */
export type OpenValue = "side" | "top";
export type Ornament = {
  "adds_thickness": Length;
  "covers_slits": boolean;
  "covers_tabs": boolean;
  /** from the meeting line, so that no slit is glued shut */
  "glue_from": Length;
  "glue_height": Length;
  "glue_to": Length;
  /** of each half, from the meeting line out */
  "half_width": Length;
  "height": Length;
  "shape": string;
  /** how far the tabs show above and below, each */
  "shows_height": Length;
  /** how far each tab sticks out at the side: trim it away */
  "trim_width": Length;
};
/** Thickness of the ornament's stock; that of the band if not given. From 0.01 to 25 mm. */
export type OrnamentCaliperValue = string;
/** Height of that shape; as wide as high if not given, a drawn one as it is drawn. From 6 to 1000 mm. */
export type OrnamentHeightValue = string;
/** Outline of that shape, which is cut in half along its middle: one of the words, or one closed line as SVG path data. Default: rectangle. */
export type OrnamentShapeValue = string;
/** Width of a shape that is glued half and half over the closure; none if not given. From 6 to 1000 mm. */
export type OrnamentWidthValue = string;
/** Every corner of the cut edge of each piece that is not its whole blank, from the left x from the bottom, in the order of the solution's outline; may be given several times. From 0 to 5000 mm. */
export type OutlineValue = string;
export type Outside = {
  "height": Length;
  /** of the paper alone */
  "mass_g"?: number;
  "thickness": Length;
  "width": Length;
};
/** The height outside it. From 1 to 5000 mm. */
export type OutsideHeightValue = string;
/** The thickness outside it. From 1 to 5000 mm. */
export type OutsideThicknessValue = string;
/** The width outside it. From 1 to 5000 mm. */
export type OutsideWidthValue = string;
/** How far the closing flap reaches over the bottom panel, where the gum is. Default: 1/2 in on inch rulers, 15 mm on millimetre rulers. From 3 to 300 mm. */
export type OverlapValue = string;
/** How wide the flaps lie on one another along each seam; none lets them meet edge to edge. Default: 1/2 in on inch rulers, 15 mm on millimetre rulers. From 0 to 300 mm. */
export type OverlapValueSolve = string;
/** How high the page is; up to 1/2 in more than the contents and the pocket if not given. From 10 to 2000 mm. */
export type PageHeightValue = string;
export type Panel = {
  "across": "width" | "height" | "diagonal";
  "name": string;
  "size": Length;
};
/** Panels of an accordion. Default: 4. */
export type PanelsValue = number;
export type Paper = {
  "basis_weights": Array<BasisWeight>;
  "caliper": Length;
  "caliper_estimated": boolean;
  "caliper_range": Array<Length>;
  /** the names whose figures make it so */
  "contradict"?: Array<string>;
  /** g/cm3 */
  "density": number;
  /** g/m2 */
  "grammage": number;
  "grammage_estimated": boolean;
  "grammage_range": Array<number>;
  "links": SelfLink;
  /** kilograms of 500 sheets */
  "ream_mass"?: number;
  /** grams */
  "sheet_mass"?: number;
  /** of a named stock */
  "source"?: string;
  /** no paper has such a density */
  "unlikely": boolean;
};
/** The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4. From 140 to 5080 mm. Names are listed at /v1/sheets/sizes. */
export type PaperValue = string;
/** The paper that it is cut from: one that a sheet names. */
export type PaperValueYield = string;
export type Parameter = {
  /** what is computed, or how it is answered */
  "about": "calculation" | "answer";
  /** seldom needed */
  "advanced": boolean;
  /** where the words that are taken are listed */
  "catalogue"?: string;
  "choices"?: Array<string>;
  /** none: not taken, or worked out */
  "default"?: ParameterDefault;
  "greatest"?: Bound;
  "help": string;
  "least"?: Bound;
  /** may be given several times */
  "list": boolean;
  "name": string;
  /** a value that is taken */
  "sample": string;
  "type": "length" | "size" | "step" | "choice" | "preset" | "count" | "number" | "text" | "object";
  /** length: in or mm */
  "unit"?: "length";
};
export type ParameterDefault = {
  "in": string;
  "mm": string;
};
export type Partial = {
  "begins": Corner;
  "ends": Corner;
  "name": string;
  /** that is folded there */
  "panel": string;
};
/** Which step of the work is drawn, from 1; of the view step. Default: 1. */
export type PictureValue = number;
/** Adds a picture of each step to the JSON as SVG, for a light or a dark page. Default: no. */
export type PicturesValue = "no" | "light" | "dark";
/** Adds a picture of each finished enclosure as SVG, for a light or a dark page. Default: no. */
export type PicturesValueSuggest = "no" | "light" | "dark";
/** Adds a picture of the sheets of this very plan as SVG, for a light or a dark page. Default: no. */
export type PicturesValueYield = "no" | "light" | "dark";
export type Piece = {
  "blank": Blank;
  "cuts": Array<Cut>;
  /** of a portfolio */
  "layer"?: string;
  "name": string;
  /** every corner of the cut edge, counterclockwise, openings clockwise */
  "outline": Array<Corner>;
  "panels": Array<Panel>;
  /** scores that do not run from edge to edge */
  "partials"?: Array<Partial>;
  "quantity": number;
  /** of a layer */
  "reveal"?: Reveal;
  /** from the left, or from the bottom */
  "scores": Array<Score>;
};
export type PieceYield = {
  /** how the main folds lie to the grain, if both are known */
  "folds"?: "along" | "across";
  "per_sheet"?: number;
  "piece": string;
  /** so many lie with their width along the sheet's height */
  "turned"?: number;
  "used"?: number;
};
/** Width of a PNG in pixels. Default: 800. */
export type PixelsValue = number;
export type Placed = {
  "height": Length;
  "item": string;
  /** its place in items, from 0 */
  "number": number;
  /** its width runs along the sheet's height */
  "turned": boolean;
  "width": Length;
  "x": Length;
  "y": Length;
};
/** Its outside is not paper. Default: no. */
export type PlasticValue = "no" | "yes";
/** How much wider than the stock a slot is at the least; none if not given. From 0 to 5 mm. */
export type PlayValue = string;
/** How high the pocket is. Default: 3 in on inch rulers, 75 mm on millimetre rulers. From 10 to 1000 mm. */
export type PocketHeightValue = string;
/** Thickness of one sheet in thousandths of an inch, as on packets of cover and board. */
export type PointsValue = number;
export type Portfolio = {
  /** how errors add up from layer to layer */
  "chain": Array<ChainLink>;
  "given": Record<string, Given>;
  "kind": "portfolio";
  /** the innermost first */
  "layers": Array<PortfolioLayer>;
  "links": Links;
  "outside": Outside;
  /** of all layers */
  "pieces": Array<Piece>;
  /** of all layers: the greatest gap */
  "proof": Proof;
  /** that all layers go together */
  "sure": Sure;
  "unit": "in" | "mm";
  "warnings": Array<Warning>;
};
export type PortfolioCheck = {
  /** how errors add up from layer to layer, folded up as measured */
  "chain": Array<ChainLink>;
  "given": Record<string, Given>;
  "kind": "portfolio";
  /** the innermost first */
  "layers": Array<LayerCheck>;
  "links": Links;
  /** that all layers go together */
  "sure": Sure;
  "unit": "in" | "mm";
  "words": string;
  /** every layer does, round the one before */
  "works": boolean;
};
export type PortfolioLayer = {
  "kind": string;
  /** of the layer alone, with what it goes round as its contents */
  "links": Links;
  /** its kind, numbered where one comes again */
  "name": string;
  "proof": Proof;
  "step": string;
  /** what is inside, before it goes in */
  "turned": "no" | "quarter" | "edge" | "end";
  /** of the sheet, if there is one */
  "yield"?: Yields;
};
export type PostClass = {
  "conditions": Array<string>;
  "limits": Array<MailLimit>;
  "name": string;
  "rules": Array<PostRule>;
  "surcharges": Array<PostSurcharge>;
  "title": string;
};
export type PostList = {
  "posts": Array<PostTable>;
};
export type PostRule = {
  "detail": string;
  "source": string;
};
export type PostSurcharge = {
  "limits": Array<MailLimit>;
  "name": string;
  "rules": Array<PostRule>;
};
export type PostTable = {
  /** the length is the side that the address reads along */
  "by_address": boolean;
  /** the cheapest first */
  "classes": Array<PostClass>;
  "edition": string;
  "name": string;
  "not_confirmed": Array<string>;
  "title": string;
};
/** The post to ask; may be given several times, in JSON as a list. Default: all. Names are listed at /v1/posts. */
export type PostValue = "us" | "uk" | "ca" | "de" | "au" | "be" | "upu";
/** The post that the finished piece should go by. Names are listed at /v1/posts. */
export type PostValueSuggest = "us" | "uk" | "ca" | "de" | "au" | "be" | "upu";
export type PostVerdict = {
  /** the cheapest that takes it */
  "class"?: string;
  /** as the post prints it */
  "class_title"?: string;
  /** of the class, which were not checked */
  "conditions": Array<string>;
  /** that the table follows */
  "edition": string;
  /** of the class */
  "limits": Array<MailStanding>;
  /** the limit that it is nearest to, in parts of the limit */
  "nearest"?: MailStanding;
  /** what the table does not have, or not for certain */
  "not_confirmed": Array<string>;
  /** the cheaper classes, or all */
  "not_in": Array<MailNotIn>;
  "post": string;
  /** that the class takes it with */
  "surcharges": Array<MailDue>;
  "title": string;
  /** what limits of the class need and the request does not say */
  "unknown": Array<string>;
  /** may-take: a limit of the class is unsure or disputed */
  "verdict": "takes" | "may-take" | "none";
};
export type Posted = {
  "advice": string;
  "class"?: string;
  "post": string;
  "verdict": "takes" | "may-take" | "none";
};
/** Which of the plans with as few sheets: the fewest settings of the trimmer, the largest usable offcut, or the fewest stages. Default: settings. */
export type PreferValue = "settings" | "offcut" | "stages";
/** How large the letters are: usual, 10 points, or large, 22 points in one column; of PDF. Default: usual. */
export type PrintValue = "usual" | "large";
/** When it is cut: 1 first. Default: after all that have one. */
export type PriorityValue = number;
export type Problem = {
  "detail": string;
  "errors": Array<Invalid>;
  /** further errors */
  "not_listed"?: number;
  "status": number;
  "title": string;
  /** a corrected address, if one can be guessed */
  "try"?: string;
  "type": string;
};
export type Proof = {
  "closes": boolean;
  "gap_mm": number;
  /** the contents stand inside without touching */
  "holds": boolean;
  /** the gap that still closes */
  "tolerance_mm": number;
};
export type Ranked = {
  /** that it goes in */
  "chance": number;
  "fits": boolean;
  "id": string;
  "room": Array<MatchRoom>;
  /** with its width along the holder's height */
  "turned"?: boolean;
  /** of the axis with the least room */
  "verdict": "snug" | "easy" | "loose" | "slack" | "tight" | "refused";
  /** what keeps it out */
  "why": Array<string>;
};
export type Reason = {
  "code": string;
  "detail": string;
  "expected"?: string;
  "hint"?: string;
  /** that it is about */
  "name"?: string;
};
/** How far in the angled relief cuts come at the free edge of a flap. Default: 1/2 in on inch rulers, 10 mm on millimetre rulers. From 0.5 to 300 mm. */
export type ReliefValue = string;
/** asks for: Adapt a pattern of a band. */
export type RequestAdaptBand = (RequestSolveBand & {
  "blank"?: Array<string>;
  "depths"?: Array<string>;
  /** The height inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_height"?: string;
  /** The thickness inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_thickness"?: string;
  /** The width inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_width"?: string;
  /** The caliper that the measured pattern was made for. Default: that of the new one. From 0.01 to 5 mm. */
  "made_for_caliper"?: string;
  /** The height that the measured pattern was made for. Default: that of the new one. From 3 to 2000 mm. */
  "made_for_height"?: string;
  /** The thickness that the measured pattern was made for. Default: that of the new one. From 0.01 to 500 mm. */
  "made_for_thickness"?: string;
  /** The width that the measured pattern was made for. Default: that of the new one. From 3 to 2000 mm. */
  "made_for_width"?: string;
  "marks"?: Array<string>;
  "outline"?: Array<string>;
  /** The height outside it. From 1 to 5000 mm. */
  "outside_height"?: string;
  /** The thickness outside it. From 1 to 5000 mm. */
  "outside_thickness"?: string;
  /** The width outside it. From 1 to 5000 mm. */
  "outside_width"?: string;
  "rises"?: Array<string>;
});
/** asks for: Adapt a pattern of a diagonal-envelope. */
export type RequestAdaptDiagonalEnvelope = (RequestSolveDiagonalEnvelope & {
  "blank"?: Array<string>;
  "depths"?: Array<string>;
  /** The height inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_height"?: string;
  /** The thickness inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_thickness"?: string;
  /** The width inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_width"?: string;
  /** The caliper that the measured pattern was made for. Default: that of the new one. From 0.01 to 5 mm. */
  "made_for_caliper"?: string;
  /** The height that the measured pattern was made for. Default: that of the new one. From 3 to 2000 mm. */
  "made_for_height"?: string;
  /** The thickness that the measured pattern was made for. Default: that of the new one. From 0.01 to 500 mm. */
  "made_for_thickness"?: string;
  /** The width that the measured pattern was made for. Default: that of the new one. From 3 to 2000 mm. */
  "made_for_width"?: string;
  "marks"?: Array<string>;
  "outline"?: Array<string>;
  /** The height outside it. From 1 to 5000 mm. */
  "outside_height"?: string;
  /** The thickness outside it. From 1 to 5000 mm. */
  "outside_thickness"?: string;
  /** The width outside it. From 1 to 5000 mm. */
  "outside_width"?: string;
  "rises"?: Array<string>;
});
/** asks for: Adapt a pattern of a dividers. */
export type RequestAdaptDividers = (RequestSolveDividers & {
  "blank"?: Array<string>;
  "depths"?: Array<string>;
  /** The height inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_height"?: string;
  /** The thickness inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_thickness"?: string;
  /** The width inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_width"?: string;
  /** The caliper that the measured pattern was made for. Default: that of the new one. From 0.01 to 5 mm. */
  "made_for_caliper"?: string;
  /** The height that the measured pattern was made for. Default: that of the new one. From 3 to 2000 mm. */
  "made_for_height"?: string;
  /** The thickness that the measured pattern was made for. Default: that of the new one. From 0.01 to 500 mm. */
  "made_for_thickness"?: string;
  /** The width that the measured pattern was made for. Default: that of the new one. From 3 to 2000 mm. */
  "made_for_width"?: string;
  "marks"?: Array<string>;
  "outline"?: Array<string>;
  /** The height outside it. From 1 to 5000 mm. */
  "outside_height"?: string;
  /** The thickness outside it. From 1 to 5000 mm. */
  "outside_thickness"?: string;
  /** The width outside it. From 1 to 5000 mm. */
  "outside_width"?: string;
  "rises"?: Array<string>;
});
/** asks for: Adapt a pattern of a drawer-box. */
export type RequestAdaptDrawerBox = (RequestSolveDrawerBox & {
  "blank"?: Array<string>;
  "depths"?: Array<string>;
  /** The height inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_height"?: string;
  /** The thickness inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_thickness"?: string;
  /** The width inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_width"?: string;
  /** The caliper that the measured pattern was made for. Default: that of the new one. From 0.01 to 5 mm. */
  "made_for_caliper"?: string;
  /** The height that the measured pattern was made for. Default: that of the new one. From 3 to 2000 mm. */
  "made_for_height"?: string;
  /** The thickness that the measured pattern was made for. Default: that of the new one. From 0.01 to 500 mm. */
  "made_for_thickness"?: string;
  /** The width that the measured pattern was made for. Default: that of the new one. From 3 to 2000 mm. */
  "made_for_width"?: string;
  "marks"?: Array<string>;
  "outline"?: Array<string>;
  /** The height outside it. From 1 to 5000 mm. */
  "outside_height"?: string;
  /** The thickness outside it. From 1 to 5000 mm. */
  "outside_thickness"?: string;
  /** The width outside it. From 1 to 5000 mm. */
  "outside_width"?: string;
  "rises"?: Array<string>;
});
/** asks for: Adapt a pattern of a envelope. */
export type RequestAdaptEnvelope = (RequestSolveEnvelope & {
  "blank"?: Array<string>;
  "depths"?: Array<string>;
  /** The height inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_height"?: string;
  /** The thickness inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_thickness"?: string;
  /** The width inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_width"?: string;
  /** The caliper that the measured pattern was made for. Default: that of the new one. From 0.01 to 5 mm. */
  "made_for_caliper"?: string;
  /** The height that the measured pattern was made for. Default: that of the new one. From 3 to 2000 mm. */
  "made_for_height"?: string;
  /** The thickness that the measured pattern was made for. Default: that of the new one. From 0.01 to 500 mm. */
  "made_for_thickness"?: string;
  /** The width that the measured pattern was made for. Default: that of the new one. From 3 to 2000 mm. */
  "made_for_width"?: string;
  "marks"?: Array<string>;
  "outline"?: Array<string>;
  /** The height outside it. From 1 to 5000 mm. */
  "outside_height"?: string;
  /** The thickness outside it. From 1 to 5000 mm. */
  "outside_thickness"?: string;
  /** The width outside it. From 1 to 5000 mm. */
  "outside_width"?: string;
  "rises"?: Array<string>;
});
/** asks for: Adapt a pattern of a folded-card. */
export type RequestAdaptFoldedCard = (RequestSolveFoldedCard & {
  "blank"?: Array<string>;
  "depths"?: Array<string>;
  /** The height inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_height"?: string;
  /** The thickness inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_thickness"?: string;
  /** The width inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_width"?: string;
  /** The caliper that the measured pattern was made for. Default: that of the new one. From 0.01 to 5 mm. */
  "made_for_caliper"?: string;
  /** The height that the measured pattern was made for. Default: that of the new one. From 3 to 2000 mm. */
  "made_for_height"?: string;
  /** The thickness that the measured pattern was made for. Default: that of the new one. From 0.01 to 500 mm. */
  "made_for_thickness"?: string;
  /** The width that the measured pattern was made for. Default: that of the new one. From 3 to 2000 mm. */
  "made_for_width"?: string;
  "marks"?: Array<string>;
  "outline"?: Array<string>;
  /** The height outside it. From 1 to 5000 mm. */
  "outside_height"?: string;
  /** The thickness outside it. From 1 to 5000 mm. */
  "outside_thickness"?: string;
  /** The width outside it. From 1 to 5000 mm. */
  "outside_width"?: string;
  "rises"?: Array<string>;
});
/** asks for: Adapt a pattern of a gusset-bag. */
export type RequestAdaptGussetBag = (RequestSolveGussetBag & {
  "blank"?: Array<string>;
  "depths"?: Array<string>;
  /** The height inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_height"?: string;
  /** The thickness inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_thickness"?: string;
  /** The width inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_width"?: string;
  /** The caliper that the measured pattern was made for. Default: that of the new one. From 0.01 to 5 mm. */
  "made_for_caliper"?: string;
  /** The height that the measured pattern was made for. Default: that of the new one. From 3 to 2000 mm. */
  "made_for_height"?: string;
  /** The thickness that the measured pattern was made for. Default: that of the new one. From 0.01 to 500 mm. */
  "made_for_thickness"?: string;
  /** The width that the measured pattern was made for. Default: that of the new one. From 3 to 2000 mm. */
  "made_for_width"?: string;
  "marks"?: Array<string>;
  "outline"?: Array<string>;
  /** The height outside it. From 1 to 5000 mm. */
  "outside_height"?: string;
  /** The thickness outside it. From 1 to 5000 mm. */
  "outside_thickness"?: string;
  /** The width outside it. From 1 to 5000 mm. */
  "outside_width"?: string;
  "rises"?: Array<string>;
});
/** asks for: Adapt a pattern of a lidded-box. */
export type RequestAdaptLiddedBox = (RequestSolveLiddedBox & {
  "blank"?: Array<string>;
  "depths"?: Array<string>;
  /** The height inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_height"?: string;
  /** The thickness inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_thickness"?: string;
  /** The width inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_width"?: string;
  /** The caliper that the measured pattern was made for. Default: that of the new one. From 0.01 to 5 mm. */
  "made_for_caliper"?: string;
  /** The height that the measured pattern was made for. Default: that of the new one. From 3 to 2000 mm. */
  "made_for_height"?: string;
  /** The thickness that the measured pattern was made for. Default: that of the new one. From 0.01 to 500 mm. */
  "made_for_thickness"?: string;
  /** The width that the measured pattern was made for. Default: that of the new one. From 3 to 2000 mm. */
  "made_for_width"?: string;
  "marks"?: Array<string>;
  "outline"?: Array<string>;
  /** The height outside it. From 1 to 5000 mm. */
  "outside_height"?: string;
  /** The thickness outside it. From 1 to 5000 mm. */
  "outside_thickness"?: string;
  /** The width outside it. From 1 to 5000 mm. */
  "outside_width"?: string;
  "rises"?: Array<string>;
});
/** asks for: Adapt a pattern of a mat-stack. */
export type RequestAdaptMatStack = (RequestSolveMatStack & {
  "blank"?: Array<string>;
  "depths"?: Array<string>;
  /** The height inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_height"?: string;
  /** The thickness inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_thickness"?: string;
  /** The width inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_width"?: string;
  /** The caliper that the measured pattern was made for. Default: that of the new one. From 0.01 to 5 mm. */
  "made_for_caliper"?: string;
  /** The height that the measured pattern was made for. Default: that of the new one. From 3 to 2000 mm. */
  "made_for_height"?: string;
  /** The thickness that the measured pattern was made for. Default: that of the new one. From 0.01 to 500 mm. */
  "made_for_thickness"?: string;
  /** The width that the measured pattern was made for. Default: that of the new one. From 3 to 2000 mm. */
  "made_for_width"?: string;
  "marks"?: Array<string>;
  "outline"?: Array<string>;
  /** The height outside it. From 1 to 5000 mm. */
  "outside_height"?: string;
  /** The thickness outside it. From 1 to 5000 mm. */
  "outside_thickness"?: string;
  /** The width outside it. From 1 to 5000 mm. */
  "outside_width"?: string;
  "rises"?: Array<string>;
});
/** asks for: Adapt a pattern of a pillow-pack. */
export type RequestAdaptPillowPack = (RequestSolvePillowPack & {
  "blank"?: Array<string>;
  "depths"?: Array<string>;
  /** The height inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_height"?: string;
  /** The thickness inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_thickness"?: string;
  /** The width inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_width"?: string;
  /** The caliper that the measured pattern was made for. Default: that of the new one. From 0.01 to 5 mm. */
  "made_for_caliper"?: string;
  /** The height that the measured pattern was made for. Default: that of the new one. From 3 to 2000 mm. */
  "made_for_height"?: string;
  /** The thickness that the measured pattern was made for. Default: that of the new one. From 0.01 to 500 mm. */
  "made_for_thickness"?: string;
  /** The width that the measured pattern was made for. Default: that of the new one. From 3 to 2000 mm. */
  "made_for_width"?: string;
  "marks"?: Array<string>;
  "outline"?: Array<string>;
  /** The height outside it. From 1 to 5000 mm. */
  "outside_height"?: string;
  /** The thickness outside it. From 1 to 5000 mm. */
  "outside_thickness"?: string;
  /** The width outside it. From 1 to 5000 mm. */
  "outside_width"?: string;
  "rises"?: Array<string>;
});
/** asks for: Adapt a pattern of a pocket. */
export type RequestAdaptPocket = (RequestSolvePocket & {
  "blank"?: Array<string>;
  "depths"?: Array<string>;
  /** The height inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_height"?: string;
  /** The thickness inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_thickness"?: string;
  /** The width inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_width"?: string;
  /** The caliper that the measured pattern was made for. Default: that of the new one. From 0.01 to 5 mm. */
  "made_for_caliper"?: string;
  /** The height that the measured pattern was made for. Default: that of the new one. From 3 to 2000 mm. */
  "made_for_height"?: string;
  /** The thickness that the measured pattern was made for. Default: that of the new one. From 0.01 to 500 mm. */
  "made_for_thickness"?: string;
  /** The width that the measured pattern was made for. Default: that of the new one. From 3 to 2000 mm. */
  "made_for_width"?: string;
  "marks"?: Array<string>;
  "outline"?: Array<string>;
  /** The height outside it. From 1 to 5000 mm. */
  "outside_height"?: string;
  /** The thickness outside it. From 1 to 5000 mm. */
  "outside_thickness"?: string;
  /** The width outside it. From 1 to 5000 mm. */
  "outside_width"?: string;
  "rises"?: Array<string>;
});
/** asks for: Adapt a pattern of a prism-box. */
export type RequestAdaptPrismBox = (RequestSolvePrismBox & {
  "blank"?: Array<string>;
  "depths"?: Array<string>;
  /** The height inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_height"?: string;
  /** The thickness inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_thickness"?: string;
  /** The width inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_width"?: string;
  /** The caliper that the measured pattern was made for. Default: that of the new one. From 0.01 to 5 mm. */
  "made_for_caliper"?: string;
  /** The height that the measured pattern was made for. Default: that of the new one. From 3 to 2000 mm. */
  "made_for_height"?: string;
  /** The thickness that the measured pattern was made for. Default: that of the new one. From 0.01 to 500 mm. */
  "made_for_thickness"?: string;
  /** The width that the measured pattern was made for. Default: that of the new one. From 3 to 2000 mm. */
  "made_for_width"?: string;
  "marks"?: Array<string>;
  "outline"?: Array<string>;
  /** The height outside it. From 1 to 5000 mm. */
  "outside_height"?: string;
  /** The thickness outside it. From 1 to 5000 mm. */
  "outside_thickness"?: string;
  /** The width outside it. From 1 to 5000 mm. */
  "outside_width"?: string;
  "rises"?: Array<string>;
});
/** asks for: Adapt a pattern of a sleeve. */
export type RequestAdaptSleeve = (RequestSolveSleeve & {
  "blank"?: Array<string>;
  "depths"?: Array<string>;
  /** The height inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_height"?: string;
  /** The thickness inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_thickness"?: string;
  /** The width inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_width"?: string;
  /** The caliper that the measured pattern was made for. Default: that of the new one. From 0.01 to 5 mm. */
  "made_for_caliper"?: string;
  /** The height that the measured pattern was made for. Default: that of the new one. From 3 to 2000 mm. */
  "made_for_height"?: string;
  /** The thickness that the measured pattern was made for. Default: that of the new one. From 0.01 to 500 mm. */
  "made_for_thickness"?: string;
  /** The width that the measured pattern was made for. Default: that of the new one. From 3 to 2000 mm. */
  "made_for_width"?: string;
  "marks"?: Array<string>;
  "outline"?: Array<string>;
  /** The height outside it. From 1 to 5000 mm. */
  "outside_height"?: string;
  /** The thickness outside it. From 1 to 5000 mm. */
  "outside_thickness"?: string;
  /** The width outside it. From 1 to 5000 mm. */
  "outside_width"?: string;
  "rises"?: Array<string>;
});
/** asks for: Adapt a pattern of a slipcase. */
export type RequestAdaptSlipcase = (RequestSolveSlipcase & {
  "blank"?: Array<string>;
  "depths"?: Array<string>;
  /** The height inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_height"?: string;
  /** The thickness inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_thickness"?: string;
  /** The width inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_width"?: string;
  /** The caliper that the measured pattern was made for. Default: that of the new one. From 0.01 to 5 mm. */
  "made_for_caliper"?: string;
  /** The height that the measured pattern was made for. Default: that of the new one. From 3 to 2000 mm. */
  "made_for_height"?: string;
  /** The thickness that the measured pattern was made for. Default: that of the new one. From 0.01 to 500 mm. */
  "made_for_thickness"?: string;
  /** The width that the measured pattern was made for. Default: that of the new one. From 3 to 2000 mm. */
  "made_for_width"?: string;
  "marks"?: Array<string>;
  "outline"?: Array<string>;
  /** The height outside it. From 1 to 5000 mm. */
  "outside_height"?: string;
  /** The thickness outside it. From 1 to 5000 mm. */
  "outside_thickness"?: string;
  /** The width outside it. From 1 to 5000 mm. */
  "outside_width"?: string;
  "rises"?: Array<string>;
});
/** asks for: Adapt a pattern of a slotted-band. */
export type RequestAdaptSlottedBand = (RequestSolveSlottedBand & {
  "blank"?: Array<string>;
  "depths"?: Array<string>;
  /** The height inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_height"?: string;
  /** The thickness inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_thickness"?: string;
  /** The width inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_width"?: string;
  /** The caliper that the measured pattern was made for. Default: that of the new one. From 0.01 to 5 mm. */
  "made_for_caliper"?: string;
  /** The height that the measured pattern was made for. Default: that of the new one. From 3 to 2000 mm. */
  "made_for_height"?: string;
  /** The thickness that the measured pattern was made for. Default: that of the new one. From 0.01 to 500 mm. */
  "made_for_thickness"?: string;
  /** The width that the measured pattern was made for. Default: that of the new one. From 3 to 2000 mm. */
  "made_for_width"?: string;
  "marks"?: Array<string>;
  "outline"?: Array<string>;
  /** The height outside it. From 1 to 5000 mm. */
  "outside_height"?: string;
  /** The thickness outside it. From 1 to 5000 mm. */
  "outside_thickness"?: string;
  /** The width outside it. From 1 to 5000 mm. */
  "outside_width"?: string;
  "rises"?: Array<string>;
});
/** asks for: Adapt a pattern of a tray. */
export type RequestAdaptTray = (RequestSolveTray & {
  "blank"?: Array<string>;
  "depths"?: Array<string>;
  /** The height inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_height"?: string;
  /** The thickness inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_thickness"?: string;
  /** The width inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_width"?: string;
  /** The caliper that the measured pattern was made for. Default: that of the new one. From 0.01 to 5 mm. */
  "made_for_caliper"?: string;
  /** The height that the measured pattern was made for. Default: that of the new one. From 3 to 2000 mm. */
  "made_for_height"?: string;
  /** The thickness that the measured pattern was made for. Default: that of the new one. From 0.01 to 500 mm. */
  "made_for_thickness"?: string;
  /** The width that the measured pattern was made for. Default: that of the new one. From 3 to 2000 mm. */
  "made_for_width"?: string;
  "marks"?: Array<string>;
  "outline"?: Array<string>;
  /** The height outside it. From 1 to 5000 mm. */
  "outside_height"?: string;
  /** The thickness outside it. From 1 to 5000 mm. */
  "outside_thickness"?: string;
  /** The width outside it. From 1 to 5000 mm. */
  "outside_width"?: string;
  "rises"?: Array<string>;
});
/** asks for: Adapt a pattern of a tuck-carton. */
export type RequestAdaptTuckCarton = (RequestSolveTuckCarton & {
  "blank"?: Array<string>;
  "depths"?: Array<string>;
  /** The height inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_height"?: string;
  /** The thickness inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_thickness"?: string;
  /** The width inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_width"?: string;
  /** The caliper that the measured pattern was made for. Default: that of the new one. From 0.01 to 5 mm. */
  "made_for_caliper"?: string;
  /** The height that the measured pattern was made for. Default: that of the new one. From 3 to 2000 mm. */
  "made_for_height"?: string;
  /** The thickness that the measured pattern was made for. Default: that of the new one. From 0.01 to 500 mm. */
  "made_for_thickness"?: string;
  /** The width that the measured pattern was made for. Default: that of the new one. From 3 to 2000 mm. */
  "made_for_width"?: string;
  "marks"?: Array<string>;
  "outline"?: Array<string>;
  /** The height outside it. From 1 to 5000 mm. */
  "outside_height"?: string;
  /** The thickness outside it. From 1 to 5000 mm. */
  "outside_thickness"?: string;
  /** The width outside it. From 1 to 5000 mm. */
  "outside_width"?: string;
  "rises"?: Array<string>;
});
/** asks for: Learn a paper and a hand. */
export type RequestCalibrate = {
  "bench"?: BenchValueCalibrate;
  /** Thickness of that block. From 0.1 to 1000 mm. */
  "block_thickness"?: string;
  /** How far each size of the block may be off, plus or minus. Default: 0.002 in on inch rulers, 0.05 mm on millimetre rulers. From 0 to 10 mm. */
  "block_tolerance"?: string;
  /** Width of the block that a strip is wound round. From 2 to 1000 mm. */
  "block_width"?: string;
  /** Thickness of one sheet, if it is known and not to be measured. From 0.01 to 5 mm. */
  "caliper"?: string;
  /** The stop that strips were cut at, set anew for each. From 2 to 5000 mm. */
  "cut_at"?: string;
  "cuts"?: Array<string>;
  "folded_inside"?: Array<string>;
  "language"?: LanguageValueCalibrate;
  /** How far apart two marks on a sheet were, both ways, before it was wetted or dried. From 1 to 20000 mm. */
  "marked"?: string;
  /** The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4. From 140 to 5080 mm. Names are listed at /v1/sheets/sizes. */
  "paper"?: string;
  /** The finest mark that everything was read to. Default: 1/16 in on inch rulers, 0.5 mm on millimetre rulers. */
  "ruler"?: string;
  /** The stop that strips were scored at, set anew for each. From 2 to 5000 mm. */
  "score_at"?: string;
  /** How far apart two scores on a strip are. From 2 to 5000 mm. */
  "scored_apart"?: string;
  "scores"?: Array<string>;
  /** How high the stack is, pressed flat. From 0.1 to 1000 mm. */
  "stack"?: string;
  /** How many sheets lie in a stack. */
  "stack_count"?: number;
  /** How many whole turns the strip makes round the block. */
  "turns"?: number;
  "unit"?: UnitValue;
  /** How far apart they are afterwards across the grain. From 1 to 20000 mm. */
  "wet_across"?: string;
  /** How far apart they are afterwards along the grain. From 1 to 20000 mm. */
  "wet_along"?: string;
  /** How long a piece of the strip the turns took. From 1 to 20000 mm. */
  "wound"?: string;
};
/** asks for: Check own measurements of a band. */
export type RequestCheckBand = (RequestSolveBand & {
  "blank"?: Array<string>;
  "depths"?: Array<string>;
  /** The height inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_height"?: string;
  /** The thickness inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_thickness"?: string;
  /** The width inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_width"?: string;
  "marks"?: Array<string>;
  "outline"?: Array<string>;
  /** The height outside it. From 1 to 5000 mm. */
  "outside_height"?: string;
  /** The thickness outside it. From 1 to 5000 mm. */
  "outside_thickness"?: string;
  /** The width outside it. From 1 to 5000 mm. */
  "outside_width"?: string;
  "rises"?: Array<string>;
});
/** asks for: Check own measurements of a diagonal-envelope. */
export type RequestCheckDiagonalEnvelope = (RequestSolveDiagonalEnvelope & {
  "blank"?: Array<string>;
  "depths"?: Array<string>;
  /** The height inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_height"?: string;
  /** The thickness inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_thickness"?: string;
  /** The width inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_width"?: string;
  "marks"?: Array<string>;
  "outline"?: Array<string>;
  /** The height outside it. From 1 to 5000 mm. */
  "outside_height"?: string;
  /** The thickness outside it. From 1 to 5000 mm. */
  "outside_thickness"?: string;
  /** The width outside it. From 1 to 5000 mm. */
  "outside_width"?: string;
  "rises"?: Array<string>;
});
/** asks for: Check own measurements of a dividers. */
export type RequestCheckDividers = (RequestSolveDividers & {
  "blank"?: Array<string>;
  "depths"?: Array<string>;
  /** The height inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_height"?: string;
  /** The thickness inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_thickness"?: string;
  /** The width inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_width"?: string;
  "marks"?: Array<string>;
  "outline"?: Array<string>;
  /** The height outside it. From 1 to 5000 mm. */
  "outside_height"?: string;
  /** The thickness outside it. From 1 to 5000 mm. */
  "outside_thickness"?: string;
  /** The width outside it. From 1 to 5000 mm. */
  "outside_width"?: string;
  "rises"?: Array<string>;
});
/** asks for: Check own measurements of a drawer-box. */
export type RequestCheckDrawerBox = (RequestSolveDrawerBox & {
  "blank"?: Array<string>;
  "depths"?: Array<string>;
  /** The height inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_height"?: string;
  /** The thickness inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_thickness"?: string;
  /** The width inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_width"?: string;
  "marks"?: Array<string>;
  "outline"?: Array<string>;
  /** The height outside it. From 1 to 5000 mm. */
  "outside_height"?: string;
  /** The thickness outside it. From 1 to 5000 mm. */
  "outside_thickness"?: string;
  /** The width outside it. From 1 to 5000 mm. */
  "outside_width"?: string;
  "rises"?: Array<string>;
});
/** asks for: Check own measurements of a envelope. */
export type RequestCheckEnvelope = (RequestSolveEnvelope & {
  "blank"?: Array<string>;
  "depths"?: Array<string>;
  /** The height inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_height"?: string;
  /** The thickness inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_thickness"?: string;
  /** The width inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_width"?: string;
  "marks"?: Array<string>;
  "outline"?: Array<string>;
  /** The height outside it. From 1 to 5000 mm. */
  "outside_height"?: string;
  /** The thickness outside it. From 1 to 5000 mm. */
  "outside_thickness"?: string;
  /** The width outside it. From 1 to 5000 mm. */
  "outside_width"?: string;
  "rises"?: Array<string>;
});
/** asks for: Check own measurements of a folded-card. */
export type RequestCheckFoldedCard = (RequestSolveFoldedCard & {
  "blank"?: Array<string>;
  "depths"?: Array<string>;
  /** The height inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_height"?: string;
  /** The thickness inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_thickness"?: string;
  /** The width inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_width"?: string;
  "marks"?: Array<string>;
  "outline"?: Array<string>;
  /** The height outside it. From 1 to 5000 mm. */
  "outside_height"?: string;
  /** The thickness outside it. From 1 to 5000 mm. */
  "outside_thickness"?: string;
  /** The width outside it. From 1 to 5000 mm. */
  "outside_width"?: string;
  "rises"?: Array<string>;
});
/** asks for: Check own measurements of a gusset-bag. */
export type RequestCheckGussetBag = (RequestSolveGussetBag & {
  "blank"?: Array<string>;
  "depths"?: Array<string>;
  /** The height inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_height"?: string;
  /** The thickness inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_thickness"?: string;
  /** The width inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_width"?: string;
  "marks"?: Array<string>;
  "outline"?: Array<string>;
  /** The height outside it. From 1 to 5000 mm. */
  "outside_height"?: string;
  /** The thickness outside it. From 1 to 5000 mm. */
  "outside_thickness"?: string;
  /** The width outside it. From 1 to 5000 mm. */
  "outside_width"?: string;
  "rises"?: Array<string>;
});
/** asks for: Check own measurements of a lidded-box. */
export type RequestCheckLiddedBox = (RequestSolveLiddedBox & {
  "blank"?: Array<string>;
  "depths"?: Array<string>;
  /** The height inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_height"?: string;
  /** The thickness inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_thickness"?: string;
  /** The width inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_width"?: string;
  "marks"?: Array<string>;
  "outline"?: Array<string>;
  /** The height outside it. From 1 to 5000 mm. */
  "outside_height"?: string;
  /** The thickness outside it. From 1 to 5000 mm. */
  "outside_thickness"?: string;
  /** The width outside it. From 1 to 5000 mm. */
  "outside_width"?: string;
  "rises"?: Array<string>;
});
/** asks for: Check own measurements of a mat-stack. */
export type RequestCheckMatStack = (RequestSolveMatStack & {
  "blank"?: Array<string>;
  "depths"?: Array<string>;
  /** The height inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_height"?: string;
  /** The thickness inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_thickness"?: string;
  /** The width inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_width"?: string;
  "marks"?: Array<string>;
  "outline"?: Array<string>;
  /** The height outside it. From 1 to 5000 mm. */
  "outside_height"?: string;
  /** The thickness outside it. From 1 to 5000 mm. */
  "outside_thickness"?: string;
  /** The width outside it. From 1 to 5000 mm. */
  "outside_width"?: string;
  "rises"?: Array<string>;
});
/** asks for: Check own measurements of a design: own. */
export type RequestCheckOwn = (RequestSolveOwn & {
  "blank"?: Array<string>;
  "depths"?: Array<string>;
  /** The height inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_height"?: string;
  /** The thickness inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_thickness"?: string;
  /** The width inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_width"?: string;
  "marks"?: Array<string>;
  "outline"?: Array<string>;
  /** The height outside it. From 1 to 5000 mm. */
  "outside_height"?: string;
  /** The thickness outside it. From 1 to 5000 mm. */
  "outside_thickness"?: string;
  /** The width outside it. From 1 to 5000 mm. */
  "outside_width"?: string;
  "rises"?: Array<string>;
});
/** asks for: Check own measurements of a pillow-pack. */
export type RequestCheckPillowPack = (RequestSolvePillowPack & {
  "blank"?: Array<string>;
  "depths"?: Array<string>;
  /** The height inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_height"?: string;
  /** The thickness inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_thickness"?: string;
  /** The width inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_width"?: string;
  "marks"?: Array<string>;
  "outline"?: Array<string>;
  /** The height outside it. From 1 to 5000 mm. */
  "outside_height"?: string;
  /** The thickness outside it. From 1 to 5000 mm. */
  "outside_thickness"?: string;
  /** The width outside it. From 1 to 5000 mm. */
  "outside_width"?: string;
  "rises"?: Array<string>;
});
/** asks for: Check own measurements of a pocket. */
export type RequestCheckPocket = (RequestSolvePocket & {
  "blank"?: Array<string>;
  "depths"?: Array<string>;
  /** The height inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_height"?: string;
  /** The thickness inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_thickness"?: string;
  /** The width inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_width"?: string;
  "marks"?: Array<string>;
  "outline"?: Array<string>;
  /** The height outside it. From 1 to 5000 mm. */
  "outside_height"?: string;
  /** The thickness outside it. From 1 to 5000 mm. */
  "outside_thickness"?: string;
  /** The width outside it. From 1 to 5000 mm. */
  "outside_width"?: string;
  "rises"?: Array<string>;
});
/** asks for: Check own measurements of several enclosures round one another. */
export type RequestCheckPortfolio = (RequestSolvePortfolio & Record<string, unknown>);
/** asks for: Check own measurements of a prism-box. */
export type RequestCheckPrismBox = (RequestSolvePrismBox & {
  "blank"?: Array<string>;
  "depths"?: Array<string>;
  /** The height inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_height"?: string;
  /** The thickness inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_thickness"?: string;
  /** The width inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_width"?: string;
  "marks"?: Array<string>;
  "outline"?: Array<string>;
  /** The height outside it. From 1 to 5000 mm. */
  "outside_height"?: string;
  /** The thickness outside it. From 1 to 5000 mm. */
  "outside_thickness"?: string;
  /** The width outside it. From 1 to 5000 mm. */
  "outside_width"?: string;
  "rises"?: Array<string>;
});
/** asks for: Check own measurements of a sleeve. */
export type RequestCheckSleeve = (RequestSolveSleeve & {
  "blank"?: Array<string>;
  "depths"?: Array<string>;
  /** The height inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_height"?: string;
  /** The thickness inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_thickness"?: string;
  /** The width inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_width"?: string;
  "marks"?: Array<string>;
  "outline"?: Array<string>;
  /** The height outside it. From 1 to 5000 mm. */
  "outside_height"?: string;
  /** The thickness outside it. From 1 to 5000 mm. */
  "outside_thickness"?: string;
  /** The width outside it. From 1 to 5000 mm. */
  "outside_width"?: string;
  "rises"?: Array<string>;
});
/** asks for: Check own measurements of a slipcase. */
export type RequestCheckSlipcase = (RequestSolveSlipcase & {
  "blank"?: Array<string>;
  "depths"?: Array<string>;
  /** The height inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_height"?: string;
  /** The thickness inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_thickness"?: string;
  /** The width inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_width"?: string;
  "marks"?: Array<string>;
  "outline"?: Array<string>;
  /** The height outside it. From 1 to 5000 mm. */
  "outside_height"?: string;
  /** The thickness outside it. From 1 to 5000 mm. */
  "outside_thickness"?: string;
  /** The width outside it. From 1 to 5000 mm. */
  "outside_width"?: string;
  "rises"?: Array<string>;
});
/** asks for: Check own measurements of a slotted-band. */
export type RequestCheckSlottedBand = (RequestSolveSlottedBand & {
  "blank"?: Array<string>;
  "depths"?: Array<string>;
  /** The height inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_height"?: string;
  /** The thickness inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_thickness"?: string;
  /** The width inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_width"?: string;
  "marks"?: Array<string>;
  "outline"?: Array<string>;
  /** The height outside it. From 1 to 5000 mm. */
  "outside_height"?: string;
  /** The thickness outside it. From 1 to 5000 mm. */
  "outside_thickness"?: string;
  /** The width outside it. From 1 to 5000 mm. */
  "outside_width"?: string;
  "rises"?: Array<string>;
});
/** asks for: Check own measurements of a tray. */
export type RequestCheckTray = (RequestSolveTray & {
  "blank"?: Array<string>;
  "depths"?: Array<string>;
  /** The height inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_height"?: string;
  /** The thickness inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_thickness"?: string;
  /** The width inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_width"?: string;
  "marks"?: Array<string>;
  "outline"?: Array<string>;
  /** The height outside it. From 1 to 5000 mm. */
  "outside_height"?: string;
  /** The thickness outside it. From 1 to 5000 mm. */
  "outside_thickness"?: string;
  /** The width outside it. From 1 to 5000 mm. */
  "outside_width"?: string;
  "rises"?: Array<string>;
});
/** asks for: Check own measurements of a tuck-carton. */
export type RequestCheckTuckCarton = (RequestSolveTuckCarton & {
  "blank"?: Array<string>;
  "depths"?: Array<string>;
  /** The height inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_height"?: string;
  /** The thickness inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_thickness"?: string;
  /** The width inside the folded piece, from wall to wall, to learn what was off. From 1 to 5000 mm. */
  "inside_width"?: string;
  "marks"?: Array<string>;
  "outline"?: Array<string>;
  /** The height outside it. From 1 to 5000 mm. */
  "outside_height"?: string;
  /** The thickness outside it. From 1 to 5000 mm. */
  "outside_thickness"?: string;
  /** The width outside it. From 1 to 5000 mm. */
  "outside_width"?: string;
  "rises"?: Array<string>;
});
/** asks for: Drawing of a band. */
export type RequestDrawingBand = (RequestSolveBand & {
  /** The area that a cutting machine reaches; of the view cutter. Default: as large as needed. From 20 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "bed"?: string;
  /** How much of the work is done where the model stands at rest: 0 flat, 1 finished; of GLB, whose animations play the work. Default: 1. */
  "closed"?: number;
  "folds"?: FoldsValue;
  /** How much the machine's tool takes away: outlines run half of it outside; of the view cutter. Default: 0 in on inch rulers, 0 mm on millimetre rulers. From 0 to 3 mm. */
  "kerf"?: string;
  "language"?: LanguageValueDrawing;
  /** The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4. From 140 to 5080 mm. Names are listed at /v1/sheets/sizes. */
  "paper"?: string;
  /** Which step of the work is drawn, from 1; of the view step. Default: 1. */
  "picture"?: number;
  /** Width of a PNG in pixels. Default: 800. */
  "pixels"?: number;
  "theme"?: ThemeValue;
  "view"?: ViewValue;
});
/** asks for: Drawing of a diagonal-envelope. */
export type RequestDrawingDiagonalEnvelope = (RequestSolveDiagonalEnvelope & {
  /** The area that a cutting machine reaches; of the view cutter. Default: as large as needed. From 20 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "bed"?: string;
  /** How much of the work is done where the model stands at rest: 0 flat, 1 finished; of GLB, whose animations play the work. Default: 1. */
  "closed"?: number;
  "folds"?: FoldsValue;
  /** How much the machine's tool takes away: outlines run half of it outside; of the view cutter. Default: 0 in on inch rulers, 0 mm on millimetre rulers. From 0 to 3 mm. */
  "kerf"?: string;
  "language"?: LanguageValueDrawing;
  /** The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4. From 140 to 5080 mm. Names are listed at /v1/sheets/sizes. */
  "paper"?: string;
  /** Which step of the work is drawn, from 1; of the view step. Default: 1. */
  "picture"?: number;
  /** Width of a PNG in pixels. Default: 800. */
  "pixels"?: number;
  "theme"?: ThemeValue;
  "view"?: ViewValue;
});
/** asks for: Drawing of a dividers. */
export type RequestDrawingDividers = (RequestSolveDividers & {
  /** The area that a cutting machine reaches; of the view cutter. Default: as large as needed. From 20 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "bed"?: string;
  /** How much of the work is done where the model stands at rest: 0 flat, 1 finished; of GLB, whose animations play the work. Default: 1. */
  "closed"?: number;
  "folds"?: FoldsValue;
  /** How much the machine's tool takes away: outlines run half of it outside; of the view cutter. Default: 0 in on inch rulers, 0 mm on millimetre rulers. From 0 to 3 mm. */
  "kerf"?: string;
  "language"?: LanguageValueDrawing;
  /** The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4. From 140 to 5080 mm. Names are listed at /v1/sheets/sizes. */
  "paper"?: string;
  /** Which step of the work is drawn, from 1; of the view step. Default: 1. */
  "picture"?: number;
  /** Width of a PNG in pixels. Default: 800. */
  "pixels"?: number;
  "theme"?: ThemeValue;
  "view"?: ViewValue;
});
/** asks for: Drawing of a drawer-box. */
export type RequestDrawingDrawerBox = (RequestSolveDrawerBox & {
  /** The area that a cutting machine reaches; of the view cutter. Default: as large as needed. From 20 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "bed"?: string;
  /** How much of the work is done where the model stands at rest: 0 flat, 1 finished; of GLB, whose animations play the work. Default: 1. */
  "closed"?: number;
  "folds"?: FoldsValue;
  /** How much the machine's tool takes away: outlines run half of it outside; of the view cutter. Default: 0 in on inch rulers, 0 mm on millimetre rulers. From 0 to 3 mm. */
  "kerf"?: string;
  "language"?: LanguageValueDrawing;
  /** The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4. From 140 to 5080 mm. Names are listed at /v1/sheets/sizes. */
  "paper"?: string;
  /** Which step of the work is drawn, from 1; of the view step. Default: 1. */
  "picture"?: number;
  /** Width of a PNG in pixels. Default: 800. */
  "pixels"?: number;
  "theme"?: ThemeValue;
  "view"?: ViewValue;
});
/** asks for: Drawing of a envelope. */
export type RequestDrawingEnvelope = (RequestSolveEnvelope & {
  /** The area that a cutting machine reaches; of the view cutter. Default: as large as needed. From 20 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "bed"?: string;
  /** How much of the work is done where the model stands at rest: 0 flat, 1 finished; of GLB, whose animations play the work. Default: 1. */
  "closed"?: number;
  "folds"?: FoldsValue;
  /** How much the machine's tool takes away: outlines run half of it outside; of the view cutter. Default: 0 in on inch rulers, 0 mm on millimetre rulers. From 0 to 3 mm. */
  "kerf"?: string;
  "language"?: LanguageValueDrawing;
  /** The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4. From 140 to 5080 mm. Names are listed at /v1/sheets/sizes. */
  "paper"?: string;
  /** Which step of the work is drawn, from 1; of the view step. Default: 1. */
  "picture"?: number;
  /** Width of a PNG in pixels. Default: 800. */
  "pixels"?: number;
  "theme"?: ThemeValue;
  "view"?: ViewValue;
});
/** asks for: Drawing of a folded-card. */
export type RequestDrawingFoldedCard = (RequestSolveFoldedCard & {
  /** The area that a cutting machine reaches; of the view cutter. Default: as large as needed. From 20 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "bed"?: string;
  /** How much of the work is done where the model stands at rest: 0 flat, 1 finished; of GLB, whose animations play the work. Default: 1. */
  "closed"?: number;
  "folds"?: FoldsValue;
  /** How much the machine's tool takes away: outlines run half of it outside; of the view cutter. Default: 0 in on inch rulers, 0 mm on millimetre rulers. From 0 to 3 mm. */
  "kerf"?: string;
  "language"?: LanguageValueDrawing;
  /** The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4. From 140 to 5080 mm. Names are listed at /v1/sheets/sizes. */
  "paper"?: string;
  /** Which step of the work is drawn, from 1; of the view step. Default: 1. */
  "picture"?: number;
  /** Width of a PNG in pixels. Default: 800. */
  "pixels"?: number;
  "theme"?: ThemeValue;
  "view"?: ViewValue;
});
/** asks for: Drawing of a gusset-bag. */
export type RequestDrawingGussetBag = (RequestSolveGussetBag & {
  /** The area that a cutting machine reaches; of the view cutter. Default: as large as needed. From 20 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "bed"?: string;
  /** How much of the work is done where the model stands at rest: 0 flat, 1 finished; of GLB, whose animations play the work. Default: 1. */
  "closed"?: number;
  "folds"?: FoldsValue;
  /** How much the machine's tool takes away: outlines run half of it outside; of the view cutter. Default: 0 in on inch rulers, 0 mm on millimetre rulers. From 0 to 3 mm. */
  "kerf"?: string;
  "language"?: LanguageValueDrawing;
  /** The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4. From 140 to 5080 mm. Names are listed at /v1/sheets/sizes. */
  "paper"?: string;
  /** Which step of the work is drawn, from 1; of the view step. Default: 1. */
  "picture"?: number;
  /** Width of a PNG in pixels. Default: 800. */
  "pixels"?: number;
  "theme"?: ThemeValue;
  "view"?: ViewValue;
});
/** asks for: Drawing of a lidded-box. */
export type RequestDrawingLiddedBox = (RequestSolveLiddedBox & {
  /** The area that a cutting machine reaches; of the view cutter. Default: as large as needed. From 20 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "bed"?: string;
  /** How much of the work is done where the model stands at rest: 0 flat, 1 finished; of GLB, whose animations play the work. Default: 1. */
  "closed"?: number;
  "folds"?: FoldsValue;
  /** How much the machine's tool takes away: outlines run half of it outside; of the view cutter. Default: 0 in on inch rulers, 0 mm on millimetre rulers. From 0 to 3 mm. */
  "kerf"?: string;
  "language"?: LanguageValueDrawing;
  /** The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4. From 140 to 5080 mm. Names are listed at /v1/sheets/sizes. */
  "paper"?: string;
  /** Which step of the work is drawn, from 1; of the view step. Default: 1. */
  "picture"?: number;
  /** Width of a PNG in pixels. Default: 800. */
  "pixels"?: number;
  "theme"?: ThemeValue;
  "view"?: ViewValue;
});
/** asks for: Drawing of a mat-stack. */
export type RequestDrawingMatStack = (RequestSolveMatStack & {
  /** The area that a cutting machine reaches; of the view cutter. Default: as large as needed. From 20 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "bed"?: string;
  /** How much of the work is done where the model stands at rest: 0 flat, 1 finished; of GLB, whose animations play the work. Default: 1. */
  "closed"?: number;
  "folds"?: FoldsValue;
  /** How much the machine's tool takes away: outlines run half of it outside; of the view cutter. Default: 0 in on inch rulers, 0 mm on millimetre rulers. From 0 to 3 mm. */
  "kerf"?: string;
  "language"?: LanguageValueDrawing;
  /** The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4. From 140 to 5080 mm. Names are listed at /v1/sheets/sizes. */
  "paper"?: string;
  /** Which step of the work is drawn, from 1; of the view step. Default: 1. */
  "picture"?: number;
  /** Width of a PNG in pixels. Default: 800. */
  "pixels"?: number;
  "theme"?: ThemeValue;
  "view"?: ViewValue;
});
/** asks for: Drawing of a design: own. */
export type RequestDrawingOwn = (RequestSolveOwn & {
  /** The area that a cutting machine reaches; of the view cutter. Default: as large as needed. From 20 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "bed"?: string;
  /** How much of the work is done where the model stands at rest: 0 flat, 1 finished; of GLB, whose animations play the work. Default: 1. */
  "closed"?: number;
  "folds"?: FoldsValue;
  /** How much the machine's tool takes away: outlines run half of it outside; of the view cutter. Default: 0 in on inch rulers, 0 mm on millimetre rulers. From 0 to 3 mm. */
  "kerf"?: string;
  "language"?: LanguageValueDrawing;
  /** The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4. From 140 to 5080 mm. Names are listed at /v1/sheets/sizes. */
  "paper"?: string;
  /** Which step of the work is drawn, from 1; of the view step. Default: 1. */
  "picture"?: number;
  /** Width of a PNG in pixels. Default: 800. */
  "pixels"?: number;
  "theme"?: ThemeValue;
  "view"?: ViewValue;
});
/** asks for: Drawing of a pillow-pack. */
export type RequestDrawingPillowPack = (RequestSolvePillowPack & {
  /** The area that a cutting machine reaches; of the view cutter. Default: as large as needed. From 20 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "bed"?: string;
  /** How much of the work is done where the model stands at rest: 0 flat, 1 finished; of GLB, whose animations play the work. Default: 1. */
  "closed"?: number;
  "folds"?: FoldsValue;
  /** How much the machine's tool takes away: outlines run half of it outside; of the view cutter. Default: 0 in on inch rulers, 0 mm on millimetre rulers. From 0 to 3 mm. */
  "kerf"?: string;
  "language"?: LanguageValueDrawing;
  /** The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4. From 140 to 5080 mm. Names are listed at /v1/sheets/sizes. */
  "paper"?: string;
  /** Which step of the work is drawn, from 1; of the view step. Default: 1. */
  "picture"?: number;
  /** Width of a PNG in pixels. Default: 800. */
  "pixels"?: number;
  "theme"?: ThemeValue;
  "view"?: ViewValue;
});
/** asks for: Drawing of a pocket. */
export type RequestDrawingPocket = (RequestSolvePocket & {
  /** The area that a cutting machine reaches; of the view cutter. Default: as large as needed. From 20 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "bed"?: string;
  /** How much of the work is done where the model stands at rest: 0 flat, 1 finished; of GLB, whose animations play the work. Default: 1. */
  "closed"?: number;
  "folds"?: FoldsValue;
  /** How much the machine's tool takes away: outlines run half of it outside; of the view cutter. Default: 0 in on inch rulers, 0 mm on millimetre rulers. From 0 to 3 mm. */
  "kerf"?: string;
  "language"?: LanguageValueDrawing;
  /** The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4. From 140 to 5080 mm. Names are listed at /v1/sheets/sizes. */
  "paper"?: string;
  /** Which step of the work is drawn, from 1; of the view step. Default: 1. */
  "picture"?: number;
  /** Width of a PNG in pixels. Default: 800. */
  "pixels"?: number;
  "theme"?: ThemeValue;
  "view"?: ViewValue;
});
/** asks for: Drawing of several enclosures round one another. */
export type RequestDrawingPortfolio = (RequestSolvePortfolio & {
  /** The area that a cutting machine reaches; of the view cutter. Default: as large as needed. From 20 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "bed"?: string;
  /** How much of the work is done where the model stands at rest: 0 flat, 1 finished; of GLB, whose animations play the work. Default: 1. */
  "closed"?: number;
  "folds"?: FoldsValue;
  /** How much the machine's tool takes away: outlines run half of it outside; of the view cutter. Default: 0 in on inch rulers, 0 mm on millimetre rulers. From 0 to 3 mm. */
  "kerf"?: string;
  "language"?: LanguageValueDrawing;
  /** The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4. From 140 to 5080 mm. Names are listed at /v1/sheets/sizes. */
  "paper"?: string;
  /** Which step of the work is drawn, from 1; of the view step. Default: 1. */
  "picture"?: number;
  /** Width of a PNG in pixels. Default: 800. */
  "pixels"?: number;
  "theme"?: ThemeValue;
  "view"?: ViewValue;
});
/** asks for: Drawing of a prism-box. */
export type RequestDrawingPrismBox = (RequestSolvePrismBox & {
  /** The area that a cutting machine reaches; of the view cutter. Default: as large as needed. From 20 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "bed"?: string;
  /** How much of the work is done where the model stands at rest: 0 flat, 1 finished; of GLB, whose animations play the work. Default: 1. */
  "closed"?: number;
  "folds"?: FoldsValue;
  /** How much the machine's tool takes away: outlines run half of it outside; of the view cutter. Default: 0 in on inch rulers, 0 mm on millimetre rulers. From 0 to 3 mm. */
  "kerf"?: string;
  "language"?: LanguageValueDrawing;
  /** The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4. From 140 to 5080 mm. Names are listed at /v1/sheets/sizes. */
  "paper"?: string;
  /** Which step of the work is drawn, from 1; of the view step. Default: 1. */
  "picture"?: number;
  /** Width of a PNG in pixels. Default: 800. */
  "pixels"?: number;
  "theme"?: ThemeValue;
  "view"?: ViewValue;
});
/** asks for: Drawing of a sleeve. */
export type RequestDrawingSleeve = (RequestSolveSleeve & {
  /** The area that a cutting machine reaches; of the view cutter. Default: as large as needed. From 20 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "bed"?: string;
  /** How much of the work is done where the model stands at rest: 0 flat, 1 finished; of GLB, whose animations play the work. Default: 1. */
  "closed"?: number;
  "folds"?: FoldsValue;
  /** How much the machine's tool takes away: outlines run half of it outside; of the view cutter. Default: 0 in on inch rulers, 0 mm on millimetre rulers. From 0 to 3 mm. */
  "kerf"?: string;
  "language"?: LanguageValueDrawing;
  /** The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4. From 140 to 5080 mm. Names are listed at /v1/sheets/sizes. */
  "paper"?: string;
  /** Which step of the work is drawn, from 1; of the view step. Default: 1. */
  "picture"?: number;
  /** Width of a PNG in pixels. Default: 800. */
  "pixels"?: number;
  "theme"?: ThemeValue;
  "view"?: ViewValue;
});
/** asks for: Drawing of a slipcase. */
export type RequestDrawingSlipcase = (RequestSolveSlipcase & {
  /** The area that a cutting machine reaches; of the view cutter. Default: as large as needed. From 20 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "bed"?: string;
  /** How much of the work is done where the model stands at rest: 0 flat, 1 finished; of GLB, whose animations play the work. Default: 1. */
  "closed"?: number;
  "folds"?: FoldsValue;
  /** How much the machine's tool takes away: outlines run half of it outside; of the view cutter. Default: 0 in on inch rulers, 0 mm on millimetre rulers. From 0 to 3 mm. */
  "kerf"?: string;
  "language"?: LanguageValueDrawing;
  /** The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4. From 140 to 5080 mm. Names are listed at /v1/sheets/sizes. */
  "paper"?: string;
  /** Which step of the work is drawn, from 1; of the view step. Default: 1. */
  "picture"?: number;
  /** Width of a PNG in pixels. Default: 800. */
  "pixels"?: number;
  "theme"?: ThemeValue;
  "view"?: ViewValue;
});
/** asks for: Drawing of a slotted-band. */
export type RequestDrawingSlottedBand = (RequestSolveSlottedBand & {
  /** The area that a cutting machine reaches; of the view cutter. Default: as large as needed. From 20 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "bed"?: string;
  /** How much of the work is done where the model stands at rest: 0 flat, 1 finished; of GLB, whose animations play the work. Default: 1. */
  "closed"?: number;
  "folds"?: FoldsValue;
  /** How much the machine's tool takes away: outlines run half of it outside; of the view cutter. Default: 0 in on inch rulers, 0 mm on millimetre rulers. From 0 to 3 mm. */
  "kerf"?: string;
  "language"?: LanguageValueDrawing;
  /** The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4. From 140 to 5080 mm. Names are listed at /v1/sheets/sizes. */
  "paper"?: string;
  /** Which step of the work is drawn, from 1; of the view step. Default: 1. */
  "picture"?: number;
  /** Width of a PNG in pixels. Default: 800. */
  "pixels"?: number;
  "theme"?: ThemeValue;
  "view"?: ViewValue;
});
/** asks for: Drawing of a tray. */
export type RequestDrawingTray = (RequestSolveTray & {
  /** The area that a cutting machine reaches; of the view cutter. Default: as large as needed. From 20 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "bed"?: string;
  /** How much of the work is done where the model stands at rest: 0 flat, 1 finished; of GLB, whose animations play the work. Default: 1. */
  "closed"?: number;
  "folds"?: FoldsValue;
  /** How much the machine's tool takes away: outlines run half of it outside; of the view cutter. Default: 0 in on inch rulers, 0 mm on millimetre rulers. From 0 to 3 mm. */
  "kerf"?: string;
  "language"?: LanguageValueDrawing;
  /** The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4. From 140 to 5080 mm. Names are listed at /v1/sheets/sizes. */
  "paper"?: string;
  /** Which step of the work is drawn, from 1; of the view step. Default: 1. */
  "picture"?: number;
  /** Width of a PNG in pixels. Default: 800. */
  "pixels"?: number;
  "theme"?: ThemeValue;
  "view"?: ViewValue;
});
/** asks for: Drawing of a tuck-carton. */
export type RequestDrawingTuckCarton = (RequestSolveTuckCarton & {
  /** The area that a cutting machine reaches; of the view cutter. Default: as large as needed. From 20 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "bed"?: string;
  /** How much of the work is done where the model stands at rest: 0 flat, 1 finished; of GLB, whose animations play the work. Default: 1. */
  "closed"?: number;
  "folds"?: FoldsValue;
  /** How much the machine's tool takes away: outlines run half of it outside; of the view cutter. Default: 0 in on inch rulers, 0 mm on millimetre rulers. From 0 to 3 mm. */
  "kerf"?: string;
  "language"?: LanguageValueDrawing;
  /** The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4. From 140 to 5080 mm. Names are listed at /v1/sheets/sizes. */
  "paper"?: string;
  /** Which step of the work is drawn, from 1; of the view step. Default: 1. */
  "picture"?: number;
  /** Width of a PNG in pixels. Default: 800. */
  "pixels"?: number;
  "theme"?: ThemeValue;
  "view"?: ViewValue;
});
/** asks for: Making instructions of a band. */
export type RequestGuideBand = (RequestSolveBand & {
  "language"?: LanguageValue;
  /** The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4. From 140 to 5080 mm. Names are listed at /v1/sheets/sizes. */
  "paper"?: string;
  "pictures"?: PicturesValue;
  "print"?: PrintValue;
  "steps"?: StepsValue;
  "units"?: UnitsValue;
});
/** asks for: Making instructions of a diagonal-envelope. */
export type RequestGuideDiagonalEnvelope = (RequestSolveDiagonalEnvelope & {
  "language"?: LanguageValue;
  /** The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4. From 140 to 5080 mm. Names are listed at /v1/sheets/sizes. */
  "paper"?: string;
  "pictures"?: PicturesValue;
  "print"?: PrintValue;
  "steps"?: StepsValue;
  "units"?: UnitsValue;
});
/** asks for: Making instructions of a dividers. */
export type RequestGuideDividers = (RequestSolveDividers & {
  "language"?: LanguageValue;
  /** The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4. From 140 to 5080 mm. Names are listed at /v1/sheets/sizes. */
  "paper"?: string;
  "pictures"?: PicturesValue;
  "print"?: PrintValue;
  "steps"?: StepsValue;
  "units"?: UnitsValue;
});
/** asks for: Making instructions of a drawer-box. */
export type RequestGuideDrawerBox = (RequestSolveDrawerBox & {
  "language"?: LanguageValue;
  /** The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4. From 140 to 5080 mm. Names are listed at /v1/sheets/sizes. */
  "paper"?: string;
  "pictures"?: PicturesValue;
  "print"?: PrintValue;
  "steps"?: StepsValue;
  "units"?: UnitsValue;
});
/** asks for: Making instructions of a envelope. */
export type RequestGuideEnvelope = (RequestSolveEnvelope & {
  "language"?: LanguageValue;
  /** The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4. From 140 to 5080 mm. Names are listed at /v1/sheets/sizes. */
  "paper"?: string;
  "pictures"?: PicturesValue;
  "print"?: PrintValue;
  "steps"?: StepsValue;
  "units"?: UnitsValue;
});
/** asks for: Making instructions of a folded-card. */
export type RequestGuideFoldedCard = (RequestSolveFoldedCard & {
  "language"?: LanguageValue;
  /** The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4. From 140 to 5080 mm. Names are listed at /v1/sheets/sizes. */
  "paper"?: string;
  "pictures"?: PicturesValue;
  "print"?: PrintValue;
  "steps"?: StepsValue;
  "units"?: UnitsValue;
});
/** asks for: Making instructions of a gusset-bag. */
export type RequestGuideGussetBag = (RequestSolveGussetBag & {
  "language"?: LanguageValue;
  /** The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4. From 140 to 5080 mm. Names are listed at /v1/sheets/sizes. */
  "paper"?: string;
  "pictures"?: PicturesValue;
  "print"?: PrintValue;
  "steps"?: StepsValue;
  "units"?: UnitsValue;
});
/** asks for: Making instructions of a lidded-box. */
export type RequestGuideLiddedBox = (RequestSolveLiddedBox & {
  "language"?: LanguageValue;
  /** The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4. From 140 to 5080 mm. Names are listed at /v1/sheets/sizes. */
  "paper"?: string;
  "pictures"?: PicturesValue;
  "print"?: PrintValue;
  "steps"?: StepsValue;
  "units"?: UnitsValue;
});
/** asks for: Making instructions of a mat-stack. */
export type RequestGuideMatStack = (RequestSolveMatStack & {
  "language"?: LanguageValue;
  /** The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4. From 140 to 5080 mm. Names are listed at /v1/sheets/sizes. */
  "paper"?: string;
  "pictures"?: PicturesValue;
  "print"?: PrintValue;
  "steps"?: StepsValue;
  "units"?: UnitsValue;
});
/** asks for: Making instructions of a design: own. */
export type RequestGuideOwn = (RequestSolveOwn & {
  "language"?: LanguageValue;
  /** The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4. From 140 to 5080 mm. Names are listed at /v1/sheets/sizes. */
  "paper"?: string;
  "pictures"?: PicturesValue;
  "print"?: PrintValue;
  "steps"?: StepsValue;
  "units"?: UnitsValue;
});
/** asks for: Making instructions of a pillow-pack. */
export type RequestGuidePillowPack = (RequestSolvePillowPack & {
  "language"?: LanguageValue;
  /** The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4. From 140 to 5080 mm. Names are listed at /v1/sheets/sizes. */
  "paper"?: string;
  "pictures"?: PicturesValue;
  "print"?: PrintValue;
  "steps"?: StepsValue;
  "units"?: UnitsValue;
});
/** asks for: Making instructions of a pocket. */
export type RequestGuidePocket = (RequestSolvePocket & {
  "language"?: LanguageValue;
  /** The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4. From 140 to 5080 mm. Names are listed at /v1/sheets/sizes. */
  "paper"?: string;
  "pictures"?: PicturesValue;
  "print"?: PrintValue;
  "steps"?: StepsValue;
  "units"?: UnitsValue;
});
/** asks for: Making instructions of several enclosures round one another. */
export type RequestGuidePortfolio = (RequestSolvePortfolio & {
  "language"?: LanguageValue;
  /** The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4. From 140 to 5080 mm. Names are listed at /v1/sheets/sizes. */
  "paper"?: string;
  "pictures"?: PicturesValue;
  "print"?: PrintValue;
  "steps"?: StepsValue;
  "units"?: UnitsValue;
});
/** asks for: Making instructions of a prism-box. */
export type RequestGuidePrismBox = (RequestSolvePrismBox & {
  "language"?: LanguageValue;
  /** The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4. From 140 to 5080 mm. Names are listed at /v1/sheets/sizes. */
  "paper"?: string;
  "pictures"?: PicturesValue;
  "print"?: PrintValue;
  "steps"?: StepsValue;
  "units"?: UnitsValue;
});
/** asks for: Making instructions of a sleeve. */
export type RequestGuideSleeve = (RequestSolveSleeve & {
  "language"?: LanguageValue;
  /** The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4. From 140 to 5080 mm. Names are listed at /v1/sheets/sizes. */
  "paper"?: string;
  "pictures"?: PicturesValue;
  "print"?: PrintValue;
  "steps"?: StepsValue;
  "units"?: UnitsValue;
});
/** asks for: Making instructions of a slipcase. */
export type RequestGuideSlipcase = (RequestSolveSlipcase & {
  "language"?: LanguageValue;
  /** The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4. From 140 to 5080 mm. Names are listed at /v1/sheets/sizes. */
  "paper"?: string;
  "pictures"?: PicturesValue;
  "print"?: PrintValue;
  "steps"?: StepsValue;
  "units"?: UnitsValue;
});
/** asks for: Making instructions of a slotted-band. */
export type RequestGuideSlottedBand = (RequestSolveSlottedBand & {
  "language"?: LanguageValue;
  /** The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4. From 140 to 5080 mm. Names are listed at /v1/sheets/sizes. */
  "paper"?: string;
  "pictures"?: PicturesValue;
  "print"?: PrintValue;
  "steps"?: StepsValue;
  "units"?: UnitsValue;
});
/** asks for: Making instructions of a tray. */
export type RequestGuideTray = (RequestSolveTray & {
  "language"?: LanguageValue;
  /** The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4. From 140 to 5080 mm. Names are listed at /v1/sheets/sizes. */
  "paper"?: string;
  "pictures"?: PicturesValue;
  "print"?: PrintValue;
  "steps"?: StepsValue;
  "units"?: UnitsValue;
});
/** asks for: Making instructions of a tuck-carton. */
export type RequestGuideTuckCarton = (RequestSolveTuckCarton & {
  "language"?: LanguageValue;
  /** The paper in the printer: a size, or a name; of PDF. Default: letter on inch rulers, else A4. From 140 to 5080 mm. Names are listed at /v1/sheets/sizes. */
  "paper"?: string;
  "pictures"?: PicturesValue;
  "print"?: PrintValue;
  "steps"?: StepsValue;
  "units"?: UnitsValue;
});
/** asks for: Whether a piece may be mailed. */
export type RequestMail = {
  "address_along"?: AddressAlongValue;
  "box"?: BoxValue;
  "card"?: CardValue;
  "clasp"?: ClaspValue;
  /** Height of the finished piece, outside. Which of the sizes is the longest does not matter. From 1 to 3000 mm. */
  "height"?: string;
  "language"?: LanguageValueMail;
  /** Mass in grams, with everything inside. Without it the answer says what it may be. */
  "mass"?: number;
  /** Mass in ounces instead of grams. */
  "mass_oz"?: number;
  /** How much the mass varies, plus or minus, in grams. Default: nothing. */
  "mass_tolerance"?: number;
  "plastic"?: PlasticValue;
  "post"?: Array<PostValue>;
  "rigid"?: RigidValue;
  "shape"?: ShapeValueMail;
  /** How much width and height vary, plus or minus. Default: nothing. From 0 to 50 mm. */
  "size_tolerance"?: string;
  /** Thickness of the finished piece with its contents. Without it the answer says what it may be. From 0.01 to 1000 mm. */
  "thickness"?: string;
  /** How much the thickness varies, plus or minus. Default: nothing. From 0 to 50 mm. */
  "thickness_tolerance"?: string;
  "uneven"?: UnevenValue;
  "unit"?: UnitValue;
  /** Width of the finished piece, outside. From 1 to 3000 mm. */
  "width"?: string;
};
/** asks for: What goes into what. */
export type RequestMatch = {
  "contents"?: ContentsValue;
  /** How much the contents vary in every direction, plus or minus, or one way alone, such as -1/8 for what only shrinks. Default: what the named contents state, else nothing. From 0 to 10 mm. */
  "contents_tolerance"?: string;
  /** Height of the contents. From 3 to 2000 mm. */
  "height"?: string;
  "holders"?: Array<HoldersValue>;
  /** The name that an answer gave to its holders, instead of sending them again; they are asked for again once they are forgotten. */
  "list"?: string;
  "only"?: OnlyValue;
  /** Thickness of the contents in all. From 0.01 to 500 mm. */
  "thickness"?: string;
  "things"?: Array<ThingsValue>;
  /** Answer with so many at the most, the best. */
  "top"?: number;
  "turn"?: TurnValue;
  "unit"?: UnitValue;
  /** Width of the contents. Of several things it is 3 of 60 mm + 4 mm; of contents by name, 3 of them. From 3 to 2000 mm. */
  "width"?: string;
};
/** asks for: A length on every ruler. */
export type RequestRuler = {
  "length"?: Array<string>;
  "unit"?: UnitValue;
};
/** asks for: Measurements of a band. */
export type RequestSolveBand = {
  /** How high the band is. Default: 1 1/2 in on inch rulers, 40 mm on millimetre rulers. From 5 to 1000 mm. */
  "band_height"?: string;
  "bench"?: BenchValue;
  /** Caliper from which the stock does not give way: edges are trimmed instead of pressed in, scores cut half through, and what folds flat is refused. Default: 0.8 mm. From 0.01 to 10 mm. */
  "board_from"?: string;
  /** Thickness of one sheet of the paper. From 0.01 to 5 mm. */
  "caliper"?: string;
  /** How far the caliper of the pack may be off, plus or minus. Default: what the named stock states, else 7 % of the caliper. From 0 to 2 mm. */
  "caliper_tolerance"?: string;
  /** The greatest clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_max"?: string;
  /** The least clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_min"?: string;
  "contents"?: ContentsValue;
  /** How much the contents vary in every direction, plus or minus, or one way alone, such as -1/8 for what only shrinks. Default: what the named contents state, else nothing. From 0 to 10 mm. */
  "contents_tolerance"?: string;
  /** Error of one cut, plus or minus, instead of the bench's. From 0 to 10 mm. */
  "cut_tolerance"?: string;
  "fit"?: FitValue;
  /** What one fold takes up beside the caliper, half of it from each of its panels; negative where folds bulge. /v1/calibrate measures it. Default: 0. From 0 to 2 mm. */
  "fold_allowance"?: string;
  "grain"?: GrainValue;
  /** Mass of the paper in g/m2. Without a caliper the caliper is estimated from it. */
  "grammage"?: number;
  /** Height of the contents. From 3 to 2000 mm. */
  "height"?: string;
  /** How far the outer end goes over the inner one, where the glue is. Default: 1/2 in on inch rulers, 15 mm on millimetre rulers. From 3 to 300 mm. */
  "lap"?: string;
  /** Relative humidity in percent where the piece is made; with used_at, clearances are those where it is used, since sheets grow 0.1 to 0.2 % along and 0.2 to 0.4 % across the grain from 33 to 66 %. */
  "made_at"?: number;
  /** How far from the left edge of the front the two ends meet; in the middle if not given. From 3 to 2000 mm. */
  "meeting"?: string;
  /** The finest mark of the ruler. Default: 1/16 in on inch rulers, 0.5 mm on millimetre rulers. */
  "ruler"?: string;
  /** Error of one score, plus or minus, instead of the bench's. From 0 to 10 mm. */
  "score_tolerance"?: string;
  "scores"?: ScoresValue;
  "shape"?: ShapeValue;
  /** The sheet that blanks are cut from: a size, or a name. From 10 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "sheet"?: string;
  /** Force all readings onto multiples of this mark. Default: the coarsest that fits. */
  "step"?: string;
  "stock"?: StockValue;
  /** Thickness of the contents in all. From 0.01 to 500 mm. */
  "thickness"?: string;
  "unit"?: UnitValue;
  /** Relative humidity in percent where the piece is used. */
  "used_at"?: number;
  /** How much tighter than touching a lid or a drawer may be, since walls of paper bow. Default: one caliper, from 0.8 mm on nothing. From 0 to 5 mm. */
  "wall_give"?: string;
  /** How sure everything should go in, 0.5 to 0.999: the answer is the coarsest step that reaches it, else the surest. Default: the plainest numbers. */
  "wanted_chance"?: number;
  /** Width of the contents. Of several things it is 3 of 60 mm + 4 mm; of contents by name, 3 of them. From 3 to 2000 mm. */
  "width"?: string;
};
/** asks for: Measurements of a diagonal-envelope. */
export type RequestSolveDiagonalEnvelope = {
  "bench"?: BenchValue;
  /** Caliper from which the stock does not give way: edges are trimmed instead of pressed in, scores cut half through, and what folds flat is refused. Default: 0.8 mm. From 0.01 to 10 mm. */
  "board_from"?: string;
  /** Thickness of one sheet of the paper. From 0.01 to 5 mm. */
  "caliper"?: string;
  /** How far the caliper of the pack may be off, plus or minus. Default: what the named stock states, else 7 % of the caliper. From 0 to 2 mm. */
  "caliper_tolerance"?: string;
  /** The greatest clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_max"?: string;
  /** The least clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_min"?: string;
  "contents"?: ContentsValue;
  /** How much the contents vary in every direction, plus or minus, or one way alone, such as -1/8 for what only shrinks. Default: what the named contents state, else nothing. From 0 to 10 mm. */
  "contents_tolerance"?: string;
  /** Error of one cut, plus or minus, instead of the bench's. From 0 to 10 mm. */
  "cut_tolerance"?: string;
  "fit"?: FitValue;
  /** What one fold takes up beside the caliper, half of it from each of its panels; negative where folds bulge. /v1/calibrate measures it. Default: 0. From 0 to 2 mm. */
  "fold_allowance"?: string;
  "grain"?: GrainValue;
  /** Mass of the paper in g/m2. Without a caliper the caliper is estimated from it. */
  "grammage"?: number;
  /** Height of the contents. From 3 to 2000 mm. */
  "height"?: string;
  /** Relative humidity in percent where the piece is made; with used_at, clearances are those where it is used, since sheets grow 0.1 to 0.2 % along and 0.2 to 0.4 % across the grain from 33 to 66 %. */
  "made_at"?: number;
  /** How wide the flaps lie on one another along each seam; none lets them meet edge to edge. Default: 1/2 in on inch rulers, 15 mm on millimetre rulers. From 0 to 300 mm. */
  "overlap"?: string;
  /** The finest mark of the ruler. Default: 1/16 in on inch rulers, 0.5 mm on millimetre rulers. */
  "ruler"?: string;
  /** Error of one score, plus or minus, instead of the bench's. From 0 to 10 mm. */
  "score_tolerance"?: string;
  /** The sheet that blanks are cut from: a size, or a name. From 10 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "sheet"?: string;
  /** Force all readings onto multiples of this mark. Default: the coarsest that fits. */
  "step"?: string;
  "stock"?: StockValue;
  /** Thickness of the contents in all. From 0.01 to 500 mm. */
  "thickness"?: string;
  "unit"?: UnitValue;
  /** Relative humidity in percent where the piece is used. */
  "used_at"?: number;
  /** How much tighter than touching a lid or a drawer may be, since walls of paper bow. Default: one caliper, from 0.8 mm on nothing. From 0 to 5 mm. */
  "wall_give"?: string;
  /** How sure everything should go in, 0.5 to 0.999: the answer is the coarsest step that reaches it, else the surest. Default: the plainest numbers. */
  "wanted_chance"?: number;
  /** Width of the contents. Of several things it is 3 of 60 mm + 4 mm; of contents by name, 3 of them. From 3 to 2000 mm. */
  "width"?: string;
};
/** asks for: Measurements of a dividers. */
export type RequestSolveDividers = {
  "bench"?: BenchValue;
  /** Caliper from which the stock does not give way: edges are trimmed instead of pressed in, scores cut half through, and what folds flat is refused. Default: 0.8 mm. From 0.01 to 10 mm. */
  "board_from"?: string;
  /** Thickness of one sheet of the paper. From 0.01 to 5 mm. */
  "caliper"?: string;
  /** How far the caliper of the pack may be off, plus or minus. Default: what the named stock states, else 7 % of the caliper. From 0 to 2 mm. */
  "caliper_tolerance"?: string;
  /** The greatest clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_max"?: string;
  /** The least clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_min"?: string;
  /** How wide column 1 is, to the middle of its strips; a share of what is left if not given. From 5 to 1000 mm. */
  "column_1"?: string;
  /** How wide column 2 is, to the middle of its strips; a share of what is left if not given. From 5 to 1000 mm. */
  "column_2"?: string;
  /** How wide column 3 is, to the middle of its strips; a share of what is left if not given. From 5 to 1000 mm. */
  "column_3"?: string;
  /** How wide column 4 is, to the middle of its strips; a share of what is left if not given. From 5 to 1000 mm. */
  "column_4"?: string;
  /** How wide column 5 is, to the middle of its strips; a share of what is left if not given. From 5 to 1000 mm. */
  "column_5"?: string;
  /** How wide column 6 is, to the middle of its strips; a share of what is left if not given. From 5 to 1000 mm. */
  "column_6"?: string;
  /** How wide column 7 is, to the middle of its strips; a share of what is left if not given. From 5 to 1000 mm. */
  "column_7"?: string;
  /** How wide column 8 is, to the middle of its strips; a share of what is left if not given. From 5 to 1000 mm. */
  "column_8"?: string;
  /** How wide every column but the last is, to the middle of its strip; all the same if not given. From 5 to 1000 mm. */
  "column_width"?: string;
  /** How many cells lie along the width. Default: 3. */
  "columns"?: number;
  "contents"?: ContentsValue;
  /** How much the contents vary in every direction, plus or minus, or one way alone, such as -1/8 for what only shrinks. Default: what the named contents state, else nothing. From 0 to 10 mm. */
  "contents_tolerance"?: string;
  /** Error of one cut, plus or minus, instead of the bench's. From 0 to 10 mm. */
  "cut_tolerance"?: string;
  "fit"?: FitValue;
  /** What one fold takes up beside the caliper, half of it from each of its panels; negative where folds bulge. /v1/calibrate measures it. Default: 0. From 0 to 2 mm. */
  "fold_allowance"?: string;
  "grain"?: GrainValue;
  /** Mass of the paper in g/m2. Without a caliper the caliper is estimated from it. */
  "grammage"?: number;
  /** Height of the contents. From 3 to 2000 mm. */
  "height"?: string;
  /** Relative humidity in percent where the piece is made; with used_at, clearances are those where it is used, since sheets grow 0.1 to 0.2 % along and 0.2 to 0.4 % across the grain from 33 to 66 %. */
  "made_at"?: number;
  /** How much wider than the stock a slot is at the least; none if not given. From 0 to 5 mm. */
  "play"?: string;
  /** How high row 1 is, to the middle of its strips; a share of what is left if not given. From 5 to 1000 mm. */
  "row_1"?: string;
  /** How high row 2 is, to the middle of its strips; a share of what is left if not given. From 5 to 1000 mm. */
  "row_2"?: string;
  /** How high row 3 is, to the middle of its strips; a share of what is left if not given. From 5 to 1000 mm. */
  "row_3"?: string;
  /** How high row 4 is, to the middle of its strips; a share of what is left if not given. From 5 to 1000 mm. */
  "row_4"?: string;
  /** How high row 5 is, to the middle of its strips; a share of what is left if not given. From 5 to 1000 mm. */
  "row_5"?: string;
  /** How high row 6 is, to the middle of its strips; a share of what is left if not given. From 5 to 1000 mm. */
  "row_6"?: string;
  /** How high row 7 is, to the middle of its strips; a share of what is left if not given. From 5 to 1000 mm. */
  "row_7"?: string;
  /** How high row 8 is, to the middle of its strips; a share of what is left if not given. From 5 to 1000 mm. */
  "row_8"?: string;
  /** How high every row but the last is, to the middle of its strip; all the same if not given. From 5 to 1000 mm. */
  "row_height"?: string;
  /** How many cells lie along the height. Default: 2. */
  "rows"?: number;
  /** The finest mark of the ruler. Default: 1/16 in on inch rulers, 0.5 mm on millimetre rulers. */
  "ruler"?: string;
  /** Error of one score, plus or minus, instead of the bench's. From 0 to 10 mm. */
  "score_tolerance"?: string;
  /** The sheet that blanks are cut from: a size, or a name. From 10 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "sheet"?: string;
  "slots"?: SlotsValue;
  /** Force all readings onto multiples of this mark. Default: the coarsest that fits. */
  "step"?: string;
  "stock"?: StockValue;
  /** Thickness of the contents in all. From 0.01 to 500 mm. */
  "thickness"?: string;
  "unit"?: UnitValue;
  /** Relative humidity in percent where the piece is used. */
  "used_at"?: number;
  /** How much tighter than touching a lid or a drawer may be, since walls of paper bow. Default: one caliper, from 0.8 mm on nothing. From 0 to 5 mm. */
  "wall_give"?: string;
  /** How sure everything should go in, 0.5 to 0.999: the answer is the coarsest step that reaches it, else the surest. Default: the plainest numbers. */
  "wanted_chance"?: number;
  /** Width of the contents. Of several things it is 3 of 60 mm + 4 mm; of contents by name, 3 of them. From 3 to 2000 mm. */
  "width"?: string;
};
/** asks for: Measurements of a drawer-box. */
export type RequestSolveDrawerBox = {
  "bench"?: BenchValue;
  /** Caliper from which the stock does not give way: edges are trimmed instead of pressed in, scores cut half through, and what folds flat is refused. Default: 0.8 mm. From 0.01 to 10 mm. */
  "board_from"?: string;
  /** Thickness of one sheet of the paper. From 0.01 to 5 mm. */
  "caliper"?: string;
  /** How far the caliper of the pack may be off, plus or minus. Default: what the named stock states, else 7 % of the caliper. From 0 to 2 mm. */
  "caliper_tolerance"?: string;
  /** The greatest clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_max"?: string;
  /** The least clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_min"?: string;
  "contents"?: ContentsValue;
  /** How much the contents vary in every direction, plus or minus, or one way alone, such as -1/8 for what only shrinks. Default: what the named contents state, else nothing. From 0 to 10 mm. */
  "contents_tolerance"?: string;
  "corners"?: CornersValue;
  /** Error of one cut, plus or minus, instead of the bench's. From 0 to 10 mm. */
  "cut_tolerance"?: string;
  "fit"?: FitValue;
  /** What one fold takes up beside the caliper, half of it from each of its panels; negative where folds bulge. /v1/calibrate measures it. Default: 0. From 0 to 2 mm. */
  "fold_allowance"?: string;
  "grain"?: GrainValue;
  /** Mass of the paper in g/m2. Without a caliper the caliper is estimated from it. */
  "grammage"?: number;
  /** Height of the contents. From 3 to 2000 mm. */
  "height"?: string;
  "join"?: JoinValue;
  /** How wide the lap is that is glued inside the sleeve's front. Default: 1/2 in on inch rulers, 15 mm on millimetre rulers. From 3 to 300 mm. */
  "lap"?: string;
  /** Relative humidity in percent where the piece is made; with used_at, clearances are those where it is used, since sheets grow 0.1 to 0.2 % along and 0.2 to 0.4 % across the grain from 33 to 66 %. */
  "made_at"?: number;
  /** Radius of a half-round thumb notch in the middle of the open edge; none if not given. From 3 to 300 mm. */
  "notch"?: string;
  "notch_faces"?: NotchFacesValue;
  /** How long the slit for a ribbon is in the middle of the tray's top wall; none if not given. From 3 to 300 mm. */
  "ribbon_slit"?: string;
  /** The finest mark of the ruler. Default: 1/16 in on inch rulers, 0.5 mm on millimetre rulers. */
  "ruler"?: string;
  /** Error of one score, plus or minus, instead of the bench's. From 0 to 10 mm. */
  "score_tolerance"?: string;
  /** The sheet that blanks are cut from: a size, or a name. From 10 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "sheet"?: string;
  "slide"?: SlideValue;
  /** Force all readings onto multiples of this mark. Default: the coarsest that fits. */
  "step"?: string;
  "stock"?: StockValue;
  /** How long the corner tabs are; as long as the walls are high, if there is room, if not given. From 5 to 500 mm. */
  "tab"?: string;
  /** Thickness of the contents in all. From 0.01 to 500 mm. */
  "thickness"?: string;
  "unit"?: UnitValue;
  /** Relative humidity in percent where the piece is used. */
  "used_at"?: number;
  /** How much tighter than touching a lid or a drawer may be, since walls of paper bow. Default: one caliper, from 0.8 mm on nothing. From 0 to 5 mm. */
  "wall_give"?: string;
  /** How sure everything should go in, 0.5 to 0.999: the answer is the coarsest step that reaches it, else the surest. Default: the plainest numbers. */
  "wanted_chance"?: number;
  /** Width of the contents. Of several things it is 3 of 60 mm + 4 mm; of contents by name, 3 of them. From 3 to 2000 mm. */
  "width"?: string;
};
/** asks for: Measurements of a envelope. */
export type RequestSolveEnvelope = {
  "bench"?: BenchValue;
  /** Caliper from which the stock does not give way: edges are trimmed instead of pressed in, scores cut half through, and what folds flat is refused. Default: 0.8 mm. From 0.01 to 10 mm. */
  "board_from"?: string;
  /** How far up the bottom panel comes; as far as the overlap asks for if not given. From 5 to 1000 mm. */
  "bottom_panel"?: string;
  /** Thickness of one sheet of the paper. From 0.01 to 5 mm. */
  "caliper"?: string;
  /** How far the caliper of the pack may be off, plus or minus. Default: what the named stock states, else 7 % of the caliper. From 0 to 2 mm. */
  "caliper_tolerance"?: string;
  /** The greatest clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_max"?: string;
  /** The least clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_min"?: string;
  /** How far the closing flap comes down, measured in its middle. Default: 1 1/2 in on inch rulers, 40 mm on millimetre rulers. From 5 to 1000 mm. */
  "closing_flap"?: string;
  "contents"?: ContentsValue;
  /** How much the contents vary in every direction, plus or minus, or one way alone, such as -1/8 for what only shrinks. Default: what the named contents state, else nothing. From 0 to 10 mm. */
  "contents_tolerance"?: string;
  /** Error of one cut, plus or minus, instead of the bench's. From 0 to 10 mm. */
  "cut_tolerance"?: string;
  "fit"?: FitValue;
  "flap"?: FlapValue;
  /** How far in the far corners of an angled closing flap lie, each. Default: 1 in on inch rulers, 25 mm on millimetre rulers. From 1 to 500 mm. */
  "flap_inset"?: string;
  /** What one fold takes up beside the caliper, half of it from each of its panels; negative where folds bulge. /v1/calibrate measures it. Default: 0. From 0 to 2 mm. */
  "fold_allowance"?: string;
  "grain"?: GrainValue;
  /** Mass of the paper in g/m2. Without a caliper the caliper is estimated from it. */
  "grammage"?: number;
  /** Height of the contents. From 3 to 2000 mm. */
  "height"?: string;
  /** Relative humidity in percent where the piece is made; with used_at, clearances are those where it is used, since sheets grow 0.1 to 0.2 % along and 0.2 to 0.4 % across the grain from 33 to 66 %. */
  "made_at"?: number;
  /** How far the closing flap reaches over the bottom panel, where the gum is. Default: 1/2 in on inch rulers, 15 mm on millimetre rulers. From 3 to 300 mm. */
  "overlap"?: string;
  /** How far in the angled relief cuts come at the free edge of a flap. Default: 1/2 in on inch rulers, 10 mm on millimetre rulers. From 0.5 to 300 mm. */
  "relief"?: string;
  /** The finest mark of the ruler. Default: 1/16 in on inch rulers, 0.5 mm on millimetre rulers. */
  "ruler"?: string;
  /** Error of one score, plus or minus, instead of the bench's. From 0 to 10 mm. */
  "score_tolerance"?: string;
  /** The sheet that blanks are cut from: a size, or a name. From 10 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "sheet"?: string;
  /** How wide each glued side flap is. Default: 1 in on inch rulers, 25 mm on millimetre rulers. From 5 to 500 mm. */
  "side_flap"?: string;
  /** Force all readings onto multiples of this mark. Default: the coarsest that fits. */
  "step"?: string;
  "stock"?: StockValue;
  /** Thickness of the contents in all. From 0.01 to 500 mm. */
  "thickness"?: string;
  "unit"?: UnitValue;
  /** Relative humidity in percent where the piece is used. */
  "used_at"?: number;
  /** How much tighter than touching a lid or a drawer may be, since walls of paper bow. Default: one caliper, from 0.8 mm on nothing. From 0 to 5 mm. */
  "wall_give"?: string;
  /** How sure everything should go in, 0.5 to 0.999: the answer is the coarsest step that reaches it, else the surest. Default: the plainest numbers. */
  "wanted_chance"?: number;
  /** Width of the contents. Of several things it is 3 of 60 mm + 4 mm; of contents by name, 3 of them. From 3 to 2000 mm. */
  "width"?: string;
};
/** asks for: Measurements of a folded-card. */
export type RequestSolveFoldedCard = {
  "bench"?: BenchValue;
  /** Caliper from which the stock does not give way: edges are trimmed instead of pressed in, scores cut half through, and what folds flat is refused. Default: 0.8 mm. From 0.01 to 10 mm. */
  "board_from"?: string;
  /** Thickness of one sheet of the paper. From 0.01 to 5 mm. */
  "caliper"?: string;
  /** How far the caliper of the pack may be off, plus or minus. Default: what the named stock states, else 7 % of the caliper. From 0 to 2 mm. */
  "caliper_tolerance"?: string;
  /** The greatest clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_max"?: string;
  /** The least clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_min"?: string;
  "contents"?: ContentsValue;
  /** How much the contents vary in every direction, plus or minus, or one way alone, such as -1/8 for what only shrinks. Default: what the named contents state, else nothing. From 0 to 10 mm. */
  "contents_tolerance"?: string;
  /** Error of one cut, plus or minus, instead of the bench's. From 0 to 10 mm. */
  "cut_tolerance"?: string;
  "fit"?: FitValue;
  "fold"?: FoldValue;
  /** What one fold takes up beside the caliper, half of it from each of its panels; negative where folds bulge. /v1/calibrate measures it. Default: 0. From 0 to 2 mm. */
  "fold_allowance"?: string;
  /** Gap between the two panels of a gate; about 1/8 in (3 mm) if not given. From 0 to 500 mm. */
  "gap"?: string;
  "grain"?: GrainValue;
  /** Mass of the paper in g/m2. Without a caliper the caliper is estimated from it. */
  "grammage"?: number;
  /** Height of the contents. From 3 to 2000 mm. */
  "height"?: string;
  /** Relative humidity in percent where the piece is made; with used_at, clearances are those where it is used, since sheets grow 0.1 to 0.2 % along and 0.2 to 0.4 % across the grain from 33 to 66 %. */
  "made_at"?: number;
  /** Panels of an accordion. Default: 4. */
  "panels"?: number;
  /** The finest mark of the ruler. Default: 1/16 in on inch rulers, 0.5 mm on millimetre rulers. */
  "ruler"?: string;
  /** Error of one score, plus or minus, instead of the bench's. From 0 to 10 mm. */
  "score_tolerance"?: string;
  /** The sheet that blanks are cut from: a size, or a name. From 10 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "sheet"?: string;
  /** Force all readings onto multiples of this mark. Default: the coarsest that fits. */
  "step"?: string;
  "stock"?: StockValue;
  /** Thickness of the contents in all. From 0.01 to 500 mm. */
  "thickness"?: string;
  "unit"?: UnitValue;
  /** Relative humidity in percent where the piece is used. */
  "used_at"?: number;
  /** How much tighter than touching a lid or a drawer may be, since walls of paper bow. Default: one caliper, from 0.8 mm on nothing. From 0 to 5 mm. */
  "wall_give"?: string;
  /** How sure everything should go in, 0.5 to 0.999: the answer is the coarsest step that reaches it, else the surest. Default: the plainest numbers. */
  "wanted_chance"?: number;
  /** Width of the contents. Of several things it is 3 of 60 mm + 4 mm; of contents by name, 3 of them. From 3 to 2000 mm. */
  "width"?: string;
};
/** asks for: Measurements of a gusset-bag. */
export type RequestSolveGussetBag = {
  /** How far the flaps of the front and of the gussets reach under the base. Default: 1/4 in on inch rulers, 5 mm on millimetre rulers. From 3 to 300 mm. */
  "base_flap"?: string;
  "bench"?: BenchValue;
  /** Caliper from which the stock does not give way: edges are trimmed instead of pressed in, scores cut half through, and what folds flat is refused. Default: 0.8 mm. From 0.01 to 10 mm. */
  "board_from"?: string;
  /** Thickness of one sheet of the paper. From 0.01 to 5 mm. */
  "caliper"?: string;
  /** How far the caliper of the pack may be off, plus or minus. Default: what the named stock states, else 7 % of the caliper. From 0 to 2 mm. */
  "caliper_tolerance"?: string;
  /** The greatest clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_max"?: string;
  /** The least clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_min"?: string;
  "contents"?: ContentsValue;
  /** How much the contents vary in every direction, plus or minus, or one way alone, such as -1/8 for what only shrinks. Default: what the named contents state, else nothing. From 0 to 10 mm. */
  "contents_tolerance"?: string;
  /** Error of one cut, plus or minus, instead of the bench's. From 0 to 10 mm. */
  "cut_tolerance"?: string;
  "fit"?: FitValue;
  /** What one fold takes up beside the caliper, half of it from each of its panels; negative where folds bulge. /v1/calibrate measures it. Default: 0. From 0 to 2 mm. */
  "fold_allowance"?: string;
  "grain"?: GrainValue;
  /** Mass of the paper in g/m2. Without a caliper the caliper is estimated from it. */
  "grammage"?: number;
  /** How far the bag stands above the contents, at least. Default: 2 in on inch rulers, 50 mm on millimetre rulers. From 10 to 1000 mm. */
  "headroom"?: string;
  /** Height of the contents. From 3 to 2000 mm. */
  "height"?: string;
  "join"?: JoinValue;
  /** How wide the glue lap is. Default: 1/2 in on inch rulers, 15 mm on millimetre rulers. From 3 to 300 mm. */
  "lap"?: string;
  /** Relative humidity in percent where the piece is made; with used_at, clearances are those where it is used, since sheets grow 0.1 to 0.2 % along and 0.2 to 0.4 % across the grain from 33 to 66 %. */
  "made_at"?: number;
  /** The finest mark of the ruler. Default: 1/16 in on inch rulers, 0.5 mm on millimetre rulers. */
  "ruler"?: string;
  /** Error of one score, plus or minus, instead of the bench's. From 0 to 10 mm. */
  "score_tolerance"?: string;
  /** The sheet that blanks are cut from: a size, or a name. From 10 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "sheet"?: string;
  /** Force all readings onto multiples of this mark. Default: the coarsest that fits. */
  "step"?: string;
  "stock"?: StockValue;
  /** Thickness of the contents in all. From 0.01 to 500 mm. */
  "thickness"?: string;
  /** How far the top edge is turned over to the inside. Default: 1/2 in on inch rulers, 15 mm on millimetre rulers. From 3 to 300 mm. */
  "turn_over"?: string;
  "unit"?: UnitValue;
  /** Relative humidity in percent where the piece is used. */
  "used_at"?: number;
  /** How much tighter than touching a lid or a drawer may be, since walls of paper bow. Default: one caliper, from 0.8 mm on nothing. From 0 to 5 mm. */
  "wall_give"?: string;
  /** How sure everything should go in, 0.5 to 0.999: the answer is the coarsest step that reaches it, else the surest. Default: the plainest numbers. */
  "wanted_chance"?: number;
  /** Width of the contents. Of several things it is 3 of 60 mm + 4 mm; of contents by name, 3 of them. From 3 to 2000 mm. */
  "width"?: string;
};
/** asks for: Measurements of a lidded-box. */
export type RequestSolveLiddedBox = {
  "bench"?: BenchValue;
  /** Caliper from which the stock does not give way: edges are trimmed instead of pressed in, scores cut half through, and what folds flat is refused. Default: 0.8 mm. From 0.01 to 10 mm. */
  "board_from"?: string;
  /** Thickness of one sheet of the paper. From 0.01 to 5 mm. */
  "caliper"?: string;
  /** How far the caliper of the pack may be off, plus or minus. Default: what the named stock states, else 7 % of the caliper. From 0 to 2 mm. */
  "caliper_tolerance"?: string;
  /** The greatest clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_max"?: string;
  /** The least clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_min"?: string;
  "contents"?: ContentsValue;
  /** How much the contents vary in every direction, plus or minus, or one way alone, such as -1/8 for what only shrinks. Default: what the named contents state, else nothing. From 0 to 10 mm. */
  "contents_tolerance"?: string;
  "corners"?: CornersValue;
  /** Error of one cut, plus or minus, instead of the bench's. From 0 to 10 mm. */
  "cut_tolerance"?: string;
  "fit"?: FitValue;
  /** What one fold takes up beside the caliper, half of it from each of its panels; negative where folds bulge. /v1/calibrate measures it. Default: 0. From 0 to 2 mm. */
  "fold_allowance"?: string;
  "grain"?: GrainValue;
  /** Mass of the paper in g/m2. Without a caliper the caliper is estimated from it. */
  "grammage"?: number;
  /** Height of the contents. From 3 to 2000 mm. */
  "height"?: string;
  "join"?: JoinValueSolve;
  /** How far the halves of a box in two pieces lap. Default: 1 in on inch rulers, 25 mm on millimetre rulers. From 5 to 300 mm. */
  "lap"?: string;
  /** How high the walls of the lid are; as high as those of the tray or a little less if not given. From 5 to 500 mm. */
  "lid_depth"?: string;
  "lid_fit"?: LidFitValue;
  /** Relative humidity in percent where the piece is made; with used_at, clearances are those where it is used, since sheets grow 0.1 to 0.2 % along and 0.2 to 0.4 % across the grain from 33 to 66 %. */
  "made_at"?: number;
  /** The finest mark of the ruler. Default: 1/16 in on inch rulers, 0.5 mm on millimetre rulers. */
  "ruler"?: string;
  /** Error of one score, plus or minus, instead of the bench's. From 0 to 10 mm. */
  "score_tolerance"?: string;
  /** The sheet that blanks are cut from: a size, or a name. From 10 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "sheet"?: string;
  /** Force all readings onto multiples of this mark. Default: the coarsest that fits. */
  "step"?: string;
  "stock"?: StockValue;
  /** How long the corner tabs are; as long as the walls are high, if there is room, if not given. From 5 to 500 mm. */
  "tab"?: string;
  /** Thickness of the contents in all. From 0.01 to 500 mm. */
  "thickness"?: string;
  "unit"?: UnitValue;
  /** Relative humidity in percent where the piece is used. */
  "used_at"?: number;
  /** How much tighter than touching a lid or a drawer may be, since walls of paper bow. Default: one caliper, from 0.8 mm on nothing. From 0 to 5 mm. */
  "wall_give"?: string;
  "walls"?: WallsValue;
  /** How sure everything should go in, 0.5 to 0.999: the answer is the coarsest step that reaches it, else the surest. Default: the plainest numbers. */
  "wanted_chance"?: number;
  /** Width of the contents. Of several things it is 3 of 60 mm + 4 mm; of contents by name, 3 of them. From 3 to 2000 mm. */
  "width"?: string;
};
/** asks for: Measurements of a mat-stack. */
export type RequestSolveMatStack = {
  "bench"?: BenchValue;
  /** Caliper from which the stock does not give way: edges are trimmed instead of pressed in, scores cut half through, and what folds flat is refused. Default: 0.8 mm. From 0.01 to 10 mm. */
  "board_from"?: string;
  /** Thickness of one sheet of the paper. From 0.01 to 5 mm. */
  "caliper"?: string;
  /** How far the caliper of the pack may be off, plus or minus. Default: what the named stock states, else 7 % of the caliper. From 0 to 2 mm. */
  "caliper_tolerance"?: string;
  /** The greatest clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_max"?: string;
  /** The least clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_min"?: string;
  "contents"?: ContentsValue;
  /** How much the contents vary in every direction, plus or minus, or one way alone, such as -1/8 for what only shrinks. Default: what the named contents state, else nothing. From 0 to 10 mm. */
  "contents_tolerance"?: string;
  /** Error of one cut, plus or minus, instead of the bench's. From 0 to 10 mm. */
  "cut_tolerance"?: string;
  "fit"?: FitValue;
  /** What one fold takes up beside the caliper, half of it from each of its panels; negative where folds bulge. /v1/calibrate measures it. Default: 0. From 0 to 2 mm. */
  "fold_allowance"?: string;
  "grain"?: GrainValue;
  /** Mass of the paper in g/m2. Without a caliper the caliper is estimated from it. */
  "grammage"?: number;
  /** Height of the contents. From 3 to 2000 mm. */
  "height"?: string;
  /** How many layers lie on the card. Default: 2. */
  "layers"?: number;
  /** Relative humidity in percent where the piece is made; with used_at, clearances are those where it is used, since sheets grow 0.1 to 0.2 % along and 0.2 to 0.4 % across the grain from 33 to 66 %. */
  "made_at"?: number;
  /** How much of each layer shows round the next; about 1/8 in (3 mm) if not given. From 1 to 300 mm. */
  "reveal"?: string;
  /** The finest mark of the ruler. Default: 1/16 in on inch rulers, 0.5 mm on millimetre rulers. */
  "ruler"?: string;
  /** Error of one score, plus or minus, instead of the bench's. From 0 to 10 mm. */
  "score_tolerance"?: string;
  /** The sheet that blanks are cut from: a size, or a name. From 10 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "sheet"?: string;
  /** Force all readings onto multiples of this mark. Default: the coarsest that fits. */
  "step"?: string;
  "stock"?: StockValue;
  /** Thickness of the contents in all. From 0.01 to 500 mm. */
  "thickness"?: string;
  "unit"?: UnitValue;
  /** Relative humidity in percent where the piece is used. */
  "used_at"?: number;
  /** How much tighter than touching a lid or a drawer may be, since walls of paper bow. Default: one caliper, from 0.8 mm on nothing. From 0 to 5 mm. */
  "wall_give"?: string;
  /** How sure everything should go in, 0.5 to 0.999: the answer is the coarsest step that reaches it, else the surest. Default: the plainest numbers. */
  "wanted_chance"?: number;
  /** Width of the contents. Of several things it is 3 of 60 mm + 4 mm; of contents by name, 3 of them. From 3 to 2000 mm. */
  "width"?: string;
};
/** asks for: Measurements of a design: own. */
export type RequestSolveOwn = {
  "bench"?: BenchValue;
  /** Caliper from which the stock does not give way: edges are trimmed instead of pressed in, scores cut half through, and what folds flat is refused. Default: 0.8 mm. From 0.01 to 10 mm. */
  "board_from"?: string;
  /** Thickness of one sheet of the paper. From 0.01 to 5 mm. */
  "caliper"?: string;
  /** How far the caliper of the pack may be off, plus or minus. Default: what the named stock states, else 7 % of the caliper. From 0 to 2 mm. */
  "caliper_tolerance"?: string;
  /** The greatest clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_max"?: string;
  /** The least clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_min"?: string;
  "contents"?: ContentsValue;
  /** How much the contents vary in every direction, plus or minus, or one way alone, such as -1/8 for what only shrinks. Default: what the named contents state, else nothing. From 0 to 10 mm. */
  "contents_tolerance"?: string;
  /** Error of one cut, plus or minus, instead of the bench's. From 0 to 10 mm. */
  "cut_tolerance"?: string;
  "design"?: DesignValue;
  "fit"?: FitValue;
  /** What one fold takes up beside the caliper, half of it from each of its panels; negative where folds bulge. /v1/calibrate measures it. Default: 0. From 0 to 2 mm. */
  "fold_allowance"?: string;
  "grain"?: GrainValue;
  /** Mass of the paper in g/m2. Without a caliper the caliper is estimated from it. */
  "grammage"?: number;
  /** Height of the contents. From 3 to 2000 mm. */
  "height"?: string;
  /** Relative humidity in percent where the piece is made; with used_at, clearances are those where it is used, since sheets grow 0.1 to 0.2 % along and 0.2 to 0.4 % across the grain from 33 to 66 %. */
  "made_at"?: number;
  /** The finest mark of the ruler. Default: 1/16 in on inch rulers, 0.5 mm on millimetre rulers. */
  "ruler"?: string;
  /** Error of one score, plus or minus, instead of the bench's. From 0 to 10 mm. */
  "score_tolerance"?: string;
  /** The sheet that blanks are cut from: a size, or a name. From 10 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "sheet"?: string;
  /** Force all readings onto multiples of this mark. Default: the coarsest that fits. */
  "step"?: string;
  "stock"?: StockValue;
  /** Thickness of the contents in all. From 0.01 to 500 mm. */
  "thickness"?: string;
  "unit"?: UnitValue;
  /** Relative humidity in percent where the piece is used. */
  "used_at"?: number;
  /** How much tighter than touching a lid or a drawer may be, since walls of paper bow. Default: one caliper, from 0.8 mm on nothing. From 0 to 5 mm. */
  "wall_give"?: string;
  /** How sure everything should go in, 0.5 to 0.999: the answer is the coarsest step that reaches it, else the surest. Default: the plainest numbers. */
  "wanted_chance"?: number;
  /** Width of the contents. Of several things it is 3 of 60 mm + 4 mm; of contents by name, 3 of them. From 3 to 2000 mm. */
  "width"?: string;
};
/** asks for: Measurements of a pillow-pack. */
export type RequestSolvePillowPack = {
  "bench"?: BenchValue;
  /** Caliper from which the stock does not give way: edges are trimmed instead of pressed in, scores cut half through, and what folds flat is refused. Default: 0.8 mm. From 0.01 to 10 mm. */
  "board_from"?: string;
  /** Thickness of one sheet of the paper. From 0.01 to 5 mm. */
  "caliper"?: string;
  /** How far the caliper of the pack may be off, plus or minus. Default: what the named stock states, else 7 % of the caliper. From 0 to 2 mm. */
  "caliper_tolerance"?: string;
  /** The greatest clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_max"?: string;
  /** The least clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_min"?: string;
  "contents"?: ContentsValue;
  /** How much the contents vary in every direction, plus or minus, or one way alone, such as -1/8 for what only shrinks. Default: what the named contents state, else nothing. From 0 to 10 mm. */
  "contents_tolerance"?: string;
  /** Error of one cut, plus or minus, instead of the bench's. From 0 to 10 mm. */
  "cut_tolerance"?: string;
  "fit"?: FitValue;
  /** What one fold takes up beside the caliper, half of it from each of its panels; negative where folds bulge. /v1/calibrate measures it. Default: 0. From 0 to 2 mm. */
  "fold_allowance"?: string;
  "grain"?: GrainValue;
  /** Mass of the paper in g/m2. Without a caliper the caliper is estimated from it. */
  "grammage"?: number;
  /** Height of the contents. From 3 to 2000 mm. */
  "height"?: string;
  /** How wide the glue lap is. Default: 1/2 in on inch rulers, 15 mm on millimetre rulers. From 3 to 300 mm. */
  "lap"?: string;
  /** Relative humidity in percent where the piece is made; with used_at, clearances are those where it is used, since sheets grow 0.1 to 0.2 % along and 0.2 to 0.4 % across the grain from 33 to 66 %. */
  "made_at"?: number;
  /** How high the pack is in the middle, centre to centre of the stock; the next half inch or 10 mm over one and a quarter of the thickness and an eighth of the width if not given. From 3 to 500 mm. */
  "middle_height"?: string;
  /** The finest mark of the ruler. Default: 1/16 in on inch rulers, 0.5 mm on millimetre rulers. */
  "ruler"?: string;
  /** Error of one score, plus or minus, instead of the bench's. From 0 to 10 mm. */
  "score_tolerance"?: string;
  /** The sheet that blanks are cut from: a size, or a name. From 10 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "sheet"?: string;
  /** Force all readings onto multiples of this mark. Default: the coarsest that fits. */
  "step"?: string;
  "stock"?: StockValue;
  /** Thickness of the contents in all. From 0.01 to 500 mm. */
  "thickness"?: string;
  "unit"?: UnitValue;
  /** Relative humidity in percent where the piece is used. */
  "used_at"?: number;
  /** How much tighter than touching a lid or a drawer may be, since walls of paper bow. Default: one caliper, from 0.8 mm on nothing. From 0 to 5 mm. */
  "wall_give"?: string;
  /** How sure everything should go in, 0.5 to 0.999: the answer is the coarsest step that reaches it, else the surest. Default: the plainest numbers. */
  "wanted_chance"?: number;
  /** Width of the contents. Of several things it is 3 of 60 mm + 4 mm; of contents by name, 3 of them. From 3 to 2000 mm. */
  "width"?: string;
};
/** asks for: Measurements of a pocket. */
export type RequestSolvePocket = {
  "bench"?: BenchValue;
  /** Caliper from which the stock does not give way: edges are trimmed instead of pressed in, scores cut half through, and what folds flat is refused. Default: 0.8 mm. From 0.01 to 10 mm. */
  "board_from"?: string;
  /** Thickness of one sheet of the paper. From 0.01 to 5 mm. */
  "caliper"?: string;
  /** How far the caliper of the pack may be off, plus or minus. Default: what the named stock states, else 7 % of the caliper. From 0 to 2 mm. */
  "caliper_tolerance"?: string;
  /** The greatest clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_max"?: string;
  /** The least clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_min"?: string;
  "contents"?: ContentsValue;
  /** How much the contents vary in every direction, plus or minus, or one way alone, such as -1/8 for what only shrinks. Default: what the named contents state, else nothing. From 0 to 10 mm. */
  "contents_tolerance"?: string;
  /** Error of one cut, plus or minus, instead of the bench's. From 0 to 10 mm. */
  "cut_tolerance"?: string;
  "fit"?: FitValue;
  /** What one fold takes up beside the caliper, half of it from each of its panels; negative where folds bulge. /v1/calibrate measures it. Default: 0. From 0 to 2 mm. */
  "fold_allowance"?: string;
  "grain"?: GrainValue;
  /** Mass of the paper in g/m2. Without a caliper the caliper is estimated from it. */
  "grammage"?: number;
  "gusset"?: GussetValue;
  /** Height of the contents. From 3 to 2000 mm. */
  "height"?: string;
  /** Relative humidity in percent where the piece is made; with used_at, clearances are those where it is used, since sheets grow 0.1 to 0.2 % along and 0.2 to 0.4 % across the grain from 33 to 66 %. */
  "made_at"?: number;
  /** How high the page is; up to 1/2 in more than the contents and the pocket if not given. From 10 to 2000 mm. */
  "page_height"?: string;
  /** How high the pocket is. Default: 3 in on inch rulers, 75 mm on millimetre rulers. From 10 to 1000 mm. */
  "pocket_height"?: string;
  /** How far in the angled relief cuts come at the free edge of a flap. Default: 1/2 in on inch rulers, 10 mm on millimetre rulers. From 0.5 to 300 mm. */
  "relief"?: string;
  /** The finest mark of the ruler. Default: 1/16 in on inch rulers, 0.5 mm on millimetre rulers. */
  "ruler"?: string;
  /** Error of one score, plus or minus, instead of the bench's. From 0 to 10 mm. */
  "score_tolerance"?: string;
  /** The sheet that blanks are cut from: a size, or a name. From 10 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "sheet"?: string;
  /** How wide each glued side flap is. Default: 1 in on inch rulers, 25 mm on millimetre rulers. From 5 to 500 mm. */
  "side_flap"?: string;
  /** Force all readings onto multiples of this mark. Default: the coarsest that fits. */
  "step"?: string;
  "stock"?: StockValue;
  /** Thickness of the contents in all. From 0.01 to 500 mm. */
  "thickness"?: string;
  "unit"?: UnitValue;
  /** Relative humidity in percent where the piece is used. */
  "used_at"?: number;
  /** How much tighter than touching a lid or a drawer may be, since walls of paper bow. Default: one caliper, from 0.8 mm on nothing. From 0 to 5 mm. */
  "wall_give"?: string;
  /** How sure everything should go in, 0.5 to 0.999: the answer is the coarsest step that reaches it, else the surest. Default: the plainest numbers. */
  "wanted_chance"?: number;
  /** Width of the contents. Of several things it is 3 of 60 mm + 4 mm; of contents by name, 3 of them. From 3 to 2000 mm. */
  "width"?: string;
};
/** asks for: Measurements of several enclosures round one another. */
export type RequestSolvePortfolio = {
  "bench"?: BenchValue;
  /** Caliper from which the stock does not give way: edges are trimmed instead of pressed in, scores cut half through, and what folds flat is refused. Default: 0.8 mm. From 0.01 to 10 mm. */
  "board_from"?: string;
  /** Thickness of one sheet of the paper. From 0.01 to 5 mm. */
  "caliper"?: string;
  /** How far the caliper of the pack may be off, plus or minus. Default: what the named stock states, else 7 % of the caliper. From 0 to 2 mm. */
  "caliper_tolerance"?: string;
  /** The greatest clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_max"?: string;
  /** The least clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_min"?: string;
  "contents"?: ContentsValue;
  /** How much the contents vary in every direction, plus or minus, or one way alone, such as -1/8 for what only shrinks. Default: what the named contents state, else nothing. From 0 to 10 mm. */
  "contents_tolerance"?: string;
  /** Error of one cut, plus or minus, instead of the bench's. From 0 to 10 mm. */
  "cut_tolerance"?: string;
  "fit"?: FitValue;
  /** What one fold takes up beside the caliper, half of it from each of its panels; negative where folds bulge. /v1/calibrate measures it. Default: 0. From 0 to 2 mm. */
  "fold_allowance"?: string;
  "grain"?: GrainValue;
  /** Mass of the paper in g/m2. Without a caliper the caliper is estimated from it. */
  "grammage"?: number;
  /** Height of the contents. From 3 to 2000 mm. */
  "height"?: string;
  "layers"?: Array<LayersValueSolve>;
  /** Relative humidity in percent where the piece is made; with used_at, clearances are those where it is used, since sheets grow 0.1 to 0.2 % along and 0.2 to 0.4 % across the grain from 33 to 66 %. */
  "made_at"?: number;
  /** The finest mark of the ruler. Default: 1/16 in on inch rulers, 0.5 mm on millimetre rulers. */
  "ruler"?: string;
  /** Error of one score, plus or minus, instead of the bench's. From 0 to 10 mm. */
  "score_tolerance"?: string;
  /** The sheet that blanks are cut from: a size, or a name. From 10 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "sheet"?: string;
  /** Force all readings onto multiples of this mark. Default: the coarsest that fits. */
  "step"?: string;
  "stock"?: StockValue;
  /** Thickness of the contents in all. From 0.01 to 500 mm. */
  "thickness"?: string;
  "unit"?: UnitValue;
  /** Relative humidity in percent where the piece is used. */
  "used_at"?: number;
  /** How much tighter than touching a lid or a drawer may be, since walls of paper bow. Default: one caliper, from 0.8 mm on nothing. From 0 to 5 mm. */
  "wall_give"?: string;
  /** How sure everything should go in, 0.5 to 0.999: the answer is the coarsest step that reaches it, else the surest. Default: the plainest numbers. */
  "wanted_chance"?: number;
  /** Width of the contents. Of several things it is 3 of 60 mm + 4 mm; of contents by name, 3 of them. From 3 to 2000 mm. */
  "width"?: string;
};
/** asks for: Measurements of a prism-box. */
export type RequestSolvePrismBox = {
  "around"?: AroundValue;
  "bench"?: BenchValue;
  /** Caliper from which the stock does not give way: edges are trimmed instead of pressed in, scores cut half through, and what folds flat is refused. Default: 0.8 mm. From 0.01 to 10 mm. */
  "board_from"?: string;
  /** Thickness of one sheet of the paper. From 0.01 to 5 mm. */
  "caliper"?: string;
  /** How far the caliper of the pack may be off, plus or minus. Default: what the named stock states, else 7 % of the caliper. From 0 to 2 mm. */
  "caliper_tolerance"?: string;
  /** The greatest clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_max"?: string;
  /** The least clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_min"?: string;
  "contents"?: ContentsValue;
  /** How much the contents vary in every direction, plus or minus, or one way alone, such as -1/8 for what only shrinks. Default: what the named contents state, else nothing. From 0 to 10 mm. */
  "contents_tolerance"?: string;
  /** Error of one cut, plus or minus, instead of the bench's. From 0 to 10 mm. */
  "cut_tolerance"?: string;
  "fit"?: FitValue;
  /** What one fold takes up beside the caliper, half of it from each of its panels; negative where folds bulge. /v1/calibrate measures it. Default: 0. From 0 to 2 mm. */
  "fold_allowance"?: string;
  "grain"?: GrainValue;
  /** Mass of the paper in g/m2. Without a caliper the caliper is estimated from it. */
  "grammage"?: number;
  /** Height of the contents. From 3 to 2000 mm. */
  "height"?: string;
  /** How wide the glue laps and the flaps are; the plainest width that there is room for if not given. From 3 to 300 mm. */
  "lap"?: string;
  /** How high the walls of the lid are; as high as those of the tray or a little less if not given. From 5 to 500 mm. */
  "lid_depth"?: string;
  "lid_fit"?: LidFitValueSolve;
  /** Relative humidity in percent where the piece is made; with used_at, clearances are those where it is used, since sheets grow 0.1 to 0.2 % along and 0.2 to 0.4 % across the grain from 33 to 66 %. */
  "made_at"?: number;
  /** The finest mark of the ruler. Default: 1/16 in on inch rulers, 0.5 mm on millimetre rulers. */
  "ruler"?: string;
  /** Error of one score, plus or minus, instead of the bench's. From 0 to 10 mm. */
  "score_tolerance"?: string;
  /** The sheet that blanks are cut from: a size, or a name. From 10 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "sheet"?: string;
  /** How many sides the box has. Default: 6. */
  "sides"?: number;
  /** Force all readings onto multiples of this mark. Default: the coarsest that fits. */
  "step"?: string;
  "stock"?: StockValue;
  /** Thickness of the contents in all. From 0.01 to 500 mm. */
  "thickness"?: string;
  "unit"?: UnitValue;
  /** Relative humidity in percent where the piece is used. */
  "used_at"?: number;
  /** How much tighter than touching a lid or a drawer may be, since walls of paper bow. Default: one caliper, from 0.8 mm on nothing. From 0 to 5 mm. */
  "wall_give"?: string;
  /** How sure everything should go in, 0.5 to 0.999: the answer is the coarsest step that reaches it, else the surest. Default: the plainest numbers. */
  "wanted_chance"?: number;
  /** Width of the contents. Of several things it is 3 of 60 mm + 4 mm; of contents by name, 3 of them. From 3 to 2000 mm. */
  "width"?: string;
};
/** asks for: Measurements of a sleeve. */
export type RequestSolveSleeve = {
  "bench"?: BenchValue;
  /** Caliper from which the stock does not give way: edges are trimmed instead of pressed in, scores cut half through, and what folds flat is refused. Default: 0.8 mm. From 0.01 to 10 mm. */
  "board_from"?: string;
  /** Thickness of one sheet of the paper. From 0.01 to 5 mm. */
  "caliper"?: string;
  /** How far the caliper of the pack may be off, plus or minus. Default: what the named stock states, else 7 % of the caliper. From 0 to 2 mm. */
  "caliper_tolerance"?: string;
  /** The greatest clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_max"?: string;
  /** The least clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_min"?: string;
  "contents"?: ContentsValue;
  /** How much the contents vary in every direction, plus or minus, or one way alone, such as -1/8 for what only shrinks. Default: what the named contents state, else nothing. From 0 to 10 mm. */
  "contents_tolerance"?: string;
  /** Error of one cut, plus or minus, instead of the bench's. From 0 to 10 mm. */
  "cut_tolerance"?: string;
  "fit"?: FitValue;
  /** What one fold takes up beside the caliper, half of it from each of its panels; negative where folds bulge. /v1/calibrate measures it. Default: 0. From 0 to 2 mm. */
  "fold_allowance"?: string;
  "grain"?: GrainValue;
  /** Mass of the paper in g/m2. Without a caliper the caliper is estimated from it. */
  "grammage"?: number;
  /** Height of the contents. From 3 to 2000 mm. */
  "height"?: string;
  "join"?: JoinValue;
  /** How wide the lap is that is glued inside the front. Default: 1/2 in on inch rulers, 15 mm on millimetre rulers. From 3 to 300 mm. */
  "lap"?: string;
  /** Relative humidity in percent where the piece is made; with used_at, clearances are those where it is used, since sheets grow 0.1 to 0.2 % along and 0.2 to 0.4 % across the grain from 33 to 66 %. */
  "made_at"?: number;
  /** Radius of a half-round thumb notch in the middle of the open edge; none if not given. From 3 to 300 mm. */
  "notch"?: string;
  "notch_faces"?: NotchFacesValue;
  /** How much of the contents stands out at the open ends; none if not given. From 0 to 1000 mm. */
  "reveal"?: string;
  /** The finest mark of the ruler. Default: 1/16 in on inch rulers, 0.5 mm on millimetre rulers. */
  "ruler"?: string;
  /** Error of one score, plus or minus, instead of the bench's. From 0 to 10 mm. */
  "score_tolerance"?: string;
  "scores"?: ScoresValue;
  "shape"?: ShapeValue;
  /** The sheet that blanks are cut from: a size, or a name. From 10 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "sheet"?: string;
  /** Force all readings onto multiples of this mark. Default: the coarsest that fits. */
  "step"?: string;
  "stock"?: StockValue;
  /** Thickness of the contents in all. From 0.01 to 500 mm. */
  "thickness"?: string;
  "unit"?: UnitValue;
  /** Relative humidity in percent where the piece is used. */
  "used_at"?: number;
  /** How much tighter than touching a lid or a drawer may be, since walls of paper bow. Default: one caliper, from 0.8 mm on nothing. From 0 to 5 mm. */
  "wall_give"?: string;
  /** How sure everything should go in, 0.5 to 0.999: the answer is the coarsest step that reaches it, else the surest. Default: the plainest numbers. */
  "wanted_chance"?: number;
  /** Width of the contents. Of several things it is 3 of 60 mm + 4 mm; of contents by name, 3 of them. From 3 to 2000 mm. */
  "width"?: string;
};
/** asks for: Measurements of a slipcase. */
export type RequestSolveSlipcase = {
  "bench"?: BenchValue;
  /** Caliper from which the stock does not give way: edges are trimmed instead of pressed in, scores cut half through, and what folds flat is refused. Default: 0.8 mm. From 0.01 to 10 mm. */
  "board_from"?: string;
  /** Thickness of one sheet of the paper. From 0.01 to 5 mm. */
  "caliper"?: string;
  /** How far the caliper of the pack may be off, plus or minus. Default: what the named stock states, else 7 % of the caliper. From 0 to 2 mm. */
  "caliper_tolerance"?: string;
  /** The greatest clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_max"?: string;
  /** The least clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_min"?: string;
  "contents"?: ContentsValue;
  /** How much the contents vary in every direction, plus or minus, or one way alone, such as -1/8 for what only shrinks. Default: what the named contents state, else nothing. From 0 to 10 mm. */
  "contents_tolerance"?: string;
  /** Error of one cut, plus or minus, instead of the bench's. From 0 to 10 mm. */
  "cut_tolerance"?: string;
  "fit"?: FitValue;
  /** What one fold takes up beside the caliper, half of it from each of its panels; negative where folds bulge. /v1/calibrate measures it. Default: 0. From 0 to 2 mm. */
  "fold_allowance"?: string;
  "grain"?: GrainValue;
  /** Mass of the paper in g/m2. Without a caliper the caliper is estimated from it. */
  "grammage"?: number;
  /** Height of the contents. From 3 to 2000 mm. */
  "height"?: string;
  /** How wide the laps are that are glued inside the front. Default: 1/2 in on inch rulers, 15 mm on millimetre rulers. From 3 to 300 mm. */
  "lap"?: string;
  /** Relative humidity in percent where the piece is made; with used_at, clearances are those where it is used, since sheets grow 0.1 to 0.2 % along and 0.2 to 0.4 % across the grain from 33 to 66 %. */
  "made_at"?: number;
  /** Radius of a half-round thumb notch in the middle of the open edge; none if not given. From 3 to 300 mm. */
  "notch"?: string;
  "notch_faces"?: NotchFacesValue;
  "open"?: OpenValue;
  /** How much of the contents stands out at the open ends; none if not given. From 0 to 1000 mm. */
  "reveal"?: string;
  /** The finest mark of the ruler. Default: 1/16 in on inch rulers, 0.5 mm on millimetre rulers. */
  "ruler"?: string;
  /** Error of one score, plus or minus, instead of the bench's. From 0 to 10 mm. */
  "score_tolerance"?: string;
  /** The sheet that blanks are cut from: a size, or a name. From 10 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "sheet"?: string;
  /** Force all readings onto multiples of this mark. Default: the coarsest that fits. */
  "step"?: string;
  "stock"?: StockValue;
  /** Thickness of the contents in all. From 0.01 to 500 mm. */
  "thickness"?: string;
  "unit"?: UnitValue;
  /** Relative humidity in percent where the piece is used. */
  "used_at"?: number;
  /** How much tighter than touching a lid or a drawer may be, since walls of paper bow. Default: one caliper, from 0.8 mm on nothing. From 0 to 5 mm. */
  "wall_give"?: string;
  /** How sure everything should go in, 0.5 to 0.999: the answer is the coarsest step that reaches it, else the surest. Default: the plainest numbers. */
  "wanted_chance"?: number;
  /** Width of the contents. Of several things it is 3 of 60 mm + 4 mm; of contents by name, 3 of them. From 3 to 2000 mm. */
  "width"?: string;
};
/** asks for: Measurements of a slotted-band. */
export type RequestSolveSlottedBand = {
  /** How high the band is. Default: 1 1/2 in on inch rulers, 40 mm on millimetre rulers. From 5 to 1000 mm. */
  "band_height"?: string;
  "bench"?: BenchValue;
  /** Caliper from which the stock does not give way: edges are trimmed instead of pressed in, scores cut half through, and what folds flat is refused. Default: 0.8 mm. From 0.01 to 10 mm. */
  "board_from"?: string;
  /** Thickness of one sheet of the paper. From 0.01 to 5 mm. */
  "caliper"?: string;
  /** How far the caliper of the pack may be off, plus or minus. Default: what the named stock states, else 7 % of the caliper. From 0 to 2 mm. */
  "caliper_tolerance"?: string;
  /** The greatest clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_max"?: string;
  /** The least clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_min"?: string;
  "contents"?: ContentsValue;
  /** How much the contents vary in every direction, plus or minus, or one way alone, such as -1/8 for what only shrinks. Default: what the named contents state, else nothing. From 0 to 10 mm. */
  "contents_tolerance"?: string;
  /** Error of one cut, plus or minus, instead of the bench's. From 0 to 10 mm. */
  "cut_tolerance"?: string;
  "fit"?: FitValue;
  /** What one fold takes up beside the caliper, half of it from each of its panels; negative where folds bulge. /v1/calibrate measures it. Default: 0. From 0 to 2 mm. */
  "fold_allowance"?: string;
  "grain"?: GrainValue;
  /** Mass of the paper in g/m2. Without a caliper the caliper is estimated from it. */
  "grammage"?: number;
  /** Height of the contents. From 3 to 2000 mm. */
  "height"?: string;
  /** Relative humidity in percent where the piece is made; with used_at, clearances are those where it is used, since sheets grow 0.1 to 0.2 % along and 0.2 to 0.4 % across the grain from 33 to 66 %. */
  "made_at"?: number;
  /** How far from the left edge of the front the two ends meet; in the middle if not given. From 3 to 2000 mm. */
  "meeting"?: string;
  /** Thickness of the ornament's stock; that of the band if not given. From 0.01 to 25 mm. */
  "ornament_caliper"?: string;
  /** Height of that shape; as wide as high if not given, a drawn one as it is drawn. From 6 to 1000 mm. */
  "ornament_height"?: string;
  /** Outline of that shape, which is cut in half along its middle: one of the words, or one closed line as SVG path data. Default: rectangle. */
  "ornament_shape"?: string;
  /** Width of a shape that is glued half and half over the closure; none if not given. From 6 to 1000 mm. */
  "ornament_width"?: string;
  /** The finest mark of the ruler. Default: 1/16 in on inch rulers, 0.5 mm on millimetre rulers. */
  "ruler"?: string;
  /** Error of one score, plus or minus, instead of the bench's. From 0 to 10 mm. */
  "score_tolerance"?: string;
  "scores"?: ScoresValue;
  /** The sheet that blanks are cut from: a size, or a name. From 10 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "sheet"?: string;
  /** How much deeper than half of the height each slit may be, at most; at least a quarter of it. Default: 1/8 in on inch rulers, 3 mm on millimetre rulers. From 0.4 to 25 mm. */
  "slit_play"?: string;
  /** Force all readings onto multiples of this mark. Default: the coarsest that fits. */
  "step"?: string;
  "stock"?: StockValue;
  /** How far each locking tab stands up. Default: 1/2 in on inch rulers, 15 mm on millimetre rulers. From 3 to 300 mm. */
  "tab"?: string;
  /** Thickness of the contents in all. From 0.01 to 500 mm. */
  "thickness"?: string;
  "unit"?: UnitValue;
  /** Relative humidity in percent where the piece is used. */
  "used_at"?: number;
  /** How much tighter than touching a lid or a drawer may be, since walls of paper bow. Default: one caliper, from 0.8 mm on nothing. From 0 to 5 mm. */
  "wall_give"?: string;
  /** How sure everything should go in, 0.5 to 0.999: the answer is the coarsest step that reaches it, else the surest. Default: the plainest numbers. */
  "wanted_chance"?: number;
  /** Width of the contents. Of several things it is 3 of 60 mm + 4 mm; of contents by name, 3 of them. From 3 to 2000 mm. */
  "width"?: string;
};
/** asks for: Measurements of a tray. */
export type RequestSolveTray = {
  "bench"?: BenchValue;
  /** Caliper from which the stock does not give way: edges are trimmed instead of pressed in, scores cut half through, and what folds flat is refused. Default: 0.8 mm. From 0.01 to 10 mm. */
  "board_from"?: string;
  /** Thickness of one sheet of the paper. From 0.01 to 5 mm. */
  "caliper"?: string;
  /** How far the caliper of the pack may be off, plus or minus. Default: what the named stock states, else 7 % of the caliper. From 0 to 2 mm. */
  "caliper_tolerance"?: string;
  /** The greatest clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_max"?: string;
  /** The least clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_min"?: string;
  "contents"?: ContentsValue;
  /** How much the contents vary in every direction, plus or minus, or one way alone, such as -1/8 for what only shrinks. Default: what the named contents state, else nothing. From 0 to 10 mm. */
  "contents_tolerance"?: string;
  "corners"?: CornersValue;
  /** Error of one cut, plus or minus, instead of the bench's. From 0 to 10 mm. */
  "cut_tolerance"?: string;
  /** How high the walls are; up to 1/4 in (6 mm) more than the contents if not given. From 5 to 500 mm. */
  "depth"?: string;
  "fit"?: FitValue;
  /** What one fold takes up beside the caliper, half of it from each of its panels; negative where folds bulge. /v1/calibrate measures it. Default: 0. From 0 to 2 mm. */
  "fold_allowance"?: string;
  "grain"?: GrainValue;
  /** Mass of the paper in g/m2. Without a caliper the caliper is estimated from it. */
  "grammage"?: number;
  /** Height of the contents. From 3 to 2000 mm. */
  "height"?: string;
  "join"?: JoinValueSolve;
  /** How far the halves of a box in two pieces lap. Default: 1 in on inch rulers, 25 mm on millimetre rulers. From 5 to 300 mm. */
  "lap"?: string;
  /** Relative humidity in percent where the piece is made; with used_at, clearances are those where it is used, since sheets grow 0.1 to 0.2 % along and 0.2 to 0.4 % across the grain from 33 to 66 %. */
  "made_at"?: number;
  /** The finest mark of the ruler. Default: 1/16 in on inch rulers, 0.5 mm on millimetre rulers. */
  "ruler"?: string;
  /** Error of one score, plus or minus, instead of the bench's. From 0 to 10 mm. */
  "score_tolerance"?: string;
  /** The sheet that blanks are cut from: a size, or a name. From 10 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "sheet"?: string;
  /** Force all readings onto multiples of this mark. Default: the coarsest that fits. */
  "step"?: string;
  "stock"?: StockValue;
  /** How long the corner tabs are; as long as the walls are high, if there is room, if not given. From 5 to 500 mm. */
  "tab"?: string;
  /** Thickness of the contents in all. From 0.01 to 500 mm. */
  "thickness"?: string;
  "unit"?: UnitValue;
  /** Relative humidity in percent where the piece is used. */
  "used_at"?: number;
  /** How much tighter than touching a lid or a drawer may be, since walls of paper bow. Default: one caliper, from 0.8 mm on nothing. From 0 to 5 mm. */
  "wall_give"?: string;
  "walls"?: WallsValue;
  /** How sure everything should go in, 0.5 to 0.999: the answer is the coarsest step that reaches it, else the surest. Default: the plainest numbers. */
  "wanted_chance"?: number;
  /** Width of the contents. Of several things it is 3 of 60 mm + 4 mm; of contents by name, 3 of them. From 3 to 2000 mm. */
  "width"?: string;
};
/** asks for: Measurements of a tuck-carton. */
export type RequestSolveTuckCarton = {
  "bench"?: BenchValue;
  /** Caliper from which the stock does not give way: edges are trimmed instead of pressed in, scores cut half through, and what folds flat is refused. Default: 0.8 mm. From 0.01 to 10 mm. */
  "board_from"?: string;
  /** Thickness of one sheet of the paper. From 0.01 to 5 mm. */
  "caliper"?: string;
  /** How far the caliper of the pack may be off, plus or minus. Default: what the named stock states, else 7 % of the caliper. From 0 to 2 mm. */
  "caliper_tolerance"?: string;
  /** The greatest clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_max"?: string;
  /** The least clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_min"?: string;
  "contents"?: ContentsValue;
  /** How much the contents vary in every direction, plus or minus, or one way alone, such as -1/8 for what only shrinks. Default: what the named contents state, else nothing. From 0 to 10 mm. */
  "contents_tolerance"?: string;
  /** Error of one cut, plus or minus, instead of the bench's. From 0 to 10 mm. */
  "cut_tolerance"?: string;
  /** How long each dust flap is; shorter than the default if there is no room for that. Default: 1/2 in on inch rulers, 15 mm on millimetre rulers. From 3 to 300 mm. */
  "dust_flap"?: string;
  "fit"?: FitValue;
  /** What one fold takes up beside the caliper, half of it from each of its panels; negative where folds bulge. /v1/calibrate measures it. Default: 0. From 0 to 2 mm. */
  "fold_allowance"?: string;
  /** How long the slits at both ends of a tuck flap's score are, whose corners then catch on the dust flaps; none if not given. From 1 to 100 mm. */
  "friction_slit"?: string;
  "grain"?: GrainValue;
  /** Mass of the paper in g/m2. Without a caliper the caliper is estimated from it. */
  "grammage"?: number;
  /** Height of the contents. From 3 to 2000 mm. */
  "height"?: string;
  "join"?: JoinValue;
  /** How wide the glue lap is. Default: 1/2 in on inch rulers, 15 mm on millimetre rulers. From 3 to 300 mm. */
  "lap"?: string;
  /** Relative humidity in percent where the piece is made; with used_at, clearances are those where it is used, since sheets grow 0.1 to 0.2 % along and 0.2 to 0.4 % across the grain from 33 to 66 %. */
  "made_at"?: number;
  /** The finest mark of the ruler. Default: 1/16 in on inch rulers, 0.5 mm on millimetre rulers. */
  "ruler"?: string;
  /** Error of one score, plus or minus, instead of the bench's. From 0 to 10 mm. */
  "score_tolerance"?: string;
  /** The sheet that blanks are cut from: a size, or a name. From 10 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "sheet"?: string;
  /** Force all readings onto multiples of this mark. Default: the coarsest that fits. */
  "step"?: string;
  "stock"?: StockValue;
  "style"?: StyleValue;
  /** How far the sides of a tuck flap run in towards its free edge. Default: 1/2 in on inch rulers, 10 mm on millimetre rulers. From 0 to 300 mm. */
  "taper"?: string;
  /** Thickness of the contents in all. From 0.01 to 500 mm. */
  "thickness"?: string;
  /** How far each tuck flap goes in, at most 1.2 times as far as its lid is long; shorter than the default if the lid asks for that. Default: 1/2 in on inch rulers, 15 mm on millimetre rulers. From 5 to 300 mm. */
  "tuck"?: string;
  "unit"?: UnitValue;
  /** Relative humidity in percent where the piece is used. */
  "used_at"?: number;
  /** How much tighter than touching a lid or a drawer may be, since walls of paper bow. Default: one caliper, from 0.8 mm on nothing. From 0 to 5 mm. */
  "wall_give"?: string;
  /** How sure everything should go in, 0.5 to 0.999: the answer is the coarsest step that reaches it, else the surest. Default: the plainest numbers. */
  "wanted_chance"?: number;
  /** Width of the contents. Of several things it is 3 of 60 mm + 4 mm; of contents by name, 3 of them. From 3 to 2000 mm. */
  "width"?: string;
};
/** asks for: What can be told of a paper. */
export type RequestStock = {
  /** Mass of a ream of the grade's basis size, in pounds; needs grade. */
  "basis_weight"?: number;
  /** Thickness of one sheet. From 0.01 to 5 mm. */
  "caliper"?: string;
  "grade"?: GradeValue;
  /** Mass in g/m2. */
  "grammage"?: number;
  /** Thickness of one sheet in thousandths of an inch, as on packets of cover and board. */
  "points"?: number;
  /** Size of a sheet, or its name. From 10 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "sheet"?: string;
  /** Mass of one sheet in grams; needs sheet. */
  "sheet_mass"?: number;
  /** Height of several sheets pressed together; needs stack_sheets. From 0.01 to 1000 mm. */
  "stack"?: string;
  /** How many sheets the stack has. */
  "stack_sheets"?: number;
  "stock"?: StockValueStock;
  "unit"?: UnitValue;
};
/** asks for: What suits a thing. */
export type RequestSuggest = {
  "bench"?: BenchValue;
  /** Caliper from which the stock does not give way: edges are trimmed instead of pressed in, scores cut half through, and what folds flat is refused. Default: 0.8 mm. From 0.01 to 10 mm. */
  "board_from"?: string;
  /** Thickness of one sheet of the paper. From 0.01 to 5 mm. */
  "caliper"?: string;
  /** How far the caliper of the pack may be off, plus or minus. Default: what the named stock states, else 7 % of the caliper. From 0 to 2 mm. */
  "caliper_tolerance"?: string;
  /** The size class of the post that it should go as, or a cheaper one. Default: any. */
  "class"?: string;
  /** The greatest clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_max"?: string;
  /** The least clearance wanted along an axis, in total, instead of a named fit. From 0 to 10 mm. */
  "clearance_min"?: string;
  "contents"?: ContentsValue;
  /** How much the contents vary in every direction, plus or minus, or one way alone, such as -1/8 for what only shrinks. Default: what the named contents state, else nothing. From 0 to 10 mm. */
  "contents_tolerance"?: string;
  /** Error of one cut, plus or minus, instead of the bench's. From 0 to 10 mm. */
  "cut_tolerance"?: string;
  "fit"?: FitValue;
  /** What one fold takes up beside the caliper, half of it from each of its panels; negative where folds bulge. /v1/calibrate measures it. Default: 0. From 0 to 2 mm. */
  "fold_allowance"?: string;
  "grain"?: GrainValue;
  /** Mass of the paper in g/m2. Without a caliper the caliper is estimated from it. */
  "grammage"?: number;
  /** Height of the contents. From 3 to 2000 mm. */
  "height"?: string;
  "language"?: LanguageValueSuggest;
  /** Relative humidity in percent where the piece is made; with used_at, clearances are those where it is used, since sheets grow 0.1 to 0.2 % along and 0.2 to 0.4 % across the grain from 33 to 66 %. */
  "made_at"?: number;
  /** How long cutting and scoring may take, at 40 seconds a stop and 15 a cut. */
  "minutes"?: number;
  "pictures"?: PicturesValueSuggest;
  "post"?: PostValueSuggest;
  /** The finest mark of the ruler. Default: 1/16 in on inch rulers, 0.5 mm on millimetre rulers. */
  "ruler"?: string;
  /** Error of one score, plus or minus, instead of the bench's. From 0 to 10 mm. */
  "score_tolerance"?: string;
  "shape"?: ShapeValueSuggest;
  /** The sheet that blanks are cut from: a size, or a name. From 10 to 5000 mm. Names are listed at /v1/sheets/sizes. */
  "sheet"?: string;
  /** Force all readings onto multiples of this mark. Default: the coarsest that fits. */
  "step"?: string;
  "stock"?: StockValue;
  /** Thickness of the contents in all. From 0.01 to 500 mm. */
  "thickness"?: string;
  "unit"?: UnitValue;
  /** Relative humidity in percent where the piece is used. */
  "used_at"?: number;
  /** How much tighter than touching a lid or a drawer may be, since walls of paper bow. Default: one caliper, from 0.8 mm on nothing. From 0 to 5 mm. */
  "wall_give"?: string;
  /** How sure everything should go in, 0.5 to 0.999: the answer is the coarsest step that reaches it, else the surest. Default: the plainest numbers. */
  "wanted_chance"?: number;
  /** Width of the contents. Of several things it is 3 of 60 mm + 4 mm; of contents by name, 3 of them. From 3 to 2000 mm. */
  "width"?: string;
  "wish"?: Array<WishValue>;
};
/** asks for: Blanks per sheet, and cut plans. */
export type RequestYield = {
  /** Width and height of the blank. From 1 to 10000 mm. */
  "blank"?: string;
  /** How many are wanted. Default: as many as one sheet gives. */
  "count"?: number;
  /** How long to look for a proof that no plan needs less, in milliseconds. Default: 500. */
  "effort_ms"?: number;
  "grain"?: GrainValueYield;
  "items"?: Array<ItemsValue>;
  /** What a cut takes away; a trimmer takes nothing. Default: 0 in on inch rulers, 0 mm on millimetre rulers. From 0 to 20 mm. */
  "kerf"?: string;
  "language"?: LanguageValueYield;
  /** Trimmed off every side of a sheet first. Default: 0 in on inch rulers, 0 mm on millimetre rulers. From 0 to 500 mm. */
  "margin"?: string;
  "minimize"?: MinimizeValue;
  /** What the blank is called in the plan. */
  "name"?: string;
  /** An offcut is usable if neither side is shorter. Default: 2 in on inch rulers, 50 mm on millimetre rulers. From 0 to 10000 mm. */
  "offcut_least"?: string;
  /** The paper that it is cut from: one that a sheet names. */
  "paper"?: string;
  "pictures"?: PicturesValueYield;
  "prefer"?: PreferValue;
  /** When it is cut: 1 first. Default: after all that have one. */
  "priority"?: number;
  /** The finest mark of the ruler that cuts are set to. Default: 1/16 in on inch rulers, 0.5 mm on millimetre rulers. */
  "ruler"?: string;
  "sheet"?: Array<SheetValueYield>;
  "sheet_grain"?: SheetGrainValue;
  /** So many more than count, for trials. Default: none. */
  "spares"?: number;
  /** Most directions of cutting one after another, from a trimmed sheet to a blank. Default: as many as need be. */
  "stages"?: number;
  "theme"?: ThemeValueYield;
  /** The longest cut that the trimmer makes. Default: as long as need be. From 10 to 10000 mm. */
  "trimmer_length"?: string;
  "unit"?: UnitValue;
};
export type Reveal = {
  "on": string;
  "x": Length;
  "y": Length;
};
/** How much of the contents stands out at the open ends; none if not given. From 0 to 1000 mm. */
export type RevealValue = string;
/** How much of each layer shows round the next; about 1/8 in (3 mm) if not given. From 1 to 300 mm. */
export type RevealValueSolve = string;
/** How long the slit for a ribbon is in the middle of the tray's top wall; none if not given. From 3 to 300 mm. */
export type RibbonSlitValue = string;
/** It does not bend. Default: no. */
export type RigidValue = "no" | "yes";
/** Where each score across the height lies, from the bottom, piece after piece; may be given several times. From 0 to 5000 mm. */
export type RisesValue = string;
/** How high row 1 is, to the middle of its strips; a share of what is left if not given. From 5 to 1000 mm. */
export type Row1Value = string;
/** How high row 2 is, to the middle of its strips; a share of what is left if not given. From 5 to 1000 mm. */
export type Row2Value = string;
/** How high row 3 is, to the middle of its strips; a share of what is left if not given. From 5 to 1000 mm. */
export type Row3Value = string;
/** How high row 4 is, to the middle of its strips; a share of what is left if not given. From 5 to 1000 mm. */
export type Row4Value = string;
/** How high row 5 is, to the middle of its strips; a share of what is left if not given. From 5 to 1000 mm. */
export type Row5Value = string;
/** How high row 6 is, to the middle of its strips; a share of what is left if not given. From 5 to 1000 mm. */
export type Row6Value = string;
/** How high row 7 is, to the middle of its strips; a share of what is left if not given. From 5 to 1000 mm. */
export type Row7Value = string;
/** How high row 8 is, to the middle of its strips; a share of what is left if not given. From 5 to 1000 mm. */
export type Row8Value = string;
/** How high every row but the last is, to the middle of its strip; all the same if not given. From 5 to 1000 mm. */
export type RowHeightValue = string;
/** How many cells lie along the height. Default: 2. */
export type RowsValue = number;
export type Ruler = {
  "lengths": Array<RulerLength>;
  "links": SelfLink;
  "unit": "in" | "mm";
};
export type RulerLength = {
  "in": number;
  "mm": number;
  "readings": Array<RulerReading>;
  /** as given */
  "text": string;
};
export type RulerReading = {
  "at": Length;
  "step": string;
};
/** The finest mark of the ruler. Default: 1/16 in on inch rulers, 0.5 mm on millimetre rulers. */
export type RulerValue = string;
/** The finest mark that everything was read to. Default: 1/16 in on inch rulers, 0.5 mm on millimetre rulers. */
export type RulerValueCalibrate = string;
/** The finest mark of the ruler that cuts are set to. Default: 1/16 in on inch rulers, 0.5 mm on millimetre rulers. */
export type RulerValueYield = string;
export type Score = {
  "across": "width" | "height" | "diagonal";
  /** degrees folded when closed */
  "angle": number;
  "at": Length;
  "fold": "valley" | "mountain";
  "from": "left" | "bottom";
  /** HalfCut is the side on which a score of board is cut half through; paper is pressed. */
  "half_cut"?: "inside" | "outside";
  "name": string;
  /** plainer when the blank is turned end for end */
  "or"?: Turned;
};
/** The stop that strips were scored at, set anew for each. From 2 to 5000 mm. */
export type ScoreAtValue = string;
/** Error of one score, plus or minus, instead of the bench's. From 0 to 10 mm. */
export type ScoreToleranceValue = string;
/** How far apart two scores on a strip are. From 2 to 5000 mm. */
export type ScoredApartValue = string;
/** Scores at each side: one for thin contents, two for thick ones; auto takes one up to 1/8 in (3 mm). Default: auto. */
export type ScoresValue = "auto" | "one" | "two";
/** How far from the edge each score lies; five or more, ten are better. From 0.1 to 5000 mm. */
export type ScoresValueCalibrate = string;
export type SelfLink = {
  "self": string;
};
export type Setting = {
  "across": "width" | "height";
  "at": Length;
  "from": "left" | "right" | "bottom" | "top";
  /** of each cut */
  "length": Length;
  /** what is cut off: all of the first part, then all of the next */
  "low": Array<number>;
  /** cut alike, in one stack if that is not too thick */
  "parts": Array<number>;
  "repeat": number;
  /** what is left of each part */
  "rest": Array<number>;
  /** takes a margin off */
  "trim": boolean;
};
/** What the contents are: a box, or round as a jar is, as wide as thick, with a strip rolled round it. Nothing is scored then. Default: box. */
export type ShapeValue = "box" | "round";
/** Its outline. A square is a rectangle. Default: rectangle. */
export type ShapeValueMail = "rectangle" | "other";
/** What the contents are: a box, or round as a jar is, as wide as thick. Kinds that can be are rolled round it then. Default: box. */
export type ShapeValueSuggest = "box" | "round";
/** The side of the sheet that the grain runs along. Needed if an item must keep it. */
export type SheetGrainValue = "width" | "height";
export type SheetList = {
  "sheets": Array<SheetPreset>;
};
/** Mass of one sheet in grams; needs sheet. */
export type SheetMassValue = number;
export type SheetPart = {
  "height": Length;
  "width": Length;
  "x": Length;
  "y": Length;
};
export type SheetPreset = {
  "height": Length;
  "name": string;
  /** how far the side that differs more is off */
  "off"?: Length;
  "source": string;
  "title": string;
  /** its width is compared with the height asked for */
  "turned"?: boolean;
  "width": Length;
};
export type SheetSize = {
  "height": Length;
  /** its place in the request's list, from 0 */
  "number": number;
  /** of the stock */
  "offcut"?: boolean;
  "paper"?: string;
  "width": Length;
};
/** The sheet that blanks are cut from: a size, or a name. From 10 to 5000 mm. Names are listed at /v1/sheets/sizes. */
export type SheetValue = string;
/** Size of a sheet, or its name. From 10 to 5000 mm. Names are listed at /v1/sheets/sizes. */
export type SheetValueStock = string;
/** The sheet that blanks are cut from: a size, or a name; or several, each with its price, its grain and the number in stock. */
export type SheetValueYield = {
  /** Sheets in stock. Default: as many as needed. */
  "available"?: number;
  /** The side that the grain runs along, if another than sheet_grain. */
  "grain"?: "width" | "height";
  /** An offcut of earlier work, used up before whole sheets are. Needs available. Default: no. */
  "offcut"?: "no" | "yes";
  /** The paper, if there are several: items that name it are cut from it. */
  "paper"?: string;
  /** Of one sheet, with at most four decimals, in any currency that all sizes share. */
  "price"?: number;
  /** Width and height, or a name. From 10 to 10000 mm. Names are listed at /v1/sheets/sizes. */
  "size"?: string;
};
/** How wide each glued side flap is. Default: 1 in on inch rulers, 25 mm on millimetre rulers. From 5 to 500 mm. */
export type SideFlapValue = string;
/** How many sides the box has. Default: 6. */
export type SidesValue = number;
export type SizeBeside = {
  "name": string;
  "now": Length;
  "was": Length;
};
/** How much width and height vary, plus or minus. Default: nothing. From 0 to 50 mm. */
export type SizeToleranceValue = string;
/** How the tray slides in the sleeve: the clearance between them along the width and the thickness; auto is the closest of the others that goes together 95 times in 100 with this bench, or as often as wanted_chance says. Default: auto. */
export type SlideValue = "auto" | "snug" | "easy" | "loose";
/** How much deeper than half of the height each slit may be, at most; at least a quarter of it. Default: 1/8 in on inch rulers, 3 mm on millimetre rulers. From 0.4 to 25 mm. */
export type SlitPlayValue = string;
/** Slits without a width, or slots; auto slits stock under 1/32 in (0.8 mm). Default: auto. */
export type SlotsValue = "auto" | "slit" | "slot";
export type Solution = {
  /** finer steps */
  "alternatives": Array<Alternative>;
  "fit": Array<Fit>;
  "given": Record<string, Given>;
  "kind": string;
  "links": Links;
  /** Order is the order of work. It is given only to a request whose show or pick names it. */
  "order"?: Array<WorkStep>;
  /** of a slotted band's closure, if one was asked for */
  "ornament"?: Ornament;
  "outside": Outside;
  "pieces": Array<Piece>;
  "proof": Proof;
  /** each different stop: for cuts, then for scores, those that serve the fewest first */
  "settings": Array<Stop>;
  /** all readings are multiples of it */
  "step": string;
  /** that all of it goes together */
  "sure": Sure;
  "unit": "in" | "mm";
  "warnings": Array<Warning>;
  /** of the sheet, if the request names one */
  "yield"?: Yields;
};
/** So many more than count, for trials. Default: none. */
export type SparesValue = number;
/** How many sheets lie in a stack. */
export type StackCountValue = number;
/** How many sheets the stack has. */
export type StackSheetsValue = number;
/** Height of several sheets pressed together; needs stack_sheets. From 0.01 to 1000 mm. */
export type StackValue = string;
/** How high the stack is, pressed flat. From 0.1 to 1000 mm. */
export type StackValueCalibrate = string;
/** Most directions of cutting one after another, from a trimmed sheet to a blank. Default: as many as need be. */
export type StagesValue = number;
export type StepRef = {
  "plan": number;
  "step": number;
};
/** Force all readings onto multiples of this mark. Default: the coarsest that fits. */
export type StepValue = string;
/** Whether the work is told step by step. Without it the lists, notes and warnings are written in a fraction of the time. Default: yes. */
export type StepsValue = "yes" | "no";
export type StockList = {
  "stocks": Array<StockPreset>;
};
export type StockPreset = {
  "caliper": Length;
  "caliper_range": Array<Length>;
  "caliper_tolerance"?: Length;
  /** ought to be measured */
  "estimated": boolean;
  /** g/m2 */
  "grammage"?: number;
  "name": string;
  "source": string;
  "title": string;
};
/** The paper, by name, instead of its caliper. Names are listed at /v1/stocks. */
export type StockValue = "offset-40" | "offset-50" | "offset-60" | "offset-70" | "offset-80" | "recycled-offset-40" | "recycled-offset-45" | "recycled-offset-50" | "recycled-offset-60" | "gloss-book-38" | "high-bulk-writing-17.5" | "high-bulk-writing-21" | "index-90" | "index-110" | "index-140" | "index-170" | "folder-105" | "folder-150" | "folder-165" | "folder-250" | "coated-cover-8pt" | "coated-cover-10pt" | "coated-cover-12pt" | "coated-cover-15pt" | "coated-cover-24pt" | "cast-coated-cover-10pt" | "display-board-18pt" | "display-board-30pt" | "display-board-48pt" | "cover-65" | "cover-80" | "cover-90" | "cover-100" | "cover-105" | "cover-120";
/** The paper, by name. Names are listed at /v1/stocks. */
export type StockValueStock = "offset-40" | "offset-50" | "offset-60" | "offset-70" | "offset-80" | "recycled-offset-40" | "recycled-offset-45" | "recycled-offset-50" | "recycled-offset-60" | "gloss-book-38" | "high-bulk-writing-17.5" | "high-bulk-writing-21" | "index-90" | "index-110" | "index-140" | "index-170" | "folder-105" | "folder-150" | "folder-165" | "folder-250" | "coated-cover-8pt" | "coated-cover-10pt" | "coated-cover-12pt" | "coated-cover-15pt" | "coated-cover-24pt" | "cast-coated-cover-10pt" | "display-board-18pt" | "display-board-30pt" | "display-board-48pt" | "cover-65" | "cover-80" | "cover-90" | "cover-100" | "cover-105" | "cover-120";
export type Stop = {
  /** from the edge */
  "at": Length;
  /** whole paper thicknesses to add */
  "papers"?: number;
  "serves": Array<Use>;
  "tool": "cut" | "score";
};
export type StyleRead = {
  "choice": string;
  "name": string;
};
/** Straight: both lids hang on the back; reverse: the bottom one hangs on the front. Default: straight. */
export type StyleValue = "straight" | "reverse";
export type Suggestion = {
  /** of its largest piece */
  "blank"?: Blank;
  /** that all of it goes together */
  "chance"?: number;
  "kind": string;
  "link": string;
  /** for them, at 40 seconds a stop and 15 each */
  "minutes"?: number;
  /** wishes that it does not keep */
  "missed": Array<string>;
  "outside"?: Outside;
  /** SVG of the finished enclosure, if pictures were asked for */
  "picture"?: string;
  /** how many there are to cut */
  "pieces"?: number;
  /** if one was named */
  "post"?: Posted;
  /** that one of it takes, 0 if a blank is larger; absent if no sheet is named */
  "sheets"?: number;
  "step"?: string;
  /** cuts and scores */
  "strokes"?: number;
  "title": string;
  /** what speaks for its place or, if it does not work, what keeps it from that */
  "why": Array<Reason>;
  "works": boolean;
};
export type Suggestions = {
  /** of /v1/designs that work, the best first, without pictures */
  "designs": Array<Suggestion>;
  "given": Record<string, Given>;
  /** the best first */
  "kinds": Array<Suggestion>;
  "links": SelfLink;
  "unit": "in" | "mm";
  /** how many kinds work; they stand first */
  "works": number;
};
export type Sure = {
  "assumes": Array<string>;
  "chance": number;
  "of": string;
  /** absent where nothing has to go in */
  "weakest"?: Weakest;
  /** Within is how far the chance may be off by the way it is worked out. */
  "within": number;
  /** Words says the same as people say it, with lengths that a ruler has. */
  "words": string;
};
export type SureSize = {
  "nominal": Length;
  /** root-sum-square of the errors, three standard deviations */
  "rss": Array<Length>;
  "worst_case": Array<Length>;
};
export type SureSizes = {
  "height": SureSize;
  "thickness": SureSize;
  "width": SureSize;
};
/** How far each locking tab stands up. Default: 1/2 in on inch rulers, 15 mm on millimetre rulers. From 3 to 300 mm. */
export type TabValue = string;
/** How long the corner tabs are; as long as the walls are high, if there is room, if not given. From 5 to 500 mm. */
export type TabValueSolve = string;
/** How far the sides of a tuck flap run in towards its free edge. Default: 1/2 in on inch rulers, 10 mm on millimetre rulers. From 0 to 300 mm. */
export type TaperValue = string;
/** Dark lines on light paper, or the other way round; of SVG and PNG. Default: light. */
export type ThemeValue = "light" | "dark";
/** Dark lines on light paper, or the other way round; of SVG. Default: light. */
export type ThemeValueYield = "light" | "dark";
/** How much the thickness varies, plus or minus. Default: nothing. From 0 to 50 mm. */
export type ThicknessToleranceValue = string;
/** Thickness of the contents in all. From 0.01 to 500 mm. */
export type ThicknessValue = string;
/** Thickness of the finished piece with its contents. Without it the answer says what it may be. From 0.01 to 1000 mm. */
export type ThicknessValueMail = string;
/** Things to compare with one holder, instead of contents: at most 10000. */
export type ThingsValue = {
  /** What goes inside, by name, instead of width and height. Names are listed at /v1/contents. */
  "contents"?: "id-1" | "id-2" | "id-3" | "id-000" | "business-card-eu" | "business-card-us" | "photo-2r" | "photo-3r" | "photo-4r" | "photo-5r" | "photo-6r" | "photo-8r" | "photo-10r" | "sheet-a4" | "sheet-a5" | "sheet-a6" | "sheet-a7" | "envelope-c4" | "envelope-c5" | "envelope-c6" | "envelope-c7" | "envelope-c6-c5" | "envelope-c7-c6" | "envelope-dl" | "envelope-b4" | "envelope-b5" | "envelope-b6" | "envelope-us-a1" | "envelope-us-a2" | "envelope-us-a6" | "envelope-us-a7" | "envelope-us-a8" | "envelope-us-a9" | "envelope-us-a10" | "envelope-us-6-1-4" | "envelope-us-6-3-4" | "envelope-us-7" | "envelope-us-monarch" | "envelope-us-8-5-8" | "envelope-us-9" | "envelope-us-10" | "envelope-us-11" | "envelope-us-12" | "envelope-us-14" | "envelope-us-16" | "envelope-us-coin-1" | "envelope-us-coin-3" | "envelope-us-coin-4" | "envelope-us-coin-5" | "envelope-us-coin-6" | "envelope-us-coin-7" | "tasting-cards" | "tea-sachets" | "tea-tin" | "honey-jar";
  /** How much the contents vary in every direction, plus or minus, or one way alone, such as -1/8 for what only shrinks. Default: what the named contents state, else nothing. From 0 to 10 mm. */
  "contents_tolerance"?: string;
  /** Height of the contents. From 3 to 2000 mm. */
  "height"?: string;
  /** What the thing is called in the answer. */
  "id"?: string;
  /** Thickness of the contents in all. From 0.01 to 500 mm. */
  "thickness"?: string;
  /** Width of the contents. Of several things it is 3 of 60 mm + 4 mm; of contents by name, 3 of them. From 3 to 2000 mm. */
  "width"?: string;
};
/** Answer with so many at the most, the best. */
export type TopValue = number;
/** The longest cut that the trimmer makes. Default: as long as need be. From 10 to 10000 mm. */
export type TrimmerLengthValue = string;
/** How far each tuck flap goes in, at most 1.2 times as far as its lid is long; shorter than the default if the lid asks for that. Default: 1/2 in on inch rulers, 15 mm on millimetre rulers. From 5 to 300 mm. */
export type TuckValue = string;
/** How far the top edge is turned over to the inside. Default: 1/2 in on inch rulers, 15 mm on millimetre rulers. From 3 to 300 mm. */
export type TurnOverValue = string;
/** Whether width and height of a thing may change places, in holders that were measured inside. Default: no. */
export type TurnValue = "no" | "yes";
export type Turned = {
  "at": Length;
  "from": "right" | "top";
};
/** How many whole turns the strip makes round the block. */
export type TurnsValue = number;
/** It is not equally thick all over: a tin, a pen or a knot shows through. Default: no. */
export type UnevenValue = "no" | "yes";
/** The unit of numbers without one, and of the answer. There is no default: give it, or write the unit with the lengths. */
export type UnitValue = "in" | "mm";
/** The units of the guide. Default: those of the ruler. */
export type UnitsValue = "in" | "mm" | "both";
export type UsableOffcut = {
  "count": number;
  "height": Length;
  "width": Length;
};
export type Use = {
  /** a side of the blank is so long; a score lies there; a slit or slot is so deep, or lies there */
  "do": "blank" | "score" | "depth" | "place";
  /** that it is measured from */
  "edge": "left" | "right" | "bottom" | "top";
  "names"?: Array<string>;
  "piece": string;
};
/** Relative humidity in percent where the piece is used. */
export type UsedAtValue = number;
/** What the drawing is for: measured, with every length that is set on a ruler; template, to print at true scale and cut out; cutter, lines for a machine; step, one step of the work; finished, the enclosure round its contents; spread, how its clearances come out against what was wanted. Default: measured. */
export type ViewValue = "measured" | "template" | "cutter" | "step" | "finished" | "spread";
/** How much tighter than touching a lid or a drawer may be, since walls of paper bow. Default: one caliper, from 0.8 mm on nothing. From 0 to 5 mm. */
export type WallGiveValue = string;
/** Double walls of the tray are rolled in over the tabs. Default: single. */
export type WallsValue = "single" | "double";
/** How sure everything should go in, 0.5 to 0.999: the answer is the coarsest step that reaches it, else the surest. Default: the plainest numbers. */
export type WantedChanceValue = number;
export type Warning = {
  "code": string;
  "detail": string;
  /** Try is the address of a calculation without the warning, if one is known. */
  "try"?: string;
};
export type Weakest = {
  "axis": "width" | "height" | "thickness" | "diagonal";
  "between"?: string;
  /** of this one alone */
  "chance": number;
  /** of a portfolio */
  "layer"?: string;
};
/** How far apart they are afterwards across the grain. From 1 to 20000 mm. */
export type WetAcrossValue = string;
/** How far apart they are afterwards along the grain. From 1 to 20000 mm. */
export type WetAlongValue = string;
/** Width of the contents. Of several things it is 3 of 60 mm + 4 mm; of contents by name, 3 of them. From 3 to 2000 mm. */
export type WidthValue = string;
/** Width of the finished piece, outside. From 1 to 3000 mm. */
export type WidthValueMail = string;
/** What is wished for, may be given several times: reusable, opens and closes without tearing; no-glue; few-cuts, the fewest first; one-sheet, all of it out of one sheet. Kinds that do not keep a wish come later. */
export type WishValue = "reusable" | "no-glue" | "few-cuts" | "one-sheet";
export type WorkGlue = {
  "onto": string;
  "onto_piece": string;
  /** that has the glue */
  "panel": string;
  "piece": string;
};
export type WorkLock = {
  "a": string;
  "b": string;
};
export type WorkMove = {
  "by_mm": number;
  /** its inside faces the other way than that of the first piece */
  "turned"?: boolean;
  /** unit direction: x and y as on the first piece's blank, z out of its inside */
  "way": Array<number>;
  "what": string;
};
export type WorkStep = {
  /** so many like moves are this one step */
  "alike"?: number;
  "do": "cut" | "score" | "slit" | "fold" | "glue" | "put in" | "join" | "lock" | "close" | "dress";
  /** by which the stock must give way meanwhile */
  "flex_mm"?: number;
  /** panels that come to lie on their glue */
  "glues"?: Array<WorkGlue>;
  /** cuts that are hooked into one another */
  "locks"?: Array<WorkLock>;
  /** of whole pieces, or of the contents */
  "moves"?: Array<WorkMove>;
  /** that it is done to */
  "pieces": Array<string>;
  /** from 1: the drawing's picture counts alike */
  "step": number;
  /** panels that are folded */
  "turns"?: Array<WorkTurn>;
};
export type WorkTurn = {
  "fold": "valley" | "mountain";
  /** folded so far before */
  "from_deg": number;
  /** what has one number moves together */
  "group": number;
  /** that moves */
  "panel": string;
  /** at equal times, where it does not turn evenly */
  "path_deg"?: Array<number>;
  "piece": string;
  "score": string;
  "to_deg": number;
};
/** How long a piece of the strip the turns took. From 1 to 20000 mm. */
export type WoundValue = string;
export type Yield = {
  /** of all sheets that are cut, if they have prices */
  "cost"?: number;
  /** every setting of the trimmer over all plans, in order */
  "cut_list": Array<YieldSetting>;
  "items": Array<YieldItem>;
  "links": YieldLinks;
  /** nothing needs less: whole sheets, or cost if that is kept small */
  "lower_bound": number;
  /** blanks that one sheet gives at most, of a single blank */
  "per_sheet"?: number;
  /** SVG of the sheets, if pictures were asked for */
  "picture"?: string;
  "plans": Array<CutPlan>;
  "proof": string;
  /** no plan needs less, or gives more */
  "proven": boolean;
  /** that cuts are set to */
  "ruler": string;
  /** how many are cut, offcuts of the stock among them */
  "sheets": number;
  /** how many of them are such offcuts */
  "stock_offcuts"?: number;
  "unit": "in" | "mm";
  /** no side shorter than offcut_least, the largest first */
  "usable_offcuts": Array<UsableOffcut>;
  "used": number;
  /** of the paper that is cut */
  "used_percent": number;
  "warnings": Array<Warning>;
  "work": YieldWork;
};
export type YieldItem = {
  "grain": "any" | "width" | "height";
  "height": Length;
  "made": number;
  "name": string;
  "paper"?: string;
  /** all of it is made when so many sheets are cut, in the order of plans */
  "ready": number;
  /** made beside them, for trials */
  "spares"?: number;
  /** absent: as many as one sheet gives */
  "wanted"?: number;
  "width": Length;
};
export type YieldLinks = {
  "picture": string;
  "self": string;
};
export type YieldSetting = {
  "at": Length;
  "cuts": number;
  "steps": Array<StepRef>;
};
export type YieldWork = {
  "cuts": number;
  /** positions that the trimmer is set to, one after another */
  "settings": number;
  /** most directions of cutting one after another, from a trimmed sheet to a blank */
  "stages": number;
  /** of a part between two cuts */
  "turns": number;
};
export type Yields = {
  "pieces": Array<PieceYield>;
  "sheet": Blank;
};

/** What adapt is asked, by kind. */
export interface AdaptNames {
  "band": RequestAdaptBand;
  "diagonal-envelope": RequestAdaptDiagonalEnvelope;
  "dividers": RequestAdaptDividers;
  "drawer-box": RequestAdaptDrawerBox;
  "envelope": RequestAdaptEnvelope;
  "folded-card": RequestAdaptFoldedCard;
  "gusset-bag": RequestAdaptGussetBag;
  "lidded-box": RequestAdaptLiddedBox;
  "mat-stack": RequestAdaptMatStack;
  "pillow-pack": RequestAdaptPillowPack;
  "pocket": RequestAdaptPocket;
  "prism-box": RequestAdaptPrismBox;
  "sleeve": RequestAdaptSleeve;
  "slipcase": RequestAdaptSlipcase;
  "slotted-band": RequestAdaptSlottedBand;
  "tray": RequestAdaptTray;
  "tuck-carton": RequestAdaptTuckCarton;
}

/** What adapt answers, by kind. */
export interface AdaptAnswers {
  "band": Adapted;
  "diagonal-envelope": Adapted;
  "dividers": Adapted;
  "drawer-box": Adapted;
  "envelope": Adapted;
  "folded-card": Adapted;
  "gusset-bag": Adapted;
  "lidded-box": Adapted;
  "mat-stack": Adapted;
  "pillow-pack": Adapted;
  "pocket": Adapted;
  "prism-box": Adapted;
  "sleeve": Adapted;
  "slipcase": Adapted;
  "slotted-band": Adapted;
  "tray": Adapted;
  "tuck-carton": Adapted;
}

/** What check is asked, by kind. */
export interface CheckNames {
  "band": RequestCheckBand;
  "diagonal-envelope": RequestCheckDiagonalEnvelope;
  "dividers": RequestCheckDividers;
  "drawer-box": RequestCheckDrawerBox;
  "envelope": RequestCheckEnvelope;
  "folded-card": RequestCheckFoldedCard;
  "gusset-bag": RequestCheckGussetBag;
  "lidded-box": RequestCheckLiddedBox;
  "mat-stack": RequestCheckMatStack;
  "own": RequestCheckOwn;
  "pillow-pack": RequestCheckPillowPack;
  "pocket": RequestCheckPocket;
  "portfolio": RequestCheckPortfolio;
  "prism-box": RequestCheckPrismBox;
  "sleeve": RequestCheckSleeve;
  "slipcase": RequestCheckSlipcase;
  "slotted-band": RequestCheckSlottedBand;
  "tray": RequestCheckTray;
  "tuck-carton": RequestCheckTuckCarton;
}

/** What check answers, by kind. */
export interface CheckAnswers {
  "band": Check;
  "diagonal-envelope": Check;
  "dividers": Check;
  "drawer-box": Check;
  "envelope": Check;
  "folded-card": Check;
  "gusset-bag": Check;
  "lidded-box": Check;
  "mat-stack": Check;
  "own": Check;
  "pillow-pack": Check;
  "pocket": Check;
  "portfolio": PortfolioCheck;
  "prism-box": Check;
  "sleeve": Check;
  "slipcase": Check;
  "slotted-band": Check;
  "tray": Check;
  "tuck-carton": Check;
}

/** What drawing is asked, by kind. */
export interface DrawingNames {
  "band": RequestDrawingBand;
  "diagonal-envelope": RequestDrawingDiagonalEnvelope;
  "dividers": RequestDrawingDividers;
  "drawer-box": RequestDrawingDrawerBox;
  "envelope": RequestDrawingEnvelope;
  "folded-card": RequestDrawingFoldedCard;
  "gusset-bag": RequestDrawingGussetBag;
  "lidded-box": RequestDrawingLiddedBox;
  "mat-stack": RequestDrawingMatStack;
  "own": RequestDrawingOwn;
  "pillow-pack": RequestDrawingPillowPack;
  "pocket": RequestDrawingPocket;
  "portfolio": RequestDrawingPortfolio;
  "prism-box": RequestDrawingPrismBox;
  "sleeve": RequestDrawingSleeve;
  "slipcase": RequestDrawingSlipcase;
  "slotted-band": RequestDrawingSlottedBand;
  "tray": RequestDrawingTray;
  "tuck-carton": RequestDrawingTuckCarton;
}

/** What drawing answers, by kind. */
export interface DrawingAnswers {
  "band": string;
  "diagonal-envelope": string;
  "dividers": string;
  "drawer-box": string;
  "envelope": string;
  "folded-card": string;
  "gusset-bag": string;
  "lidded-box": string;
  "mat-stack": string;
  "own": string;
  "pillow-pack": string;
  "pocket": string;
  "portfolio": string;
  "prism-box": string;
  "sleeve": string;
  "slipcase": string;
  "slotted-band": string;
  "tray": string;
  "tuck-carton": string;
}

/** What guide is asked, by kind. */
export interface GuideNames {
  "band": RequestGuideBand;
  "diagonal-envelope": RequestGuideDiagonalEnvelope;
  "dividers": RequestGuideDividers;
  "drawer-box": RequestGuideDrawerBox;
  "envelope": RequestGuideEnvelope;
  "folded-card": RequestGuideFoldedCard;
  "gusset-bag": RequestGuideGussetBag;
  "lidded-box": RequestGuideLiddedBox;
  "mat-stack": RequestGuideMatStack;
  "own": RequestGuideOwn;
  "pillow-pack": RequestGuidePillowPack;
  "pocket": RequestGuidePocket;
  "portfolio": RequestGuidePortfolio;
  "prism-box": RequestGuidePrismBox;
  "sleeve": RequestGuideSleeve;
  "slipcase": RequestGuideSlipcase;
  "slotted-band": RequestGuideSlottedBand;
  "tray": RequestGuideTray;
  "tuck-carton": RequestGuideTuckCarton;
}

/** What guide answers, by kind. */
export interface GuideAnswers {
  "band": Guide;
  "diagonal-envelope": Guide;
  "dividers": Guide;
  "drawer-box": Guide;
  "envelope": Guide;
  "folded-card": Guide;
  "gusset-bag": Guide;
  "lidded-box": Guide;
  "mat-stack": Guide;
  "own": Guide;
  "pillow-pack": Guide;
  "pocket": Guide;
  "portfolio": Guide;
  "prism-box": Guide;
  "sleeve": Guide;
  "slipcase": Guide;
  "slotted-band": Guide;
  "tray": Guide;
  "tuck-carton": Guide;
}

/** What solve is asked, by kind. */
export interface SolveNames {
  "band": RequestSolveBand;
  "diagonal-envelope": RequestSolveDiagonalEnvelope;
  "dividers": RequestSolveDividers;
  "drawer-box": RequestSolveDrawerBox;
  "envelope": RequestSolveEnvelope;
  "folded-card": RequestSolveFoldedCard;
  "gusset-bag": RequestSolveGussetBag;
  "lidded-box": RequestSolveLiddedBox;
  "mat-stack": RequestSolveMatStack;
  "own": RequestSolveOwn;
  "pillow-pack": RequestSolvePillowPack;
  "pocket": RequestSolvePocket;
  "portfolio": RequestSolvePortfolio;
  "prism-box": RequestSolvePrismBox;
  "sleeve": RequestSolveSleeve;
  "slipcase": RequestSolveSlipcase;
  "slotted-band": RequestSolveSlottedBand;
  "tray": RequestSolveTray;
  "tuck-carton": RequestSolveTuckCarton;
}

/** What solve answers, by kind. */
export interface SolveAnswers {
  "band": Solution;
  "diagonal-envelope": Solution;
  "dividers": Solution;
  "drawer-box": Solution;
  "envelope": Solution;
  "folded-card": Solution;
  "gusset-bag": Solution;
  "lidded-box": Solution;
  "mat-stack": Solution;
  "own": Solution;
  "pillow-pack": Solution;
  "pocket": Solution;
  "portfolio": Portfolio;
  "prism-box": Solution;
  "sleeve": Solution;
  "slipcase": Solution;
  "slotted-band": Solution;
  "tray": Solution;
  "tuck-carton": Solution;
}

/** A format that is no JSON. */
export type Format = "csv" | "xml" | "text" | "markdown" | "html" | "svg" | "pdf" | "png" | "dxf" | "fold" | "glb";

/** How to ask; format names another than JSON, post asks by POST. */
export interface How { format?: Format; signal?: AbortSignal; post?: boolean }

/** Names that narrow the answer: those of pick and show have another type than the whole. */
export interface Narrowing { show?: string; pick?: string; decimal?: "point" | "comma" }

/** One calculation of a batch: the path of its call, an id that comes back, and its names. */
export interface Line { call?: string; kind?: string; id?: string; [name: string]: unknown }

/** The answer to one line, or its problem. */
export interface LineAnswer { line: number; id?: string; status: number; answer?: unknown; problem?: Problem }

/** What the service says is wrong (RFC 9457). */
export class CreasefitProblem extends Error {
  status: number;
  problem: { [name in keyof Problem]?: Problem[name] };
  errors: NonNullable<Problem["errors"]>;
}

export interface Settings { fetch?: typeof fetch; tries?: number; headers?: Record<string, string> }

/** The service at an address; by default where this module comes from. */
export function creasefit(base?: string | URL, settings?: Settings): Creasefit;

/** One function a call. */
export interface Creasefit {
  batch(lines: Iterable<Line>, names?: Record<string, string>, how?: { signal?: AbortSignal }): AsyncGenerator<LineAnswer>;
  table(text: string, names?: Record<string, string>, how?: { signal?: AbortSignal }): Promise<string>;
  adapt<K extends keyof AdaptNames>(kind: K, names: AdaptNames[K] & Narrowing, how: How & { format: Format }): Promise<string | Blob>;
  adapt<K extends keyof AdaptNames>(kind: K, names: AdaptNames[K] & Narrowing, how?: How): Promise<AdaptAnswers[K]>;
  check<K extends keyof CheckNames>(kind: K, names: CheckNames[K] & Narrowing, how: How & { format: Format }): Promise<string | Blob>;
  check<K extends keyof CheckNames>(kind: K, names: CheckNames[K] & Narrowing, how?: How): Promise<CheckAnswers[K]>;
  drawing<K extends keyof DrawingNames>(kind: K, names: DrawingNames[K] & Narrowing, how: How & { format: Format }): Promise<string | Blob>;
  drawing<K extends keyof DrawingNames>(kind: K, names: DrawingNames[K] & Narrowing, how?: How): Promise<DrawingAnswers[K]>;
  guide<K extends keyof GuideNames>(kind: K, names: GuideNames[K] & Narrowing, how: How & { format: Format }): Promise<string | Blob>;
  guide<K extends keyof GuideNames>(kind: K, names: GuideNames[K] & Narrowing, how?: How): Promise<GuideAnswers[K]>;
  solve<K extends keyof SolveNames>(kind: K, names: SolveNames[K] & Narrowing, how: How & { format: Format }): Promise<string | Blob>;
  solve<K extends keyof SolveNames>(kind: K, names: SolveNames[K] & Narrowing, how?: How): Promise<SolveAnswers[K]>;
  calibrate(names: RequestCalibrate & Narrowing, how: How & { format: Format }): Promise<string | Blob>;
  calibrate(names: RequestCalibrate & Narrowing, how?: How): Promise<Calibration>;
  mail(names: RequestMail & Narrowing, how: How & { format: Format }): Promise<string | Blob>;
  mail(names: RequestMail & Narrowing, how?: How): Promise<Mail>;
  match(names: RequestMatch & Narrowing, how: How & { format: Format }): Promise<string | Blob>;
  match(names: RequestMatch & Narrowing, how?: How): Promise<Matches>;
  ruler(names: RequestRuler & Narrowing, how: How & { format: Format }): Promise<string | Blob>;
  ruler(names: RequestRuler & Narrowing, how?: How): Promise<Ruler>;
  stock(names: RequestStock & Narrowing, how: How & { format: Format }): Promise<string | Blob>;
  stock(names: RequestStock & Narrowing, how?: How): Promise<Paper>;
  suggest(names: RequestSuggest & Narrowing, how: How & { format: Format }): Promise<string | Blob>;
  suggest(names: RequestSuggest & Narrowing, how?: How): Promise<Suggestions>;
  yield(names: RequestYield & Narrowing, how: How & { format: Format }): Promise<string | Blob>;
  yield(names: RequestYield & Narrowing, how?: How): Promise<Yield>;
  benches(how?: How): Promise<BenchList>;
  contents(how?: How): Promise<ContentsList>;
  designs(how?: How): Promise<DesignList>;
  kind(kind: string, how?: How): Promise<Kind>;
  kindDesign(kind: string, how?: How): Promise<Design>;
  kinds(how?: How): Promise<KindList>;
  limits(how?: How): Promise<Limits>;
  posts(how?: How): Promise<PostList>;
  sheets(how?: How): Promise<SheetList>;
  stocks(how?: How): Promise<StockList>;
}
