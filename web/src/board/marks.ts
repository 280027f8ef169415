// What a board may point at, and how it is drawn: the same strokes as in the printed diagrams.

import { svg, type SVGTemplateResult } from "lit";
import { DASHES, SIZES } from "./drawn";
import { between, corner, type Point, type Side } from "./squares";

export type Mark =
  | { kind: "square"; squares: readonly string[]; side: Side }
  | { kind: "move"; squares: readonly string[]; side: Side }
  | { kind: "pin"; squares: readonly string[]; side: Side };

type Stroke = keyof typeof DASHES;
const WIDTHS: Record<Stroke, number> = {
  corner: SIZES.cornerWidth,
  move: SIZES.moveWidth,
  pin: SIZES.pinWidth,
};

const paper = "var(--board-paper)";
const idea = (side: Side): string => `var(--board-${side}-idea)`;

/** Marks that lie under the pieces. */
export function under(marks: readonly Mark[], flipped: boolean): SVGTemplateResult[] {
  return marks
    .filter((mark) => mark.kind === "square")
    .flatMap((mark) =>
      mark.squares.map((square) =>
        group("marked-square", mark.side, stroke(corners(square, flipped), "corner", mark.side)),
      ),
    );
}

/** Marks that lie over the pieces; a pin breaks off at the pieces that it crosses. */
export function over(
  marks: readonly Mark[],
  flipped: boolean,
  occupied: ReadonlyMap<string, string>,
): SVGTemplateResult[] {
  return marks.flatMap((mark) => {
    const [start, end] = mark.squares;
    if (mark.kind === "square" || !start || !end || start === end) return [];
    if (mark.kind === "move") return [group("shown-move", mark.side, shown(start, end, flipped, mark.side))];
    const stops = [start, ...between(start, end).filter((square) => occupied.has(square)), end];
    const path = stops
      .slice(1)
      .map((stop, index) => {
        const [here, there, along] = ends(stops[index] ?? start, stop, flipped);
        return `M${at(step(here, along, SIZES.pinAway))}L${at(step(there, along, -SIZES.pinAway))}`;
      })
      .join("");
    return [group("pin", mark.side, stroke(path, "pin", mark.side))];
  });
}

/** Two dots on each square of the move just played. */
export function justPlayed(uci: string, flipped: boolean): SVGTemplateResult[] {
  return [uci.slice(0, 2), uci.slice(2, 4)].flatMap((square) => {
    const [x, y] = corner(square, flipped);
    return [SIZES.dotInset, SIZES.unit - SIZES.dotInset].map(
      (inset) => svg`<circle class="just-played" cx=${x + inset} cy=${y + inset} r=${SIZES.dotRadius}
        fill="var(--board-ink)" stroke=${paper} stroke-width=${2 * SIZES.halo} paint-order="stroke"/>`,
    );
  });
}

function corners(square: string, flipped: boolean): string {
  const [x, y] = corner(square, flipped);
  const near = SIZES.cornerInset;
  const far = SIZES.unit - near;
  const arms = [
    [near, near, 1, 1],
    [near, far, 1, -1],
    [far, near, -1, 1],
    [far, far, -1, -1],
  ] as const;
  return arms
    .map(
      ([atX, atY, inward, down]) =>
        `M${x + atX + inward * SIZES.cornerArm} ${y + atY}H${x + atX}V${y + atY + down * SIZES.cornerArm}`,
    )
    .join("");
}

function shown(from: string, to: string, flipped: boolean, side: Side): SVGTemplateResult {
  const [start, end, along] = ends(from, to, flipped);
  const ring = step(start, along, SIZES.ringAway);
  const tip = step(end, along, -SIZES.wedgeAway);
  const base = step(tip, along, -SIZES.wedgeLength);
  const across: Point = [-along[1], along[0]];
  const wedge = `M${[tip, step(base, across, SIZES.wedgeHalf), step(base, across, -SIZES.wedgeHalf)].map(at).join("L")}Z`;
  const line = `M${at(step(ring, along, SIZES.ringRadius))}L${at(base)}`;
  const colour = idea(side);
  return svg`<path d=${wedge} fill=${paper} stroke=${paper} stroke-width=${2 * SIZES.halo} stroke-linejoin="round"/>
    <circle cx=${ring[0]} cy=${ring[1]} r=${SIZES.ringRadius} fill="none" stroke=${paper}
      stroke-width=${SIZES.moveWidth + 2 * SIZES.halo}/>
    ${stroke(line, "move", side)}
    <circle cx=${ring[0]} cy=${ring[1]} r=${SIZES.ringRadius} fill="none" stroke=${colour} stroke-width=${SIZES.moveWidth}/>
    <path d=${wedge} fill=${colour}/>`;
}

function stroke(path: string, kind: Stroke, side: Side): SVGTemplateResult {
  const width = WIDTHS[kind];
  return svg`<path d=${path} fill="none" stroke=${paper} stroke-width=${width + 2 * SIZES.halo} stroke-linecap="square"/>
    <path class="stroke" d=${path} fill="none" stroke=${idea(side)} stroke-width=${width}
      stroke-dasharray=${DASHES[kind][side]}/>`;
}

function group(name: string, side: Side, content: SVGTemplateResult): SVGTemplateResult {
  return svg`<g class="mark ${name} ${side}">${content}</g>`;
}

/** The middles of two squares, and the unit vector from one to the other. */
function ends(start: string, end: string, flipped: boolean): [Point, Point, Point] {
  const half = SIZES.unit / 2;
  const [x0, y0] = corner(start, flipped);
  const [x1, y1] = corner(end, flipped);
  const length = Math.hypot(x1 - x0, y1 - y0);
  return [[x0 + half, y0 + half], [x1 + half, y1 + half], [(x1 - x0) / length, (y1 - y0) / length]];
}

function step(point: Point, along: Point, distance: number): Point {
  return [point[0] + along[0] * distance, point[1] + along[1] * distance];
}

function at(point: Point): string {
  return `${point[0].toFixed(2)} ${point[1].toFixed(2)}`;
}
