// A page that can be tried on is made of parts, each an element with data-part.
// Asked for with the header X-Fragment, the server answers with the same page's
// parts alone, and each part whose drawing has changed takes the place of the
// one on the page. What is on the page stays until then.

/** What is to be shown: an address, and a part to be left alone while it is held. */
interface Wish {
  url: URL;
  held: Element | undefined;
}

let underWay = false;
let next: Wish | undefined;
let asked: URL | undefined; // what was asked for last and is not there yet

/** The address that is shown, or will be once the answers under way are there. */
export function address(): string {
  return (asked ?? location).href;
}

/**
 * Puts an address's parts in place. While one answer is under way only the newest
 * wish is remembered, so that what is moved quickly is followed at the pace at
 * which answers come. Where an answer fails the address itself is loaded.
 */
export async function show(url: URL, held?: Element): Promise<void> {
  next = { url, held };
  asked = url;
  if (underWay) return;
  underWay = true;
  try {
    while (next) {
      const wish: Wish = next;
      next = undefined;
      if (!(await put(wish)) && !wish.held && !next) location.assign(wish.url);
    }
  } finally {
    underWay = false;
    asked = undefined;
  }
}

/** Asks for the parts of an address and puts them in place. */
export async function put(wish: Wish): Promise<boolean> {
  const home = document.querySelector<HTMLElement>("[data-fragment]");
  if (!home) return false;
  home.setAttribute("aria-busy", "true");
  try {
    const answer = await fetch(wish.url, {
      headers: { "X-Fragment": home.dataset["fragment"] ?? "", "X-Have": keysOf(home) },
      cache: "no-store", // a part must not be taken for the page when going back
    });
    if (!answer.ok && answer.status !== 422) return false;
    const html = await answer.text();
    if (next && !next.held && wish.held) return true; // let go of meanwhile
    // While more is wished for, what has the focus stays: its keys add up.
    replace(home, html, wish.held ?? (next ? (document.activeElement ?? undefined) : undefined));
    if (answer.ok) history.replaceState(history.state, "", answer.url);
    announce(home.querySelector(".try .sum")?.textContent ?? "");
    return true;
  } catch {
    return false;
  } finally {
    home.removeAttribute("aria-busy");
  }
}

/** The names of what is on the page and need not be sent again. */
function keysOf(home: HTMLElement): string {
  return [...home.querySelectorAll<HTMLElement>("[data-key]")].map((e) => e.dataset["key"]).join(" ");
}

let voice: HTMLElement | undefined;

/** Tells those who do not see the page what a change comes to. */
function announce(text: string): void {
  if (!voice) {
    voice = document.createElement("p");
    voice.className = "sr";
    voice.setAttribute("aria-live", "polite");
    document.body.append(voice);
  }
  if (voice.textContent !== text) voice.textContent = text;
}

/** Puts new parts in the place of old ones, but leaves the held part alone. */
function replace(home: HTMLElement, html: string, held?: Element): void {
  const fresh = new DOMParser().parseFromString(html, "text/html");
  const focus = nameOf(document.activeElement);
  const old = partsOf(home);
  const incoming = partsOf(fresh);
  const same = old.size === incoming.size && [...incoming.keys()].every((name) => old.has(name));
  if (same) {
    let before: HTMLElement | undefined;
    for (const [name, part] of incoming) {
      before = ordered(swap(old.get(name)!, part, held), before, held);
    }
  } else if (!held) {
    whole(home, fresh);
  }
  if (focus && nameOf(document.activeElement) !== focus) {
    document.querySelector<HTMLElement>(focus)?.focus({ preventScroll: true });
  }
}

function partsOf(root: ParentNode): Map<string, HTMLElement> {
  const parts = new Map<string, HTMLElement>();
  for (const e of root.querySelectorAll<HTMLElement>("[data-part]")) parts.set(e.dataset["part"] ?? "", e);
  return parts;
}

/** Swaps a part for a new one that differs, and returns what is on the page. */
function swap(old: HTMLElement, fresh: HTMLElement, held?: Element): HTMLElement {
  if ((held && old.contains(held)) || old.isEqualNode(fresh)) return old;
  if (fresh.hasAttribute("data-same")) {
    old.querySelector("a[data-try]")?.setAttribute("href", fresh.dataset["href"] ?? "");
    return old;
  }
  const open = [...old.querySelectorAll("details")].map((d) => d.open);
  fresh.querySelectorAll("details").forEach((d, i) => {
    if (open[i]) d.open = true;
  });
  old.replaceWith(fresh);
  return fresh;
}

/** Puts a part behind the one before it: lanes stand in order of date. */
function ordered(part: HTMLElement, before: HTMLElement | undefined, held?: Element): HTMLElement {
  if (!held && before?.parentElement === part.parentElement && before?.nextElementSibling !== part) before?.after(part);
  return part;
}

/** Puts everything anew: parts have come or gone. What was swept stays swept. */
function whole(home: HTMLElement, fresh: Document): void {
  const next = fresh.querySelector("[data-fragment]");
  if (!next) return;
  const left = [...home.querySelectorAll(".bands")].map((e) => e.scrollLeft);
  home.replaceChildren(...next.childNodes);
  home.querySelectorAll(".bands").forEach((e, i) => {
    e.scrollLeft = left[i] ?? 0;
  });
}

/** A selector that finds an element again among new parts; empty when none does. */
function nameOf(element: Element | null): string {
  if (element?.id) return "#" + CSS.escape(element.id);
  const planting = element?.getAttribute("data-planting");
  return planting ? `.ring[data-planting="${CSS.escape(planting)}"]` : "";
}
