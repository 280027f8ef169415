// <desk-todo>: what the lesson leaves open: replies of the opponent, slips, recurring ideas, early stops. Each is taken
// into the lesson, put off, or dismissed. With `here`, only what concerns the present place.

import { LitElement, html, nothing, type TemplateResult } from "lit";
import { property } from "lit/decorators.js";
import type { Finding, Thing } from "../api";
import { Watch, session, type Exhibit } from "../session";
import { label } from "../tree";
import { evidence } from "./evidence";

/** What a thing is, before its own words. */
const SORTS: Record<Thing["sort"], string> = {
  dangerous: "dangerous, left open",
  met: "left open",
  slips: "slip",
  ideas: "recurring idea",
  stops: "early stop",
  stale: "stale words",
};
const DECIDED = { later: "put off", dismissed: "dismissed" } as const;

export class DeskTodo extends LitElement {
  @property({ type: Boolean }) here = false;

  constructor() {
    super();
    new Watch(this, session, ["lesson", "study", "cursor", "findings"]);
  }

  protected override createRenderRoot(): this {
    return this;
  }

  override render(): TemplateResult | typeof nothing {
    const { study, lesson } = session;
    if (!lesson) return nothing;
    const things = study?.things.filter(({ place }) => session.tree?.byId.has(place)) ?? [];
    const open = things.filter(({ decided }) => decided === null);
    if (this.here) {
      const pauses = study?.pauses.filter(({ place }) => place === session.cursor) ?? [];
      return html`${pauses.map(
        ({ grade, best, point }) => html`<p class="unread">A place to pause (grade ${grade} of 5): find <span class="notation">${best}</span>; ${point}</p>`,
      )}${stale(null)
        .filter(({ place }) => place === session.cursor)
        .map((finding) => html`<details class="left-open"><summary>${SORTS.stale}: “${finding.words}”</summary>${this.stale(finding, null)}</details>`)}${open
        .filter(({ place }) => place === session.cursor)
        .map((thing) => html`<details class="left-open"><summary>${SORTS[thing.sort]}: ${thing.words}</summary>${this.thing(thing)}</details>`)}`;
    }
    const put = things.filter(({ decided }) => decided !== null);
    const [old, left] = [stale(null), [...stale("later"), ...stale("dismissed")]];
    return html`<section class="todo">
      <h2>What the lesson leaves open</h2>
      ${old.length
        ? html`<h3>Words that an edit has left behind</h3>
            ${old.map((finding) => this.stale(finding, null))}`
        : nothing}
      ${this.state()}
      ${groups(open).map(
        ([title, list]) => html`<h3>${title}</h3>
          ${list.map((thing) => this.thing(thing))}`,
      )}
      ${put.length || left.length
        ? html`<details><summary>${put.length + left.length} put off or dismissed</summary>
            ${left.map((finding) => this.stale(finding, decidedOf(finding)))}${put.map((thing) => this.thing(thing))}</details>`
        : nothing}
    </section>`;
  }

  private state(): TemplateResult {
    const { study, lesson } = session;
    const begin = (words: string): TemplateResult =>
      html`<button class="plain" @click=${() => void session.beginStudy()}>${words}</button>`;
    if (lesson?.side === null) return html`<p class="lead">Say under “About this lesson” which side it teaches; then what the opponent will play can be looked for.</p>`;
    if (!study || study.state === "none") {
      return html`<p class="lead">Which replies will the audience meet that the lesson does not answer? Where is a natural move a
        mistake? Looking takes some minutes; go on writing meanwhile. ${begin("look for them")}</p>`;
    }
    if (study.state === "running") {
      return html`<p class="lead" role="status">Looking${study.of ? `: ${study.done} of ${study.of} steps are done` : ""}.</p>`;
    }
    if (study.state === "failed") return html`<p class="lead">${study.problem} ${begin("look again")}</p>`;
    const changed = lesson && study.version < lesson.version;
    return html`<p class="lead">${study.things.length ? nothing : "Nothing was found. "}${study.basis}
      ${changed
        ? html`The lesson has changed since. ${begin("look again")}`
        : html`<button class="plain" @click=${() => void session.report("study")}>save this as a report</button>`}</p>`;
  }

  private thing(thing: Thing): TemplateResult {
    const exhibit: Exhibit = { id: `${thing.sort} ${thing.place} ${thing.about}`, place: thing.place, evidence: thing.evidence, marks: [] };
    const place = session.tree?.byId.get(thing.place);
    const decide = (decided: Thing["decided"]): void => void this.decide(thing, decided);
    return html`<article class="thing">
      ${this.here ? nothing : html`<p class="words">${thing.words}</p>`}
      <dl>${thing.rows.map(({ term, text }) => html`<div><dt>${term}</dt><dd>${text}</dd></div>`)}</dl>
      ${thing.decided ? html`<p class="unread">${DECIDED[thing.decided]}</p>` : nothing}
      ${evidence(exhibit, thing.add, !this.here)}
      <p class="doings">
        ${place && !this.here ? html`<button class="plain" @click=${() => session.show(exhibit)}>see ${label(place)}</button>` : nothing}
        ${thing.decided === null
          ? html`<button class="plain" @click=${() => decide("later")}>later</button>
              <button class="plain" @click=${() => decide("dismissed")}>dismiss</button>`
          : html`<button class="plain" @click=${() => decide(null)}>open it again</button>`}
      </p>
    </article>`;
  }

  private stale(finding: Finding, decided: Thing["decided"]): TemplateResult {
    const { words, why, instead, place } = finding;
    const at = session.tree?.byId.get(place);
    const decide = (now: Thing["decided"]): void => void this.decide({ sort: "stale", place, about: about(finding) }, now);
    return html`<article class="thing">
      ${this.here ? nothing : html`<p class="words">“${words}”</p>`}
      <p>${why}${instead ? html` ${instead}` : nothing}</p>
      ${decided ? html`<p class="unread">${DECIDED[decided]}</p>` : nothing}
      <p class="doings">
        ${at && !this.here ? html`<button class="plain" @click=${() => session.show(finding)}>see ${label(at)}</button>` : nothing}
        ${decided === null
          ? html`<button class="plain" @click=${() => decide("later")}>later</button>
              <button class="plain" @click=${() => decide("dismissed")}>dismiss</button>`
          : html`<button class="plain" @click=${() => decide(null)}>open it again</button>`}
      </p>
    </article>`;
  }

  private async decide({ sort, place, about }: Pick<Thing, "sort" | "place" | "about">, decided: Thing["decided"]): Promise<void> {
    await session.change({ op: "decide", sort, place, about, decided }, decided === null ? "It is open again." : `It is ${DECIDED[decided]}.`);
  }
}

/** Words of which it is decided so that an edit may have left them behind. */
function stale(decided: Thing["decided"]): Finding[] {
  return session.findings.filter((one) => one.kind === "stale" && ["fails", "unsettled"].includes(one.outcome) && decidedOf(one) === decided);
}

/** By which a decision on stale words is known. */
const about = ({ words }: Finding): string => words.slice(0, 500);

function decidedOf(finding: Finding): Thing["decided"] {
  const found = session.lesson?.stale_decided.find((one) => one.about === about(finding) && one.places.includes(finding.place));
  return found?.decided ?? null;
}

function groups(things: readonly Thing[]): [string, Thing[]][] {
  const found = new Map<string, Thing[]>();
  for (const thing of things) found.set(thing.title, [...(found.get(thing.title) ?? []), thing]);
  return [...found];
}

customElements.define("desk-todo", DeskTodo);
