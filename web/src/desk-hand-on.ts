// <desk-hand-on>: the lesson told and handed on: its running order, its file, what it is published as.

import { LitElement, html, nothing, type TemplateResult } from "lit";
import { state } from "lit/decorators.js";
import * as api from "./api";
import { Watch, session } from "./session";

export class DeskHandOn extends LitElement {
  @state() private products: api.Product[] = [];
  @state() private order: { said: string[]; script: string } | null = null;
  @state() private published: api.Published | null = null;
  @state() private busy = false;

  constructor() {
    super();
    new Watch(this, session, ["lesson", "study", "findings"]);
  }

  protected override createRenderRoot(): this {
    return this;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    void this.trying(async () => {
      this.products = (await api.products()).products;
    });
  }

  override render(): TemplateResult | typeof nothing {
    if (!session.lesson) return nothing;
    return html`<section class="todo">
      <h2>Tell it, and hand it on</h2>
      <p class="doings">
        <button class="plain" ?disabled=${this.busy} @click=${this.told}>the running order, with times</button>
        <button class="plain" ?disabled=${this.busy} @click=${this.saved}>save the PGN file</button>
      </p>
      ${this.order
        ? html`${this.order.said.map((sentence) => html`<p>${sentence}</p>`)}
            <pre class="script" tabindex="0" aria-label="Script">${this.order.script}</pre>`
        : nothing}
      ${this.products.length ? this.publishing() : nothing}
    </section>`;
  }

  private publishing(): TemplateResult {
    return html`<form class="ways" @submit=${this.publish}>
        <fieldset>
          <legend>Publish it as</legend>
          ${this.products.map(
            ({ name, summary, needs_study, usual }) => html`<label class="product"
              ><input type="checkbox" name="only" value=${name} ?checked=${usual && !needs_study} />
              <span>${name}: ${summary}${needs_study ? " (once what it leaves open has been looked for)" : ""}</span></label>`,
          )}
        </fieldset>
        ${this.looks()}
        <label>into the folder <input name="path" required placeholder="/home/me/published" /></label>
        <label class="product"><input type="checkbox" name="anyway" /> also where claims fail</label>
        <button class="plain" ?disabled=${this.busy}>publish</button>
      </form>
      <div role="status">${this.published ? this.done(this.published) : nothing}</div>`;
  }

  /** How products look: closed, for most publish as last time. */
  private looks(): TemplateResult {
    const choose = (label: string, name: string, of: Record<string, string>): TemplateResult =>
      html`<label>${label} <select name=${name}>${Object.entries(of).map(([value, said]) => html`<option value=${value}>${said}</option>`)}</select></label>`;
    const tick = (label: string, name: string): TemplateResult =>
      html`<label class="product"><input type="checkbox" name=${name} /> <span>${label}</span></label>`;
    return html`<details class="wide">
      <summary>How it looks</summary>
      ${choose("Letters of the pieces", "language", LANGUAGES)}
      ${choose("Moves of the handout in", "notation", { letters: "letters", figurine: "figurines" })}
      ${choose("Paper", "paper", { a4: "A4", letter: "Letter" })}
      ${choose("Columns", "columns", { "": "as the type asks for", 1: "one", 2: "two" })}
      ${tick("large type in the handout", "large")} ${tick("a video that is higher than wide", "vertical")}
      ${tick("captions drawn into the video", "burn_captions")}
    </details>`;
  }

  private done({ folder, files, empty, failing, edition, notes }: api.Published): TemplateResult {
    return html`<p>${files.length} files lie in ${folder}. ${edition ? `This is ${edition}.` : nothing} ${notes.join(" ")}
      ${empty.length ? `Nothing to show: ${empty.join(", ")}. ` : nothing}
      ${failing ? `${failing} ${failing === 1 ? "claim that fails was" : "claims that fail were"} published all the same.` : nothing}</p>`;
  }

  private readonly told = (): void => {
    const key = session.lesson?.key;
    if (key !== undefined) void this.trying(async () => (this.order = await api.order(key)));
  };

  private readonly saved = (): void => {
    const key = session.lesson?.key;
    if (key === undefined) return;
    void this.trying(async () => {
      const { name, base64 } = await api.pgn(key);
      const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
      const link = document.createElement("a");
      link.href = URL.createObjectURL(new Blob([bytes], { type: "application/vnd.chess-pgn" }));
      link.download = name;
      link.click();
      setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
    });
  };

  private readonly publish = (event: SubmitEvent): void => {
    event.preventDefault();
    const key = session.lesson?.key;
    const form = new FormData(event.currentTarget as HTMLFormElement);
    const only = form.getAll("only").map(String);
    if (key === undefined) return;
    if (!only.length) return session.failed(new Error("choose at least one thing to publish it as"));
    void this.trying(async () => {
      this.published = await api.publish(key, String(form.get("path")), only, form.get("anyway") !== null, looksOf(form));
    });
  };

  private async trying(act: () => Promise<unknown>): Promise<void> {
    this.busy = true;
    try {
      await act();
      session.problem = "";
      session.tell("status");
    } catch (error) {
      session.failed(error);
    } finally {
      this.busy = false;
    }
  }
}

const LANGUAGES = { en: "English", de: "German", fr: "French", es: "Spanish", nl: "Dutch" };

function looksOf(form: FormData): api.Looks {
  const columns = Number(form.get("columns"));
  return {
    language: String(form.get("language")) as keyof typeof LANGUAGES,
    notation: form.get("notation") === "figurine" ? "figurine" : "letters",
    paper: form.get("paper") === "letter" ? "letter" : "a4",
    columns: columns === 1 || columns === 2 ? columns : null,
    large: form.get("large") !== null,
    vertical: form.get("vertical") !== null,
    burn_captions: form.get("burn_captions") !== null,
  };
}

customElements.define("desk-hand-on", DeskHandOn);
