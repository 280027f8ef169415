// <desk-about>: what the lesson is called, which side it teaches, and for whom it is.

import { LitElement, html, nothing, type TemplateResult } from "lit";
import * as api from "./api";
import { chosen, type Edit, type Effort } from "./api";
import { Watch, session } from "./session";

export class DeskAbout extends LitElement {
  constructor() {
    super();
    new Watch(this, session, ["lesson", "findings"]);
  }

  protected override createRenderRoot(): this {
    return this;
  }

  override render(): TemplateResult | typeof nothing {
    const { lesson } = session;
    if (!lesson) return nothing;
    if (!lesson.folder) return html`<details class="about"><summary>About this lesson</summary>
      <p>${lesson.name} is a bare PGN file: title, side and audience are kept by a lesson folder
        (<code>lineproof new FOLDER --from FILE</code>).</p>${effort()}${importing()}</details>`;
    return html`<details class="about">
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
      ${effort()}
      ${importing()}
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

/** How much each check may spend, and who answers; what is chosen holds until the desk is ended. */
function effort(): TemplateResult | typeof nothing {
  const now = session.effort;
  if (!now) return nothing;
  const { outside } = session;
  return html`<form @change=${chose}>
    <label>Effort of each check
      <select name="effort">
        ${Object.entries(EFFORTS).map(([name, words]) => html`<option value=${name} ?selected=${name === now}>${words}</option>`)}
      </select></label>
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
    await api.choose(key, form.get("effort") as Effort, form.get("outside") === "yes");
  } catch (error) {
    session.failed(error);
  }
}

function importing(): TemplateResult {
  return html`<form @submit=${imported}>
    <label>Add the games of PGN files <input name="files" type="file" multiple accept=".pgn,.txt" required /></label>
    <button class="plain">add them</button>
  </form>`;
}

async function imported(event: SubmitEvent): Promise<void> {
  event.preventDefault();
  const form = event.currentTarget as HTMLFormElement;
  const files = await chosen(form.querySelector<HTMLInputElement>("input[type=file]")?.files ?? null);
  await session.change({ op: "import", files }, "They stand after the rest of the lesson.");
  form.reset();
}

customElements.define("desk-about", DeskAbout);
