// On a phone the navigation is swept sideways; the page that is open is brought
// into sight.
export function showHere(): void {
  document.querySelector("nav.pages [aria-current]")?.scrollIntoView({ block: "nearest", inline: "nearest" });
}
