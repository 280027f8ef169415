// <desk-sentences>: the sentences here that are not checked: the author's opinions, and those that were not understood.

import { LitElement, html, nothing, type TemplateResult } from "lit";
import type { Sentence } from "../api";
import { utf16 } from "../manuscript/shown-text";
import { Watch, session } from "../session";

export class DeskSentences extends LitElement {
  constructor() {
    super();
    new Watch(this, session, ["lesson", "cursor", "findings"]);
  }

  protected override createRenderRoot(): this {
    return this;
  }

  override render(): TemplateResult | typeof nothing {
    const here = session.sentences.filter(({ place, status }) => place === session.cursor && status !== "read" && status !== "left alone");
    if (!here.length) return nothing;
    return html`${here.map((sentence) => this.told(sentence))}`;
  }

  private told(sentence: Sentence): TemplateResult {
    const said = words(sentence);
    if (sentence.status === "your opinion") {
      return html`<p class="unread">“${said}” is your opinion and is not checked.
        <button class="plain" @click=${() => void opinion(sentence, false)}>check it again</button></p>`;
    }
    const why = sentence.status === "other language" ? "it is not English" : (sentence.why ?? "it was not understood");
    return html`<p class="unread">Not checked: “${said}” (${why}).</p>`;
  }
}

/** Marks a sentence as the author's opinion, or takes the mark back. */
export function opinion({ comment, start, end }: Sentence, isOne: boolean): Promise<void> {
  return session.change(
    { op: "opinion", comment, start, end, opinion: isOne },
    isOne ? "It is your opinion now, and is not checked." : "It is checked again.",
  );
}

function words({ place, comment, start, end }: Sentence): string {
  const at = session.tree?.byId.get(place);
  const text = [...(at?.before ?? []), ...(at?.after ?? [])].find(({ index }) => index === comment)?.text ?? "";
  return text.slice(utf16(text, start), utf16(text, end)).replace(/\s+/g, " ");
}

customElements.define("desk-sentences", DeskSentences);
