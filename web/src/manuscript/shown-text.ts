// The words of a comment as they are shown and edited: the file's line breaks inside a paragraph are shown as spaces.
// What the author did not touch goes back as it was, breaks and all.

/** Same length as the text, so that places in one are places in the other. */
export function shown(text: string): string {
  return text
    .replaceAll("\r\n", " \u2060")
    .replace(/(?<!\n)\n(?!\n)/g, " ")
    .replaceAll("\t", " ");
}

/** What to write when `edited` is what the author made of `shown(text)`. */
export function written(text: string, edited: string): string {
  const was = shown(text);
  let head = 0;
  const most = Math.min(was.length, edited.length);
  while (head < most && was.charCodeAt(head) === edited.charCodeAt(head)) head += 1;
  let tail = 0;
  while (tail < most - head && was.charCodeAt(was.length - 1 - tail) === edited.charCodeAt(edited.length - 1 - tail)) tail += 1;
  return text.slice(0, head) + edited.slice(head, edited.length - tail) + text.slice(text.length - tail);
}

/** Where a count of code points lies in UTF-16 units. */
export function utf16(text: string, points: number): number {
  if (!/[\ud800-\udbff]/.test(text)) return points;
  let at = 0;
  for (let left = points; left > 0 && at < text.length; left -= 1) at += (text.codePointAt(at) ?? 0) > 0xffff ? 2 : 1;
  return at;
}
