// A trace of any time, from a season to a millisecond: what is asked for, how it is moved through, what is said of it in words.
import { ask } from "./api.js";
import { whatIf } from "./app.js";
import { clock, counted, date, el, force, length, percent, shortDate } from "./words.js";
import { sideways } from "./document.js";
import { found } from "./found.js";
import { Plot } from "./plot.js";
import { noteForm, readNotes } from "./notes.js";

const SHORTEST_US = 200;
const DAYS_WITH_FINDINGS = 7;

export class Trace {
  constructor({ winch, whole, days, heading, outing, ordinal }) {
    Object.assign(this, { winch, whole, days, outing, ordinal });
    this.view = asked(whole) ?? [...whole];
    this.found = new Map();
    /** Of each day, as what its findings were last asked for. */
    this.askedAs = new Map();
    this.notes = [];
    this.follow = false;
    this.words = el("p", { className: "words", role: "status" });
    this.plot = new Plot(outing !== undefined);
    this.parts = el("p", { className: "parts" });
    this.unread = el("p", { className: "parts" });
    this.list = el("ol", { className: "found" });
    this.listHead = el("summary", {}, "What is in view");
    this.table = el("div", { className: "scroll", role: "region", tabIndex: 0, "aria-label": "Figures of the trace" });
    this.figures = el("details", { ontoggle: () => this.tell() }, el("summary", {}, "The trace as a table"), sideways(this.table));
    this.followBox = el("input", { type: "checkbox", onchange: (e) => { this.follow = e.target.checked; this.live(this.newest); } });
    const button = (name, label, action) => el("button", { type: "button", title: label, "aria-label": label, onclick: action }, name);
    this.group = el("div", { className: "plot", role: "group", tabIndex: 0,
      "aria-label": "Trace. Keys: plus and minus zoom, arrows move, Home and End go to the beginning and end, P goes to the greatest pull, 0 shows all." },
      this.plot.canvas);
    this.element = el("section", { className: "trace" }, el("h2", {}, heading),
      el("div", { className: "tools" },
        button("+", "Zoom in", () => this.zoom(0.5)), button("−", "Zoom out", () => this.zoom(2)),
        button("←", "Earlier", () => this.move(-0.5)), button("→", "Later", () => this.move(0.5)),
        button("⇱ All", "Show all", () => this.show([...this.whole])),
        button("⌃ Greatest", "Zoom to the greatest tension", () => this.toGreatest()),
        ...(outing ? [] : [el("label", {}, this.followBox, " follow live")])),
      this.group, this.words, this.parts,
      el("details", { open: true }, this.listHead, this.list), this.unread,
      // a note is kept with its time, which nobody knows here
      ...(outing ? [] : [noteForm(() => this.choices(), (note) => this.addNote(note))]),
      this.figures);
    this.listen();
    this.resize = new ResizeObserver(() => this.refresh());
    this.resize.observe(this.group);
    this.refresh();
    if (!outing) readNotes(winch).then((read) => this.tellNotes(read)).catch(() => {});
  }

  close() {
    this.resize.disconnect();
    this.plot.close();
    this.abort?.abort();
  }

  /** More of the recording is known. */
  update(whole, days) {
    if (!whole) return;
    const wasAll = this.view[0] === this.whole[0] && this.view[1] === this.whole[1];
    const changed = JSON.stringify([this.whole, this.days]) !== JSON.stringify([whole, days]);
    this.whole = whole;
    this.days = days;
    if (wasAll && !this.follow) this.view = [...whole];
    if (changed) this.refresh();
  }

  live(now) {
    const grew = now && this.newest && now.newest_us !== this.newest.newest_us;
    this.newest = now;
    if (!now || this.outing) return;
    if (this.follow) {
      const span = this.view[1] - this.view[0];
      this.show([now.newest_us - span * 0.95, now.newest_us + span * 0.05]);
    } else if (grew && this.view[1] > this.newest.newest_us - 5e6) this.refresh();
  }

  /** What a report found on a day. */
  findings(day, report) {
    this.found.set(day, found(report, this.ordinal));
    this.tell();
  }

  show(view) {
    const span = Math.max(SHORTEST_US, Math.min(view[1] - view[0], (this.whole[1] - this.whole[0]) * 1.2));
    const middle = (view[0] + view[1]) / 2;
    const margin = Math.min(span * 0.9, span / 2 + 1e6);
    const begin = Math.max(this.whole[0] - margin, Math.min(this.whole[1] + margin - span, middle - span / 2));
    this.view = [Math.round(begin), Math.round(begin + span)];
    this.refresh();
    this.remember();
  }

