// <desk-question>: "what about ...?", asked of the present place, and answered from the lesson and by search.

import { LitElement, html, nothing, type TemplateResult } from "lit";
import { state } from "lit/decorators.js";
import * as api from "../api";
import { Watch, session } from "../session";
import { label } from "../tree";
import { evidence } from "./evidence";

export class DeskQuestion extends LitElement {
  @state() private asking = false;
  @state() private told: { place: string; question: string; answer: api.Answer } | null = null;

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
    const told = this.told?.place === place.id ? this.told : null;
    return html`<form class="typed" @submit=${this.submitted}>
        <label for="question">What about</label>
        <input id="question" autocomplete="off" spellcheck="false" placeholder="moves from here …" ?readonly=${this.asking} />
      </form>
      <div aria-live="polite">
        ${this.asking ? html`<p class="unread">Looking.</p>` : nothing}
        ${told && !this.asking ? this.answer(told.question, told.answer, place.id) : nothing}
      </div>`;
  }

  private answer(question: string, answer: api.Answer, place: string): TemplateResult {
    const exhibit = { id: `answer to ${question}`, place, evidence: answer.evidence, marks: [] };
    const known = answer.places.flatMap((id) => session.tree?.byId.get(id) ?? []).slice(0, 3);
    return html`<section class="note" aria-label="Answer">
      <p class="quoted">What about ${question}?</p>
      ${answer.said.map((sentence) => html`<p class="why">${sentence}</p>`)}
      ${known.map((one) => html`<button class="named plain" @click=${() => session.go(one.id)}>see ${label(one)}</button>`)}
      ${evidence(exhibit, answer.add)}
    </section>`;
  }

  private readonly submitted = async (event: SubmitEvent): Promise<void> => {
    event.preventDefault();
    const { place, lesson } = session;
    const question = this.querySelector("input")?.value.trim() ?? "";
    if (!place || !lesson || !question || this.asking) return;
    this.asking = true;
    try {
      this.told = { place: place.id, question, answer: await api.ask(lesson.key, place.id, question) };
      session.problem = "";
      session.tell("status");
    } catch (error) {
      session.failed(error);
    } finally {
      this.asking = false;
    }
  };
}

customElements.define("desk-question", DeskQuestion);
