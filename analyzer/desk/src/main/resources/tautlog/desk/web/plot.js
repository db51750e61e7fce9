// Draws a trace on a canvas. Kinds differ by shape, line and words, not by colour alone.
import { ahead, clock, inUnit, month, percent, shortDate, shown, unitSymbol } from "./words.js";

const LEFT = 58, RIGHT = 10, TOP = 46, BOTTOM = 26, SHAFT = 64, HEIGHT = 400;
/** Width of a sheet's text at 96 pixels an inch: letters stay as large on paper as on a screen. */
const PAPER = 680;
const CAUTION = 0.8;
const FONT = '13px system-ui, "Segoe UI", Roboto, "Liberation Sans", sans-serif';
const LIGHT = { paper: "#ffffff", ink: "#1b1f24", soft: "#3d444d", grid: "#d3d8de", band: "#0b3d91", over: "#8a1c00", limit: "#1b1f24", shaft: "#14532d", gap: "#6b7280" };
const DARK = { paper: "#11151a", ink: "#f2f4f6", soft: "#c3c8ce", grid: "#39424d", band: "#8ab8ff", over: "#ffb08a", limit: "#f2f4f6", shaft: "#86dfa5", gap: "#9aa4b0" };
const STEPS = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1e3, 2e3, 5e3, 1e4, 2e4, 5e4, 1e5, 2e5, 5e5, 1e6, 2e6, 5e6, 1e7, 1.5e7, 3e7, 6e7, 1.2e8, 3e8, 6e8, 9e8, 1.8e9, 3.6e9, 7.2e9, 1.08e10, 2.16e10, 4.32e10,
  8.64e10, 1.728e11, 6.048e11, 1.2096e12, 2.6298e12];

export class Plot {
  constructor(undated) {
    this.undated = undated;
    this.canvas = document.createElement("canvas");
    this.canvas.setAttribute("aria-hidden", "true");
    this.dark = matchMedia("(prefers-color-scheme: dark)");
    this.print = matchMedia("print");
    this.again = () => this.last && this.draw(...this.last);
    this.dark.addEventListener("change", this.again);
    this.print.addEventListener("change", this.again);
  }

  close() {
    this.dark.removeEventListener("change", this.again);
    this.print.removeEventListener("change", this.again);
  }

  width() { return this.print.matches ? PAPER : Math.max(280, this.canvas.parentElement?.clientWidth || 800); }

  columns() { return this.width() - LEFT - RIGHT; }

  timeAt(clientX, view) {
    const x = clientX - this.canvas.getBoundingClientRect().left - LEFT;
    return view[0] + (view[1] - view[0]) * Math.max(0, Math.min(1, x / this.columns()));
  }

  draw(view, data, signs) {
    this.last = [view, data, signs];
    const ratio = Math.max(2, window.devicePixelRatio || 1);
    const width = this.width();
    if (this.canvas.width !== Math.round(width * ratio) || this.canvas.height !== HEIGHT * ratio) {
      this.canvas.width = Math.round(width * ratio);
      this.canvas.height = HEIGHT * ratio;
      this.canvas.style.width = width + "px";
      this.canvas.style.height = HEIGHT + "px";
    }
    const c = this.c = this.canvas.getContext("2d");
    c.setTransform(ratio, 0, 0, ratio, 0, 0);
    this.ink = this.dark.matches && !this.print.matches ? DARK : LIGHT;
    this.view = view;
    this.right = width - RIGHT;
    this.shaftTop = HEIGHT - BOTTOM - SHAFT;
    this.bottom = this.shaftTop - 16;
    c.fillStyle = this.ink.paper;
    c.fillRect(0, 0, width, HEIGHT);
    c.font = FONT;
    this.timeAxis();
    if (data) {
      this.range(data);
      this.forceAxis();
      this.clip(TOP, this.bottom, () => {
        this.gaps(data, TOP, this.bottom);
        this.limits(data);
        this.band(data.tension, "_n", (v) => this.y(v), this.ink.band, data);
        this.over(data);
        this.limitWords(data);
      });
      this.shaft(data);
      this.signs(signs);
    }
    c.strokeStyle = this.ink.ink;
    c.lineWidth = 1;
    c.strokeRect(LEFT + 0.5, TOP + 0.5, this.right - LEFT, this.bottom - TOP);
    c.strokeRect(LEFT + 0.5, this.shaftTop + 0.5, this.right - LEFT, SHAFT);
  }

  x(us) { return LEFT + (us - this.view[0]) / (this.view[1] - this.view[0]) * (this.right - LEFT); }

  y(newtons) { return this.bottom - (newtons - this.low) / (this.high - this.low) * (this.bottom - TOP); }

  range(data) {
    const limits = data.limits.map((s) => s.limit_n);
    this.high = Math.max(1000, ...data.tension.greatest_n, ...limits) * 1.08;
    this.low = Math.min(0, ...data.tension.least_n);
    if (this.low < 0) this.low -= (this.high - this.low) * 0.04;
  }

  clip(top, bottom, action) {
    const c = this.c;
    c.save();
    c.beginPath();
    c.rect(LEFT, top, this.right - LEFT, bottom - top);
    c.clip();
    action();
    c.restore();
  }

