// The signs of findings: a glyph and a word, never colour alone.

import type { Finding, Outcome, Place } from "./api";

export const SIGNS: Record<Outcome, { glyph: string; word: string }> = {
  fails: { glyph: "▲", word: "fails" },
  unsettled: { glyph: "◐", word: "unsettled" },
  holds: { glyph: "●", word: "holds" },
  waiting: { glyph: "○", word: "being checked" },
};

const RANK: Outcome[] = ["fails", "unsettled", "waiting", "holds"];

/** What fails first, then in the order of the words. */
export function ranked(findings: readonly Finding[]): Finding[] {
  return [...findings].sort(
    (one, two) => RANK.indexOf(one.outcome) - RANK.indexOf(two.outcome) || one.start - two.start,
  );
}

/** The claims that hold at a place and have something to draw on its board, of those given. */
export const drawable = (findings: readonly Finding[], place: Place): Finding[] =>
  findings.filter(
    ({ outcome, place: of, marks, evidence }) =>
      outcome === "holds" && of === place.id && marks.length && (!evidence || evidence.fen === place.fen),
  );
