// <desk-figure>: the board in the outer margin, which follows the cursor, and under it where moves are typed.

import { LitElement, html, nothing, type TemplateResult } from "lit";
import { state } from "lit/decorators.js";
import type { BoardMove } from "../board/lesson-board";
import "../board/lesson-board";
import { Watch, played, session } from "../session";
import { drawable } from "../signs";
import { label } from "../tree";

export class DeskFigure extends LitElement {
  @state() private flipped: boolean | null = null;

  constructor() {
    super();
    new Watch(this, session, ["lesson", "cursor", "position", "findings"]);
  }

  protected override createRenderRoot(): this {
    return this;
  }

  override render(): TemplateResult | typeof nothing {
    const { place, position, lesson, shown } = session;
    if (!place || !lesson) return nothing;
    const evidence = shown && shown.step >= 0 ? shown.exhibit.evidence : null;
    const last = evidence ? played(session) : place.uci && place.san ? { uci: place.uci, san: place.san } : null;
    const flipped = this.flipped ?? lesson.side === "black";
    const turn = session.fen.split(" ")[1] === "b" ? "Black" : "White";
    const where = evidence ? "In the evidence" : place.san === null ? "The start" : `After ${label(place)}`;
    const here = drawable(session.findings, place).flatMap(({ marks: some }) => some);
    const marks = !shown ? here : evidence && shown.step > 0 ? [] : shown.exhibit.marks;
    return html`<figure>
        <lesson-board
          .fen=${session.fen}
          .moves=${evidence || lesson.unwritable ? [] : (position?.legal ?? [])}
          .marks=${marks}
          .last=${last && last.uci !== "0000" ? last : null}
          .flipped=${flipped}
          .label=${`${where}, ${turn} to move`}
          .alternative=${position?.alternative ?? ""}
          @played=${(event: CustomEvent<BoardMove>) => void session.addLine([event.detail.uci])}
        ></lesson-board>
        <figcaption>
          <span>${where}. ${turn} to move.</span>
          <button class="plain" @click=${() => (this.flipped = !flipped)}>turn the board</button>
        </figcaption>
      </figure>
      <form class="typed" @submit=${this.submitted}>
        <label for="move">Next move</label>
        <input
          id="move"
          name="move"
          autocomplete="off"
          autocapitalize="off"
          spellcheck="false"
          placeholder=${turn === "White" ? "e4, Nf3 …" : "e5, Nf6 …"}
          @keydown=${this.pressed}
        />
      </form>`;
  }

  /** Puts the caret into the field, with what was typed already. */
  begin(letters: string): void {
    const field = this.field();
    if (!field) return;
    field.value = letters;
    field.focus();
    field.setSelectionRange(letters.length, letters.length);
  }

  private field(): HTMLInputElement | null {
    return this.querySelector("input");
  }

  private readonly pressed = (event: KeyboardEvent): void => {
    if (event.key !== "Escape") return;
    event.preventDefault();
    const field = this.field();
    if (field) field.value = "";
    this.dispatchEvent(new CustomEvent("back-to-page", { bubbles: true }));
  };

  private readonly submitted = async (event: SubmitEvent): Promise<void> => {
    event.preventDefault();
    const field = this.field();
    if (!field) return;
    const moves = field.value.replace(/\d+\.+/g, " ").split(/\s+/).filter(Boolean);
    if (!moves.length) {
      this.dispatchEvent(new CustomEvent("words-begun", { bubbles: true }));
      return;
    }
    const typed = field.value;
    if ((await session.addLine(moves)) && field.value === typed) field.value = "";
  };
}

customElements.define("desk-figure", DeskFigure);
