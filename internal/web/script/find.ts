// Narrows a list while one types. The same words are looked for as the server
// does: each must begin a word of the line. What is not found is hidden, and a
// group without lines with it.
export function findWhileTyping(): void {
  const form = document.querySelector<HTMLFormElement>("form.find");
  const box = form?.querySelector<HTMLInputElement>("input[type=search]");
  const lines = [...document.querySelectorAll<HTMLElement>("[data-find]")];
  if (!form || !box || lines.length === 0) return;
  if (form.hasAttribute("data-instant")) form.hidden = false;
  const held = lines.map((line) => words(line.dataset["find"] ?? ""));
  const told = document.querySelector<HTMLElement>("[data-found]");
  const narrow = (): void => {
    const wanted = words(box.value);
    let found = 0;
    lines.forEach((line, i) => {
      const has = wanted.every((w) => held[i]?.some((word) => word.startsWith(w)));
      line.hidden = !has;
      if (has) found++;
    });
    for (const group of document.querySelectorAll<HTMLElement>(".group")) {
      group.hidden = !group.querySelector("[data-find]:not([hidden])");
    }
    tell(told, wanted.length > 0, found);
  };
  box.addEventListener("input", narrow);
  form.addEventListener("submit", (event) => {
    if (form.hasAttribute("data-instant")) event.preventDefault();
  });
}

// tell puts the number found into the text that the page brings for it.
function tell(told: HTMLElement | null, narrowed: boolean, found: number): void {
  if (!told) return;
  const text = found === 1 ? told.dataset["single"] : told.dataset["many"];
  told.textContent = narrowed ? (text ?? "").replace("#", String(found)) : "";
}

function words(text: string): string[] {
  return text.toLowerCase().split(/\s+/).filter((w) => w !== "");
}
