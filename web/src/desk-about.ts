// <desk-about>: what the lesson is called, which side it teaches, and for whom it is.

import { LitElement, html, nothing, type TemplateResult } from "lit";
import { state } from "lit/decorators.js";
import * as api from "./api";
import { chosen, type Edit, type Effort, type Lesson } from "./api";
import { Watch, session } from "./session";

export class DeskAbout extends LitElement {
  @state() private collections: string[] = [];

  constructor() {
    super();
    new Watch(this, session, ["lesson", "findings"]);
  }

  protected override createRenderRoot(): this {
    return this;
  }

  /** Collections may have been made since. */
  private readonly toggled = (event: Event): void => {
    if (!(event.target as HTMLDetailsElement).open) return;
    api.collections().then(
      ({ collections }) => (this.collections = collections.map(({ name }) => name)),
      (error: unknown) => session.failed(error),
    );
  };

  override render(): TemplateResult | typeof nothing {
    const { lesson } = session;
    if (!lesson) return nothing;
    if (!lesson.folder) return html`<details class="about" @toggle=${this.toggled}><summary>About this lesson</summary>
      <p>${lesson.name} is a bare PGN file: title, side, audience, diagrams and opinions are kept by a lesson folder. Make one of it; the file stays as it is.</p>
      <form @submit=${made}>
        <label>Folder <input name="path" required placeholder="/home/me/my-lesson" /></label>
        <label>Teaches
          <select name="side"><option value="white">White</option><option value="black">Black</option></select></label>
        <label>Players of about <input name="audience" type="number" min="400" max="2900" .value=${String(lesson.audience)} required /></label>
        <button class="plain">make a lesson of it</button>
      </form>
      ${way(this.collections)}${importing()}</details>`;
    return html`<details class="about" @toggle=${this.toggled}>
      <summary>About this lesson</summary>
      <form @submit=${this.changed}>
        <label>Title <input name="title" maxlength="500" .value=${lesson.title} /></label>
        <label>Teaches
          <select name="side">
            ${lesson.side === null ? html`<option value="">neither side</option>` : nothing}
            <option value="white" ?selected=${lesson.side === "white"}>White</option>
            <option value="black" ?selected=${lesson.side === "black"}>Black</option>
          </select></label>
        <label>Players of about <input name="audience" type="number" min="400" max="2900" .value=${String(lesson.audience)} /></label>
        <button class="plain">set it so</button>
      </form>
      ${way(this.collections)}
      ${importing()} ${opinions(lesson)}
    </details>`;
  }

  private readonly changed = (event: SubmitEvent): void => {
    event.preventDefault();
    const { lesson } = session;
    const form = new FormData(event.currentTarget as HTMLFormElement);
    if (!lesson) return;
    const title = String(form.get("title") ?? "").trim();
    const side = String(form.get("side") ?? "");
    const audience = Number(form.get("audience"));
    const edit: Edit = { op: "settings" };
    if (title && title !== lesson.title) edit.title = title;
    if ((side === "white" || side === "black") && side !== lesson.side) edit.side = side;
    if (audience !== lesson.audience) edit.audience = audience;
    void session.change(edit, "Set.");
  };
}

const EFFORTS: Record<Effort, string> = {
  sketch: "sketch, the quickest",
  normal: "normal",
  thorough: "thorough, which takes long",
};

/** How much each check and each search may spend, who answers, and what is counted; what is chosen holds until the desk is ended. */
function way(collections: readonly string[]): TemplateResult | typeof nothing {
  const now = session.way;
  if (!now) return nothing;
  const { outside, collection } = now;
  const effort = (words: string, name: "effort" | "looking"): TemplateResult =>
    html`<label>${words}
      <select name=${name}>
        ${Object.entries(EFFORTS).map(([each, said]) => html`<option value=${each} ?selected=${each === now[name]}>${said}</option>`)}
      </select></label>`;
  return html`<form @change=${chose}>
    ${effort("Effort of each check", "effort")}
    ${effort("Effort of all other searches", "looking")}
    ${collections.length
      ? html`<label>Games that are counted
          <select name="collection">
            <option value="" ?selected=${collection === ""}>none</option>
            ${collections.map((name) => html`<option value=${name} ?selected=${name === collection}>${name}</option>`)}
          </select></label>`
      : nothing}
    ${outside
      ? html`<label>Searches are answered by
          <select name="outside">
            <option value="" ?selected=${!outside.asked}>Lineproof</option>
            <option value="yes" ?selected=${outside.asked}>${outside.name}</option>
          </select></label>`
      : nothing}
  </form>`;
}

async function chose(event: Event): Promise<void> {
  const key = session.lesson?.key;
  const form = new FormData(event.currentTarget as HTMLFormElement);
  if (key === undefined) return;
  try {
    await api.choose(key, {
      effort: form.get("effort") as Effort,
      looking: form.get("looking") as Effort,
      outside: form.get("outside") === "yes",
      collection: String(form.get("collection") ?? session.way?.collection ?? ""),
    });
    session.problem = "";
    session.tell("status");
  } catch (error) {
    session.failed(error);
  }
}

/** Makes a lesson folder of a bare PGN file, and goes to it. */
async function made(event: SubmitEvent): Promise<void> {
  event.preventDefault();
  const key = session.lesson?.key;
  const form = new FormData(event.currentTarget as HTMLFormElement);
  if (key === undefined) return;
  await session.settled();
  try {
    const fresh = await api.start({
      how: "new",
      path: String(form.get("path")),
      side: form.get("side") === "black" ? "black" : "white",
      audience: Number(form.get("audience")),
      files: [await api.pgn(key)],
    });
    await api.takeOff(key);
    location.hash = api.address(fresh.key);
  } catch (error) {
    session.failed(error);
  }
}

function importing(): TemplateResult {
  return html`<form @submit=${imported}>
    <label>Add the games of PGN files <input name="files" type="file" multiple accept=".pgn,.txt" required /></label>
    <label><input name="joined" type="checkbox" /> into the lines that are there, where they begin alike</label>
    <button class="plain">add them</button>
  </form>`;
}

/** The sentences that are not checked, also those that the lesson has no more. */
function opinions({ opinions: marked }: Lesson): TemplateResult | typeof nothing {
  if (!marked.length) return nothing;
  return html`<p>Your opinion, which is not checked:</p>
    <ul class="entries">
      ${marked.map(
        ({ name, words, move }) => html`<li>“${words}” ${move ? html`<span class="unread">beside ${move}</span>` : nothing}
          <button class="plain" @click=${() => void session.change({ op: "take_back", name }, "It is checked again.")}>have it checked</button></li>`,
      )}
    </ul>`;
}

async function imported(event: SubmitEvent): Promise<void> {
  event.preventDefault();
  const form = event.currentTarget as HTMLFormElement;
  const files = await chosen(form.querySelector<HTMLInputElement>("input[type=file]")?.files ?? null);
  const joined = new FormData(form).get("joined") !== null;
  const said = joined ? "What begins as the lesson does stands in its lines; the rest after it." : "They stand after the rest of the lesson.";
  await session.change({ op: "import", files, joined }, said);
  form.reset();
}

customElements.define("desk-about", DeskAbout);
