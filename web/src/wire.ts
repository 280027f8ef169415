// Made by tools/desk_api.py from the API's description: the shapes that the page and the server say to each other.

/**
 * A comment after a move and its comments; for a root, before the first move.
 */
export interface AddComment {
  op: "add_comment";
  place: string;
  text: string;
}

/**
 * Moves after a place, following those already there.
 */
export interface AddLine {
  op: "add_line";
  place: string;
  moves: string[];
}

/**
 * said: sentences. places: those with this position. evidence: what follows. add: what would take the answer into the lesson.
 */
export interface AnswerShown {
  fen: string;
  said: string[];
  places: string[];
  evidence: Evidence | null;
  add: Moves | null;
}

/**
 * The variation that a place is in moves before the variation before it.
 */
export interface BringForward {
  op: "bring_forward";
  place: string;
}

/**
 * A candidate: its name and side, and what it asks and gives.
 */
export interface CandidateShown {
  name: string;
  said: string[];
}

/**
 * A comment gets another text.
 */
export interface ChangeWords {
  op: "change_words";
  comment: number;
  text: string;
}

export interface CollectionShown {
  name: string;
  games: number;
}

/**
 * The user's collections of games.
 */
export interface CollectionsShown {
  collections: CollectionShown[];
}

/**
 * index: which comment of the lesson, in this version. to_line_end: it cannot hold a line end.
 */
export interface CommentShown {
  index: number;
  text: string;
  to_line_end: boolean;
}

/**
 * Where another program changed what was changed here, too: both texts from the first difference to the last, shortened.
 */
export interface ConflictShown {
  ours: string;
  theirs: string;
}

/**
 * Two findings, by their ids in the order of the text, whose claims cannot both be true. why: one sentence or two.
 */
export interface ContradictionShown {
  findings: [string, string];
  why: string;
}

/**
 * A move and all that follows it goes.
 */
export interface Cut {
  op: "cut";
  place: string;
}

/**
 * A thing to do is put off, dismissed, or open again. What is decided stands in lesson.toml.
 */
export interface Decide {
  op: "decide";
  sort: "dangerous" | "met" | "slips" | "ideas" | "stops" | "stale";
  place: string;
  about: string;
  decided: "dismissed" | "later" | null;
}

/**
 * A copy of the demo lesson in a new or empty folder.
 */
export interface DemoLesson {
  how: "demo";
  path: string;
}

/**
 * Where a game, or several, left the lesson. evidence: how it went on. add: what to teach there, where the opponent left it.
 */
export interface DepartureShown {
  place: string;
  words: string;
  evidence: Evidence | null;
  add: Moves | null;
}

/**
 * An edit of the version that the window shows.
 */
export interface EditAsked {
  version: number;
  window?: string;
  edit: AddLine | Cut | Promote | BringForward | Join | ChangeWords | RemoveComment | AddComment | SetMarks | Undo | Redo | SetLesson | MarkOpinion | TakeBack | Decide | Import | SetSource | PutDiagram;
}

/**
 * What an edit made. at: where it was. said: what became of moves that were added. joins: the place whose position they reach.
 */
export interface Edited {
  lesson: LessonShown;
  at: string;
  said: "extended" | "branched" | "known" | "";
  joins: string | null;
}

/**
 * number: from 1. words: with its day.
 */
export interface EditionShown {
  number: number;
  words: string;
}

/**
 * What has been published of a lesson.
 */
export interface EditionsShown {
  editions: EditionShown[];
}

/**
 * kind: a lesson folder, a PGN file, or another folder.
 */
export interface Entry {
  name: string;
  path: string;
  kind: "lesson" | "file" | "folder";
}

/**
 * A line that shows a finding. text: with move numbers.
 */
export interface Evidence {
  fen: string;
  moves: LegalMove[];
  text: string;
}

/**
 * A move and how often it was played: in `games` of `of`, in percent with its 95 % interval.
 */
export interface FigureShown {
  move: LegalMove;
  games: number;
  of: number;
  share: number;
  low: number;
  high: number;
}

/**
 * What a collection says of a position. said: the same in sentences, and more.
 */
export interface FiguresShown {
  collection: string;
  games: number;
  said: string[];
  moves: FigureShown[];
}

/**
 * start..end: of the words in the comment; 0..0 for a glyph, which has no comment. outcome: "waiting" until search has answered.
 */
export interface FindingShown {
  id: string;
  place: string;
  comment: number | null;
  start: number;
  end: number;
  words: string;
  kind: string;
  title: string;
  outcome: "holds" | "fails" | "unsettled" | "waiting";
  why: string;
  instead: string | null;
  second: string | null;
  evidence: Evidence | null;
  marks: MarkShown[];
}