  remember() {
    const [path, query] = location.hash.split("?");
    const next = new URLSearchParams(query || "");
    next.set("from", this.view[0]);
    next.set("to", this.view[1]);
    history.replaceState(null, "", (path || "#/season") + "?" + next);
  }

  zoom(factor, at = (this.view[0] + this.view[1]) / 2) {
    this.stop();
    this.show([at - (at - this.view[0]) * factor, at + (this.view[1] - at) * factor]);
  }

  move(part) {
    this.stop();
    const by = (this.view[1] - this.view[0]) * part;
    this.show([this.view[0] + by, this.view[1] + by]);
  }

  toGreatest() {
    this.stop();
    const best = this.greatest();
    if (!best) return;
    const span = Math.max(this.view[1] - this.view[0], SHORTEST_US * 8) / 8;
    const at = (best.from + best.to) / 2;
    this.show([at - Math.max(span, best.to - best.from) / 2, at + Math.max(span, best.to - best.from) / 2]);
  }

  stop() {
    this.follow = false;
    this.followBox.checked = false;
  }

  /** Draws what is there at once, then what the server says of this time. */
  async refresh() {
    this.draw();
    this.abort?.abort();
    const abort = this.abort = new AbortController();
    const columns = Math.max(50, Math.min(2000, Math.round(this.plot.columns())));
    try {
      const data = await ask("/api/trace", { winch: this.winch, outing: this.outing, from: this.view[0], to: this.view[1], columns, ...whatIf() }, abort.signal);
      if (abort.signal.aborted) return;
      this.data = data;
      this.element.dataset.from = data.from_us;
      this.element.dataset.to = data.to_us;
      this.draw();
      this.tell();
      this.fetchFindings();
    } catch (e) {
      if (e.name !== "AbortError") this.words.textContent = "The trace is unknown: " + e.message;
    }
  }

  daysInView() { return this.days.filter((day) => day.from_us < this.view[1] && day.to_us > this.view[0]); }

  /** Asks for the findings of days in view that are other than when they were asked for; what was found before stays until then. */
  fetchFindings() {
    const inView = this.daysInView();
    if (this.outing || inView.length > DAYS_WITH_FINDINGS) return;
    for (const day of inView.filter((one) => one.known)) {
      const as = JSON.stringify(day);
      if (this.askedAs.get(day.day) === as) continue;
      this.askedAs.set(day.day, as);
      const again = () => { if (this.askedAs.get(day.day) === as) this.askedAs.delete(day.day); };
      ask("/api/day", { day: day.day, ...whatIf() }).then((got) => {
        if (this.askedAs.get(day.day) !== as) return;
        if (got.known && got.report) this.findings(day.day, got.report);
        else again();
      }).catch(again);
    }
  }

  /** Everything with a place in view, in order. */
  signs() {
    const all = [...this.found.values()].flatMap((one) => one.signs);
    for (const mark of this.data?.marks ?? []) all.push({ at: mark.at_us, name: "mark", sign: "⚑", words: "mark" + (mark.note ? ": " + mark.note : "") });
    for (const note of this.notes) all.push({ at: note.at_us, name: "note", sign: "✎", words: "note" + (note.about ? " on " + note.about : "") + ": " + note.text });
    return all.filter((one) => (one.to ?? one.at) >= this.view[0] && one.at < this.view[1]).sort((a, b) => a.at - b.at);
  }

  greatest() {
    const t = this.data?.tension;
    if (!t?.greatest_n.length) return null;
    let i = 0;
    t.greatest_n.forEach((value, k) => { if (value > t.greatest_n[i]) i = k; });
    const limits = this.data.limits.filter((s) => s.from_us <= t.to_us[i] && s.to_us >= t.from_us[i]);
    return { from: t.from_us[i], to: t.to_us[i], newtons: t.greatest_n[i], limits, bound: this.isBound(t.from_us[i], t.to_us[i], t.greatest_n[i], limits) };
  }

  /** Whether the greatest reading of a time is only a lower bound, or may be: at an end stop, in something too fast, in a day not worked out yet. */
  isBound(from, to, newtons, limits) {
    return limits.some((s) => s.at_least_from_n !== null && newtons >= s.at_least_from_n)
      || [...this.found.values()].some((one) => one.bounds.some((span) => span.at <= to && span.to >= from && newtons > span.newtons * 0.999))
      || this.days.some((day) => day.greatest_is_at_least !== false && !this.found.has(day.day) && day.from_us <= to && day.to_us >= from);
  }

