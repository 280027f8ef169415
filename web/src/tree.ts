// A lesson as the page goes through it: places by id, what follows what, and the passages of its prose.

import type { Comment, Lesson, Place } from "./api";
import { SIGNS } from "./board/drawn";

/** Words at a place: those that open a variation, or those after its move; `nth` of them. */
export interface Spot {
  place: string;
  where: "before" | "after";
  nth: number;
}

/** Moves without a word or a diagram between them, then the words after the last of them, and its diagram. */
export interface Passage {
  key: string;
  /** Words that open the variation or the game, before the moves. */
  before: Said[];
  /** The first of a game is its start. */
  moves: Place[];
  after: Said[];
  /** The last move, where the author has put a diagram after it. */
  diagram: Place | null;
}

/** Words at a spot; null where the author is about to write the first. */
export interface Said {
  spot: Spot;
  comment: Comment | null;
}

/** A part of one line without a branch inside it. */
export interface Stretch {
  key: string;
  depth: number;
  /** "Instead of", "3... d5"; null where a game begins. */
  heading: { words: string; move: string } | null;
  /** Whether a game begins here; its name. */
  game: string | null;
  passages: Passage[];
}

export function label(place: Place): string {
  return place.san === null ? "the start" : `${place.number} ${place.san}`;
}

export function glyphs(place: Place): string {
  const said = place.nags.map((nag) => (SIGNS as Record<number, string>)[nag] ?? `$${nag}`).concat(place.signs);
  return said.map((sign, index) => (index === 0 && /^[!?]/.test(sign) ? sign : `\u202f${sign}`)).join("");
}

export class Tree {
  readonly byId = new Map<string, Place>();
  readonly order = new Map<string, number>();
  private readonly follow = new Map<string, Place[]>();

  constructor(readonly lesson: Lesson) {
    lesson.places.forEach((place, index) => {
      this.byId.set(place.id, place);
      this.order.set(place.id, index);
      if (place.parent === null) return;
      const siblings = this.follow.get(place.parent);
      if (siblings) siblings.push(place);
      else this.follow.set(place.parent, [place]);
    });
  }

  children(id: string): readonly Place[] {
    return this.follow.get(id) ?? [];
  }

  parent(place: Place): Place | undefined {
    return place.parent === null ? undefined : this.byId.get(place.parent);
  }

  /** How many variations stand before the one that a place is in, at the same move; -1 on a line that is none. */
  before(place: Place): number {
    for (let at: Place | undefined = place; at; at = this.parent(at)) {
      const index = this.children(at.parent ?? "").indexOf(at);
      if (index > 0) return index - 1;
    }
    return -1;
  }

  comment(spot: Spot): Comment | undefined {
    return this.byId.get(spot.place)?.[spot.where][spot.nth];
  }

  /** The nearest place, going back from one, that has this position. */
  withFen(from: Place, fen: string): Place | undefined {
    for (let at: Place | undefined = from; at; at = this.parent(at)) if (at.fen === fen) return at;
    return undefined;
  }

  /** `writing`: a place where words are about to be written. */
  stretches(writing: string | null = null): Stretch[] {
    const found: Stretch[] = [];
    let passage: Passage | null = null;
    let previous: Place | null = null;
    for (const place of this.lesson.places) {
      const parent = this.parent(place);
      const first = parent && this.children(parent.id)[0];
      if (!parent || parent !== previous || first !== place) {
        found.push({
          key: place.id,
          depth: place.depth,
          heading: parent
            ? first && first !== place
              ? { words: "Instead of", move: label(first) }
              : { words: "Back to the line after", move: label(parent) }
            : null,
          game: parent ? null : gameName(this.lesson, place.game),
          passages: [],
        });
        passage = null;
      }
      const stretch = found[found.length - 1];
      if (!stretch) continue;
      if (!passage || passage.after.length || passage.diagram || place.before.length) {
        passage = { key: place.id, before: words(place, "before"), moves: [], after: [], diagram: null };
        stretch.passages.push(passage);
      }
      passage.moves.push(place);
      passage.after = words(place, "after");
      passage.diagram = place.diagram === null ? null : place;
      if (place.id === writing && !passage.after.length) {
        passage.after = [{ spot: { place: place.id, where: "after", nth: 0 }, comment: null }];
      }
      previous = place;
    }
    return found;
  }
}

function words(place: Place, where: "before" | "after"): Said[] {
  return place[where].map((comment, nth) => ({ spot: { place: place.id, where, nth }, comment }));
}

function gameName(lesson: Lesson, index: number): string {
  if (lesson.games.length < 2) return "";
  const tags = new Map(lesson.games[index]?.tags ?? []);
  const known = (name: string): string => (/^[?*]*$/.test(tags.get(name) ?? "") ? "" : (tags.get(name) ?? ""));
  const players = [known("White"), known("Black")].filter(Boolean).join(" and ");
  return [known("Event"), players].filter(Boolean).join(", ") || `Part ${index + 1}`;
}

/** The same lesson with the old objects where nothing changed, so that only what changed is drawn anew. */
export function keeping(old: Lesson | null, fresh: Lesson): Lesson {
  if (!old) return fresh;
  const before = new Map(old.places.map((place) => [place.id, place]));
  const places = fresh.places.map((place) => {
    const known = before.get(place.id);
    return known && JSON.stringify(known) === JSON.stringify(place) ? known : place;
  });
  return { ...fresh, places };
}
