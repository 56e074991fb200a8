// A page that can be tried on is made of parts, each an element with data-part.
// Asked for with the header X-Fragment, the server answers with the same page's
// parts alone, and each part whose drawing has changed takes the place of the
// one on the page. What is on the page stays until then.

let asked: AbortController | undefined;

/** Fetches an address's parts and puts them in place. A newer call ends an older one. */
export async function show(url: URL, held?: Element): Promise<boolean> {
  asked?.abort();
  const mine = new AbortController();
  asked = mine;
  const home = document.querySelector<HTMLElement>("[data-fragment]");
  if (!home) return false;
  home.setAttribute("aria-busy", "true");
  try {
    const answer = await fetch(url, {
      headers: { "X-Fragment": home.dataset["fragment"] ?? "" },
      signal: mine.signal,
      cache: "no-store", // a part must not be taken for the page when going back
    });
    if (!answer.ok && answer.status !== 422) throw new Error(String(answer.status));
    const html = await answer.text();
    if (mine.signal.aborted) return false;
    replace(home, html, held);
    if (answer.ok) history.replaceState(history.state, "", answer.url);
    home.removeAttribute("aria-busy");
    return true;
  } catch (error) {
    if (mine.signal.aborted) return false;
    home.removeAttribute("aria-busy");
    throw error;
  }
}

/** Puts new parts in the place of old ones, but leaves the held part alone. */
function replace(home: HTMLElement, html: string, held?: Element): void {
  const fresh = new DOMParser().parseFromString(html, "text/html");
  const focus = nameOf(document.activeElement);
  const parts = [...home.querySelectorAll<HTMLElement>("[data-part]")];
  const names = (list: Iterable<HTMLElement>) => [...list].map((e) => e.dataset["part"]).join(" ");
  const incoming = [...fresh.querySelectorAll<HTMLElement>("[data-part]")];
  if (names(parts) === names(incoming)) {
    parts.forEach((old, i) => swap(old, incoming[i]!, held));
  } else if (!held) {
    const whole = fresh.querySelector("[data-fragment]");
    if (whole) home.replaceChildren(...whole.childNodes);
  }
  if (focus && nameOf(document.activeElement) !== focus) {
    document.querySelector<HTMLElement>(focus)?.focus({ preventScroll: true });
  }
}

/** A selector that finds an element again among new parts; empty when none does. */
function nameOf(element: Element | null): string {
  if (element?.id) return "#" + CSS.escape(element.id);
  const planting = element?.getAttribute("data-planting");
  return planting ? `.ring[data-planting="${CSS.escape(planting)}"]` : "";
}

function swap(old: HTMLElement, fresh: HTMLElement, held?: Element): void {
  if (held && old.contains(held)) return;
  if (old.isEqualNode(fresh)) return;
  const open = [...old.querySelectorAll("details")].map((d) => d.open);
  const left = old.scrollLeft;
  fresh.querySelectorAll("details").forEach((d, i) => {
    if (open[i]) d.open = true;
  });
  old.replaceWith(fresh);
  fresh.scrollLeft = left;
}
