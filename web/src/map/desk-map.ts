// <desk-map>: the whole lesson as tracks across the top, which part and, where lines transpose, join.
//
// A click goes to the move; dragging and the wheel pan, Control with the wheel and + and - zoom; arrow keys go through
// the lesson. Only what is in sight is drawn.

import { LitElement, html, nothing, svg, type PropertyValues, type TemplateResult } from "lit";
import { state } from "lit/decorators.js";
import type { Place } from "../api";
import { Watch, session } from "../session";
import { glyphs, label } from "../tree";
import { layout, type Layout, type Spotted } from "./tracks";

const LEFT = 26;
const TOP = 22;
const MOST_HEIGHT = 190;
/** Of the window's height. */
const MOST_PART = 0.19;
const SCALES = [0.25, 0.35, 0.5, 0.7, 1, 1.4, 2];
const PLY = 62;
const TRACK = 30;
/** What hangs under a track: stubs and strokes. */
const UNDER = 12;

export class DeskMap extends LitElement {
  @state() private level = 4;
  @state() private pan = { x: 0, y: 0 };
  @state() private width = 800;
  /** Whether only the ways to what fails are drawn in full. */
  @state() private filter = false;
  private laid: Layout | null = null;
  private failing = new Set<string>();
  private drag: { x: number; y: number; pan: { x: number; y: number }; far: boolean } | null = null;
  private follow = true;
  private readonly sized = new ResizeObserver(([entry]) => {
    if (entry) this.width = entry.contentRect.width;
  });

  constructor() {
    super();
    new Watch(this, session, ["lesson", "cursor", "findings", "study"]);
    session.addEventListener("lesson", () => (this.laid = null));
    session.addEventListener("cursor", () => (this.follow = true));
    session.addEventListener("findings", () => {
      const fails = session.findings.filter(({ outcome }) => outcome === "fails");
      this.failing = new Set(fails.map(({ place }) => place));
    });
  }

  protected override createRenderRoot(): this {
    return this;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.sized.observe(this);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.sized.disconnect();
  }

  private get scale(): number {
    return SCALES[this.level] ?? 1;
  }

  private get ply(): number {
    return PLY * this.scale;
  }

  private get track(): number {
    return TRACK * Math.max(0.4, Math.min(this.scale, 1.2));
  }

  private get height(): number {
    // whole tracks, so that none is cut through its names
    const most = 1 + Math.floor((Math.min(MOST_HEIGHT, innerHeight * MOST_PART) - TOP - UNDER) / this.track);
    return this.high(Math.max(1, Math.min(most, this.laid?.tracks ?? 1)));
  }

  /** Of so many tracks. */
  private high(tracks: number): number {
    return TOP + (tracks - 1) * this.track + UNDER;
  }

  override willUpdate(changed: PropertyValues): void {
    const { tree } = session;
    if (tree && !this.laid) {
      this.laid = layout(tree);
      this.follow = true;
    }
    if (changed.has("level") || changed.has("width")) this.follow = true;
    if (this.follow) this.reach();
  }

  /** Pans just so far that the present place is in sight. */
  private reach(): void {
    this.follow = false;
    const spot = this.laid?.spots.get(session.cursor);
    if (!spot) return;
    const margin = Math.min(this.ply * 1.2, this.width / 4);
    const x = spot.x * this.ply;
    const y = spot.y * this.track;
    const roomX = this.width - LEFT - 2 * margin;
    const roomY = this.height - TOP - UNDER;
    const pan = { x: Math.max(Math.min(this.pan.x, x), x - roomX), y: Math.max(Math.min(this.pan.y, y), y - roomY) };
    this.pan = this.bound(pan);
  }

  private bound({ x, y }: { x: number; y: number }): { x: number; y: number } {
    const wide = LEFT + ((this.laid?.plies ?? 0) + 1) * this.ply - this.width;
    const high = this.high(this.laid?.tracks ?? 1) - this.height;
    return { x: Math.max(0, Math.min(x, wide)), y: Math.max(0, Math.min(y, high)) };
  }

