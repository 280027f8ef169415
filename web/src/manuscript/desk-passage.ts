// <desk-passage>: some moves and what is said after the last of them, with the signs of its claims in the margin and the author's diagram under it.

import { LitElement, html, nothing, type TemplateResult } from "lit";
import { property } from "lit/decorators.js";
import { repeat } from "lit/directives/repeat.js";
import type { Finding, Outcome, Place } from "../api";
import { session } from "../session";
import { SIGNS, drawable, ranked } from "../signs";
import { glyphs, label, type Passage, type Said } from "../tree";
import type { DeskWords } from "./desk-words";
import "../board/lesson-board";
import "./desk-words";

const NONE: readonly Finding[] = [];

export class DeskPassage extends LitElement {
  @property({ attribute: false }) passage: Passage | null = null;
  @property({ attribute: false }) findings: readonly Finding[] = NONE;

  private readonly byComment = new Map<number, readonly Finding[]>();

  protected override createRenderRoot(): this {
    return this;
  }

  override willUpdate(): void {
    this.byComment.clear();
    for (const finding of this.findings) {
      if (finding.comment === null) continue;
      this.byComment.set(finding.comment, [...(this.byComment.get(finding.comment) ?? []), finding]);
    }
  }

  override render(): TemplateResult | typeof nothing {
    const { passage } = this;
    if (!passage) return nothing;
    let after: Place | null = null;
    return html`<div class="signs">${this.signs()}</div>
      <p class="said">
        ${this.words(passage.before)}${passage.moves.map((move) => {
          const drawn = this.move(move, after);
          after = move;
          return drawn;
        })}${this.words(passage.after)}
      </p>
      ${passage.diagram ? this.diagram(passage.diagram) : nothing}`;
  }

  override updated(): void {
    for (const element of this.querySelectorAll<DeskWords & { said?: Said }>("desk-words")) {
      const { said } = element;
      if (!said) continue;
      element.show(said.spot, said.comment, (said.comment && this.byComment.get(said.comment.index)) ?? NONE);
    }
    this.dispatchEvent(new CustomEvent("passage-drawn", { bubbles: true }));
  }

  private words(said: readonly Said[]): unknown {
    return repeat(
      said,
      ({ spot }) => `${spot.place} ${spot.where} ${spot.nth}`,
      (one) => html`<desk-words .said=${one} data-place=${one.spot.place}></desk-words> `,
    );
  }

  private move(place: Place, after: Place | null): TemplateResult {
    const white = !place.number.endsWith("...");
    const number = white || !after || after.san === null ? `${place.number} ` : "";
    const words = place.san === null ? "Start" : `${number}${place.san}${glyphs(place)}`;
    return html`<button
        class="move ${place.san === null ? "start" : place.depth ? "" : "main"}"
        data-place=${place.id}
        tabindex=${place.id === session.cursor ? 0 : -1}
        aria-label=${label(place)}
        @click=${() => session.go(place.id)}
      >${words}</button>${this.join(place)} `;
  }

  /** The author's diagram, seen from the side that is taught, with what its own words claim and holds. */
  private diagram(place: Place): TemplateResult {
    const drawn = drawable(this.findings, place);
    const told = drawn.length ? ` Drawn: ${drawn.map(({ words }) => words).join("; ")}.` : "";
    const where = place.san === null ? "The start" : `After ${label(place)}`;
    const turn = place.fen.split(" ")[1] === "b" ? "Black" : "White";
    return html`<figure class="diagram" data-place=${place.id}>
      <lesson-board
        still
        .fen=${place.fen}
        .marks=${drawn.flatMap(({ marks }) => marks)}
        .last=${place.uci && place.uci !== "0000" ? { uci: place.uci } : null}
        .flipped=${session.lesson?.side === "black"}
        .label=${`Diagram. ${where}`}
        .alternative=${`${place.diagram ?? ""}${told}`}
      ></lesson-board>
      <figcaption>
        <span>${where}. ${turn} to move.</span>
        <button class="plain" @click=${() => void this.takeAway(place)}>take this diagram away</button>
      </figcaption>
    </figure>`;
  }

  /** The move has the focus then, for the button that had it is gone. */
  private async takeAway(place: Place): Promise<void> {
    const page = this.closest("desk-manuscript");
    await session.diagram(place);
    page?.dispatchEvent(new CustomEvent("words-done"));
  }

  /** Said where a line reaches a position that stands earlier in the text. */
  private join(place: Place): TemplateResult | typeof nothing {
    const { tree } = session;
    const other = place.joins === null ? undefined : tree?.byId.get(place.joins);
    if (!tree || !other || tree.parent(place)?.joins) return nothing;
    if ((tree.order.get(other.id) ?? 0) > (tree.order.get(place.id) ?? 0)) return nothing;
    return html` <button class="join" @click=${() => session.go(other.id)}>joins ${label(other)}</button>`;
  }

  /** In the margin: each claim that fails or is unsettled, and how many hold. */
  private signs(): unknown {
    const shown = ranked(this.findings);
    const open = shown.filter(({ outcome }) => outcome === "fails" || outcome === "unsettled");
    return [
      ...open.map(
        (finding) => html`<button
          class="sign ${finding.outcome}"
          title=${finding.words}
          @click=${() => session.show(finding)}
        ><span class="glyph" aria-hidden="true">${SIGNS[finding.outcome].glyph}</span>
          <span class="word">${SIGNS[finding.outcome].word}</span>${finding.outcome === "fails"
            ? html` <span class="why">${finding.why}</span>`
            : nothing}</button>`,
      ),
      this.many(shown, "waiting", (count) => `${count} being checked`),
      this.many(shown, "holds", (count) => `${count} hold`),
    ];
  }

  /** One sign for all of an outcome. */
  private many(findings: readonly Finding[], outcome: Outcome, plural: (count: number) => string): TemplateResult | typeof nothing {
    const found = findings.filter((finding) => finding.outcome === outcome);
    const first = found[0];
    if (!first) return nothing;
    const { glyph, word } = SIGNS[outcome];
    return html`<button class="sign ${outcome}" @click=${() => session.show(first)}><span class="glyph" aria-hidden="true">${glyph}</span>
      <span class="word">${found.length > 1 ? plural(found.length) : word}</span></button>`;
  }
}

customElements.define("desk-passage", DeskPassage);
