// The desk's server: its shapes, and the calls. Every call carries the token of this run, which the address brings
// in its fragment, so that it stands in no log.

import type { Mark } from "./board/marks";

export interface Comment {
  /** Its number in this version of the lesson. */
  index: number;
  text: string;
  /** A semicolon comment, which ends with its line. */
  to_line_end: boolean;
}

export interface Place {
  id: string;
  parent: string | null;
  game: number;
  ply: number;
  /** "3." or "3..."; empty at the start of a game. */
  number: string;
  san: string | null;
  uci: string | null;
  fen: string;
  /** How many variations it is inside of. */
  depth: number;
  nags: number[];
  signs: string[];
  /** What opens the variation that begins with this move. */
  before: Comment[];
  after: Comment[];
  /** The first other place with the same position. */
  joins: string | null;
  /** Where the line from here on comes from. */
  source: Source | null;
  /** What the diagram says that the author has put here, in words. */
  diagram: string | null;
}

export interface Source {
  sort: "book" | "game" | "analysis" | "pupil";
  words: string;
}

export interface Game {
  root: string;
  tags: [string, string][];
  result: string | null;
}

export interface Lesson {
  key: string;
  version: number;
  title: string;
  side: "white" | "black" | null;
  audience: number;
  name: string;
  folder: boolean;
  /** Steps that can be undone, and done again. */
  undo: number;
  redo: number;
  /** Said once when it was opened. */
  notice: string | null;
  /** Another program changed in the file what was changed here, too. */
  conflict: { ours: string; theirs: string } | null;
  games: Game[];
  places: Place[];
}

export interface LegalMove {
  uci: string;
  san: string;
  fen: string;
}

export interface Position {
  fen: string;
  turn: "white" | "black";
  check: boolean;
  legal: LegalMove[];
  /** What stands where, in words. */
  alternative: string;
}

export type Outcome = "holds" | "fails" | "unsettled" | "waiting";

export interface Evidence {
  fen: string;
  moves: LegalMove[];
  text: string;
}

export interface Moves {
  place: string;
  moves: string[];
}

export interface Finding {
  id: string;
  place: string;
  /** Null: of a glyph. */
  comment: number | null;
  /** In code points of the comment's text. */
  start: number;
  end: number;
  words: string;
  kind: string;
  title: string;
  outcome: Outcome;
  why: string;
  /** A true wording. */
  instead: string | null;
  second: string | null;
  evidence: Evidence | null;
  marks: Mark[];
}

export interface Sentence {
  place: string;
  comment: number;
  start: number;
  end: number;
  status: "read" | "left alone" | "not understood" | "other language" | "your opinion";
  /** Why it was not read, or not wholly. */
  why: string | null;
  /** Ids. */
  findings: string[];
}

/** Two findings whose claims cannot both be true. */
export interface Contradiction {
  findings: [string, string];
  why: string;
}

export type Effort = "sketch" | "normal" | "thorough";

/** What is found in a comment, or of the signs of a move; the comment's number in it may be that of another version. */
export interface PassageFound {
  /** The same in every version that has the words and signs unchanged. */
  key: string;
  findings: Finding[];
  sentences: Sentence[];
}

/** What has changed of the findings since the last such event; with the first one all. */
export interface FindingsNews {
  version: number;
  effort: Effort;
  done: number;
  of: number;
  complete: boolean;
  /** All passages as they stand: key, and number of the comment. Null: as they were. */
  order: [string, number | null][] | null;
  passages: PassageFound[];
  /** Null until everything is found and compared. */
  contradictions: Contradiction[] | null;
}

/** A file as it was chosen: its bytes in base64. */
export interface File {
  name: string;
  base64: string;
}

export interface Entry {
  name: string;
  path: string;
  kind: "lesson" | "file" | "folder";
}

export interface Folder {
  path: string;
  parent: string | null;
  entries: Entry[];
  more: boolean;
}

export type Start =
  | { how: "open"; path: string }
  | { how: "new"; path: string; side?: "white" | "black"; audience?: number; files?: File[]; fen?: string }
  | { how: "demo"; path: string };

/** Something that the lesson leaves open. */
export interface Thing {
  sort: "dangerous" | "met" | "slips" | "ideas" | "stops";
  /** Of its list. */
  title: string;
  place: string;
  /** What tells it from others of its list at its position. */
  about: string;
  words: string;
  rows: { term: string; text: string }[];
  evidence: Evidence | null;
  /** What would answer it. */
  add: Moves | null;
  decided: "dismissed" | "later" | null;
}