  override render(): TemplateResult | typeof nothing {
    const { tree } = session;
    const { laid, height, width } = this;
    if (!tree || !laid) return nothing;
    const seen = [...laid.spots.values()].filter((spot) => this.inSight(spot, height));
    const roads = this.filter ? this.failingRoads() : null;
    const drawn = roads ? seen.filter(({ place }) => roads.has(place.id)) : seen;
    const lines = laid.tracks === 1 ? "1 line" : `${laid.tracks} tracks`;
    return html`<div
        class="map"
        role="group"
        tabindex="0"
        aria-label="Line map: ${laid.spots.size - tree.lesson.games.length} moves on ${lines}; at ${session.place ? label(session.place) : "the start"}"
        @keydown=${this.pressed}
        @wheel=${this.wheeled}
        @pointerdown=${this.down}
        @pointermove=${this.moved}
        @pointerup=${this.up}
        @pointercancel=${() => (this.drag = null)}
      >
        <svg width=${width} height=${height} viewBox="0 0 ${width} ${height}" aria-hidden="true">
          <path class="track ${roads ? "faint" : ""}" d=${this.ways(seen)}></path>
          ${roads ? svg`<path class="track" d=${this.ways(drawn)}></path>` : nothing}
          <path class="track lit" d=${this.road()}></path>
          <path class="joining" d=${this.joins(seen)}></path>
          <path class="stub" d=${this.stubs(drawn)}></path>
          <path class="slip" d=${this.slips(drawn)}></path>
          <path class="pause" d=${this.pauses(drawn)}></path>
          ${drawn.map((spot) => this.stop(spot))}
        </svg>
      </div>
      <div class="zoom">
        ${this.failing.size || this.filter
          ? html`<button class="plain words" aria-pressed=${this.filter ? "true" : "false"} @click=${() => (this.filter = !this.filter)}>${this.filter ? "show all" : "only what fails"}</button>`
          : nothing}
        <button class="plain" aria-label="Draw the map smaller" ?disabled=${this.level === 0} @click=${() => this.zoom(-1)}>−</button>
        <button class="plain" aria-label="Draw the map larger" ?disabled=${this.level === SCALES.length - 1} @click=${() => this.zoom(1)}>+</button>
      </div>`;
  }

  private x(spot: Spotted): number {
    return LEFT + spot.x * this.ply - this.pan.x;
  }

  private y(spot: Spotted): number {
    return TOP + spot.y * this.track - this.pan.y;
  }

  private inSight(spot: Spotted, height: number): boolean {
    const x = this.x(spot);
    const y = this.y(spot);
    return x > -this.ply && x < this.width + this.ply && y > -this.track && y < height + this.track;
  }

  private parentSpot(spot: Spotted): Spotted | undefined {
    return spot.place.parent === null ? undefined : this.laid?.spots.get(spot.place.parent);
  }

  private way(from: Spotted, to: Spotted): string {
    const [x0, y0, x1, y1] = [this.x(from), this.y(from), this.x(to), this.y(to)].map(round) as [number, number, number, number];
    if (y0 === y1) return `M${x0} ${y0}H${x1}`;
    // Down along the parting, then round the corner into the track.
    const bend = Math.min(8, (x1 - x0) / 2);
    const turn = x0 + (x1 - x0) * 0.42;
    return `M${x0} ${y0}Q${round(turn)} ${y0} ${round(turn)} ${round(y0 + bend)}V${round(y1 - bend)}Q${round(turn)} ${y1} ${round(turn + bend)} ${y1}H${x1}`;
  }

  private ways(seen: readonly Spotted[]): string {
    return seen
      .map((spot) => {
        const from = this.parentSpot(spot);
        return from ? this.way(from, spot) : "";
      })
      .join("");
  }

  /** The way from the start to the present place. */
  private road(): string {
    let path = "";
    let spot = this.laid?.spots.get(session.cursor);
    for (let from = spot && this.parentSpot(spot); spot && from; spot = from, from = this.parentSpot(spot)) {
      path = this.way(from, spot) + path;
    }
    return path;
  }

  /** From where a line reaches a known position to where that stands. */
  private joins(seen: readonly Spotted[]): string {
    return seen
      .map((spot) => {
        const other = spot.place.joins === null ? undefined : this.laid?.spots.get(spot.place.joins);
        const before = this.parentSpot(spot);
        if (!other || before?.place.joins || (session.tree?.order.get(other.place.id) ?? 0) > (session.tree?.order.get(spot.place.id) ?? 0)) return "";
        const [x0, y0, x1, y1] = [this.x(spot), this.y(spot), this.x(other), this.y(other)].map(round);
        return `M${x0} ${y0}C${(x0 ?? 0) + this.ply / 2} ${y0} ${(x1 ?? 0) + this.ply / 2} ${y1} ${x1} ${y1}`;
      })
      .join("");
  }

  /** Replies that the lesson leaves open: a short way that ends in an open ring. */
  private stubs(seen: readonly Spotted[]): string {
    const open = new Set(
      session.study?.things.filter(({ sort, decided }) => (sort === "dangerous" || sort === "met") && decided === null).map(({ place }) => place),
    );
    return seen
      .filter(({ place }) => open.has(place.id))
      .map((spot) => {
        const [x, y] = [round(this.x(spot)), round(this.y(spot))];
        const long = round(Math.min(9, this.ply / 3));
        return `M${x} ${y}l${long} ${round(long * 0.7)}m5.4 1.4a3 3 0 1 1-6 0a3 3 0 1 1 6 0`;
      })
      .join("");
  }

