// What was just done is named in the address, so that it is said without script
// too. Once said it is taken out of the address: a reload or a bookmark does not
// say it again.
export function forgetSaid(): void {
  const here = new URL(location.href);
  if (!here.searchParams.has("kept")) return;
  here.searchParams.delete("kept");
  history.replaceState(history.state, "", here);
}