/**
 * What has changed since the last such event of the same window; with the first one all.
 *
 * order: the keys of all passages as they stand, each with the number of its comment, null for signs; null where it is as it was.
 * passages: those that are new or found out more of. The rest as in `FindingsShown`.
 */
export interface FindingsNews {
  version: number;
  way: WayShown;
  done: number;
  of: number;
  complete: boolean;
  order: [string, number | null][] | null;
  passages: PassageShown[];
  contradictions: ContradictionShown[] | null;
}

/**
 * What is found of a version so far. done: findings that wait no more; complete: all are there.
 *
 * contradictions: None until all findings are there and were looked at together.
 */
export interface FindingsShown {
  version: number;
  way: WayShown;
  done: number;
  of: number;
  complete: boolean;
  findings: FindingShown[];
  contradictions: ContradictionShown[] | null;
  sentences: SentenceShown[];
}

/**
 * What a folder has that may be a lesson or lead to one. parent: None at the top. more: whether there is more than is shown.
 */
export interface FolderShown {
  path: string;
  parent: string | null;
  entries: Entry[];
  more: boolean;
}

/**
 * Students' games to follow. player: the student, by name or a part of it; "" for whoever had the taught side.
 */
export interface FollowAsked {
  file: GivenFile;
  player?: string;
}

/**
 * What came of students' games. done, of: games. said: of all of them together. common: the commonest departures first.
 *
 * Nothing of the games is written down; they are forgotten with the run, or when that is asked for.
 */
export interface FollowedShown {
  state: "none" | "running" | "done" | "failed";
  done: number;
  of: number;
  problem: string | null;
  said: string[];
  common: DepartureShown[];
  games: DepartureShown[];
}

/**
 * A game of the file. result: its marker as written.
 */
export interface GameShown {
  root: string;
  tags: [string, string][];
  result: string | null;
}

/**
 * A file as it was chosen in the browser, or is handed to it. base64: its bytes, as RFC 4648, section 4, spells them.
 */
export interface GivenFile {
  name: string;
  base64: string;
}

/**
 * The games of these files come after those of the lesson. joined: those that begin as one before them are written into its lines.
 */
export interface Import {
  op: "import";
  files: GivenFile[];
  joined?: boolean;
}

/**
 * What follows `other` is copied under `place`, where the same position stands.
 */
export interface Join {
  op: "join";
  place: string;
  other: string;
}

export interface LegalMove {
  uci: string;
  san: string;
  fen: string;
}

/**
 * A version has come about. window: whose edit made it; "" for a change on the disk.
 */
export interface LessonEvent {
  version: number;
  window: string;
}

/**
 * A lesson. places: in spoken order; the children of a place are those whose parent it is, in this order. opinions: also of sentences that are gone.
 *
 * notice: what was met when it was opened. unwritable: why it can only be looked at. undo, redo: steps that there are. folder: False for a bare PGN file, which has no place for settings.
 */
export interface LessonShown {
  key: string;
  version: number;
  title: string;
  side: "white" | "black" | null;
  audience: number;
  name: string;
  folder: boolean;
  undo: number;
  redo: number;
  conflict: ConflictShown | null;
  notice: string | null;
  unwritable: string | null;
  games: GameShown[];
  places: PlaceShown[];
  opinions: OpinionShown[];
  stale_decided: StaleDecided[];
}

/**
 * Those that are open, the one given at the start first. outside: the outside engine that this run was started with.
 */
export interface LessonsShown {
  lessons: Opened[];
  outside: string | null;
}

/**
 * How products look. width: of pictures, in pixels. language: of the pieces' letters. notation, paper, columns, large: of the handout; columns: None as its type asks for.
 *
 * minutes, pauses: of captions and video, as of the running order. The rest is of the video; voice: a recording's path, "" for none; loop: a line's number.
 */
export interface LooksAsked {
  width?: number;
  language?: "en" | "de" | "fr" | "es" | "nl";
  notation?: "letters" | "figurine";
  paper?: "a4" | "letter";
  columns?: 1 | 2 | null;
  large?: boolean;
  vertical?: boolean;
  burn_captions?: boolean;
  constant_rate?: boolean;
  codec?: "h264" | "av1";
  loop?: number | null;
  voice?: string;
  minutes?: number | null;
  pauses?: boolean;
}

/**
 * The sentence that stands at start..end of a comment is the author's opinion, which is not checked; or it is one no more.
 */
export interface MarkOpinion {
  op: "opinion";
  comment: number;
  start: number;
  end: number;
  opinion: boolean;
}

export interface MarkShown {
  kind: "square" | "move" | "pin";
  squares: string[];
  side: "white" | "black";
}

