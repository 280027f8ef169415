// <desk-app>: the desk as a whole: masthead, line map, manuscript, and the board in the margin.

import { LitElement, html, nothing, type TemplateResult } from "lit";
import { state } from "lit/decorators.js";
import * as api from "./api";
import type { DeskManuscript } from "./manuscript/desk-manuscript";
import type { DeskFigure } from "./margin/desk-figure";
import { Watch, session } from "./session";
import { label } from "./tree";
import "./desk-about";
import "./desk-find";
import "./desk-games";
import "./desk-hand-on";
import "./desk-others";
import "./desk-start";
import "./manuscript/desk-manuscript";
import "./map/desk-map";
import "./margin/desk-doings";
import "./margin/desk-figure";
import "./margin/desk-figures";
import "./margin/desk-note";
import "./margin/desk-question";
import "./margin/desk-sentences";
import "./margin/desk-todo";

export class DeskApp extends LitElement {
  @state() private none = false;
  private measuring: ResizeObserver | null = null;

  constructor() {
    super();
    new Watch(this, session, ["lesson", "status", "findings"]);
    this.addEventListener("move-begun", (event) => this.figure()?.begin((event as CustomEvent<string>).detail));
    this.addEventListener("words-begun", () => this.manuscript()?.begin());
    this.addEventListener("back-to-page", () => this.manuscript()?.back());
    window.addEventListener("keydown", (event) => this.pressed(event));
    window.addEventListener("hashchange", () => void session.settled().then(() => location.reload()));
    window.addEventListener("beforeunload", (event) => {
      if (session.lesson && !session.allSaved) event.preventDefault();
    });
  }

  protected override createRenderRoot(): this {
    return this;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    void this.begin();
  }

  private async begin(): Promise<void> {
    try {
      const { lessons } = await api.lessons();
      if (api.BEGINS) {
        this.none = true;
        return;
      }
      const first = lessons.find(({ key }) => key === api.NAMED) ?? lessons[0];
      if (first) await session.open(first.key);
      else this.none = true;
    } catch (error) {
      session.failed(error);
    }
  }

  override render(): TemplateResult {
    const { lesson } = session;
    return html`<header class="masthead">
        <p class="imprint"><span class="small-caps">Lineproof, the desk</span>
          <span class="small-caps">${lesson ? audience(lesson) : ""}</span></p>
        ${lesson ? html`<desk-map></desk-map>` : nothing}
      </header>
      <main>
        ${lesson
          ? html`<div class="page">
                <h1>${lesson.title}</h1>
                <p class="counted">${counted()}</p>
                ${lesson.unwritable ? html`<p class="unwritable" role="alert">${lesson.unwritable}</p>` : nothing}
                <desk-about></desk-about>
                <desk-others></desk-others>
                <desk-manuscript></desk-manuscript>
                <desk-todo></desk-todo>
                <desk-games></desk-games>
                <desk-hand-on></desk-hand-on>
              </div>
              <aside class="outer" aria-label="Board and findings">
                <desk-figure></desk-figure>
                <div class="margin">
                  <desk-question></desk-question>
                  <desk-note></desk-note>
                  <desk-sentences></desk-sentences>
                  <desk-todo here></desk-todo>
                  <desk-figures></desk-figures>
                  <desk-doings></desk-doings>
                </div>
              </aside>`
          : this.none
            ? html`<desk-start></desk-start>`
            : html`<h1 class="waiting">${session.problem ? "The lesson could not be opened" : "Opening the lesson"}</h1>`}
      </main>
      <footer class="status">
        <p role="status">${session.said}${this.joined()}</p>
        ${session.clash ? this.clash(session.clash) : nothing}
        ${lesson?.conflict ? this.conflict(lesson.conflict) : nothing}
        ${[session.problem, session.unstored].map((told) => (told ? html`<p class="problem" role="alert">${told}</p>` : nothing))}
        ${lesson ? html`<desk-find></desk-find>` : nothing}
        <p class="saved">${saved()}</p>
        ${lesson
          ? html`<p class="steps">
              <button class="plain" ?disabled=${!lesson.undo} @click=${() => void session.step("undo")}>undo</button>
              <button class="plain" ?disabled=${!lesson.redo} @click=${() => void session.step("redo")}>do again</button>
            </p>`
          : nothing}
      </footer>`;
  }

