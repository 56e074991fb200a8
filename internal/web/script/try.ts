// Trying without leaving the page. Forms and links marked data-try lead to the
// same page with a change tried; here their answer is put in place instead of
// loading the page anew.

import { show } from "./fragment";
import * as ring from "./ring";

export function start(): void {
  if (!document.querySelector("[data-fragment]")) return;
  document.addEventListener("click", click);
  document.addEventListener("submit", submit);
  document.addEventListener("change", change);
  ring.start();
}

function click(event: MouseEvent): void {
  if (event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey || event.altKey) return;
  if (!(event.target instanceof Element)) return;
  const href = event.target.closest("a[data-try]")?.getAttribute("href"); // also of a link in a drawing
  if (!href) return;
  event.preventDefault();
  void show(new URL(href, location.href));
}

function submit(event: SubmitEvent): void {
  const form = event.target;
  if (!(form instanceof HTMLFormElement) || !form.matches("form[data-try]")) return;
  event.preventDefault();
  ask(form, event.submitter);
}

/** A field that was changed is tried at once. */
function change(event: Event): void {
  if (!(event.target instanceof HTMLElement)) return;
  const form = event.target.closest<HTMLFormElement>("form[data-try=live]");
  if (form && form.reportValidity()) ask(form);
}

function ask(form: HTMLFormElement, by?: HTMLElement | null): void {
  const url = new URL(form.action);
  url.search = "";
  for (const [name, value] of new FormData(form, by)) {
    if (typeof value === "string") url.searchParams.append(name, value);
  }
  void show(url);
}
