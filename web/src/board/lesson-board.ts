// <lesson-board>: one position with its marks, on which moves may be played.
//
//   const board = document.createElement("lesson-board");
//   board.fen = "rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1";
//   board.moves = [{ uci: "e2e4", san: "e4" }];          // what may be played here
//   board.addEventListener("played", (event) => console.log(event.detail.uci));
//
// It knows no rules: legal moves are handed in. A move is dragged, clicked square by square, or made with the arrow
// keys and Enter; what is played or shown is spoken through a live region. Colours follow the reader's light or dark
// unless `theme` names one.

import { LitElement, css, html, nothing, svg, unsafeCSS, type PropertyValues, type TemplateResult } from "lit";
import { property, state } from "lit/decorators.js";
import { unsafeSVG } from "lit/directives/unsafe-svg.js";
import { NAMES, SIZES, SPRITE, THEMES } from "./drawn";
import { justPlayed, over, under, type Mark } from "./marks";
import { spoken } from "./speech";
import { FILES, RANKS, corner, pieceName, pieces, sideOf, squareAt, turn } from "./squares";

export type { Mark } from "./marks";
export type { Side } from "./squares";

export interface BoardMove {
  uci: string;
  san: string;
}

const EMPTY = "8/8/8/8/8/8/8/8 w - - 0 1";
const BOARD = 8 * SIZES.unit;
const LEFT = 22;
const EDGE = 8;
const SIDE = BOARD + LEFT + EDGE;
const ARROWS: Record<string, readonly [number, number]> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};
/** Pointer travel in pixels from which a press is a drag. */
const DRAG = 4;

interface Dragged {
  from: string;
  startX: number;
  startY: number;
  x: number;
  y: number;
  moving: boolean;
}

export class LessonBoard extends LitElement {
  /** The position; a FEN or its first two fields. */
  @property() fen = EMPTY;
  /** The legal moves; none: the board only shows. */
  @property({ attribute: false }) moves: readonly BoardMove[] = [];
  @property({ attribute: false }) marks: readonly Mark[] = [];
  /** The move that led here, which gets its corner dots; and is spoken when `san` is given. */
  @property({ attribute: false }) last: { uci: string; san?: string } | null = null;
  @property({ type: Boolean, reflect: true }) flipped = false;
  /** A picture in a text: nothing on it can be reached or played, and it is read out as a whole. */
  @property({ type: Boolean, reflect: true }) still = false;
  /** "print", "print-dark" or "stage"; empty: print, light or dark as the reader has it. */
  @property({ reflect: true }) theme: "" | keyof typeof THEMES = "";
  /** Said of the board as a whole. */
  @property() label = "Position";
  /** What stands where, in words, for who cannot see it. */
  @property() alternative = "";

  @state() private focusSquare = "e2";
  @state() private chosen: string | null = null;
  @state() private dragged: Dragged | null = null;
  @state() private promoting: BoardMove[] = [];
  @state() private live = "";

