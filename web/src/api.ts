// The desk's server: its shapes, and the calls. Every call carries the token of this run, which the address brings
// in its fragment, so that it stands in no log.

import type * as wire from "./wire";

// The shapes by the names that the page has for them; what each field means stands in wire.ts, which is made from the server's.
export type Comment = wire.CommentShown;
export type Place = wire.PlaceShown;
export type Source = wire.Source;
export type Game = wire.GameShown;
export type Lesson = wire.LessonShown;
export type LegalMove = wire.LegalMove;
export type Position = wire.PositionShown;
export type Evidence = wire.Evidence;
export type Moves = wire.Moves;
export type Finding = wire.FindingShown;
export type Outcome = Finding["outcome"];
export type Sentence = wire.SentenceShown;
export type Contradiction = wire.ContradictionShown;
export type Way = wire.WayShown;
export type WayAsked = wire.WayAsked;
export type Effort = Way["effort"];
export type PassageFound = wire.PassageShown;
export type FindingsNews = wire.FindingsNews;
export type Saved = wire.SavedEvent;
export type Changed = wire.LessonEvent;
/** A file as it was chosen: its bytes in base64. */
export type File = wire.GivenFile;
export type Entry = wire.Entry;
export type Folder = wire.FolderShown;
export type Start = wire.StartAsked["start"];
export type Opened = wire.Opened;
export type Thing = wire.ThingShown;
export type Pause = wire.PauseShown;
export type Study = wire.StudyShown;
export type Answer = wire.AnswerShown;
export type Departure = wire.DepartureShown;
export type Followed = wire.FollowedShown;
export type Weighed = wire.WeighedShown;
export type Product = wire.ProductShown;
export type Published = wire.PublishedShown;
export type Publishing = wire.PublishingShown;
export type Edit = wire.EditAsked["edit"];
export type Edited = wire.Edited;

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
  const told = (await answer.json().catch(() => ({}))) as Partial<wire.Refused>;
  const { message, hint } = told.error ?? {};
  const words = message ? (hint ? `${message}: ${hint}` : message) : `the desk answered ${answer.status}`;
  throw new RefusedError(answer.status, words, told.lesson ?? null);
}

async function json<T>(path: string, init?: RequestInit): Promise<T> {
  return (await (await call(path, init)).json()) as T;
}

/** What is sent, as JSON. */
const body = <T>(asked: T): string => JSON.stringify(asked);

const lessonPath = (key: string): string => `/lessons/${encodeURIComponent(key)}`;

export const lessons = (): Promise<wire.LessonsShown> => json("/lessons");

/** What may be a lesson in a folder, or lead to one; "" is the user's own folder. */
export const folder = (path: string): Promise<Folder> => json(`/folder?path=${encodeURIComponent(path)}`);

/** Brings a lesson on the desk. */
export const start = (how: Start): Promise<Opened> =>
  json("/lessons", { method: "POST", body: body<wire.StartAsked>({ start: how }) });

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

/** Takes a lesson off the desk. */
export const takeOff = (key: string): Promise<wire.LessonsShown> => json(lessonPath(key), { method: "DELETE" });

/** How the lesson is checked from now on. */
export const choose = (key: string, way: WayAsked): Promise<unknown> =>
  json(`${lessonPath(key)}/way`, { method: "POST", body: body<wire.WayAsked>(way) });

export const position = (fen: string): Promise<Position> => json(`/position?fen=${encodeURIComponent(fen)}`);

export const edit = (key: string, version: number, change: Edit): Promise<Edited> =>
  json(`${lessonPath(key)}/edits`, {
    method: "POST",
    body: body<wire.EditAsked>({ version, window: WINDOW, edit: change }),
  });

/** Says which text is to stay where another program changed the same place. */
export const settle = (key: string, version: number, keep: "ours" | "theirs"): Promise<Lesson> =>
  json(`${lessonPath(key)}/conflict`, {
    method: "POST",
    body: body<wire.SettleAsked>({ version, window: WINDOW, keep }),
  });

export const study = (key: string): Promise<Study> => json(`${lessonPath(key)}/study`);

export const beginStudy = (key: string): Promise<Study> => json(`${lessonPath(key)}/study`, { method: "POST" });

/** "What about ...?": moves from a place, or a FEN. */
export const ask = (key: string, place: string, question: string): Promise<Answer> =>
  json(`${lessonPath(key)}/questions`, { method: "POST", body: body<wire.QuestionAsked>({ place, question }) });

export const follow = (key: string, file: File, player: string): Promise<Followed> =>
  json(`${lessonPath(key)}/games`, { method: "POST", body: body<wire.FollowAsked>({ file, player }) });

export const followed = (key: string): Promise<Followed> => json(`${lessonPath(key)}/games`);

export const forget = (key: string): Promise<Followed> => json(`${lessonPath(key)}/games`, { method: "DELETE" });

/** Begins to weigh candidate openings. */
export const weigh = (asked: wire.WeighAsked): Promise<Weighed> =>
  json("/weighing", { method: "POST", body: body<wire.WeighAsked>(asked) });

export const weighed = (): Promise<Weighed> => json("/weighing");

export const products = (): Promise<wire.ProductsShown> => json("/products");

export type Looks = wire.LooksAsked;

export const publish = (key: string, path: string, only: string[], anyway: boolean, looks: Looks): Promise<Publishing> =>
  json(`${lessonPath(key)}/publish`, { method: "POST", body: body<wire.PublishAsked>({ path, only, anyway, looks }) });

/** Breaks publishing off. */
export const breakOff = (key: string): Promise<Publishing> => json(`${lessonPath(key)}/publish`, { method: "DELETE" });

export type ReportOf = "proof" | "study" | "games";

/** A report as a page of its own. */
export const report = (key: string, of: ReportOf): Promise<File> => json(`${lessonPath(key)}/report?of=${of}`);

export const weighedReport = (): Promise<File> => json("/weighing/report");

/** Hands a file to the browser, which keeps it where the author's downloads go. */
export function save({ name, base64 }: File, type: string): void {
  saveAs(name, Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0)), type);
}

export function saveAs(name: string, content: BlobPart, type: string): void {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([content], { type }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}

/** The lesson's file, byte for byte. */
export const pgn = (key: string): Promise<File> => json(`${lessonPath(key)}/pgn`);

/** How it is best told. minutes: what it is to fit into; null for all of it. pauses: asks at pause points of the study, too. */
export const order = (key: string, minutes: number | null, pauses: boolean): Promise<wire.OrderShown> =>
  json(`${lessonPath(key)}/order?${new URLSearchParams({ ...(minutes === null ? {} : { minutes: String(minutes) }), pauses: String(pauses) })}`);

export const editions = (key: string): Promise<wire.EditionsShown> => json(`${lessonPath(key)}/editions`);

/** What is new since an edition, for its audience. until: an edition; null for now. */
export const news = (key: string, edition: number, until: number | null): Promise<wire.NoticeShown> =>
  json(`${lessonPath(key)}/editions/${edition}/news${until === null ? "" : `?until=${until}`}`);

export const collections = (): Promise<wire.CollectionsShown> => json("/collections");

/** What a collection says of a place, in sentences. */
export const figures = (key: string, place: string, collection: string, ofAudience: boolean): Promise<wire.FiguresShown> =>
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
