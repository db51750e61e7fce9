// Start here: which view is shown (behind the # of the address), the switches, what the program is doing in the background.
import { ask } from "./api.js";
import { el, setUnit, setZone, length, shown } from "./words.js";
import { showSeason } from "./season.js";
import { showDay } from "./day.js";
import { showPlan } from "./plan.js";

/** A season that grows is asked for anew at most so often. */
const GROWN_MS = 3000;
const VIEWS = ["season", "day", "plan"];
const UNKNOWN = "unknown";
const state = { season: null, shown: null, live: null, loadedAt: 0 };

/** The address: #/season, #/day/ID or #/plan, and behind ? what is switched. */
export function place() {
  const [path, query] = location.hash.replace(/^#/, "").split("?");
  const parts = path.split("/").filter(Boolean);
  const id = decoded(parts[1] ?? "");
  const view = id === null || parts.length > 2 ? UNKNOWN : parts[0] || "season";
  return { view: VIEWS.includes(view) ? view : UNKNOWN, id: id ?? "", query: new URLSearchParams(query || "") };
}

function decoded(part) {
  try {
    return decodeURIComponent(part);
  } catch (e) {
    return null;
  }
}

export function address(view, id, changes = {}) {
  const query = new URLSearchParams();
  for (const key of ["winch", "hookup", "rig", "calibration"]) {
    const value = key in changes ? changes[key] : place().query.get(key);
    if (value) query.set(key, value);
  }
  for (const key of ["from", "to"]) if (changes[key]) query.set(key, changes[key]);
  const text = query.toString();
  return "#/" + view + (id ? "/" + encodeURIComponent(id) : "") + (text ? "?" + text : "");
}

export function whatIf() {
  const query = place().query;
  return { hookup: query.get("hookup"), rig: query.get("rig"), calibration: query.get("calibration") };
}

function text(id, given) {
  const words = shown(given);
  const element = document.getElementById(id);
  if (element.textContent !== words) element.textContent = words;
}

/** What every view and printed page says on top. */
export function banner(words) {
  const element = document.getElementById("what-if");
  element.textContent = words;
  element.hidden = !words;
  document.documentElement.classList.toggle("has-banner", Boolean(words));
}

function switches() {
  const { season } = state;
  const form = document.getElementById("switches");
  form.hidden = ["plan", UNKNOWN].includes(place().view);
  const now = whatIf();
  const go = (changes) => { location.hash = address(place().view, place().id, { ...changes, from: place().query.get("from"), to: place().query.get("to") }); };
  const parts = [];
  if (season.winches.length > 1 && place().view === "season") {
    parts.push(choice("Winch", season.winches.map((w) => [w.id, w.name]), winch(), (value) => go({ winch: value })));
  }
  const hookups = [["", "as recorded"], ...season.offer.hookups.map((id) => [id, id])];
  if (now.hookup && !season.offer.hookups.includes(now.hookup)) hookups.push([now.hookup, now.hookup]);
  parts.push(choice("What if the hookup had been", hookups, now.hookup || "", (value) => go({ hookup: value })));
  if (season.offer.rig) parts.push(box("the other rig", now.rig, (on) => go({ rig: on ? "given" : "" })));
  if (season.offer.calibration) parts.push(box("the other calibration", now.calibration, (on) => go({ calibration: on ? "given" : "" })));
  const made = JSON.stringify([season.winches, hookups, now, season.offer, place().view, winch()]);
  if (form.dataset.made !== made) {
    form.dataset.made = made;
    form.replaceChildren(...parts);
  }
}

function choice(label, options, value, changed) {
  const select = el("select", { onchange: (e) => changed(e.target.value) },
    options.map(([id, name]) => el("option", { value: id, selected: id === value }, name)));
  return el("label", {}, label + " ", select);
}

function box(label, on, changed) {
  return el("label", {}, el("input", { type: "checkbox", checked: Boolean(on), onchange: (e) => changed(e.target.checked) }), " " + label);
}

/** The winch whose season is shown. */
export function winch() {
  const asked = place().query.get("winch");
  const known = state.season.winches.map((w) => w.id);
  return known.includes(asked) ? asked : known[0];
}

export function newest(id) {
  return state.live?.winches.find((w) => w.winch === id);
}

function views() {
  const here = place().view;
  const link = (view, words) => el("a", { href: address(view), ...(here === view ? { "aria-current": "page" } : {}) }, words);
  const made = location.hash;
  const nav = document.getElementById("views");
  if (nav.dataset.made !== made) {
    nav.dataset.made = made;
    nav.replaceChildren(...(here === "season" ? [] : [link("season", "← Season")]), link("plan", "Plan a pull"));
  }
}

function progress(of) {
  if (of.trouble) text("progress", "Trouble: " + of.trouble);
  else if (!of.looked) text("progress", "Reading the folder …");
  else if (!of.done) {
    text("progress", `Working: ${of.outings_read} of ${of.outings} traces read, ${of.days_known} of ${of.days} days worked out. What is not yet is unknown.`);
  } else text("progress", "");
}

async function load() {
  const season = await ask("/api/season", place().view === "plan" ? {} : whatIf());
  state.season = season;
  setZone(season.zone);
  setUnit(season.unit);
  banner(state.shown?.banner?.() ?? season.what_if);
  progress(season.progress);
  views();
  if (document.getElementById("standing").children.length === 0) {
    document.getElementById("standing").replaceChildren(...season.standing.map((s) => el("li", {}, s)));
  }
  if (season.winches.length) switches();
  return season;
}

async function show() {
  const main = document.getElementById("main");
  try {
    state.shown?.close?.();
    state.shown = null;
    const season = await load();
    if (place().view === UNKNOWN) {
      document.getElementById("title").textContent = "Nothing here";
      throw new Error("This address is not known. The season has links to all there is.");
    }
    if (place().view === "plan") {
      state.shown = await showPlan(main);
      document.title = "Plan a pull – Tautlog";
      return;
    }
    if (!season.winches.length) {
      main.replaceChildren(el("p", {}, season.progress.looked ? "The folder holds no recording that can be read yet." : "Reading the folder …"));
      state.shown = { season: () => show() };
      return;
    }
    const { view, id } = place();
    state.shown = view === "day" ? await showDay(main, season, id) : showSeason(main, season);
    document.title = document.getElementById("title").textContent + " – Tautlog";
  } catch (e) {
    main.replaceChildren(el("p", { className: "action", role: "alert" }, String(e.message)));
    state.shown = null;
  }
}

async function tick() {
  try {
    state.live = await ask("/api/live");
    progress(state.live.progress);
    const behind = JSON.stringify(state.live.progress);
    const grew = state.live.stamp !== state.stamp && performance.now() - state.loadedAt > GROWN_MS;
    if (behind !== state.behind || grew || (state.season && !state.season.days.every((d) => d.known))) {
      state.behind = behind;
      state.stamp = state.live.stamp;
      state.loadedAt = performance.now();
      await load();
      state.shown?.season?.(state.season);
    }
    if (state.season?.winches.length) {
      const now = newest(state.shown?.winch ?? winch());
      const age = now?.age_s;
      text("live", age === null || age === undefined ? "" : now.open && age < 86400 * 2
        ? `The newest sample is ${age < 0 ? "from a clock that is ahead" : length(Math.max(0, age) * 1e6) + " old"}${age > 5 ? ": nothing new is coming." : "."}`
        : "");
      state.shown?.live?.(now);
    }
  } catch (e) {
    text("progress", "The program does not answer: what is shown may be old.");
  }
  setTimeout(tick, 1000);
}

document.getElementById("skip").addEventListener("click", (e) => {
  e.preventDefault();
  document.getElementById("main").focus();
});
addEventListener("hashchange", () => show().then(() => document.getElementById("main").focus({ preventScroll: false })));
show().then(tick);
