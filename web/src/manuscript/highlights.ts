// Underlines of claims, painted over the words without touching them (CSS Custom Highlight API), so that the caret
// stays where the author has it.

import type { Outcome } from "../api";

const NAMES: Outcome[] = ["fails", "unsettled", "holds"];

/** The underlines of one element's words; `clear` takes them away. */
export class Underlines {
  private ranges: [string, Range][] = [];

  set(node: Text, spans: readonly { start: number; end: number; outcome: Outcome }[], lit: (index: number) => boolean): void {
    this.clear();
    spans.forEach(({ start, end, outcome }, index) => {
      if (!NAMES.includes(outcome) || end > node.length || start >= end) return;
      const range = document.createRange();
      range.setStart(node, start);
      range.setEnd(node, end);
      this.add(outcome, range);
      if (lit(index)) this.add("lit", range);
    });
  }

  clear(): void {
    for (const [name, range] of this.ranges) CSS.highlights?.get(name)?.delete(range);
    this.ranges = [];
  }

  private add(name: string, range: Range): void {
    if (!CSS.highlights) return;
    const known = CSS.highlights.get(name) ?? new Highlight();
    CSS.highlights.set(name, known.add(range));
    this.ranges.push([name, range]);
  }
}
