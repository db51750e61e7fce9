// A plan: a form, and the document that tautlog plan gives. What cannot be understood is said beside its field.
import { ask } from "./api.js";
import { banner, place, whatIf, winch } from "./app.js";
import { section } from "./document.js";
import { date, el } from "./words.js";

const OTHER = "WHAT IF: another rig is used than the one recorded. This is not what was recorded.";
const WORKING = "Working …";
/** Which fields there are, by the names of the command's options, and what each takes. */
const FIELDS = [
  ["rig", "Rig", "The winch and its gear."],
  ["log", "Log", "Species or density, length, diameters: Norway spruce, 12 m, 40/28 cm. With the middle 40/35/28 cm, or only that: mid 34 cm."],
  ["ground", "Ground", "Without one the widest band of friction."],
  ["friction", "Friction", "A band instead of a ground: 0.4..0.7"],
  ["slope", "Slope", "15 deg or 25 % in the direction of the pull, uphill above 0. Empty: level."],
  ["slope-plus-minus", "Slope, plus or minus", "How far the slope may be off, in the same unit."],
  ["hookup", "Hookup", ""],
  ["block-angle", "Angle at the block", "60 deg between the lines at every fixed block. Empty: the rig's."],
  ["units", "Forces in", ""],
];

export async function showPlan(main) {
  document.getElementById("title").textContent = "Plan a pull";
  const form = new PlanForm();
  main.replaceChildren(form.element, form.result);
  await form.offer();
  return { season: () => form.offer().catch(() => {}), banner: () => form.banner(), close: () => form.abort?.abort() };
}

class PlanForm {
  constructor() {
    const before = Object.fromEntries(new URLSearchParams(place().query.get("plan") || ""));
    if (!before.rig && whatIf().rig) before.rig = "other";
    this.before = before;
    this.inputs = new Map();
    this.said = el("p", { role: "status" });
    this.result = el("div", { className: "report" });
    this.button = el("button", { type: "submit" }, "Plan");
    this.element = el("form", { className: "plan", noValidate: true, autocomplete: "off", "aria-label": "What is to be pulled, and how",
      onsubmit: (e) => { e.preventDefault(); this.plan(); }, oninput: () => this.changed() },
      FIELDS.map(([name, label, hint]) => this.field(name, label, hint)), el("div", { className: "ask" }, this.button, this.said));
  }

  field(name, label, hint) {
    const isChoice = ["rig", "ground", "hookup", "units"].includes(name);
    const input = el(isChoice ? "select" : "input", { id: "plan-" + name, name, "aria-describedby": `flaw-${name} hint-${name}` });
    if (!isChoice) {
      input.type = "text";
      input.maxLength = 200;
      input.value = this.before[name] ?? "";
    }
    if (name === "log") input.setAttribute("aria-required", "true");
    if (name === "rig") input.addEventListener("change", () => this.rigChosen());
    this.inputs.set(name, input);
    return el("div", { className: "field" }, el("label", { htmlFor: input.id }, label), input,
      el("p", { id: "flaw-" + name, className: "flaw" }), el("p", { id: "hint-" + name, className: "hint" }, hint));
  }

  /** What can be chosen; more may be known than before. What was asked for by the address is asked at once. */
  async offer() {
    const offered = await ask("/api/plan/choices");
    const made = JSON.stringify(offered);
    if (made === this.made) return;
    const isFirst = this.made === undefined || !this.offered.rigs.length;
    this.made = made;
    this.offered = offered;
    this.button.disabled = !offered.rigs.length;
    this.said.textContent = offered.rigs.length ? "" : "No rig is known yet: none of the recordings that could be read holds one, and none was given with --rig.";
    const own = offered.rigs.find((rig) => rig.winch_id === winch()) ?? offered.rigs[0];
    this.choose("rig", offered.rigs.map((rig) => [rig.id, rigWords(rig)]), own?.id ?? "");
    this.choose("ground", [["", "not said"], ...offered.grounds.map((g) => [g.word, `${g.word}: ${g.words}, friction ${g.friction_low} to ${g.friction_high}`])], "");
    this.choose("units", [["", "the usual unit"], ...offered.units.map((unit) => [unit, unit])], "");
    this.rigChosen();
    if (isFirst && this.before.log && offered.rigs.length) await this.plan();
  }

