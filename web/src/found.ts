// What is found of a lesson, kept up to date by the news of it.

import type { Finding, FindingsNews, PassageFound, Sentence } from "./api";

export class Found {
  /** The last news; null before the first. */
  news: FindingsNews | null = null;
  private order: [string, number | null][] = [];
  private passages = new Map<string, PassageFound>();

  /** Takes news; none may be left out. */
  take(news: FindingsNews): void {
    this.news = news;
    if (news.order) this.order = news.order;
    const fresh = new Map(news.passages.map((passage) => [passage.key, passage]));
    const kept = new Map<string, PassageFound>();
    for (const [key, comment] of this.order) {
      const passage = fresh.get(key) ?? this.passages.get(key);
      if (passage) kept.set(key, numbered(passage, comment));
    }
    this.passages = kept;
  }

  /** All findings, in the order of the text. */
  get findings(): Finding[] {
    return [...this.passages.values()].flatMap(({ findings }) => findings);
  }

  get sentences(): Sentence[] {
    return [...this.passages.values()].flatMap(({ sentences }) => sentences);
  }
}

/** The passage with the number that its comment has now. */
function numbered(passage: PassageFound, comment: number | null): PassageFound {
  const known = passage.findings[0] ?? passage.sentences[0];
  if (!known || known.comment === comment) return passage;
  return {
    key: passage.key,
    findings: passage.findings.map((finding) => ({ ...finding, comment })),
    sentences: comment === null ? [] : passage.sentences.map((sentence) => ({ ...sentence, comment })),
  };
}
