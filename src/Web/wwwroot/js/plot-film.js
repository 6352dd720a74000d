// A click in a time plot whose figure names a film page leads to the film at that time; plots on the film page itself seek instead.

/** Time under a pointer in a plot, ms from contact; null outside its axes. */
export function timeAt(plot, event) {
  const { xFrom, xTo, left, right, top, bottom } = plot.dataset;
  const box = plot.getBoundingClientRect();
  const [, , width, height] = plot.getAttribute("viewBox").split(" ").map(Number);
  const x = ((event.clientX - box.left) / box.width) * width;
  const y = ((event.clientY - box.top) / box.height) * height;
  if (x < Number(left) || x > Number(right) || y < Number(top) || y > Number(bottom)) return null;
  return Number(xFrom) + ((x - Number(left)) / (Number(right) - Number(left))) * (Number(xTo) - Number(xFrom));
}

document.addEventListener("click", (event) => {
  const plot = event.target.closest?.("figure[data-film] svg.plot-canvas[data-x-from]");
  const ms = plot && timeAt(plot, event);
  if (ms === null || ms === undefined) return;
  const seek = new CustomEvent("film-seek", { detail: { ms }, cancelable: true });
  if (!document.dispatchEvent(seek)) return;
  const address = new URL(plot.closest("figure").dataset.film, location.href);
  address.searchParams.set("t", ms.toFixed(1));
  location.assign(address);
});