  static override styles = css`
    :host { display: block; position: relative; ${unsafeCSS(THEMES.print)} }
    @media screen and (prefers-color-scheme: dark) { :host(:not([theme])), :host([theme=""]) { ${unsafeCSS(THEMES["print-dark"])} } }
    :host([theme="print-dark"]) { ${unsafeCSS(THEMES["print-dark"])} }
    :host([theme="stage"]) { ${unsafeCSS(THEMES.stage)} }
    /* Whole pixels to a square, so that the hatching is the same on each. */
    .frame { position: relative; aspect-ratio: 1; width: 100%; width: round(down, 100%, ${SIDE / SIZES.unit}px); }
    :host([theme="stage"]) .frame { width: round(down, 100%, ${BOARD / SIZES.unit}px); }
    svg { display: block; width: 100%; height: 100%; overflow: visible; }
    .grid {
      position: absolute; display: grid; touch-action: none;
      left: calc(100% * ${LEFT} / ${SIDE}); top: calc(100% * ${EDGE} / ${SIDE});
      width: calc(100% * ${BOARD} / ${SIDE}); height: calc(100% * ${BOARD} / ${SIDE});
      grid-template-rows: repeat(8, 1fr);
    }
    :host([theme="stage"]) .grid { inset: 0; width: 100%; height: 100%; }
    .row { display: grid; grid-template-columns: repeat(8, 1fr); }
    .square { outline: none; }
    .may .square.own { cursor: grab; }
    .square:focus-visible { outline: 3px solid var(--board-ink); outline-offset: -3px; box-shadow: inset 0 0 0 5px var(--board-paper); }
    .dragging { pointer-events: none; }
    .goal { fill: none; stroke: var(--board-ink); stroke-width: 1.6; }
    .goal-halo { fill: none; stroke: var(--board-paper); stroke-width: 4; }
    .chosen { fill: none; stroke: var(--board-ink); stroke-width: 2; }
    .promotion {
      position: absolute; inset: 0; display: flex; align-items: center; justify-content: center; gap: 2%;
      background: color-mix(in srgb, var(--board-paper) 78%, transparent);
    }
    .promotion button {
      width: 19%; aspect-ratio: 1; padding: 0; border: 1px solid var(--board-ink); background: var(--board-paper); cursor: pointer;
    }
    .promotion button:focus-visible { outline: 3px solid var(--board-ink); outline-offset: 3px; }
    .spoken { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
  `;

