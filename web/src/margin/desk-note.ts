// <desk-note>: under the board, what was found about the sentence, with its evidence.

import { LitElement, html, nothing, type TemplateResult } from "lit";
import type { Finding } from "../api";
import { Watch, session } from "../session";
import { SIGNS, ranked } from "../signs";
import { opinion } from "./desk-sentences";
import { evidence } from "./evidence";

export class DeskNote extends LitElement {
  constructor() {
    super();
    new Watch(this, session, ["lesson", "cursor", "findings"]);
  }

  protected override createRenderRoot(): this {
    return this;
  }

  override render(): TemplateResult | typeof nothing {
    const { place, shown } = session;
    if (!place) return nothing;
    const here = ranked(session.findings.filter((finding) => finding.place === place.id));
    return html`${here.map((finding) => (finding.id === shown?.exhibit.id ? this.told(finding) : this.named(finding)))}`;
  }

  private sign(finding: Finding): TemplateResult {
    const { glyph, word } = SIGNS[finding.outcome];
    return html`<span class="sign ${finding.outcome}"><span class="glyph" aria-hidden="true">${glyph}</span>
      <span class="word">${word}</span></span>`;
  }

  private named(finding: Finding): TemplateResult {
    return html`<button class="named" @click=${() => session.show(finding)}>${this.sign(finding)} “${finding.words}”</button>`;
  }

  private told(finding: Finding): TemplateResult {
    const sentence = session.lesson?.folder
      ? session.sentences.find(({ findings }) => findings.includes(finding.id))
      : undefined;
    return html`<section class="note" aria-label="Finding">
      <p class="quoted">${this.sign(finding)} “${finding.words}”</p>
      <p class="why">${finding.outcome === "waiting" ? "This is being checked." : finding.why}</p>
      ${finding.instead ? html`<p class="instead"><span class="small-caps">true</span> ${finding.instead}</p>` : nothing}
      ${finding.second ? html`<p class="second">${finding.second}</p>` : nothing}
      ${session.contradictions.map(({ findings, why }) => {
        if (!findings.includes(finding.id)) return nothing;
        const other = session.findings.find(({ id }) => id !== finding.id && findings.includes(id));
        return html`<p class="second"><span class="small-caps">against</span> ${why}
          ${other ? html`<button class="plain" @click=${() => session.show(other)}>see “${other.words}”</button>` : nothing}</p>`;
      })}
      ${evidence(finding)}
      ${sentence
        ? html`<p class="doings"><button class="plain" @click=${() => void opinion(sentence, true)}>this is my opinion</button></p>`
        : nothing}
    </section>`;
  }
}

customElements.define("desk-note", DeskNote);