  /** A short stroke across the line before a slip. */
  private slips(seen: readonly Spotted[]): string {
    const slips = new Set(session.study?.things.filter(({ sort, decided }) => sort === "slips" && decided === null).map(({ place }) => place));
    return seen
      .filter(({ place }) => slips.has(place.id))
      .map((spot) => `M${round(this.x(spot) + 7)} ${round(this.y(spot) - 5)}l4 10`)
      .join("");
  }

  /** Two short strokes under a pause point. */
  private pauses(seen: readonly Spotted[]): string {
    const pauses = new Set(session.study?.pauses.map(({ place }) => place));
    return seen
      .filter(({ place }) => pauses.has(place.id))
      .map((spot) => `M${round(this.x(spot) - 5)} ${round(this.y(spot) + 5)}v5m4 -5v5`)
      .join("");
  }

  /** The places that fail, and those on the way to them. */
  private failingRoads(): Set<string> {
    const found = new Set<string>();
    for (const id of this.failing) {
      for (let at = session.tree?.byId.get(id); at && !found.has(at.id); at = session.tree?.parent(at)) found.add(at.id);
    }
    return found;
  }

  private stop(spot: Spotted): unknown {
    const { place } = spot;
    const x = round(this.x(spot));
    const y = round(this.y(spot));
    const here = place.id === session.cursor;
    const fails = this.failing.has(place.id);
    const words = this.ply >= 40 && place.san !== null ? place.san + glyphs(place) : "";
    return svg`${
      fails
        ? svg`<path class="failing" data-place=${place.id} d="M${x} ${y - 6}L${x + 5.6} ${y + 4}H${x - 5.6}Z"></path>`
        : svg`<circle class="stop" cx=${x} cy=${y} r=${this.scale < 0.5 ? 1.6 : 2.4}></circle>`
    }
      ${here ? svg`<circle class="here" cx=${x} cy=${y} r="7"></circle>` : nothing}
      ${words ? svg`<text class=${here ? "lit" : ""} x=${x} y=${y - 8}>${words}</text>` : nothing}`;
  }

  private zoom(by: number): void {
    this.level = Math.max(0, Math.min(SCALES.length - 1, this.level + by));
  }

  /** The place under the pointer. */
  private under(event: PointerEvent): Place | undefined {
    const box = (event.currentTarget as HTMLElement).getBoundingClientRect();
    const ply = Math.round((event.clientX - box.left - LEFT + this.pan.x) / this.ply);
    const track = Math.round((event.clientY - box.top - TOP + this.pan.y + 3) / this.track);
    return this.laid?.at.get(`${track} ${ply}`)?.place;
  }

  private down(event: PointerEvent): void {
    if (event.button !== 0) return;
    this.drag = { x: event.clientX, y: event.clientY, pan: this.pan, far: false };
    (event.currentTarget as HTMLElement).setPointerCapture(event.pointerId);
  }

  private moved(event: PointerEvent): void {
    const { drag } = this;
    if (!drag) return;
    const [x, y] = [event.clientX - drag.x, event.clientY - drag.y];
    drag.far ||= Math.hypot(x, y) > 4;
    if (drag.far) this.pan = this.bound({ x: drag.pan.x - x, y: drag.pan.y - y });
  }

  private up(event: PointerEvent): void {
    const far = this.drag?.far;
    this.drag = null;
    const place = far ? undefined : this.under(event);
    if (place) session.go(place.id);
  }

  private wheeled(event: WheelEvent): void {
    event.preventDefault();
    if (event.ctrlKey) this.zoom(event.deltaY < 0 ? 1 : -1);
    else this.pan = this.bound({ x: this.pan.x + event.deltaX + (event.shiftKey ? event.deltaY : 0), y: this.pan.y + (event.shiftKey ? 0 : event.deltaY) });
  }

  private pressed(event: KeyboardEvent): void {
    const { tree, place } = session;
    if (!tree || !place || event.altKey || event.ctrlKey || event.metaKey) return;
    const { places } = tree.lesson;
    const at = tree.order.get(place.id) ?? 0;
    const next: Record<string, string | null | undefined> = {
      ArrowRight: tree.children(place.id)[0]?.id,
      ArrowLeft: place.parent,
      ArrowDown: places[at + 1]?.id,
      ArrowUp: places[at - 1]?.id,
      Home: places[0]?.id,
      End: places.at(-1)?.id,
    };
    if (event.key in next) {
      const id = next[event.key];
      if (id) session.go(id);
    } else if (event.key === "+") this.zoom(1);
    else if (event.key === "-") this.zoom(-1);
    else return;
    event.preventDefault();
  }
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}

customElements.define("desk-map", DeskMap);
