// One lesson at work: what it is now, where the author is in it, what was found, and the edits on their way.
//
// Elements watch it by topic (`Watch`). Edits go to the server one after the other; one that was made on an older
// version is made again on the newer, when what it changes is still as it was.

import type { ReactiveController, ReactiveControllerHost } from "lit";
import * as api from "./api";
import type { Changed, Contradiction, Edit, Edited, Finding, FindingsNews, Followed, LegalMove, Lesson, Outcome, Place, Position, Publishing, Saved, Sentence, Study, Way } from "./api";
import { Found } from "./found";
import { Tree, keeping, label, type Spot } from "./tree";

export type Topic = "lesson" | "cursor" | "findings" | "status" | "position" | "study" | "games" | "publishing";

/** What the board can show: a finding, a thing to do, an answer; each with its evidence. */
export type Exhibit = Pick<Finding, "id" | "place" | "evidence" | "marks">;

/** Words that the author wrote where meanwhile somebody else wrote others. */
export interface Clash {
  spot: Spot;
  mine: string;
  theirs: string;
}

export class Session extends EventTarget {
  tree: Tree | null = null;
  cursor = "";
  findings: Finding[] = [];
  sentences: Sentence[] = [];
  contradictions: Contradiction[] = [];
  proving: { done: number; of: number; complete: boolean } = { done: 0, of: 0, complete: true };
  /** How it is checked. */
  way: Way | null = null;
  /** What is being published, or was last. */
  publishing: Publishing | null = null;
  study: Study | null = null;
  /** What came of students' games. */
  games: Followed | null = null;
  /** What is told, and how many moves of its evidence are on the board; -1: the place itself is. */
  shown: { exhibit: Exhibit; step: number } | null = null;
  position: Position | null = null;
  /** One sentence about the last thing done. */
  said = "";
  problem = "";
  /** Why the newest version is not on the disk. */
  unstored = "";
  joined: string | null = null;
  unsaved = 0;
  /** Where words are that were not sent yet. */
  private readonly writing = new Set<object>();
  /** The newest version that is on the disk. */
  stored = -1;
  offline = false;
  clash: Clash | null = null;

  private restudying = 0;
  private told = new Found();
  private queue: Promise<unknown> = Promise.resolve();
  private following: Promise<void> = Promise.resolve();
  private readonly known = new Map<string, Position>();

  get lesson(): Lesson | null {
    return this.tree?.lesson ?? null;
  }

  get place(): Place | null {
    return this.tree?.byId.get(this.cursor) ?? null;
  }

  tell(...topics: Topic[]): void {
    for (const topic of topics) this.dispatchEvent(new Event(topic));
  }

  async open(key: string): Promise<void> {
    this.take(await api.lesson(key));
    this.said = this.lesson?.notice ?? "";
    this.tell("status");
    void this.listen(key);
  }

  /** Takes a lesson from the server, unless a newer one is here. */
  take(fresh: Lesson): void {
    const old = this.lesson;
    if (old && fresh.version < old.version) return;
    const before = this.tree;
    this.tree = new Tree(keeping(old, fresh));
    if (!this.tree.byId.has(this.cursor)) this.cursor = this.nearest(before) ?? fresh.places[0]?.id ?? "";
    this.tell("lesson");
    this.go(this.cursor);
    this.found();
    if (old && old.version !== fresh.version) this.restudy();
  }

  /** The last place on the way to the old cursor that is still there. */
  private nearest(before: Tree | null): string | undefined {
    let at = before?.byId.get(this.cursor);
    while (at && !this.tree?.byId.has(at.id)) at = before?.parent(at);
    return at?.id;
  }

  // The place

  go(id: string): void {
    this.cursor = id;
    if (this.shown && this.shown.exhibit.place !== id) this.shown = null;
    this.tell("cursor");
    void this.look();
  }

  /** Shows something at its place, or its evidence: from 0, the position that it begins in, move by move. */
  show(exhibit: Exhibit, step = -1): void {
    this.cursor = exhibit.place;
    const most = exhibit.evidence?.moves.length ?? -1;
    this.shown = { exhibit, step: Math.max(-1, Math.min(step, most)) };
    this.tell("cursor");
    void this.look();
  }

