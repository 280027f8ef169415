// <desk-games>: games of the author's students against the lesson: where each left it, and what to add. They are not kept.

import { LitElement, html, nothing, type TemplateResult } from "lit";
import * as api from "./api";
import type { Departure, Followed } from "./api";
import { evidence } from "./margin/evidence";
import { Watch, session, type Exhibit } from "./session";
import { label } from "./tree";

export class DeskGames extends LitElement {
  constructor() {
    super();
    new Watch(this, session, ["lesson", "games", "cursor"]);
  }

  protected override createRenderRoot(): this {
    return this;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    void session.follow();
  }

  override render(): TemplateResult | typeof nothing {
    const { lesson, games } = session;
    if (!lesson) return nothing;
    return html`<section class="todo">
      <h2>Your students’ games</h2>
      ${lesson.side === null
        ? html`<p class="lead">Say under “About this lesson” which side it teaches; then games can be followed.</p>`
        : html`<p class="lead">Where did their games leave the lesson, and what did it cost? They are looked at, and not kept.</p>
            <form class="ways" @submit=${this.given}>
              <label>PGN file <input name="file" type="file" accept=".pgn,.txt" required /></label>
              <label>The student <input name="player" autocomplete="off" maxlength="200" placeholder="empty: who had the taught side" /></label>
              <button class="plain">follow them</button>
            </form>`}
      <div aria-live="polite">${games ? this.told(games) : nothing}</div>
    </section>`;
  }

  private told(games: Followed): TemplateResult | typeof nothing {
    if (games.state === "none") return nothing;
    const forget = html`<p class="doings"><button class="plain" @click=${forgotten}>forget these games</button></p>`;
    if (games.state === "running") return html`<p class="lead">Following: ${games.done} of ${games.of} games are done.</p>${forget}`;
    if (games.state === "failed") return html`<p class="lead">${games.problem}</p>`;
    const report = html`<p class="doings"><button class="plain" @click=${() => void session.report("games")}>save this as a report</button></p>`;
    return html`${games.said.map((sentence) => html`<p>${sentence}</p>`)}
      ${games.common.length
        ? html`<h3>Where they left it, and what to add</h3>
            ${games.common.map((one, index) => this.departure(one, `departure ${index}`))}`
        : nothing}
      ${games.games.length
        ? html`<details><summary>Game by game</summary>${games.games.map((one, index) => this.departure(one, `game ${index}`))}</details>`
        : nothing}
      ${report}${forget}`;
  }

  private departure({ place, words, evidence: line, add }: Departure, id: string): TemplateResult {
    const exhibit: Exhibit = { id, place, evidence: line, marks: [] };
    const at = session.tree?.byId.get(place);
    return html`<article class="thing">
      <p class="words">${words}</p>
      ${at
        ? html`${evidence(exhibit, add, true)}
            <p class="doings"><button class="plain" @click=${() => session.show(exhibit)}>see ${label(at)}</button></p>`
        : html`<p class="unread">The lesson has this position no more.</p>`}
    </article>`;
  }

  private readonly given = async (event: SubmitEvent): Promise<void> => {
    event.preventDefault();
    const form = event.currentTarget as HTMLFormElement;
    const [file] = await api.chosen(form.querySelector<HTMLInputElement>("input[type=file]")?.files ?? null);
    const player = String(new FormData(form).get("player") ?? "").trim();
    if (file) await session.follow((key) => api.follow(key, file, player));
  };
}

function forgotten(): void {
  void session.follow(api.forget);
}

customElements.define("desk-games", DeskGames);