  override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has("fen")) {
      this.chosen = null;
      this.dragged = null;
      this.promoting = [];
      if (this.last?.san && changed.get("fen") !== undefined) {
        this.live = spoken(this.last.san, turn(this.fen) === "white" ? "black" : "white");
      }
    }
  }

  override render(): TemplateResult {
    const standing = pieces(this.fen);
    const stage = this.theme === "stage";
    const box = stage ? `0 0 ${BOARD} ${BOARD}` : `${-LEFT} ${-EDGE} ${SIDE} ${SIDE}`;
    const dragged = this.dragged?.moving ? this.dragged : null;
    const drawing = html`<svg viewBox=${box} aria-hidden="true">
        ${unsafeSVG(SPRITE)}
        <use href="#board-ground"></use>
        ${stage ? nothing : this.coordinates()}
        ${under(this.marks, this.flipped)}
        ${this.last ? justPlayed(this.last.uci, this.flipped) : nothing}
        ${[...standing].map(([square, letter]) => (square === dragged?.from ? nothing : this.piece(square, letter)))}
        ${over(this.marks, this.flipped, standing)}
        ${this.goals(standing)}
        ${dragged ? this.dragging(dragged, standing.get(dragged.from) ?? "") : nothing}
      </svg>`;
    if (this.still) return html`<div class="frame" role="img" aria-label="${this.label}. ${this.alternative}">${drawing}</div>`;
    return html`<div class="frame">${drawing}
      ${this.grid(standing)} ${this.promoting.length ? this.promotion() : nothing}
    </div>
    <p class="spoken" id="alternative">${this.alternative}</p>
    <p class="spoken" role="status" aria-live="polite">${this.live}</p>`;
  }

  private coordinates(): TemplateResult[] {
    const half = SIZES.unit / 2;
    return [
      ...[...FILES].map((file) => [file, corner(`${file}1`, this.flipped)[0] + half, BOARD + 12.5] as const),
      ...[...RANKS].map((rank) => [rank, -12.5, corner(`a${rank}`, this.flipped)[1] + half] as const),
    ].map(([glyph, x, y]) => svg`<use href="#board-at-${glyph}" x=${x} y=${y}></use>`) as unknown as TemplateResult[];
  }

  private piece(square: string, letter: string): unknown {
    const [x, y] = corner(square, this.flipped);
    return svg`<use class="piece" data-square=${square} href=${pieceRef(letter)} x=${x} y=${y}></use>`;
  }

  private dragging(dragged: Dragged, letter: string): unknown {
    const half = SIZES.unit / 2;
    return svg`<use class="piece dragging" href=${pieceRef(letter)} x=${dragged.x - half} y=${dragged.y - half}></use>`;
  }

  /** A ring where the chosen piece may go, and a rule around the piece. */
  private goals(standing: ReadonlyMap<string, string>): unknown {
    const from = this.chosen;
    if (!from) return nothing;
    const [x, y] = corner(from, this.flipped);
    const targets = new Set(this.from(from).map((move) => move.uci.slice(2, 4)));
    return svg`<rect class="chosen" x=${x + 2} y=${y + 2} width=${SIZES.unit - 4} height=${SIZES.unit - 4}></rect>
      ${[...targets].map((square) => {
        const [left, top] = corner(square, this.flipped);
        const middle = [left + SIZES.unit / 2, top + SIZES.unit / 2] as const;
        const radius = standing.has(square) ? 21 : 6;
        return svg`<circle class="goal-halo" cx=${middle[0]} cy=${middle[1]} r=${radius}></circle>
          <circle class="goal" data-goal=${square} cx=${middle[0]} cy=${middle[1]} r=${radius}></circle>`;
      })}`;
  }

  private grid(standing: ReadonlyMap<string, string>): TemplateResult {
    const own = turn(this.fen);
    const targets = new Set(this.chosen ? this.from(this.chosen).map((move) => move.uci.slice(2, 4)) : []);
    const rows = [0, 1, 2, 3, 4, 5, 6, 7];
    return html`<div
      class="grid ${this.moves.length ? "may" : ""}"
      role="grid"
      aria-label=${this.label}
      aria-describedby="alternative"
      @keydown=${this.pressed}
      @pointerdown=${this.down}
      @pointermove=${this.moved}
      @pointerup=${this.up}
      @pointercancel=${() => (this.dragged = null)}
    >
      ${rows.map(
        (row) => html`<div class="row" role="row">
          ${rows.map((column) => {
            const square = squareAt(column, row, this.flipped) ?? "";
            const letter = standing.get(square);
            const name = letter ? pieceName(letter) : "empty";
            return html`<div
              class="square ${letter && sideOf(letter) === own ? "own" : ""}"
              role="gridcell"
              data-square=${square}
              tabindex=${square === this.focusSquare ? 0 : -1}
              aria-selected=${square === this.chosen ? "true" : "false"}
              aria-label="${square}, ${name}${targets.has(square) ? ", may go here" : ""}"
              @focus=${() => (this.focusSquare = square)}
            ></div>`;
          })}
        </div>`,
      )}
    </div>`;
  }

  private promotion(): TemplateResult {
    return html`<div class="promotion" role="group" aria-label="Becomes a …" @keydown=${this.promotionKey}>
      ${this.promoting.map((move) => {
        const kind = move.uci.charAt(4);
        const letter = turn(this.fen) === "white" ? kind.toUpperCase() : kind;
        return html`<button aria-label=${NAMES[kind as keyof typeof NAMES]} @click=${() => this.play(move)}>
          <svg viewBox="0 0 ${SIZES.unit} ${SIZES.unit}" aria-hidden="true">
            <use href=${pieceRef(letter)}></use>
          </svg>
        </button>`;
      })}
    </div>`;
  }

  private from(square: string): BoardMove[] {
    return this.moves.filter((move) => move.uci.startsWith(square));
  }

  /** Goes from the chosen square to another: plays, asks what to become, or chooses anew. */
  private go(square: string): void {
    const from = this.chosen;
    if (from) {
      const found = this.from(from).filter((move) => move.uci.slice(2, 4) === square);
      const only = found[0];
      if (only && found.length === 1) return this.play(only);
      if (found.length) {
        this.promoting = found;
        void this.updateComplete.then(() => this.renderRoot.querySelector<HTMLElement>(".promotion button")?.focus());
        return;
      }
    }
    const may = square !== from && this.from(square).length > 0;
    this.chosen = may ? square : null;
    if (may) this.live = `${square} chosen`;
    else if (from && square !== from) this.live = `No move from ${from} to ${square}`;
  }

  private play(move: BoardMove): void {
    this.chosen = null;
    const asked = this.promoting.length > 0;
    this.promoting = [];
    this.dispatchEvent(new CustomEvent("played", { detail: move, bubbles: true, composed: true }));
    if (asked) this.focusAt(move.uci.slice(2, 4));
  }

  private focusAt(square: string): void {
    this.focusSquare = square;
    void this.updateComplete.then(() =>
      this.renderRoot.querySelector<HTMLElement>(`.square[data-square="${square}"]`)?.focus(),
    );
  }

  private pressed(event: KeyboardEvent): void {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    const arrow = ARROWS[event.key];
    if (arrow) {
      const [x, y] = corner(this.focusSquare, this.flipped);
      const next = squareAt(x / SIZES.unit + arrow[0], y / SIZES.unit + arrow[1], this.flipped);
      if (next) this.focusAt(next);
    } else if (event.key === "Enter" || event.key === " ") this.go(this.focusSquare);
    else if (event.key === "Escape" && this.chosen) this.chosen = null;
    else return;
    event.preventDefault();
    event.stopPropagation();
  }

  private promotionKey(event: KeyboardEvent): void {
    const move = this.promoting.find((one) => one.uci.endsWith(event.key.toLowerCase()));
    if (event.key === "Escape") {
      this.promoting = [];
      this.focusAt(this.focusSquare);
    } else if (event.key.length === 1 && move) this.play(move);
    else return;
    event.preventDefault();
    event.stopPropagation();
  }

  /** Board units and square under a pointer. */
  private place(event: PointerEvent): { x: number; y: number; square: string | null } {
    const box = (event.currentTarget as HTMLElement).getBoundingClientRect();
    const x = ((event.clientX - box.left) / box.width) * BOARD;
    const y = ((event.clientY - box.top) / box.height) * BOARD;
    return { x, y, square: squareAt(Math.floor(x / SIZES.unit), Math.floor(y / SIZES.unit), this.flipped) };
  }

  private down(event: PointerEvent): void {
    if (event.button !== 0) return;
    const { x, y, square } = this.place(event);
    if (!square) return;
    event.preventDefault();
    this.focusAt(square);
    if (this.chosen && this.from(this.chosen).some((move) => move.uci.slice(2, 4) === square)) return this.go(square);
    if (!this.from(square).length) {
      this.chosen = null;
      return;
    }
    (event.currentTarget as HTMLElement).setPointerCapture(event.pointerId);
    this.dragged = { from: square, startX: event.clientX, startY: event.clientY, x, y, moving: false };
  }

  private moved(event: PointerEvent): void {
    const dragged = this.dragged;
    if (!dragged) return;
    const { x, y } = this.place(event);
    const far = Math.hypot(event.clientX - dragged.startX, event.clientY - dragged.startY) >= DRAG;
    if (far) this.chosen = dragged.from;
    this.dragged = { ...dragged, x, y, moving: dragged.moving || far };
  }

  private up(event: PointerEvent): void {
    const dragged = this.dragged;
    if (!dragged) return;
    this.dragged = null;
    const { square } = this.place(event);
    if (!dragged.moving) this.go(dragged.from);
    else if (square && square !== dragged.from && this.from(dragged.from).some((move) => move.uci.slice(2, 4) === square)) {
      this.chosen = dragged.from;
      this.go(square);
    } else this.chosen = null;
  }
}

function pieceRef(letter: string): string {
  return `#board-${letter === letter.toUpperCase() ? "w" : "b"}${letter.toLowerCase()}`;
}

if (!customElements.get("lesson-board")) customElements.define("lesson-board", LessonBoard);

declare global {
  interface HTMLElementTagNameMap {
    "lesson-board": LessonBoard;
  }
}
