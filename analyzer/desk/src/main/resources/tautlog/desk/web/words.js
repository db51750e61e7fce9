// How times, lengths and forces look, and the only way by which this page makes elements: text stays text.
let zone = "UTC";
let unit = { symbol: "kN", newtons: 1000 };

export function setZone(id) {
  zone = id === "Z" ? "UTC" : id;
  try {
    new Intl.DateTimeFormat("en-GB", { timeZone: zone });
  } catch (e) {
    zone = "UTC";
  }
}

export function setUnit(of) { unit = of; }

/** As the report's page shows it: control characters, and those that turn the direction of writing, become U+FFFD. */
export const shown = (text) => text.replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/g, "\ufffd");

/** An element with properties and children; strings become text. */
export function el(name, properties = {}, ...children) {
  const element = document.createElement(name);
  for (const [key, value] of Object.entries(properties)) {
    if (key.startsWith("on")) element.addEventListener(key.slice(2), value);
    else if (key in element && key !== "list" && key !== "form") element[key] = value;
    else element.setAttribute(key, value);
  }
  element.append(...children.flat().map((child) => (typeof child === "string" ? shown(child) : child)));
  return element;
}

const formats = new Map();
function format(options) {
  const key = zone + JSON.stringify(options);
  if (!formats.has(key)) formats.set(key, new Intl.DateTimeFormat("en-GB", { timeZone: zone, hourCycle: "h23", ...options }));
  return formats.get(key);
}

export const date = (us) => format({ day: "numeric", month: "long", year: "numeric" }).format(us / 1000);
export const shortDate = (us) => format({ day: "numeric", month: "short" }).format(us / 1000);
export const month = (us) => format({ month: "short", year: "numeric" }).format(us / 1000);

/** Time of day with so many decimals of a second; -1 for hours and minutes only. */
export function clock(us, decimals = 0) {
  const ms = Math.floor(us / 1000);
  if (decimals < 0) return format({ hour: "2-digit", minute: "2-digit" }).format(ms);
  const whole = format({ hour: "2-digit", minute: "2-digit", second: "2-digit" }).format(ms);
  if (decimals === 0) return whole;
  const micros = ((us % 1e6) + 1e6) % 1e6;
  return whole + "." + String(Math.floor(micros)).padStart(6, "0").slice(0, decimals);
}

/** By how many microseconds local time is ahead of UTC at a time. */
export function ahead(us) {
  const p = Object.fromEntries(format({ year: "numeric", month: "2-digit", day: "2-digit", hour: "2-digit", minute: "2-digit", second: "2-digit" })
    .formatToParts(us / 1000).map((part) => [part.type, part.value]));
  const local = Date.UTC(p.year, p.month - 1, p.day, p.hour, p.minute, p.second);
  return Math.round((local - Math.floor(us / 1e6) * 1000) * 1000);
}

export function length(us) {
  const s = us / 1e6;
  if (s < 0.001) return Math.round(us) + " µs";
  if (s < 1) return trim(us / 1000, 1) + " ms";
  if (s < 60) return trim(s, s < 10 ? 2 : 1) + " s";
  if (s < 3600) return trim(s / 60, 1) + " min";
  if (s < 86400) return trim(s / 3600, 1) + " h";
  return trim(s / 86400, 1) + " days";
}

function trim(value, decimals) { return String(Number(value.toFixed(decimals))); }

export const inUnit = (newtons) => newtons / unit.newtons;
export const unitSymbol = () => unit.symbol;

export function force(newtons) {
  const value = inUnit(newtons);
  const decimals = Math.abs(value) >= 1000 ? 0 : Math.abs(value) >= 1 ? 2 : 3;
  return trim(value, decimals) + " " + unit.symbol;
}

/** Near the limit with a decimal, and never rounded to the other side of it. */
export function percent(share) {
  const near = Math.abs(share - 1) < 0.02 ? 10 : 1;
  const value = share * 100 * near;
  return (share > 1 ? Math.ceil(value) : Math.floor(value)) / near + " %";
}

export const counted = (n, one) => n + " " + one + (n === 1 ? "" : "s");
