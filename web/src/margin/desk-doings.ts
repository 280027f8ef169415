// <desk-doings>: what can be done with the move here: its signs, where it comes from, a diagram, its line, and cutting it.

import { LitElement, html, nothing, type TemplateResult } from "lit";
import type { Place, Source } from "../api";
import { SIGNS } from "../board/drawn";
import { Watch, session } from "../session";
import { glyphs, label } from "../tree";

/** From a sign, as it is printed or typed, to its number. */
const NUMBERS = new Map<string, number>(
  Object.entries(SIGNS)
    .map(([number, sign]): [string, number] => [sign, Number(number)])
    .reverse()
    .flatMap(([sign, number]): [string, number][] => [[sign, number], [sign.replace("\u2212", "-"), number]]),
);

const SOURCES: Record<Source["sort"], string> = {
  book: "a book",
  game: "a game",
  analysis: "my own analysis",
  pupil: "a pupil",
};

export class DeskDoings extends LitElement {
  constructor() {
    super();
    new Watch(this, session, ["lesson", "cursor"]);
  }

  protected override createRenderRoot(): this {
    return this;
  }

  override render(): TemplateResult | typeof nothing {
    const { place } = session;
    if (!place) return nothing;
    if (place.san === null) return session.lesson?.folder ? html`<p class="doings place">${diagram(place)}</p>` : nothing;
    const other = place.joins === null ? undefined : session.tree?.byId.get(place.joins);
    const name = label(place);
    const signs = glyphs(place).replace(/\u202f/g, " ").trim();
    return html`<form class="typed signs-of" @submit=${this.signed}>
        <label for="signs">Signs of <span class="notation">${name}</span></label>
        <input id="signs" autocomplete="off" spellcheck="false" placeholder="!  ?!  +=" .value=${signs} />
      </form>
      ${session.lesson?.folder ? this.source(place.source) : nothing}
      <p class="doings place">
        ${session.lesson?.folder ? diagram(place) : nothing}
        ${place.depth
          ? html`<button class="plain" @click=${() => void session.change({ op: "promote", place: place.id }, `The line of ${name} is one level up.`)}>tell this line first</button>`
          : nothing}
        ${(session.tree?.before(place) ?? -1) > 0
          ? html`<button class="plain" @click=${() => void session.change({ op: "bring_forward", place: place.id }, `The line of ${name} is told one place earlier.`)}>tell this line earlier</button>`
          : nothing}
        ${other && session.tree?.children(other.id).length
          ? html`<button
              class="plain"
              @click=${() => void session.change({ op: "join", place: place.id, other: other.id }, `What follows ${label(other)} follows here too.`)}
            >go on here as after ${label(other)}</button>`
          : nothing}
        <button class="plain" @click=${() => void session.change({ op: "cut", place: place.id }, `${name} and what follows it is cut; undo brings it back.`)}>cut ${name}</button>
      </p>`;
  }

  private source(source: Source | null): TemplateResult {
    return html`<form class="typed" @submit=${this.sourced}>
      <label for="source">From</label>
      <select name="sort" aria-label="Sort of source">
        ${Object.entries(SOURCES).map(([sort, words]) => html`<option value=${sort} ?selected=${source?.sort === sort}>${words}</option>`)}
      </select>
      <input id="source" name="words" maxlength="300" autocomplete="off" placeholder="book and page, players and year …" .value=${source?.words ?? ""} />
    </form>`;
  }

  private readonly sourced = (event: SubmitEvent): void => {
    event.preventDefault();
    const { place } = session;
    const form = new FormData(event.currentTarget as HTMLFormElement);
    const words = String(form.get("words") ?? "").trim();
    const sort = String(form.get("sort")) as Source["sort"];
    if (!place) return;
    void session.change(
      { op: "source", place: place.id, source: words ? { sort, words } : null },
      words ? `The line from ${label(place)} on comes from: ${words}.` : `Nothing is said of where ${label(place)} comes from.`,
    );
  };

  private readonly signed = (event: SubmitEvent): void => {
    event.preventDefault();
    const { place } = session;
    if (!place) return;
    const typed = (this.querySelector<HTMLInputElement>("#signs")?.value ?? "").split(/\s+/).filter((sign) => sign && !place.signs.includes(sign));
    const nags = typed.map((sign) => NUMBERS.get(sign) ?? (/^\$\d{1,9}$/.test(sign) ? Number(sign.slice(1)) : undefined));
    const unknown = typed[nags.indexOf(undefined)];
    if (unknown !== undefined) {
      session.failed(new Error(`${unknown} is no sign: write one of ${[...new Set(Object.values(SIGNS))].join(" ")}`));
      return;
    }
    void session.change(
      { op: "set_marks", place: place.id, nags: nags.filter((nag) => nag !== undefined) },
      `${label(place)} has ${typed.length ? `the signs ${typed.join(" ")}` : "no signs"} now.`,
    );
  };
}

function diagram(place: Place): TemplateResult {
  return html`<button class="plain" @click=${() => void session.diagram(place)}>${
    place.diagram === null ? "put a diagram here" : "take the diagram away"
  }</button>`;
}

customElements.define("desk-doings", DeskDoings);