export interface Study {
  state: "none" | "running" | "done" | "failed";
  /** The one that is studied. */
  version: number;
  done: number;
  of: number;
  problem: string | null;
  basis: string | null;
  things: Thing[];
  pauses: Pause[];
}

/** Where the audience can be asked to find the move. */
export interface Pause {
  place: string;
  /** 1, easy, to 5. */
  grade: number;
  /** In SAN. */
  best: string;
  /** What shows on the board. */
  point: string;
}

export interface Answer {
  fen: string;
  said: string[];
  /** Those with this position. */
  places: string[];
  evidence: Evidence | null;
  add: Moves | null;
}

export type Edit =
  | { op: "add_line"; place: string; moves: string[] }
  | { op: "cut" | "promote" | "bring_forward"; place: string }
  | { op: "source"; place: string; source: Source | null }
  | { op: "diagram"; place: string; wanted: boolean }
  | { op: "join"; place: string; other: string }
  | { op: "change_words"; comment: number; text: string }
  | { op: "remove_comment"; comment: number }
  | { op: "add_comment"; place: string; text: string }
  | { op: "set_marks"; place: string; nags: number[] }
  | { op: "settings"; title?: string; side?: "white" | "black"; audience?: number }
  | { op: "opinion"; comment: number; start: number; end: number; opinion: boolean }
  | { op: "import"; files: File[] }
  | { op: "decide"; sort: Thing["sort"]; place: string; about: string; decided: Thing["decided"] }
  | { op: "undo" | "redo" };

export interface Edited {
  lesson: Lesson;
  at: string;
  said: "extended" | "branched" | "known" | "";
  joins: string | null;
}

/** What the server refused, in its words. */
export class RefusedError extends Error {
  constructor(
    readonly status: number,
    message: string,
    readonly lesson: Lesson | null,
  ) {
    super(message);
  }
}

const given = new URLSearchParams(location.hash.slice(1));
const token = given.get("token") ?? "";
/** The lesson that the address names; without one it is the first. */
export const NAMED = given.get("lesson");
/** Whether the address is that of the page on which a lesson is begun. */
export const BEGINS = given.has("begin");

/** What stands after the # where a lesson is shown, or, without one, where one is begun. */
export const address = (lesson: string | null): string =>
  new URLSearchParams(lesson === null ? { token, begin: "" } : { token, lesson }).toString();
/** This window, by which it knows its own edits among the events. */
export const WINDOW = crypto.randomUUID();

async function call(path: string, init: RequestInit = {}): Promise<Response> {
  const headers: Record<string, string> = { Authorization: `Bearer ${token}` };
  if (init.body) headers["Content-Type"] = "application/json";
  const answer = await fetch(`/api${path}`, { ...init, headers, cache: "no-store" });
  if (answer.ok) return answer;
  const told = (await answer.json().catch(() => ({}))) as {
    error?: { message?: string; hint?: string };
    lesson?: Lesson;
  };
  const { message, hint } = told.error ?? {};
  const words = message ? (hint ? `${message}: ${hint}` : message) : `the desk answered ${answer.status}`;
  throw new RefusedError(answer.status, words, told.lesson ?? null);
}

async function json<T>(path: string, init?: RequestInit): Promise<T> {
  return (await (await call(path, init)).json()) as T;
}

const lessonPath = (key: string): string => `/lessons/${encodeURIComponent(key)}`;

/** A lesson that is on the desk. */
export interface Opened {
  key: string;
  title: string;
  name: string;
}

export const lessons = (): Promise<{ lessons: Opened[] }> => json("/lessons");

/** What may be a lesson in a folder, or lead to one; "" is the user's own folder. */
export const folder = (path: string): Promise<Folder> => json(`/folder?path=${encodeURIComponent(path)}`);

/** Brings a lesson on the desk. */
export const start = (how: Start): Promise<Opened> =>
  json("/lessons", { method: "POST", body: JSON.stringify({ start: how }) });

/** Files as the user chose them. */
export const chosen = (files: FileList | null): Promise<File[]> =>
  Promise.all(
    [...(files ?? [])].map(async (file) => {
      const bytes = new Uint8Array(await file.arrayBuffer());
      let text = "";
      for (let at = 0; at < bytes.length; at += 8192) text += String.fromCharCode(...bytes.subarray(at, at + 8192));
      return { name: file.name, base64: btoa(text) };
    }),
  );

