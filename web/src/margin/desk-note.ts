// <desk-note>: under the board, what was found about the sentence, with its evidence.

import { LitElement, html, nothing, type TemplateResult } from "lit";
import type { Finding, LegalMove, Place } from "../api";
import { Watch, session } from "../session";
import { SIGNS, ranked } from "../signs";
import { opinion } from "./desk-sentences";

export class DeskNote extends LitElement {
  constructor() {
    super();
    new Watch(this, session, ["lesson", "cursor", "findings"]);
    this.addEventListener("keydown", (event) => this.pressed(event));
  }

  protected override createRenderRoot(): this {
    return this;
  }

  override render(): TemplateResult | typeof nothing {
    const { place, shown } = session;
    if (!place) return nothing;
    const here = ranked(session.findings.filter((finding) => finding.place === place.id));
    return html`${here.map((finding) =>
        finding.id === shown?.finding.id ? this.told(finding, place) : this.named(finding),
      )}`;
  }

  private sign(finding: Finding): TemplateResult {
    const { glyph, word } = SIGNS[finding.outcome];
    return html`<span class="sign ${finding.outcome}"><span class="glyph" aria-hidden="true">${glyph}</span>
      <span class="word">${word}</span></span>`;
  }

  private named(finding: Finding): TemplateResult {
    return html`<button class="named" @click=${() => session.show(finding)}>${this.sign(finding)} “${finding.words}”</button>`;
  }

  private told(finding: Finding, place: Place): TemplateResult {
    const sentence = session.lesson?.folder
      ? session.sentences.find(({ findings }) => findings.includes(finding.id))
      : undefined;
    return html`<section class="note" aria-label="Finding">
      <p class="quoted">${this.sign(finding)} “${finding.words}”</p>
      <p class="why">${finding.outcome === "waiting" ? "This is being checked." : finding.why}</p>
      ${finding.instead ? html`<p class="instead"><span class="small-caps">true</span> ${finding.instead}</p>` : nothing}
      ${finding.second ? html`<p class="second">${finding.second}</p>` : nothing}
      ${finding.evidence?.moves.length ? this.evidence(finding, finding.evidence, place) : nothing}
      ${sentence
        ? html`<p class="doings"><button class="plain" @click=${() => void opinion(sentence, true)}>this is my opinion</button></p>`
        : nothing}
    </section>`;
  }

  /** The evidence line, move by move; a click or an arrow key shows the position. */
  private evidence(finding: Finding, evidence: NonNullable<Finding["evidence"]>, place: Place): TemplateResult {
    const step = session.shown?.step ?? -1;
    const from = session.tree?.withFen(place, evidence.fen);
    return html`<div class="evidence" role="group" aria-label="Evidence, step by step">
        ${evidence.moves.map(
          (move, index) => html`<button
              class="move ${index + 1 === step ? "here" : ""}"
              aria-current=${index + 1 === step ? "true" : nothing}
              @click=${() => session.show(finding, index + 1)}
            >${numbered(evidence.fen, index)}${move.san}</button> `,
        )}
      </div>
      <p class="doings">
        <button class="plain" ?disabled=${step < 0} @click=${() => session.show(finding, step - 1)}>back</button>
        <button
          class="plain"
          ?disabled=${step >= evidence.moves.length}
          @click=${() => session.show(finding, step < 0 ? 1 : step + 1)}
        >step on</button>
        ${from
          ? html`<button class="plain" @click=${() => this.take(from, evidence.moves)}>take it into the lesson</button>`
          : nothing}
      </p>`;
  }

  private take(from: Place, moves: readonly LegalMove[]): void {
    void session.addLine(
      moves.map(({ uci }) => uci),
      from.id,
    );
  }

  private pressed(event: KeyboardEvent): void {
    const { shown } = session;
    if (!shown || !(event.target as HTMLElement).closest(".evidence")) return;
    if (event.key === "ArrowRight") session.show(shown.finding, Math.max(1, shown.step + 1));
    else if (event.key === "ArrowLeft") session.show(shown.finding, shown.step - 1);
    else return;
    event.preventDefault();
  }
}

function numbered(fen: string, index: number): string {
  const [, turn = "w", , , , full = "1"] = fen.split(" ");
  const half = index + (turn === "b" ? 1 : 0);
  const number = Number(full) + Math.floor(half / 2);
  if (half % 2 === 0) return `${number}. `;
  return index === 0 ? `${number}... ` : "";
}

customElements.define("desk-note", DeskNote);