  text(words, x, y, align = "left", colour = this.ink.ink) {
    const c = this.c;
    const safe = shown(words);
    c.textAlign = align;
    c.textBaseline = "middle";
    c.lineWidth = 4;
    c.lineJoin = "round";
    c.strokeStyle = this.ink.paper;
    c.strokeText(safe, x, y);
    c.fillStyle = colour;
    c.fillText(safe, x, y);
  }

  line(x1, y1, x2, y2, colour, width = 1, dash = []) {
    const c = this.c;
    c.strokeStyle = colour;
    c.lineWidth = width;
    c.setLineDash(dash);
    c.beginPath();
    c.moveTo(x1, y1);
    c.lineTo(x2, y2);
    c.stroke();
    c.setLineDash([]);
  }

  timeAxis() {
    const span = this.view[1] - this.view[0];
    const step = STEPS.find((s) => s / span * (this.right - LEFT) > Math.max(90, this.c.measureText(this.label(this.view[1], s)).width + 16)) ?? STEPS.at(-1);
    const shift = this.undated ? 0 : ahead(this.view[0]);
    let told = -Infinity;
    for (let t = Math.ceil((this.view[0] + shift) / step) * step - shift; t <= this.view[1]; t += step) {
      const x = this.x(t);
      this.line(x, TOP, x, HEIGHT - BOTTOM, this.ink.grid);
      const label = this.label(t, step);
      const half = this.c.measureText(label).width / 2;
      const middle = Math.max(half + 2, Math.min(this.right - half, x));
      if (middle - half < told + 8) continue; // moved in from the edge onto its neighbour
      told = middle + half;
      this.text(label, middle, HEIGHT - BOTTOM / 2, "center", this.ink.soft);
    }
  }

  label(t, step) {
    if (this.undated) return (t / 1e6).toFixed(step < 1e3 ? 6 : step < 1e6 ? 3 : 0) + " s";
    if (step > 2e12) return month(t);
    if (step >= 8.64e10) return shortDate(t);
    if (step >= 6e7) return clock(t, -1);
    return clock(t, step >= 1e6 ? 0 : step >= 1e5 ? 1 : step >= 1e3 ? 3 : 6);
  }