  /** Goes to the next finding of an outcome, in the order of the text; after the last to the first. */
  next(outcome: Outcome): void {
    const { tree } = this;
    if (!tree) return;
    const order = ({ place, comment, start }: Finding): number =>
      (tree.order.get(place) ?? 0) * 1e6 + (comment === null ? 0 : 1 + start / 1e6 + comment * 1e-3);
    const found = this.findings.filter((finding) => finding.outcome === outcome).sort((one, two) => order(one) - order(two));
    const here = this.shown ? found.findIndex(({ id }) => id === this.shown?.exhibit.id) : -1;
    const at = tree.order.get(this.cursor) ?? 0;
    const after = here >= 0 ? here + 1 : found.findIndex(({ place }) => (tree.order.get(place) ?? 0) >= at);
    const next = found[Math.max(0, after) % Math.max(1, found.length)];
    if (next) this.show(next);
  }

  /** The position on the board: the place's, or that of the evidence shown. */
  get fen(): string {
    const { shown } = this;
    const evidence = shown?.exhibit.evidence;
    if (!shown || !evidence || shown.step < 0) return this.place?.fen ?? "";
    return evidence.moves[shown.step - 1]?.fen ?? evidence.fen;
  }

  private async look(): Promise<void> {
    const fen = this.fen;
    if (!fen) return;
    const known = this.known.get(fen);
    this.position = known ?? null;
    this.tell("position");
    if (known) return;
    try {
      const found = await api.position(fen);
      this.known.set(fen, found);
      if (this.known.size > 500) this.known.delete(this.known.keys().next().value ?? "");
      if (fen === this.fen) {
        this.position = found;
        this.tell("position");
      }
    } catch (error) {
      this.failed(error);
    }
  }

  // Edits

  /** Says whether somewhere words wait to be sent. */
  waits(where: object, waiting: boolean): void {
    if (this.writing.has(where) === waiting) return;
    if (waiting) this.writing.add(where);
    else this.writing.delete(where);
    this.tell("status");
  }

  /** Whether all that the author wrote is on the disk. */
  get allSaved(): boolean {
    return !this.writing.size && !this.unsaved && this.stored >= (this.lesson?.version ?? 0);
  }

  /** Waits until all is on the disk; not for ever, for the disk may refuse. */
  async settled(): Promise<void> {
    for (let left = 50; left > 0 && this.lesson && !this.allSaved; left -= 1) await new Promise((resolve) => setTimeout(resolve, 100));
  }

  /** Sends an edit after those on their way. Null: it was refused, and why is told. */
  edit(make: () => Edit | null): Promise<Edited | null> {
    this.unsaved += 1;
    this.tell("status");
    const done = this.queue.then(() => this.send(make)).finally(() => {
      this.unsaved -= 1;
      this.tell("status");
    });
    this.queue = done.catch(() => undefined);
    return done;
  }

  private async send(make: () => Edit | null): Promise<Edited | null> {
    for (;;) {
      const lesson = this.lesson;
      const change = make();
      if (!lesson || !change) return null;
      try {
        const edited = await api.edit(lesson.key, lesson.version, change);
        this.offline = false;
        this.problem = "";
        this.take(edited.lesson);
        return edited;
      } catch (error) {
        if (error instanceof api.RefusedError) {
          if (error.status === 409 && error.lesson) {
            this.take(error.lesson);
            continue;
          }
          this.failed(error);
          return null;
        }
        // The server is away: the edit waits for it.
        this.offline = true;
        this.tell("status");
        await new Promise((resolve) => setTimeout(resolve, 1000));
      }
    }
  }

  /** Adds moves after the present place, or after another, and goes to the last of them, or stays. */
  async addLine(moves: string[], from = this.cursor, stay = false): Promise<boolean> {
    const edited = await this.edit(() => ({ op: "add_line", place: from, moves }));
    if (!edited) return false;
    this.joined = edited.joins;
    const place = this.tree?.byId.get(edited.at);
    const other = edited.joins === null ? undefined : this.tree?.byId.get(edited.joins);
    this.said = place ? sentence(edited.said, place, other, moves.length) : "";
    if (!stay) this.go(edited.at);
    this.tell("status");
    return true;
  }

