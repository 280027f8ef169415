// The line map's layout: plies run left to right, each line takes a track; a branch takes the nearest track that is free
// for as long as the branch runs.

import type { Place } from "../api";
import type { Tree } from "../tree";

export interface Spotted {
  place: Place;
  /** Half-moves from the start of its game. */
  x: number;
  /** Its track, counted down from the first. */
  y: number;
}

export interface Layout {
  spots: Map<string, Spotted>;
  /** By track and ply, for finding what is under the pointer. */
  at: Map<string, Spotted>;
  plies: number;
  tracks: number;
}

export function layout(tree: Tree): Layout {
  const spots = new Map<string, Spotted>();
  const at = new Map<string, Spotted>();
  /** By track: the last ply taken, since lines are laid in the order of the text, and by ply. */
  const taken: [number, number][][] = [];
  let plies = 0;

  const free = (track: number, from: number, to: number): boolean =>
    (taken[track] ?? []).every(([start, end]) => to < start || from > end);
  const put = (place: Place, y: number): void => {
    const spot = { place, x: place.ply, y };
    spots.set(place.id, spot);
    at.set(`${y} ${place.ply}`, spot);
    plies = Math.max(plies, place.ply);
  };

  const lines: { first: Place; floor: number }[] = [];
  let floor = 0;
  for (const game of tree.lesson.games) {
    const root = tree.byId.get(game.root);
    if (!root) continue;
    lines.push({ first: root, floor });
    while (lines.length) {
      const { first, floor: above } = lines.pop() as { first: Place; floor: number };
      const line: Place[] = [];
      for (let next: Place | undefined = first; next; next = tree.children(next.id)[0]) line.push(next);
      const from = Math.max(0, first.ply - 1);
      const to = (line.at(-1)?.ply ?? first.ply) + 1;
      let track = above;
      while (!free(track, from, to)) track += 1;
      (taken[track] ??= []).push([from, to]);
      for (const place of line) put(place, track);
      // The branches nearest to the end lie nearest to the line, so that tracks do not cross; pushed last, laid first.
      for (const place of line) {
        for (const branch of [...tree.children(place.id)].slice(1).reverse()) lines.push({ first: branch, floor: track + 1 });
      }
    }
    floor = taken.length;
  }
  return { spots, at, plies, tracks: taken.length };
}
