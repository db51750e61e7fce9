// A day: its trace, and the words of its report.
import { ask } from "./api.js";
import { whatIf } from "./app.js";
import { section } from "./document.js";
import { el, date, shown } from "./words.js";
import { Trace } from "./trace.js";

export async function showDay(main, season, id) {
  const day = season.days.find((one) => one.day === id);
  if (!day) throw new Error("There is no such day in the folder.");
  document.getElementById("title").textContent = day.date
    ? date(Date.parse(day.date + "T12:00:00Z") * 1000) + (season.winches.length > 1 ? ", " + shown(day.winch) : "") : "Outings without a clock";
  const words = el("div", { className: "report" });
  const traces = day.from_us !== undefined
    ? [new Trace({ winch: day.winch_id, whole: [day.from_us, day.to_us], days: [day], heading: "Trace of the day" })]
    : day.outings.map((outing, i) => new Trace({ winch: day.winch_id, outing: outing.id, whole: undated(outing), days: [],
      ordinal: i + 1, heading: "Outing " + (i + 1) + ", no clock: seconds from its start" }));
  main.replaceChildren(...traces.map((trace) => trace.element), words);
  let made = "";
  let closed = false;
  const fill = async () => {
    const got = await ask("/api/day", { day: id, ...whatIf() });
    if (closed) return;
    const now = JSON.stringify(got.summary ?? null) + got.known;
    if (now === made) return;
    made = now;
    words.replaceChildren(...report(got));
    if (got.known) traces.forEach((trace) => trace.findings(id, got.report));
  };
  await fill();
  const timer = setInterval(() => fill().catch(() => {}), 2000);
  return {
    winch: day.winch_id,
    season: (next) => {
      const now = next.days.find((one) => one.day === id);
      if (now?.from_us !== undefined) traces[0].update([now.from_us, now.to_us], [now]);
      else for (const outing of now?.outings ?? []) traces.find((trace) => trace.outing === outing.id)?.update(undated(outing), []);
    },
    live: (now) => traces.forEach((trace) => trace.live(now)),
    close: () => { closed = true; clearInterval(timer); traces.forEach((trace) => trace.close()); },
  };
}

/** From its start to a second after its last frame began, in microseconds. */
const undated = (outing) => [0, Math.ceil(outing.length_s * 1e6) + 1e6];

function report(got) {
  if (!got.known) return [el("p", { className: "caution", role: "status" }, "What was found on this day is being worked out. Until then it is unknown.")];
  if (got.summary.failed) return [el("p", { className: "action", role: "alert" }, "Unknown: " + got.summary.failed)];
  const banner = got.page.banner ? [el("p", { className: "caution" }, got.page.banner)] : [];
  // the standing text stands at the end of every view already
  const standing = document.getElementById("standing-head").textContent;
  return [...banner, ...got.page.sections.filter((s) => s.heading !== standing).map(section)];
}
