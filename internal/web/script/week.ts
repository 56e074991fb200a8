// A job on the page of the week is answered in place: the form is sent as it would be
// without script, and of the page that comes back the list and what was just done take
// the place of those on the screen. What is looked at stays where it is.

export function start(): void {
  if (!document.getElementById("week")) return;
  document.addEventListener("submit", (e) => {
    const form = e.target;
    if (!(form instanceof HTMLFormElement) || form.method !== "post" || e.defaultPrevented) return;
    if (!form.matches("[data-answer], .said form, .answered form")) return;
    const by = e.submitter;
    if (by?.getAttribute("formmethod") === "get") return; // a question, not an answer
    e.preventDefault();
    void send(form, by instanceof HTMLButtonElement ? by : undefined);
  });
}

let underWay = false;

async function send(form: HTMLFormElement, by?: HTMLButtonElement): Promise<void> {
  if (underWay) return;
  underWay = true;
  document.getElementById("week")?.setAttribute("aria-busy", "true");
  try {
    const values = new URLSearchParams();
    for (const [name, value] of new FormData(form, by)) values.append(name, String(value));
    const answer = await fetch(form.action, { method: "POST", body: values, cache: "no-store" });
    if (!(answer.ok || answer.status === 422) || !put(await answer.text(), form)) return leave(form, by);
    if (answer.ok) remember(answer.url);
  } catch {
    leave(form, by);
  } finally {
    underWay = false;
    document.getElementById("week")?.removeAttribute("aria-busy");
  }
}

/** Sends the form as a browser without script does; sent twice it writes once. */
function leave(form: HTMLFormElement, by?: HTMLButtonElement): void {
  if (by?.name) {
    const hidden = document.createElement("input");
    Object.assign(hidden, { type: "hidden", name: by.name, value: by.value });
    form.append(hidden);
  }
  form.submit();
}

/** Puts the list and what was done in place; false when they are not in the answer. */
function put(html: string, form: HTMLFormElement): boolean {
  const fresh = new DOMParser().parseFromString(html, "text/html");
  const week = fresh.getElementById("week");
  const said = fresh.querySelector(".said-place");
  const old = document.getElementById("week");
  if (!week || !said || !old) return false;
  const held = near(form, week);
  const before = held && document.getElementById(held)?.getBoundingClientRect().top;
  old.replaceWith(week);
  document.querySelector(".said-place")?.replaceChildren(...said.childNodes);
  const after = held && document.getElementById(held)?.getBoundingClientRect().top;
  if (typeof before === "number" && typeof after === "number") scrollBy({ top: after - before, behavior: "instant" });
  focusOn(week, held);
  return true;
}

/** The job or stop at or after the answered one that is in the new list too. */
function near(form: HTMLFormElement, week: Element): string | undefined {
  const all = [...document.querySelectorAll<HTMLElement>("#week .stop, #week .job, #answered")];
  const at = all.findIndex((e) => e.contains(form) && !e.matches(".stop"));
  const next = all.slice(Math.max(0, at)).concat(all.slice(0, Math.max(0, at)).reverse());
  return next.find((e) => e.id && week.querySelector("#" + CSS.escape(e.id)))?.id;
}

/** What is wrong gets the focus; else the next job, so that keys go on from there. */
function focusOn(week: Element, held: string | undefined): void {
  const wrong = week.querySelector<HTMLElement>("[aria-invalid]");
  const job = held ? document.getElementById(held) : null;
  (wrong ?? job?.querySelector<HTMLElement>("button.tick, summary") ?? document.querySelector<HTMLElement>(".said button"))?.focus({ preventScroll: !wrong });
}

function remember(address: string): void {
  const here = new URL(address);
  here.searchParams.delete("kept");
  history.replaceState(history.state, "", here.pathname + here.search);
}
