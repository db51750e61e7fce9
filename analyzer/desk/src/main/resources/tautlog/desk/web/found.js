// What a day's report found, as signs on a trace, and where what it gives is a lower bound.
import { percent } from "./words.js";

/** What a report lists, and the sign that stands for it. */
const KINDS = [["overloads", "overload", "▲"], ["shocks", "shock", "◆"], ["jolts", "jolt", "●"], ["drops", "drop", "▽"], ["stalls", "stall", "■"], ["trouble", "trouble", "✕"]];

/**
 * @param ordinal of the outing whose seconds the trace counts; undefined where it shows the time of day
 * @return signs in order of kind; and spans of time whose greatest reading, newtons, is only a lower bound
 */
export function found(report, ordinal) {
  const on = (one) => place(one, ordinal);
  const tooFast = [...report.shocks ?? [], ...report.jolts ?? []].filter((one) => one.resolved === false).map(on).filter(Boolean);
  const isBound = (one, span) => isLowerBound(one) || tooFast.some((fast) => fast.at >= span.at && fast.at <= span.to);
  const signs = [];
  const bounds = [];
  for (const [list, name, sign] of KINDS) {
    for (const one of report[list] ?? []) {
      const span = on(one);
      if (!span) continue;
      const bound = isBound(one, span);
      if (bound) bounds.push({ ...span, newtons: one.peak_n });
      signs.push({ ...span, name, sign, severity: severity(name, one.share), words: (one.kind ? one.kind + " (" + name + ")" : name) + share(one, bound),
        more: one.resolved === false ? ", true peak may be higher" : "" });
    }
  }
  for (const pull of report.pulls ?? []) {
    const span = on(pull);
    if (span && isBound(pull, span)) bounds.push({ ...span, newtons: pull.peak_n });
  }
  return { signs, bounds };
}

/** When it begins and ends, in microseconds of the trace's axis; null when it is not on it. */
function place(one, ordinal) {
  if (ordinal !== undefined) {
    if (one.outing !== ordinal) return null;
    const at = Math.round(one.outing_s * 1e6);
    return { at, to: Math.max(at, Math.round((one.outing_end_s ?? one.outing_s) * 1e6)) };
  }
  const begin = one.at ?? one.start;
  if (!begin) return null;
  const at = micros(begin);
  return { at, to: one.end ? Math.max(at, micros(one.end)) : at };
}

/** Whether the share may be more than it says: as the report says of it. */
function isLowerBound(one) {
  const ends = one.uncertainty;
  return one.at_least || one.limit_is_at_most || one.resolved === false || (ends && ends.share_low !== null && ends.share_high === null);
}

function share(one, bound) {
  return one.share === undefined || one.share === null ? "" : " " + (bound ? "at least " : "") + percent(one.share) + " of limit";
}

/** What gets its label first: what is over the limit or not known not to be, then other findings by their share; marks and notes have none. */
function severity(name, share) {
  const known = share ?? 1;
  return known + (name === "overload" || known > 1 ? 1000 : 0);
}

/** ISO 8601 with microseconds to microseconds. */
export function micros(iso) {
  const [whole, rest = ""] = iso.replace("Z", "").split(".");
  return Date.parse(whole + "Z") * 1000 + Number((rest + "000000").slice(0, 6));
}