  override updated(): void {
    const { lesson } = session;
    if (lesson) document.title = `${lesson.title} · the desk`;
    const head = this.querySelector(".masthead");
    if (head && !this.measuring) {
      this.measuring = new ResizeObserver(() => {
        document.documentElement.style.setProperty("--under-map", `${head.getBoundingClientRect().height}px`);
      });
      this.measuring.observe(head);
    }
  }

  /** Way to the place whose position was reached. */
  private joined(): TemplateResult | typeof nothing {
    const other = session.joined === null ? undefined : session.tree?.byId.get(session.joined);
    if (!other) return nothing;
    return html` <button class="plain" @click=${() => session.go(other.id)}>see ${label(other)}</button>`;
  }

  private clash(clash: NonNullable<typeof session.clash>): TemplateResult {
    return html`<div class="clash" role="alert">
      <p>These words were changed elsewhere while you wrote. You wrote: “${clash.mine}” There stands now:
        ${clash.theirs ? `“${clash.theirs}”` : "nothing"}.</p>
      <button class="plain" @click=${() => void session.settle(true)}>take mine</button>
      <button class="plain" @click=${() => void session.settle(false)}>leave what stands there</button>
    </div>`;
  }

  private conflict({ ours, theirs }: { ours: string; theirs: string }): TemplateResult {
    return html`<div class="clash" role="alert">
      <p>Another program changed the file where you changed it, too. Here stands: “${ours}” In the file: “${theirs}”</p>
      <button class="plain" @click=${() => void session.keep("ours")}>keep what stands here</button>
      <button class="plain" @click=${() => void session.keep("theirs")}>take what is in the file</button>
    </div>`;
  }

  private figure(): DeskFigure | null {
    return this.querySelector("desk-figure");
  }

  private manuscript(): DeskManuscript | null {
    return this.querySelector("desk-manuscript");
  }

  /** Undo and redo, also in the words: those on their way are written first. */
  private pressed(event: KeyboardEvent): void {
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
    const key = event.key.toLowerCase();
    const op = key === "z" ? (event.shiftKey ? "redo" : "undo") : key === "y" ? "redo" : null;
    const field = event.target instanceof HTMLInputElement ? event.target : null;
    if (!op || field?.value) return;
    event.preventDefault();
    const words = document.activeElement?.closest("desk-words");
    void (async () => {
      if (words) await (words as import("./manuscript/desk-words").DeskWords).save();
      await session.step(op);
    })();
  }
}

function audience(lesson: api.Lesson): string {
  const side = lesson.side === null ? "" : `for ${lesson.side === "white" ? "White" : "Black"}, `;
  return `${side}players of about ${lesson.audience}`;
}

/** "12 claims: 10 hold, 1 fails, 1 is unsettled."; what does not hold leads to the next of its sort. */
function counted(): unknown {
  const { findings, proving } = session;
  if (!findings.length) return proving.complete ? "No sentence here says anything that can be checked yet." : "Reading the lesson.";
  const number = (outcome: api.Outcome): number => findings.filter((one) => one.outcome === outcome).length;
  const parts = [
    ["holds", "holds", "hold"],
    ["fails", "fails", "fail"],
    ["unsettled", "is unsettled", "are unsettled"],
    ["waiting", "is being checked", "are being checked"],
  ] as const;
  const said = parts.filter(([outcome]) => number(outcome)).map(([outcome, one, many], index) => {
    const count = number(outcome);
    const words = `${count} ${count === 1 ? one : many}`;
    return html`${index ? ", " : ""}${outcome === "fails" || outcome === "unsettled"
      ? html`<button class="plain ${outcome}" title="Go to the next" @click=${() => session.next(outcome)}>${words}</button>`
      : words}`;
  });
  return html`${findings.length} ${findings.length === 1 ? "claim" : "claims"}: ${said}.`;
}

function saved(): string {
  if (session.offline) return "The desk’s program does not answer. What you wrote waits here until it does.";
  if (!session.lesson) return "";
  if (session.allSaved) return "All is saved";
  return session.problem || session.unstored ? "Not all is saved" : "Writing it down";
}

customElements.define("desk-app", DeskApp);