/**
 * Moves in UCI that may be added after a place.
 */
export interface Moves {
  place: string;
  moves: string[];
}

/**
 * A lesson in a new or empty folder: of these files, from this position, or from the beginning of a game. title: by default that of the files, or the folder's name.
 */
export interface NewLesson {
  how: "new";
  path: string;
  title?: string;
  side?: "white" | "black" | null;
  audience?: number | null;
  files?: GivenFile[] | null;
  fen?: string | null;
}

/**
 * What is new for the audience of an edition, as text in lines.
 */
export interface NoticeShown {
  text: string;
}

/**
 * A lesson folder or a PGN file that is there.
 */
export interface OpenLessonAt {
  how: "open";
  path: string;
}

/**
 * A lesson that is open in this run.
 */
export interface Opened {
  key: string;
  title: string;
  name: string;
}

/**
 * A sentence that the author marked as his opinion. name: of the mark. move: beside which it stood; "" where that is not known.
 */
export interface OpinionShown {
  name: string;
  words: string;
  move: string;
}

/**
 * How the lesson is best told. said: in sentences; script: what is said and done, with the time of each cue.
 */
export interface OrderShown {
  said: string[];
  script: string;
}

/**
 * The outside engine that this run was started with. asked: whether it answers for the lesson, in place of ours.
 */
export interface OutsideShown {
  name: string;
  asked: boolean;
}

/**
 * What is found in a comment, or of the signs of a move. key: the same in every version that has it unchanged.
 *
 * The numbers of the comment in it are of some version; those of the present one stand in `FindingsNews.order`.
 */
export interface PassageShown {
  key: string;
  findings: FindingShown[];
  sentences: SentenceShown[];
}

/**
 * A pause point: where the audience can be asked to find the move. grade: 1, easy, to 5. best: the move, in SAN; point: what shows on the board.
 */
export interface PauseShown {
  place: string;
  grade: number;
  best: string;
  point: string;
}

/**
 * A place. depth: 0 on the main line. signs: those written as text.
 *
 * before: comments that open the variation that begins with this move. after: those that follow the move; at a root, those
 * that open the game. joins: the first other place with the same position. source: where the line from here on comes from.
 * diagram: the text alternative of the diagram that the author has put here, where there is one.
 */
export interface PlaceShown {
  id: string;
  parent: string | null;
  game: number;
  ply: number;
  number: string;
  san: string | null;
  uci: string | null;
  fen: string;
  depth: number;
  nags: number[];
  signs: string[];
  before: CommentShown[];
  after: CommentShown[];
  joins: string | null;
  source: Source | null;
  diagram: string | null;
}

/**
 * alternative: what a diagram of it says to a screen reader.
 */
export interface PositionShown {
  fen: string;
  turn: "white" | "black";
  check: boolean;
  legal: LegalMove[];
  alternative: string;
}

/**
 * kind: the error's name. hint: what to do.
 */
export interface Problem {
  kind: string;
  message: string;
  hint: string;
}

/**
 * name: with its product's folder. size: in bytes.
 */
export interface ProductFile {
  product: string;
  name: string;
  size: number;
}

/**
 * What a lesson can be published as. needs_study: only once it has been studied. usual: whether it is made where nothing is chosen.
 */
export interface ProductShown {
  name: string;
  summary: string;
  needs_study: boolean;
  usual: boolean;
}

export interface ProductsShown {
  products: ProductShown[];
}

/**
 * The variation that a place is in moves up one level.
 */
export interface Promote {
  op: "promote";
  place: string;
}

/**
 * path: the folder to publish into. only: names of products. anyway: also where claims fail.
 */
export interface PublishAsked {
  path: string;
  only: string[];
  anyway?: boolean;
  looks?: LooksAsked;
}

/**
 * What was published. empty: products with nothing to show. failing: claims that fail and were published all the same.
 *
 * edition: its number and day, in words. notes: sentences on what could not be kept.
 */
export interface PublishedShown {
  folder: string;
  files: ProductFile[];
  empty: string[];
  failing: number;
  edition: string;
  notes: string[];
}

/**
 * How far publishing is, and what came of it. done, of: what `what` says: steps of the study that must come first, products, or frames of a video.
 *
 * published: what was published last, until something else is begun.
 */
export interface PublishingShown {
  state: "none" | "running" | "done" | "failed";
  what: "step" | "product" | "frame";
  done: number;
  of: number;
  problem: string | null;
  published: PublishedShown | null;
}

/**
 * A diagram stands after a place and its words, or stands there no more. It is noted in lesson.toml.
 */
export interface PutDiagram {
  op: "diagram";
  place: string;
  wanted: boolean;
}

/**
 * "What about ...?" question: moves from a place, or from the beginning where none is named; or a FEN.
 */
