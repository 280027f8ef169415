// <desk-weigh>: candidate openings side by side, before there is a lesson: what each asks of a student, and what it gives.

import { LitElement, html, nothing, type TemplateResult } from "lit";
import { state } from "lit/decorators.js";
import * as api from "./api";
import { session } from "./session";

/** Milliseconds between two questions how far it is. */
const ASK = 500;

export class DeskWeigh extends LitElement {
  @state() private lessons: api.Opened[] = [];
  @state() private collections: string[] = [];
  /** The outside engine of this run. */
  @state() private outside: string | null = null;
  @state() private weighed: api.Weighed | null = null;
  private timer = 0;

  protected override createRenderRoot(): this {
    return this;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    void this.trying(async () => {
      ({ lessons: this.lessons, outside: this.outside } = await api.lessons());
      this.collections = (await api.collections()).collections.map(({ name }) => name);
      await this.look();
    });
  }

  override disconnectedCallback(): void {
    clearTimeout(this.timer);
    super.disconnectedCallback();
  }

  override render(): TemplateResult {
    return html`<section>
      <h2>Weigh openings</h2>
      <p>How often would each come up, how much is there to learn, and how does one stand then? For players of one rating, side by side.</p>
      <form class="ways" @submit=${this.asked}>
        <label class="wide">Their moves, an opening a line
          <textarea name="moves" rows="3" spellcheck="false" placeholder="1. e4 e5 2. Nc3 Nf6 3. f4"></textarea></label>
        ${this.lessons.map(
          ({ key, title }) => html`<label class="product"><input type="checkbox" name="lessons" value=${key} /> <span>${title}</span></label>`,
        )}
        <label>Players of about <input name="audience" type="number" min="400" max="2900" value="1500" required /></label>
        ${this.collections.length
          ? html`<label>Games of <select name="collection"><option value="">no collection</option>${this.collections.map(
              (name) => html`<option>${name}</option>`,
            )}</select></label>`
          : nothing}
        ${this.outside === null
          ? nothing
          : html`<label class="product"><input type="checkbox" name="outside" checked /> <span>${this.outside} answers the searches</span></label>`}
        <button class="plain" ?disabled=${this.weighed?.state === "running"}>weigh them</button>
      </form>
      <div aria-live="polite">${this.weighed ? told(this.weighed) : nothing}</div>
      ${this.weighed?.state === "done"
        ? html`<p class="doings"><button class="plain" @click=${() => void this.trying(async () => api.save(await api.weighedReport(), "text/html"))}>save this as a report</button></p>`
        : nothing}
    </section>`;
  }

  private readonly asked = (event: SubmitEvent): void => {
    event.preventDefault();
    const form = new FormData(event.currentTarget as HTMLFormElement);
    void this.trying(async () => {
      await api.weigh({
        moves: String(form.get("moves")).split("\n").filter((line) => line.trim()),
        lessons: form.getAll("lessons").map(String),
        audience: Number(form.get("audience")),
        collection: String(form.get("collection") ?? ""),
        outside: form.get("outside") !== null,
      });
      session.problem = "";
      session.tell("status");
      await this.look();
    });
  };

  /** Asks how far it is, until it is done. */
  private async look(): Promise<void> {
    clearTimeout(this.timer);
    this.weighed = await api.weighed();
    if (this.weighed.state === "running" && this.isConnected) {
      this.timer = window.setTimeout(() => void this.trying(() => this.look()), ASK);
    }
  }

  private async trying(act: () => Promise<unknown>): Promise<void> {
    try {
      await act();
    } catch (error) {
      session.failed(error);
    }
  }
}

function told({ state: now, done, of, problem, said, candidates }: api.Weighed): TemplateResult | typeof nothing {
  if (now === "none") return nothing;
  if (now === "running") return html`<p class="unread">Weighing: ${done} of ${of} are done.</p>`;
  if (now === "failed") return html`<p class="unread">${problem}</p>`;
  return html`${said.map((sentence) => html`<p class="unread">${sentence}</p>`)}
    <div class="weighed">${candidates.map(
      ({ name, said: lines }) => html`<article><h3>${name}</h3>${lines.map((line) => html`<p>${line}</p>`)}</article>`,
    )}</div>`;
}

customElements.define("desk-weigh", DeskWeigh);
