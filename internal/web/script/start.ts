// The first run: places are looked up while one types, and the time zone is taken
// from the browser. Without script a button looks up, and the server's zone is
// taken.
const pause = 160; // ms without a key before a place is looked up

export function start(): void {
  const zone = document.querySelector<HTMLInputElement>("[data-zone]");
  if (zone) zone.value = Intl.DateTimeFormat().resolvedOptions().timeZone || zone.value;
  const box = document.querySelector<HTMLInputElement>("[data-places]");
  const list = document.getElementById("places");
  const path = box?.dataset["places"];
  if (!box || !list || !path) return;
  let timer = 0;
  let asked = 0;
  const look = async (): Promise<void> => {
    const mine = ++asked;
    const answer = await fetch(`${path}?q=${encodeURIComponent(box.value)}`);
    if (!answer.ok) return;
    const html = await answer.text();
    if (mine !== asked) return; // a later key was quicker
    list.replaceChildren(document.createRange().createContextualFragment(html));
  };
  box.addEventListener("input", () => {
    clearTimeout(timer);
    timer = window.setTimeout(() => void look(), pause);
  });
}