export interface QuestionAsked {
  place?: string | null;
  question: string;
}

/**
 * What was taken back last is done again.
 */
export interface Redo {
  op: "redo";
}

/**
 * lesson: how it stands now, where an edit was of an older version.
 */
export interface Refused {
  error: Problem;
  lesson?: LessonShown | null;
}

/**
 * A comment goes.
 */
export interface RemoveComment {
  op: "remove_comment";
  comment: number;
}

/**
 * A term, and what is said to it.
 */
export interface Row {
  term: string;
  text: string;
}

/**
 * version: the one on the disk. problem: why a newer one is not there yet.
 */
export interface SavedEvent {
  version: number;
  problem: string | null;
}

/**
 * findings: their ids. why: the reason where it was not read, or not wholly.
 */
export interface SentenceShown {
  place: string;
  comment: number;
  start: number;
  end: number;
  status: "read" | "left alone" | "not understood" | "other language" | "your opinion";
  why: string | null;
  findings: string[];
}

/**
 * Title, side taught and audience; what is not named stays.
 */
export interface SetLesson {
  op: "settings";
  title?: string | null;
  side?: "white" | "black" | null;
  audience?: number | null;
}

/**
 * A move gets these glyph numbers; signs written as text stay.
 */
export interface SetMarks {
  op: "set_marks";
  place: string;
  nags: number[];
}

/**
 * Where the line from this place on comes from; None: nothing is said of it. It stands in lesson.toml.
 */
export interface SetSource {
  op: "source";
  place: string;
  source: Source | null;
}

/**
 * What is to stay where another program changed the same place.
 */
export interface SettleAsked {
  version: number;
  window?: string;
  keep: "ours" | "theirs";
}

/**
 * Where a line comes from. words: the book and page, the players and year, and so on.
 */
export interface Source {
  sort: "book" | "game" | "analysis" | "pupil";
  words: string;
}

/**
 * What the author decided of words that may be stale. places: with their position.
 */
export interface StaleDecided {
  places: string[];
  about: string;
  decided: "dismissed" | "later";
}

/**
 * How a lesson comes on the desk.
 */
export interface StartAsked {
  start: OpenLessonAt | NewLesson | DemoLesson;
}

/**
 * version: the one that is studied. done, of: positions. basis: where it is known from how likely a reply is. things, pauses: of the present version.
 */
export interface StudyShown {
  state: "none" | "running" | "done" | "failed";
  version: number;
  done: number;
  of: number;
  problem: string | null;
  basis: string | null;
  things: ThingShown[];
  pauses: PauseShown[];
}

/**
 * A sentence is the author's opinion no more, by the mark's name; it may be gone from the lesson.
 */
export interface TakeBack {
  op: "take_back";
  name: string;
}

/**
 * A thing to do. title: of its list. about: what tells it from others of its list at its position. add: what would answer it.
 *
 * decided: whether the author has put it off or dismissed it.
 */
export interface ThingShown {
  sort: "dangerous" | "met" | "slips" | "ideas" | "stops" | "stale";
  title: string;
  place: string;
  about: string;
  words: string;
  rows: Row[];
  evidence: Evidence | null;
  add: Moves | null;
  decided: "dismissed" | "later" | null;
}

/**
 * The last edit is taken back.
 */
export interface Undo {
  op: "undo";
}

/**
 * How the lesson is checked from now on, in this run. outside: whether the outside engine of this run answers, in place of ours. The rest as in `WayShown`.
 */
export interface WayAsked {
  effort: "sketch" | "normal" | "thorough";
  looking?: "sketch" | "normal" | "thorough";
  outside?: boolean;
  collection?: string;
}

/**
 * How a lesson is checked. effort: of each check. looking: of each search for what the lesson leaves open, for a question, and of students' games.
 *
 * outside: None where the run has no outside engine. collection: the games that are counted; "" for none.
 */
export interface WayShown {
  effort: "sketch" | "normal" | "thorough";
  looking: "sketch" | "normal" | "thorough";
  outside: OutsideShown | null;
  collection: string;
}

/**
 * Openings to weigh: moves from the initial position, or FENs; lessons by their keys. audience: a rating. collection: games to count; "" for none.
 *
 * outside: whether the outside engine of this run answers the searches, in place of ours.
 */
export interface WeighAsked {
  moves?: string[];
  lessons?: string[];
  audience: number;
  collection?: string;
  outside?: boolean;
}

/**
 * done, of: candidates. said: of all of them.
 */
export interface WeighedShown {
  state: "none" | "running" | "done" | "failed";
  done: number;
  of: number;
  problem: string | null;
  said: string[];
  candidates: CandidateShown[];
}