  draw() {
    this.plot.draw(this.view, this.data, this.signs());
  }

  time(us, decimals) {
    return this.outing ? (us / 1e6).toFixed(Math.max(0, decimals)) + " s" : clock(us, decimals);
  }

  tell() {
    this.draw();
    const span = this.view[1] - this.view[0];
    const decimals = span < 2e4 ? 6 : span < 6e7 ? 3 : 0;
    const day = (us) => (this.outing ? "" : shortDate(us) + " ");
    const best = this.greatest();
    let words = `Showing ${this.outing ? "" : date(this.view[0]) + ", "}${this.time(this.view[0], decimals)} to ${span > 8e10 ? day(this.view[1]) : ""}${this.time(this.view[1], decimals)} (${length(span)}).`;
    if (best) {
      const least = Math.min(...best.limits.map((s) => s.limit_n));
      const share = best.limits.length ? ", " + (best.bound || best.limits.some((s) => s.limit_is_at_most) ? "at least " : "") + percent(best.newtons / least) + " of limit"
        + (new Set(best.limits.map((s) => s.limit_n)).size > 1 ? " (of the lowest then in force)" : "") : ", limit unknown";
      const when = (us) => (span > 8e10 ? day(us) : "") + this.time(us, decimals);
      words += ` Greatest ${best.bound ? "at least " : ""}${force(best.newtons)}${share}, ${best.to - best.from > span / 1e3 && best.to - best.from > 2e6 ? "between " + when(best.from) + " and " + when(best.to) : when(best.from)}.`;
    } else if (this.data) words += " No reading in it.";
    if (this.data?.tension.missing_from_us.length) words += " Part of it is unknown: readings are missing where it is hatched, or dashed where that is narrow.";
    if (this.words.textContent !== words) this.words.textContent = words;
    this.tellParts();
    this.tellSigns(decimals);
    if (this.figures.open) this.table.replaceChildren(this.figureTable(decimals));
  }

  tellParts() {
    const why = { "not-read-yet": "is not read yet", thinned: "was thinned on the board: its readings are gone", "not-readable": "cannot be read",
      "without-that-hookup": "has no such hookup in its rig: its limit is unknown" };
    const parts = (this.data?.outings ?? []).filter((p) => p.state !== "read");
    const words = parts.slice(0, 3).map((p) => `The outing from ${this.outing ? "its start" : shortDate(p.from_us) + " " + clock(p.from_us, -1)} ${why[p.state]}${p.why ? ": " + p.why : ""}.`);
    if (parts.length > 3) words.push(`So are ${parts.length - 3} more.`);
    if (this.data?.limits.some((s) => s.assumed)) words.push("Dotted limit: nobody had said which hookup was on; it is assumed.");
    if (this.data?.limits.some((s) => s.limit_is_at_most)) words.push("A limit marked “at most” may really be lower.");
    const text = words.join(" ");
    if (this.parts.textContent !== text) this.parts.textContent = text;
  }

  tellSigns(decimals) {
    const signs = this.signs();
    const tooMany = this.daysInView().length > DAYS_WITH_FINDINGS;
    const span = this.view[1] - this.view[0];
    const when = (us) => (span > 8e10 && !this.outing ? shortDate(us) + " " : "") + this.time(us, Math.max(1, decimals));
    const made = JSON.stringify([signs, decimals, tooMany, span > 8e10]);
    if (this.list.dataset.made === made) return;
    this.list.dataset.made = made;
    this.listHead.textContent = "In view: " + (signs.length ? signs.length + " of findings, marks and notes" : "no finding, mark or note that is known")
      + (tooMany ? `; findings are listed when at most ${DAYS_WITH_FINDINGS} days are in view` : "");
    this.list.replaceChildren(...signs.slice(0, 100).map((one) => el("li", {},
      el("button", { type: "button", className: "go", onclick: () => this.goTo(one.at) }, `${one.sign} ${when(one.at)} `), one.words + (one.more ?? ""))));
    if (signs.length > 100) this.list.append(el("li", {}, `and ${signs.length - 100} more: zoom in`));
  }

  goTo(at) {
    this.stop();
    const span = Math.min(this.view[1] - this.view[0], 1e7);
    this.show([at - span / 2, at + span / 2]);
    this.group.focus();
  }