  /** Keeps what was chosen, else what the address says, else {@code usual}. */
  choose(name, options, usual) {
    const input = this.inputs.get(name);
    const known = options.map(([id]) => id);
    const chosen = [input.value || this.before[name], usual].find((id) => known.includes(id));
    input.replaceChildren(...options.map(([id, words]) => el("option", { value: id }, words)));
    input.value = chosen ?? "";
  }

  rig() { return this.offered?.rigs.find((rig) => rig.id === this.inputs.get("rig").value); }

  rigChosen() {
    this.choose("hookup", [["", "all"], ...(this.rig()?.hookups ?? []).map((id) => [id, id])], "");
    banner(this.banner());
  }

  banner() { return this.rig()?.other ? OTHER : ""; }

  /** A plan of something else than what stands in the form is not left standing. */
  changed() {
    this.abort?.abort();
    if (this.result.children.length) this.said.textContent = "Changed: plan again.";
    else if (this.said.textContent === WORKING) this.said.textContent = "";
    this.result.replaceChildren();
  }

  asked() {
    return Object.fromEntries([...this.inputs].map(([name, input]) => [name, input.value.trim()]).filter(([, value]) => value));
  }

  async plan() {
    this.abort?.abort();
    const abort = this.abort = new AbortController();
    const asked = this.asked();
    this.remember(asked);
    this.said.textContent = WORKING;
    try {
      const got = await ask("/api/plan", asked, abort.signal);
      if (abort.signal.aborted) return;
      this.tellFlaws(got.flaws);
      this.result.replaceChildren(...(got.page ? documentOf(got.page) : []));
    } catch (e) {
      if (e.name === "AbortError") return;
      this.result.replaceChildren();
      this.said.textContent = "No plan: " + e.message;
    }
  }

  remember(asked) {
    const [path, query] = location.hash.split("?");
    const next = new URLSearchParams(query || "");
    next.set("plan", new URLSearchParams(asked).toString());
    history.replaceState(null, "", path + "?" + next);
  }

  tellFlaws(flaws) {
    for (const [name, input] of this.inputs) {
      const own = flaws.filter((flaw) => flaw.field === name);
      const place = document.getElementById("flaw-" + name);
      place.className = own.length ? "flaw action" : "flaw";
      place.replaceChildren(...own.map((flaw) => el("span", {}, capital(flaw.found) + ". " + flaw.allowed + " ")));
      if (own.length) input.setAttribute("aria-invalid", "true");
      else input.removeAttribute("aria-invalid");
    }
    const count = flaws.length;
    this.said.textContent = count ? `No plan: ${count === 1 ? "one thing" : count + " things"} to mend above.` : "The plan stands below.";
    const first = [...this.inputs].find(([name]) => flaws.some((flaw) => flaw.field === name));
    first?.[1].focus();
  }
}

function documentOf(page) {
  // the standing text stands at the end of every view already
  const standing = document.getElementById("standing-head").textContent;
  return [el("h2", { id: "plan-head" }, page.title), ...page.subtitle.map((line) => el("p", {}, line)),
    ...page.sections.filter((one) => one.heading !== standing).map(section)];
}

function rigWords(rig) {
  if (rig.other) return `${rig.winch}, the other rig given at the start`;
  return rig.to_us === undefined ? `${rig.winch}, recorded without a clock` : `${rig.winch}, recorded until ${date(rig.to_us)}`;
}

const capital = (words) => words.charAt(0).toUpperCase() + words.slice(1);
