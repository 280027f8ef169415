// <desk-figures>: what the games of a collection say of the present position, in sentences; only where there is a collection.

import { LitElement, html, nothing, type TemplateResult } from "lit";
import { state } from "lit/decorators.js";
import * as api from "../api";
import { Watch, session } from "../session";

export class DeskFigures extends LitElement {
  @state() private names: string[] = [];
  @state() private told: { place: string; said: string[] } | null = null;

  constructor() {
    super();
    new Watch(this, session, ["cursor"]);
  }

  protected override createRenderRoot(): this {
    return this;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    api.collections().then(
      ({ collections }) => (this.names = collections.map(({ name }) => name)),
      (error: unknown) => session.failed(error),
    );
  }

  override render(): TemplateResult | typeof nothing {
    if (!this.names.length || !session.place) return nothing;
    const told = this.told?.place === session.cursor ? this.told : null;
    return html`<form class="figures" @submit=${this.asked}>
        <label>Games of <select name="collection">${this.names.map(
          (name) => html`<option ?selected=${name === session.way?.collection}>${name}</option>`,
        )}</select></label>
        <label><input type="checkbox" name="audience" /> of the audience alone</label>
        <button class="plain">count</button>
      </form>
      <div aria-live="polite">${told?.said.map((sentence) => html`<p>${sentence}</p>`)}</div>`;
  }

  private readonly asked = async (event: SubmitEvent): Promise<void> => {
    event.preventDefault();
    const form = new FormData(event.currentTarget as HTMLFormElement);
    const { lesson, cursor } = session;
    if (!lesson) return;
    try {
      const { said } = await api.figures(lesson.key, cursor, String(form.get("collection")), form.get("audience") !== null);
      this.told = { place: cursor, said };
    } catch (error) {
      session.failed(error);
    }
  };
}

customElements.define("desk-figures", DeskFigures);
