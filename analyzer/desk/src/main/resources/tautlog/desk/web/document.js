// A document as the server tells it, as elements: texts stay texts.
import { el } from "./words.js";

export function section(of) {
  return el("section", {}, el("h2", {}, of.heading), of.blocks.map(block));
}

function block(of) {
  switch (of.kind) {
    case "heading": return el("h3", {}, of.text);
    case "action":
    case "caution": return el("p", { className: of.kind }, of.label ? el("strong", {}, of.label + ": ") : "", of.text);
    case "bullets": return el("ul", {}, of.items.map((item) => el("li", {}, item)));
    case "table": return sideways(el("div", { className: "scroll", role: "region", tabIndex: 0, "aria-label": of.caption }, table(of)));
    case "figure": return figure(of);
    default: return el("p", {}, of.text);
  }
}

/** What may be wider than the screen, and words that say so where it is. */
export function sideways(box) {
  const hint = el("div", { className: "sideways", hidden: true }, "⇄ Wider than the screen: move it sideways.");
  new ResizeObserver(() => { hint.hidden = box.scrollWidth <= box.clientWidth + 1; }).observe(box);
  return el("div", {}, hint, box);
}

function table(of) {
  return el("table", {}, el("caption", {}, of.caption),
    el("thead", {}, el("tr", {}, of.heads.map((head, i) => el("th", { scope: "col", className: of.numeric[i] ? "n" : "" }, head)))),
    el("tbody", {}, of.rows.map((row) => el("tr", {}, row.map((cell, i) => i === 0
      ? el("th", { scope: "row", className: of.numeric[i] ? "n" : "" }, cell) : el("td", { className: of.numeric[i] ? "n" : "" }, cell))))));
}

/** Read as XML and taken over as elements; nothing in it can run or fetch, by the page's policy. */
function figure(of) {
  const drawing = new DOMParser().parseFromString(of.svg, "image/svg+xml").documentElement;
  return el("figure", {}, el("figcaption", {}, of.title),
    sideways(el("div", { className: "scroll", role: "region", tabIndex: 0, "aria-label": of.title }, document.importNode(drawing, true))));
}
