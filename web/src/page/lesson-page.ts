// The published page: the board shows the position of the move that is chosen in the text, and asks the exercises.

import "../board/lesson-board";
import type { BoardMove, LessonBoard } from "../board/lesson-board";
import type { Mark } from "../board/marks";

interface Place {
  fen: string;
  parent: number | null;
  children: readonly number[];
  uci?: string;
  san?: string;
  label: string;
  alternative: string;
  marks: readonly Mark[];
}

interface Exercise {
  place: number;
  moves: readonly BoardMove[];
  /** Moves that keep the verdict, in UCI; the first is the one to find. */
  safe: readonly string[];
  /** The positions after them. */
  after: readonly { fen: string; alternative: string }[];
  answer: string;
  /** By move in UCI: why a likely wrong answer is wrong. */
  wrong: Readonly<Record<string, string>>;
}

interface Lesson {
  flipped: boolean;
  places: readonly Place[];
  exercises: readonly Exercise[];
}

function found<T extends Element>(selector: string, kind: new () => T): T {
  const element = document.querySelector(selector);
  if (!(element instanceof kind)) throw new Error(`the page has no ${selector}`);
  return element;
}

const lesson = JSON.parse(found("#lesson", HTMLScriptElement).text) as Lesson;
const board = found("lesson-board", HTMLElement) as LessonBoard;
const caption = found("#caption", HTMLElement);
const told = found("#told", HTMLElement);
const show = found("#show", HTMLButtonElement);
const moves = new Map<number, HTMLButtonElement>();
for (const button of document.querySelectorAll<HTMLButtonElement>("button.move")) {
  moves.set(Number(button.dataset["place"]), button);
}
const asks = [...document.querySelectorAll<HTMLButtonElement>("button.ask")];

let here = 0;
let asked: Exercise | null = null;

const mover = (fen: string): string => (fen.split(" ")[1] === "b" ? "Black" : "White");

/** Shows a place of the lesson. */
function go(to: number, scroll = true): void {
  const place = lesson.places[to];
  if (!place) return;
  here = to;
  asked = null;
  show.hidden = true;
  told.textContent = "";
  put(place, place.marks);
  caption.textContent = `${place.uci ? `After ${place.label}` : "The start"}. ${mover(place.fen)} to move.`;
  for (const [index, button] of moves) {
    if (index === to) button.setAttribute("aria-current", "true");
    else button.removeAttribute("aria-current");
  }
  for (const button of asks) button.removeAttribute("aria-current");
  if (scroll) moves.get(to)?.scrollIntoView({ block: "nearest" });
}

function put(place: Place, marks: readonly Mark[], playable: readonly BoardMove[] = []): void {
  board.fen = place.fen;
  board.last = place.uci && place.uci !== "0000" ? { uci: place.uci, ...(place.san ? { san: place.san } : {}) } : null;
  board.marks = marks;
  board.moves = playable;
  board.alternative = place.alternative;
}

/** Asks an exercise on the board. */
function ask(number: number): void {
  const exercise = lesson.exercises[number];
  const place = exercise && lesson.places[exercise.place];
  if (!exercise || !place) return;
  go(exercise.place, false);
  asked = exercise;
  put(place, [], exercise.moves);
  caption.textContent = `Find ${mover(place.fen)}’s move: play it on the board.`;
  show.hidden = false;
  asks[number]?.setAttribute("aria-current", "true");
}

/** Says what an answer is worth. */
function answered(uci: string, san: string): void {
  if (!asked) return;
  const right = asked.safe.indexOf(uci);
  if (right === 0) told.textContent = `${san} is the move. ${asked.answer}`;
  else if (right > 0) told.textContent = `${san} is safe too. ${asked.answer}`;
  else told.textContent = asked.wrong[uci] ?? `${san} is not the move. Look again.`;
  const after = asked.after[right];
  if (!after) return;
  show.hidden = true;
  Object.assign(board, { ...after, last: { uci, san }, moves: [] });
  caption.textContent = `After ${san}. ${mover(after.fen)} to move.`;
}

/** The next or the last move that branches off where this one does. */
function beside(step: number): number {
  const parent = lesson.places[here]?.parent ?? null;
  const siblings = parent === null ? [] : (lesson.places[parent]?.children ?? []);
  const at = siblings.indexOf(here) + step;
  return siblings[(at + siblings.length) % Math.max(siblings.length, 1)] ?? here;
}

const KEYS: Record<string, () => number> = {
  ArrowRight: () => lesson.places[here]?.children[0] ?? here,
  ArrowLeft: () => lesson.places[here]?.parent ?? here,
  ArrowDown: () => beside(1),
  ArrowUp: () => beside(-1),
};

function step(key: string, focus: boolean): void {
  const to = KEYS[key]?.();
  if (to === undefined) return;
  go(to);
  if (focus) moves.get(to)?.focus({ preventScroll: true });
}

document.addEventListener("click", (event) => {
  const button = event.target instanceof Element ? event.target.closest("button") : null;
  if (!button) return;
  if (button.dataset["place"] !== undefined) go(Number(button.dataset["place"]), false);
  else if (button.dataset["exercise"] !== undefined) ask(Number(button.dataset["exercise"]));
  else if (button.dataset["step"] !== undefined) step(button.dataset["step"], false);
  else if (button.id === "turn") board.flipped = !board.flipped;
  else if (button === show && asked) {
    told.textContent = asked.answer;
    show.hidden = true;
  }
});

// The board keeps the arrow keys for its squares while it has the focus.
document.addEventListener("keydown", (event) => {
  if (event.altKey || event.ctrlKey || event.metaKey || !KEYS[event.key]) return;
  const onMove = event.target instanceof Element && event.target.matches("button.move");
  if (!onMove) return;
  event.preventDefault();
  step(event.key, true);
});

board.addEventListener("played", (event) => {
  const { uci, san } = (event as CustomEvent<BoardMove>).detail;
  answered(uci, san);
});

board.flipped = lesson.flipped;
document.documentElement.classList.add("alive");
go(0, false);
