// The season: its trace, and a table of its days.
import { address, winch } from "./app.js";
import { sideways } from "./document.js";
import { el, shortDate, counted } from "./words.js";
import { Trace } from "./trace.js";

export function showSeason(main, first) {
  document.getElementById("title").textContent = "Season";
  const own = (season) => season.days.filter((day) => day.winch_id === winch());
  const span = (days) => {
    const dated = days.filter((day) => day.from_us !== undefined);
    return dated.length ? [Math.min(...dated.map((d) => d.from_us)), Math.max(...dated.map((d) => d.to_us))] : null;
  };
  const notes = el("div");
  const table = el("div", { className: "scroll", role: "region", tabIndex: 0, "aria-label": "Days of the season" });
  const whole = span(own(first));
  const trace = whole ? new Trace({ winch: winch(), whole, days: own(first), heading: "Trace of the season" }) : null;
  main.replaceChildren(
    ...(trace ? [trace.element] : [el("p", {}, "No outing has a clock: there is no trace of the season. See each below.")]),
    el("section", { "aria-labelledby": "days-head" }, el("h2", { id: "days-head" }, "Days"), sideways(table)),
    notes);
  const fill = (season) => {
    const days = own(season);
    const made = JSON.stringify([days, season.left_out, season.notes]);
    if (table.dataset.made === made) return;
    table.dataset.made = made;
    table.replaceChildren(dayTable(days));
    notes.replaceChildren(...list("What could not be read", season.left_out), ...list("How the recordings were put together", season.notes));
    if (trace) trace.update(span(days), days);
  };
  fill(first);
  return { season: fill, live: (now) => trace?.live(now), close: () => trace?.close() };
}

function list(heading, sentences) {
  return sentences.length ? [el("section", {}, el("h2", {}, heading), el("ul", {}, sentences.map((s) => el("li", {}, s))))] : [];
}

const HEADS = [["Day", false], ["Greatest, % of limit", true], ["Overloads", true], ["Pulls", true], ["Shocks", true], ["Pull hours", true],
  ["Shaft hours", true], ["Gaps", true], ["To note", false]];

function dayTable(days) {
  return el("table", {}, el("caption", {}, counted(days.length, "day") + ", the newest first"),
    el("thead", {}, el("tr", {}, HEADS.map(([head, n]) => el("th", { scope: "col", className: n ? "n" : "" }, head)))),
    el("tbody", {}, [...days].reverse().map(row)));
}

function row(day) {
  const name = day.date ? shortDate(Date.parse(day.date + "T12:00:00Z") * 1000) + " " + day.date.slice(0, 4) : "No clock";
  const head = el("th", { scope: "row" }, el("a", { href: address("day", day.day) }, name));
  if (!day.known) {
    return el("tr", {}, head, el("td", { colSpan: HEADS.length - 1, className: "unknown" }, "not worked out yet: unknown"));
  }
  if (day.failed) return el("tr", {}, head, el("td", { colSpan: HEADS.length - 1, className: "unknown" }, "unknown: " + day.failed));
  const share = day.greatest_share_text === null ? "no pull"
    : (day.greatest_is_at_least ? "at least " : "") + day.greatest_share_text + (day.greatest_share > 1 ? " ▲ over" : day.greatest_share >= 0.8 ? " caution" : "");
  const cells = [share, day.overloads, day.pulls, day.shocks, day.pull_h.toFixed(2), day.shaft_h === null ? "unknown" : day.shaft_h.toFixed(2),
    day.gaps ? day.gaps + " (" + day.gap_s.toFixed(1) + " s)" : 0];
  return el("tr", { className: day.overloads ? "over" : "" }, head, cells.map((cell) => el("td", { className: "n" }, String(cell))), el("td", {}, remarks(day)));
}

function remarks(day) {
  const found = [];
  if (day.may_be_over) found.push(counted(day.may_be_over, "pull") + " may be over");
  for (const kind of ["jolt", "drop", "stall"]) if (day[kind + "s"]) found.push(counted(day[kind + "s"], kind));
  if (day.left_out) found.push(counted(day.left_out, "piece") + " could not be read");
  if (day.thinned_outings) found.push(counted(day.thinned_outings, "outing") + " thinned");
  if (day.chain_intact === false) found.push("THE CHAIN DOES NOT HOLD: verify");
  if (day.outings.some((o) => o.open)) found.push("still open: grows, or the power went");
  return found.join(", ");
}