export const lesson = (key: string): Promise<Lesson> => json(lessonPath(key));

/** How much each check may spend from now on. */
export const choose = (key: string, effort: Effort): Promise<unknown> =>
  json(`${lessonPath(key)}/effort`, { method: "POST", body: JSON.stringify({ effort }) });

export const position = (fen: string): Promise<Position> => json(`/position?fen=${encodeURIComponent(fen)}`);

export const edit = (key: string, version: number, change: Edit): Promise<Edited> =>
  json(`${lessonPath(key)}/edits`, {
    method: "POST",
    body: JSON.stringify({ version, window: WINDOW, edit: change }),
  });

/** Says which text is to stay where another program changed the same place. */
export const settle = (key: string, version: number, keep: "ours" | "theirs"): Promise<Lesson> =>
  json(`${lessonPath(key)}/conflict`, {
    method: "POST",
    body: JSON.stringify({ version, window: WINDOW, keep }),
  });

export const study = (key: string): Promise<Study> => json(`${lessonPath(key)}/study`);

export const beginStudy = (key: string): Promise<Study> => json(`${lessonPath(key)}/study`, { method: "POST" });

/** "What about ...?": moves from a place, or a FEN. */
export const ask = (key: string, place: string, question: string): Promise<Answer> =>
  json(`${lessonPath(key)}/questions`, { method: "POST", body: JSON.stringify({ place, question }) });

/** Where a game, or several, left the lesson. */
export interface Departure {
  place: string;
  words: string;
  /** How it went on. */
  evidence: Evidence | null;
  /** What to teach there. */
  add: Moves | null;
}

/** What came of students' games. */
export interface Followed {
  state: "none" | "running" | "done" | "failed";
  done: number;
  of: number;
  problem: string | null;
  /** Of all of them together. */
  said: string[];
  common: Departure[];
  games: Departure[];
}

export const follow = (key: string, file: File, player: string): Promise<Followed> =>
  json(`${lessonPath(key)}/games`, { method: "POST", body: JSON.stringify({ file, player }) });

export const followed = (key: string): Promise<Followed> => json(`${lessonPath(key)}/games`);

export const forget = (key: string): Promise<Followed> => json(`${lessonPath(key)}/games`, { method: "DELETE" });

export interface Product {
  name: string;
  summary: string;
  needs_study: boolean;
}

export interface Published {
  folder: string;
  files: { product: string; name: string; size: number }[];
  /** Products with nothing to show. */
  empty: string[];
  failing: number;
}

export const products = (): Promise<{ products: Product[] }> => json("/products");

export const publish = (key: string, path: string, only: string[], anyway: boolean): Promise<Published> =>
  json(`${lessonPath(key)}/publish`, { method: "POST", body: JSON.stringify({ path, only, anyway }) });

/** The lesson's file, byte for byte. */
export const pgn = (key: string): Promise<File> => json(`${lessonPath(key)}/pgn`);

export const order = (key: string): Promise<{ said: string[]; script: string }> => json(`${lessonPath(key)}/order`);

export const collections = (): Promise<{ collections: { name: string; games: number }[] }> => json("/collections");

/** What a collection says of a place, in sentences. */
export const figures = (key: string, place: string, collection: string, ofAudience: boolean): Promise<{ said: string[] }> =>
  json(`${lessonPath(key)}/figures?${new URLSearchParams({ place, collection, of_audience: String(ofAudience) }).toString()}`);

export interface Event {
  name: string;
  data: unknown;
}

/** The server's events, until the connection ends. */
export async function* events(key: string): AsyncGenerator<Event> {
  const answer = await call(`${lessonPath(key)}/events`);
  if (!answer.body) return;
  const reader = answer.body.pipeThrough(new TextDecoderStream()).getReader();
  let text = "";
  for (;;) {
    const { done, value } = await reader.read();
    if (done) return;
    text = (text + value).replaceAll("\r\n", "\n");
    for (let end = text.indexOf("\n\n"); end >= 0; end = text.indexOf("\n\n")) {
      const found = readEvent(text.slice(0, end));
      text = text.slice(end + 2);
      if (found) yield found;
    }
  }
}

function readEvent(block: string): Event | null {
  let name = "message";
  const data: string[] = [];
  for (const line of block.split("\n")) {
    if (line.startsWith("event:")) name = line.slice(6).trim();
    else if (line.startsWith("data:")) data.push(line.slice(5).trimStart());
  }
  return data.length ? { name, data: JSON.parse(data.join("\n")) as unknown } : null;
}
