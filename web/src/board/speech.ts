// Moves as they are spoken: "White: knight f3", "Black: castles short, check".

import { NAMES } from "./drawn";
import type { Side } from "./squares";

/** A move in SAN as words. */
export function spoken(san: string, side: Side): string {
  const who = side === "white" ? "White" : "Black";
  if (san === "--") return `${who} passes`;
  const end = san.endsWith("#") ? ", mate" : san.endsWith("+") ? ", check" : "";
  const move = san.replace(/[+#]$/, "");
  if (move === "O-O") return `${who}: castles short${end}`;
  if (move === "O-O-O") return `${who}: castles long${end}`;
  const [road = "", promoted] = move.split("=");
  const words = [...road].map((letter) =>
    letter === "x" ? "takes" : (NAMES[letter.toLowerCase() as keyof typeof NAMES] && /[KQRBN]/.test(letter)
      ? NAMES[letter.toLowerCase() as keyof typeof NAMES]
      : letter),
  );
  const said = words.join(" ").replace(/\b([a-h]) ([1-8])\b/g, "$1$2");
  const becomes = promoted ? `, becomes a ${NAMES[promoted.toLowerCase() as keyof typeof NAMES]}` : "";
  return `${who}: ${said}${becomes}${end}`;
}