  /** A change that leads the cursor to the place that it is about; one of the lesson as a whole leaves it where it is. */
  async change(change: Edit, said: string): Promise<void> {
    const edited = await this.edit(() => change);
    if (!edited) return;
    this.said = said;
    this.joined = null;
    if (change.op !== "settings" && change.op !== "take_back") this.go(edited.at);
    this.tell("status");
  }

  /** Puts a diagram after the words of a place, or takes the one there away. */
  async diagram(place: Place): Promise<void> {
    const wanted = place.diagram === null;
    const where = place.san === null ? "at the start" : `after ${label(place)}`;
    await this.change(
      { op: "diagram", place: place.id, wanted },
      wanted ? `A diagram stands ${where}.` : `The diagram ${where} is taken away.`,
    );
  }

  async step(op: "undo" | "redo"): Promise<void> {
    const lesson = this.lesson;
    if (!lesson || !(op === "undo" ? lesson.undo : lesson.redo)) {
      this.said = op === "undo" ? "There is nothing to undo." : "There is nothing to do again.";
      this.tell("status");
      return;
    }
    await this.change({ op }, op === "undo" ? "Undone." : "Done again.");
  }

  /** Writes the words at a spot; `was`: what stood there when the author began. Says what became of them. */
  async write(spot: Spot, text: string, was: string | null): Promise<"written" | "clash" | "refused"> {
    let became: "written" | "clash" | "refused" = "refused";
    const edited = await this.edit(() => {
      const comment = this.tree?.comment(spot);
      if (!this.tree?.byId.has(spot.place)) {
        this.failed(new Error("the move that these words belong to was cut elsewhere; copy them to another place"));
        return null;
      }
      if (comment?.text === text) {
        became = "written";
        return null;
      }
      if (was === null && !comment) return { op: "add_comment", place: spot.place, text };
      if (!comment || comment.text !== was) {
        this.clash = { spot, mine: text, theirs: comment?.text ?? "" };
        became = "clash";
        this.tell("status");
        return null;
      }
      return text.trim() ? { op: "change_words", comment: comment.index, text } : { op: "remove_comment", comment: comment.index };
    });
    return edited ? "written" : became;
  }

  /** Ends a clash: with the author's words, or those that stand there. */
  async settle(mine: boolean): Promise<void> {
    const clash = this.clash;
    this.clash = null;
    this.tell("status", "lesson");
    if (!clash || !mine) return;
    await this.write(clash.spot, clash.mine, this.tree?.comment(clash.spot) ? clash.theirs : null);
  }

  /** Says which text is to stay where another program changed the file meanwhile. */
  async keep(keep: "ours" | "theirs"): Promise<void> {
    const { lesson } = this;
    if (!lesson) return;
    try {
      this.take(await api.settle(lesson.key, lesson.version, keep));
    } catch (error) {
      if (error instanceof api.RefusedError && error.lesson) this.take(error.lesson);
      else this.failed(error);
    }
    this.tell("status");
  }

  failed(error: unknown): void {
    this.problem = error instanceof Error ? error.message : String(error);
    this.tell("status");
  }

  // What the server tells

  private async listen(key: string): Promise<void> {
    for (;;) {
      try {
        this.told = new Found();
        for await (const { name, data } of api.events(key)) await this.heard(key, name, data);
      } catch (error) {
        if (error instanceof api.RefusedError) {
          this.offline = false;
          return this.failed(error);
        }
      }
      this.offline = true;
      this.tell("status");
      await new Promise((resolve) => setTimeout(resolve, 1000));
      try {
        this.take(await api.lesson(key));
        this.offline = false;
        this.tell("status");
      } catch {
        // Still away; tried again.
      }
    }
  }

  private async heard(key: string, name: string, data: unknown): Promise<void> {
    if (name === "findings") {
      this.told.take(data as FindingsNews);
      this.found();
    } else if (name === "study") await this.studied(key, data as Omit<Study, "things" | "pauses">);
    else if (name === "followed") void this.follow();
    else if (name === "publishing") {
      this.publishing = data as Publishing;
      this.tell("publishing");
    }
    else if (name === "saved") {
      const { version, problem } = data as Saved;
      this.stored = version;
      this.unstored = problem ?? "";
      this.tell("status");
    } else if (name === "lesson") {
      const { version, window } = data as Changed;
      if (window !== api.WINDOW && version > (this.lesson?.version ?? 0)) {
        await this.queue;
        if (version > (this.lesson?.version ?? 0)) this.take(await api.lesson(key));
      }
    }
  }

