// <desk-words>: the words at one spot, edited in place as plain text and written within a second.

import type { Comment, Finding } from "../api";
import { session } from "../session";
import { ranked } from "../signs";
import { label, type Spot } from "../tree";
import { Underlines } from "./highlights";
import { shown, utf16, written } from "./shown-text";

/** Written this long after the last key, and at the latest so long after the first. */
const REST = 300;
const LONGEST = 800;

export class DeskWords extends HTMLElement {
  private at: Spot | null = null;
  private index: number | null = null;
  /** What the lesson had when the author began; null where there were no words. */
  private base: string | null = null;
  private timer = 0;
  private first = 0;
  private sending = false;
  private readonly lines = new Underlines();
  private marked: readonly Finding[] = [];

  connectedCallback(): void {
    const fixed = Boolean(session.lesson?.unwritable);
    this.setAttribute("contenteditable", fixed ? "false" : "plaintext-only");
    if (fixed) this.setAttribute("aria-readonly", "true");
    this.setAttribute("role", "textbox");
    this.setAttribute("aria-multiline", "true");
    this.setAttribute("spellcheck", "true");
    this.tabIndex = -1;
    this.addEventListener("input", this.typed);
    this.addEventListener("blur", this.left);
    this.addEventListener("focus", this.entered);
    this.addEventListener("keydown", this.pressed);
    document.addEventListener("selectionchange", this.caret);
    this.underline();
  }

  disconnectedCallback(): void {
    this.lines.clear();
    document.removeEventListener("selectionchange", this.caret);
    if (this.dirty) void this.save();
  }

  get spot(): Spot | null {
    return this.at;
  }

  /** Takes the lesson's words, unless the author is writing others. */
  show(spot: Spot, comment: Comment | null, findings: readonly Finding[]): void {
    this.at = spot;
    this.index = comment?.index ?? null;
    const place = session.tree?.byId.get(spot.place);
    this.setAttribute("aria-label", `Words ${spot.where} ${place ? label(place) : "the start"}`);
    const text = comment?.text ?? null;
    const writing = this.dirty || this.sending;
    if (!writing && text !== this.base) {
      this.base = text;
      const fresh = shown(text ?? "");
      if (this.textContent !== fresh) this.put(fresh);
    }
    if (findings !== this.marked) {
      this.marked = findings;
      this.underline();
      this.caret();
    }
  }

  private get dirty(): boolean {
    return (this.textContent ?? "") !== shown(this.base ?? "");
  }

  /** Puts a text in and keeps the caret as well as it can be kept. */
  private put(text: string): void {
    const selection = document.activeElement === this ? getSelection() : null;
    const caret = selection?.focusNode && this.contains(selection.focusNode) ? selection.focusOffset : null;
    this.textContent = text;
    const node = this.firstChild;
    if (caret !== null && node) selection?.collapse(node, Math.min(caret, text.length));
  }

  private readonly typed = (): void => {
    this.lines.clear();
    session.waits(this, true);
    const now = performance.now();
    if (!this.timer) this.first = now;
    clearTimeout(this.timer);
    this.timer = window.setTimeout(() => void this.save(), Math.max(0, Math.min(REST, this.first + LONGEST - now)));
  };

  /** Sends what was written; once more when more was written meanwhile. */
  async save(): Promise<void> {
    clearTimeout(this.timer);
    this.timer = 0;
    if (this.sending || !this.at) return;
    session.waits(this, this.dirty);
    if (!this.dirty) return;
    const edited = this.textContent ?? "";
    if (this.base === null && !edited.trim()) return session.waits(this, false);
    const text = written(this.base ?? "", edited);
    this.sending = true;
    let became: Awaited<ReturnType<typeof session.write>> = "refused";
    try {
      became = await session.write(this.at, text, this.base);
      if (became === "written") this.base = text.trim() ? text : null;
      else if (became === "clash") {
        this.base = session.clash?.theirs ?? null;
        this.put(shown(this.base ?? ""));
      }
    } finally {
      this.sending = false;
    }
    const newer = became !== "clash" && this.textContent !== edited;
    session.waits(this, newer || became === "refused");
    if (newer) this.timer = window.setTimeout(() => void this.save(), REST);
    else if (became === "written" && this.dirty) this.put(shown(this.base ?? ""));
    this.underline();
  }

  private readonly entered = (): void => {
    if (this.at && session.cursor !== this.at.place) session.go(this.at.place);
  };

  private readonly left = (): void => {
    void this.save();
    this.dispatchEvent(new CustomEvent("words-left", { bubbles: true }));
  };

  private readonly pressed = (event: KeyboardEvent): void => {
    if (event.isComposing) return;
    if (event.key === "Enter" && event.shiftKey) {
      event.preventDefault();
      document.execCommand("insertText", false, "\n\n");
    } else if (event.key === "Escape" || event.key === "Enter") {
      event.preventDefault();
      event.stopPropagation();
      void this.save();
      this.dispatchEvent(new CustomEvent("words-done", { bubbles: true }));
    }
  };

  /** The sentence that the caret is in is the one whose finding is told. */
  private readonly caret = (): void => {
    const selection = document.activeElement === this ? getSelection() : null;
    if (!selection?.focusNode || !this.contains(selection.focusNode)) return;
    const text = this.base ?? "";
    const at = selection.focusOffset;
    const sentence = session.sentences.find(
      ({ comment, start, end }) => comment === this.index && utf16(text, start) <= at && at <= utf16(text, end),
    );
    const said = this.marked.filter(({ id }) => sentence?.findings.includes(id));
    const finding = said.find(({ id }) => id === session.shown?.exhibit.id) ?? ranked(said)[0];
    if (finding && session.shown?.exhibit.id !== finding.id) session.show(finding);
  };

  private spans(): { start: number; end: number; outcome: Finding["outcome"] }[] {
    const text = this.base ?? "";
    return this.marked.map(({ start, end, outcome }) => ({ start: utf16(text, start), end: utf16(text, end), outcome }));
  }

  underline(): void {
    const node = this.firstChild;
    if (this.dirty || !(node instanceof Text)) return this.lines.clear();
    this.lines.set(node, this.spans(), (index) => this.marked[index]?.id === session.shown?.exhibit.id);
  }
}

customElements.define("desk-words", DeskWords);
