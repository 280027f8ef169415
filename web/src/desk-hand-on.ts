// <desk-hand-on>: the lesson told and handed on: its running order, its file, what it is published as.

import { LitElement, html, nothing, type TemplateResult } from "lit";
import { state } from "lit/decorators.js";
import * as api from "./api";
import { Watch, session } from "./session";

export class DeskHandOn extends LitElement {
  @state() private products: api.Product[] = [];
  @state() private order: { said: string[]; script: string } | null = null;
  @state() private editions: readonly { number: number; words: string }[] = [];
  @state() private news = "";
  /** Where to publish into, unless the author says otherwise. */
  @state() private folder = "";
  /** Of which lesson the editions are. */
  private of = "";
  @state() private busy = false;
  private seen: api.Publishing | null = null;

  constructor() {
    super();
    new Watch(this, session, ["lesson", "study", "findings", "publishing"]);
  }

  protected override createRenderRoot(): this {
    return this;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    void this.ready();
  }

  /** What can be published, and whereto; a refusal that is shown meanwhile stays. */
  private async ready(): Promise<void> {
    try {
      this.products = (await api.products()).products;
      this.folder = `${(await api.folder("")).path.replace(/\/$/, "")}/published`;
    } catch (error) {
      session.failed(error);
    }
  }

  override willUpdate(): void {
    const key = session.lesson?.key ?? "";
    const publishing = session.publishing;
    if (publishing !== this.seen) {
      this.seen = publishing;
      if (key === this.of && publishing?.published) void this.look(key);
    }
    if (key === this.of) return;
    this.of = key;
    [this.editions, this.news, this.order] = [[], "", null];
    if (key) void this.look(key);
  }

  /** Asks what has been published of the lesson. */
  private async look(key: string): Promise<void> {
    try {
      const { editions } = await api.editions(key);
      if (key === this.of) this.editions = editions;
    } catch (error) {
      session.failed(error);
    }
  }

  override render(): TemplateResult | typeof nothing {
    if (!session.lesson) return nothing;
    return html`<section class="todo">
      <h2>Tell it, and hand it on</h2>
      <form class="ways" @submit=${this.told}>
        <label>A talk of <input name="minutes" type="number" min="1" step="any" placeholder="any number of" /> minutes</label>
        <label class="product"><input type="checkbox" name="pauses" /> <span>with the pause points that were found</span></label>
        <button class="plain" ?disabled=${this.busy}>the running order, with times</button>
      </form>
      <p class="doings"><button class="plain" ?disabled=${this.busy} @click=${this.saved}>save the PGN file</button>
        <button class="plain" ?disabled=${this.busy} @click=${() => void session.report("proof")}>save a report of all that was checked</button></p>
      ${this.order
        ? html`${this.order.said.map((sentence) => html`<p>${sentence}</p>`)}
            <pre class="script" tabindex="0" aria-label="Script">${unmarked(this.order.script)}</pre>
            <p class="doings"><button class="plain" @click=${this.scripted}>save the script</button></p>`
        : nothing}
      ${this.products.length ? this.publishing() : nothing} ${this.editions.length ? this.since() : nothing}
    </section>`;
  }

  private publishing(): TemplateResult {
    return html`<form class="ways" @submit=${this.publish}>
        <fieldset>
          <legend>Publish it as</legend>
          ${this.products.map(
            ({ name, summary, usual }) => html`<label class="product"
              ><input type="checkbox" name="only" value=${name} ?checked=${usual} />
              <span>${name}: ${summary}</span></label>`,
          )}
        </fieldset>
        ${session.study?.state === "done"
          ? nothing
          : html`<p class="unread">For all but ${plainly(this.products)} the lesson is looked through for pause points first, which takes some minutes once.</p>`}
        ${this.looks()}
        <label>into the folder <input name="path" required .value=${this.folder} /></label>
        <label class="product"><input type="checkbox" name="anyway" /> also where claims fail</label>
        <button class="plain" ?disabled=${this.busy || session.publishing?.state === "running"}>publish</button>
      </form>
      <div role="status">${session.publishing ? this.publishingSaid(session.publishing) : nothing}</div>
      ${session.publishing?.state === "running"
        ? html`<p class="doings"><button class="plain" @click=${this.broken}>break it off</button></p>`
        : nothing}`;
  }

  /** How products look: closed, for most publish as last time. */
  private looks(): TemplateResult {
    const choose = (label: string, name: string, of: readonly (readonly [string, string])[]): TemplateResult =>
      html`<label>${label} <select name=${name}>${of.map(([value, said]) => html`<option value=${value}>${said}</option>`)}</select></label>`;
    const tick = (label: string, name: string): TemplateResult =>
      html`<label class="product"><input type="checkbox" name=${name} /> <span>${label}</span></label>`;
    return html`<details class="wide looks">
      <summary>How it looks</summary>
      <label>Pictures <input name="width" type="number" min="1" max="16384" placeholder="720" /> pixels wide</label>
      ${choose("Letters of the pieces", "language", Object.entries(LANGUAGES))}
      ${choose("Moves of the handout in", "notation", [["letters", "letters"], ["figurine", "figurines"]])}
      ${choose("Paper", "paper", [["a4", "A4"], ["letter", "Letter"]])}
      ${choose("Columns", "columns", [["", "as the type asks for"], ["1", "one"], ["2", "two"]])}
      ${tick("large type in the handout", "large")} ${tick("a video that is higher than wide", "vertical")}
      ${tick("captions drawn into the video", "burn_captions")} ${tick("every frame of the video in its file", "constant_rate")}
      ${choose("Pictures of the video as", "codec", [["h264", "H.264"], ["av1", "AV1"]])}
      <label>As a loop, only line <input name="loop" type="number" min="1" placeholder="all of them" /></label>
      <label>A recording under it <input name="voice" placeholder="/home/me/voice.wav" /></label>
      <label>Captions and video to fit into <input name="minutes" type="number" min="1" step="any" placeholder="any number of" /> minutes</label>
      ${tick("captions and video with the pause points that were found", "pauses")}
    </details>`;
  }

