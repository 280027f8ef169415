// <desk-doings>: what can be done with the move here: its signs, its line, and cutting it.

import { LitElement, html, nothing, type TemplateResult } from "lit";
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
    if (!place || place.san === null) return nothing;
    const other = place.joins === null ? undefined : session.tree?.byId.get(place.joins);
    const name = label(place);
    const signs = glyphs(place).replace(/\u202f/g, " ").trim();
    return html`<form class="typed signs-of" @submit=${this.signed}>
        <label for="signs">Signs of <span class="notation">${name}</span></label>
        <input id="signs" autocomplete="off" spellcheck="false" placeholder="!  ?!  +=" .value=${signs} />
      </form>
      <p class="doings place">
        ${place.depth
          ? html`<button class="plain" @click=${() => void session.change({ op: "promote", place: place.id }, `The line of ${name} is one level up.`)}>tell this line first</button>`
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

  private readonly signed = (event: SubmitEvent): void => {
    event.preventDefault();
    const { place } = session;
    if (!place) return;
    const typed = (this.querySelector("input")?.value ?? "").split(/\s+/).filter((sign) => sign && !place.signs.includes(sign));
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

customElements.define("desk-doings", DeskDoings);
