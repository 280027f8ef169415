// <desk-find>: searches the lesson: words, moves, or a position as a FEN. Enter goes to the next place that has it.

import { LitElement, html, type TemplateResult } from "lit";
import { state } from "lit/decorators.js";
import type { Place } from "./api";
import { session } from "./session";
import { label } from "./tree";

export class DeskFind extends LitElement {
  @state() private told = "";

  protected override createRenderRoot(): this {
    return this;
  }

  override render(): TemplateResult {
    return html`<form class="typed" role="search" @submit=${this.submitted}>
      <label for="find">Find</label>
      <input id="find" autocomplete="off" spellcheck="false" placeholder="words, Nf3, a FEN …" @input=${() => (this.told = "")} />
      <span class="unread" role="status">${this.told}</span>
    </form>`;
  }

  private readonly submitted = (event: SubmitEvent): void => {
    event.preventDefault();
    const { tree } = session;
    const wanted = this.querySelector("input")?.value.trim() ?? "";
    if (!tree || !wanted) return;
    const found = tree.lesson.places.filter(has(wanted));
    const at = tree.order.get(session.cursor) ?? 0;
    const next = found.find(({ id }) => (tree.order.get(id) ?? 0) > at) ?? found[0];
    this.told = next ? `${found.indexOf(next) + 1} of ${found.length}` : "Nothing in the lesson has that.";
    if (next) session.go(next.id);
  };
}

function has(wanted: string): (place: Place) => boolean {
  if (/^([1-8pnbrqk]+\/){7}[1-8pnbrqk]+( |$)/i.test(wanted)) {
    // What a FEN that is given says: the pieces, and who is to move, castling and en passant as far as it goes.
    const fields = wanted.split(/\s+/).slice(0, 4);
    return ({ fen }) => fields.every((field, index) => fen.split(" ")[index] === field);
  }
  const folded = wanted.toLowerCase();
  return (place) =>
    (place.san !== null && (place.san.replace(/[+#]$/, "") === wanted || label(place) === wanted)) ||
    [...place.before, ...place.after].some(({ text }) => text.replace(/\s+/g, " ").toLowerCase().includes(folded));
}

customElements.define("desk-find", DeskFind);