  forceAxis() {
    const inUnits = inUnit(this.high - this.low);
    const step = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 1e4, 2e4, 5e4].find((s) => inUnits / s < 6) ?? 1e5;
    const newtons = step * (this.high - this.low) / inUnits;
    for (let v = Math.ceil(this.low / newtons) * newtons; v <= this.high; v += newtons) {
      const y = this.y(v);
      this.line(LEFT, y, this.right, y, this.ink.grid);
      this.text(String(Math.round(inUnit(v) * 1000) / 1000), LEFT - 6, y, "right", this.ink.soft);
    }
    this.text(unitSymbol(), LEFT - 6, TOP - 12, "right", this.ink.soft);
  }

  gaps(data, top, bottom) {
    const c = this.c;
    const t = data.tension;
    let end = -Infinity;
    t.missing_from_us.forEach((from, i) => {
      const x1 = Math.max(LEFT, this.x(from));
      const x2 = Math.min(this.right, Math.max(x1 + 2, this.x(t.missing_to_us[i])));
      if (x2 < LEFT || x1 > this.right) return;
      c.save();
      c.beginPath();
      c.rect(x1, top, x2 - x1, bottom - top);
      c.clip();
      c.strokeStyle = this.ink.gap;
      c.lineWidth = 1.5;
      c.beginPath();
      for (let x = Math.floor((x1 - (bottom - top)) / 8) * 8; x < x2; x += 8) {
        c.moveTo(x, bottom);
        c.lineTo(x + (bottom - top), top);
      }
      c.stroke();
      c.restore();
      if (x2 - x1 < 8) this.line((x1 + x2) / 2, top, (x1 + x2) / 2, bottom, this.ink.gap, 3, [3, 3]);
      if (x2 - x1 > 64 && x1 > end) {
        this.text("unknown", (x1 + x2) / 2, (top + bottom) / 2, "center");
        end = x2 + 60;
      }
    });
  }

  /** Least to greatest of each column; single samples as a line with dots. */
  band(of, unit, y, colour, data) {
    const c = this.c;
    const least = of["least" + unit], greatest = of["greatest" + unit];
    const dots = data.from_samples && of.from_us.length > 0 && of.samples.every((n) => n === 1);
    c.fillStyle = colour;
    c.strokeStyle = colour;
    c.lineWidth = 1.5;
    c.lineJoin = "round";
    let before = null;
    for (let i = 0; i < of.from_us.length; i++) {
      const x1 = this.x(of.from_us[i]), x2 = this.x(of.to_us[i]);
      const top = y(greatest[i]), bottom = y(least[i]);
      if (before && !this.between(data, of.to_us[i - 1], of.from_us[i])) {
        c.beginPath();
        c.moveTo(before.x, Math.max(before.top, Math.min(before.bottom, (top + bottom) / 2)));
        c.lineTo(x1, Math.max(top, Math.min(bottom, (before.top + before.bottom) / 2)));
        c.stroke();
      }
      c.fillRect(x1 - 0.5, top - 0.75, Math.max(1, x2 - x1 + 0.5), Math.max(1.5, bottom - top + 1.5));
      if (dots && (this.right - LEFT) / of.from_us.length > 6) {
        c.beginPath();
        c.arc(x1, top, 3, 0, 7);
        c.fill();
      }
      before = { x: x2, top, bottom };
    }
  }

  /** Whether nobody knows what was between two columns: a gap, or no outing. */
  between(data, from, to) {
    if (to <= from) return false;
    const t = data.tension;
    for (let i = 0; i < t.missing_from_us.length; i++) {
      if (t.missing_from_us[i] < to && t.missing_to_us[i] > from) return true;
    }
    return !data.outings.some((o) => o.from_us <= from && o.to_us >= to);
  }

  /** Beneath the readings: a line must not hide what is just above it. */
  limits(data) {
    for (const step of data.limits) {
      const [x1, x2] = this.reach(step);
      this.line(x1, this.y(step.limit_n), x2, this.y(step.limit_n), this.ink.limit, 2.5, step.assumed ? [2, 4] : []);
      this.line(x1, this.y(step.limit_n * CAUTION), x2, this.y(step.limit_n * CAUTION), this.ink.limit, 1.25, [8, 5]);
    }
  }

  reach(step) {
    const x1 = this.x(step.from_us);
    return [x1, Math.max(x1 + 6, this.x(step.to_us))];
  }

  /** What is over the limit in force, once more in another colour. */
  over(data) {
    for (const step of data.limits) {
      const [x1, x2] = this.reach(step);
      this.c.save();
      this.c.beginPath();
      this.c.rect(x1 - 1, TOP, x2 - x1 + 2, this.y(step.limit_n) - TOP);
      this.c.clip();
      this.band(data.tension, "_n", (v) => this.y(v), this.ink.over, data);
      this.c.restore();
    }
  }

  limitWords(data) {
    let told = -Infinity;
    for (const step of data.limits) {
      const [x1, x2] = this.reach(step);
      const left = Math.max(LEFT, x1) + 6;
      const words = `${step.limit_is_at_most ? "limit at most" : "limit"} ${Math.round(inUnit(step.limit_n) * 100) / 100} ${unitSymbol()}`;
      const more = `${words}, ${step.hookup}${step.assumed ? " (assumed)" : ""}`;
      const room = Math.min(this.right, x2) - left;
      const said = this.c.measureText(more).width < room ? more : words;
      if (this.c.measureText(said).width < room && left > told) {
        this.text(said, left, this.y(step.limit_n) - 10);
        this.text("caution " + percent(CAUTION), left, this.y(step.limit_n * CAUTION) + 10, "left", this.ink.soft);
        told = left + this.c.measureText(said).width + 20;
      }
    }
  }

  shaft(data) {
    const most = Math.max(600, ...data.shaft.greatest_rpm) * 1.05;
    const y = (rpm) => this.shaftTop + SHAFT - rpm / most * SHAFT;
    this.text("0", LEFT - 6, this.shaftTop + SHAFT - 6, "right", this.ink.soft);
    this.text(String(Math.round(most / 1.05)), LEFT - 6, this.shaftTop + 6, "right", this.ink.soft);
    this.clip(this.shaftTop, this.shaftTop + SHAFT, () => {
      if (data.shaft.from_us.length) this.band(data.shaft, "_rpm", y, this.ink.shaft, { ...data, from_samples: false });
    });
    this.text(data.shaft.from_us.length ? "shaft, rpm" : "shaft speed unknown here", LEFT + 6, this.shaftTop + 9);
  }

  /** Signs in two rows above the plot, words where there is room: the worst first, then by time. */
  signs(signs) {
    const taken = [[], []];
    const order = [...signs].sort((a, b) => (b.severity ?? 0) - (a.severity ?? 0) || a.at - b.at);
    for (const one of order) {
      const x = Math.max(LEFT, this.x(one.at));
      const short = one.words.length > 34 ? one.words.slice(0, 33) + "…" : one.words;
      const wide = this.c.measureText(one.sign + " " + short).width;
      const place = this.place(taken, x, wide) ?? this.place(taken, x, 14);
      if (!place) continue;
      taken[place.row].push(place);
      this.line(x, TOP, x, this.bottom, this.ink.soft, 1, [2, 3]);
      this.text(one.sign + (place.wide === wide ? " " + short : ""), place.from, 11 + place.row * 20);
    }
  }

  /** Where so many pixels are free at a sign's place: from it to the right, else to the left so far as the edge asks. */
  place(taken, x, wide) {
    for (const from of [x - 5, Math.min(x - 5, this.right - wide)]) {
      const to = from + wide;
      if (to > this.right + 10 || from < 0) continue;
      for (const row of [0, 1]) {
        if (taken[row].every((one) => from > one.to + 8 || to + 8 < one.from)) return { row, from, to, wide };
      }
    }
    return undefined;
  }
}
