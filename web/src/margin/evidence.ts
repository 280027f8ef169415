// An evidence line, move by move: a click or an arrow key shows the position; and with one action it is a line of the lesson.

import { html, nothing, type TemplateResult } from "lit";
import type { Moves } from "../api";
import { session, type Exhibit } from "../session";

/** `add`: what taking it into the lesson adds; without, the whole line where its position stands on the way to the place. `stay`: the author
 * goes on here then, and is not led to the line. */
export function evidence(exhibit: Exhibit, add: Moves | null = null, stay = false): TemplateResult | typeof nothing {
  const line = exhibit.evidence;
  if (!line?.moves.length && !add) return nothing;
  const { shown } = session;
  const step = shown?.exhibit.id === exhibit.id ? shown.step : -1;
  const taken = add ?? whole(exhibit);
  return html`${line?.moves.length
      ? html`<div class="evidence" role="group" aria-label="Evidence, step by step" @keydown=${(event: KeyboardEvent) => pressed(event, exhibit, step)}>
          ${line.moves.map(
            (move, index) => html`<button
                class="move ${index + 1 === step ? "here" : ""}"
                aria-current=${index + 1 === step ? "true" : nothing}
                @click=${() => session.show(exhibit, index + 1)}
              >${numbered(line.fen, index)}${move.san}</button> `,
          )}
        </div>`
      : nothing}
    <p class="doings">
      ${line?.moves.length
        ? html`<button class="plain" ?disabled=${step < 0} @click=${() => session.show(exhibit, step - 1)}>back</button>
            <button
              class="plain"
              ?disabled=${step >= line.moves.length}
              @click=${() => session.show(exhibit, step < 0 ? 1 : step + 1)}
            >step on</button>`
        : nothing}
      ${taken
        ? html`<button class="plain" @click=${() => void session.addLine(taken.moves, taken.place, stay)}>take it into the lesson</button>`
        : nothing}
    </p>`;
}

function whole({ place, evidence: line }: Exhibit): Moves | null {
  const at = session.tree?.byId.get(place);
  const from = at && line ? session.tree?.withFen(at, line.fen) : undefined;
  return from && line ? { place: from.id, moves: line.moves.map(({ uci }) => uci) } : null;
}

function pressed(event: KeyboardEvent, exhibit: Exhibit, step: number): void {
  if (event.key === "ArrowRight") session.show(exhibit, Math.max(1, step + 1));
  else if (event.key === "ArrowLeft") session.show(exhibit, step - 1);
  else return;
  event.preventDefault();
}

function numbered(fen: string, index: number): string {
  const [, turn = "w", , , , full = "1"] = fen.split(" ");
  const half = index + (turn === "b" ? 1 : 0);
  const number = Number(full) + Math.floor(half / 2);
  if (half % 2 === 0) return `${number}. `;
  return index === 0 ? `${number}... ` : "";
}