  figureTable(decimals) {
    const t = this.data?.tension;
    const rows = [];
    const n = t?.from_us.length ?? 0;
    const most = 24;
    for (let i = 0; i < Math.min(most, n); i++) {
      const from = Math.floor(i * n / Math.min(most, n));
      const to = Math.max(from + 1, Math.floor((i + 1) * n / Math.min(most, n)));
      rows.push([this.time(t.from_us[from], decimals), this.time(t.to_us[to - 1], decimals), force(Math.min(...t.least_n.slice(from, to))), force(Math.max(...t.greatest_n.slice(from, to)))]);
    }
    return el("table", {}, el("caption", {}, "Least and greatest tension in view"),
      el("thead", {}, el("tr", {}, ["From", "To", "Least", "Greatest"].map((h, i) => el("th", { scope: "col", className: i > 1 ? "n" : "" }, h)))),
      el("tbody", {}, rows.map((r) => el("tr", {}, r.map((c, i) => i === 0 ? el("th", { scope: "row" }, c) : el("td", { className: i > 1 ? "n" : "" }, c))))));
  }

  /** What a note can be about: findings in view, or the time in view. */
  choices() {
    const best = this.greatest();
    const middle = Math.round((this.view[0] + this.view[1]) / 2);
    const found = this.signs().filter((one) => one.name !== "mark" && one.name !== "note").slice(0, 50)
      .map((one) => ({ at: one.at, about: one.name, words: `${one.words}, ${this.time(one.at, 1)}` }));
    return [...found, { at: best && this.view[1] - this.view[0] < 6e7 ? Math.round(best.from) : middle, about: "", words: "the time in view" }];
  }

  async addNote({ at, about, text }) {
    this.tellNotes(await readNotes(this.winch, { at, about, text }));
  }

  tellNotes({ notes, unreadable }) {
    this.notes = notes;
    this.unread.textContent = unreadable ? counted(unreadable, "line") + " of notes.jsonl could not be read: what " + (unreadable === 1 ? "it says" : "they say") + " is not shown." : "";
    this.tell();
  }

  listen() {
    this.group.addEventListener("keydown", (e) => {
      if (e.ctrlKey || e.altKey || e.metaKey) return;
      const span = this.view[1] - this.view[0];
      const actions = { "+": () => this.zoom(0.5), "=": () => this.zoom(0.5), "-": () => this.zoom(2), "−": () => this.zoom(2), ArrowLeft: () => this.move(-0.25), ArrowRight: () => this.move(0.25),
        Home: () => this.show([this.whole[0], this.whole[0] + span]), End: () => this.show([this.whole[1] - span, this.whole[1]]), 0: () => this.show([...this.whole]),
        p: () => this.toGreatest(), P: () => this.toGreatest() };
      if (actions[e.key]) {
        e.preventDefault();
        actions[e.key]();
      }
    });
    this.group.addEventListener("wheel", (e) => {
      e.preventDefault();
      if (Math.abs(e.deltaX) > Math.abs(e.deltaY)) this.move(Math.sign(e.deltaX) * 0.1);
      else this.zoom(e.deltaY > 0 ? 1.4 : 1 / 1.4, this.plot.timeAt(e.clientX, this.view));
    }, { passive: false });
    const fingers = new Map();
    const canvas = this.plot.canvas;
    canvas.addEventListener("pointerdown", (e) => { canvas.setPointerCapture(e.pointerId); fingers.set(e.pointerId, e.clientX); });
    canvas.addEventListener("pointermove", (e) => {
      if (!fingers.has(e.pointerId)) return;
      const before = [...fingers.values()];
      const was = fingers.get(e.pointerId);
      fingers.set(e.pointerId, e.clientX);
      const now = [...fingers.values()];
      if (now.length === 1) this.move((was - e.clientX) / this.plot.columns());
      else if (Math.abs(now[0] - now[1]) > 10 && Math.abs(before[0] - before[1]) > 10) {
        this.zoom(Math.abs(before[0] - before[1]) / Math.abs(now[0] - now[1]), this.plot.timeAt((now[0] + now[1]) / 2, this.view));
      }
    });
    for (const end of ["pointerup", "pointercancel"]) canvas.addEventListener(end, (e) => fingers.delete(e.pointerId));
  }
}

function asked(whole) {
  const query = new URLSearchParams(location.hash.split("?")[1] || "");
  const from = Number(query.get("from"));
  const to = Number(query.get("to"));
  return query.get("from") && to > from && from < whole[1] && to > whole[0] ? [Math.round(from), Math.round(to)] : null;
}