  private since(): TemplateResult {
    return html`<form class="ways" @submit=${this.compared}>
        <label>What is new since <select name="edition">${[...this.editions].reverse().map(
          ({ number, words }) => html`<option value=${number}>${words}</option>`,
        )}</select></label>
        ${this.editions.length > 1
          ? html`<label>up to <select name="until"><option value="">the lesson as it is now</option>${this.editions.map(
              ({ number, words }) => html`<option value=${number}>${words}</option>`,
            )}</select></label>`
          : nothing}
        <button class="plain" ?disabled=${this.busy}>say it</button>
      </form>
      ${this.news ? html`<pre class="script" tabindex="0" aria-label="What is new">${this.news}</pre>` : nothing}`;
  }

  private publishingSaid({ state: now, what, done, of, problem, published }: api.Publishing): TemplateResult | string | typeof nothing {
    if (now === "running") {
      const doing = what === "step" ? "Looking for pause points first" : "At work";
      return of ? `${doing}: ${done} of ${of} ${what}s are done.` : `${doing}.`;
    }
    if (now === "failed") return html`<p class="problem">${problem}</p>`;
    return published ? this.done(published) : nothing;
  }

  private readonly broken = (): void => {
    const key = session.lesson?.key;
    if (key === undefined) return;
    void this.trying(async () => {
      const { published } = await api.breakOff(key);
      session.said = published ? "It was done already." : "Broken off; nothing was written.";
    });
  };

  private done({ folder, files, empty, failing, edition, notes }: api.Published): TemplateResult {
    return html`<p>${files.length} files lie in ${folder}. ${edition ? `This is ${edition}.` : nothing} ${notes.join(" ")}
      ${empty.length ? `Nothing to show: ${empty.join(", ")}. ` : nothing}
      ${failing ? `${failing} ${failing === 1 ? "claim that fails was" : "claims that fail were"} published all the same.` : nothing}</p>`;
  }

  private readonly told = (event: SubmitEvent): void => {
    event.preventDefault();
    const key = session.lesson?.key;
    const form = new FormData(event.currentTarget as HTMLFormElement);
    const minutes = numberOf(form, "minutes");
    if (key !== undefined) void this.trying(async () => (this.order = await api.order(key, minutes, form.get("pauses") !== null)));
  };

  private readonly scripted = (): void => {
    if (this.order) api.saveAs("script.md", this.order.script, "text/markdown");
  };

  private readonly compared = (event: SubmitEvent): void => {
    event.preventDefault();
    const key = session.lesson?.key;
    const form = new FormData(event.currentTarget as HTMLFormElement);
    const edition = numberOf(form, "edition");
    if (key !== undefined && edition !== null) void this.trying(async () => (this.news = (await api.news(key, edition, numberOf(form, "until"))).text));
  };

  private readonly saved = (): void => {
    const key = session.lesson?.key;
    if (key === undefined) return;
    void this.trying(async () => {
      api.save(await api.pgn(key), "application/vnd.chess-pgn");
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
      await api.publish(key, String(form.get("path")), only, form.get("anyway") !== null, looksOf(form));
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

/** Markdown as it is read: without the signs that make it bold, slanted or a time. */
const unmarked = (text: string): string =>
  text
    .replace(/^#+ /gm, "")
    .replace(/`([^`\n]*)`/g, "$1")
    .replace(/\*\*([^*\n]+)\*\*/g, "$1")
    .replace(/\*([[(][^*\n]*[\])])\*/g, "$1");

/** Products that need no study: "captions, pgn and video". */
function plainly(products: readonly api.Product[]): string {
  const names = products.filter(({ needs_study }) => !needs_study).map(({ name }) => name);
  return `${names.slice(0, -1).join(", ")} and ${names.at(-1) ?? ""}`;
}

/** A field's number; null where nothing is in it. */
function numberOf(form: FormData, name: string): number | null {
  const said = String(form.get(name) ?? "").trim();
  return said ? Number(said) : null;
}

function looksOf(form: FormData): api.Looks {
  const [columns, width] = [numberOf(form, "columns"), numberOf(form, "width")];
  return {
    ...(width === null ? {} : { width }),
    language: String(form.get("language")) as keyof typeof LANGUAGES,
    notation: form.get("notation") === "figurine" ? "figurine" : "letters",
    paper: form.get("paper") === "letter" ? "letter" : "a4",
    columns: columns === 1 || columns === 2 ? columns : null,
    large: form.get("large") !== null,
    vertical: form.get("vertical") !== null,
    burn_captions: form.get("burn_captions") !== null,
    constant_rate: form.get("constant_rate") !== null,
    codec: form.get("codec") === "av1" ? "av1" : "h264",
    loop: numberOf(form, "loop"),
    voice: String(form.get("voice") ?? "").trim(),
    minutes: numberOf(form, "minutes"),
    pauses: form.get("pauses") !== null,
  };
}

customElements.define("desk-hand-on", DeskHandOn);
