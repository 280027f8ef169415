// <desk-others>: the lessons on the desk, to go from one to another, and the way to one that is not there yet.

import { LitElement, html, nothing, type TemplateResult } from "lit";
import { state } from "lit/decorators.js";
import * as api from "./api";
import { session } from "./session";

export class DeskOthers extends LitElement {
  @state() private lessons: api.Opened[] | null = null;

  protected override createRenderRoot(): this {
    return this;
  }

  override render(): TemplateResult | typeof nothing {
    if (!session.lesson) return nothing;
    return html`<details class="about" @toggle=${this.toggled}>
      <summary>Other lessons</summary>
      ${this.lessons ? lessonList(this.lessons.filter(({ key }) => key !== session.lesson?.key)) : nothing}
      <p class="doings"><button class="plain" @click=${() => void leaveFor(null)}>begin or open another</button>
        <button class="plain" @click=${() => void takeOff()}>take this one off the desk</button></p>
    </details>`;
  }

  private readonly toggled = async (event: Event): Promise<void> => {
    if (!(event.target as HTMLDetailsElement).open) return;
    try {
      this.lessons = (await api.lessons()).lessons;
    } catch (error) {
      session.failed(error);
    }
  };
}

/** Lessons by their titles; a click goes to one. */
export function lessonList(lessons: readonly api.Opened[]): TemplateResult {
  if (!lessons.length) return html`<p class="unread">No other lesson is on the desk.</p>`;
  return html`<ul class="entries">
    ${lessons.map(
      ({ key, title, name }) => html`<li><button class="plain" @click=${() => void leaveFor(key)}>${title}</button>
        <span class="unread">${name}</span></li>`,
    )}
  </ul>`;
}

/** Goes to another lesson, or to where one is begun, once all that was written here is on the disk. */
async function leaveFor(key: string | null): Promise<void> {
  await session.settled();
  location.hash = api.address(key);
}

/** Takes the lesson off the desk once all is on the disk, and goes to where another is begun. */
async function takeOff(): Promise<void> {
  const { lesson } = session;
  if (!lesson) return;
  await session.settled();
  try {
    await api.takeOff(lesson.key);
    location.hash = api.address(null);
  } catch (error) {
    session.failed(error);
  }
}

customElements.define("desk-others", DeskOthers);
