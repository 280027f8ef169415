// Squares by name, "a1" to "h8", where they lie on the drawn board, and what stands on them.

import { NAMES, SIZES } from "./drawn";

export const FILES = "abcdefgh";
export const RANKS = "12345678";

export type Side = "white" | "black";
export type Point = readonly [number, number];

/** Upper left corner of a square, in board units. */
export function corner(square: string, flipped: boolean): Point {
  const file = FILES.indexOf(square.charAt(0));
  const rank = RANKS.indexOf(square.charAt(1));
  const [column, row] = flipped ? [7 - file, rank] : [file, 7 - rank];
  return [column * SIZES.unit, row * SIZES.unit];
}

/** The square at a column and row as they are seen, each 0 to 7 from the upper left; null outside. */
export function squareAt(column: number, row: number, flipped: boolean): string | null {
  if (column < 0 || column > 7 || row < 0 || row > 7) return null;
  const [file, rank] = flipped ? [7 - column, row] : [column, 7 - row];
  return FILES.charAt(file) + RANKS.charAt(rank);
}

/** FEN letter by square, from the first field of a FEN. */
export function pieces(fen: string): Map<string, string> {
  const found = new Map<string, string>();
  const rows = (fen.split(" ")[0] ?? "").split("/");
  rows.forEach((row, index) => {
    let file = 0;
    for (const letter of row) {
      if (letter >= "1" && letter <= "8") file += Number(letter);
      else found.set(FILES.charAt(file++) + RANKS.charAt(7 - index), letter);
    }
  });
  return found;
}

export function turn(fen: string): Side {
  return fen.split(" ")[1] === "b" ? "black" : "white";
}

export function sideOf(letter: string): Side {
  return letter === letter.toUpperCase() ? "white" : "black";
}

/** "white knight". */
export function pieceName(letter: string): string {
  return `${sideOf(letter)} ${NAMES[letter.toLowerCase() as keyof typeof NAMES]}`;
}

/** The squares strictly between two of one rank, file or diagonal. */
export function between(start: string, end: string): string[] {
  const file = FILES.indexOf(start.charAt(0));
  const rank = RANKS.indexOf(start.charAt(1));
  const across = FILES.indexOf(end.charAt(0)) - file;
  const up = RANKS.indexOf(end.charAt(1)) - rank;
  const steps = Math.max(Math.abs(across), Math.abs(up));
  if (across && up && Math.abs(across) !== Math.abs(up)) return [];
  return Array.from({ length: Math.max(0, steps - 1) }, (_, index) => {
    const far = index + 1;
    return FILES.charAt(file + (across / steps) * far) + RANKS.charAt(rank + (up / steps) * far);
  });
}