  private async studied(key: string, told: Omit<Study, "things" | "pauses">): Promise<void> {
    const { things = [], pauses = [] } = this.study ?? {};
    this.study = told.state === "done" ? await api.study(key) : { ...told, things, pauses };
    this.tell("study");
  }

  /** Asks what came of students' games: after `change`, when that is given. One after the other, so that what is told last is the newest. */
  follow(change?: (key: string) => Promise<unknown>): Promise<void> {
    const { lesson } = this;
    if (!lesson) return Promise.resolve();
    this.following = this.following.then(async () => {
      try {
        if (change) {
          await change(lesson.key);
          this.problem = "";
        }
        this.games = await api.followed(lesson.key);
        this.tell("games", "status");
      } catch (error) {
        this.failed(error);
      }
    });
    return this.following;
  }

  /** After an edit: what is still open, of what was found. */
  private restudy(): void {
    if (this.study?.state !== "done") return;
    clearTimeout(this.restudying);
    this.restudying = window.setTimeout(() => {
      const { lesson } = this;
      if (!lesson) return;
      api.study(lesson.key).then(
        (study) => {
          this.study = study;
          this.tell("study");
        },
        () => undefined, // The server is away; the next edit asks again.
      );
    }, 300);
  }

  /** Saves a report among the author's downloads. */
  async report(of: api.ReportOf): Promise<void> {
    const { lesson } = this;
    if (!lesson) return;
    try {
      api.save(await api.report(lesson.key, of), "text/html");
    } catch (error) {
      this.failed(error);
    }
  }

  /** Begins to look for what the lesson leaves open. */
  async beginStudy(): Promise<void> {
    const { lesson } = this;
    if (!lesson) return;
    try {
      this.study = await api.beginStudy(lesson.key);
      this.tell("study");
    } catch (error) {
      this.failed(error);
    }
  }

  /** Findings may come before the answer to the edit that they are of; they wait for it. */
  private found(): void {
    const { news } = this.told;
    if (!news || news.version !== this.lesson?.version) return;
    const { shown } = this;
    const was = shown && this.findings.some(({ id }) => id === shown.exhibit.id);
    this.findings = this.told.findings;
    this.sentences = this.told.sentences;
    this.contradictions = news.contradictions ?? [];
    this.proving = { done: news.done, of: news.of, complete: news.complete };
    this.way = news.way;
    if (shown && was) {
      const same = this.findings.find(({ id }) => id === shown.exhibit.id);
      this.shown = same ? { ...shown, exhibit: same } : null;
    }
    this.tell("findings");
  }
}

function sentence(said: Edited["said"], place: Place, other: Place | undefined, moves: number): string {
  if (other) return `${label(place)} reaches the position after ${label(other)}: the lines join.`;
  if (said === "branched") return moves > 1 ? `A branch leads to ${label(place)} now.` : `${label(place)} begins a branch.`;
  if (said === "extended") return moves > 1 ? `The line leads to ${label(place)} now.` : `${label(place)} goes on with the line.`;
  return `${label(place)} is in the lesson already.`;
}

/** The present move of the evidence. */
export function played(session: Session): LegalMove | null {
  const { shown } = session;
  return shown?.exhibit.evidence?.moves[shown.step - 1] ?? null;
}

/** Draws its element anew when the session tells of one of the topics. */
export class Watch implements ReactiveController {
  private readonly draw = (): void => this.host.requestUpdate();

  constructor(
    private readonly host: ReactiveControllerHost,
    private readonly session: Session,
    private readonly topics: readonly Topic[],
  ) {
    host.addController(this);
  }

  hostConnected(): void {
    for (const topic of this.topics) this.session.addEventListener(topic, this.draw);
  }

  hostDisconnected(): void {
    for (const topic of this.topics) this.session.removeEventListener(topic, this.draw);
  }
}

export const session = new Session();
