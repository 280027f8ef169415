// <desk-start>: the first minute: open a lesson, begin one from files or from a position, or look at the demo.

import { LitElement, html, nothing, type TemplateResult } from "lit";
import { state } from "lit/decorators.js";
import * as api from "./api";
import { lessonList } from "./desk-others";
import { session } from "./session";
import "./desk-weigh";

const KINDS = { lesson: "a lesson", file: "a PGN file", folder: "a folder" } as const;

export class DeskStart extends LitElement {
  @state() private folder: api.Folder | null = null;
  /** Whether it was asked what the user's folder has: the fields begin with it. */
  @state() private looked = false;
  @state() private busy = false;
  /** On the desk already. */
  @state() private lessons: api.Opened[] = [];

  protected override createRenderRoot(): this {
    return this;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    void this.look("");
    api.lessons().then(
      ({ lessons }) => (this.lessons = lessons),
      (error: unknown) => session.failed(error),
    );
  }

  override render(): TemplateResult {
    return html`<div class="page start">
      <h1>What will you teach?</h1>
      <p class="counted">A lesson is a folder with your lines and the words that you say to them. All of it stays on this machine.</p>
      ${this.lessons.length ? html`<section><h2>Go back to a lesson</h2>${lessonList(this.lessons)}</section>` : nothing}
      ${this.looked ? html`${this.begin()} ${this.open()} ${this.copy()} <desk-weigh></desk-weigh>` : nothing}
    </div>`;
  }

  private copy(): TemplateResult {
    return html`<section>
      <h2>Look at the demo</h2>
      <p>The Vienna Gambit for White, a lesson of the Harbour Street club, invented for this. A copy is made for you to write in.</p>
      <form class="ways" @submit=${this.demo}>
        <label>Folder for the copy <input name="path" required .value=${this.inside("vienna-demo")} /></label>
        <button class="plain" ?disabled=${this.busy}>open the demo</button>
      </form>
    </section>`;
  }

  private begin(): TemplateResult {
    return html`<section>
      <h2>Begin a lesson</h2>
      <form class="ways" @submit=${this.fresh}>
        <label>Title <input name="title" maxlength="500" placeholder="that of the files, or the folder’s name" /></label>
        <label>Folder <input name="path" required .value=${this.inside("my-lesson")} /></label>
        <label>Teaches
          <select name="side"><option value="white">White</option><option value="black">Black</option></select></label>
        <label>Players of about <input name="audience" type="number" min="400" max="2900" value="1500" required /></label>
        <label class="wide">From PGN files, one or several, if you have them <input name="files" type="file" multiple accept=".pgn,.txt" /></label>
        <label class="wide">Or from a position, as a FEN <input name="fen" placeholder="empty: the initial position" spellcheck="false" /></label>
        <button class="plain" ?disabled=${this.busy}>begin</button>
      </form>
    </section>`;
  }

  private open(): TemplateResult {
    const { folder } = this;
    return html`<section>
      <h2>Open a lesson</h2>
      ${folder
        ? html`<p class="unread">In ${folder.path}</p>
            <ul class="entries">
              ${folder.parent === null
                ? nothing
                : html`<li><button class="plain" @click=${() => void this.look(folder.parent ?? "")}>one folder up</button></li>`}
              ${folder.entries.map(
                (entry) => html`<li><button class="plain" @click=${() => void this.enter(entry)}>${entry.name}</button>
                  <span class="unread">${KINDS[entry.kind]}</span></li>`,
              )}
            </ul>
            ${folder.entries.length ? nothing : html`<p class="unread">There is no lesson and no PGN file here.</p>`}
            ${folder.more ? html`<p class="unread">There is more than is shown here; give the lesson’s name when you start the desk.</p>` : nothing}`
        : nothing}
    </section>`;
  }

  private inside(name: string): string {
    return this.folder ? `${this.folder.path.replace(/\/$/, "")}/${name}` : "";
  }

  private async look(path: string): Promise<void> {
    try {
      this.folder = await api.folder(path);
    } catch (error) {
      session.failed(error);
    } finally {
      this.looked = true;
    }
  }

  private async enter({ path, kind }: api.Entry): Promise<void> {
    if (kind === "folder") await this.look(path);
    else await this.start({ how: "open", path });
  }

  private readonly fresh = async (event: SubmitEvent): Promise<void> => {
    event.preventDefault();
    const form = event.currentTarget as HTMLFormElement;
    const given = new FormData(form);
    const fen = String(given.get("fen") ?? "").trim();
    const files = await api.chosen(form.querySelector<HTMLInputElement>("input[type=file]")?.files ?? null);
    await this.start({
      how: "new",
      path: String(given.get("path")),
      title: String(given.get("title") ?? "").trim(),
      side: given.get("side") === "black" ? "black" : "white",
      audience: Number(given.get("audience")),
      ...(files.length ? { files } : {}),
      ...(fen ? { fen } : {}),
    });
  };

  private readonly demo = async (event: SubmitEvent): Promise<void> => {
    event.preventDefault();
    const path = String(new FormData(event.currentTarget as HTMLFormElement).get("path"));
    await this.start({ how: "demo", path });
  };

  private async start(how: api.Start): Promise<void> {
    this.busy = true;
    try {
      const { key } = await api.start(how);
      session.problem = "";
      history.replaceState(null, "", `#${api.address(key)}`);
      await session.open(key);
    } catch (error) {
      session.failed(error);
    } finally {
      this.busy = false;
    }
  }
}

customElements.define("desk-start", DeskStart);
