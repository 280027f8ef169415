// <desk-manuscript>: the lesson as one page of prose with the moves in it.
//
// Keys on a move: left and right go along the line, up and down through the text, Enter writes the words after the move,
// a letter begins another move, Shift with Enter puts a diagram there or takes it away. In the words: Enter or Escape goes back to the move.

import { LitElement, html, nothing, type TemplateResult } from "lit";
import { repeat } from "lit/directives/repeat.js";
import type { Finding } from "../api";
import { Watch, session } from "../session";
import type { Stretch } from "../tree";
import type { DeskWords } from "./desk-words";
import "./desk-passage";

const NONE: readonly Finding[] = [];

export class DeskManuscript extends LitElement {
  private stretches: Stretch[] = [];
  private writing: string | null = null;
  private focusNext: "move" | "words" | null = null;
  private findings = new Map<string, readonly Finding[]>();
  private stale = true;
  private marking = false;

  constructor() {
    super();
    new Watch(this, session, ["lesson", "findings"]);
    session.addEventListener("lesson", () => (this.stale = true));
    session.addEventListener("findings", () => this.sort());
    session.addEventListener("cursor", () => this.mark());
    this.addEventListener("keydown", (event) => this.pressed(event));
    this.addEventListener("words-done", () => this.back());
    this.addEventListener("words-left", (event) => {
      const words = event.target as DeskWords;
      if (words.spot?.place === this.writing && !words.textContent) this.write(null);
    });
    this.addEventListener("passage-drawn", () => {
      if (this.marking) return;
      this.marking = true;
      queueMicrotask(() => {
        this.marking = false;
        this.mark();
      });
    });
  }

  protected override createRenderRoot(): this {
    return this;
  }

  /** The keys work from the start on: nothing has to be pointed at first. */
  override firstUpdated(): void {
    if (document.activeElement === document.body) this.focusNext = "move";
  }

  override willUpdate(): void {
    if (!this.stale) return;
    this.stale = false;
    this.stretches = session.tree?.stretches(this.writing) ?? [];
    this.sort();
  }

  override render(): TemplateResult | typeof nothing {
    if (!session.lesson) return nothing;
    return html`${repeat(
      this.stretches,
      ({ key }) => key,
      (stretch) => html`<section class="stretch depth-${Math.min(stretch.depth, 3)}">
        ${stretch.game ? html`<h2 class="game">${stretch.game}</h2>` : nothing}
        ${stretch.heading ? heading(stretch.heading) : nothing}
        ${repeat(
          stretch.passages,
          ({ key }) => key,
          (passage) => html`<desk-passage
            .passage=${passage}
            .findings=${this.findings.get(passage.key) ?? NONE}
          ></desk-passage>`,
        )}
      </section>`,
    )}
    ${session.lesson.places.length === session.lesson.games.length
      ? html`<p class="empty">Nothing is written yet. Play the first move on the board, or type it in the field under
          the board: <em>e4</em>, <em>Nf3</em>. Enter, with the field empty, begins the words.</p>`
      : nothing}`;
  }

  /** Hands each passage its findings; a passage whose findings are the same is left alone. */
  private sort(): void {
    const holder = new Map<string, string>();
    for (const { passages } of this.stretches) {
      for (const passage of passages) {
        for (const { comment } of [...passage.before, ...passage.after]) {
          if (comment) holder.set(`c${comment.index}`, passage.key);
        }
        for (const move of passage.moves) holder.set(move.id, passage.key);
      }
    }
    const fresh = new Map<string, Finding[]>();
    for (const finding of session.findings) {
      const key = holder.get(finding.comment === null ? finding.place : `c${finding.comment}`);
      if (key === undefined) continue;
      const known = fresh.get(key);
      if (known) known.push(finding);
      else fresh.set(key, [finding]);
    }
    const before = this.findings;
    this.findings = new Map(
      [...fresh].map(([key, found]) => {
        const old = before.get(key);
        return [key, old && alike(old, found) ? old : found];
      }),
    );
  }

  /** Lights the present move, and brings it into sight. */
  private mark(): void {
    const here = this.querySelector<HTMLElement>(`.move[data-place="${session.cursor}"]`);
    for (const old of this.querySelectorAll<HTMLElement>(".move.here")) {
      if (old === here) continue;
      old.classList.remove("here");
      old.removeAttribute("aria-current");
      old.tabIndex = -1;
    }
    for (const words of this.querySelectorAll<DeskWords>("desk-words.lit")) {
      words.classList.remove("lit");
      words.underline();
    }
    for (const words of this.querySelectorAll<DeskWords>(`desk-words[data-place="${session.cursor}"]`)) {
      words.classList.add("lit");
      words.underline();
    }
    const target = here ?? this.querySelector<HTMLElement>(`desk-words[data-place="${session.cursor}"]`);
    if (here && !here.classList.contains("here")) {
      here.classList.add("here");
      here.setAttribute("aria-current", "true");
      here.tabIndex = 0;
      here.scrollIntoView({ block: "nearest" });
    } else if (!here && target && !target.matches(":focus")) target.scrollIntoView({ block: "nearest" });
    if (this.focusNext === "move") {
      this.focusNext = null;
      (here ?? target)?.focus();
    } else if (this.focusNext === "words") {
      const words = [...this.querySelectorAll<HTMLElement>(`desk-words[data-place="${session.cursor}"]`)].at(-1);
      if (!words) return;
      this.focusNext = null;
      words.focus();
      const end = words.firstChild;
      if (end) getSelection()?.collapse(end, end.textContent?.length ?? 0);
    }
  }

  /** Goes to a move by keyboard. */
  private go(id: string | undefined): void {
    if (id === undefined) return;
    this.focusNext = "move";
    session.go(id);
  }

  /** Goes back to the present move. */
  back(): void {
    this.focusNext = "move";
    this.mark();
  }

  /** Begins the words after the present move. */
  begin(): void {
    const { place } = session;
    if (!place) return;
    this.focusNext = "words";
    if (place.after.length) this.mark();
    else this.write(place.id);
  }

  private write(place: string | null): void {
    this.writing = place;
    this.stale = true;
    this.requestUpdate();
  }

  private pressed(event: KeyboardEvent): void {
    const { tree, place } = session;
    if (!tree || !place || event.altKey || event.ctrlKey || event.metaKey) return;
    if ((event.target as HTMLElement).matches("desk-words, .sign, .join, figcaption *")) return;
    const { places } = tree.lesson;
    const at = tree.order.get(place.id) ?? 0;
    if (event.key === "ArrowRight") this.go(tree.children(place.id)[0]?.id);
    else if (event.key === "ArrowLeft") this.go(place.parent ?? undefined);
    else if (event.key === "ArrowDown") this.go(places[at + 1]?.id);
    else if (event.key === "ArrowUp") this.go(places[at - 1]?.id);
    else if (event.key === "Home") this.go(places[0]?.id);
    else if (event.key === "End") this.go(places.at(-1)?.id);
    else if (event.key === "Enter" && event.shiftKey) {
      if (!tree.lesson.folder) return;
      this.focusNext = "move";
      void session.diagram(place);
    } else if (event.key === "Enter") this.begin();
    else if (/^[a-hKQRBNO]$/.test(event.key)) {
      this.dispatchEvent(new CustomEvent("move-begun", { detail: event.key, bubbles: true }));
    } else return;
    event.preventDefault();
  }
}

/** Whether two lists say the same; those that did not change are the same objects. */
function alike(one: readonly Finding[], other: readonly Finding[]): boolean {
  return one.length === other.length && one.every((each, index) => each === other[index] || JSON.stringify(each) === JSON.stringify(other[index]));
}

/** Under a game's heading where there are several games. Notation keeps its case among the small capitals. */
function heading({ words, move }: NonNullable<Stretch["heading"]>): TemplateResult {
  const said = html`${words} <span class="notation">${move}</span>`;
  return (session.lesson?.games.length ?? 1) > 1
    ? html`<h3 class="branch">${said}</h3>`
    : html`<h2 class="branch">${said}</h2>`;
}

customElements.define("desk-manuscript", DeskManuscript);
